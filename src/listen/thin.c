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

enum { REACH = 12 }; /* thinned samples that the filter sees on each side */

#define RATE_LEAST 16000.0 /* of thinned samples: partials up to 6 kHz */
#define PERIOD_LEAST 24.0  /* samples in a period of the highest note */
#define CONSTANT_HZ 15.0   /* below this nothing is sound */
#define LOUDEST 8.0F	   /* a card gives -1..1; a file may give more */
#define TWO_PI 6.283185307179586

struct thin {
	double rate; /* of what comes out */
	int factor;
	int taps; /* 2 REACH factor + 1, or 1 */
	float *tap;
	float *past; /* the newest taps samples, written twice in a row */
	int at;	     /* where the next goes, 0..taps - 1 */
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
	int half = t->taps / 2;
	double sum = 0;

	for (int i = 0; i < t->taps; i++) {
		double x = (double)(i - half) / t->factor;
		double turn = TWO_PI * i / (t->taps - 1);
		double window = 0.42 - 0.5 * cos(turn) + 0.08 * cos(2 * turn);
		double sinc = i == half
		    ? 1
		    : sin(x * TWO_PI / 2) * 2 / (x * TWO_PI);

		t->tap[i] = (float)(sinc * window);
		sum += sinc * window;
	}
	for (int i = 0; i < t->taps; i++)
		t->tap[i] = (float)(t->tap[i] / sum);
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
	t->tap = arena_take(a, (size_t)t->taps * sizeof(float));
	t->past = arena_take(a, (size_t)t->taps * 2 * sizeof(float));
	if (t->tap == NULL || t->past == NULL)
		return NULL;
	if (t->taps > 1)
		make_taps(t);
	else
		t->tap[0] = 1;
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

/* Eight sums side by side, for the sake of speed. */
static float filtered(const struct thin *t)
{
	const float *x = t->past + t->at, *tap = t->tap;
	float s[8] = { 0 };
	int i = 0;

	for (; i + 8 <= t->taps; i += 8)
		for (int j = 0; j < 8; j++)
			s[j] += x[i + j] * tap[i + j];
	for (; i < t->taps; i++)
		s[0] += x[i] * tap[i];
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

static size_t take_one(struct thin *t, float x, float *out)
{
	t->past[t->at] = x;
	t->past[t->at + t->taps] = x;
	t->at = t->at + 1 < t->taps ? t->at + 1 : 0;
	if (t->wait-- > 0)
		return 0;
	t->wait = t->factor - 1;
	*out = without_constant(t, filtered(t));
	t->out++;
	return 1;
}

size_t thin_take(struct thin *t, const float *in, size_t n, float *out)
{
	size_t made = 0;

	t->in += n;
	for (size_t i = 0; i < n; i++)
		made += take_one(t, bounded(in[i]), out + made);
	return made;
}

size_t thin_end(struct thin *t, float *out)
{
	uint64_t factor = (uint64_t)t->factor;
	uint64_t due = (t->in + factor - 1) / factor;
	size_t made = 0;

	while (t->out < due && made < THIN_END_MAX)
		made += take_one(t, 0, out + made);
	return made;
}
