/*
 * chart.h - what was practised, as charts on a full screen
 *
 *	minutes		of each day, week or month
 *	fingers		bows and slide metres of each, in the time shown
 *	first go	the marks of each day and finger, stage by stage
 *	stages		when each was worked on or came again, week by week
 *
 * All four look at the same stretch of time, which two keys move; it can be
 * looked at closer (days) or wider (weeks, months).  A move past time in which
 * nothing was kept goes on to where something was.  Facts alone are drawn: no
 * aims, no praise.
 *
 * Drawing decides nothing and remembers nothing: the same chart and size give
 * the same cells.  Days outside the years 1970 to 9999 have no place on an
 * axis; they are said to be left out.  Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_CHART_H
#define EVENHAND_SCREEN_CHART_H

#include <stdbool.h>

#include "evenhand/coach/session.h"
#include "evenhand/screen/canvas.h"
#include "evenhand/screen/days.h"

enum chart_leaf {
	CHART_MINUTES,
	CHART_FINGERS,
	CHART_FIRST_GO,
	CHART_STAGES,
	CHART_LEAVES
};

/* What one column of an axis stands for. */
enum chart_scale { SCALE_DAYS, SCALE_WEEKS, SCALE_MONTHS, SCALES };

struct chart {
	const struct days *days; /* borrowed */
	enum chart_leaf leaf;
	enum chart_scale scale;
	int low, high; /* those of the days that can be drawn: low..high-1 */
	int last;      /* the day at which the time shown ends */
	bool ascii;    /* no sign beyond ASCII */
	bool help;     /* the keys lie over it */
};

/*
 * Begins with the days up to the one given (the last kept one by then).
 * False: not one of the days can be drawn.
 */
bool chart_begin(struct chart *c, const struct days *d, int today);

/* Draws into a canvas of its size. */
void chart_draw(struct canvas *canvas, const struct chart *c);

/* A key on a screen of this size.  False: it leaves. */
bool chart_key(struct chart *c, enum key key, int columns, int rows);

#endif
