/*
 * gettext.h - the language and the signs that the person before it has chosen
 *
 * The catalogue evenhand.mo of a language holds sentences by "ID\004English", so
 * that one which is older than the program leaves a sentence in English and
 * never says another.  Dates and decimals follow the computer's locale whether
 * or not there is a catalogue.
 */
#ifndef EVENHAND_WORLD_GETTEXT_H
#define EVENHAND_WORLD_GETTEXT_H

/*
 * Sets the tongue (base/tongue.h) from the environment: LANGUAGE, LC_ALL,
 * LC_MESSAGES, LANG for the words; LC_TIME and LC_NUMERIC for dates and decimals.
 * Once, from the main thread, before there is another and after
 * beside_started_as.  The C library's own decimals and dates stay as they are.
 */
void gettext_begin(void);

#endif
