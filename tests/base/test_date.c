/*
 * test_date.c - days and moments against a calendar counted day by day
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <limits.h>
#include <stdbool.h>
#include <string.h>

#include "../score/seeded.h"
#include "evenhand/base/date.h"

enum { DAY = 86400, LAST_DAY = 2932896 };

/* A calendar that knows nothing but how long months are. */
static int slow_month(int year, int month)
{
	static const int days[] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30,
		31 };
	int leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;

	return days[month - 1] + (month == 2 && leap);
}

static void test_every_day(void **state)
{
	int count = 0;

	(void)state;
	for (int year = 1970; year <= 9999; year++) {
		for (int month = 1; month <= 12; month++) {
			int last = slow_month(year, month), day;

			for (int dom = 1; dom <= last; dom++, count++) {
				int y, m, d;

				if (!date_day(year, month, dom, &day) ||
				    day != count)
					fail_msg("%d-%d-%d", year, month, dom);
				date_of(count, &y, &m, &d);
				if (y != year || m != month || d != dom)
					fail_msg("day %d", count);
			}
			assert_false(date_day(year, month, last + 1, &day));
			assert_false(date_day(year, month, 0, &day));
		}
	}
	assert_int_equal(count, LAST_DAY + 1);
}

/* Before 1970 and beyond 9999 a day number still has a date. */
static void test_far_days(void **state)
{
	int y, m, d;

	(void)state;
	date_of(-1, &y, &m, &d);
	assert_int_equal(y * 10000 + m * 100 + d, 19691231);
	date_of(-719528, &y, &m, &d);
	assert_int_equal(y * 10000 + m * 100 + d, 101);
	date_of(LAST_DAY + 1, &y, &m, &d);
	assert_int_equal(y * 10000 + m * 100 + d, 100000101);
	date_of(INT_MAX, &y, &m, &d);
	assert_true(m >= 1 && m <= 12 && d >= 1 && d <= 31);
	date_of(INT_MIN, &y, &m, &d);
	assert_true(m >= 1 && m <= 12 && d >= 1 && d <= 31);
}

static int day(const char *date)
{
	int found;

	assert_true(date_parse(date, &found));
	return found;
}

/* 0 is Sunday; 1970-01-01 was a Thursday. */
static int weekday(int day_number)
{
	return (day_number + 4) % 7;
}

/* Examples of RFC 5545, section 3.8.5.3. */
static void test_rfc5545(void **state)
{
	static const char *const every_10[] = { "1997-09-02", "1997-09-12",
		"1997-09-22", "1997-10-02", "1997-10-12" };
	static const char *const weekly[] = { "1997-09-02", "1997-09-09",
		"1997-09-16", "1997-09-23", "1997-09-30", "1997-10-07",
		"1997-10-14", "1997-10-21", "1997-10-28", "1997-11-04" };
	static const char *const first_fridays[] = { "1997-09-05", "1997-10-03",
		"1997-11-07", "1997-12-05", "1998-01-02", "1998-02-06",
		"1998-03-06", "1998-04-03", "1998-05-01", "1998-06-05" };
	int start = day("1997-09-02");
	char text[DATE_TEXT_MAX];

	(void)state;
	for (int i = 0; i < 5; i++) {
		date_text(start + 10 * i, text);
		assert_string_equal(text, every_10[i]);
	}
	for (int i = 0; i < 10; i++) {
		date_text(start + 7 * i, text);
		assert_string_equal(text, weekly[i]);
		assert_int_equal(weekday(day(weekly[i])), 2);
	}
	/* Daily until 24 December, midnight: the last is the 23rd, the 113th. */
	assert_int_equal(day("1997-12-23") - start + 1, 113);
	for (int i = 0; i < 10; i++) {
		int y, m, d;

		assert_int_equal(weekday(day(first_fridays[i])), 5);
		date_of(day(first_fridays[i]), &y, &m, &d);
		assert_true(d <= 7);
	}
}

/* Whether a day is one that a rule of every so many weeks names. */
static bool on_tuesday_or_thursday(int day_number)
{
	return weekday(day_number) == 2 || weekday(day_number) == 4;
}

/*
 * The rules with days of the week and intervals of RFC 5545, section 3.8.5.3,
 * as the manual of python-dateutil prints their dates.
 */
