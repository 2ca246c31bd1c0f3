/*
 * match.c - how alike a sound is to itself some time later
 */
#include "match.h"

#include <math.h>

#define JUMP_COST 0.03 /* of likeness, for an octave's jump */
#define LONG_COST 0.02 /* of likeness, for each octave a lag is longer */

int match_reach(const struct match_range *r)
{
	return (r->to + 1 + r->width) / 2 + 1;
}

bool match_work_take(
    struct arena *a, const struct match_range *r, struct match_work *work)
{
	size_t around = 2 * (size_t)match_reach(r) + 2;

	work->squares = arena_take(a, around * sizeof(double));
	work->likeness = arena_take(a, around * sizeof(float));
	return work->squares != NULL && work->likeness != NULL;
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

/* squares[reach + 1 + i] is the energy of all up to sample i. */
static void sum_squares(const float *x, int reach, double *squares)
{
	squares[0] = 0;
	for (int i = -reach; i <= reach; i++)
		squares[reach + i + 1] = squares[reach + i] +
		    (double)x[i] * (double)x[i];
}

static float likeness(
    const float *x, const struct match_range *r, int lag, const double *squares)
{
	int reach = match_reach(r);
	int a = reach - (lag + r->width) / 2, b = a + lag;
	double both = squares[a + r->width] - squares[a] +
	    squares[b + r->width] - squares[b];
	double alike = product(x + a - reach, x + b - reach, r->width);

	return both > 0 ? (float)(2 * alike / both) : 0;
}

void match_curve(
    const float *x, const struct match_range *r, struct match_work *work)
{
	sum_squares(x, match_reach(r), work->squares);
	for (int lag = r->from; lag <= r->to; lag++)
		work->likeness[lag - r->from] = likeness(
		    x, r, lag, work->squares);
}

/* Every second lag worked out, and the others laid between. */
static void curve_coarse(
    const float *x, const struct match_range *r, struct match_work *work)
{
	int lags = r->to - r->from + 1;
	float *y = work->likeness;

	sum_squares(x, match_reach(r), work->squares);
	for (int i = 0; i < lags; i += 2)
		y[i] = likeness(x, r, r->from + i, work->squares);
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

struct match match_best(
    const struct match_range *r, const struct match_work *work, double before)
{
	struct match best = { 0, 0 };
	double most = -2;

	for (int lag = r->from + 1; lag < r->to; lag++) {
		const float *y = work->likeness + (lag - r->from);
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

/* A peak with all lags about it worked out; squares are there. */
static struct match exact(const float *x, const struct match_range *r,
    struct match_work *work, struct match coarse)
{
	int at = (int)(coarse.lag + 0.5), from = at - 3 - r->from;
	float *y = work->likeness;
	struct match best = { 0, 0 };

	if (coarse.lag <= 0)
		return coarse;
	from = from < 0 ? 0 : from;
	for (int i = from; i <= from + 6 && r->from + i <= r->to; i++)
		y[i] = likeness(x, r, r->from + i, work->squares);
	for (int i = from + 1; i < from + 6 && r->from + i < r->to; i++) {
		struct match m;

		if (y[i] < y[i - 1] || y[i] <= y[i + 1])
			continue;
		m = peak(y + i, r->from + i);
		if (m.likeness > best.likeness)
			best = m;
	}
	return best;
}

/* The shortest lag keeps this many of the fewer samples. */
enum { FEW_LEAST = 14, FEW_MOST = 4 };

bool match_few_take(
    struct arena *a, const struct match_range *r, struct match_few *few)
{
	int factor = r->from / FEW_LEAST;

	factor = factor < 1 ? 1 : factor > FEW_MOST ? FEW_MOST : factor;
	few->factor = factor;
	few->range.from = r->from / factor - 1;
	few->range.to = r->to / factor + 2;
	few->range.width = r->width / factor / 8 * 8;
	few->x = arena_take(
	    a, (2 * (size_t)match_reach(&few->range) + 1) * sizeof(float));
	return few->x != NULL && match_work_take(a, &few->range, &few->work);
}

int match_few_reach(const struct match_few *few)
{
	return few->factor > 1 ? (match_reach(&few->range) + 1) * few->factor
			       : 0;
}

/* Each weighs as Hann's window over two of its steps has it. */
static void fill_few(const float *x, struct match_few *few)
{
	int reach = match_reach(&few->range), f = few->factor;
	float tap[FEW_MOST + 1];

	for (int j = 0; j <= f; j++)
		tap[j] = (float)(0.5 + 0.5 * cos(3.14159265358979 * j / f));
	for (int i = -reach; i <= reach; i++) {
		const float *at = x + (long)i * f;
		float sum = at[0];

		for (int j = 1; j < f; j++)
			sum += tap[j] * (at[j] + at[-j]);
		few->x[i + reach] = sum;
	}
}

struct match match_search(const float *x, const struct match_range *r,
    struct match_work *work, struct match_few *few, double before)
{
	struct match m;

	if (few->factor == 1) {
		curve_coarse(x, r, work);
		return exact(x, r, work, match_best(r, work, before));
	}
	fill_few(x, few);
	match_curve(few->x + match_reach(&few->range), &few->range, &few->work);
	m = match_best(&few->range, &few->work, before / few->factor);
	m.lag *= few->factor;
	sum_squares(x, match_reach(r), work->squares);
	return exact(x, r, work, m);
}

double match_near(
    const struct match_range *r, const struct match_work *work, double lag)
{
	int at = (int)(lag + 0.5);
	double best = 0;

	for (int i = at - 1; i <= at + 1; i++)
		if (i >= r->from && i <= r->to)
			best = fmax(best, (double)work->likeness[i - r->from]);
	return best;
}
