/*
 * elsewhere.c - whether the sound is another one than was asked
 */
#include "elsewhere.h"

#include <math.h>

#include "evenhand/listen/live.h"

#define CENTS_AN_OCTAVE 1200.0
#define RATE_LEAST 4000.0    /* samples a second of the look */
#define PERIOD_LEAST 7.0     /* of them in a period of the highest note */
#define LOWER_TIMES 3.2	     /* an octave and a fifth lower is still seen */
#define LOWEST_HZ 25.0	     /* a double bass goes down to 41 or 31 Hz */
#define CLEARLY_ALIKE 0.85   /* a sound that has that period */
#define MORE_ALIKE 0.12	     /* a longer period that is the true one */
#define AS_ALIKE 0.05	     /* a half or a third of it is the true one */
#define NEARLY_AS_ALIKE 0.95 /* the shortest period of those is the period */

enum { PERIOD_SHORTEST = 3 };

struct elsewhere {
	double quick_rate, rate; /* of what is taken; of the look */
	double low_hz, high_hz;	 /* what fits */
	int width;		 /* of pieces at the quick rate */
	int factor;		 /* samples that become one */
	int summed;		 /* how many are in sum */
	float sum;
	struct row row;
	int span; /* the newest samples that are looked at */
	struct match_range range;
	float *likeness;
};

struct elsewhere *elsewhere_new(
    struct arena *a, const struct asked *asked, double rate)
{
	double beyond = exp2(HEARD_BEYOND_CENTS / CENTS_AN_OCTAVE);
	double least = fmax(RATE_LEAST, PERIOD_LEAST * asked->high_hz);
	double lowest = fmax(LOWEST_HZ, asked->low_hz / LOWER_TIMES);
	struct elsewhere *e = arena_take(a, sizeof(*e));

	if (e == NULL)
		return NULL;
	e->quick_rate = rate;
	e->low_hz = asked->low_hz / beyond;
	e->high_hz = asked->high_hz * beyond;
	e->width = match_width(rate / e->low_hz);
	e->factor = (int)fmax(1, floor(rate / least));
	e->rate = rate / e->factor;
	e->range.from = PERIOD_SHORTEST;
	e->range.to = (int)ceil(e->rate / lowest);
	e->range.width = match_width(e->range.to);
	e->span = 2 * match_reach(&e->range) + 1;
	e->likeness = arena_take(
	    a, match_lags(&e->range) * sizeof(*e->likeness));
	if (e->likeness == NULL ||
	    !row_take(a, &e->row, (size_t)e->span,
		2 * (size_t)e->span + LIVE_TAKE_MAX))
		return NULL;
	return e;
}

void elsewhere_take(struct elsewhere *e, const float *x, size_t n)
{
	float sum = e->sum;
	int summed = e->summed;

	row_forget(&e->row, row_end(&e->row) - e->span, n);
	for (size_t i = 0; i < n; i++) {
		sum += x[i];
		if (++summed < e->factor)
			continue;
		row_add(&e->row, sum / (float)e->factor);
		sum = 0;
		summed = 0;
	}
	e->sum = sum;
	e->summed = summed;
}

/* The shortest period that is nearly as alike as the best. */
static struct match true_period(const struct elsewhere *e)
{
	const float *y = e->likeness;
	int lags = (int)match_lags(&e->range);
	float best = 0;

	for (int i = 1; i + 1 < lags; i++)
		if (y[i] > y[i - 1] && y[i] >= y[i + 1] && y[i] > best)
			best = y[i];
	for (int i = 1; i + 1 < lags; i++)
		if (y[i] > y[i - 1] && y[i] >= y[i + 1] &&
		    (double)y[i] >= NEARLY_AS_ALIKE * (double)best)
			return (
			    struct match) { e->range.from + i, (double)y[i] };
	return (struct match) { 0, 0 };
}

/* Whether the sound repeats itself near that lag as well as likeness says. */
static bool as_alike(
    const struct elsewhere *e, struct row_at at, double lag, double likeness)
{
	int about = (int)(lag + 0.5);
	struct match_range r = { about - 1, about + 1, e->width };
	float y[3];

	if (r.from < 1)
		return false;
	match_curve(at, &r, y);
	return fmax(fmax((double)y[0], (double)y[1]), (double)y[2]) >=
	    likeness - AS_ALIKE;
}

double elsewhere_look(
    struct elsewhere *e, struct row_at at, double hz, double likeness)
{
	struct match m;
	double found;

	for (int part = 2; part <= 3 && hz > 0; part++)
		if (as_alike(e, at, e->quick_rate / hz / part, likeness))
			return hz * part;
	/* No longer period can be so much more alike than this one is. */
	if (hz > 0 && likeness + MORE_ALIKE > 1)
		return 0;
	match_curve(row_at(&e->row, row_end(&e->row) - e->span / 2 - 1),
	    &e->range, e->likeness);
	m = true_period(e);
	found = m.lag > 0 ? e->rate / m.lag : 0;
	if (found >= e->low_hz && found <= e->high_hz)
		return 0;
	if (m.likeness < CLEARLY_ALIKE ||
	    (hz > 0 && m.likeness < likeness + MORE_ALIKE))
		return 0;
	return found;
}
