/*
 * refine.c - the pitch of a bow once more, when all of it was heard
 *
 * Some seconds at a time, with edges that are read and thrown away, so that an
 * hour needs no more memory than a bow.
 *
 * At last the pitch is smoothed by a parabola through 65 ms about each instant
 * (Savitzky and Golay, Analytical Chemistry 36, 1964), which leaves a swing of
 * 6 Hz as wide as it was but for 0.3 %, and takes away what a bow jitters.
 */
#include "evenhand/listen/refine.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "apart.h"
#include "evenhand/listen/live.h"
#include "evenhand/music/pitch.h"
#include "partials.h"
#include "runs.h"
#include "smooth.h"

#define BOTTOM_HZ 1000.0      /* of the partials that are read */
#define FIRST_TOP_HZ 2500.0   /* at first, while the pitch is still coarse */
#define TOP_HZ 6000.0	      /* later */
#define TOP_PARTIAL 4.0	      /* of the highest notes at least so many */
#define CLEAN_SHARE 0.38      /* of the rate: above it sound folds (thin.c) */
#define CHANGE_MAX_CENTS 60.0 /* of an instant in one pass */

enum {
	PASSES = 4,
	EDGE = 64, /* instants on each side of a piece that are thrown away */
	CORE = PIECE_MAX - 2 * EDGE,
};

struct refining {
	struct partials *partials;
	double rate;
	const float *x;
	size_t samples;
	size_t n;     /* instants */
	double *hz;   /* of each, gaps filled; before */
	double *fine; /* after */
	float *apart;
};

/* Pitch goes straight on across what has none. False: none has. */
static bool fill_gaps(const struct instant *m, size_t n, double *hz)
{
	size_t last = n;

	for (size_t k = 0; k < n; k++) {
		size_t from = last == n ? 0 : last + 1;
		double start;

		if (m[k].what != HEARD_NOTE)
			continue;
		hz[k] = (double)m[k].hz;
		start = last == n ? hz[k] : hz[last];
		for (size_t j = from; j < k; j++)
			hz[j] = start +
			    (hz[k] - start) * (double)(j + 1 - from) /
				(double)(k + 1 - from);
		last = k;
	}
	if (last == n)
		return false;
	for (size_t j = last + 1; j < n; j++)
		hz[j] = hz[last];
	return true;
}

static double top_hz(const struct refining *r, const double *hz, size_t n)
{
	double high = hz[0];

	for (size_t k = 1; k < n; k++)
		high = fmax(high, hz[k]);
	return fmin(fmax(TOP_HZ, TOP_PARTIAL * high), CLEAN_SHARE * r->rate);
}

/* Instants from..to, to - from <= PIECE_MAX, in place of hz. */
static void passes(
    struct refining *r, size_t from, size_t to, double *hz, float *apart)
{
	double off[PIECE_MAX];
	size_t n = to - from;
	size_t at = (size_t)floor((double)from * HEARD_STEP_S * r->rate + 0.5);
	struct piece piece = { r->x + at, r->samples - at, hz, n };

	for (int pass = 0; pass < PASSES; pass++) {
		double top = pass == 0 ? FIRST_TOP_HZ : top_hz(r, hz, n);

		partials_read(r->partials, &piece, BOTTOM_HZ, top, off);
		for (size_t k = 0; k < n; k++) {
			double cents = fmin(
			    fmax(off[k], -CHANGE_MAX_CENTS), CHANGE_MAX_CENTS);

			hz[k] = pitch_above(hz[k], cents);
		}
	}
	apart_measure(r->partials, &piece, apart);
}

static void refine_core(struct refining *r, size_t core)
{
	double hz[PIECE_MAX];
	float apart[PIECE_MAX];
	size_t from = core > EDGE ? core - EDGE : 0;
	size_t to = core + CORE + EDGE < r->n ? core + CORE + EDGE : r->n;
	size_t end = core + CORE < r->n ? core + CORE : r->n;

	memcpy(hz, r->hz + from, (to - from) * sizeof(double));
	passes(r, from, to, hz, apart);
	memcpy(
	    r->fine + core, hz + (core - from), (end - core) * sizeof(double));
	memcpy(r->apart + core, apart + (core - from),
	    (end - core) * sizeof(float));
}

/* A core that has nothing to refine costs nothing. */
static bool any_note(const struct instant *m, size_t from, size_t to)
{
	for (size_t k = from; k < to; k++)
		if (m[k].what == HEARD_NOTE)
			return true;
	return false;
}

static void refine_all(struct refining *r, const struct instant *m)
{
	for (size_t core = 0; core < r->n; core += CORE) {
		size_t end = core + CORE < r->n ? core + CORE : r->n;

		if (any_note(m, core, end))
			refine_core(r, core);
	}
}

bool refine(struct arena *a, const struct asked *asked, double rate,
    const float *x, size_t samples, struct instant *m, size_t n)
{
	double lowest = pitch_above(asked->low_hz, -HEARD_BEYOND_CENTS);
	struct refining r = {
		.rate = rate, .x = x, .samples = samples, .n = n
	};

	if (n < 2)
		return true;
	assert((double)samples > (double)(n - 1) * HEARD_STEP_S * rate);
	r.hz = arena_take(a, n * sizeof(double));
	r.fine = arena_take(a, n * sizeof(double));
	r.apart = arena_take(a, n * sizeof(float));
	r.partials = partials_new(a, rate, lowest);
	if (r.hz == NULL || r.fine == NULL || r.apart == NULL ||
	    r.partials == NULL)
		return false;
	runs_clean(m, n, asked);
	if (!fill_gaps(m, n, r.hz))
		return true;
	refine_all(&r, m);
	for (size_t k = 0; k < n; k++) {
		if (m[k].what != HEARD_NOTE)
			continue;
		m[k].hz = (float)r.fine[k];
		m[k].apart = r.apart[k];
	}
	smooth(m, n, r.fine);
	return true;
}
