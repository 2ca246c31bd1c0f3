/*
 * thin.c - samples of a card made fewer, for all that listens
 *
 * The low-pass is a sinc under Blackman's window, 24 thinned samples long:
 * what would fold into the lowest 0.38 of the thinned rate is 70 dB down.
 *
 * Samples lie in as many rows as one thinned sample has, each by its place: so
 * eight thinned ones are worked out side by side.  The two halves of the filter
 * are alike, and each factor-th tap but the middle one is zero.
 */
#include "evenhand/listen/thin.h"

#include <assert.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "evenhand/listen/heard.h"

enum {
	REACH = 12,  /* thinned samples that the filter sees on each side */
	LANES = 8,   /* worked out side by side, for the sake of speed */
	CHUNK = 256, /* samples taken at a time */
};

#define RATE_LEAST 16000.0 /* of thinned samples: partials up to 6 kHz */
#define PERIOD_LEAST 24.0  /* samples in a period of the highest note */
#define CONSTANT_HZ 15.0   /* below this nothing is sound */
#define LOUDEST 8.0F	   /* a card gives -1..1; a file may give more */
#define TWO_PI 6.283185307179586

struct thin {
	double rate; /* of what comes out */
	int factor;
	int reach;    /* columns on each side: REACH, or 0 */
	float *tap;   /* from the middle outwards, reach factor of them */
	float *row;   /* factor rows */
	size_t width; /* of a row */
	/* In the rows; the next thinned sample is column `reach`. */
	size_t have;
	uint64_t in, out;
	double constant, keep;
};

static int factor_of(int rate, double high_hz)
{
	double least = fmax(RATE_LEAST, PERIOD_LEAST * high_hz);
	int factor = (int)(rate / least);

	return factor < 1 ? 1 : factor;
}

static void make_taps(struct thin *t)
{
	int half = t->reach * t->factor;
	double sum = 1;

	t->tap[0] = 1;
	for (int i = 1; i < half; i++) {
		double x = TWO_PI / 2 * i / t->factor;
		double turn = TWO_PI / 2 * (i + half) / half;
		double window = 0.42 - 0.5 * cos(turn) + 0.08 * cos(2 * turn);

		if (i % t->factor == 0)
			continue;
		t->tap[i] = (float)(sin(x) / x * window);
		sum += 2 * sin(x) / x * window;
	}
	for (int i = 0; i < half; i++)
		t->tap[i] = (float)(t->tap[i] / sum);
}

struct thin *thin_new(struct arena *a, int rate, double high_hz)
{
	struct thin *t = arena_take(a, sizeof(*t));
	size_t factor, reach;

	assert(rate >= HEARD_RATE_MIN && rate <= HEARD_RATE_MAX);
	if (t == NULL)
		return NULL;
	t->factor = factor_of(rate, high_hz);
	t->rate = (double)rate / t->factor;
	t->reach = t->factor > 1 ? REACH : 0;
	factor = (size_t)t->factor;
	reach = (size_t)t->reach;
	t->have = reach * factor;
	t->width = 2 * reach + 2 + CHUNK / factor + LANES;
	t->tap = arena_take(a, (reach * factor + 1) * sizeof(float));
	t->row = arena_take(a, factor * t->width * sizeof(float));
	if (t->tap == NULL || t->row == NULL)
		return NULL;
	make_taps(t);
	t->keep = exp(-TWO_PI * CONSTANT_HZ / t->rate);
	return t;
}

double thin_rate(const struct thin *t)
{
	return t->rate;
}

int thin_factor(const struct thin *t)
{
	return t->factor;
}

/* Eight thinned samples, the first of them in column at + reach. */
static void filtered(const struct thin *t, size_t at, float *out)
{
	const float *middle = t->row + at + t->reach;
	float s[LANES];

	for (int j = 0; j < LANES; j++)
		s[j] = t->tap[0] * middle[j];
	for (int i = 1; i < t->factor; i++) {
		const float *a = middle + (size_t)i * t->width;
		const float *b = middle + (size_t)(t->factor - i) * t->width;

		for (int k = 0; k < t->reach; k++) {
			float tap = t->tap[k * t->factor + i];

			for (int j = 0; j < LANES; j++)
				s[j] += tap * (a[j + k] + b[j - k - 1]);
		}
	}
	memcpy(out, s, sizeof(s));
}

/* What goes on unchanged is carried off slowly. */
static float without_constant(struct thin *t, float x)
{
	t->constant = x + t->keep * (t->constant - x);
	return (float)(x - t->constant);
}

static float bounded(float x)
{
	if (!(x >= -LOUDEST))
		return x < 0 ? -LOUDEST : 0;
	return x > LOUDEST ? LOUDEST : x;
}

/* Puts n samples, CHUNK at most, into their rows. */
static void put(struct thin *t, const float *in, size_t n)
{
	size_t factor = (size_t)t->factor;

	for (size_t i = 0; i < factor && i < n; i++) {
		size_t at = t->have + i;
		float *row = t->row + at % factor * t->width + at / factor;

		for (size_t j = i; j < n; j += factor)
			*row++ = bounded(in[j]);
	}
	t->have += n;
}

/* All thinned samples for which enough is there. */
static size_t give(struct thin *t, float *out)
{
	size_t factor = (size_t)t->factor, reach = (size_t)t->reach;
	size_t needed = 2 * reach * factor, columns;
	size_t n = t->have > needed ? (t->have - needed - 1) / factor + 1 : 0;
	float made[LANES];

	for (size_t i = 0; i < n; i++) {
		if (i % LANES == 0)
			filtered(t, i, made);
		out[i] = without_constant(t, made[i % LANES]);
	}
	t->have -= n * factor;
	t->out += n;
	columns = (t->have + factor - 1) / factor;
	for (size_t i = 0; n > 0 && i < factor; i++) {
		float *row = t->row + i * t->width;

		memmove(row, row + n, columns * sizeof(*row));
	}
	return n;
}

size_t thin_take(struct thin *t, const float *in, size_t n, float *out)
{
	size_t made = 0;

	t->in += n;
	for (size_t i = 0; i < n; i += CHUNK) {
		put(t, in + i, n - i < CHUNK ? n - i : CHUNK);
		made += give(t, out + made);
	}
	return made;
}

size_t thin_end(struct thin *t, float *out)
{
	static const float silence = 0;
	uint64_t factor = (uint64_t)t->factor;
	uint64_t due = (t->in + factor - 1) / factor;
	size_t made = 0;

	while (t->out < due && made < THIN_END_MAX) {
		put(t, &silence, 1);
		made += give(t, out + made);
	}
	return made;
}
