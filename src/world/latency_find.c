/*
 * latency_find.c - how late sweeps were heard, and whether that can be believed
 */
#include "evenhand/world/latency_find.h"

#include <math.h>
#include <stdlib.h>

#define FULL 0.99F /* as loud as a microphone can */
#define NOISY 0.01 /* of full scale: in a quiet room it is a tenth of that */
/*
 * The best of some ten thousand places in noise alone fits 5 times as well as
 * the mean one (Gaussian noise); what fits 9 times as well is the sweep.
 */
#define STANDS_OUT 9.0F
#define FIRST 0.5F  /* of the best match: the sound itself */
#define TRACE 0.25F /* of it: something before that, too */

enum {
	CLIPPED_RUN = 3,   /* samples after each other at full scale */
	BESIDE_PARTS = 60, /* of a sweep's length: a match is not wider */
};

static bool clipped(const float *x, size_t n)
{
	int run = 0;

	for (size_t i = 0; i < n; i++) {
		run = fabsf(x[i]) >= FULL ? run + 1 : 0;
		if (run == CLIPPED_RUN)
			return true;
	}
	return false;
}

static double level(const float *x, size_t n)
{
	double sum = 0;

	for (size_t i = 0; i < n; i++)
		sum += (double)x[i] * (double)x[i];
	return sqrt(sum / (double)n);
}

/* Four sums at a time, since one has to wait for itself. */
static float product(const float *x, const float *y, size_t length)
{
	float sum[4] = { 0 };
	size_t i = 0;

	for (; i + 4 <= length; i += 4)
		for (size_t k = 0; k < 4; k++)
			sum[k] += x[i + k] * y[i + k];
	for (; i < length; i++)
		sum[0] += x[i] * y[i];
	return sum[0] + sum[1] + sum[2] + sum[3];
}

static void correlate(const float *x, const float *shape, size_t length,
    float *match, size_t places)
{
	for (size_t k = 0; k < places; k++)
		match[k] = fabsf(product(x + k, shape, length));
}

static size_t best(const float *match, size_t from, size_t to)
{
	size_t at = from;

	for (size_t k = from; k < to; k++)
		if (match[k] > match[at])
			at = k;
	return at;
}

static size_t least(size_t a, size_t b)
{
	return a < b ? a : b;
}

/* The mean match away from the sweep and what follows it closely. */
static float elsewhere(
    const float *match, size_t places, size_t at, size_t length)
{
	double sum = 0;
	size_t count = 0;

	for (size_t k = 0; k < places; k++)
		if (k + length < at || k > at + 3 * length) {
			sum += (double)match[k];
			count++;
		}
	return count > 0 ? (float)(sum / (double)count) : 0;
}

/* The first place from one on, before another, that is a top over a limit. */
static size_t first_top(
    const float *match, size_t from, size_t before, float limit)
{
	for (size_t k = from > 0 ? from : 1; k < before; k++)
		if (match[k] >= limit && match[k] >= match[k - 1] &&
		    match[k] > match[k + 1])
			return k;
	return before;
}

/* Where the top of a parabola through three neighbours is. */
static double between(const float *match, size_t k, size_t places)
{
	double a, b, c, bend;

	if (k == 0 || k + 1 >= places)
		return (double)k;
	a = (double)match[k - 1];
	b = (double)match[k];
	c = (double)match[k + 1];
	bend = a - 2 * b + c;
	return (double)k + (bend < 0 ? 0.5 * (a - c) / bend : 0);
}

struct sweep sweep_find(const float *heard, size_t count, const float *shape,
    size_t length, float *match)
{
	struct sweep s = { .way = SWEEP_HEARD, .level = level(heard, count) };
	size_t places = count - length + 1, at, from, first, beside;
	float noise, most;

	if (clipped(heard, count)) {
		s.way = SWEEP_CLIPPED;
		return s;
	}
	correlate(heard, shape, length, match, places);
	at = best(match, 0, places);
	most = match[at];
	noise = STANDS_OUT * elsewhere(match, places, at, length);
	if (most <= 0 || most < noise) {
		s.way = s.level > NOISY ? SWEEP_NOISE : SWEEP_QUIET;
		return s;
	}
	/* What is a whole sweep earlier is something else. */
	from = at > length ? at - length : 0;
	beside = length / BESIDE_PARTS;
	first = first_top(match, from, at, FIRST * most);
	/* A match swings to both sides of its top. */
	first = best(match, first, least(first + beside, at) + 1);
	if (first > from + beside &&
	    first_top(match, from, first - beside, fmaxf(TRACE * most, noise)) <
		first - beside)
		s.way = SWEEP_ECHO;
	s.at = between(match, first, places);
	return s;
}

/* --- What to think of them ------------------------------------------------ */

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;

	return (x > y) - (x < y);
}

/* The middle of values in order, and how near three quarters lie to it. */
static void middle(double *values, int count, struct latency_sum *sum)
{
	double mid;

	qsort(values, (size_t)count, sizeof *values, by_size);
	mid = (values[(count - 1) / 2] + values[count / 2]) / 2;
	for (int i = 0; i < count; i++)
		values[i] = fabs(values[i] - mid);
	qsort(values, (size_t)count, sizeof *values, by_size);
	sum->us = (int)lround(mid);
	sum->spread_us = (int)lround(values[(3 * count + 3) / 4 - 1]);
}

/* Why too few were heard: what came most often, a later way before others. */
static enum latency_trust missing(const struct latency_sum *sum)
{
	static const enum latency_trust why[SWEEP_WAYS] = {
		[SWEEP_QUIET] = LATENCY_QUIET,
		[SWEEP_NOISE] = LATENCY_NOISE,
		[SWEEP_CLIPPED] = LATENCY_CLIPPED,
		[SWEEP_ECHO] = LATENCY_ECHO,
		[SWEEP_BROKEN] = LATENCY_BROKEN,
	};
	int most = SWEEP_QUIET;

	for (int i = SWEEP_QUIET; i < SWEEP_WAYS; i++)
		if (sum->heard[i] >= sum->heard[most])
			most = i;
	return why[most];
}

enum latency_trust latency_judge(const enum sweep_way *way, const double *us,
    int count, struct latency_sum *sum)
{
	double heard[SWEEPS];
	int n = 0;

	*sum = (struct latency_sum) { .us = 0 };
	for (int i = 0; i < count && i < SWEEPS; i++) {
		sum->heard[way[i]]++;
		if (way[i] == SWEEP_HEARD)
			heard[n++] = us[i];
	}
	if (n > 0)
		middle(heard, n, sum);
	if (n < SWEEPS_LEAST)
		return missing(sum);
	if (sum->spread_us > LATENCY_SPREAD_US)
		return LATENCY_SPREAD;
	if (sum->us < LATENCY_LEAST_US || sum->us > LATENCY_MOST_US)
		return LATENCY_ODD;
	return LATENCY_GOOD;
}
