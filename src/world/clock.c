/*
 * clock.c - wall time, read once, or set by --at
 *
 * A local time is turned into UTC with the offsets that hold a day before and
 * a day after it.  When the clocks were put forward over it, it counts as if
 * they had not been yet (2:30 in the hour left out is shown as 3:30); when
 * they were put back over it, the first of the two is meant.
 */
#include "evenhand/world/clock.h"

#include <time.h>

enum { OFFSET_MAX = 64800 };

/* Seconds east of UTC in force at a moment. */
static int offset_at(int64_t utc)
{
	time_t t = (time_t)utc;
	struct tm local;
	long offset;

	if (localtime_r(&t, &local) == NULL)
		return 0;
	offset = local.tm_gmtoff;
	if (offset > OFFSET_MAX || offset < -OFFSET_MAX)
		return 0;
	return (int)offset;
}

struct moment clock_now(void)
{
	struct timespec now = { 0 };

	clock_gettime(CLOCK_REALTIME, &now);
	return (struct moment) {
		.utc = (int64_t)now.tv_sec,
		.offset = offset_at((int64_t)now.tv_sec),
	};
}

bool clock_at(const char *s, struct moment *out)
{
	int64_t local;
	int before, after, offset;

	if (!date_parse_local(s, &local))
		return false;
	tzset();
	before = offset_at(local - DAY_SECONDS);
	after = offset_at(local + DAY_SECONDS);
	offset = before;
	if (offset_at(local - before) != before &&
	    offset_at(local - after) == after)
		offset = after;
	/* What the clock then shows, also where it was put forward. */
	out->utc = local - offset;
	out->offset = offset_at(out->utc);
	return true;
}

int64_t clock_steady_ns(void)
{
	struct timespec now = { 0 };

#ifdef CLOCK_BOOTTIME
	clock_gettime(CLOCK_BOOTTIME, &now);
#else
	clock_gettime(CLOCK_MONOTONIC, &now);
#endif
	return (int64_t)now.tv_sec * 1000000000 + now.tv_nsec;
}

int64_t clock_steady_ms(void)
{
	return clock_steady_ns() / 1000000;
}

void clock_sleep_us(int64_t us)
{
	nanosleep(&(struct timespec) { .tv_sec = (time_t)(us / 1000000),
		      .tv_nsec = (long)(us % 1000000 * 1000) },
	    NULL);
}
