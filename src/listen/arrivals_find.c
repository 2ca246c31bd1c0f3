/*
 * arrivals_find.c - the glides up in a pitch, one by one
 *
 * The lower and the upper eighth of all cents are the two notes, roughly.  A
 * glide goes from clearly below their middle to clearly above it.  What it came
 * from and where it went is then read from the middle half of each stay.
 */
#include <math.h>
#include <string.h>

#include "evenhand/listen/arrivals.h"
#include "series.h"

#define LOWER_SHARE 0.12
#define UPPER_SHARE 0.88
#define CLEARLY 0.22	    /* of the way, beyond the middle */
#define TRAVEL_LEAST 15.0   /* cents */
#define TRAVEL_LEAST_PART 3 /* of what was asked */

enum {
	NEAR = 30,	   /* instants in which half way is looked for */
	STAY_LEAST = 3,	   /* instants to read a note from */
	SHORTEST_STAY = 8, /* instants on the upper note; less is a slip */
};

struct finder {
	const struct instant *m;
	const double *cents;
	double *scratch;
	size_t n;
	double middle, clearly; /* cents */
};

/* False when there are no two notes. */
static bool two_notes(struct finder *f, double travel)
{
	double least = fmax(TRAVEL_LEAST, travel / TRAVEL_LEAST_PART);
	double low, high;
	size_t n = 0;

	for (size_t k = 0; k < f->n; k++)
		if (isfinite(f->cents[k]))
			f->scratch[n++] = f->cents[k];
	if (n < STAY_LEAST)
		return false;
	low = series_share(f->scratch, n, LOWER_SHARE);
	high = series_share(f->scratch, n, UPPER_SHARE);
	f->middle = (low + high) / 2;
	f->clearly = CLEARLY * (high - low);
	return high - low >= least;
}

/*
 * The next crossing of the middle that goes clearly through: +1 up, -1 down, 0
 * none is left.  `side` is where the pitch was clearly before.
 */
static int next_crossing(
    const struct finder *f, size_t *k, int *side, size_t *at)
{
	for (; *k < f->n; ++*k) {
		double c = f->cents[*k] - f->middle;
		int now = c > f->clearly ? 1 : c < -f->clearly ? -1 : 0;
		int before = *side;

		if (!isfinite(c) || now == 0 || now == before)
			continue;
		*side = now;
		if (before == 0)
			continue;
		for (*at = *k; *at > 0 && isfinite(f->cents[*at - 1]) &&
		     (f->cents[*at - 1] - f->middle) * now > 0;)
			--*at;
		return now;
	}
	return 0;
}

/* The middle half of a stay between two crossings; NAN when too little. */
static double stay(const struct finder *f, size_t from, size_t to)
{
	size_t quarter = (to - from) / 4, n = 0;

	for (size_t k = from + quarter; k < to - quarter; k++)
		if (isfinite(f->cents[k]))
			f->scratch[n++] = f->cents[k];
	return n < STAY_LEAST ? NAN : series_median(f->scratch, n);
}

/* The instant before k at which the level was crossed. */
static double crossed_s(const struct finder *f, size_t k, double level)
{
	double a = f->cents[k - 1], b = f->cents[k];

	return ((double)(k - 1) + (level - a) / (b - a)) * HEARD_STEP_S;
}

static bool goes_through(const struct finder *f, size_t k, double level)
{
	return f->cents[k - 1] < level && f->cents[k] >= level;
}

/* The crossing of a level nearest to instant `at`; NAN when there is none. */
static double nearest_s(const struct finder *f, size_t at, double level)
{
	for (size_t off = 0; off < NEAR; off++) {
		if (at + off < f->n && at + off > 0 &&
		    goes_through(f, at + off, level))
			return crossed_s(f, at + off, level);
		if (off < at && goes_through(f, at - off, level))
			return crossed_s(f, at - off, level);
	}
	return NAN;
}

/* The first crossing of a level from instant k on. */
static double first_s(
    const struct finder *f, size_t k, size_t end, double level)
{
	for (; k < end; k++)
		if (k > 0 && goes_through(f, k, level))
			return crossed_s(f, k, level);
	return NAN;
}

static double heard_share(const struct finder *f, size_t from, size_t to)
{
	size_t notes = 0;

	for (size_t k = from; k < to; k++)
		notes += f->m[k].what == HEARD_NOTE;
	return (double)notes / (double)(to - from);
}

/* A glide up at `at`, between the crossings before and after it. */
static bool read_arrival(const struct finder *f, size_t before, size_t at,
    size_t after, struct arrival *out)
{
	double low = stay(f, before, at), high = stay(f, at, after);
	double way = high - low;

	if (after - at < SHORTEST_STAY || !(way > 2 * f->clearly))
		return false;
	*out = (struct arrival) {
		.half_s = nearest_s(f, at, low + way / 2),
		.lower_cents = low,
		.upper_cents = high,
		.sure = heard_share(f, before, after),
	};
	if (!isfinite(out->half_s))
		return false;
	out->nine_s = first_s(
	    f, (size_t)(out->half_s / HEARD_STEP_S), after, low + 0.9 * way);
	return isfinite(out->nine_s);
}

static int all_arrivals(const struct finder *f, struct arrival *out, int max)
{
	size_t k = 0, before = 0, at, after;
	int side = 0, count = 0, turn = next_crossing(f, &k, &side, &at);

	while (turn != 0 && count < max) {
		int next = next_crossing(f, &k, &side, &after);

		if (next == 0)
			after = f->n;
		if (turn > 0 && read_arrival(f, before, at, after, out + count))
			count++;
		before = at;
		at = after;
		turn = next;
	}
	return count;
}

int arrivals_find(struct arena *a, const struct instant *m, size_t n, double hz,
    double travel_cents, struct arrival *out, int max)
{
	struct finder f = { .m = m, .n = n };

	f.cents = series_cents(a, m, n, hz);
	f.scratch = arena_take(a, n * sizeof(*f.scratch));
	if (f.cents == NULL || f.scratch == NULL)
		return -1;
	return two_notes(&f, travel_cents) ? all_arrivals(&f, out, max) : 0;
}
