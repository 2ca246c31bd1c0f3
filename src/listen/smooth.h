/*
 * smooth.h - a pitch without its jitter
 *
 * A parabola is laid through the 65 ms about each instant, the middle weighing
 * most.  Where not all of them are notes, the instant stays as it was.
 *
 * Pure.  Any thread.
 */
#ifndef LISTEN_SMOOTH_H
#define LISTEN_SMOOTH_H

#include <stddef.h>

#include "evenhand/listen/heard.h"

enum { SMOOTH_REACH = 6 }; /* instants on each side */

/* n doubles of scratch. */
void smooth(struct instant *m, size_t n, double *scratch);

/* What is left of a swing of so many Hz: 1 at 0, 0.99 at 8. */
double smooth_share(double hz);

#endif
