/*
 * partials.h - how far each partial is from where the pitch says it is
 *
 * A piece of sound and its pitch so far, some seconds at most.  Each partial is
 * turned back by its own phase, so that it stands still when the pitch is
 * right; what is left of its motion between the two halves of an instant is read
 * through Hann's window, six periods long.
 *
 * Pure; memory from an arena once for all pieces.  One thread at a time.
 */
#ifndef LISTEN_PARTIALS_H
#define LISTEN_PARTIALS_H

#include <stddef.h>

#include "evenhand/base/arena.h"

enum {
	PIECE_MAX = 640,   /* instants in a piece */
	PARTIALS_MAX = 60, /* read in one pass */
};

struct partials;

/* For pitches of lowest_hz and more.  NULL when memory is short. */
struct partials *partials_new(struct arena *a, double rate, double lowest_hz);

/* Samples from the first instant on; where there are none it is silent. */
struct piece {
	const float *x;
	size_t samples;
	const double *hz; /* of each instant */
	size_t instants;  /* 2..PIECE_MAX */
};

/*
 * Reads the partials between two frequencies and writes into cents[k] how far
 * above hz[k] their weighted median is: by the cube root of amplitude and
 * number, so that neither a loud partial nor the many high ones decide alone.
 */
void partials_read(struct partials *p, const struct piece *piece,
    double bottom_hz, double top_hz, double *cents);

/*
 * How far apart those that were read last are at each instant: the weighted
 * median of how far each is from their median, in Hz, told as cents of the first
 * partial.
 */
void partials_apart(const struct partials *p, size_t instants, float *apart);

#endif
