/*
 * direction.h - the mean direction of points on a circle
 *
 * The sum of all points, each of length 1, points to it; how long that is for
 * each of them tells how much they agree (Mardia and Jupp, "Directional
 * Statistics", 2000, 2.2).
 *
 * Pure values, all zero to begin with.  Any thread.
 */
#ifndef LISTEN_DIRECTION_H
#define LISTEN_DIRECTION_H

#include <math.h>

#define DIRECTION_TURN 6.283185307179586

struct direction {
	double re, im;
	int n;
};

/* A point so many turns from where turns are counted from. */
static inline void direction_add(struct direction *d, double turns)
{
	d->re += cos(DIRECTION_TURN * turns);
	d->im += sin(DIRECTION_TURN * turns);
	d->n++;
}

/* From 0, no agreement or no points, to 1, all in one place. */
static inline double direction_agreed(const struct direction *d)
{
	return d->n == 0 ? 0 : hypot(d->re, d->im) / d->n;
}

/* Turns, -0.5..0.5; means nothing where next to nothing is agreed. */
static inline double direction_mean(const struct direction *d)
{
	return atan2(d->im, d->re) / DIRECTION_TURN;
}

#endif
