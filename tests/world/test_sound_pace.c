/*
 * test_sound_pace.c - which cards are slow, and which only busy for a moment
 *
 * Cards that are played by rule: of each cycle's block some is lost, or all.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../../src/world/sound_pace.h"

enum { RATE = 48000, BLOCK = 256, LOOK_MS = 20 };

/* A cycle of the server in ns, and of looks. */
#define CYCLE (INT64_C(1000000000) * BLOCK / RATE)

/* How many of so many cycles, the number of each given, get a block. */
typedef bool gets(int64_t cycle);

/* ms until the card is called slow, -1 when it is not in a minute. */
static int until_slow(gets *card)
{
	/* A computer that has run for a day. */
	const int64_t day = INT64_C(86400) * 1000000000;
	struct outlet_time t = { .time_ns = day, .delay_ns = 30000000 };
	struct pace p = { 0 };
	int64_t cycle = 0;

	for (int ms = LOOK_MS; ms <= 60000; ms += LOOK_MS) {
		for (; cycle * CYCLE < ms * INT64_C(1000000); cycle++)
			if (card(cycle)) {
				t.frame += BLOCK;
				t.time_ns = day + cycle * CYCLE;
			}
		if (pace_slow(&p, &t, RATE, LOOK_MS))
			return ms;
	}
	return -1;
}

static bool all(int64_t cycle)
{
	return cycle >= 0;
}

static bool half(int64_t cycle)
{
	return cycle % 2 == 0;
}

/* 70 %, the quickest of the slow ones that were met. */
static bool seven_of_ten(int64_t cycle)
{
	return cycle % 10 < 7;
}

static bool nine_of_ten(int64_t cycle)
{
	return cycle % 10 < 9;
}

/* One of 100, all the time. */
static bool almost_all(int64_t cycle)
{
	return cycle % 100 != 0;
}

/* Two seconds in ten with one block of eight lost. */
static bool busy_at_times(int64_t cycle)
{
	return cycle % 1875 > 375 || cycle % 8 != 0;
}

/* Half a second of nothing in every three. */
static bool standing(int64_t cycle)
{
	return cycle % 562 > 94;
}

static void test_slow(void **state)
{
	(void)state;
	assert_in_range(until_slow(half), 1000, 1200);
	assert_in_range(until_slow(seven_of_ten), 1000, 1200);
	assert_in_range(until_slow(nine_of_ten), 5000, 5400);
}

static void test_not_slow(void **state)
{
	(void)state;
	assert_int_equal(until_slow(all), -1);
	assert_int_equal(until_slow(almost_all), -1);
	assert_int_equal(until_slow(busy_at_times), -1);
	assert_int_equal(until_slow(standing), -1);
}

/* A card that asks in bursts of eight blocks, with as much more under way. */
static void test_bursts(void **state)
{
	struct outlet_time t = { .time_ns = 1 };
	struct pace p = { 0 };

	(void)state;
	for (int64_t look = 1; look < 3000; look++) {
		int64_t now = look * LOOK_MS * 1000000;
		int64_t bursts = now / (8 * CYCLE);

		t.frame = bursts * 8 * BLOCK;
		t.time_ns = bursts * 8 * CYCLE + 1;
		t.delay_ns = 2 * CYCLE;
		assert_false(pace_slow(&p, &t, RATE, LOOK_MS));
	}
}

static void test_never_begins(void **state)
{
	struct outlet_time t = { .frame = 0, .time_ns = 1 };
	struct pace p = { 0 };
	int ms = 0;

	(void)state;
	while (!pace_slow(&p, NULL, RATE, LOOK_MS))
		ms += LOOK_MS;
	assert_in_range(ms, 1400, 1600);
	/* One that has begun is judged by its pace alone. */
	assert_false(pace_slow(&p, &t, RATE, LOOK_MS));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_slow),
		cmocka_unit_test(test_not_slow),
		cmocka_unit_test(test_bursts),
		cmocka_unit_test(test_never_begins),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
