/*
 * bow.c - how calm the bow stayed
 *
 * The level is a slow line of the bow's own plus a smooth function of pitch.
 * Between two instants 60 ms apart the bow's own hardly changes, so the function
 * is found from such differences, as straight pieces between knots some 40
 * cents apart.
 */
#include "evenhand/listen/bow.h"

#include <math.h>

#include "evenhand/music/pitch.h"
#include "least.h"
#include "series.h"

#define KNOT_CENTS 40.0
#define TIE 0.5 /* dB; knots without a say are held near nothing by it */
#define PITCH_LEAST 6.0 /* cents of span; less explains nothing */
#define STOP_DB 12.0	/* under the median of the bow: it stands */
#define HEARD_LEAST 0.5

enum {
	ENDS = 50, /* instants left out at each end: 0.25 s */
	LEAST = 100,
	APART = 12,   /* instants of a difference */
	STOP = 13,    /* instants: more than 60 ms */
	LATE_MAX = 8, /* instants by which loudness may follow pitch */
	KNOTS_MIN = 3,
	KNOTS_MAX = 14,
	BLUR = 2, /* instants on each side over which levels are averaged */
};

struct bowing {
	const struct instant *m; /* of what is measured */
	size_t n;
	double *db, *pitch, *scratch; /* pitch is NAN without a note */
	double low, high;	      /* cents */
	int knots;
};

/* How much each knot has to do with a pitch: two next to it, together 1. */
static void near_knots(const struct bowing *b, double cents, double *x)
{
	double at = (cents - b->low) / (b->high - b->low) * (b->knots - 1);
	int i;

	at = fmin(fmax(at, 0), b->knots - 1);
	i = (int)fmin(at, b->knots - 2);
	for (int j = 0; j < b->knots; j++)
		x[j] = 0;
	x[i] = 1 - (at - i);
	x[i + 1] = at - i;
}

/* The row of a difference, when both pitches are known. */
static bool difference(const struct bowing *b, size_t k, size_t late, double *x)
{
	double before[KNOTS_MAX];

	if (!isfinite(b->pitch[k - late]) ||
	    !isfinite(b->pitch[k - late - APART]))
		return false;
	near_knots(b, b->pitch[k - late], x);
	near_knots(b, b->pitch[k - late - APART], before);
	for (int i = 0; i < b->knots; i++)
		x[i] -= before[i];
	return true;
}

static double dot(const struct bowing *b, const double *c, const double *x)
{
	double sum = 0;

	for (int i = 0; i < b->knots; i++)
		sum += c[i] * x[i];
	return sum;
}

/*
 * The function c when loudness follows pitch so many instants later.  Returns
 * the mean square that it leaves of the differences, INFINITY without any.
 */
static double fit(const struct bowing *b, size_t late, double *c)
{
	struct least l;
	double left = 0, x[KNOTS_MAX];
	size_t n = 0;

	least_begin(&l, b->knots);
	for (int i = 0; i < b->knots; i++) {
		double tie[KNOTS_MAX] = { 0 };

		tie[i] = TIE;
		least_add(&l, tie, 0);
	}
	for (size_t k = LATE_MAX + APART; k < b->n; k++)
		if (difference(b, k, late, x))
			least_add(&l, x, b->db[k] - b->db[k - APART]);
	if (!least_solve(&l, c))
		return INFINITY;
	for (size_t k = LATE_MAX + APART; k < b->n; k++) {
		double is = b->db[k] - b->db[k - APART];

		if (!difference(b, k, late, x))
			continue;
		is -= dot(b, c, x);
		left += is * is;
		n++;
	}
	return n == 0 ? INFINITY : left / (double)n;
}

/*
 * What an instant of that pitch owes to it, taken from its level.  A body that
 * rings answers late; how late is what leaves the least.
 */
