/*
 * knocks.c - the knocks at the beginnings of bows taken out of what was heard
 *
 * A loudspeaker's knock has a pitch and sounds just where the bow turns and the
 * string is softest, so for some 40 ms it would be taken for a note.  It comes
 * within a ms; no bow grows so quickly.  Where the first sound of a bow is taken
 * for a knock, its pitch is not sure anyway.  Ticks need nothing of this: they
 * sound while the string does, and what they do to a few partials their median
 * leaves out.
 */
#include "knocks.h"

#define NEAR_S 0.3 /* of an edge: what carries the sound takes its time */
#define RISE_DB 6.0

enum {
	RISES = 2,   /* instants */
	BEFORE = 3,  /* instants that already hear a little of it */
	BEHIND = 10, /* until it is 40 dB down (voices.h) */
};

/* The quickest rise of level near an edge; 0 when there is none. */
static size_t knock_at(const struct instant *m, size_t n, double edge_s)
{
	double most = RISE_DB;
	size_t at = 0;

	for (size_t k = RISES; k < n; k++) {
		double from_edge = (double)k * HEARD_STEP_S - edge_s;
		double rise = (double)m[k].level_db -
		    (double)m[k - RISES].level_db;

		if (from_edge < -NEAR_S || from_edge > NEAR_S || rise <= most)
			continue;
		most = rise;
		at = k;
	}
	return at;
}

void knocks_take(struct instant *m, size_t n, const double *edge_s, int edges)
{
	for (int i = 0; i < edges; i++) {
		size_t at = knock_at(m, n, edge_s[i]);
		size_t from = at > BEFORE ? at - BEFORE : 0;

		for (size_t k = from; at > 0 && k < n && k < at + BEHIND; k++) {
			m[k].what = HEARD_NOISE;
			m[k].hz = 0;
		}
	}
}
