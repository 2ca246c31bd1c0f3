/*
 * match.c - how alike a sound is to itself some time later
 */
#include "match.h"

#include <math.h>

#define JUMP_COST 0.03 /* of likeness, for an octave's jump */
#define LONG_COST 0.02 /* of likeness, for each octave a lag is longer */

enum {
	FEW_LEAST = 14, /* the shortest lag keeps this many of the fewer */
	NEAR = 3,	/* lags beside a rough peak, where the exact one is */
};

int match_reach(const struct match_range *r)
{
	return (r->to + 1 + r->width) / 2 + 1;
}

size_t match_lags(const struct match_range *r)
{
	return (size_t)(r->to - r->from) + 1;
}

/* Twice eight sums side by side, for the sake of speed; n in eights. */
static double product(const float *a, const float *b, int n)
{
	float s[8] = { 0 }, t[8] = { 0 };
	int i = 0;

	for (; i + 16 <= n; i += 16) {
		for (int j = 0; j < 8; j++)
			s[j] += a[i + j] * b[i + j];
		for (int j = 0; j < 8; j++)
			t[j] += a[i + 8 + j] * b[i + 8 + j];
	}
	if (i < n)
		for (int j = 0; j < 8; j++)
			s[j] += a[i + j] * b[i + j];
	for (int j = 0; j < 8; j++)
		s[j] += t[j];
	return (double)(s[0] + s[1] + s[2] + s[3]) +
	    (double)(s[4] + s[5] + s[6] + s[7]);
}

int match_width(double samples)
{
	return (int)ceil(samples / 8) * 8;
}

static float likeness(struct row_at at, int width, int lag)
{
	int a = -(lag + width) / 2, b = a + lag;
	double both = row_energy(at, a, a + width) +
	    row_energy(at, b, b + width);
	double alike = product(at.x + a, at.x + b, width);

	return both > 0 ? (float)(2 * alike / both) : 0;
}

void match_curve(struct row_at at, const struct match_range *r, float *y)
{
	for (int lag = r->from; lag <= r->to; lag++)
		y[lag - r->from] = likeness(at, r->width, lag);
}

/* Every second lag worked out, and the others laid between. */
static void curve_coarse(
    struct row_at at, const struct match_range *r, float *y)
{
	int lags = (int)match_lags(r);

	for (int i = 0; i < lags; i += 2)
		y[i] = likeness(at, r->width, r->from + i);
	for (int i = 1; i < lags; i += 2)
		y[i] = i + 1 < lags ? (y[i - 1] + y[i + 1]) / 2 : y[i - 1];
}

/* The top of the parabola through three likenesses. */
static struct match peak(const float *y, int lag)
{
	double left = y[-1], mid = y[0], right = y[1];
	double bend = left - 2 * mid + right;
	double shift = bend < 0 ? 0.5 * (left - right) / bend : 0;

	return (
	    struct match) { lag + shift, mid - 0.25 * (left - right) * shift };
}

static double cost(const struct match_range *r, double lag, double before)
{
	double far = before > 0 ? fabs(log2(lag / before)) : 0;

	return JUMP_COST * fmin(far, 1) + LONG_COST * log2(lag / r->from);
}

/* The best peak of the curve; likeness 0 when there is none at all. */
static struct match best_peak(
    const struct match_range *r, const float *curve, double before)
{
	struct match best = { 0, 0 };
	double most = -2;

	for (int lag = r->from + 1; lag < r->to; lag++) {
		const float *y = curve + (lag - r->from);
		struct match m;
		double worth;

		if (y[0] < y[-1] || y[0] <= y[1])
			continue;
		m = peak(y, lag);
		worth = m.likeness - cost(r, m.lag, before);
		if (worth > most) {
			most = worth;
			best = m;
		}
	}
	return best;
}

/* The best peak near one that was found roughly, all lags worked out. */
static struct match exact(
    struct row_at at, const struct match_range *r, struct match rough)
{
	struct match_range near = { r->from, r->to, r->width };
	struct match best = { 0, 0 };
	int lag = (int)(rough.lag + 0.5);
	float y[2 * NEAR + 1] = { 0 };

	if (rough.lag <= 0)
		return rough;
	near.from = lag - NEAR > r->from ? lag - NEAR : r->from;
	near.to = lag + NEAR < r->to ? lag + NEAR : r->to;
	match_curve(at, &near, y);
	for (int i = 1; i < near.to - near.from; i++) {
		struct match m;

		if (y[i] < y[i - 1] || y[i] <= y[i + 1])
			continue;
		m = peak(y + i, near.from + i);
		if (m.likeness > best.likeness)
			best = m;
	}
	return best;
}

bool match_few_take(struct arena *a, const struct match_range *r, size_t most,
    struct match_few *few)
{
	int factor = r->from / FEW_LEAST;
	size_t reach;

	factor = factor < 1	      ? 1
	    : factor > MATCH_FEW_MOST ? MATCH_FEW_MOST
				      : factor;
	*few = (struct match_few) { .factor = factor, .range = *r };
	if (factor > 1) {
		few->range.from = r->from / factor - 1;
		few->range.to = r->to / factor + 2;
		few->range.width = r->width / factor / 8 * 8;
	}
	/* Each weighs as Hann's window over two of its steps has it. */
	for (int j = 0; j <= factor; j++)
		few->tap[j] = (float)(0.5 +
		    0.5 * cos(3.14159265358979 * j / factor));
	few->likeness = arena_take(
	    a, match_lags(&few->range) * sizeof(*few->likeness));
	reach = (size_t)match_reach(&few->range) + 1;
	return few->likeness != NULL &&
	    row_take(
		a, &few->row, reach, 3 * reach + most / (size_t)factor + 2);
}

int match_few_reach(const struct match_few *few)
{
	return few->factor > 1 ? (match_reach(&few->range) + 1) * few->factor
			       : 0;
}

void match_few_hear(
    struct match_few *few, int64_t from, const float *x, size_t n)
{
	float sum = few->sum, next = few->next_sum;
	int f = few->factor, j = few->summed;

	if (f == 1)
		return;
	row_forget(&few->row, from / f - match_reach(&few->range) - 1,
	    n / (size_t)f + 1);
	for (size_t i = 0; i < n; i++) {
		sum += few->tap[j] * x[i];
		next += few->tap[f - j] * x[i];
		if (++j < f)
			continue;
		row_add(&few->row, sum);
		sum = next;
		next = 0;
		j = 0;
	}
	few->sum = sum;
	few->next_sum = next;
	few->summed = j;
}

struct match match_search(const struct row *row, int64_t sample,
    const struct match_range *r, struct match_few *few, double before)
{
	struct row_at at = row_at(row, sample);
	struct match m;

	if (few->factor == 1)
		curve_coarse(at, r, few->likeness);
	else
		match_curve(row_at(&few->row, sample / few->factor),
		    &few->range, few->likeness);
	m = best_peak(&few->range, few->likeness, before / few->factor);
	m.lag *= few->factor;
	return exact(at, r, m);
}
