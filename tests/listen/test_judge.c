/*
 * test_judge.c - microphones that are good, and what is wrong with others
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/listen/judge.h"
#include "listening.h"

enum { RATE = 48000, TURN_S = 8, REST_S = 4 };

/* A turn, then a rest in which the microphone hisses. */
struct recording {
	struct bowed_sound turn;
	float *rest;
	size_t n;
};

static struct recording record(int rate, double amount, double hiss)
{
	struct bowed b = { .rate = rate,
		.seconds = TURN_S,
		.hz = 164.8138,
		.jitter_cents = 2,
		.noise_db = -40,
		.turn_s = 4,
		.pulses_a_second = 1.5,
		.travel_cents = 200,
		.glide_s = 0.15 };
	struct recording r = { .turn = bowed_make(&b),
		.n = (size_t)(REST_S * rate) };

	r.rest = malloc(r.n * sizeof(float));
	for (size_t i = 0; i < r.turn.n; i++)
		r.turn.x[i] = (float)(amount * (double)r.turn.x[i] +
		    hiss * bowed_normal());
	for (size_t i = 0; i < r.n; i++)
		r.rest[i] = (float)(hiss * bowed_normal());
	return r;
}

static struct turn_heard good_turn(double drift_db, double room)
{
	struct turn_heard t = { .answer = TURN_HEARD, .room = room, .bows = 2 };

	for (int i = 0; i < 2; i++)
		t.bow[i].bow = (struct bow) { .heard = true,
			.drift_db = drift_db };
	return t;
}

/* Two turns and rests of it. */
static struct judged judge(
    const struct recording *r, int rate, const struct turn_heard *t)
{
	struct judge j;

	judge_begin(&j, rate);
	assert_int_equal(judge_tell(&j).what, JUDGE_UNKNOWN);
	for (int i = 0; i < 3; i++) {
		judge_take(&j, r->rest, r->n / 2, false);
		judge_take(&j, r->turn.x, r->turn.n, true);
		judge_take(&j, r->rest, r->n / 2, false);
		judge_turn(&j, t);
	}
	return judge_tell(&j);
}

static void done(struct recording *r)
{
	free(r->turn.x);
	free(r->rest);
}

static void is(const struct recording *r, int rate, enum judgement what)
{
	struct turn_heard t = good_turn(1, 0.3);
	struct judged found = judge(r, rate, &t);

	if (found.what != what)
		fail_msg("%d Hz: %d, not %d (%g)", rate, (int)found.what,
		    (int)what, found.evidence);
}

/* Any rate, soft or loud, in a quiet or an ordinary room: nothing is wrong. */
static void test_fine(void **state)
{
	static const int rates[] = { 16000, 44100, 48000, 96000 };
	static const double amounts[] = { 1.9, 0.3, 0.03 };

	(void)state;
	for (int i = 0; i < 12; i++) {
		double amount = amounts[i / 4];
		struct recording r = record(
		    rates[i % 4], amount, i % 2 ? 4e-5 : 0.01 * amount);

		is(&r, rates[i % 4], JUDGE_FINE);
		done(&r);
	}
}

static void test_dead(void **state)
{
	static const float all[] = { 0, -0.2F };

	(void)state;
	for (int i = 0; i < 2; i++) {
		struct recording r = record(RATE, 1, 0);

		for (size_t k = 0; k < r.turn.n; k++)
			r.turn.x[k] = all[i];
		for (size_t k = 0; k < r.n; k++)
			r.rest[k] = all[i];
		is(&r, RATE, JUDGE_DEAD);
		done(&r);
	}
}

static void test_quiet(void **state)
{
	struct recording r = record(RATE, 0.002, 1e-5);

	(void)state;
	is(&r, RATE, JUDGE_QUIET);
	done(&r);
	/* Nobody plays, the microphone hisses. */
	r = record(RATE, 0, 1e-4);
	is(&r, RATE, JUDGE_QUIET);
	done(&r);
}

static void test_clips(void **state)
{
	struct recording r = record(RATE, 6, 1e-4);

	(void)state;
	for (size_t k = 0; k < r.turn.n; k++)
		r.turn.x[k] = fminf(fmaxf(r.turn.x[k], -1), 1);
	is(&r, RATE, JUDGE_CLIPS_IT);
	done(&r);
}

