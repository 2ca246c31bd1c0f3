/*
 * engine.h - from frozen scores to samples, in the audio callback
 *
 * The engine counts frames from 0 and never stops counting: its count is the
 * only clock of evenhand.  Scores lie in a few slots; the session's thread
 * fills a free slot and sends PLAY with the frame at which it begins; the
 * engine hands the slot back by an event when the last sound has died away.
 *
 *	session's thread                 audio callback
 *	score_make -> slot               drains commands at block start
 *	PLAY slot, frame  ──ring──▶      mixes sounds of the playing slots
 *	engine_collect  ◀──ring──        FREE slot, LATE slot
 *
 * Every sample is a function of the commands and of its frame alone, so any
 * cut into blocks gives the same samples.  A command takes effect at its own
 * frame, or at the start of the block that finds it when that is later.
 * A PLAY that comes after a SILENCE is not silenced by it.
 *
 * A passage that is late is joined where it would be by now: every sound still
 * to begin falls at its own frame, those that should have begun are left out.
 *
 * Peaks never reach full scale: the sum is bounded by the voices' levels and a
 * final limit of -3 dB of full scale.
 *
 * struct engine has no pointers and may lie in memory two processes share.
 */
#ifndef EVENHAND_SOUND_ENGINE_H
#define EVENHAND_SOUND_ENGINE_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/score/score.h"
#include "evenhand/sound/ring.h"

enum {
	ENGINE_SLOTS = 4,
	ENGINE_VOICES_MAX = 24, /* sounds at once; more are lost and counted */
	ENGINE_FADE_MS = 5,	/* what sounds, when silence is asked for */
	ENGINE_RAMP_MS = 20,	/* from one level to another */
};

enum engine_command { ENGINE_PLAY = 1, ENGINE_SILENCE = 2, ENGINE_LEVEL = 3 };
enum engine_event { ENGINE_FREE = 1, ENGINE_LATE = 2 };

struct engine; /* its parts: src/sound/engine_parts.h */

/* Bytes of an engine; the memory must be zeroed and aligned to 64. */
size_t engine_size(void);

/*
 * Only before the callback runs; its count begins at 0.  rate is in
 * RATE_MIN..RATE_MAX; level in thousandths of full scale (700 and below are
 * sane).
 */
void engine_init(struct engine *e, int rate, int level);

/* --- Only the session's thread --- */

/*
 * A free slot's score to be filled, its number in *slot; NULL when all are
 * in use (engine_collect may free some).
 */
struct score *engine_slot(struct engine *e, int *slot);

/*
 * Plays a filled slot, its score of the engine's own rate, from a frame on;
 * one before 0 is a passage that began before the engine did.  False when the
 * ring is full; the slot then stays the caller's.
 */
bool engine_play(struct engine *e, int slot, int64_t frame);

/*
 * Silence from a frame on (0: at once): what sounds fades within 5 ms, what
 * was to sound is dropped, all slots come back.  False when the ring is full.
 */
bool engine_silence(struct engine *e, int64_t frame);

/*
 * Level of everything, thousandths, reached within 20 ms of the block that
 * finds the command.  False when the ring is full.
 */
bool engine_level(struct engine *e, int level);

/* Takes events in: frees slots, counts late starts. */
void engine_collect(struct engine *e);

/* --- Only the audio callback --- */

/* Writes frames mono samples, always all of them. */
RT_SAFE void engine_fill(struct engine *e, float *out, int frames);

/* --- Any thread --- */

/* Frames filled so far. */
RT_SAFE int64_t engine_frame(const struct engine *e);
int engine_rate(const struct engine *e);

/*
 * Passages that began late; commands and events dropped by full rings and
 * sounds beyond ENGINE_VOICES_MAX.
 */
uint64_t engine_late(const struct engine *e);
uint64_t engine_dropped(const struct engine *e);

#endif
