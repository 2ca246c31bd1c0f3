/*
 * smooth.c - a pitch without its jitter
 *
 * The value of a weighted parabola at its middle is a fixed sum of the points:
 * each counts w (s4 - s2 k k) / (s0 s4 - s2 s2), with s_i the sums of w k^i.
 */
#include "smooth.h"

#include <math.h>

#define TWO_PI 6.283185307179586

struct kernel {
	double at[SMOOTH_REACH + 1]; /* 0 is the middle */
};

static struct kernel kernel(void)
{
	struct kernel c;
	double s0 = 0, s2 = 0, s4 = 0, w[SMOOTH_REACH + 1];

	for (int k = 0; k <= SMOOTH_REACH; k++) {
		double x = cos(TWO_PI / 4 * k / (SMOOTH_REACH + 1));
		double both = k == 0 ? 1 : 2;

		w[k] = x * x;
		s0 += both * w[k];
		s2 += both * w[k] * k * k;
		s4 += both * w[k] * k * k * k * k;
	}
	for (int k = 0; k <= SMOOTH_REACH; k++)
		c.at[k] = w[k] * (s4 - s2 * k * k) / (s0 * s4 - s2 * s2);
	return c;
}

void smooth(struct instant *m, size_t n, double *scratch)
{
	struct kernel c = kernel();
	size_t notes = 0; /* in a row, up to here */

	for (size_t k = 0; k < n; k++)
		scratch[k] = m[k].what == HEARD_NOTE ? log2((double)m[k].hz)
						     : 0;
	for (size_t k = 0; k < n; k++) {
		size_t mid = k - SMOOTH_REACH;
		double sum;

		notes = m[k].what == HEARD_NOTE ? notes + 1 : 0;
		if (notes < 2 * SMOOTH_REACH + 1)
			continue;
		sum = c.at[0] * scratch[mid];
		for (size_t i = 1; i <= SMOOTH_REACH; i++)
			sum += c.at[i] * (scratch[mid - i] + scratch[mid + i]);
		m[mid].hz = (float)exp2(sum);
	}
}

double smooth_share(double hz)
{
	struct kernel c = kernel();
	double share = c.at[0];

	for (int k = 1; k <= SMOOTH_REACH; k++)
		share += 2 * c.at[k] * cos(TWO_PI * hz * HEARD_STEP_S * k);
	return share;
}