/* What lies 30 dB under the sound is cut to nothing, as speech programs do. */
static void test_gated(void **state)
{
	struct recording r = record(RATE, 0.5, 1e-4);

	(void)state;
	for (size_t k = 0; k < r.n; k++)
		r.rest[k] = 0;
	/* The player stops five times; the gate shuts in no time. */
	for (int i = 0; i < 5; i++)
		for (size_t k = 0; k < RATE / 4; k++)
			r.turn.x[(size_t)(i + 1) * RATE * 5 / 4 + k] = 0;
	is(&r, RATE, JUDGE_GATED);
	done(&r);
}

/* A steep low-pass at 3.4 kHz, as telephones have: a windowed sinc. */
static void narrow(float *x, size_t n, int rate)
{
	enum { REACH = 256 };
	float *y = calloc(n, sizeof(*y));

	for (int i = -REACH; i <= REACH; i++) {
		double at = BOWED_TWO_PI * 3400.0 / rate * i;
		double window = 0.42 + 0.5 * cos(BOWED_TWO_PI / 2 * i / REACH) +
		    0.08 * cos(BOWED_TWO_PI * i / REACH);
		double tap = window * 6800 / rate * (i == 0 ? 1 : sin(at) / at);

		for (size_t k = REACH; k + REACH < n; k++)
			y[k] += (float)tap * x[(size_t)((long)k - i)];
	}
	memcpy(x, y, n * sizeof(*x));
	free(y);
}

static void test_narrow(void **state)
{
	struct recording r = record(RATE, 0.5, 1e-5);

	(void)state;
	narrow(r.turn.x, r.turn.n, RATE);
	narrow(r.rest, r.n, RATE);
	is(&r, RATE, JUDGE_NARROW);
	done(&r);
}

static void test_of_turns(void **state)
{
	struct recording r = record(RATE, 0.5, 1e-4);
	struct turn_heard fades = good_turn(-11, 0.3);
	struct turn_heard far = good_turn(1, 1.3);
	struct turn_heard silent = { .answer = TURN_SILENT };
	struct judged found = judge(&r, RATE, &fades);

	(void)state;
	assert_int_equal(found.what, JUDGE_PUMPED);
	assert_true(fabs(found.evidence - 11) < 1e-9);
	found = judge(&r, RATE, &far);
	assert_int_equal(found.what, JUDGE_FAR);
	assert_true(fabs(found.evidence - 1.3) < 1e-9);
	/* Without a turn nothing is called fine. */
	assert_int_equal(judge(&r, RATE, &silent).what, JUDGE_UNKNOWN);
	done(&r);
}

/* One far turn of three is not enough, and how far is the mean of all. */
static void test_distance(void **state)
{
	struct turn_heard near = good_turn(0, 0.7), far = good_turn(0, 1.1);
	struct turn_heard none = good_turn(0, 0);
	struct judge j;

	(void)state;
	judge_begin(&j, RATE);
	assert_int_equal(judge_distance(&j), DISTANCE_UNKNOWN);
	judge_turn(&j, &none);
	assert_int_equal(judge_distance(&j), DISTANCE_UNKNOWN);
	judge_turn(&j, &far);
	assert_int_equal(judge_distance(&j), DISTANCE_FAR);
	judge_turn(&j, &near);
	judge_turn(&j, &near);
	assert_int_equal(judge_distance(&j), DISTANCE_NEAR);
}

static void test_noisy(void **state)
{
	struct recording r = record(RATE, 0.3, 1e-4);

	(void)state;
	for (size_t k = 0; k < r.n; k++) {
		double hum = BOWED_TWO_PI * 50 * (double)k / RATE;

		r.rest[k] += (float)(0.05 * (sin(hum) + 0.6 * sin(2 * hum)));
	}
	is(&r, RATE, JUDGE_NOISY);
	done(&r);
}

/* What is no number, and what is too large, breaks nothing. */
static void test_no_numbers(void **state)
{
	struct recording r = record(RATE, 0.5, 1e-4);
	struct judged found;

	(void)state;
	for (size_t k = 0; k < r.n; k++)
		r.rest[k] = k % 3 == 0 ? NAN : k % 3 == 1 ? INFINITY : -1e30F;
	found = judge(&r, RATE, &(struct turn_heard) { .answer = TURN_HEARD });
	assert_true(isfinite(found.evidence));
	done(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_fine),
		cmocka_unit_test(test_dead),
		cmocka_unit_test(test_quiet),
		cmocka_unit_test(test_clips),
		cmocka_unit_test(test_gated),
		cmocka_unit_test(test_narrow),
		cmocka_unit_test(test_of_turns),
		cmocka_unit_test(test_distance),
		cmocka_unit_test(test_noisy),
		cmocka_unit_test(test_no_numbers),
	};

	seeded_begin("test_judge");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
