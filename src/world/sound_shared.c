/*
 * sound_shared.c - the memory that evenhand and its sound child share
 */
#include "sound_shared.h"

#include <string.h>

enum { LINE = 64, PHASES = 8 };

static size_t rounded(size_t size)
{
	return (size + LINE - 1) / LINE * LINE;
}

enum sound_phase sound_phase(const struct sound_shared *s, int32_t number)
{
	int32_t state = atomic_load_explicit(
	    &s->state.value, memory_order_acquire);

	if (state / PHASES != number)
		return SOUND_BEGINS;
	return (enum sound_phase)(state % PHASES);
}

void sound_phase_set(struct sound_shared *s, enum sound_phase phase)
{
	atomic_store_explicit(&s->state.value,
	    s->order.number * PHASES + (int32_t)phase, memory_order_release);
}

struct engine *sound_engine(struct sound_shared *s)
{
	return (struct engine *)(void *)((char *)s + rounded(sizeof *s));
}

size_t sound_shared_size(void)
{
	return rounded(sizeof(struct sound_shared)) + rounded(engine_size());
}

void sound_shared_clear(struct sound_shared *s)
{
	size_t kept = offsetof(struct sound_shared, order);

	memset((char *)s + kept, 0, sound_shared_size() - kept);
}
