/*
 * tongue.h - another language for the sentences, and how its pages write
 *
 * The lists of messages are English.  Before there are threads the edge may set
 * a tongue: sentences by id, the sign before decimals, the order of a date.
 * Only what is said changes: the words, and signs of arguments of the kinds n
 * and d.  What programs read is made without a tongue.
 *
 *	sentence[M_WORLD_LINES_LEFT_OUT] = "{0} {0|Zeile|Zeilen} ..."
 *	point = ","     3.5 is 3,5
 *	date = "d.m.y"  2026-03-02 is 02.03.2026
 *
 * Pure but for the one tongue.  It is set before there is another thread; then
 * any thread.
 */
#ifndef EVENHAND_BASE_TONGUE_H
#define EVENHAND_BASE_TONGUE_H

#include <stdbool.h>

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"

enum { TONGUE_POINT_MAX = 8, TONGUE_DATE_MAX = 8, TONGUE_NOTE_MAX = 5 };

struct tongue {
	const char *sentence[M_COUNT]; /* NULL: in English */
	char point[TONGUE_POINT_MAX];  /* "" is "." */
	/*
	 * d, m and y (four digits) once each, and other signs, which stand for
	 * themselves; "" is "y-m-d".
	 */
	char date[TONGUE_DATE_MAX];
};

/*
 * Sets the tongue, which is borrowed for good; NULL: English.  Sentences that do
 * not fit (tongue_fits) are an error of ours: leave them out.
 */
void tongue_set(const struct tongue *t);

/*
 * Whether a sentence can be said with the arguments of a signature: places are
 * closed and have their argument, only whole numbers choose, between two words,
 * every argument is used, and there is no control sign or broken UTF-8 in it.
 */
bool tongue_fits(const char *signature, const char *sentence);

/* Adds a number as text_number does, with the tongue's sign. */
void tongue_number(struct text *t, double number);

/* The same with one decimal always, as columns want it. */
void tongue_tenths(struct text *t, double number);

/*
 * Makes the English name of a note, "Bb3", what pages call it: "B3".  Its
 * buffer has room for a name (M_WORD_NOTES) of TONGUE_NOTE_MAX bytes in place
 * of the English one; one that is longer, or missing, is said in English.
 */
void tongue_note(char *name);

/* A date as pages show it; buffer of DATE_TEXT_MAX bytes. */
void tongue_date(int day, char *buffer);

/* And without its year, for narrow columns: "03-02", "02.03". */
void tongue_date_short(int day, char *buffer);

#endif
