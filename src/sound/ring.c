/*
 * ring.c - a queue between one writer and one reader
 *
 * Indices count for ever and wrap at 2^32; their difference is what lies in
 * the ring.  The release store of one side is what the acquire load of the
 * other side waits for, so an item is whole before it is seen, and taken
 * before its place is used again.
 */
#include "evenhand/sound/ring.h"

_Static_assert((RING_ITEMS & (RING_ITEMS - 1)) == 0, "a power of two");

bool ring_put(struct ring *r, struct ring_item item)
{
	uint32_t head = atomic_load_explicit(
	    &r->head.value, memory_order_relaxed);
	uint32_t tail = atomic_load_explicit(
	    &r->tail.value, memory_order_acquire);

	if (head - tail >= RING_ITEMS) {
		atomic_fetch_add_explicit(
		    &r->dropped.value, 1, memory_order_relaxed);
		return false;
	}
	r->item[head % RING_ITEMS] = item;
	atomic_store_explicit(&r->head.value, head + 1, memory_order_release);
	return true;
}

bool ring_take(struct ring *r, struct ring_item *item)
{
	uint32_t tail = atomic_load_explicit(
	    &r->tail.value, memory_order_relaxed);
	uint32_t head = atomic_load_explicit(
	    &r->head.value, memory_order_acquire);

	if (head == tail)
		return false;
	*item = r->item[tail % RING_ITEMS];
	atomic_store_explicit(&r->tail.value, tail + 1, memory_order_release);
	return true;
}

uint64_t ring_dropped(const struct ring *r)
{
	return atomic_load_explicit(&r->dropped.value, memory_order_relaxed);
}
