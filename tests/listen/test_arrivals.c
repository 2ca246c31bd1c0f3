/*
 * test_arrivals.c - when and how far a hand glided, against the truth
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/listen/arrivals.h"
#include "listening.h"

#define E3 164.8138

static struct bowed gliding(double pulses_a_second, double cents)
{
	return (struct bowed) { .rate = 48000,
		.seconds = 6,
		.hz = E3,
		.jitter_cents = 2,
		.noise_db = -25,
		.turn_s = 3,
		.pulses_a_second = pulses_a_second,
		.travel_cents = cents,
		.glide_s = fmin(0.15, 0.3 / pulses_a_second) };
}

struct found {
	struct bowed_sound s;
	struct arrival at[BOWED_GLIDES_MAX];
	int n;
};

static struct found find(const struct bowed *b)
{
	struct found f = { .s = bowed_make(b) };
	struct asked asked = { b->hz, b->hz * exp2(b->travel_cents / 1200) };
	struct listening l = listening_live(&f.s, b->rate, asked, 512);

	listening_refine(&l);
	f.n = arrivals_find(
	    &l.arena, l.m, l.n, b->hz, b->travel_cents, f.at, BOWED_GLIDES_MAX);
	listening_done(&l);
	return f;
}

/* The largest of n but a tenth of them. */
static double most(double *x, int n)
{
	qsort(x, (size_t)n, sizeof(*x), nearness_order);
	return x[n * 9 / 10];
}

static void near_enough(
    const struct bowed *b, const struct found *f, double half, double nine)
{
	double off50[BOWED_GLIDES_MAX], off90[BOWED_GLIDES_MAX];
	double way[BOWED_GLIDES_MAX];

	if (f->n != f->s.glides)
		fail_msg("%g cents, %g a second: %d found of %d",
		    b->travel_cents, b->pulses_a_second, f->n, f->s.glides);
	for (int i = 0; i < f->n; i++) {
		off50[i] = fabs(f->at[i].half_s - f->s.half[i]);
		off90[i] = fabs(f->at[i].nine_s - f->s.nine[i]);
		way[i] = fabs(f->at[i].upper_cents - f->at[i].lower_cents -
		    b->travel_cents);
	}
	if (most(off50, f->n) > half || most(off90, f->n) > nine ||
	    most(way, f->n) > 4)
		fail_msg("%g cents, %g a second: %.1f ms, %.1f ms, %.1f cents",
		    b->travel_cents, b->pulses_a_second,
		    1000 * most(off50, f->n), 1000 * most(off90, f->n),
		    most(way, f->n));
}

/* Every arrival and no other, near its instant, in every stage's travel. */
static void test_all_travels(void **state)
{
	static const double cents[] = { 500, 300, 200, 100, 50 };
	static const double pulses[] = { 1, 2, 3 };

	(void)state;
	for (size_t i = 0; i < sizeof(cents) / sizeof(*cents); i++)
		for (size_t j = 0; j < sizeof(pulses) / sizeof(*pulses); j++) {
			struct bowed b = gliding(pulses[j], cents[i]);
			struct found f = find(&b);

			near_enough(&b, &f, cents[i] < 100 ? 0.007 : 0.004,
			    cents[i] < 100 ? 0.016 : 0.009);
			free(f.s.x);
		}
}

/* Ticks a little softer than the string, on the arrivals themselves. */
static void test_ticks(void **state)
{
	struct bowed b = gliding(2, 200);
	struct found f;

	(void)state;
	b.tick_db = -6;
	f = find(&b);
	near_enough(&b, &f, 0.004, 0.009);
	free(f.s.x);
}

