/*
 * heard.c - what is listened for
 */
#include "evenhand/listen/heard.h"

#include "evenhand/music/pitch.h"

#define CENTS_A_SEMITONE 100.0

struct asked asked_from(double low, double cents, double reference_hz)
{
	return (struct asked) { pitch_hz(low, reference_hz),
		pitch_hz(low + cents / CENTS_A_SEMITONE, reference_hz) };
}

bool asked_valid(const struct asked *a)
{
	return a->low_hz >= HEARD_LOW_HZ && a->low_hz <= a->high_hz &&
	    a->high_hz <= HEARD_HIGH_HZ;
}
