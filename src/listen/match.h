/*
 * match.h - how alike a sound is to itself some time later
 *
 * Two pieces of `width` samples, their starts `lag` apart, lie evenly about an
 * instant.  Likeness is -1..1: 1 when the sound repeats itself after lag.
 *
 * Pure.  Any thread with scratch of its own.
 */
#ifndef LISTEN_MATCH_H
#define LISTEN_MATCH_H

#include <stdbool.h>

#include "evenhand/base/arena.h"

/*
 * Where a search goes: lags from..to in samples, pieces of width samples, which
 * is one of match_width.
 */
struct match_range {
	int from, to, width;
};

/* A period found: lag in samples with its fraction, and how alike. */
struct match {
	double lag, likeness;
};

/* A width of so many samples or a few more, as the search can do it fast. */
int match_width(double samples);

/* Samples before and behind the instant that a search needs. */
int match_reach(const struct match_range *r);

/* What a search writes into, enough for one range or any within it. */
struct match_work {
	double *squares;
	float *likeness;
};

/* Takes it from the arena; false when memory is short. */
bool match_work_take(
    struct arena *a, const struct match_range *r, struct match_work *work);

/*
 * Fills work->likeness[lag - from] for all lags of the range, about x[0]:
 * samples from x[-reach] to x[reach] are read.
 */
void match_curve(
    const float *x, const struct match_range *r, struct match_work *work);

/*
 * The best peak of the curve.  `before` is the lag found last, or 0: far jumps
 * cost a little, and so do long lags, since two periods are as alike as one.
 * likeness 0 when there is no peak at all.
 */
struct match match_best(
    const struct match_range *r, const struct match_work *work, double before);

/*
 * A first look at fewer samples, softened so that few lags find every peak; for
 * a range of short lags at all samples and every second lag.
 */
struct match_few {
	int factor; /* samples that become one */
	struct match_range range;
	struct match_work work;
	float *x;
};

/* Takes it from the arena; false when memory is short. */
bool match_few_take(
    struct arena *a, const struct match_range *r, struct match_few *few);

/* Samples before and behind the instant that the first look needs. */
int match_few_reach(const struct match_few *few);

/*
 * The best peak of all lags of the range: looked for among fewer samples, then
 * worked out exactly.  `before` as in match_best.
 */
struct match match_search(const float *x, const struct match_range *r,
    struct match_work *work, struct match_few *few, double before);

/* Likeness near one lag: the best of those within a sample; 0 outside. */
double match_near(
    const struct match_range *r, const struct match_work *work, double lag);

#endif
