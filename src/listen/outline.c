/*
 * outline.c - the pitch of a whole recording in a few places
 */
#include "evenhand/listen/outline.h"

#include <stdlib.h>

enum { OUTSIDE = 100 }; /* one in so many places may lie outside the range */

static void join(struct outline_place *a, const struct outline_place *b)
{
	if (b->low_hz > 0 && (a->low_hz <= 0 || b->low_hz < a->low_hz))
		a->low_hz = b->low_hz;
	if (b->high_hz > a->high_hz)
		a->high_hz = b->high_hz;
	if (b->level_db > a->level_db)
		a->level_db = b->level_db;
}

static void halve(struct outline *o)
{
	for (int i = 0; i < OUTLINE_PLACES / 2; i++) {
		struct outline_place both = o->place[2 * (size_t)i];

		join(&both, &o->place[2 * (size_t)i + 1]);
		o->place[i] = both;
	}
	o->places = OUTLINE_PLACES / 2;
	o->each *= 2;
	o->in_last = o->each;
}

void outline_add(struct outline *o, const struct instant *m)
{
	float hz = m->what == HEARD_NOTE ? m->hz : 0;
	struct outline_place one = { hz, hz, m->level_db };

	if (o->places == 0)
		o->each = o->in_last = 1;
	else if (o->in_last < o->each) {
		join(&o->place[o->places - 1], &one);
		o->in_last++;
		return;
	}
	if (o->places == OUTLINE_PLACES)
		halve(o);
	o->place[o->places++] = one;
	o->in_last = 1;
}

double outline_s(const struct outline *o)
{
	size_t whole = o->places > 0 ? (size_t)o->places - 1 : 0;

	return HEARD_STEP_S * (double)(whole * o->each + o->in_last);
}

struct outline_place outline_join(const struct outline *o, int from, int to)
{
	struct outline_place all = o->place[from];

	for (int i = from + 1; i < to && i < o->places; i++)
		join(&all, &o->place[i]);
	return all;
}

static int by_size(const void *a, const void *b)
{
	float x = *(const float *)a, y = *(const float *)b;

	return (x > y) - (x < y);
}

bool outline_range(const struct outline *o, double *low_hz, double *high_hz)
{
	float low[OUTLINE_PLACES], high[OUTLINE_PLACES];
	size_t n = 0, out;

	for (int i = 0; i < o->places; i++) {
		if (o->place[i].low_hz <= 0)
			continue;
		low[n] = o->place[i].low_hz;
		high[n++] = o->place[i].high_hz;
	}
	if (n == 0)
		return false;
	qsort(low, n, sizeof(*low), by_size);
	qsort(high, n, sizeof(*high), by_size);
	out = n / OUTSIDE;
	*low_hz = (double)low[out];
	*high_hz = (double)high[n - 1 - out];
	return true;
}
