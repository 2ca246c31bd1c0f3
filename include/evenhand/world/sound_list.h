/*
 * sound_list.h - the cards there are, for people to choose from
 */
#ifndef EVENHAND_WORLD_SOUND_LIST_H
#define EVENHAND_WORLD_SOUND_LIST_H

#include <stdbool.h>

#include "evenhand/base/fault.h"
#include "evenhand/world/device.h"

enum { SOUND_CARDS_MAX = 64 };

/* A card that can play, or hear.  UTF-8, made fit to be shown. */
struct sound_card {
	char name[DEVICE_NAME_MAX];
	char api[DEVICE_NAME_MAX]; /* host API */
	int number;		   /* PortAudio's, in its process */
	bool is_default;	   /* of the whole computer */
	bool is_default_there;	   /* of its host API */
	bool wireless;		   /* by its name: what it plays comes late */
	int rate;		   /* its own, frames a second */
	int low_ms, high_ms;	   /* its usual delays */
	int channels;		   /* that play, or that hear */
};

struct sound_list {
	int count;
	int left_out; /* more than fit */
	struct sound_card card[SOUND_CARDS_MAX];
};

/* All there are, for both. */
struct sound_lists {
	struct sound_list cards, microphones;
};

/*
 * Lists the cards, in a child; waits at most so long.  No device may be open.
 * None at all are empty lists and true.  False with a fault: the sound
 * system does not answer, or breaks.
 *
 * What hears what this computer plays itself (a monitor) is no microphone.
 */
bool sound_list(struct sound_keeper *k, struct sound_lists *out, int wait_ms,
    struct fault *f);

/*
 * The card that a wish means: the first whose name and host API contain what
 * is wished, a whole name before a part; with no name the default one there;
 * else the computer's default one, and *other is set.  NULL: none.  Pure.
 */
const struct sound_card *sound_choose(
    const struct sound_list *l, const struct sound_wish *w, bool *other);

/* Whether a name speaks of a way without wire.  Pure. */
bool sound_wireless(const char *name);

/* Whether a name is that of an input for what a card plays.  Pure. */
bool sound_monitor(const char *name);

#endif