static void test_rfc5545_weeks(void **state)
{
	static const char *const every_other_day[] = { "1997-09-02",
		"1997-09-04", "1997-09-06", "1997-09-08", "1997-09-10" };
	static const char *const every_other_week[] = { "1997-09-02",
		"1997-09-16", "1997-09-30", "1997-10-14", "1997-10-28",
		"1997-11-11" };
	static const char *const two_days[] = { "1997-09-02", "1997-09-04",
		"1997-09-09", "1997-09-11", "1997-09-16", "1997-09-18",
		"1997-09-23", "1997-09-25", "1997-09-30", "1997-10-02" };
	static const char *const other_weeks[] = { "1997-09-02", "1997-09-04",
		"1997-09-16", "1997-09-18", "1997-09-30", "1997-10-02",
		"1997-10-14", "1997-10-16" };
	int start = day("1997-09-02"), found;

	(void)state;
	for (int i = 0; i < 5; i++)
		assert_int_equal(day(every_other_day[i]), start + 2 * i);
	for (int i = 0; i < 6; i++)
		assert_int_equal(day(every_other_week[i]), start + 14 * i);
	found = 0;
	for (int d = start; found < 10; d++)
		if (on_tuesday_or_thursday(d))
			assert_int_equal(day(two_days[found++]), d);
	found = 0;
	for (int d = start; found < 8; d++)
		if (on_tuesday_or_thursday(d) &&
		    (date_monday(d) - date_monday(start)) % 14 == 0)
			assert_int_equal(day(other_weeks[found++]), d);
}

/*
 * Weeks begin on Mondays (ISO 8601).  Its first week of a year is the one with
 * the first Thursday; these dates and their weeks are from memory.
 */
static void test_weeks(void **state)
{
	/* 2005-01-01 is 2004-W53-6, 2007-12-31 is 2008-W01-1. */
	static const struct {
		const char *date, *monday;
	} weeks[] = { { "2005-01-01", "2004-12-27" },
		{ "2005-01-02", "2004-12-27" }, { "2005-12-31", "2005-12-26" },
		{ "2007-01-01", "2007-01-01" }, { "2007-12-31", "2007-12-31" },
		{ "2008-01-01", "2007-12-31" }, { "2008-12-28", "2008-12-22" },
		{ "2009-12-31", "2009-12-28" }, { "2010-01-03", "2009-12-28" },
		{ "2024-02-29", "2024-02-26" },
		{ "2024-03-03", "2024-02-26" } };

	(void)state;
	for (size_t i = 0; i < sizeof(weeks) / sizeof(weeks[0]); i++)
		assert_int_equal(
		    date_monday(day(weeks[i].date)), day(weeks[i].monday));
	/* 1970-01-01 was a Thursday. */
	assert_int_equal(date_monday(0), -3);
	assert_int_equal(date_monday(-3), -3);
	assert_int_equal(date_monday(-4), -10);
	for (int d = -1000; d <= LAST_DAY; d += 13) {
		int monday = date_monday(d);

		assert_in_range(d - monday, 0, 6);
		assert_int_equal((monday + 3) % 7, 0);
	}
	assert_in_range(INT_MAX - date_monday(INT_MAX), 0, 6);
	assert_in_range((int64_t)date_monday(INT_MIN + 6) - INT_MIN, 0, 6);
	assert_int_equal(date_monday(INT_MIN), INT_MIN);
}

/* Clear days between two dates, over leap days and none. */
static void test_leap_days(void **state)
{
	static const struct {
		const char *from, *to;
		int days;
	} spans[] = { { "2024-02-25", "2024-03-01", 5 },
		{ "2023-02-25", "2023-03-01", 4 },
		{ "2000-02-25", "2000-03-01", 5 },
		{ "2100-02-25", "2100-03-01", 4 },
		{ "2024-02-29", "2028-02-29", 1461 },
		{ "2024-02-29", "2025-03-01", 366 },
		{ "1999-12-31", "2000-01-01", 1 },
		{ "2026-03-02", "2041-03-02", 5479 } };

	(void)state;
	for (size_t i = 0; i < sizeof(spans) / sizeof(spans[0]); i++)
		assert_int_equal(
		    day(spans[i].to) - day(spans[i].from), spans[i].days);
}

static void test_reading_dates(void **state)
{
	static const char *const bad[] = { "", "2", "2026", "2026-", "2026-3-2",
		"2026-03-2", "2026-03-02 ", " 2026-03-02", "2026-03-02T",
		"2026/03/02", "02-03-2026", "2026-13-01", "2026-00-01",
		"2026-02-29", "2100-02-29", "2026-04-31", "2026-03-00",
		"1969-12-31", "0000-01-01", "+026-03-02", "2026-03-0x",
		"20260302", "2026-03\n02", "9999-12-32" };
	int found = 7;

	(void)state;
	assert_int_equal(day("1970-01-01"), 0);
	assert_int_equal(day("2000-01-01"), 10957);
	assert_int_equal(day("2026-03-02"), 20514);
	assert_int_equal(day("9999-12-31"), LAST_DAY);
	assert_int_equal(day("2024-02-29") + 1, day("2024-03-01"));
	assert_int_equal(day("2000-02-29") + 1, day("2000-03-01"));
	for (size_t i = 0; i < sizeof(bad) / sizeof(*bad); i++)
		if (date_parse(bad[i], &found))
			fail_msg("read %s", bad[i]);
	assert_int_equal(found, 7);
}