/* What was asked and what the hand did, in numbers of a turn. */
static void test_turn(void **state)
{
	struct bowed b = gliding(2, 200);
	struct found f;
	struct arrivals a;
	double pulse[BOWED_GLIDES_MAX], mean = 0, gap, sd = 0;
	int gaps;

	(void)state;
	b.unsteady_s = 0.03;
	f = find(&b);
	gaps = f.s.glides - 1;
	for (int i = 0; i < f.s.glides; i++)
		pulse[i] = f.s.nine[i] - 0.02;
	mean = (f.s.half[gaps] - f.s.half[0]) / gaps;
	for (int i = 0; i < gaps; i++) {
		gap = f.s.half[i + 1] - f.s.half[i];
		sd += (gap - mean) * (gap - mean);
	}
	sd = sqrt(sd / gaps);
	a = arrivals_measure(
	    &(struct arrivals_asked) { 250, pulse, f.s.glides, true }, f.at,
	    f.n);
	assert_int_equal(a.heard, f.s.glides);
	assert_true(fabs(a.travel_cents - 200) < 2);
	assert_true(fabs(a.travel_share - 0.8) < 0.01);
	assert_true(a.travel_spread < 3);
	assert_true(a.even_known && fabs(a.unevenness - sd / mean) < 0.006);
	assert_true(a.timed && fabs(a.late_s - 0.02) < 0.003);
	assert_true(a.late_spread_s < 0.006);
	assert_true(a.sure > 0.9);
	a = arrivals_measure(
	    &(struct arrivals_asked) { 250, pulse, f.s.glides, false }, f.at,
	    f.n);
	assert_true(!a.timed && a.late_s == 0);
	free(f.s.x);
}

/* A pitch drawn by hand: straight ramps, 10 instants long, 200 cents high. */
static void draw(struct instant *m, size_t n, size_t period)
{
	for (size_t k = 0; k < n; k++) {
		double at = (double)(k % period);
		double up = fmin(fmax((at - 40) / 10, 0), 1);
		double down = fmin(fmax((at - 90) / 10, 0), 1);

		m[k] = (struct instant) { .what = HEARD_NOTE,
			.sure = 1,
			.hz = (float)(E3 * exp2(200 * (up - down) / 1200)) };
	}
}

/* Exactly where the lines cross, and what is not heard is missing. */
static void test_drawn(void **state)
{
	enum { N = 1000, PERIOD = 100 };
	struct instant m[N];
	struct arrival at[16];
	struct arena a = { NULL, 0 };
	struct arrivals sum;

	(void)state;
	draw(m, N, PERIOD);
	assert_int_equal(arrivals_find(&a, m, N, E3, 200, at, 16), 10);
	for (int i = 0; i < 10; i++) {
		assert_true(fabs(at[i].half_s - 0.225 - i * 0.5) < 1e-4);
		assert_true(fabs(at[i].nine_s - 0.245 - i * 0.5) < 1e-4);
		assert_true(fabs(at[i].upper_cents - 200) < 0.01);
		assert_true(fabs(at[i].lower_cents) < 0.01);
		assert_true(at[i].sure == 1);
	}
	assert_int_equal(arrivals_find(&a, m, N, E3, 200, at, 3), 3);
	for (size_t k = 420; k < 480; k++)
		m[k].what = HEARD_NOISE;
	assert_int_equal(arrivals_find(&a, m, N, E3, 200, at, 16), 9);
	/* The time over a missing one is neither in the time nor its spread. */
	sum = arrivals_measure(
	    &(struct arrivals_asked) { 200, NULL, 0, false }, at, 9);
	assert_true(sum.even_known && fabs(sum.every_s - 0.5) < 1e-4);
	assert_true(sum.unevenness < 1e-3);
	arena_done(&a);
}

/* "Could not hear" is an answer. */
static void test_none(void **state)
{
	enum { N = 600 };
	struct instant m[N] = { { .what = HEARD_NOTHING } };
	struct arrival at[16];
	struct arena a = { NULL, 0 };
	struct arrivals sum;

	(void)state;
	assert_int_equal(arrivals_find(&a, m, N, E3, 200, at, 16), 0);
	assert_int_equal(arrivals_find(&a, m, 0, E3, 200, at, 16), 0);
	for (size_t k = 0; k < N; k++)
		m[k] = (struct instant) { .what = HEARD_NOTE,
			.hz = (float)(E3 * (1 + 0.001 * bowed_normal())) };
	assert_int_equal(arrivals_find(&a, m, N, E3, 200, at, 16), 0);
	sum = arrivals_measure(
	    &(struct arrivals_asked) { 200, NULL, 0, false }, at, 0);
	assert_int_equal(sum.heard, 0);
	assert_true(sum.sure == 0 && !sum.even_known && !sum.timed);
	arena_done(&a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_all_travels),
		cmocka_unit_test(test_ticks),
		cmocka_unit_test(test_turn),
		cmocka_unit_test(test_drawn),
		cmocka_unit_test(test_none),
	};

	seeded_begin("test_arrivals");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
