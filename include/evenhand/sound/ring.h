/*
 * ring.h - a queue of fixed items between one writer and one reader
 *
 * The writer owns `head`, the reader owns `tail`; each loads the other's index
 * once (acquire), works, and stores its own once (release).  Full: the item
 * is not put and a counter rises.  No pointers: a ring may lie in memory that
 * two processes share.  Capacity is a power of two.
 */
#ifndef EVENHAND_SOUND_RING_H
#define EVENHAND_SOUND_RING_H

#include <stdatomic.h>
#include <stdbool.h>
#include <stdint.h>

#include "evenhand/sound/rt.h"

/* Wrapped, so that x += 1 cannot compile by accident. */
struct ring_index {
	_Atomic uint32_t value;
};
struct ring_count {
	_Atomic uint64_t value;
};

_Static_assert(ATOMIC_LLONG_LOCK_FREE == 2, "64-bit atomics take no lock");

enum { RING_ITEMS = 64 };

/* A command to the engine or an event from it. */
struct ring_item {
	int32_t kind;
	int32_t slot; /* score slot, or a plain value */
	int64_t frame;
};

struct ring {
	struct ring_index head, tail;
	struct ring_count dropped;
	struct ring_item item[RING_ITEMS];
};

/* Only the writer's thread.  False when full; the drop is counted. */
RT_SAFE bool ring_put(struct ring *r, struct ring_item item);

/* Only the reader's thread.  False when empty. */
RT_SAFE bool ring_take(struct ring *r, struct ring_item *item);

/* Any thread: how many items were dropped so far. */
RT_SAFE uint64_t ring_dropped(const struct ring *r);

#endif
