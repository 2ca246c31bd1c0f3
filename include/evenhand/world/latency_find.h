/*
 * latency_find.h - how late sweeps were heard, and whether that can be believed
 *
 *	heard   ────────▁▂▅█▅▂▁──▂▃▂──      a sweep, and its echo from the wall
 *	match   ────────────│────·────      where it fits best: one sharp line
 *	                    └ the first one that stands out, not the highest
 *
 * A sweep is searched for by its own shape (a matched filter: Turin, 1960),
 * which finds it in noise that is louder than it is.  What arrives first is the
 * sound itself; what comes off a wall is later and may be louder.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_WORLD_LATENCY_FIND_H
#define EVENHAND_WORLD_LATENCY_FIND_H

#include <stdbool.h>
#include <stddef.h>

enum {
	SWEEP_MS = 60,	  /* its length */
	SWEEPS = 12,	  /* so many are played, ... */
	SWEEPS_LEAST = 8, /* ... and so many of them must be heard */
	/* Times that are believed: three quarters are so close together, ... */
	LATENCY_SPREAD_US = 1000,
	/* ... and all of it is within; a card's own times may be off a bit. */
	LATENCY_LEAST_US = -1000,
	LATENCY_MOST_US = 500000,
};

enum sweep_way {
	SWEEP_HEARD,
	SWEEP_QUIET,   /* not a trace of it, and nothing else is loud */
	SWEEP_NOISE,   /* the same, but there is noise */
	SWEEP_CLIPPED, /* louder than the microphone takes */
	SWEEP_ECHO,    /* its echoes are much louder than it is */
	SWEEP_BROKEN,  /* samples are missing (the caller says so) */
	SWEEP_WAYS
};

struct sweep {
	enum sweep_way way;
	double at;    /* where it begins, in samples; SWEEP_HEARD */
	double level; /* root of the mean square of all, 0..1 */
};

/*
 * The sweep in what was heard.  match is room for count - length + 1 values;
 * count is at least twice the length, whose shape is what was played.
 */
struct sweep sweep_find(const float *heard, size_t count, const float *shape,
    size_t length, float *match);

enum latency_trust {
	LATENCY_GOOD,
	LATENCY_QUIET,	/* too few were heard, for want of sound, ... */
	LATENCY_NOISE,	/* ... for noise, ... */
	LATENCY_BROKEN, /* ... for samples that are missing */
	LATENCY_CLIPPED,
	LATENCY_ECHO,
	LATENCY_SPREAD, /* the times are too far apart */
	LATENCY_ODD,	/* no room and no card are so early, or so late */
};

struct latency_sum {
	int heard[SWEEP_WAYS];
	int us;	       /* the middle one of all that were heard */
	int spread_us; /* three quarters lie so near to it */
};

/*
 * What to think of some sweeps; us[i] of those that were heard.  The sum is
 * filled in any case.
 */
enum latency_trust latency_judge(const enum sweep_way *way, const double *us,
    int count, struct latency_sum *sum);

#endif
