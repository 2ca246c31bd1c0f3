/*
 * guard.h - signs of hurry in the last seven days (rule F7)
 *
 *	a session begun before the pause after the last one was over	1
 *	a session beyond those the file has for a day			1
 *	a day on which a stage was asked for that is not opened yet	2
 *	turns marked clean in which no bow had every top heard, on any
 *	number of these days: a microphone can be wrong, so alone they
 *	make no day slower						1
 *
 * Three signs, or two at a stage where hurry is watched for (patience), and
 * today is a little slower.  Nobody is told off: a session that was cut off by
 * the computer may be begun again at once.
 *
 * All of it is our own choice.  Pure; any thread.
 */
#ifndef EVENHAND_COACH_GUARD_H
#define EVENHAND_COACH_GUARD_H

#include <stdbool.h>

#include "evenhand/coach/history.h"
#include "evenhand/routine/routine.h"

enum {
	GUARD_DAYS = 7, /* today included */
	GUARD_SIGNS = 3,
	GUARD_SIGNS_PATIENCE = 2,
	GUARD_LATER_COUNTS = 2,
	GUARD_UNHEARD = 2, /* such turns of a day; one alone is none */
	/* Of the cap, for earlier stages, on a slower day. */
	GUARD_RECAP_NUM = 2,
	GUARD_RECAP_DEN = 3,
};

struct guard {
	int early;   /* sessions begun before the pause was over */
	int beyond;  /* sessions beyond those of a day */
	int later;   /* days on which a later stage was asked for */
	int unheard; /* days with clean marks where too few tops were heard */
	int signs;   /* what these come to */
	int needed;  /* for a slower day at this stage */
	bool hurried;
};

/* The signs up to a practice day, for a stage that is worked on. */
void guard_of(struct guard *out, const struct routine *r,
    const struct history *h, int stage, int today);

#endif
