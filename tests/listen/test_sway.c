/*
 * test_sway.c - rate, width, evenness and middle of a vibrato, and no vibrato
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../../src/listen/smooth.h"
#include "evenhand/listen/sway.h"
#include "listening.h"

#define G3 195.9977

static struct sway measure(const struct bowed *b)
{
	struct bowed_sound s = bowed_make(b);
	struct listening l = listening_live(
	    &s, b->rate, (struct asked) { b->hz, b->hz }, 512);
	struct sway w;

	listening_refine(&l);
	assert_true(sway_measure(&l.arena, l.m, l.n, b->hz, &w));
	listening_done(&l);
	free(s.x);
	return w;
}

/* As fast, wide and even as it is. */
static void test_swings(void **state)
{
	static const struct {
		double hz, cents;
	} swings[] = { { 3, 20 }, { 4, 30 }, { 5.5, 8 }, { 5.5, 20 },
		{ 6.5, 60 }, { 8, 20 } };

	(void)state;
	for (size_t i = 0; i < sizeof(swings) / sizeof(*swings); i++) {
		struct bowed b = { .rate = 48000,
			.seconds = 5,
			.hz = G3,
			.jitter_cents = 2,
			.noise_db = -25,
			.turn_s = 2.5,
			.swing_hz = swings[i].hz,
			.swing_cents = swings[i].cents };
		struct sway w = measure(&b);

		if (!w.heard || fabs(w.rate_hz - b.swing_hz) > 0.03 ||
		    fabs(w.width_cents - b.swing_cents) >
			0.5 + 0.02 * b.swing_cents ||
		    fabs(w.middle_cents) > 0.6 ||
		    w.unevenness > 0.02 + 0.15 / b.swing_cents || w.sure < 0.9)
			fail_msg("%g Hz, %g cents: %g Hz, %g cents, middle %g, "
				 "uneven %g, sure %g",
			    b.swing_hz, b.swing_cents, w.rate_hz, w.width_cents,
			    w.middle_cents, w.unevenness, w.sure);
	}
}

enum { N = 1600 };

/* A pitch drawn by hand, each cycle longer or shorter by `uneven` in turns. */
static void draw(struct instant *m, double rate, double cents, double uneven)
{
	double phase = 0;

	for (size_t k = 0; k < N; k++) {
		double sign = (long)phase % 2 ? 1 : -1;

		m[k] = (struct instant) { .what = HEARD_NOTE,
			.sure = 1,
			.hz = (float)(G3 *
			    exp2((3 + cents * sin(BOWED_TWO_PI * phase)) /
				1200)) };
		phase += rate * HEARD_STEP_S / (1 + sign * uneven);
	}
}

static struct sway drawn(struct instant *m)
{
	struct arena a = { NULL, 0 };
	struct sway w;

	assert_true(sway_measure(&a, m, N, G3, &w));
	arena_done(&a);
	return w;
}

/* Periods a tenth too long and too short in turns have an SD of a tenth. */
static void test_uneven(void **state)
{
	struct instant m[N];
	struct sway w;

	(void)state;
	draw(m, 5.5, 30, 0.1);
	w = drawn(m);
	assert_true(w.heard && fabs(w.unevenness - 0.1) < 0.012);
	assert_true(fabs(w.middle_cents - 3) < 0.5);
	draw(m, 5.5, 30, 0);
	w = drawn(m);
	assert_true(w.heard && w.unevenness == 0);
	assert_true(fabs(w.rate_hz - 5.5) < 0.002);
	assert_true(w.width_spread < 0.1);
}

/* A bow turns in mid swing, and the pitch crosses the middle once more. */
static void test_crossed_twice(void **state)
{
	struct instant m[N];
	double was = 0;
	size_t at = N / 2;
	struct sway w;

	(void)state;
	draw(m, 5.5, 30, 0);
	/* The next crossing upwards. */
	for (; at < N; at++) {
		double cents = 1200 * log2((double)m[at].hz / G3) - 3;

		if (was < -5 && cents > -5)
			break;
		was = cents;
	}
	assert_true(at + 8 < N);
	for (size_t k = 0; k < 4; k++) {
		m[at + k].hz = (float)(G3 * exp2(15.0 / 1200));
		m[at + k + 4].hz = (float)(G3 * exp2(-15.0 / 1200));
	}
	w = drawn(m);
	assert_true(w.heard && fabs(w.rate_hz - 5.5) < 0.01);
}

/* Nothing, a steady note, a slow sway, glides: no vibrato is made up. */
static void test_none(void **state)
{
	struct instant m[N] = { { .what = HEARD_NOTHING } };

	(void)state;
	assert_false(drawn(m).heard);
	draw(m, 5.5, 0, 0);
	assert_false(drawn(m).heard);
	draw(m, 5.5, 1.5, 0);
	assert_false(drawn(m).heard);
	draw(m, 1, 30, 0);
	assert_false(drawn(m).heard);
}

/* What the measure gives back is what smoothing takes. */
static void test_share(void **state)
{
	struct instant m[N];
	double scratch[N];

	(void)state;
	for (double hz = 2; hz < 17; hz += 3) {
		double most = 0;

		draw(m, hz, 50, 0);
		smooth(m, N, scratch);
		for (size_t k = 50; k < N - 50; k++)
			most = fmax(
			    most, 1200 * log2((double)m[k].hz / G3) - 3);
		assert_true(fabs(most / 50 - smooth_share(hz)) < 0.02);
	}
	assert_true(fabs(smooth_share(0) - 1) < 1e-12);
	assert_true(smooth_share(6) > 0.98 && smooth_share(6) < 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_swings),
		cmocka_unit_test(test_uneven),
		cmocka_unit_test(test_crossed_twice),
		cmocka_unit_test(test_none),
		cmocka_unit_test(test_share),
	};

	seeded_begin("test_sway");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
