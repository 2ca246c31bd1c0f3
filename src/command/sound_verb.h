/*
 * sound_verb.h - what the ways of `evenhand sound` share
 */
#ifndef EVENHAND_COMMAND_SOUND_VERB_H
#define EVENHAND_COMMAND_SOUND_VERB_H

#include "choices.h"
#include "evenhand/screen/lines.h"
#include "evenhand/world/sound_keeper.h"
#include "evenhand/world/sound_list.h"

enum { SOUND_RATE = 48000, SOUND_LOOK_US = 50000 };

/* Too large for a stack. */
struct sound_verb {
	struct settings_file chosen;
	struct sound_wish wish, microphone;
	struct sound_keeper *keeper;
	struct sound_lists lists;
	char page[LINES_BYTES_MAX];
};

/* Says a sentence; false when that cannot be. */
bool sound_print(struct sound_verb *t, struct message m);

/* The signal that asked to stop, 0: none. */
int sound_stopped(void);

/* Waits until the card sounds or it is known that it will not. */
bool sound_opened(struct device *d);

/* Why there is no sound: what a session says of it, told for here. */
int sound_say_missing(const struct device *d);

/* Plays chirps and hears them on a device that was not looked at yet. */
int sound_measure(struct sound_verb *t, struct device *d);

#endif
