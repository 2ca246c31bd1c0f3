/*
 * chart_axis.h - time along the columns of a chart
 *
 * A place of the axis is a day, a week (from Monday, as ISO 8601 counts) or a
 * month; places come in groups that labels stand under:
 *
 *	days	#######.#######.###	a week together, a gap between
 *	weeks	#.#.#.#.#		each for itself
 *	months	############.########	a year together
 *
 * Weeks and months are numbered through, so that the next one is one more.
 */
#ifndef EVENHAND_SCREEN_CHART_AXIS_H
#define EVENHAND_SCREEN_CHART_AXIS_H

#include "evenhand/screen/chart.h"

enum { AXIS_MAX = CANVAS_COLUMNS_MAX };

/* A stretch of time on the screen. */
struct axis {
	enum chart_scale scale;
	int first, count; /* places */
	int columns;	  /* that it takes */
};

/* The first day of a place. */
int axis_first_day(enum chart_scale scale, int place);

/* The axis that fits into so many columns and ends with chart->last. */
void axis_fit(struct axis *a, const struct chart *c, int columns);

/* The first day shown, and the last. */
int axis_from(const struct axis *a);
int axis_to(const struct axis *a);

/* The column of the i-th place, counted from 0. */
int axis_column(const struct axis *a, int i);

/* Which place on the axis a day has; it must be shown. */
int axis_index(const struct axis *a, int day);

/*
 * Moves the time shown by what the axis shows, later or earlier, or on to the
 * next day on which something was kept.
 */
void axis_later(const struct axis *a, struct chart *c);
void axis_earlier(const struct axis *a, struct chart *c);

#endif
