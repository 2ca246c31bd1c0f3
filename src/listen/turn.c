/*
 * turn.c - what was heard of one turn, in one value
 *
 * Only the instants of its bows and a little at both ends are looked at: what
 * sounds in the change before and after is none of the turn's.  A bow that was
 * turned a little early or late is measured where it was turned.
 */
#include "evenhand/listen/turn.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "evenhand/music/pitch.h"
#include "knocks.h"
#include "room.h"
#include "runs.h"
#include "series.h"
#include "turn_tops.h"

#define AROUND_S 0.25	   /* before the first edge and behind the last */
#define TURNED_S 0.35	   /* early or late by this much a bow is turned */
#define SHARE_LEAST 0.3	   /* of a turn; less says nothing */
#define LITTLE 0.1	   /* of a turn: some of it was there */
#define BOW_LEAST 0.5	   /* of a bow, to count its tops */
#define LOUD_DB 20.0	   /* under the middle of all notes */
#define UNCLEAR_PULSES 0.5 /* loud but no note: a top may hide in it */
#define UNCLEAR_S 0.15
#define SILENT_DB (-65.0) /* the loud tenth of a turn, of full scale */
#define HIGH_PART 0.65	  /* of the way: it began on the upper note */

enum {
	FIRST_NOTES = 16, /* instants at the beginning of the sound */
	ARRIVALS_MAX = 256,
	EDGES_MAX = 64,
};

/* The instants of a turn; all seconds are from the first of them. */
struct turning {
	struct arena *a;
	struct turn_asked asked;
	struct instant *m;
	size_t n;
	double shift_s; /* of what was given, at that first one */
	double loud_db; /* what is louder sounds */
	double edge_s[TURN_BOWS_MAX + 1]; /* where it was turned */
};

static size_t instant_of(double s, size_t n)
{
	double k = floor(s / HEARD_STEP_S + 0.5);

	return k <= 0 ? 0 : k >= (double)n ? n : (size_t)k;
}

static bool cut(struct turning *t, const struct instant *m, size_t n)
{
	struct turn_asked *asked = &t->asked;
	size_t from = instant_of(asked->edge_s[0] - AROUND_S, n);
	size_t to = instant_of(asked->edge_s[asked->bows] + AROUND_S, n);

	t->n = to > from ? to - from : 0;
	t->m = arena_take(t->a, t->n * sizeof(*t->m));
	if (t->m == NULL)
		return false;
	if (t->n > 0)
		memcpy(t->m, m + from, t->n * sizeof(*t->m));
	t->shift_s = (double)from * HEARD_STEP_S;
	for (int i = 0; i <= asked->bows; i++)
		asked->edge_s[i] -= t->shift_s;
	/* The first one comes before the string and is no arrival. */
	knocks_take(t->m, t->n, asked->edge_s + 1, asked->bows - 1);
	return true;
}

/* Share of the instants between two that were heard as that. */
static double share(
    const struct turning *t, enum heard what, double from_s, double to_s)
{
	size_t from = instant_of(from_s, t->n), to = instant_of(to_s, t->n);
	double whole = (to_s - from_s) / HEARD_STEP_S;
	size_t count = 0;

	for (size_t k = from; k < to; k++)
		count += t->m[k].what == what;
	return whole > 0 ? (double)count / whole : 0;
}

/* What can be said of it at all. */
static enum turn_answer answer(
    const struct turning *t, const double *sorted_db, double notes)
{
	double from = t->asked.edge_s[0], to = t->asked.edge_s[t->asked.bows];
	double other = share(t, HEARD_OTHER, from, to);
	double noise = share(t, HEARD_NOISE, from, to);

	if (notes >= SHARE_LEAST && notes >= other)
		return runs_speak(t->m, t->n, notes) ? TURN_NOISE : TURN_HEARD;
	if (t->n == 0 || sorted_db[t->n * 9 / 10] < SILENT_DB)
		return TURN_SILENT;
	if (other > LITTLE && other >= notes)
		return TURN_ELSEWHERE;
	if (notes > LITTLE)
		return TURN_LITTLE;
	return noise > LITTLE ? TURN_NOISE : TURN_SILENT;
}

