/*
 * bow_find.c - where bows begin, turn and end
 *
 * Loud is what lies less than 20 dB under the loud tenth of all.  A turn is a
 * place that is 6 dB quieter than both sides of it 0.15 s away, and the
 * quietest for 0.25 s on both.
 */
#include <math.h>

#include "evenhand/listen/bow.h"
#include "series.h"

#define LOUD_SHARE 0.9
#define LOUD_DB 20.0
#define TURN_DB 6.0

enum {
	BESIDE = 30, /* instants from a turn to what is loud again */
	ALONE = 50,  /* instants on both sides of which it is the quietest */
	BLUR = 3,    /* instants on each side over which levels are averaged */
};

struct levels {
	double *db;
	size_t n;
	double least; /* of what is loud */
};

static double blurred(const struct instant *m, size_t n, size_t k)
{
	size_t from = k > BLUR ? k - BLUR : 0;
	size_t to = k + BLUR < n ? k + BLUR : n - 1;
	double sum = 0;

	for (size_t j = from; j <= to; j++)
		sum += (double)m[j].level_db;
	return sum / (double)(to - from + 1);
}

static bool quietest(const struct levels *l, size_t k)
{
	double db = l->db[k];

	for (size_t by = 1; by <= ALONE; by++)
		if (l->db[k - by] <= db || l->db[k + by] < db)
			return false;
	return true;
}

static bool turns(const struct levels *l, size_t k)
{
	return k >= ALONE && k + ALONE < l->n &&
	    l->db[k] < l->db[k - BESIDE] - TURN_DB &&
	    l->db[k] < l->db[k + BESIDE] - TURN_DB &&
	    l->db[k - BESIDE] > l->least && l->db[k + BESIDE] > l->least &&
	    quietest(l, k);
}

/* Quiet for longer than a turn from here on. */
static bool pauses(const struct levels *l, size_t k)
{
	for (size_t j = k; j < l->n && j < k + BESIDE; j++)
		if (l->db[j] >= l->least)
			return false;
	return true;
}

static int find(const struct levels *l, double *edge_s, int max)
{
	bool sounding = false;
	size_t last = 0;
	int n = 0;

	for (size_t k = 0; k < l->n && n < max; k++) {
		bool loud = l->db[k] >= l->least;
		bool edge = sounding ? turns(l, k) || pauses(l, k) : loud;

		if (loud)
			last = k;
		if (!edge)
			continue;
		edge_s[n++] = (double)k * HEARD_STEP_S;
		sounding = !sounding || !pauses(l, k);
	}
	if (sounding && n < max)
		edge_s[n++] = (double)(last + 1) * HEARD_STEP_S;
	return n;
}

int bow_find(
    struct arena *a, const struct instant *m, size_t n, double *edge_s, int max)
{
	struct levels l = { .n = n };
	double *sorted = arena_take(a, n * sizeof(*sorted));

	l.db = arena_take(a, n * sizeof(*l.db));
	if (sorted == NULL || l.db == NULL)
		return -1;
	if (n == 0)
		return 0;
	for (size_t k = 0; k < n; k++)
		sorted[k] = l.db[k] = blurred(m, n, k);
	l.least = series_share(sorted, n, LOUD_SHARE) - LOUD_DB;
	return find(&l, edge_s, max);
}
