/*
 * inlet.h - the first step from a microphone: samples, and when they were heard
 *
 *	card ─▶ one channel ─▶ samples ─▶ whoever listens
 *	   └──▶ blocks: which samples, heard when ──┘
 *
 * The callback puts a block whole or, when there is no room for it, not at all;
 * then it counts what it left out.  Samples are numbered from 0 on, those that
 * were left out too, so a listener sees from the numbers what is missing.
 *
 * Zeroed memory is an empty inlet.  No pointers: it may lie in memory that two
 * processes share.
 */
#ifndef EVENHAND_SOUND_INLET_H
#define EVENHAND_SOUND_INLET_H

#include <stdalign.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "evenhand/sound/ring.h"

enum {
	INLET_SAMPLES = 1 << 18, /* 5 s at 48000 a second */
	INLET_BLOCKS = 1 << 12,
};

/* Samples that came together. */
struct inlet_block {
	int64_t number;	 /* of the first one */
	int64_t time_ns; /* when it was in the air, by the steady clock */
	int32_t count;
	uint32_t place; /* of the first one among all samples kept */
	int32_t broken; /* the card says that some were lost before it */
};

struct inlet_count {
	_Atomic int64_t value;
};

struct inlet {
	/* The callback. */
	alignas(64) struct ring_index head; /* blocks put */
	uint32_t kept;			    /* samples put */
	struct inlet_count heard;	    /* samples that came */
	struct inlet_count left_out;

	/* The listener. */
	alignas(64) struct ring_index tail; /* blocks taken */
	struct ring_index freed;	    /* samples taken */
	int32_t begun;			    /* samples taken of the next one */

	alignas(64) struct inlet_block block[INLET_BLOCKS];
	float sample[INLET_SAMPLES];
};

/*
 * Only the callback: frames of so many channels, of which the mean is kept, each
 * within -1..1; time_ns: when the first was in the air.  False: left out.
 */
RT_SAFE bool inlet_put(struct inlet *in, const float *frames, int count,
    int channels, int64_t time_ns, bool broken);

/* Only the callback: so many came, but not to us. */
RT_SAFE void inlet_miss(struct inlet *in, int count);

/*
 * Only the listener: what inlet_take would take, if it could take it all.  False:
 * nothing.
 */
bool inlet_peek(const struct inlet *in, struct inlet_block *block);

/*
 * Only the listener: up to max samples of the oldest block.  Their number, 0
 * when there are none; *block tells of the samples taken, with a time of 0 when
 * they are the rest of a block that was begun before.
 */
size_t inlet_take(
    struct inlet *in, float *out, size_t max, struct inlet_block *block);

/* Only the callback: whether so many would not be left out. */
RT_SAFE bool inlet_room(const struct inlet *in, int count);

/* Only the listener: forgets all that is there. */
void inlet_drop(struct inlet *in);

/* Any thread: samples that came so far; those of them that were left out. */
RT_SAFE int64_t inlet_heard(const struct inlet *in);
int64_t inlet_left_out(const struct inlet *in);

#endif
