/*
 * date.h - days, moments and the practice day that turns at four
 *
 * A day is counted from 1970-01-01 (day 0) in the proleptic Gregorian
 * calendar.  A moment is UTC seconds with the local offset that was in force,
 * so that a practice at 23:50 and one at 00:20 stay on one practice day
 * wherever the student travels:
 *
 *	practice day = floor((utc + offset - 4 h) / 24 h)
 *
 * Pure values, no clock.  Any thread.
 */
#ifndef EVENHAND_BASE_DATE_H
#define EVENHAND_BASE_DATE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct moment {
	int64_t utc; /* seconds since 1970-01-01 00:00 UTC */
	int offset;  /* seconds east of UTC, -64800..64800 */
};

enum {
	DAY_SECONDS = 86400,
	DAY_TURNS_AT = 4 * 3600, /* seconds after local midnight */
	DATE_TEXT_MAX = 40,
};

/* Day number of a date; false when no such date (year 1970..9999). */
bool date_day(int year, int month, int day, int *out);

/* The date of a day number. */
void date_of(int day, int *year, int *month, int *dom);

/* The Monday on or before a day: where its week begins (ISO 8601). */
int date_monday(int day);

/* Reads "2026-03-02"; false when it is not a possible date. */
bool date_parse(const char *s, int *day);

/* Reads "2026-03-02T17:00" as local seconds since 1970; false if not. */
bool date_parse_local(const char *s, int64_t *local_seconds);

/* The practice day of a moment; turns at 04:00 local time. */
int moment_practice_day(struct moment m);

/* Local calendar day and minute of the day, 0..1439. */
int moment_day(struct moment m);
int moment_minute(struct moment m);

/* Whether it is before four in the morning: still the practice day before. */
bool moment_is_night(struct moment m);

/* "2026-03-02" of a day number; buffer of DATE_TEXT_MAX bytes. */
void date_text(int day, char *buffer);

#endif
