/*
 * render.h - an engine in memory, run through any cut of time
 */
#ifndef EVENHAND_TESTS_RENDER_H
#define EVENHAND_TESTS_RENDER_H

#include <assert.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "../score/seeded.h"
#include "evenhand/sound/engine.h"

/* A cut of time into blocks: a size, or 0 for sizes drawn by lot. */
enum { CUT_BY_LOT = 0, CUT_MAX = 2048 };

static inline struct engine *render_engine(int rate, int level)
{
	size_t size = (engine_size() + 63) / 64 * 64;
	struct engine *e = aligned_alloc(64, size);

	assert(e);
	memset(e, 0, size);
	engine_init(e, rate, level);
	return e;
}

/* Fills out until the engine is at a frame. */
static inline void render_to(
    struct engine *e, float *out, int64_t frame, int cut)
{
	int64_t left;

	while ((left = frame - engine_frame(e)) > 0) {
		int size = cut == CUT_BY_LOT ? seeded(1, CUT_MAX) : cut;

		if (size > left)
			size = (int)left;
		engine_fill(e, out, size);
		out += size;
	}
}

/* Makes a passage's score in a free slot and plays it from a frame on. */
static inline bool render_play(
    struct engine *e, const struct passage *p, int64_t frame)
{
	int slot;
	struct score *s = engine_slot(e, &slot);

	return s && score_make(s, p, engine_rate(e)) &&
	    engine_play(e, slot, frame);
}

/* One turn at once: no lead-in, no notes, a change of 2 s. */
static inline struct passage render_turn(int bow_ms, int pulses)
{
	return (struct passage) {
		.bow_ms = bow_ms,
		.pulses = pulses,
		.bows_each = 2,
		.turns = 1,
		.change_ms = 2000,
		.last_change_ms = 2000,
	};
}

static inline float render_peak(const float *x, int64_t n)
{
	float peak = 0;

	for (int64_t i = 0; i < n; i++) {
		float a = x[i] < 0 ? -x[i] : x[i];

		peak = a > peak ? a : peak;
	}
	return peak;
}

#endif
