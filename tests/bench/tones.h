/*
 * tones.h - the sounds that listening is measured with, and errors in them
 *
 * The same for ours and for a general-purpose library beside it.
 */
#ifndef BENCH_TONES_H
#define BENCH_TONES_H

#include <math.h>
#include <stdlib.h>

#include "../listen/bowed.h"

enum { TONE_NOTES = 8, TONE_TRAVELS = 5, ERRORS_MAX = 1 << 18 };

static const double tone_notes[TONE_NOTES] = { 65.4064, 82.4069, 97.9989,
	146.8324, 195.9977, 293.6648, 440, 880 };
static const double tone_travels[TONE_TRAVELS] = { 500, 300, 200, 100, 50 };

enum surrounding { DRY, NOISY, SMALL_ROOM, LARGE_ROOM };

static inline struct bowed tone_in(enum surrounding where, double hz)
{
	struct bowed b = { .rate = 48000,
		.seconds = 8,
		.hz = hz,
		.jitter_cents = 2,
		.turn_s = 4,
		.noise_db = -20 };

	if (where == NOISY)
		b.noise_db = -10;
	if (where == SMALL_ROOM || where == LARGE_ROOM) {
		b.noise_db = -30;
		b.room_s = where == SMALL_ROOM ? 0.35 : 0.5;
		b.room_db = where == SMALL_ROOM ? 6 : 3;
	}
	if (where == SMALL_ROOM)
		b.hum_db = -40;
	return b;
}

static inline struct bowed tone_swing(
    enum surrounding where, double hz, double rate, double cents)
{
	struct bowed b = tone_in(where, hz);

	b.swing_hz = rate;
	b.swing_cents = cents;
	return b;
}

static inline struct bowed tone_glide(
    enum surrounding where, double cents, int pulses)
{
	struct bowed b = tone_in(where, 164.8138);

	b.travel_cents = cents;
	b.pulses_a_second = pulses / 4.0;
	b.glide_s = fmin(0.15, 0.25 / b.pulses_a_second);
	b.unsteady_s = 0.02;
	b.tick_db = -20;
	return b;
}

/* Sizes of errors, gathered. */
struct errors {
	double at[ERRORS_MAX];
	int n;
};

static inline void errors_add(struct errors *e, double error)
{
	if (e->n < ERRORS_MAX)
		e->at[e->n++] = fabs(error);
}

static inline int errors_order(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;

	return (x > y) - (x < y);
}

static inline double errors_share(struct errors *e, double share)
{
	if (e->n == 0)
		return NAN;
	qsort(e->at, (size_t)e->n, sizeof(*e->at), errors_order);
	return e->at[(int)(share * (e->n - 1))];
}

/* How pitches came out, all instants counted. */
struct pitches {
	struct errors cents;
	int instants, within, gross;
};

/* hz 0: nothing was heard at that instant. */
static inline void pitches_add(struct pitches *p, const struct bowed *b,
    const struct bowed_sound *s, double t, double hz)
{
	double turn = fabs(fmod(t + b->turn_s / 2, b->turn_s) - b->turn_s / 2);
	double error;

	if (t < 0.15 || t > b->seconds - 0.15 || turn < 0.06)
		return;
	p->instants++;
	if (hz <= 0)
		return;
	error = fabs(1200 * log2(hz / b->hz) - bowed_cents(b, s, t));
	errors_add(&p->cents, error);
	p->within += error < 10;
	p->gross += error > 316;
}

#endif