static void test_reading_moments(void **state)
{
	static const char *const bad[] = { "", "2026-03-02", "2026-03-02T",
		"2026-03-02T17", "2026-03-02T17:0", "2026-03-02T17:00:00",
		"2026-03-02T24:00", "2026-03-02T17:60", "2026-03-02 17:00",
		"2026-03-02T17-00", "2026-02-30T17:00", "2026-03-02t17:00",
		"2026-03-02T1a:00", "2026-03-02T17:00Z" };
	int64_t found = 7;

	(void)state;
	for (size_t i = 0; i < sizeof(bad) / sizeof(*bad); i++)
		if (date_parse_local(bad[i], &found))
			fail_msg("read %s", bad[i]);
	assert_int_equal(found, 7);
	assert_true(date_parse_local("2026-03-02T17:00", &found));
	assert_int_equal(found, INT64_C(20514) * DAY + 17 * 3600);
	assert_true(date_parse_local("1970-01-01T00:00", &found));
	assert_int_equal(found, 0);
	assert_true(date_parse_local("9999-12-31T23:59", &found));
	assert_int_equal(found, INT64_C(253402300740));
}

/* Local time as read, at an offset. */
static struct moment at(const char *local, int offset)
{
	int64_t seconds;

	assert_true(date_parse_local(local, &seconds));
	return (struct moment) { .utc = seconds - offset, .offset = offset };
}

static void test_the_day_turns_at_four(void **state)
{
	static const int offsets[] = { 0, 3600, -18000, 20700, 50400, -43200 };
	int monday = day("2026-03-02");

	(void)state;
	for (size_t i = 0; i < sizeof(offsets) / sizeof(*offsets); i++) {
		int off = offsets[i];
		struct moment last = at("2026-03-03T03:59", off);

		assert_int_equal(
		    moment_practice_day(at("2026-03-02T03:59", off)),
		    monday - 1);
		assert_int_equal(
		    moment_practice_day(at("2026-03-02T04:00", off)), monday);
		assert_int_equal(
		    moment_practice_day(at("2026-03-02T17:00", off)), monday);
		assert_int_equal(
		    moment_practice_day(at("2026-03-02T23:50", off)), monday);
		assert_int_equal(
		    moment_practice_day(at("2026-03-03T00:20", off)), monday);
		last.utc += 59;
		assert_int_equal(moment_practice_day(last), monday);
		last.utc += 1;
		assert_int_equal(moment_practice_day(last), monday + 1);

		assert_int_equal(
		    moment_day(at("2026-03-03T00:20", off)), monday + 1);
		assert_int_equal(
		    moment_minute(at("2026-03-03T00:20", off)), 20);
		assert_int_equal(
		    moment_minute(at("2026-03-02T23:59", off)), 1439);
	}
	/* The same second is another day elsewhere. */
	assert_int_equal(moment_day((struct moment) { 0, -1 }), -1);
	assert_int_equal(moment_minute((struct moment) { 0, -1 }), 1439);
}

/* A day and its minutes put together give the moment back. */
static void test_moments_come_apart(void **state)
{
	(void)state;
	seeded_begin("moments");
	for (int i = 0; i < 100000; i++) {
		int offset = seeded(-64800, 64800);
		int64_t utc = (int64_t)seeded(-1000, LAST_DAY) * DAY +
		    seeded(0, DAY - 1);
		struct moment m = { utc, offset };
		int64_t local = utc + offset;
		int64_t begun = (int64_t)moment_practice_day(m) * DAY +
		    DAY_TURNS_AT;
		int64_t minute = (int64_t)moment_day(m) * DAY +
		    moment_minute(m) * 60;

		assert_in_range(local - minute, 0, 59);
		assert_in_range(local - begun, 0, DAY - 1);
		assert_in_range(moment_minute(m), 0, 1439);
	}
}

/* A clock gone mad is held at the ends of the calendar. */
static void test_mad_clock(void **state)
{
	(void)state;
	assert_true(
	    moment_practice_day((struct moment) { INT64_MAX, INT_MAX }) > 0);
	assert_true(
	    moment_practice_day((struct moment) { INT64_MIN, INT_MIN }) < 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_day),
		cmocka_unit_test(test_far_days),
		cmocka_unit_test(test_rfc5545),
		cmocka_unit_test(test_rfc5545_weeks),
		cmocka_unit_test(test_weeks),
		cmocka_unit_test(test_leap_days),
		cmocka_unit_test(test_reading_dates),
		cmocka_unit_test(test_reading_moments),
		cmocka_unit_test(test_the_day_turns_at_four),
		cmocka_unit_test(test_moments_come_apart),
		cmocka_unit_test(test_mad_clock),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
