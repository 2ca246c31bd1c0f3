/*
 * test_pulse.c - pulses against worked figures and a slow exact model
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/base/frames.h"
#include "evenhand/routine/routine.h"
#include "evenhand/score/pulse.h"
#include "seeded.h"

__extension__ typedef __int128 wide;

/* floor(k T fs / (1000 n) + 1/2), in 128 bits. */
static int64_t plain(const struct pulse_grid *g, int64_t k)
{
	wide num = (wide)k * g->bow_ms * g->rate * 2;
	wide den = (wide)1000 * g->pulses;

	return (int64_t)((num + den) / (2 * den));
}

/* Four seconds at 48 kHz: whole numbers, worked by hand. */
static void test_four_seconds(void **state)
{
	static const struct {
		int pulses;
		int64_t apart;
	} rungs[] = { { 4, 48000 }, { 6, 32000 }, { 8, 24000 } };

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		struct pulse_grid g = { 48000, 4000, rungs[i].pulses };

		for (int64_t k = 0; k < 1000; k++)
			assert_int_equal(pulse_at(&g, k), k * rungs[i].apart);
	}
}

/* A six-pulse bow holds no pulse a second in. */
static void test_six_pulses(void **state)
{
	struct pulse_grid g = { 48000, 4000, 6 };

	(void)state;
	for (int64_t k = 0; k < 6; k++)
		assert_int_not_equal(pulse_at(&g, k), 48000);
}

/* 18191.25 frames to a pulse: rounded anew each time, never summed. */
static void test_three_point_three(void **state)
{
	static const int64_t frames[] = { 0, 18191, 36383, 54574, 72765, 90956,
		109148, 127339 };
	struct pulse_grid g = { 44100, 3300, 8 };

	(void)state;
	for (int k = 0; k < 8; k++)
		assert_int_equal(pulse_at(&g, k), frames[k]);
	/* The 101st bow: 100 x 145530. */
	assert_int_equal(pulse_at(&g, 800), 14553000);
}

static void test_random(void **state)
{
	(void)state;
	seeded_begin("pulses");
	for (int i = 0; i < 200000; i++) {
		struct pulse_grid g = { seeded(RATE_MIN, RATE_MAX),
			seeded(BOW_MS_MIN, BOW_MS_MAX), seeded(1, PULSES_MAX) };
		int64_t k = (int64_t)(seeded_bits() >> seeded(26, 63));

		assert_int_equal(pulse_at(&g, k), plain(&g, k));
	}
}

/* A simulated day at each usual rate: not one pulse off its true place. */
static void test_day(void **state)
{
	static const int rates[] = { 44100, 48000, 88200, 96000 };

	(void)state;
	for (size_t r = 0; r < 4; r++) {
		struct pulse_grid g = { rates[r], 3300, 8 };
		int64_t day = INT64_C(86400) * rates[r], k = 0;

		for (; pulse_at(&g, k) < day; k++)
			if (pulse_at(&g, k) != plain(&g, k))
				fail_msg("pulse %lld at %d Hz", (long long)k,
				    rates[r]);
		assert_in_range(k, 86400 * 8 / 3.3 - 1, 86400 * 8 / 3.3 + 1);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_four_seconds),
		cmocka_unit_test(test_six_pulses),
		cmocka_unit_test(test_three_point_three),
		cmocka_unit_test(test_random),
		cmocka_unit_test(test_day),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