static void take_pitch(struct bowing *b)
{
	double c[KNOTS_MAX], best[KNOTS_MAX] = { 0 }, least = INFINITY;
	size_t late = 0;

	if (b->high - b->low < PITCH_LEAST)
		return;
	b->knots = (int)fmin(
	    fmax((b->high - b->low) / KNOT_CENTS + 1, KNOTS_MIN), KNOTS_MAX);
	for (size_t i = 0; i <= LATE_MAX; i++) {
		double left = fit(b, i, c);

		if (left < least) {
			least = left;
			late = i;
			for (int j = 0; j < b->knots; j++)
				best[j] = c[j];
		}
	}
	for (size_t k = b->n; k-- > 0;) {
		double x[KNOTS_MAX];
		size_t of = k > late ? k - late : 0;

		if (!isfinite(b->pitch[of]))
			continue;
		near_knots(b, b->pitch[of], x);
		b->db[k] -= dot(b, best, x);
	}
}

/* Levels averaged a little. */
static void read_levels(struct bowing *b)
{
	for (size_t k = 0; k < b->n; k++) {
		size_t from = k > BLUR ? k - BLUR : 0;
		size_t to = k + BLUR < b->n ? k + BLUR : b->n - 1;
		double sum = 0;

		for (size_t j = from; j <= to; j++)
			sum += (double)b->m[j].level_db;
		b->db[k] = sum / (double)(to - from + 1);
	}
}

/* The span of pitch without its extremes; where the bow stands is none. */
static void read_pitch(struct bowing *b)
{
	double usual;
	size_t notes = 0;

	for (size_t k = 0; k < b->n; k++)
		b->scratch[k] = b->db[k];
	usual = series_median(b->scratch, b->n);
	for (size_t k = 0; k < b->n; k++) {
		if (b->db[k] < usual - STOP_DB)
			b->pitch[k] = NAN;
		if (isfinite(b->pitch[k]))
			b->scratch[notes++] = b->pitch[k];
	}
	b->low = b->high = 0;
	if (notes == 0)
		return;
	b->low = series_share(b->scratch, notes, 0.01);
	b->high = series_share(b->scratch, notes, 0.99);
}

static int count_stops(const struct bowing *b, double usual)
{
	int stops = 0, quiet = 0;

	for (size_t k = 0; k < b->n; k++) {
		quiet = b->db[k] < usual - STOP_DB ? quiet + 1 : 0;
		stops += quiet == STOP;
	}
	return stops;
}

static double heard_share(const struct bowing *b)
{
	size_t notes = 0;

	for (size_t k = 0; k < b->n; k++)
		notes += b->m[k].what == HEARD_NOTE;
	return (double)notes / (double)b->n;
}

/* Where the bow stands the level says nothing about how evenly it goes. */
static void tell(const struct bowing *b, struct bow *out)
{
	double usual, *going = b->scratch;
	size_t n = 0, third;

	for (size_t k = 0; k < b->n; k++)
		going[k] = b->db[k];
	usual = series_median(going, b->n);
	out->stops = count_stops(b, usual);
	for (size_t k = 0; k < b->n; k++)
		if (b->db[k] >= usual - STOP_DB)
			going[n++] = b->db[k];
	third = n / 3;
	out->heard = third > 0;
	if (!out->heard)
		return;
	out->unsteady_db = series_sd(going, n);
	out->drift_db = series_mean(going + (n - third), third) -
	    series_mean(going, third);
}

bool bow_measure(struct arena *a, const struct instant *m, size_t n,
    double from_s, double to_s, struct bow *out)
{
	size_t from = (size_t)fmax(ceil(from_s / HEARD_STEP_S), 0) + ENDS;
	size_t to = (size_t)fmax(floor(to_s / HEARD_STEP_S), 0);
	struct bowing b = { .m = m + from };

	*out = (struct bow) { .heard = false };
	to = to < n ? to : n;
	if (to < from + ENDS + LEAST)
		return true;
	b.n = to - ENDS - from;
	b.pitch = series_cents(a, b.m, b.n, PITCH_ISO_16);
	b.db = arena_take(a, b.n * sizeof(*b.db));
	b.scratch = arena_take(a, b.n * sizeof(*b.scratch));
	if (b.pitch == NULL || b.db == NULL || b.scratch == NULL)
		return false;
	out->sure = heard_share(&b);
	if (out->sure < HEARD_LEAST)
		return true;
	read_levels(&b);
	read_pitch(&b);
	take_pitch(&b);
	tell(&b, out);
	return true;
}
