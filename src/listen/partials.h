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

/* Every fourth instant, 20 ms, is looked at; rows hold no others. */
enum { LOOK_EVERY = 4 };

struct looks {
	int first, n;			 /* numbers first..first + n - 1 */
	const float *bins[PARTIALS_MAX]; /* left of each one's motion */
	const float *amplitude[PARTIALS_MAX];
	const unsigned char *half; /* of the windows, in half instants */
};

/*
 * Looks once more at the partials between two frequencies, turned back by the
 * pitch that the last partials_read was given, for the same piece.  The sums
 * are triangles that reach into their neighbours, so that of a strong partial 400
 * Hz away nothing is left where a dark string has next to nothing; a bin is one
 * cycle in a window.  What is found lives until more is read.
 */
void partials_look(struct partials *p, const struct piece *piece,
    double bottom_hz, double top_hz, struct looks *out);

struct reading {
	float cents, weight;
};

/*
 * The weighted median of n of them, 1 or more, which are put in order.  Each
 * stands at the middle of its own weight; between two the median moves evenly.
 */
double readings_median(struct reading *r, int n);

#endif