static double *levels(const struct turning *t)
{
	double *db = arena_take(t->a, t->n * sizeof(*db));

	for (size_t k = 0; db != NULL && k < t->n; k++)
		db[k] = (double)t->m[k].level_db;
	if (db != NULL && t->n > 0)
		series_median(db, t->n);
	return db;
}

static bool find_loud(struct turning *t)
{
	double *db = arena_take(t->a, t->n * sizeof(*db));
	size_t n = 0;

	if (db == NULL)
		return false;
	for (size_t k = 0; k < t->n; k++)
		if (t->m[k].what == HEARD_NOTE)
			db[n++] = (double)t->m[k].level_db;
	t->loud_db = n > 0 ? series_median(db, n) - LOUD_DB : 0;
	return true;
}

/*
 * Each edge that was asked goes to the turn of the bow that is near it; where
 * what is looked at begins and ends while it sounds is no edge.
 */
static bool find_edges(struct turning *t)
{
	const struct turn_asked *asked = &t->asked;
	double found[EDGES_MAX], end_s = (double)t->n * HEARD_STEP_S;
	int n = bow_find(t->a, t->m, t->n, found, EDGES_MAX);

	for (int i = 0; i <= asked->bows; i++) {
		double near = TURNED_S;

		t->edge_s[i] = asked->edge_s[i];
		for (int j = 0; j < n; j++) {
			double off = fabs(found[j] - asked->edge_s[i]);

			if (off >= near || found[j] <= 0 || found[j] >= end_s)
				continue;
			near = off;
			t->edge_s[i] = found[j];
		}
	}
	return n >= 0;
}

/* The longest stretch that sounds but is no note, in seconds. */
static double unclear_s(const struct turning *t, double from_s, double to_s)
{
	size_t to = instant_of(to_s, t->n), row = 0, longest = 0;

	for (size_t k = instant_of(from_s, t->n); k < to; k++) {
		bool loud = (double)t->m[k].level_db >= t->loud_db;

		row = loud && t->m[k].what != HEARD_NOTE ? row + 1 : 0;
		longest = row > longest ? row : longest;
	}
	return (double)longest * HEARD_STEP_S;
}

static bool listened(const struct turning *t, int i)
{
	double from = t->edge_s[i], to = t->edge_s[i + 1];
	double pulse = (to - from) / fmax(1, t->asked.pulses);

	return share(t, HEARD_NOTE, from, to) >= BOW_LEAST &&
	    unclear_s(t, from, to) <= fmax(UNCLEAR_S, UNCLEAR_PULSES * pulse);
}

/* Whether the sound began on the upper note. */
static bool begins_high(const struct turning *t, const struct arrival *at)
{
	double cents[FIRST_NOTES], way = at->upper_cents - at->lower_cents;
	size_t n = 0;

	for (size_t k = 0; k < t->n && n < FIRST_NOTES; k++)
		if (t->m[k].what == HEARD_NOTE)
			cents[n++] = pitch_cents(
			    t->asked.lower_hz, (double)t->m[k].hz);
	return n > 0 &&
	    series_median(cents, n) > at->lower_cents + HIGH_PART * way;
}

static void sum_tops(struct turn_heard *out)
{
	int asked = 0, heard = 0;

	for (int i = 0; i < out->bows; i++) {
		if (!out->bow[i].listened)
			continue;
		asked += out->bow[i].asked;
		heard += out->bow[i].tops;
		out->bows_full += out->bow[i].full;
	}
	out->arrivals.asked = asked;
	if (out->arrivals.heard > 0)
		out->arrivals.heard = heard;
}

