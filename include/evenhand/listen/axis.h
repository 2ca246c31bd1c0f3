/*
 * axis.h - what stands beside the picture of a recording: notes and times
 *
 * On paper and on a screen alike.  Pure; any thread.
 */
#ifndef EVENHAND_LISTEN_AXIS_H
#define EVENHAND_LISTEN_AXIS_H

#include <stdbool.h>

#include "evenhand/listen/outline.h"

enum { AXIS_TIME_BYTES = 24 };

/*
 * The notes at the bottom and at the top, in semitones: those of the outline
 * with air, a part of the height, below and above, and a semitone in all at
 * least, because less would be all jitter.  False when no note is in it: they
 * then lie around the reference.
 */
bool axis_notes(const struct outline *o, double reference_hz, double air,
    double *low, double *high);

/* Seconds from one time to the next, so that at most so many fit. */
double axis_step(double seconds, double most);

/* A time as "0:04", or "1:00:04" from an hour on. */
void axis_time(double s, char name[AXIS_TIME_BYTES]);

#endif
