/*
 * inlet.c - the first step from a microphone: samples, and when they were heard
 *
 * Two queues with one writer and one reader.  A block is seen when the count of
 * blocks put is, and its samples were written before; its place is used again
 * when the count of samples taken says so.
 */
#include "evenhand/sound/inlet.h"

_Static_assert((INLET_SAMPLES & (INLET_SAMPLES - 1)) == 0, "a power of two");
_Static_assert((INLET_BLOCKS & (INLET_BLOCKS - 1)) == 0, "a power of two");

/* What is no number becomes silence. */
RT_SAFE static float within(float x)
{
	if (x >= 1)
		return 1;
	if (x <= -1)
		return -1;
	return x > -1 && x < 1 ? x : 0;
}

RT_SAFE static float mean(const float *frame, int channels)
{
	float sum = 0;

	for (int c = 0; c < channels; c++)
		sum += within(frame[c]);
	return sum / (float)channels;
}

/* Only the callback changes these two counts. */
RT_SAFE static int64_t add(struct inlet_count *count, int64_t more)
{
	int64_t before = atomic_load_explicit(
	    &count->value, memory_order_relaxed);

	atomic_store_explicit(
	    &count->value, before + more, memory_order_release);
	return before;
}

bool inlet_room(const struct inlet *in, int count)
{
	uint32_t head = atomic_load_explicit(
	    &in->head.value, memory_order_relaxed);
	uint32_t tail = atomic_load_explicit(
	    &in->tail.value, memory_order_acquire);
	uint32_t freed = atomic_load_explicit(
	    &in->freed.value, memory_order_acquire);

	return head - tail < INLET_BLOCKS && count <= INLET_SAMPLES &&
	    in->kept - freed <= (uint32_t)(INLET_SAMPLES - count);
}

void inlet_miss(struct inlet *in, int count)
{
	add(&in->heard, count);
	add(&in->left_out, count);
}

bool inlet_put(struct inlet *in, const float *frames, int count, int channels,
    int64_t time_ns, bool broken)
{
	uint32_t head = atomic_load_explicit(
	    &in->head.value, memory_order_relaxed);

	if (count <= 0)
		return true;
	if (!inlet_room(in, count)) {
		inlet_miss(in, count);
		return false;
	}
	for (int i = 0; i < count; i++)
		in->sample[(in->kept + (uint32_t)i) % INLET_SAMPLES] = mean(
		    frames + (size_t)i * (size_t)channels, channels);
	in->block[head % INLET_BLOCKS] = (struct inlet_block) {
		.number = add(&in->heard, count),
		.time_ns = time_ns,
		.count = count,
		.place = in->kept,
		.broken = broken,
	};
	in->kept += (uint32_t)count;
	atomic_store_explicit(&in->head.value, head + 1, memory_order_release);
	return true;
}

/* The oldest block that is not wholly taken; false: none. */
static bool oldest(const struct inlet *in, struct inlet_block *block)
{
	uint32_t tail = atomic_load_explicit(
	    &in->tail.value, memory_order_relaxed);
	uint32_t head = atomic_load_explicit(
	    &in->head.value, memory_order_acquire);

	if (head == tail)
		return false;
	*block = in->block[tail % INLET_BLOCKS];
	return true;
}

/* So many samples of the oldest block were taken. */
static void took(struct inlet *in, const struct inlet_block *b, int32_t count)
{
	uint32_t tail = atomic_load_explicit(
	    &in->tail.value, memory_order_relaxed);

	in->begun += count;
	atomic_store_explicit(&in->freed.value, b->place + (uint32_t)in->begun,
	    memory_order_release);
	if (in->begun < b->count)
		return;
	in->begun = 0;
	atomic_store_explicit(&in->tail.value, tail + 1, memory_order_release);
}

bool inlet_peek(const struct inlet *in, struct inlet_block *block)
{
	if (!oldest(in, block))
		return false;
	if (in->begun > 0) {
		block->time_ns = 0;
		block->broken = 0;
	}
	block->number += in->begun;
	block->place += (uint32_t)in->begun;
	block->count -= in->begun;
	return true;
}

size_t inlet_take(
    struct inlet *in, float *out, size_t max, struct inlet_block *block)
{
	struct inlet_block whole;

	if (max == 0 || !oldest(in, &whole) || !inlet_peek(in, block))
		return 0;
	if ((size_t)block->count > max)
		block->count = (int32_t)max;
	for (int32_t i = 0; i < block->count; i++)
		out[i] =
		    in->sample[(block->place + (uint32_t)i) % INLET_SAMPLES];
	took(in, &whole, block->count);
	return (size_t)block->count;
}

void inlet_drop(struct inlet *in)
{
	struct inlet_block b;

	while (oldest(in, &b))
		took(in, &b, b.count - in->begun);
}

int64_t inlet_heard(const struct inlet *in)
{
	return atomic_load_explicit(&in->heard.value, memory_order_acquire);
}

int64_t inlet_left_out(const struct inlet *in)
{
	return atomic_load_explicit(&in->left_out.value, memory_order_acquire);
}
