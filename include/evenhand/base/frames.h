/*
 * frames.h - milliseconds to sound frames, exactly
 *
 * Times in evenhand are whole milliseconds, positions whole frames.  A
 * position is always worked out anew from where its clock began, never summed:
 *
 *	floor(ms x rate / 1000 + 1/2)
 *
 * Pure.  Safe in the audio callback.
 */
#ifndef EVENHAND_BASE_FRAMES_H
#define EVENHAND_BASE_FRAMES_H

#include <stdint.h>

enum { RATE_MIN = 8000, RATE_MAX = 192000 };

/* Frame of a time of 0 or more ms (up to 2^40) at a rate in range. */
int64_t frames_of_ms(int64_t ms, int rate);

/* The whole ms that have passed at a frame of 0 or more (rounded down). */
int64_t frames_to_ms(int64_t frame, int rate);

#endif
