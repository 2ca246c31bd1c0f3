/*
 * outline.h - the pitch of a whole recording in a few places
 *
 * However long it is, there are at most OUTLINE_PLACES; when they are used up,
 * two and two become one.  Each tells the lowest and the highest note in it.
 *
 * Pure value, large: keep it off the stack.
 */
#ifndef EVENHAND_LISTEN_OUTLINE_H
#define EVENHAND_LISTEN_OUTLINE_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/listen/heard.h"

enum { OUTLINE_PLACES = 1600 };

struct outline_place {
	float low_hz, high_hz; /* 0: no note */
	float level_db;	       /* the loudest */
};

/* All zero is empty. */
struct outline {
	size_t each;	/* instants in a place */
	size_t in_last; /* in the last one, 1..each */
	int places;
	struct outline_place place[OUTLINE_PLACES];
};

/* The next instant; where places run out, each comes to hold twice as many. */
void outline_add(struct outline *o, const struct instant *m);

/* Seconds from the first instant to the end of the last. */
double outline_s(const struct outline *o);

/* The places from..to - 1 as one. */
struct outline_place outline_join(const struct outline *o, int from, int to);

/*
 * The lowest and the highest note, but for one place in a hundred on each side;
 * false when there is none.
 */
bool outline_range(const struct outline *o, double *low_hz, double *high_hz);

#endif
