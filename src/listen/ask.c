/*
 * ask.c - what a stage of a routine asks of a turn, so that it can be heard
 *
 * Where only the bow is listened to, any note from the open string to an octave
 * above it may come: higher ones belong to positions that no such stage names.
 */
#include "evenhand/listen/ask.h"

#include <assert.h>
#include <math.h>

#include "evenhand/music/pitch.h"

enum { OCTAVE = 12, CENTS = 100, SEMITONE = 100 };

static int lower_string(const struct routine *r, int unit)
{
	const struct unit *u = &r->unit[unit];

	return r->setup.open[u->from] < r->setup.open[u->to] ? u->from : u->to;
}

static int higher_string(const struct routine *r, int unit)
{
	const struct unit *u = &r->unit[unit];

	return r->setup.open[u->from] < r->setup.open[u->to] ? u->to : u->from;
}

/* Lowest and highest note, in semitones as MIDI counts. */
static void notes(
    const struct routine *r, int stage, int unit, double *low, double *high)
{
	const struct stage *s = &r->stage[stage];
	double from, to;

	if (r->take == TAKE_STRINGS) {
		*low = r->setup.open[lower_string(r, unit)];
		*high = r->setup.open[higher_string(r, unit)] + OCTAVE;
		return;
	}
	*low = r->setup.open[s->string];
	*high = *low + OCTAVE;
	if (r->take != TAKE_FINGERS || s->motion != MOTION_SLIDE)
		return;
	routine_slide(r, stage, unit, &from, &to);
	*high = *low + to;
	*low += from;
}

/* A swing in place, or nearly: what the programme comes to in the end. */
static bool sways(const struct stage *s)
{
	return s->travel_cents > 0 &&
	    (s->travel_cents < SEMITONE ||
		(s->travel_cents == SEMITONE && s->fade_after > 0));
}

bool ask_turn(const struct routine *r, int stage, int unit,
    const struct ask_time *when, struct turn_asked *out)
{
	const struct stage *s;
	bool slides;
	double low, high;

	assert(stage >= 0 && stage < r->stages);
	assert(when->bows >= 1 && when->bows <= TURN_BOWS_MAX);
	assert(when->pulses >= 0 && when->pulses <= TURN_PULSES_MAX);
	s = &r->stage[stage];
	slides = r->take == TAKE_FINGERS && s->motion == MOTION_SLIDE;
	*out = (struct turn_asked) { .bows = 0 };
	if (s->in_the_air || (s->string < 0 && r->take != TAKE_STRINGS))
		return false;
	notes(r, stage, unit, &low, &high);
	*out = (struct turn_asked) {
		.asked = { pitch_hz(low, r->setup.reference_hz),
		    pitch_hz(high, r->setup.reference_hz) },
		.travel_cents = slides ? s->travel_cents : 0,
		.sways = slides && sways(s),
		.pulses = when->pulses,
		.bows = when->bows,
	};
	out->lower_hz = out->asked.low_hz;
	for (int i = 0; i <= when->bows; i++)
		out->edge_s[i] = when->begin_s + i * when->bow_ms / 1000.0;
	return asked_valid(&out->asked);
}
