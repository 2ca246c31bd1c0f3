/*
 * pulse.h - where the pulses of a bow fall, in whole frames
 *
 * Pulse k of n in a bow of T ms at fs frames a second falls at
 *
 *	floor(k T fs / (1000 n) + 1/2)
 *
 * from the bow's start, worked out anew for each pulse and never summed.
 * T 3300, n 8, 44.1 kHz: 0 18191 36383 54574 72765 90956 109148 127339.
 *
 * Pure values: no memory, no clock.  Safe in the audio callback.
 */
#ifndef EVENHAND_SCORE_PULSE_H
#define EVENHAND_SCORE_PULSE_H

#include <stdint.h>

struct pulse_grid {
	int rate;   /* frames a second, RATE_MIN..RATE_MAX */
	int bow_ms; /* length of a bow, 1000..20000 */
	int pulses; /* in one bow, 1..PULSES_MAX */
};

/* Frame of pulse k, 0 or more, counted from the first bow's start. */
int64_t pulse_at(const struct pulse_grid *g, int64_t k);

#endif
