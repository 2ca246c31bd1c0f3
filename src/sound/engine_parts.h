/*
 * engine_parts.h - what an engine is made of
 *
 * Three owners, each on cache lines of its own: the session's thread knows
 * which slots it has given away, the callback knows what sounds, and the rings
 * between them are shared.  Nothing here is a pointer.
 */
#ifndef EVENHAND_SOUND_ENGINE_PARTS_H
#define EVENHAND_SOUND_ENGINE_PARTS_H

#include <stdalign.h>

#include "evenhand/sound/engine.h"
#include "voices.h"

enum {
	ENGINE_LINE = 64,  /* bytes of a cache line */
	ENGINE_CHUNK = 64, /* frames made at a time */
};

/* A frame that never comes. */
#define ENGINE_NEVER INT64_MAX

/* What the callback knows of a slot. */
struct engine_playing {
	bool on;
	int32_t cursor;	 /* next sound of its score */
	int64_t start;	 /* frame of the passage's frame 0 */
	int64_t silence; /* frame at which it begins to fade */
};

/* A sound that sounds. */
struct engine_voice {
	struct shape shape;
	int32_t slot;
	int64_t start; /* frame of its first sample */
};

/* The level on its way from one value to another; a function of the frame. */
struct engine_ramp {
	float from, to;
	int64_t start;
};

struct engine {
	/* Set before the callback runs, then only read. */
	alignas(ENGINE_LINE) int32_t rate;
	int32_t fade, ramp; /* frames */

	/* The session's thread. */
	alignas(ENGINE_LINE) bool given[ENGINE_SLOTS];
	struct ring_count late; /* others read it */

	/* The callback. */
	alignas(ENGINE_LINE) int64_t now;
	struct engine_ramp level;
	struct engine_playing playing[ENGINE_SLOTS];
	int32_t voices;
	struct engine_voice voice[ENGINE_VOICES_MAX]; /* by their start */

	/* The callback writes them, others read. */
	alignas(ENGINE_LINE) struct ring_count frame;
	struct ring_count lost; /* sounds beyond ENGINE_VOICES_MAX */

	alignas(ENGINE_LINE) struct ring commands;
	alignas(ENGINE_LINE) struct ring events;
	alignas(ENGINE_LINE) struct score score[ENGINE_SLOTS];
};

/* --- engine_mix.c: only the audio callback --- */

/* Writes the frames e->now..end-1, in which nothing begins or ends. */
RT_SAFE void engine_mix(struct engine *e, float *out, int64_t end);

/* The level at a frame, thousandths made parts of 1. */
RT_SAFE float engine_level_at(const struct engine *e, int64_t frame);

#endif
