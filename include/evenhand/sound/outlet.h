/*
 * outlet.h - the last step to the card: a gate, channels, and what time it is
 *
 *	engine ─▶ gate ─▶ channels ─▶ card
 *	            ▲          └──▶ frame, time, delay ─▶ whoever watches
 *	          beats
 *
 * Sound is for somebody: the watcher raises a count again and again, and when
 * it has stood still for a second of frames the gate shuts until it moves
 * again.  Frames pass behind a shut gate as before it.
 *
 * At every block it is published which frame was reached when, and how long
 * the card will take to play it.  A card's time that runs ahead of the frames
 * was interrupted.
 *
 * Zeroed memory is a gate that is open.  No pointers: it may lie in memory that
 * two processes share.
 */
#ifndef EVENHAND_SOUND_OUTLET_H
#define EVENHAND_SOUND_OUTLET_H

#include <stdalign.h>
#include <stdbool.h>
#include <stdint.h>

#include "evenhand/sound/engine.h"
#include "evenhand/sound/ring.h"

enum {
	OUTLET_PATIENCE_MS = 1000, /* without a beat the gate stays open */
	OUTLET_SLACK_MS = 40,	   /* a card's time may be off by so much */
	OUTLET_SETTLE_MS = 500,	   /* a card that begins is not judged */
};

/* At a time the first frame of a block was asked for, to sound later. */
struct outlet_time {
	int64_t frame;
	int64_t time_ns;
	int64_t delay_ns;
};

struct outlet_word {
	_Atomic int64_t value;
};

struct outlet {
	/* The watcher. */
	alignas(64) struct ring_index beat;
	struct ring_index closing; /* not 0: shut and stay shut */

	/* The callback. */
	alignas(64) uint32_t seen;
	int64_t seen_at;  /* frame at which the beat was new */
	int32_t closed;	  /* 0: open .. the frames of a fade: shut */
	bool shut;	  /* is shut, or on its way */
	bool heard;	  /* a block was published before */
	int64_t heard_at; /* its frame ... */
	int64_t heard_ns; /* ... and when the card plays it */

	/* The callback writes them, others read. */
	alignas(64) struct ring_index turn; /* odd: being written */
	struct outlet_word frame, time_ns, delay_ns;
	struct ring_index dropouts, shuts;
};

/* Only the watcher: it is still there; fade out for good. */
void outlet_beat(struct outlet *o);
void outlet_end(struct outlet *o);

/* Only the callback: fills frames of so many channels, all the same. */
RT_SAFE void outlet_fill(
    struct outlet *o, struct engine *e, float *out, int frames, int channels);

/*
 * Only the callback, once a block: t as the block begins.  interrupted: the
 * card itself says so.
 */
RT_SAFE void outlet_publish(
    struct outlet *o, const struct outlet_time *t, int rate, bool interrupted);

/* Any thread: the last block.  False before the first, or never whole. */
bool outlet_read(const struct outlet *o, struct outlet_time *t);

/*
 * Any thread: interruptions so far, also those because nobody beat for too
 * long; how often the gate has shut.
 */
int outlet_dropouts(const struct outlet *o);
uint32_t outlet_shuts(const struct outlet *o);

#endif
