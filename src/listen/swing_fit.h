/*
 * swing_fit.h - one cycle of a vibrato as a slope and two sines
 *
 * Pure.  Any thread.
 */
#ifndef LISTEN_SWING_FIT_H
#define LISTEN_SWING_FIT_H

#include <stdbool.h>

struct swing_fit {
	double width; /* half of what lies between top and bottom, in cents */
	double noise; /* SD of what is left, in cents */
};

/*
 * Cents of the instants between from and from + period (in instants, both with
 * fractions).  False when some are missing or too few.
 */
bool swing_fit(
    const double *cents, double from, double period, struct swing_fit *out);

#endif
