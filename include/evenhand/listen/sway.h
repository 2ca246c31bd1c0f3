/*
 * sway.h - how fast, how wide and how even a vibrato is
 *
 * Cycles are counted from one crossing of the slow middle, upwards, to the
 * next.  In each the swing is a slope, a sine of that length and another twice
 * as fast, laid through all its instants; what the smoothing of the pitch took
 * from each is given back.  The width is that from the middle to either side.
 *
 * What a bow jitters makes even periods look uneven; the noise left beside the
 * sines tells how much, and is taken away.
 *
 * Pure; scratch from an arena.  Any thread.
 */
#ifndef EVENHAND_LISTEN_SWAY_H
#define EVENHAND_LISTEN_SWAY_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"

struct sway {
	bool heard;	     /* else nothing below is set */
	int cycles;	     /* measured */
	double rate_hz;	     /* swings a second */
	double width_cents;  /* to each side */
	double width_spread; /* SD of the cycles' widths, in cents */
	double unevenness;   /* SD of the periods over their mean */
	double middle_cents; /* above the note that was asked */
	double from_s, to_s; /* the first and the last crossing */
	double sure;	     /* 0..1 */
};

/* False when memory is short.  hz is the note that was asked. */
bool sway_measure(struct arena *a, const struct instant *m, size_t n, double hz,
    struct sway *out);

#endif
