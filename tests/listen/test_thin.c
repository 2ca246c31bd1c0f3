/*
 * test_thin.c - fewer samples, the same sound at the same instants
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <stdlib.h>

#include "../score/seeded.h"
#include "evenhand/listen/heard.h"
#include "evenhand/listen/thin.h"

#define TWO_PI 6.283185307179586

static const int rates[] = { 16000, 22050, 32000, 44100, 48000, 88200, 96000,
	176400, 192000 };
enum { RATES = sizeof(rates) / sizeof(*rates) };

/* A second of a sine; returns what comes out, freed by the caller. */
static float *thinned(
    struct thin *t, int rate, double hz, double constant, size_t *n)
{
	float *in = malloc((size_t)rate * sizeof(*in));
	float *out = malloc(((size_t)rate + THIN_END_MAX) * sizeof(*out));

	for (int i = 0; i < rate; i++)
		in[i] = (float)(0.5 * sin(TWO_PI * hz * i / rate) + constant);
	*n = 0;
	for (int at = 0; at < rate;) {
		int block = seeded(1, 700);

		if (block > rate - at)
			block = rate - at;
		*n += thin_take(t, in + at, (size_t)block, out + *n);
		at += block;
	}
	*n += thin_end(t, out + *n);
	free(in);
	return out;
}

/* What a string says is kept, at its instant, and a constant is not. */
static void test_kept(void **state)
{
	(void)state;
	for (int r = 0; r < RATES; r++) {
		struct arena a = { NULL, 0 };
		struct thin *t = thin_new(&a, rates[r], 200);
		double worst = 0, rate = thin_rate(t);
		size_t n;
		float *x = thinned(t, rates[r], 3000, 0.25, &n);

		assert_true(rate >= 16000 && rate < 32000);
		assert_int_equal(
		    n, (rates[r] + thin_factor(t) - 1) / thin_factor(t));
		for (size_t i = n / 2; i < n - 50; i++)
			worst = fmax(worst,
			    fabs((double)x[i] -
				0.5 * sin(TWO_PI * 3000 * (double)i / rate)));
		if (worst > 0.01)
			fail_msg("%d: %g off", rates[r], worst);
		free(x);
		arena_done(&a);
	}
}

/* What would fold into the partials is 60 dB down. */
static void test_folding(void **state)
{
	(void)state;
	for (int r = 0; r < RATES; r++) {
		struct arena a = { NULL, 0 };
		struct thin *t = thin_new(&a, rates[r], 200);
		double sum = 0, rate = thin_rate(t);
		size_t n;
		float *x;

		if (thin_factor(t) > 1) {
			x = thinned(t, rates[r], 0.8 * rate, 0, &n);
			for (size_t i = n / 4; i < n * 3 / 4; i++)
				sum += (double)x[i] * (double)x[i];
			assert_true(sqrt(sum / ((double)n / 2)) < 0.00035);
			free(x);
		}
		arena_done(&a);
	}
}

/* What is no number, or far too loud, does no harm to what follows. */
static void test_no_numbers(void **state)
{
	struct arena a = { NULL, 0 };
	struct thin *t = thin_new(&a, 48000, 200);
	const float bad[] = { NAN, INFINITY, -INFINITY, 1e30F, -1e30F };
	float out[64];
	size_t n;

	(void)state;
	n = thin_take(t, bad, sizeof(bad) / sizeof(*bad), out);
	for (int i = 0; i < 40; i++)
		n += thin_take(t, (const float[3]) { 0, 0, 0 }, 3, out + n);
	assert_true(n > 25);
	for (size_t i = 0; i < n; i++)
		assert_true(isfinite(out[i]) && fabsf(out[i]) <= 8);
	arena_done(&a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_kept),
		cmocka_unit_test(test_folding),
		cmocka_unit_test(test_no_numbers),
	};

	seeded_begin("test_thin");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
