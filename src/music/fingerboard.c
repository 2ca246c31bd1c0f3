/*
 * fingerboard.c - places and distances along a string
 *
 * What still sounds above a stopped note is S 2^(-n/12); a place is what is
 * missing from the whole string, a slide the difference of two.
 */
#include "evenhand/music/fingerboard.h"

#include <assert.h>
#include <math.h>

static double sounding_mm(double length_mm, double semitones)
{
	return length_mm * exp2(-semitones / 12);
}

double fingerboard_mm(double length_mm, double semitones)
{
	return length_mm - sounding_mm(length_mm, semitones);
}

double fingerboard_slide_mm(double length_mm, double from, double to)
{
	return fabs(sounding_mm(length_mm, from) - sounding_mm(length_mm, to));
}

double fingerboard_turn_m(
    double length_mm, double from, double to, int pulses, int bows)
{
	double slide_m = fingerboard_slide_mm(length_mm, from, to) / 1000;

	/* A pulse is one way up and one way down. */
	return 2 * slide_m * pulses * bows;
}

double fingerboard_speed(
    double length_mm, double from, double to, int pulses, int bow_ms)
{
	assert(bow_ms > 0);
	return fingerboard_turn_m(length_mm, from, to, pulses, 1) * 1000 /
	    bow_ms;
}
