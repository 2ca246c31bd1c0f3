/*
 * pulse.c - where the pulses of a bow fall, from exact fractions
 *
 * A pulse lasts bow_ms x rate / (1000 pulses) frames, seldom a whole number:
 * 18191.25 of them for 8 pulses in 3.3 s at 44.1 kHz.  1000 x pulses of them
 * are exactly bow_ms x rate frames, so those are taken out first; what is
 * left keeps the product small.
 */
#include "evenhand/score/pulse.h"

#include <assert.h>

#include "evenhand/base/frames.h"
#include "evenhand/routine/routine.h"

/* The compiler proves that no product below overflows. */
#define HORIZON (INT64_C(1) << 38)
#define NUM_MAX (INT64_C(1) * BOW_MS_MAX * RATE_MAX)
#define DEN_MAX (INT64_C(1000) * PULSES_MAX)

_Static_assert(HORIZON / 1000 + 1 <= INT64_MAX / 2 / NUM_MAX, "whole part");
_Static_assert(DEN_MAX <= INT64_MAX / 4 / NUM_MAX, "what is left");

int64_t pulse_at(const struct pulse_grid *g, int64_t k)
{
	assert(k >= 0 && k < HORIZON);
	assert(g->rate >= RATE_MIN && g->rate <= RATE_MAX);
	assert(g->bow_ms >= BOW_MS_MIN && g->bow_ms <= BOW_MS_MAX);
	assert(g->pulses >= 1 && g->pulses <= PULSES_MAX);

	int64_t num = INT64_C(1) * g->bow_ms * g->rate;
	int64_t den = INT64_C(1000) * g->pulses;

	/* den is even, so its half rounds exactly. */
	return k / den * num + (k % den * num + den / 2) / den;
}
