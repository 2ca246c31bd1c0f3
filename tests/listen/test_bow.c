/*
 * test_bow.c - where a bow turned, stopped, swelled and trembled
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/listen/bow.h"
#include "listening.h"

#define E3 164.8138

enum { EDGES = 32 };

struct bowed_bows {
	double edge[EDGES];
	int edges;
	struct bow bow[EDGES];
};

static struct bowed_bows measure(const struct bowed *b)
{
	struct bowed_sound s = bowed_make(b);
	struct asked asked = { b->hz, b->hz * exp2(b->travel_cents / 1200) };
	struct listening l = listening_live(&s, b->rate, asked, 512);
	struct bowed_bows bows;

	listening_refine(&l);
	bows.edges = bow_find(&l.arena, l.m, l.n, bows.edge, EDGES);
	for (int i = 0; i + 1 < bows.edges; i++)
		assert_true(bow_measure(&l.arena, l.m, l.n, bows.edge[i],
		    bows.edge[i + 1], &bows.bow[i]));
	listening_done(&l);
	free(s.x);
	return bows;
}

static struct bowed calm(void)
{
	return (struct bowed) { .rate = 48000,
		.seconds = 8,
		.hz = E3,
		.jitter_cents = 2,
		.noise_db = -30,
		.turn_s = 4 };
}

/* Two bows: where they begin, turn and end; a body's answer is no unrest. */
static void test_gliding_hand(void **state)
{
	struct bowed b = calm();
	struct bowed_bows bows;

	(void)state;
	b.pulses_a_second = 1.5;
	b.travel_cents = 300;
	b.glide_s = 0.15;
	bows = measure(&b);
	assert_int_equal(bows.edges, 3);
	assert_true(fabs(bows.edge[0]) < 0.1);
	assert_true(fabs(bows.edge[1] - 4) < 0.06);
	assert_true(fabs(bows.edge[2] - 8) < 0.1);
	for (int i = 0; i < 2; i++) {
		assert_true(bows.bow[i].heard && bows.bow[i].stops == 0);
		if (bows.bow[i].unsteady_db > 0.45)
			fail_msg("%g dB", bows.bow[i].unsteady_db);
		assert_true(bows.bow[i].sure > 0.95);
	}
}

/* A trembling bow: SD of a sine is its height over the root of 2. */
static void test_trembling(void **state)
{
	struct bowed b = calm();
	struct bowed_bows bows;

	(void)state;
	b.ripple_db = 2;
	b.ripple_hz = 2.3;
	b.pulses_a_second = 1;
	b.travel_cents = 200;
	b.glide_s = 0.15;
	bows = measure(&b);
	assert_int_equal(bows.edges, 3);
	for (int i = 0; i < 2; i++)
		assert_true(fabs(bows.bow[i].unsteady_db - 2 / sqrt(2)) < 0.25);
}

/* A swell over the whole bow is drift: a slow sine's rise. */
static void test_drift(void **state)
{
	struct bowed b = calm();
	struct bowed_bows bows;

	(void)state;
	b.seconds = b.turn_s = 4;
	b.turn_s = 0;
	b.ripple_db = 6;
	b.ripple_hz = 1.0 / 16;
	bows = measure(&b);
	assert_int_equal(bows.edges, 2);
	/* Thirds of 3.5 s: 6 dB times the mean sine of the last, less the
	 * first: from 6 (0.943 - 0.316), by hand. */
	assert_true(fabs(bows.bow[0].drift_db - 3.6) < 0.3);
}

static int stops_of(double seconds)
{
	struct bowed b = calm();
	struct bowed_sound s;
	struct listening l;
	struct bow bow;

	b.seconds = 4;
	b.turn_s = 0;
	b.stop_s = 1.7;
	b.stop_long_s = seconds;
	s = bowed_make(&b);
	l = listening_live(&s, b.rate, (struct asked) { E3, E3 }, 512);
	assert_true(bow_measure(&l.arena, l.m, l.n, 0, 4, &bow));
	assert_true(bow.heard);
	listening_done(&l);
	free(s.x);
	return bow.stops;
}

/* A bow that stands for 0.1 s is told; one of 0.02 s is not worth it. */
static void test_stops(void **state)
{
	(void)state;
	assert_int_equal(stops_of(0.02), 0);
	assert_int_equal(stops_of(0.1), 1);
	assert_int_equal(stops_of(0.4), 1);
}

/* Pauses between bows are no bows, and silence has none. */
static void test_pauses(void **state)
{
	enum { N = 900 };
	struct instant m[N];
	struct arena a = { NULL, 0 };
	double edge[EDGES];
	struct bow bow;

	(void)state;
	for (size_t k = 0; k < N; k++) {
		bool sounds = k >= 100 && k < 800 && (k < 400 || k >= 500);

		m[k] = (struct instant) { .level_db = sounds ? -20 : -90,
			.hz = sounds ? (float)E3 : 0,
			.what = sounds ? HEARD_NOTE : HEARD_NOTHING };
	}
	assert_int_equal(bow_find(&a, m, N, edge, EDGES), 4);
	assert_true(fabs(edge[0] - 0.5) < 0.03 && fabs(edge[1] - 2) < 0.03);
	assert_true(fabs(edge[2] - 2.5) < 0.03 && fabs(edge[3] - 4) < 0.03);
	assert_true(bow_measure(&a, m, N, edge[1], edge[2], &bow));
	assert_false(bow.heard);
	assert_true(bow_measure(&a, m, N, edge[0], edge[1], &bow));
	assert_true(bow.heard && bow.unsteady_db < 0.01 && bow.stops == 0);
	assert_true(bow_measure(&a, m, N, 4.1, 9, &bow));
	assert_false(bow.heard);
	assert_int_equal(bow_find(&a, m, 0, edge, EDGES), 0);
	arena_done(&a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_gliding_hand),
		cmocka_unit_test(test_trembling),
		cmocka_unit_test(test_drift),
		cmocka_unit_test(test_stops),
		cmocka_unit_test(test_pauses),
	};

	seeded_begin("test_bow");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
