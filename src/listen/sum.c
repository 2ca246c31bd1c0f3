/*
 * sum.c - what all stretches of a recording come to
 */
#include "evenhand/listen/sum.h"

#include <math.h>

#include "evenhand/music/pitch.h"

static void add(struct sum_of *s, double x, double weight)
{
	if (weight <= 0)
		return;
	s->least = s->weight > 0 ? fmin(s->least, x) : x;
	s->most = s->weight > 0 ? fmax(s->most, x) : x;
	s->weight += weight;
	s->total += weight * x;
}

double sum_mean(const struct sum_of *x)
{
	return x->weight > 0 ? x->total / x->weight : 0;
}

/* The stretch with so many others below it. */
static double room_of(const struct sum *s, int below)
{
	int k = 0;

	for (; k < SUM_ROOMS - 1; k++) {
		below -= s->of_room[k];
		if (below < 0)
			break;
	}
	return (k + 0.5) / SUM_ROOM_PARTS;
}

double sum_room(const struct sum *s)
{
	if (s->rooms == 0)
		return 0;
	return (room_of(s, (s->rooms - 1) / 2) + room_of(s, s->rooms / 2)) / 2;
}

enum turn_distance sum_distance(const struct sum *s)
{
	return turn_distance_of(sum_room(s));
}

static void add_room(struct sum *s, double room)
{
	if (room <= 0)
		return;
	s->rooms++;
	s->of_room[(int)fmin(room * SUM_ROOM_PARTS, SUM_ROOMS - 1)]++;
}

static void add_glides(struct sum *s, const struct stretch *x)
{
	double first = x->arrival[0].half_s;
	double last = x->arrival[x->arrivals - 1].half_s;

	s->arrivals += x->arrivals;
	add(&s->way_cents, x->sum.travel_cents, x->arrivals);
	add(&s->way_spread, x->sum.travel_spread, x->arrivals);
	add(&s->pace_hz, (x->arrivals - 1) / (last - first), x->arrivals);
	if (x->sum.even_known)
		add(&s->even, x->sum.unevenness, x->arrivals);
}

static void add_vibrato(struct sum *s, const struct sway *w, double hz)
{
	s->cycles += w->cycles;
	add(&s->rate_hz, w->rate_hz, w->cycles);
	add(&s->width_cents, w->width_cents, w->cycles);
	add(&s->regular, w->unevenness, w->cycles);
	add(&s->middle_semitones, pitch_note(hz, PITCH_ISO_16), w->cycles);
}

void sum_add(struct sum *s, const struct stretch *x)
{
	s->seconds += x->to_s - x->from_s;
	s->of_kind[x->kind]++;
	if (x->kind == STRETCH_QUIET)
		return;
	s->stretches++;
	s->sound_s += x->sound_s;
	s->note_s += x->sound_s * x->share;
	add_room(s, x->room);
	if (x->kind == STRETCH_GLIDES)
		add_glides(s, x);
	if (x->kind == STRETCH_VIBRATO)
		add_vibrato(s, &x->sway, x->hz);
	for (int i = 0; i < x->bows; i++) {
		s->bows++;
		s->stops += x->bow[i].bow.stops;
		add(&s->unsteady_db, x->bow[i].bow.unsteady_db, 1);
		add(&s->drift_db, x->bow[i].bow.drift_db, 1);
	}
}
