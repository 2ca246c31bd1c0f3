/*
 * load.h - what slides cost each finger, and what a week may hold (rule F5)
 *
 * The skin feels metres, the joints feel pulses: both are counted for each
 * finger, over all routines, all instruments and all kinds of blocks.  What
 * does not slide (the air, drops, crossings) counts nothing.
 *
 *	turn          2 p x bows x S (2^(-a/12) - 2^(-c/12))
 *	base week B   6 x 10 bows at the widest stage, on the highest rung
 *	allowed       max(B, 1.2 x the week before), at most 2 B; after three
 *	              rising weeks no more than the week before (or B)
 *
 * S 69 cm, first to fourth position, 8 pulses: B is 148.0, 139.7, 131.9 and
 * 124.5 m for fingers 1 to 4, and 480 pulses.  It does not grow with the
 * minutes of the file.
 *
 * Raise by 10 to 20 % a week, and an easier fourth week: R. Manchester, quoted
 * in G. Klickstein, The Musician's Way.
 *
 * A week is seven days, the named one included.  Pure; any thread.
 */
#ifndef EVENHAND_COACH_LOAD_H
#define EVENHAND_COACH_LOAD_H

#include <stdint.h>

#include "evenhand/coach/history.h"
#include "evenhand/routine/routine.h"

enum {
	LOAD_WEEK_DAYS = 7,
	LOAD_BASE_DAYS = 6,
	LOAD_BASE_BOWS = 10,
	LOAD_GROWS_PERCENT = 20,
	LOAD_RISING_WEEKS = 3,
};

/* Of one finger. */
struct load {
	int64_t slide_um; /* micrometres along the string */
	int64_t pulses;
};

/* Of all fingers, by their numbers; 0 is not used. */
struct loads {
	struct load finger[FINGERS_MAX + 1];
};

/* Adds turns of a unit of the routine at a pulse count. */
void load_add_turns(struct loads *to, const struct routine *r, int stage,
    int unit, int pulses, int turns);

/* All that was played from one day to another, both included. */
void load_of_days(
    struct loads *out, const struct history *h, int first, int last);

/* What the week that ends on a day may hold. */
void load_allowed(struct loads *out, const struct routine *r,
    const struct history *h, int day);

#endif
