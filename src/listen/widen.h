/*
 * widen.h - twice as many samples, for what is too slow to be listened to
 *
 * Between any two samples one is laid, from the 32 about it by a sinc under
 * Blackman's window; what is given lags behind by 16 of the slow ones, which are
 * left out at the beginning, so that nothing moves in time.
 *
 * Pure.  One thread at a time.
 */
#ifndef LISTEN_WIDEN_H
#define LISTEN_WIDEN_H

#include <stddef.h>

enum { WIDEN_REACH = 16 };

/* All zero is ready once widen_begin was called. */
struct widen {
	float tap[2 * WIDEN_REACH];
	float past[4 * WIDEN_REACH]; /* the newest, written twice in a row */
	int at, wait;
};

void widen_begin(struct widen *w);

/* Takes n and gives at most 2 n: the number of them. */
size_t widen_take(struct widen *w, const float *in, size_t n, float *out);

/* The last ones: 2 WIDEN_REACH of them. */
size_t widen_end(struct widen *w, float *out);

#endif
