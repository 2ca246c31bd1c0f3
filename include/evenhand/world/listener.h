/*
 * listener.h - what a microphone hears, measured turn by turn on a thread
 *
 *	main thread		     │ the listener's thread, at low priority
 *	samples, begins, ends ─queue─┼─▶ ear: pitch as it comes, then all of it
 *	         turn_heard ◀─queue──┼──  once more, and the measure
 *
 * Whoever puts something into the queue waits for nothing but a pointer being
 * changed.  When the thread cannot follow, samples are left out and the ear
 * takes silence for them: that delays no key, no click and no picture.
 *
 * Samples belong to frames of the session (heard_samples), so a turn is told
 * by its frames; it may be begun a little before or after its samples come.
 *
 * Only the main thread calls these.
 */
#ifndef EVENHAND_WORLD_LISTENER_H
#define EVENHAND_WORLD_LISTENER_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/listen/judge.h"
#include "evenhand/listen/turn.h"
#include "evenhand/world/device.h"

enum {
	LISTENER_QUEUE_S = 8,	  /* of samples that may wait */
	LISTENER_BEFORE_MS = 300, /* heard before a turn begins */
};

struct listener;

/* A turn: what is asked, its edges in seconds from its first frame. */
struct listener_turn {
	struct turn_asked asked;
	int64_t frame;
	int rate; /* of the session's frames */
};

/* NULL: no thread or memory, and nothing is listened to. */
struct listener *listener_open(void);

/* NULL is allowed.  What is under way is given up. */
void listener_close(struct listener *l);

/* Samples as device_hear gave them; copied. */
void listener_take(
    struct listener *l, const struct heard_samples *h, const float *x);

/* A turn begins; one that was not ended is forgotten. */
void listener_begin(struct listener *l, const struct listener_turn *t);

/*
 * It is over and kept under a number, with so many bows.  Its answer comes when
 * its last samples did, or the next turn begins.
 */
void listener_end(struct listener *l, int number, int bows);

/* It was broken off and is not kept. */
void listener_drop(struct listener *l);

/* No more samples will come: what was ended is measured as it is. */
void listener_finish(struct listener *l);

/* The next answer, when there is one. */
bool listener_next(struct listener *l, int *number, struct turn_heard *out);

/* Answers that are still to come. */
int listener_waits(struct listener *l);

/* Whether all that was put was looked at: where no time passes it is awaited. */
bool listener_idle(struct listener *l);

/* What is known of the microphone by now. */
struct judged listener_judged(struct listener *l);

#endif
