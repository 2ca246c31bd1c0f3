/*
 * widen.c - twice as many samples, for what is too slow to be listened to
 */
#include "widen.h"

#include <math.h>
#include <string.h>

#define PI 3.14159265358979324

enum { TAPS = 2 * WIDEN_REACH };

void widen_begin(struct widen *w)
{
	double sum = 0;

	memset(w, 0, sizeof(*w));
	/* Tap i lies i - WIDEN_REACH + 0.5 samples from what is wanted. */
	for (int i = 0; i < TAPS; i++) {
		double x = i - WIDEN_REACH + 0.5;
		double turn = PI * x / WIDEN_REACH;
		double window = 0.42 + 0.5 * cos(turn) + 0.08 * cos(2 * turn);

		w->tap[i] = (float)(window * sin(PI * x) / (PI * x));
		sum += (double)w->tap[i];
	}
	for (int i = 0; i < TAPS; i++)
		w->tap[i] = (float)((double)w->tap[i] / sum);
	w->wait = WIDEN_REACH;
}

/* past[at..at + TAPS) are the newest, the oldest first. */
static void push(struct widen *w, float x)
{
	w->past[w->at] = x;
	w->past[w->at + TAPS] = x;
	w->at = (w->at + 1) % TAPS;
}

size_t widen_take(struct widen *w, const float *in, size_t n, float *out)
{
	size_t made = 0;

	for (size_t i = 0; i < n; i++) {
		const float *x;
		float between = 0;

		push(w, isfinite(in[i]) ? in[i] : 0);
		if (w->wait > 0) {
			w->wait--;
			continue;
		}
		x = w->past + w->at;
		for (int j = 0; j < TAPS; j++)
			between += x[j] * w->tap[j];
		out[made++] = x[WIDEN_REACH - 1];
		out[made++] = between;
	}
	return made;
}

size_t widen_end(struct widen *w, float *out)
{
	static const float silence[WIDEN_REACH];

	return widen_take(w, silence, WIDEN_REACH, out);
}
