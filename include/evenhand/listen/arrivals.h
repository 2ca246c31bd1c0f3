/*
 * arrivals.h - when a gliding finger reached its upper note, and how far it was
 *
 * Each glide up is told by two instants that mean the same in any shape of
 * glide: when half of the way was done, and when nine tenths were.  The way is
 * what lies between the notes before and after it, as they were played.
 *
 *	upper  ______              90 %  t90
 *	      /      \             50 %  t50
 *	_____/        \____ lower
 *
 * Pure; scratch from an arena.  Any thread.
 */
#ifndef EVENHAND_LISTEN_ARRIVALS_H
#define EVENHAND_LISTEN_ARRIVALS_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"

struct arrival {
	double half_s, nine_s; /* from instant 0 */
	double lower_cents, upper_cents;
	double sure; /* 0..1: share of the glide and both notes heard */
};

/*
 * Arrivals among the instants, in cents above hz (the lower note as it was
 * asked).  A travel of less than a third of travel_cents, or 15 cents, is none.
 * At most max are written; -1 when memory is short.
 */
int arrivals_find(struct arena *a, const struct instant *m, size_t n, double hz,
    double travel_cents, struct arrival *out, int max);

/* What a turn's arrivals say together. */
struct arrivals {
	int asked, heard;
	double travel_cents;  /* median way */
	double travel_spread; /* SD of it */
	double travel_share;  /* of what was asked */
	bool even_known;      /* three arrivals after each other were heard */
	double every_s;	      /* mean from arrival to arrival but for gaps */
	double unevenness;    /* SD of the same over it */
	bool timed;	      /* the latency was known, some pulse was met */
	double late_s;	      /* median of nine tenths against the pulses */
	double late_spread_s; /* SD of it */
	double sure;	      /* 0..1 */
};

/* When and what was asked. */
struct arrivals_asked {
	double travel_cents;
	const double *pulse_s; /* when each was due, from instant 0 */
	int pulses;
	bool latency_known; /* whether pulse_s are instants of this sound */
};

/* heard 0 is an answer: nothing else is set then. */
struct arrivals arrivals_measure(
    const struct arrivals_asked *asked, const struct arrival *at, int n);

#endif
