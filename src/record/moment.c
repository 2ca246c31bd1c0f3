/*
 * moment.c - a moment as it stands in a record: 2026-03-02T17:00:00+01:00
 */
#include "evenhand/record/moment.h"

#include <string.h>

enum {
	DATE_LETTERS = 10,
	TIME_LETTERS = 8, /* 17:00:00 */
	HOUR = 3600,
	MINUTE = 60,
	OFFSET_MOST = 18 * HOUR,
};

/* Local seconds of the first day and behind the last that a date can name. */
#define LOCAL_FIRST INT64_C(0)
#define LOCAL_BEHIND INT64_C(253402300800)

static int64_t local_of(struct moment m)
{
	return m.utc + m.offset;
}

bool moment_can_be_told(struct moment m)
{
	return m.offset >= -OFFSET_MOST && m.offset <= OFFSET_MOST &&
	    m.utc > -OFFSET_MOST - 1 && m.utc < LOCAL_BEHIND + OFFSET_MOST &&
	    local_of(m) >= LOCAL_FIRST && local_of(m) < LOCAL_BEHIND;
}

static void tell_clock(struct text *t, int seconds)
{
	text_format(t, "%02d:%02d", seconds / HOUR, seconds % HOUR / MINUTE);
}

void moment_tell(struct text *t, struct moment m)
{
	int64_t local = local_of(m);
	int second = (int)(local % DAY_SECONDS);
	int offset = m.offset < 0 ? -m.offset : m.offset;
	char date[DATE_TEXT_MAX];

	date_text((int)(local / DAY_SECONDS), date);
	text_format(t, "%sT", date);
	tell_clock(t, second);
	text_format(t, ":%02d%c", second % MINUTE, m.offset < 0 ? '-' : '+');
	tell_clock(t, offset);
	if (offset % MINUTE != 0)
		text_format(t, ":%02d", offset % MINUTE);
}

/* Two digits below a bound; -1 when they are not there. */
static int two(const char *s, int below)
{
	int value;

	if (s[0] < '0' || s[0] > '9' || s[1] < '0' || s[1] > '9')
		return -1;
	value = 10 * (s[0] - '0') + (s[1] - '0');
	return value < below ? value : -1;
}

/* Seconds of "17:00", with more the next two digits; -1 when it is none. */
static int clock_of(const char *s, int hours, bool seconds)
{
	int hour = two(s, hours), minute, second = 0;

	if (hour < 0 || s[2] != ':')
		return -1;
	minute = two(s + 3, MINUTE);
	if (minute < 0)
		return -1;
	if (seconds)
		second = s[5] == ':' ? two(s + 6, MINUTE) : -1;
	return second < 0 ? -1 : hour * HOUR + minute * MINUTE + second;
}

/* "+01:00" or "+01:00:30"; false when it is none. */
static bool offset_of(const char *s, int *offset)
{
	bool seconds = strlen(s) == 1 + TIME_LETTERS;
	int away;

	if ((*s != '+' && *s != '-') ||
	    (!seconds && strlen(s) != 1 + strlen("01:00")))
		return false;
	away = clock_of(s + 1, 19, seconds);
	if (away < 0 || away > OFFSET_MOST || (seconds && away % MINUTE == 0) ||
	    (*s == '-' && away == 0))
		return false;
	*offset = *s == '-' ? -away : away;
	return true;
}

bool moment_told(const char *s, struct moment *out)
{
	char date[DATE_LETTERS + 1] = "";
	int day, second, offset;

	if (strlen(s) < DATE_LETTERS + 1 + TIME_LETTERS ||
	    s[DATE_LETTERS] != 'T')
		return false;
	memcpy(date, s, DATE_LETTERS);
	second = clock_of(s + DATE_LETTERS + 1, 24, true);
	if (!date_parse(date, &day) || second < 0 ||
	    !offset_of(s + DATE_LETTERS + 1 + TIME_LETTERS, &offset))
		return false;
	out->utc = INT64_C(1) * day * DAY_SECONDS + second - offset;
	out->offset = offset;
	return true;
}
