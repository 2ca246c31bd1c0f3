/*
 * stretch.c - what was heard between two pauses of a recording
 */
#include "evenhand/listen/stretch.h"

#include <math.h>
#include <string.h>

#include "evenhand/music/pitch.h"
#include "room.h"
#include "runs.h"
#include "series.h"

#define LOUD_DB 30.0	   /* under the loud tenth: what sounds */
#define SILENCE_DB (-65.0) /* of full scale */
#define SOUND_LEAST 0.3	   /* seconds, to be any */
#define HELD_CENTS 60.0	   /* from the low to the high tenth, at most */
#define LOW_SHARE 0.1
#define HIGH_SHARE 0.9
#define GLIDES_LEAST 2

struct stretching {
	struct arena *a;
	const struct stretch_asked *asked;
	const struct instant *m;
	size_t n;
	double *hz; /* of all notes, sorted */
	size_t notes;
};

/* What is as loud as the loud tenth but for 30 dB. */
static bool find_sound(struct stretching *s, struct stretch *out)
{
	double *db = arena_take(s->a, s->n * sizeof(*db));
	double least;
	size_t sound = 0, notes = 0;

	if (db == NULL)
		return false;
	for (size_t k = 0; k < s->n; k++)
		db[k] = (double)s->m[k].level_db;
	least = s->n > 0
	    ? fmax(series_share(db, s->n, HIGH_SHARE) - LOUD_DB, SILENCE_DB)
	    : 0;
	for (size_t k = 0; k < s->n; k++) {
		if ((double)s->m[k].level_db < least)
			continue;
		sound++;
		notes += s->m[k].what == HEARD_NOTE;
	}
	out->sound_s = (double)sound * HEARD_STEP_S;
	out->share = sound > 0 ? (double)notes / (double)sound : 0;
	return true;
}

static bool find_notes(struct stretching *s)
{
	s->hz = arena_take(s->a, s->n * sizeof(*s->hz));
	for (size_t k = 0; s->hz != NULL && k < s->n; k++)
		if (s->m[k].what == HEARD_NOTE)
			s->hz[s->notes++] = (double)s->m[k].hz;
	if (s->notes > 0)
		series_median(s->hz, s->notes);
	return s->hz != NULL;
}

/* Of the sorted notes, from the low end. */
static double note_at(const struct stretching *s, double share)
{
	return s->hz[(size_t)(share * (double)(s->notes - 1))];
}

static bool hear_glides(struct stretching *s, struct stretch *out)
{
	struct arrival *at = arena_take(
	    s->a, STRETCH_ARRIVALS_MAX * sizeof(*at));
	struct arrivals_asked asked = {
		.travel_cents = s->asked->travel_cents
	};
	double low = note_at(s, LOW_SHARE);
	int n;

	if (at == NULL)
		return false;
	n = arrivals_find(s->a, s->m, s->n, low, s->asked->travel_cents, at,
	    STRETCH_ARRIVALS_MAX);
	if (n < 0)
		return false;
	out->arrivals = n;
	out->arrival = at;
	out->glide_hz = low;
	if (n < GLIDES_LEAST)
		return true;
	out->sum = arrivals_measure(&asked, at, n);
	for (int i = 0; i < n; i++) {
		at[i].half_s += out->from_s;
		at[i].nine_s += out->from_s;
	}
	return true;
}

/* From the medians of all arrivals. */
static bool tell_notes(struct stretching *s, struct stretch *out)
{
	double *cents = arena_take(
	    s->a, (size_t)out->arrivals * sizeof(*cents));

	if (cents == NULL)
		return false;
	for (int i = 0; i < out->arrivals; i++)
		cents[i] = out->arrival[i].lower_cents;
	out->hz = pitch_above(
	    out->glide_hz, series_median(cents, (size_t)out->arrivals));
	for (int i = 0; i < out->arrivals; i++)
		cents[i] = out->arrival[i].upper_cents;
	out->upper_hz = pitch_above(
	    out->glide_hz, series_median(cents, (size_t)out->arrivals));
	return true;
}

static bool hear_hand(struct stretching *s, struct stretch *out)
{
	double middle = note_at(s, 0.5), wide;

	if (!sway_measure(s->a, s->m, s->n, middle, &out->sway))
		return false;
	if (out->sway.heard && out->sway.rate_hz >= STRETCH_VIBRATO_HZ &&
	    out->sway.width_cents <= STRETCH_VIBRATO_CENTS) {
		out->kind = STRETCH_VIBRATO;
		out->sway.from_s += out->from_s;
		out->sway.to_s += out->from_s;
		out->hz = out->upper_hz = pitch_above(
		    middle, out->sway.middle_cents);
		return true;
	}
	out->sway = (struct sway) { .heard = false };
	if (!hear_glides(s, out))
		return false;
	if (out->arrivals >= GLIDES_LEAST) {
		out->kind = STRETCH_GLIDES;
		return tell_notes(s, out);
	}
	out->arrivals = 0;
	wide = pitch_cents(note_at(s, LOW_SHARE), note_at(s, HIGH_SHARE));
	out->kind = wide <= HELD_CENTS ? STRETCH_HELD : STRETCH_NOTES;
	out->hz = wide <= HELD_CENTS ? middle : note_at(s, LOW_SHARE);
	out->upper_hz = wide <= HELD_CENTS ? middle : note_at(s, HIGH_SHARE);
	return true;
}

static bool hear_bows(struct stretching *s, struct stretch *out)
{
	double edge[STRETCH_BOWS_MAX + 1];
	int edges = bow_find(s->a, s->m, s->n, edge, STRETCH_BOWS_MAX + 1);

	if (edges < 0)
		return false;
	for (int i = 0; i + 1 < edges; i++) {
		struct stretch_bow *b = &out->bow[out->bows];

		if (!bow_measure(
			s->a, s->m, s->n, edge[i], edge[i + 1], &b->bow))
			return false;
		b->from_s = out->from_s + edge[i];
		b->to_s = out->from_s + edge[i + 1];
		out->bows += b->bow.heard;
	}
	return true;
}

/* What can be said of it at all. */
static enum stretch_kind answer(
    const struct stretching *s, const struct stretch *out)
{
	size_t other = 0;

	if (out->sound_s < SOUND_LEAST)
		return STRETCH_QUIET;
	for (size_t k = 0; k < s->n; k++)
		other += s->m[k].what == HEARD_OTHER;
	if (s->asked->known && other > s->notes)
		return STRETCH_ELSEWHERE;
	return out->share < STRETCH_CLEAR || runs_speak(s->m, s->n, out->share)
	    ? STRETCH_UNCLEAR
	    : STRETCH_HELD;
}

bool stretch_measure(struct arena *a, const struct stretch_asked *asked,
    const struct instant *m, size_t n, double from_s, struct stretch *out)
{
	struct stretching s = { .a = a, .asked = asked, .m = m, .n = n };

	*out = (struct stretch) { .from_s = from_s, .m = m, .n = n };
	out->to_s = from_s + (double)n * HEARD_STEP_S;
	if (!find_sound(&s, out) || !find_notes(&s))
		return false;
	out->kind = answer(&s, out);
	if (out->kind != STRETCH_HELD)
		return true;
	if (!room_measure(a, m, n, &out->room) ||
	    (!asked->only_bow && !hear_hand(&s, out)))
		return false;
	return hear_bows(&s, out);
}
