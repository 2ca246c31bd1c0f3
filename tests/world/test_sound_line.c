/*
 * test_sound_line.c - two clocks that do not run alike, told together for hours
 *
 * Stamps are made by rule: a card that is off its rate by so many parts in a
 * million, read with so much error, loses blocks and jumps.  What the line says
 * of the newest sample is compared with the truth.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../../src/world/sound_line.h"
#include "../score/seeded.h"

enum { RATE = 48000, LESSON_S = 45 * 60 };

/* A computer that has run for three weeks. */
#define ORIGIN (INT64_C(21) * 86400 * 1000000000)

/* How a card's stamps come about. */
struct card {
	double ppm;	 /* it is slow by so much */
	int block;	 /* samples from stamp to stamp */
	double early_ms; /* a stamp is off by -early..late, evenly */
	double late_ms;
	double step_ms;	  /* it is rounded to such steps; 0: not */
	double swing_ppm; /* its rate swings so much in SWING_S */
	int lost_every;	  /* a stamp of so many does not come; 0: all do */
};

enum { SWING_S = 600 };

static double even(double low, double high)
{
	return low + (high - low) * ((double)(seeded_bits() >> 11) * 0x1p-53);
}

/* When a sample truly was, in seconds. */
static double truth(const struct card *c, int64_t number)
{
	const double turn = 2 * 3.14159265358979323846 / SWING_S;
	double s = (double)number / RATE;

	return s * (1 + c->ppm * 1e-6) +
	    c->swing_ppm * 1e-6 * (1 - cos(turn * s)) / turn;
}

static int64_t stamp(const struct card *c, double seconds)
{
	double ms = seconds * 1000 + even(-c->early_ms, c->late_ms);

	if (c->step_ms > 0)
		ms = floor(ms / c->step_ms + 0.5) * c->step_ms;
	return ORIGIN + (int64_t)(ms * 1e6);
}

static double off_ms(const struct line *l, int64_t number, double seconds)
{
	return (double)(line_time(l, (double)number) - ORIGIN) * 1e-6 -
	    seconds * 1000;
}

/* Once the line has settled its errors are within. */
static void stays_within(const struct card *c, double settle_s, double ms)
{
	/* Stamps that are late on the whole are late: that cannot be known. */
	double mean = (c->late_ms - c->early_ms) / 2;
	double worst = 0;
	struct line l;

	line_begin(&l, RATE);
	for (int64_t n = 0; n < (int64_t)LESSON_S * RATE; n += c->block) {
		if (c->lost_every > 0 && seeded(1, c->lost_every) == 1)
			continue;
		assert_true(line_add(&l, n, stamp(c, truth(c, n))) == 0);
		if ((double)n < settle_s * RATE)
			continue;
		worst = fmax(worst, fabs(off_ms(&l, n, truth(c, n)) - mean));
		assert_true(
		    fabs(line_rate(&l) / RATE - 1) < (LINE_PPM_MAX + 1) * 1e-6);
	}
	print_message("%+.0f ppm, -%.1f..%.1f ms, steps %.1f: off by %.3f ms\n",
	    c->ppm, c->early_ms, c->late_ms, c->step_ms, worst);
	assert_true(worst < ms);
}

