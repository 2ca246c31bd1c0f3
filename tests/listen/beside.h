/*
 * beside.h - another sound that comes into the same microphone
 *
 * As loud against the first as wanted; through a wall it loses what is high: two
 * low-passes of one pole each at 700 Hz, over what its own room made of it.
 *
 * The tests' own model, no recording.  One thread.
 */
#ifndef BESIDE_H
#define BESIDE_H

#include "bowed.h"

static inline void beside_wall(struct bowed_sound *s, int rate)
{
	float keep = (float)exp(-BOWED_TWO_PI * 700 / rate), y[2] = { 0, 0 };

	for (size_t i = 0; i < s->n; i++) {
		y[0] = s->x[i] + keep * (y[0] - s->x[i]);
		y[1] = y[0] + keep * (y[1] - y[0]);
		s->x[i] = y[1];
	}
}

/* Adds so much of the other, in dB against the first, and frees the other. */
static inline void beside_add(
    struct bowed_sound *s, struct bowed_sound *other, double db)
{
	double amount = bowed_rms(s) / bowed_rms(other) * pow(10, db / 20);

	for (size_t i = 0; i < s->n && i < other->n; i++)
		s->x[i] += (float)amount * other->x[i];
	free(other->x);
	other->x = NULL;
}

/* A string in the next room: half a second of it, and little direct sound. */
static inline void beside_next_room(
    struct bowed_sound *s, const struct bowed *other, double db)
{
	struct bowed b = *other;
	struct bowed_sound o;

	b.room_s = 0.5;
	b.room_db = -6;
	o = bowed_make(&b);
	beside_wall(&o, b.rate);
	beside_add(s, &o, db);
}

#endif
