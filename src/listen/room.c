/*
 * room.c - how loud the room is beside the string
 *
 * Of all instants at which the pitch moves the mean is taken of how many
 * partials stray (apart.h); where it never moves for long nothing is told.
 */
#include "room.h"

#include <math.h>

#include "apart.h"
#include "evenhand/music/pitch.h"
#include "series.h"

#define MOVES 0.3    /* cents a ms */
#define LOUD_DB 6.0  /* under the middle of all notes */
#define BORDER 0.126 /* of the partials stray at the border of trust */

enum {
	REACH = 2, /* instants on each side of a slope */
	HELD = 4,  /* notes before an instant that is looked at */
	MOVES_LEAST = 80,
	LOOKS_LEAST = 20,
};

struct rooming {
	double sum;
	size_t moving, looked;
};

/* Cents a ms over 20 ms; NAN where not all of it is a note. */
static double slope(const struct instant *m, size_t n, size_t k)
{
	double reach_ms = 2 * REACH * HEARD_STEP_S * 1000;

	if (k < REACH || k + REACH >= n)
		return NAN;
	for (size_t i = k - REACH; i <= k + REACH; i++)
		if (m[i].what != HEARD_NOTE)
			return NAN;
	return fabs(pitch_cents(
		   (double)m[k - REACH].hz, (double)m[k + REACH].hz)) /
	    reach_ms;
}

static void gather(
    struct rooming *r, const struct instant *m, size_t n, double least_db)
{
	int held = 0;

	for (size_t k = 0; k < n; k++) {
		held = m[k].what == HEARD_NOTE ? held + 1 : 0;
		if ((double)m[k].level_db < least_db)
			continue;
		r->moving += slope(m, n, k) > MOVES;
		if (held > HELD && m[k].apart > 0) {
			r->sum += (double)m[k].apart;
			r->looked++;
		}
	}
}

bool room_measure(
    struct arena *a, const struct instant *m, size_t n, double *room)
{
	double *levels = arena_take(a, n * sizeof(*levels));
	struct rooming r = { .sum = 0 };
	size_t notes = 0;

	*room = 0;
	if (levels == NULL)
		return false;
	for (size_t k = 0; k < n; k++)
		if (m[k].what == HEARD_NOTE)
			levels[notes++] = (double)m[k].level_db;
	if (notes == 0)
		return true;
	gather(&r, m, n, series_median(levels, notes) - LOUD_DB);
	if (r.moving < MOVES_LEAST || r.looked < LOOKS_LEAST)
		return true;
	*room = sqrt(r.sum / (double)r.looked / BORDER);
	/* Nothing at all of a room is still an answer. */
	*room = fmax(*room, 0.01);
	return true;
}