/* A lesson of 45 minutes with cards of many kinds. */
static void test_lesson(void **state)
{
	const struct card cards[] = {
		/* As PipeWire gives them (measured). */
		{ .ppm = 100, .block = 256, .early_ms = 0.02, .late_ms = 0.1 },
		{ .ppm = -100, .block = 256, .early_ms = 0.02, .late_ms = 0.1 },
		/* Looked at every 50 ms only. */
		{ .ppm = 100, .block = 2400, .early_ms = 1, .late_ms = 1 },
		{ .ppm = -100, .block = 2400, .early_ms = 2, .late_ms = 2 },
		/* Rounded to a period, as simple drivers do. */
		{ .ppm = 60,
		    .block = 480,
		    .early_ms = 1.5,
		    .late_ms = 1.5,
		    .step_ms = 2 },
		/* A quartz that grows warm and cold. */
		{ .ppm = 30,
		    .block = 512,
		    .early_ms = 0.5,
		    .late_ms = 0.5,
		    .swing_ppm = 5 },
		/* Every tenth block is lost on the way. */
		{ .ppm = 100,
		    .block = 256,
		    .early_ms = 0.3,
		    .late_ms = 0.3,
		    .lost_every = 10 },
	};

	(void)state;
	seeded_begin("line");
	for (size_t i = 0; i < sizeof cards / sizeof *cards; i++)
		stays_within(&cards[i], 10, 1.0);
}

/* From the first stamps on it is not worse than they are. */
static void test_begin(void **state)
{
	const struct card c = {
		.ppm = 100, .block = 256, .early_ms = 1, .late_ms = 1
	};
	struct line l;

	(void)state;
	seeded_begin("begin");
	for (int round = 0; round < 50; round++) {
		line_begin(&l, RATE);
		for (int64_t n = 0; n < 10 * RATE; n += c.block) {
			line_add(&l, n, stamp(&c, truth(&c, n)));
			assert_true(fabs(off_ms(&l, n, truth(&c, n))) <= 1.01);
		}
	}
}

/* Samples that nobody counted: the line is at its new place in a moment. */
static void jumps_by(double ms)
{
	const struct card c = {
		.ppm = 50, .block = 256, .early_ms = 0.1, .late_ms = 0.1
	};
	int64_t at = 60 * RATE, wrong = 0;
	double told = 0;
	struct line l;

	line_begin(&l, RATE);
	for (int64_t n = 0; n < 120 * RATE; n += c.block) {
		double t = truth(&c, n) + (n >= at ? ms / 1000 : 0);

		told += line_add(&l, n, stamp(&c, t)) * 1000;
		if (n > 10 * RATE && fabs(off_ms(&l, n, t)) > 0.5)
			wrong += c.block;
	}
	/* What was told may come in two steps. */
	assert_true(fabs(told - ms) < 0.2);
	assert_true(wrong <= (LINE_LAST + 1) * c.block);
}

static void test_jumps(void **state)
{
	(void)state;
	seeded_begin("jumps");
	for (int i = 0; i < 20; i++) {
		jumps_by(256 / 48.0);
		jumps_by(-256 / 48.0);
		jumps_by(even(2, 900));
		jumps_by(even(-900, -2));
	}
}

/* One stamp that is far off, or a few, move nothing. */
static void test_stray(void **state)
{
	const struct card c = { .block = 256, .early_ms = 0.1, .late_ms = 0.1 };
	struct line l;

	(void)state;
	seeded_begin("stray");
	line_begin(&l, RATE);
	for (int64_t n = 0; n < 300 * RATE; n += c.block) {
		double t = truth(&c, n);
		bool stray = seeded(1, 50) == 1;

		assert_true(line_add(&l, n,
				stamp(&c, stray ? t + even(0, 0.3) : t)) == 0);
		if (n > 10 * RATE)
			assert_true(fabs(off_ms(&l, n, t)) < 0.2);
	}
}

/* There and back: the number at the time of a number. */
static void test_back(void **state)
{
	const struct card c = { .ppm = -80, .block = 256, .late_ms = 1 };
	struct line l;

	(void)state;
	seeded_begin("back");
	line_begin(&l, RATE);
	for (int64_t n = 0; n < 600 * RATE; n += c.block) {
		line_add(&l, n, stamp(&c, truth(&c, n)));
		assert_true(fabs(line_number(&l, line_time(&l, (double)n)) -
				(double)n) < 0.001);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_lesson),
		cmocka_unit_test(test_begin),
		cmocka_unit_test(test_jumps),
		cmocka_unit_test(test_stray),
		cmocka_unit_test(test_back),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
