/*
 * series.c - rows of numbers: middle, spread, and a pitch as cents
 */
#include "series.h"

#include <math.h>
#include <stdlib.h>

#include "evenhand/music/pitch.h"

enum { GAP_MAX = 16 }; /* instants without a note that are gone across */

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;

	return (x > y) - (x < y);
}

double series_share(double *x, size_t n, double share)
{
	double at = share * (double)(n - 1);
	size_t i = (size_t)at;

	qsort(x, n, sizeof(*x), by_size);
	if (i + 1 >= n)
		return x[n - 1];
	return x[i] + (at - (double)i) * (x[i + 1] - x[i]);
}

double series_median(double *x, size_t n)
{
	return series_share(x, n, 0.5);
}

double series_mean(const double *x, size_t n)
{
	double sum = 0;

	for (size_t i = 0; i < n; i++)
		sum += x[i];
	return sum / (double)n;
}

double series_sd(const double *x, size_t n)
{
	double mean = series_mean(x, n), sum = 0;

	for (size_t i = 0; i < n; i++)
		sum += (x[i] - mean) * (x[i] - mean);
	return sqrt(sum / (double)n);
}

double *series_cents(
    struct arena *a, const struct instant *m, size_t n, double hz)
{
	double *cents = arena_take(a, n * sizeof(*cents));
	size_t last = n; /* the note before, n: none */

	for (size_t k = 0; cents != NULL && k < n; k++) {
		cents[k] = NAN;
		if (m[k].what != HEARD_NOTE)
			continue;
		cents[k] = pitch_cents(hz, (double)m[k].hz);
		for (size_t j = last + 1;
		     last < n && j < k && k - last <= GAP_MAX; j++)
			cents[j] = cents[last] +
			    (cents[k] - cents[last]) * (double)(j - last) /
				(double)(k - last);
		last = k;
	}
	return cents;
}
