/*
 * chart_parts.h - what the charts are drawn with
 *
 *	chart.c			the page round a chart, its keys
 *	chart_axis.c		time along the columns
 *	chart_bars.c		bars along an axis, and lying ones
 *	chart_minutes.c		minutes of practice
 *	chart_fingers.c		bows and metres of each finger
 *	chart_first_go.c	marks of the first go
 *	chart_stages.c		what was worked on, what came again
 */
#ifndef EVENHAND_SCREEN_CHART_PARTS_H
#define EVENHAND_SCREEN_CHART_PARTS_H

#include "chart_axis.h"
#include "evenhand/base/message.h"

/* Where a chart stands: columns left..right-1, rows top..bottom-1. */
struct area {
	int left, right, top, bottom;
};

/* A chart on its canvas. */
struct drawing {
	struct canvas *canvas;
	const struct chart *chart;
	struct area area;
};

/* What a chart tells of itself besides being drawn. */
struct told {
	int from, to;	     /* days it shows */
	bool earlier, later; /* whether there is more to either side */
	struct message sum;  /* a sentence at its foot, M_NONE: none */
};

/* --- the charts; each draws, and fills what is told --- */

void chart_minutes(const struct drawing *d, struct told *t);
void chart_fingers(const struct drawing *d, struct told *t);
void chart_first_go(const struct drawing *d, struct told *t);
void chart_stages(const struct drawing *d, struct told *t);

/* Moves a page of first goes on an area of this size, later or earlier. */
void chart_first_go_move(struct chart *c, const struct area *p, bool later);

/* --- parts --- */

/* Columns left of an axis, with the line it stands at; the same for all. */
int chart_gutter(const struct area *p);

/* The axis of the time shown, on an area of this size. */
void chart_axis(const struct chart *c, const struct area *p, struct axis *a);

/* Room for the names of stages where there is much. */
enum { CHART_NAME_COLUMNS = 12 };

/* What an axis shows: its days, and whether there are others beside it. */
void chart_span(const struct chart *c, const struct axis *a, struct told *t);

/* The first and one past the last of the days that an axis shows. */
void chart_shown(
    const struct chart *c, const struct axis *a, int *low, int *high);

/* The least of 2, 4, 6, 8, 10, 20, 40 ... that is not below a value. */
int64_t chart_scale_top(int64_t most);

/*
 * Bars that stand on the last row, the top of the scale in the first.  What is
 * above zero is never drawn as nothing.
 */
void chart_bars(const struct drawing *d, const struct area *p,
    const struct axis *a, const int64_t *value, int64_t top);

/* The numbers of the scale left of the bars, and a line down and across. */
void chart_frame(const struct drawing *d, const struct area *p, int64_t top);

/* Dates under the places of an axis, in one row. */
void chart_dates(
    const struct drawing *d, int row, int column, const struct axis *a);

/* A bar that lies, its number behind it; places of the bar are left..right-1. */
void chart_lying_bar(const struct drawing *d, int row, int left, int right,
    int64_t value, int64_t top);

#endif
