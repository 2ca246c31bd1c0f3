/*
 * row.h - the newest samples of a stream, and how much energy lies before each
 *
 * The energy of a piece is then the difference of two numbers, wherever it
 * lies: sums that are kept, not made anew at each search.  They are doubles and
 * begin at the row, so that what was loud long ago leaves no error behind.
 *
 * Pure; memory from an arena once.  One thread at a time.
 */
#ifndef LISTEN_ROW_H
#define LISTEN_ROW_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "evenhand/base/arena.h"

struct row {
	float *x;
	double *energy; /* of x[0..i - 1] */
	int64_t first;	/* x[0] is this sample of the stream; may be below 0 */
	size_t n, room;
};

/*
 * Begins with `before` samples of silence before sample 0, and has room for so
 * many samples.  False when memory is short.
 */
bool row_take(struct arena *a, struct row *r, size_t before, size_t room);

/* Makes room for `more` samples; what is before sample `from` may go. */
void row_forget(struct row *r, int64_t from, size_t more);

/* The sample behind the last one of the row. */
static inline int64_t row_end(const struct row *r)
{
	return r->first + (int64_t)r->n;
}

/* There must be room. */
static inline void row_add(struct row *r, float x)
{
	r->x[r->n] = x;
	r->energy[r->n + 1] = r->energy[r->n] + (double)x * (double)x;
	r->n++;
}

/*
 * About one sample of a row: it is x[0], and energy[i] that of all up to, but
 * not including, x[i].
 */
struct row_at {
	const float *x;
	const double *energy;
};

struct row_at row_at(const struct row *r, int64_t sample);

/* Of samples from..to - 1 about it. */
static inline double row_energy(struct row_at at, int from, int to)
{
	return at.energy[to] - at.energy[from];
}

#endif
