/*
 * room.c - how loud the room is beside the string
 *
 * Noise and a bow's jitter set partials apart too, whether the pitch moves or
 * not; so what is found after some rest, when the room has caught up, is taken
 * away in squares.  The quicker the hand, the fewer partials still lie within
 * what the room answers with: what a room does at the border of trust grows with
 * the slope.
 *
 * The border was found on tones with direct sound 12 to -3 dB over rooms of 0.2
 * to 0.8 s RT60, glides of 50 to 500 cents and swings of 15 and 25.
 */
#include "room.h"

#include <math.h>

#include "evenhand/music/pitch.h"
#include "series.h"

#define MOVES 0.3 /* cents a ms */
#define RESTS 0.15
#define LOUD_DB 6.0	   /* under the middle of all notes */
#define OWN_CENTS 12.0	   /* what a bow sets apart by itself, if none rested */
#define BORDER_CENTS 36.0  /* of a room at the border, when nearly at rest */
#define BORDER_A_SLOPE 9.5 /* more for each cent a ms */

enum {
	REACH = 2,   /* instants on each side of a slope */
	RESTED = 12, /* instants, 60 ms */
	MOVES_LEAST = 80,
	RESTS_LEAST = 30,
};

struct rooming {
	double *moves, *rests, *slopes, *levels;
	size_t moving, resting, notes;
};

/* Cents a ms over 20 ms; NAN where not all of it is a note. */
static double slope(const struct instant *m, size_t n, size_t k)
{
	double reach_ms = 2 * REACH * HEARD_STEP_S * 1000;

	if (k < REACH || k + REACH >= n)
		return NAN;
	for (size_t i = k - REACH; i <= k + REACH; i++)
		if (m[i].what != HEARD_NOTE || m[i].apart <= 0)
			return NAN;
	return fabs(pitch_cents(
		   (double)m[k - REACH].hz, (double)m[k + REACH].hz)) /
	    reach_ms;
}

static void gather(struct rooming *r, const struct instant *m, size_t n)
{
	double least;
	int rested = 0;

	for (size_t k = 0; k < n; k++)
		if (m[k].what == HEARD_NOTE)
			r->levels[r->notes++] = (double)m[k].level_db;
	if (r->notes == 0)
		return;
	least = series_median(r->levels, r->notes) - LOUD_DB;
	for (size_t k = 0; k < n; k++) {
		double s = slope(m, n, k);

		rested = s < RESTS ? rested + 1 : 0;
		if ((double)m[k].level_db < least)
			continue;
		if (s > MOVES) {
			r->slopes[r->moving] = s;
			r->moves[r->moving++] = (double)m[k].apart;
		} else if (rested > RESTED) {
			r->rests[r->resting++] = (double)m[k].apart;
		}
	}
}

bool room_measure(
    struct arena *a, const struct instant *m, size_t n, double *room)
{
	double *rows = arena_take(a, 4 * n * sizeof(*rows));
	struct rooming r = { .moving = 0 };
	double moves, rests = OWN_CENTS, own;

	*room = 0;
	if (rows == NULL)
		return false;
	r.moves = rows;
	r.rests = rows + n;
	r.slopes = rows + 2 * n;
	r.levels = rows + 3 * n;
	gather(&r, m, n);
	if (r.moving < MOVES_LEAST)
		return true;
	moves = series_median(r.moves, r.moving);
	if (r.resting >= RESTS_LEAST)
		rests = series_median(r.rests, r.resting);
	own = sqrt(fmax(moves * moves - rests * rests, 0));
	*room = own /
	    (BORDER_CENTS + BORDER_A_SLOPE * series_median(r.slopes, r.moving));
	/* Nothing at all of a room is still an answer. */
	*room = fmax(*room, 0.01);
	return true;
}
