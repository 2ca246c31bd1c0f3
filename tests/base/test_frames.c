/*
 * test_frames.c - milliseconds and frames against exact arithmetic
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/base/frames.h"

__extension__ typedef __int128 wide;

static void test_worked_figures(void **state)
{
	(void)state;
	assert_int_equal(frames_of_ms(0, 48000), 0);
	assert_int_equal(frames_of_ms(4000, 48000), 192000);
	assert_int_equal(frames_of_ms(3300, 44100), 145530);
	/* A hundred bows of 3.3 s, worked by hand: 330 s of 44100. */
	assert_int_equal(frames_of_ms(330000, 44100), 14553000);
	/* 44.1 frames to a ms: 44, 88, 132, 176 and 220.5, rounded up. */
	assert_int_equal(frames_of_ms(1, 44100), 44);
	assert_int_equal(frames_of_ms(5, 44100), 221);
	assert_int_equal(frames_to_ms(47, 48000), 0);
	assert_int_equal(frames_to_ms(48, 48000), 1);
	assert_int_equal(frames_to_ms(192000, 48000), 4000);
}

static int64_t random_64(int bits)
{
	return (int64_t)(seeded_bits() >> (64 - seeded(1, bits)));
}

static void test_against_128_bits(void **state)
{
	(void)state;
	seeded_begin("frames");
	for (int i = 0; i < 200000; i++) {
		int rate = seeded(RATE_MIN, RATE_MAX);
		int64_t ms = random_64(40), frame = random_64(50);
		wide of = ((wide)ms * rate * 2 + 1000) / 2000;
		wide to = (wide)frame * 1000 / rate;

		assert_int_equal(frames_of_ms(ms, rate), (int64_t)of);
		assert_int_equal(frames_to_ms(frame, rate), (int64_t)to);
	}
}

/* There and back again: a ms holds 8 frames at least. */
static void test_round_trip(void **state)
{
	(void)state;
	seeded_begin("round trip");
	for (int i = 0; i < 200000; i++) {
		int rate = seeded(RATE_MIN, RATE_MAX);
		int64_t ms = random_64(40);
		int64_t frame = frames_of_ms(ms, rate);

		assert_in_range(ms - frames_to_ms(frame, rate), 0, 1);
		assert_int_equal(frames_to_ms(frame + 1, rate), ms);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_worked_figures),
		cmocka_unit_test(test_against_128_bits),
		cmocka_unit_test(test_round_trip),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
