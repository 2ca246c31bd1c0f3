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
	int bow_ms; /* length of a bow or swing, BOW_MS_MIN..BOW_MS_MAX */
	int pulses; /* in one bow, 1..PULSES_MAX */
};

/* The longest swing in the air is four of the longest bows. */
enum { BOW_MS_MIN = 1000, BOW_MS_MAX = 80000 };

/*
 * Frame of pulse k, counted from the first bow's start.  k is 0 or more and
 * below 2^38: thousands of years of bows.
 */
int64_t pulse_at(const struct pulse_grid *g, int64_t k);

#endif