static bool hear_tops(struct turning *t, struct turn_heard *out)
{
	const struct turn_asked *asked = &t->asked;
	struct arrival at[ARRIVALS_MAX];
	double pulse_s[TURN_BOWS_MAX * TURN_PULSES_MAX];
	struct arrivals_asked wish = { asked->travel_cents, pulse_s,
		asked->pulses * asked->bows, asked->latency_known };
	struct tops tops = { .begin_s = t->edge_s[0], .at = at };

	if (asked->travel_cents <= 0 || asked->pulses == 0)
		return true;
	for (int i = 0; i < wish.pulses; i++) {
		int bow = i / asked->pulses, pulse = i % asked->pulses;
		double from = asked->edge_s[bow], to = asked->edge_s[bow + 1];

		pulse_s[i] = from + pulse * (to - from) / asked->pulses;
	}
	tops.n = arrivals_find(t->a, t->m, t->n, asked->lower_hz,
	    asked->travel_cents, at, ARRIVALS_MAX);
	if (tops.n < 0)
		return false;
	out->arrivals = arrivals_measure(&wish, at, tops.n);
	tops.begins_high = tops.n > 0 && begins_high(t, at);
	turn_tops(asked, &tops, out->bow);
	sum_tops(out);
	return true;
}

static bool hear_bows(struct turning *t, struct turn_heard *out)
{
	double unsteady[TURN_BOWS_MAX];
	size_t n = 0;

	out->calm_sure = 1;
	for (int i = 0; i < out->bows; i++) {
		struct bow *b = &out->bow[i].bow;

		out->bow[i].listened = listened(t, i);
		out->bows_listened += out->bow[i].listened;
		if (!bow_measure(
			t->a, t->m, t->n, t->edge_s[i], t->edge_s[i + 1], b))
			return false;
		if (!b->heard)
			continue;
		unsteady[n++] = b->unsteady_db;
		out->stops += b->stops;
		out->calm_sure = fmin(out->calm_sure, b->sure);
		if (fabs(b->drift_db) > fabs(out->drift_db))
			out->drift_db = b->drift_db;
	}
	out->calm_known = n > 0;
	if (n > 0)
		out->unsteady_db = series_median(unsteady, n);
	else
		out->calm_sure = 0;
	return true;
}

static bool hear_sway(struct turning *t, struct turn_heard *out)
{
	struct sway *w = &out->sway;

	if (!t->asked.sways)
		return true;
	if (!sway_measure(t->a, t->m, t->n, t->asked.lower_hz, w))
		return false;
	w->from_s += w->heard ? t->shift_s : 0;
	w->to_s += w->heard ? t->shift_s : 0;
	out->width_known = w->heard && out->distance != DISTANCE_FAR;
	if (!out->width_known)
		w->width_cents = w->width_spread = 0;
	return true;
}

enum turn_distance turn_distance_of(double room)
{
	if (room >= ROOM_FAR)
		return DISTANCE_FAR;
	return room > 0 && room <= ROOM_NEAR ? DISTANCE_NEAR : DISTANCE_UNKNOWN;
}

bool turn_measure(struct arena *a, const struct turn_asked *asked,
    const struct instant *m, size_t n, struct turn_heard *out)
{
	struct turning t = { .a = a, .asked = *asked };
	double *sorted_db, from, to;

	assert(asked->bows >= 1 && asked->bows <= TURN_BOWS_MAX);
	assert(asked->pulses >= 0 && asked->pulses <= TURN_PULSES_MAX);
	*out = (struct turn_heard) { .distance = asked->distance,
		.bows = asked->bows };
	if (!cut(&t, m, n))
		return false;
	from = t.asked.edge_s[0];
	to = t.asked.edge_s[asked->bows];
	sorted_db = levels(&t);
	if (sorted_db == NULL)
		return false;
	out->share = fmin(share(&t, HEARD_NOTE, from, to), 1);
	out->answer = answer(&t, sorted_db, out->share);
	if (out->answer != TURN_HEARD)
		return true;
	if (!room_measure(a, t.m, t.n, &out->room))
		return false;
	if (out->distance == DISTANCE_UNKNOWN)
		out->distance = turn_distance_of(out->room);
	return find_loud(&t) && find_edges(&t) && hear_bows(&t, out) &&
	    hear_tops(&t, out) && hear_sway(&t, out);
}
