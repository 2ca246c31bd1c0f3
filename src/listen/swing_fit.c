/*
 * swing_fit.c - one cycle of a vibrato as a slope and two sines
 */
#include "swing_fit.h"

#include <math.h>

#include "evenhand/listen/heard.h"
#include "least.h"
#include "smooth.h"

#define TWO_PI 6.283185307179586

enum {
	UNKNOWNS = 6, /* middle, slope, and two sines of two parts each */
	MOMENTS_LEAST = 10,
	POINTS = 64, /* at which top and bottom are looked for */
};

static void row(double share, double *x)
{
	x[0] = 1;
	x[1] = share - 0.5;
	x[2] = cos(TWO_PI * share);
	x[3] = sin(TWO_PI * share);
	x[4] = cos(2 * TWO_PI * share);
	x[5] = sin(2 * TWO_PI * share);
}

/* Top to bottom of the two sines, each given back what smoothing took. */
static double width(const double *c, double rate_hz)
{
	double one = 1 / smooth_share(rate_hz);
	double two = 1 / smooth_share(2 * rate_hz);
	double low = 0, high = 0;

	for (int i = 0; i < POINTS; i++) {
		double x[UNKNOWNS], y;

		row((double)i / POINTS, x);
		y = one * (c[2] * x[2] + c[3] * x[3]) +
		    two * (c[4] * x[4] + c[5] * x[5]);
		low = fmin(low, y);
		high = fmax(high, y);
	}
	return (high - low) / 2;
}

bool swing_fit(
    const double *cents, double from, double period, struct swing_fit *out)
{
	int first = (int)ceil(from), last = (int)floor(from + period);
	struct least l;
	double c[UNKNOWNS], left = 0;

	if (last - first < MOMENTS_LEAST)
		return false;
	least_begin(&l, UNKNOWNS);
	for (int k = first; k <= last; k++) {
		double x[UNKNOWNS];

		if (!isfinite(cents[k]))
			return false;
		row((k - from) / period, x);
		least_add(&l, x, cents[k]);
	}
	if (!least_solve(&l, c))
		return false;
	for (int k = first; k <= last; k++) {
		double x[UNKNOWNS], is = cents[k];

		row((k - from) / period, x);
		for (int i = 0; i < UNKNOWNS; i++)
			is -= c[i] * x[i];
		left += is * is;
	}
	out->width = width(c, 1 / (period * HEARD_STEP_S));
	out->noise = sqrt(left / (last - first + 1 - UNKNOWNS));
	return true;
}
