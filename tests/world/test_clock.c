/*
 * test_clock.c - local times, also where the clocks were changed
 *
 * The rules of the zones are written in the form of POSIX (XBD 8.3, TZ), so
 * that no time zone files are needed: central Europe (CET, changes at 01:00
 * UTC on the last Sundays of March and October) and Newfoundland, half an
 * hour off.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include <cmocka.h>

#include "evenhand/world/clock.h"

static struct moment at(const char *zone, const char *local)
{
	struct moment m;

	setenv("TZ", zone, 1);
	tzset();
	assert_true(clock_at(local, &m));
	return m;
}

static const char cet[] = "CET-1CEST,M3.5.0,M10.5.0/3";

static void check(const char *zone, const char *local, int64_t utc, int offset)
{
	struct moment m = at(zone, local);

	assert_int_equal(m.utc, utc);
	assert_int_equal(m.offset, offset);
}

/* UTC seconds by date(1): date -u -d 2026-03-02T17:00 +%s. */
static void test_plain(void **state)
{
	(void)state;
	check("UTC0", "2026-03-02T17:00", 1772470800, 0);
	check(cet, "2026-03-02T17:00", 1772470800 - 3600, 3600);
	check(cet, "2026-07-02T17:00", 1783011600 - 7200, 7200);
	check("NST3:30NDT,M3.2.0,M11.1.0", "2026-01-15T08:00",
	    1768464000 + 12600, -12600);
	check("UTC0", "1970-01-01T00:00", 0, 0);
}

/* 2026-03-29: 02:00 becomes 03:00 at 01:00 UTC (1774746000). */
static void test_forward(void **state)
{
	(void)state;
	check(cet, "2026-03-29T01:59", 1774746000 - 60, 3600);
	check(cet, "2026-03-29T03:00", 1774746000, 7200);
	/* Left out: shown an hour later, half an hour after the change. */
	check(cet, "2026-03-29T02:30", 1774746000 + 1800, 7200);
}

/* 2026-10-25: 03:00 becomes 02:00 at 01:00 UTC (1792890000). */
static void test_back(void **state)
{
	(void)state;
	check(cet, "2026-10-25T01:30", 1792890000 - 5400, 7200);
	check(cet, "2026-10-25T02:30", 1792890000 - 1800, 7200);
	check(cet, "2026-10-25T03:00", 1792890000 + 3600, 3600);
}

/* Over three years every minute but those left out comes back as it was. */
static void test_every_time(void **state)
{
	int left_out = 0;

	(void)state;
	for (int day = 20454; day < 20454 + 3 * 366; day++)
		for (int minute = 0; minute < 1440; minute += 30) {
			char date[DATE_TEXT_MAX], local[DATE_TEXT_MAX + 24];
			struct moment m;

			date_text(day, date);
			snprintf(local, sizeof(local), "%sT%02d:%02d", date,
			    minute / 60, minute % 60);
			m = at(cet, local);
			if (moment_day(m) != day || moment_minute(m) != minute)
				left_out++;
		}
	assert_int_equal(left_out, 3 * 2); /* 2:00 and 2:30, three springs */
}

static void test_impossible(void **state)
{
	static const char *const wrong[] = { "", "2026-02-29T10:00",
		"2026-03-02T24:00", "2026-03-02 17:00", "2026-03-02T17:00Z",
		"26-03-02T17:00", "2026-3-2T17:00", "9999999-01-01T00:00" };
	struct moment m;

	(void)state;
	for (size_t i = 0; i < sizeof(wrong) / sizeof(wrong[0]); i++)
		assert_false(clock_at(wrong[i], &m));
}

static void test_now(void **state)
{
	struct moment m;
	struct timespec before, after; /* time() may lag by a tick */

	(void)state;
	setenv("TZ", "XYZ-5:45", 1);
	tzset();
	clock_gettime(CLOCK_REALTIME, &before);
	m = clock_now();
	clock_gettime(CLOCK_REALTIME, &after);
	assert_in_range(m.utc, before.tv_sec, after.tv_sec);
	assert_int_equal(m.offset, 5 * 3600 + 45 * 60);
}

static void test_steady(void **state)
{
	struct timespec nap = { .tv_nsec = 20000000 };
	int64_t start = clock_steady_ns(), last = start;

	(void)state;
	for (int i = 0; i < 1000; i++) {
		int64_t next = clock_steady_ns();

		assert_true(next >= last);
		last = next;
	}
	nanosleep(&nap, NULL);
	assert_true(clock_steady_ns() - start >= 20000000);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_plain),
		cmocka_unit_test(test_forward),
		cmocka_unit_test(test_back),
		cmocka_unit_test(test_every_time),
		cmocka_unit_test(test_impossible),
		cmocka_unit_test(test_now),
		cmocka_unit_test(test_steady),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
