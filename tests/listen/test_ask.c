/*
 * test_ask.c - what stages ask, against the notes a teacher would name
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/listen/ask.h"
#include "listening.h"

/* A cello's D string, fingers 1 to 4; everything else is as a test wants it. */
static struct routine cello(int travel, enum motion motion)
{
	struct routine r = { .setup = instrument_setup(INSTRUMENT_CELLO),
		.take = TAKE_FINGERS,
		.units = 4,
		.stages = 1 };

	for (int i = 0; i < 4; i++)
		r.unit[i].from = r.unit[i].to = i + 1;
	r.stage[0] = (struct stage) {
		.string = 1, .motion = motion, .from = 2, .travel_cents = travel
	};
	return r;
}

static struct turn_asked ask(const struct routine *r, int unit)
{
	struct ask_time when = { 0.5, 3300, 2, 6 };
	struct turn_asked asked;

	assert_true(ask_turn(r, 0, unit, &when, &asked));
	return asked;
}

/*
 * Finger 1 of a cello's D string in first position is E3, 164.81 Hz, a fourth
 * above it A3, 220 Hz; finger 4 is G3 (equal temperament over A4 = 440 Hz, ISO
 * 16).
 */
static void test_fingers(void **state)
{
	struct routine r = cello(500, MOTION_SLIDE);
	struct turn_asked a = ask(&r, 0);

	(void)state;
	assert_true(fabs(a.lower_hz - 164.81) < 0.01);
	assert_true(fabs(a.asked.low_hz - 164.81) < 0.01);
	assert_true(fabs(a.asked.high_hz - 220) < 0.01);
	assert_true(fabs(a.travel_cents - 500) < 1e-9);
	assert_true(!a.sways && !a.latency_known);
	assert_true(a.pulses == 6 && a.bows == 2);
	assert_true(fabs(a.edge_s[0] - 0.5) < 1e-12);
	assert_true(fabs(a.edge_s[1] - 3.8) < 1e-12);
	assert_true(fabs(a.edge_s[2] - 7.1) < 1e-12);
	a = ask(&r, 3);
	assert_true(fabs(a.lower_hz - 196) < 0.01);
	r.setup.reference_hz = 442;
	a = ask(&r, 0);
	assert_true(fabs(a.asked.high_hz - 221) < 0.01);
}

/* The last stage is a swing: less than a semitone, or one that is let go. */
static void test_sways(void **state)
{
	static const struct {
		int cents, fade_after;
		bool sways;
	} stages[] = { { 200, 0, false }, { 200, 4, false }, { 100, 0, false },
		{ 100, 4, true }, { 50, 0, true }, { 50, 4, true } };

	(void)state;
	for (size_t i = 0; i < sizeof(stages) / sizeof(*stages); i++) {
		struct routine r = cello(stages[i].cents, MOTION_SLIDE);

		r.stage[0].fade_after = stages[i].fade_after;
		assert_int_equal(ask(&r, 1).sways, stages[i].sways);
	}
}

/* Where the notes are not known the bow alone is listened to. */
static void test_bow_alone(void **state)
{
	struct routine r = cello(0, MOTION_DROP);
	struct turn_asked a = ask(&r, 2);

	(void)state;
	assert_true(a.travel_cents <= 0 && !a.sways);
	assert_true(fabs(a.lower_hz - 146.83) < 0.01); /* D3 */
	assert_true(fabs(a.asked.high_hz - 2 * a.asked.low_hz) < 0.01);
	r.take = TAKE_PAIRS;
	r.unit[0].from = 0;
	assert_true(ask(&r, 0).travel_cents <= 0);
	r.take = TAKE_STRINGS;
	r.stage[0].motion = MOTION_CROSSING;
	r.stage[0].string = -1;
	for (int turned = 0; turned < 2; turned++) {
		r.unit[0].from = turned ? 0 : 1; /* D and A */
		r.unit[0].to = turned ? 1 : 0;
		a = ask(&r, 0);
		assert_true(fabs(a.asked.low_hz - 146.83) < 0.01);
		assert_true(fabs(a.asked.high_hz - 440) < 0.01);
	}
}

/* Nothing sounds in the air, and some notes nobody hears. */
static void test_nothing(void **state)
{
	struct routine r = cello(200, MOTION_SLIDE);
	struct ask_time when = { 0, 4000, 2, 4 };
	struct turn_asked a;

	(void)state;
	r.setup.open[1] = 10; /* A#-1, 14.6 Hz */
	assert_false(ask_turn(&r, 0, 0, &when, &a));
	r.setup.open[1] = 107; /* B7 */
	assert_false(ask_turn(&r, 0, 0, &when, &a));
	r = cello(0, MOTION_SLIDE);
	r.stage[0].in_the_air = true;
	r.stage[0].string = -1;
	assert_false(ask_turn(&r, 0, 0, &when, &a));
	assert_int_equal(a.bows, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_fingers),
		cmocka_unit_test(test_sways),
		cmocka_unit_test(test_bow_alone),
		cmocka_unit_test(test_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
