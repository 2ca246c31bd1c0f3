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
#include <stddef.h>

#include "row.h"

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

/* Numbers in the curve of a range. */
size_t match_lags(const struct match_range *r);

/*
 * Fills likeness[lag - from] for all lags of the range: samples from -reach to
 * reach about an instant are read.
 */
void match_curve(
    struct row_at at, const struct match_range *r, float *likeness);

/*
 * A first look at fewer samples, softened so that few lags find every peak; for
 * a range of short lags at all samples and every second lag.
 */
enum { MATCH_FEW_MOST = 4 };

struct match_few {
	int factor; /* samples that become one */
	struct match_range range;
	float *likeness;
	struct row row;
	float tap[MATCH_FEW_MOST + 1];
	float sum, next_sum; /* of the sample at hand, and what is the next's */
	int summed;
};

/*
 * Takes it from the arena, for up to `most` samples at a time; false when
 * memory is short.
 */
bool match_few_take(struct arena *a, const struct match_range *r, size_t most,
    struct match_few *few);

/* Samples before and behind the instant that the first look needs. */
int match_few_reach(const struct match_few *few);

/* Hears n more samples; instants before sample `from` do not come any more. */
void match_few_hear(
    struct match_few *few, int64_t from, const float *x, size_t n);

/*
 * The best peak of all lags of the range about a sample of the row: looked for
 * among fewer samples, then worked out exactly.  `before` is the lag found last,
 * or 0: far jumps cost a little, and so do long lags, since two periods are as
 * alike as one.  likeness 0 when there is no peak at all.
 */
struct match match_search(const struct row *row, int64_t sample,
    const struct match_range *r, struct match_few *few, double before);

#endif
