/*
 * thin.c - samples of a card made fewer, for all that listens
 *
 * The low-pass is a sinc under Blackman's window, 24 thinned samples long:
 * what would fold into the lowest 0.38 of the thinned rate is 70 dB down.
 */
#include "evenhand/listen/thin.h"

#include <assert.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "evenhand/listen/heard.h"

enum {
	REACH = 12,  /* thinned samples that the filter sees on each side */
	LANES = 8,   /* sums side by side, for the sake of speed */
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
	int taps; /* 2 REACH factor + 1, or 1 */
	int span; /* taps, and as many of zero as make whole lanes */
	float *tap;
	float *past; /* the newest span samples, and room for a chunk */
	int wait;    /* samples until the next one comes out */
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
	float *tap = t->tap + t->span - t->taps;
	int half = t->taps / 2;
	double sum = 0;

	for (int i = 0; i < t->taps; i++) {
		double x = (double)(i - half) / t->factor;
		double turn = TWO_PI * i / (t->taps - 1);
		double window = 0.42 - 0.5 * cos(turn) + 0.08 * cos(2 * turn);
		double sinc = i == half
		    ? 1
		    : sin(x * TWO_PI / 2) * 2 / (x * TWO_PI);

		tap[i] = (float)(sinc * window);
		sum += sinc * window;
	}
	for (int i = 0; i < t->taps; i++)
		tap[i] = (float)(tap[i] / sum);
}

struct thin *thin_new(struct arena *a, int rate, double high_hz)
{
	struct thin *t = arena_take(a, sizeof(*t));

	assert(rate >= HEARD_RATE_MIN && rate <= HEARD_RATE_MAX);
	if (t == NULL)
		return NULL;
	t->factor = factor_of(rate, high_hz);
	t->rate = (double)rate / t->factor;
	t->taps = t->factor > 1 ? 2 * REACH * t->factor + 1 : 1;
	t->span = (t->taps + LANES - 1) / LANES * LANES;
	t->tap = arena_take(a, (size_t)t->span * sizeof(float));
	t->past = arena_take(a, (size_t)(t->span + CHUNK) * sizeof(float));
	if (t->tap == NULL || t->past == NULL)
		return NULL;
	if (t->taps > 1)
		make_taps(t);
	else
		t->tap[t->span - 1] = 1;
	t->wait = t->taps / 2;
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

/* Of the span samples that begin at x; the taps of zero come first. */
static float filtered(const struct thin *t, const float *x)
{
	const float *tap = t->tap;
	float s[LANES] = { 0 };

	for (int i = 0; i < t->span; i += LANES)
		for (int j = 0; j < LANES; j++)
			s[j] += x[i + j] * tap[i + j];
	return (s[0] + s[1] + s[2] + s[3]) + (s[4] + s[5] + s[6] + s[7]);
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

/* n samples, CHUNK at most, stand behind those of before. */
static size_t filter(struct thin *t, size_t n, float *out)
{
	size_t made = 0, at = (size_t)t->wait;

	for (; at < n; at += (size_t)t->factor)
		out[made++] = without_constant(
		    t, filtered(t, t->past + at + 1));
	t->wait = (int)(at - n);
	t->out += made;
	memmove(t->past, t->past + n, (size_t)t->span * sizeof(float));
	return made;
}

size_t thin_take(struct thin *t, const float *in, size_t n, float *out)
{
	float *new = t->past + t->span;
	size_t made = 0;

	t->in += n;
	for (size_t i = 0; i < n; i += CHUNK) {
		size_t part = n - i < CHUNK ? n - i : CHUNK;

		for (size_t j = 0; j < part; j++)
			new[j] = bounded(in[i + j]);
		made += filter(t, part, out + made);
	}
	return made;
}

size_t thin_end(struct thin *t, float *out)
{
	uint64_t factor = (uint64_t)t->factor;
	uint64_t due = (t->in + factor - 1) / factor;
	size_t made = 0;

	while (t->out < due && made < THIN_END_MAX) {
		t->past[t->span] = 0;
		made += filter(t, 1, out + made);
	}
	return made;
}
