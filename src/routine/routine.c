/*
 * routine.c - what follows from a routine
 *
 * Times of a turn, a round and a lead-in, and the way a fingertip goes:
 *
 *	turn   = T b + r          2 bows of 4 s and 4 s to change: 12 s
 *	round  = F turns          four fingers: 48 s
 *	lead-in = settle + count-in bows                            8 s
 *
 * A finger's slide begins where finger 1 stands plus the usual hand.
 */
#include "evenhand/routine/routine.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/music/fingerboard.h"

enum { CENTS = 100 };

int routine_stage(const struct routine *r, const char *id)
{
	for (int i = 0; i < r->stages; i++)
		if (strcmp(r->stage[i].id, id) == 0)
			return i;
	return -1;
}

int routine_unit(const struct routine *r, const char *name)
{
	for (int i = 0; i < r->units; i++)
		if (strcmp(r->unit[i].name, name) == 0)
			return i;
	return -1;
}

int routine_rung(const struct routine *r, int pulses)
{
	for (int i = 0; i < r->ladder_count; i++)
		if (r->ladder[i] == pulses)
			return i;
	return -1;
}

int routine_start_pulses(const struct routine *r, int stage)
{
	int below_top = r->ladder_count > 1 ? r->ladder_count - 2 : 0;

	assert(stage >= 0 && stage < r->stages);
	if (r->stage[stage].start_pulses > 0)
		return r->stage[stage].start_pulses;
	return r->ladder[below_top];
}

static bool slides(const struct stage *s)
{
	return !s->in_the_air && s->motion == MOTION_SLIDE;
}

void routine_slide(
    const struct routine *r, int stage, int unit, double *from, double *to)
{
	const struct stage *s;
	int finger;

	assert(stage >= 0 && stage < r->stages);
	assert(unit >= 0 && unit < r->units);
	s = &r->stage[stage];
	finger = r->unit[unit].from;
	*from = *to = 0;
	if (!slides(s) || r->take != TAKE_FINGERS)
		return;
	*from = s->from + instrument_finger(r->setup.instrument, finger);
	*to = *from + (double)s->travel_cents / CENTS;
}

double routine_turn_m(const struct routine *r, int stage, int unit, int pulses)
{
	double from, to;

	routine_slide(r, stage, unit, &from, &to);
	return fingerboard_turn_m(
	    r->setup.length_mm, from, to, pulses, r->bows_each);
}

double routine_speed(const struct routine *r, int stage, int unit, int pulses)
{
	double from, to;

	routine_slide(r, stage, unit, &from, &to);
	return fingerboard_speed(
	    r->setup.length_mm, from, to, pulses, r->bow_ms);
}

int routine_turn_ms(const struct routine *r)
{
	return r->bow_ms * r->bows_each + r->change_ms;
}

int routine_round_ms(const struct routine *r)
{
	return r->units * routine_turn_ms(r);
}

int routine_lead_ms(const struct routine *r)
{
	return SETTLE_MS + r->count_in_bows * r->bow_ms;
}

int routine_air_ms(const struct routine *r)
{
	return routine_lead_ms(r) + AIR_SWING_BOWS * r->bow_ms + r->change_ms;
}

void routine_free(struct routine *r)
{
	if (r == NULL)
		return;
	arena_done(&r->arena);
	free(r);
}
