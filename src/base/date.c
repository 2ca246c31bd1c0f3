/*
 * date.c - days, moments and the practice day that turns at four
 *
 * A year is counted from March, so that the leap day is its last one and
 * months follow one rule: month m of such a year (March is 0) begins on day
 * floor((153 m + 2) / 5).  Years come in eras of 400, which are all alike and
 * 146097 days long.  Day 0 is 1970-01-01; 0000-03-01 lies 719468 days before.
 *
 *	2026-03-02 -> year 2026, month 0, day 1 -> day 20514
 */
#include "evenhand/base/date.h"

#include <limits.h>
#include <string.h>

#include "evenhand/base/text.h"

enum {
	YEAR_MIN = 1970,
	YEAR_MAX = 9999,
	ERA_YEARS = 400,
	ERA_DAYS = 146097,
	DAYS_BEFORE_1970 = 719468,
	MINUTE_SECONDS = 60,
	WEEK = 7,
	MONDAY = 3,
};

/* The last second of the year 9999; a clock beyond it is held there. */
#define UTC_MAX INT64_C(253402300799)

static int64_t floor_by(int64_t a, int64_t b)
{
	return a / b - (a % b < 0);
}

static bool leap(int year)
{
	return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

static int month_days(int year, int month)
{
	if (month == 2)
		return leap(year) ? 29 : 28;
	return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

bool date_day(int year, int month, int day, int *out)
{
	if (year < YEAR_MIN || year > YEAR_MAX || month < 1 || month > 12 ||
	    day < 1 || day > month_days(year, month))
		return false;

	int from_march = (month + 9) % 12;
	int y = year - (month < 3);
	int of_era = y % ERA_YEARS;
	int day_of_year = (153 * from_march + 2) / 5 + day - 1;

	*out = y / ERA_YEARS * ERA_DAYS + of_era * 365 + of_era / 4 -
	    of_era / 100 + day_of_year - DAYS_BEFORE_1970;
	return true;
}

void date_of(int day, int *year, int *month, int *dom)
{
	int64_t all = (int64_t)day + DAYS_BEFORE_1970;
	int64_t era = floor_by(all, ERA_DAYS);
	int rest = (int)(all - era * ERA_DAYS);
	/* Each 4 years a day too many for 365, each 100 one too few. */
	int of_era = (rest - rest / 1460 + rest / 36524 - rest / 146096) / 365;
	int of_year = rest - (of_era * 365 + of_era / 4 - of_era / 100);
	int from_march = (5 * of_year + 2) / 153;

	*dom = of_year - (153 * from_march + 2) / 5 + 1;
	*month = from_march < 10 ? from_march + 3 : from_march - 9;
	*year = (int)(era * ERA_YEARS) + of_era + (*month < 3);
}

int date_monday(int day)
{
	/* Day 0 was a Thursday, three days after a Monday. */
	int64_t monday = floor_by((int64_t)day + MONDAY, WEEK) * WEEK - MONDAY;

	return monday < INT_MIN ? INT_MIN : (int)monday;
}

/* Reads exactly count digits at s; false when there are other signs. */
static bool digits(const char *s, int count, int *out)
{
	*out = 0;
	for (int i = 0; i < count; i++) {
		if (s[i] < '0' || s[i] > '9')
			return false;
		*out = *out * 10 + (s[i] - '0');
	}
	return true;
}

/* The date that s begins with; every sign is looked at before the next. */
static bool date_start(const char *s, int *day)
{
	int year, month, dom;

	return digits(s, 4, &year) && s[4] == '-' && digits(s + 5, 2, &month) &&
	    s[7] == '-' && digits(s + 8, 2, &dom) &&
	    date_day(year, month, dom, day);
}

bool date_parse(const char *s, int *day)
{
	int found;

	if (!date_start(s, &found) || s[strlen("2026-03-02")] != '\0')
		return false;
	*day = found;
	return true;
}

bool date_parse_local(const char *s, int64_t *local_seconds)
{
	int day, hour, minute;

	if (!date_start(s, &day) || s[10] != 'T' || !digits(s + 11, 2, &hour) ||
	    s[13] != ':' || !digits(s + 14, 2, &minute) || s[16] != '\0' ||
	    hour > 23 || minute > 59)
		return false;
	minute += 60 * hour;
	*local_seconds = INT64_C(1) * day * DAY_SECONDS +
	    INT64_C(1) * minute * MINUTE_SECONDS;
	return true;
}

static int64_t in_range(int64_t utc)
{
	if (utc > UTC_MAX)
		return UTC_MAX;
	return utc < -UTC_MAX ? -UTC_MAX : utc;
}

static int64_t local_seconds(struct moment m)
{
	return in_range(m.utc) + m.offset;
}

int moment_practice_day(struct moment m)
{
	return (int)floor_by(local_seconds(m) - DAY_TURNS_AT, DAY_SECONDS);
}

int moment_day(struct moment m)
{
	return (int)floor_by(local_seconds(m), DAY_SECONDS);
}

int moment_minute(struct moment m)
{
	int64_t local = local_seconds(m);

	local -= floor_by(local, DAY_SECONDS) * DAY_SECONDS;
	return (int)(local / MINUTE_SECONDS);
}

bool moment_is_night(struct moment m)
{
	return moment_minute(m) < DAY_TURNS_AT / MINUTE_SECONDS;
}

void date_text(int day, char *buffer)
{
	struct text t = text_in(buffer, DATE_TEXT_MAX);
	int year, month, dom;

	date_of(day, &year, &month, &dom);
	text_format(&t, "%04d-%02d-%02d", year, month, dom);
}
