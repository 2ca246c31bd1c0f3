/*
 * row.c - the newest samples of a stream, and how much energy lies before each
 */
#include "row.h"

#include <assert.h>
#include <string.h>

bool row_take(struct arena *a, struct row *r, size_t before, size_t room)
{
	assert(before <= room);
	*r = (struct row) { .room = room };
	r->x = arena_take(a, room * sizeof(*r->x));
	r->energy = arena_take(a, (room + 1) * sizeof(*r->energy));
	if (r->x == NULL || r->energy == NULL)
		return false;
	r->first = -(int64_t)before;
	r->n = before;
	return true;
}

void row_forget(struct row *r, int64_t from, size_t more)
{
	size_t drop = 0;
	double gone;

	if (r->n + more <= r->room)
		return;
	if (from > r->first)
		drop = (size_t)(from - r->first);
	drop = drop < r->n ? drop : r->n;
	gone = r->energy[drop];
	r->n -= drop;
	r->first += (int64_t)drop;
	memmove(r->x, r->x + drop, r->n * sizeof(*r->x));
	for (size_t i = 0; i <= r->n; i++)
		r->energy[i] = r->energy[i + drop] - gone;
	assert(r->n + more <= r->room);
}

struct row_at row_at(const struct row *r, int64_t sample)
{
	assert(sample >= r->first && sample <= row_end(r));
	return (struct row_at) { r->x + (sample - r->first),
		r->energy + (sample - r->first) };
}
