/*
 * choices.h - what was chosen: the settings file, and the command line over it
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_CHOICES_H
#define EVENHAND_COMMAND_CHOICES_H

#include <stdbool.h>

#include "evenhand/coach/plan.h"
#include "evenhand/world/device.h"
#include "evenhand/world/settings_file.h"
#include "evenhand/world/terminal.h"
#include "practise_call.h"

/* Reads the settings; what is wrong in them is said and nothing stops. */
void choices_read(struct settings_file *f);

/*
 * Takes over what a command line says and the settings know too: marking,
 * card, loudness, listening.  What a player says once counts from then on, but a script
 * is a rehearsal and chooses nothing for others.
 */
void choices_take(struct settings_file *f, const struct call *c);

/* When marks are given. */
enum marking choices_marking(const struct settings *s);

/* The card that is wished for, and how loud. */
void choices_card(const struct settings *s, struct sound_wish *w);

/* The microphone that is wished for. */
void choices_microphone(const struct settings *s, struct sound_wish *w);

/* Thousandths of full scale of a loudness in percent. */
int choices_level(int percent);

/* The colours of the settings, as the terminal takes them. */
enum terminal_colours choices_colours(const struct settings *s);

#endif
