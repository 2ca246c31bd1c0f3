/*
 * chart_axis.c - time along the columns of a chart
 *
 * Weeks are counted from the one that holds day 0, whose Monday is day -3.
 */
#include "chart_axis.h"

#include "evenhand/base/date.h"

enum { WEEK = 7, YEAR = 12, YEAR_FIRST = 1970, YEAR_LAST = 9999, MONDAY = 3 };

/* Places that stay together on the screen. */
static int group_of(enum chart_scale scale)
{
	if (scale == SCALE_DAYS)
		return WEEK;
	return scale == SCALE_MONTHS ? YEAR : 1;
}

/* Where the group of a place begins. */
static int group_start(enum chart_scale scale, int place)
{
	if (scale == SCALE_DAYS)
		return date_monday(place);
	return place - place % group_of(scale);
}

/* The place a day falls into. */
static int axis_place(enum chart_scale scale, int day)
{
	int year, month, dom;

	if (scale == SCALE_DAYS)
		return day;
	if (scale == SCALE_WEEKS)
		return (date_monday(day) + MONDAY) / WEEK;
	date_of(day, &year, &month, &dom);
	return year * YEAR + month - 1;
}

int axis_first_day(enum chart_scale scale, int place)
{
	int day;

	if (scale == SCALE_DAYS)
		return place;
	if (scale == SCALE_WEEKS)
		return place * WEEK - MONDAY;
	if (place < YEAR_FIRST * YEAR)
		return -1;
	if (date_day(place / YEAR, place % YEAR + 1, 1, &day))
		return day;
	/* A calendar of four digits ends; what is shown of it does not. */
	date_day(YEAR_LAST, YEAR, 31, &day);
	return day + 1;
}

static int least_day(const struct chart *c)
{
	return c->days->day[c->low].day;
}

void axis_fit(struct axis *a, const struct chart *c, int columns)
{
	int group = group_of(c->scale), groups = (columns + 1) / (group + 1);
	int begin = group_start(c->scale, axis_place(c->scale, least_day(c)));

	a->scale = c->scale;
	a->count = (groups > 0 ? groups : 1) * group;
	a->first = group_start(c->scale, axis_place(c->scale, c->last)) +
	    group - a->count;
	/* Where everything began the axis begins. */
	if (a->first < begin)
		a->first = begin;
	a->columns = axis_column(a, a->count - 1) + 1;
}

int axis_from(const struct axis *a)
{
	return axis_first_day(a->scale, a->first);
}

int axis_to(const struct axis *a)
{
	return axis_first_day(a->scale, a->first + a->count) - 1;
}

int axis_column(const struct axis *a, int i)
{
	return i + i / group_of(a->scale);
}

int axis_index(const struct axis *a, int day)
{
	return axis_place(a->scale, day) - a->first;
}

void axis_later(const struct axis *a, struct chart *c)
{
	int next = days_from(c->days, axis_to(a) + 1), end, day;
	int newest = c->days->day[c->high - 1].day;

	if (next >= c->high)
		return;
	day = c->days->day[next].day;
	end = axis_first_day(a->scale, a->first + 2 * a->count) - 1;
	/* Past an empty time: what comes stands at the left. */
	if (day > end)
		end = axis_first_day(a->scale,
			  group_start(a->scale, axis_place(a->scale, day)) +
			      a->count) -
		    1;
	c->last = end < newest ? end : newest;
}

void axis_earlier(const struct axis *a, struct chart *c)
{
	int before = days_from(c->days, axis_from(a)) - 1, day;

	if (before < c->low)
		return;
	day = c->days->day[before].day;
	c->last = axis_from(a) - 1;
	if (day < axis_first_day(a->scale, a->first - a->count))
		c->last = day;
}
