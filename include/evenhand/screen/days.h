/*
 * days.h - a history set out day by day
 *
 * Charts, lines and tables read the same days: every practice day on which
 * anything was kept, oldest first, with its sum and its roll-ups.  What a
 * journal cannot mean (a length below zero) counts as nothing; what it can
 * (a day far ahead, where a clock was wrong) stays in its place.
 *
 * The history is borrowed and must outlive it.  Any thread may read.
 */
#ifndef EVENHAND_SCREEN_DAYS_H
#define EVENHAND_SCREEN_DAYS_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/arena.h"
#include "evenhand/coach/history.h"

enum {
	/* Names kept apart; what further ones hold still counts in sums. */
	DAYS_STAGES_MAX = 100,
	DAYS_UNITS_MAX = 64,
	DAYS_AIR = DAYS_UNITS_MAX, /* the place of no unit */
};

/* The days that are wished for, both included. */
struct day_range {
	int from, to;
};

/* One practice day: its roll-ups lie together in the history. */
struct day_sum {
	int day;
	int sittings;
	int64_t ms;	    /* of all of them */
	int tally, tallies; /* the first one, and how many */
	int note, notes;    /* the same, in struct days.note */
	bool sore;	    /* a note of pain, skin or soreness */
};

struct days {
	const struct history *h;
	int count;
	struct day_sum *day;
	int notes; /* of all that can be told: a wish for later is not told */
	const struct past_note **note; /* by days, in their order in it */
	int stages;		       /* names in the order they first came */
	const char *stage[DAYS_STAGES_MAX];
	int units; /* in the order of their names; the air has none */
	const char *unit[DAYS_UNITS_MAX];
	int8_t *stage_of, *unit_of; /* of each roll-up of the history */
	struct arena arena;
};

/* Sets out the days of a range.  False: no memory; days_done all the same. */
bool days_make(
    struct days *d, const struct history *h, const struct day_range *range);

void days_done(struct days *d);

/* The first of the days that is not before this one; d->count: none is. */
int days_from(const struct days *d, int day);

/* A roll-up of a day, 0 <= i < tallies. */
const struct tally *days_tally(
    const struct days *d, const struct day_sum *s, int i);

/* Bows and micrometres of a roll-up, as far as they can be meant. */
int64_t days_bows(const struct tally *t);
int64_t days_um(const struct tally *t);

/*
 * Places of the names of a day's roll-up in the lists; -1 when there was no
 * room for it, DAYS_AIR for no unit.
 */
int days_stage(const struct days *d, const struct day_sum *s, int i);
int days_unit(const struct days *d, const struct day_sum *s, int i);

/* Whether a unit is one of the four fingers, "1" to "4". */
bool days_finger(const char *unit);

#endif
