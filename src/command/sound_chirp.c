/*
 * sound_chirp.c - one chirp, played and heard
 *
 * Each chirp is waited for before the next one sounds, and the pauses differ, so
 * that one that comes later than it is waited for is not taken for the next.
 * What is heard lies in memory until its chirp is found, and nowhere else.
 */
#include "sound_chirp.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/frames.h"
#include "evenhand/score/pulse.h"
#include "evenhand/sound/engine.h"
#include "evenhand/world/clock.h"
#include "sound_verb.h"

enum {
	LEAD_MS = 250,	 /* before a chirp sounds */
	BEFORE_MS = 100, /* heard before it ... */
	AFTER_MS = 620,	 /* ... and from its begin */
	PATIENCE_MS = 2500,
	PAUSES_MS = 210, /* at most between two chirps */
	SHAPE_LEVEL = 500,
	PIECE = 4096,
};

static const struct passage passage = {
	.bow_ms = BOW_MS_MIN,
	.bows_each = 1,
	.turns = 1,
	.sweeps = true,
};

/* --- What is looked for --------------------------------------------------- */

/* The chirp as the engine makes it, at the microphone's rate. */
static bool make_shape(struct chirp *c, int rate)
{
	size_t size = (engine_size() + 63) / 64 * 64;
	struct engine *e = aligned_alloc(64, size);
	struct score *s;
	bool good = false;
	int slot;

	if (!e)
		return false;
	memset(e, 0, size);
	engine_init(e, rate, SHAPE_LEVEL);
	s = engine_slot(e, &slot);
	if (s && score_make(s, &passage, rate) && engine_play(e, slot, 0)) {
		engine_fill(e, c->shape, (int)c->length);
		good = true;
	}
	free(e);
	return good;
}

bool chirp_make(struct chirp *c, int rate)
{
	c->length = (size_t)frames_of_ms(SWEEP_MS, rate);
	c->room = (size_t)frames_of_ms(BEFORE_MS + AFTER_MS + 10, rate);
	c->heard = calloc(c->room, sizeof *c->heard);
	c->match = calloc(c->room, sizeof *c->match);
	c->shape = calloc(c->length, sizeof *c->shape);
	c->silent = true;
	return c->heard && c->match && c->shape && make_shape(c, rate);
}

void chirp_done(struct chirp *c)
{
	free(c->heard);
	free(c->match);
	free(c->shape);
}

/* --- Hearing ----------------------------------------------------------------- */

/* Keeps what belongs to a stretch of frames.  True: it is over. */
static bool keep(struct chirp *c, const float *x, const struct heard_samples *s,
    double from, double to)
{
	size_t i = 0;

	if (c->count > 0 && s->gap)
		c->broken = true;
	if (s->frame < from)
		i = (size_t)ceil((from - s->frame) / s->frames_each);
	if (i < s->count && c->count == 0) {
		c->first = s->frame + (double)i * s->frames_each;
		c->each = s->frames_each;
	}
	for (; i < s->count && c->count < c->room; i++)
		c->heard[c->count++] = x[i];
	return s->frame + (double)s->count * s->frames_each >= to;
}

bool chirp_both_there(const struct device *d)
{
	return device_state(d) == DEVICE_SOUNDS &&
	    device_microphone(d) == MICROPHONE_HEARS;
}

static void listen(struct chirp *c, struct device *d, double from, double to)
{
	int64_t until = clock_steady_ms() + PATIENCE_MS;
	static float piece[PIECE];
	bool over = false;

	c->count = 0;
	c->broken = false;
	while (!over && !sound_stopped() && chirp_both_there(d) &&
	    clock_steady_ms() < until) {
		struct heard_samples s;

		clock_sleep_us(SOUND_LOOK_US);
		device_look(d);
		while (!over && (s = device_hear(d, piece, PIECE)).count > 0)
			over = keep(c, piece, &s, from, to);
	}
	c->broken = c->broken || !over;
	for (size_t i = 0; i < c->count; i++)
		if (c->heard[i] != 0)
			c->silent = false;
}

/* --- Chirps ------------------------------------------------------------------ */

/* Plays one and finds it. */
enum sweep_way chirp_play(struct chirp *c, struct device *d, double *us)
{
	int64_t at = device_frame(d) + frames_of_ms(LEAD_MS, SOUND_RATE);
	int broken = device_dropouts(d), jumps = device_jumps(d);
	struct sweep s;

	/* Pauses that differ: 89 goes round in 210 in no small number. */
	at += frames_of_ms(c->played++ * 89 % PAUSES_MS, SOUND_RATE);
	if (!device_play(d, &passage, at))
		return SWEEP_BROKEN;
	listen(c, d, (double)(at - frames_of_ms(BEFORE_MS, SOUND_RATE)),
	    (double)(at + frames_of_ms(AFTER_MS, SOUND_RATE)));
	if (c->broken || device_dropouts(d) != broken ||
	    device_jumps(d) != jumps || c->count < 2 * c->length)
		return SWEEP_BROKEN;
	s = sweep_find(c->heard, c->count, c->shape, c->length, c->match);
	*us = (c->first + s.at * c->each - (double)at) * 1e6 / SOUND_RATE;
	return s.way;
}
