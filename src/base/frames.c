/*
 * frames.c - milliseconds to sound frames, exactly
 *
 * Whole seconds are whole frames and need no rounding; taking them out first
 * keeps every product small.
 */
#include "evenhand/base/frames.h"

#include <assert.h>

enum { MS = 1000 };

#define MS_MAX (INT64_C(1) << 40)

/* The compiler proves that no product overflows. */
_Static_assert(MS_MAX / MS <= INT64_MAX / RATE_MAX - 1, "frames_of_ms");
_Static_assert(INT64_C(1) * RATE_MAX * MS <= INT64_MAX / 2, "rests");

int64_t frames_of_ms(int64_t ms, int rate)
{
	assert(ms >= 0 && ms <= MS_MAX);
	assert(rate >= RATE_MIN && rate <= RATE_MAX);
	return ms / MS * rate + (ms % MS * rate + MS / 2) / MS;
}

int64_t frames_to_ms(int64_t frame, int rate)
{
	assert(frame >= 0 && rate >= RATE_MIN && rate <= RATE_MAX);
	return frame / rate * MS + frame % rate * MS / rate;
}
