/*
 * chart_sheet.h - the rows and columns of a page of first goes
 *
 * A row is a day on which there was one, a group of columns a stage: its rung,
 * then a mark for each unit.
 */
#ifndef EVENHAND_SCREEN_CHART_SHEET_H
#define EVENHAND_SCREEN_CHART_SHEET_H

#include "chart_parts.h"

enum {
	SHEET_HEAD_ROWS = 2,
	SHEET_GAP = 2,		    /* between stages */
	SHEET_UNITS = DAYS_AIR + 1, /* with the mark of a stage without any */
	SHEET_ROWS_MAX = CANVAS_ROWS_MAX,
};

/* One stage. */
struct group {
	int stage;
	bool unit[SHEET_UNITS];
	bool rung; /* pulses are counted in it */
	int marks; /* columns of the marks */
	int width;
};

/* Days of one page, as places in days, and what their stages take. */
struct sheet {
	const struct chart *chart;
	int day[SHEET_ROWS_MAX];
	int rows;
	struct group group[DAYS_STAGES_MAX];
	int groups;
	bool rungs;   /* there is room for them */
	int left_out; /* stages that there is none for */
};

/* Whether a roll-up holds a first go, marked or not. */
bool sheet_is_first_go(const struct tally *t);

/* The next day with a first go after (by 1) or before (-1) one, -1: none. */
int sheet_next(const struct chart *c, int day, int by);

/* Fills the rows that an area has room for, up to chart->last. */
void sheet_days(struct sheet *s, const struct chart *c, const struct area *p);

/* Then the groups, as wide as so many columns let them be. */
void sheet_groups(struct sheet *s, int columns);

/* Columns of a rung in a group, and where the mark of a unit stands in it. */
int sheet_rung(const struct sheet *s, const struct group *g);
int sheet_column(const struct sheet *s, const struct group *g, int unit);

#endif
