/*
 * chart_sheet.c - the rows and columns of a page of first goes
 *
 * Where there are too many stages for the screen their names are cut, then the
 * rungs go, then the stages that came first.
 */
#include "chart_sheet.h"

#include <string.h>

#include "evenhand/base/text.h"

enum { NAME_LEAST = 3, RUNG_COLUMNS = 2 };

/* --- which days --- */

bool sheet_is_first_go(const struct tally *t)
{
	return t->first_go_pulses > 0 || t->first_go != MARK_NONE;
}

static bool has_first_go(const struct chart *c, int day)
{
	const struct day_sum *s = &c->days->day[day];

	for (int i = 0; i < s->tallies; i++)
		if (sheet_is_first_go(days_tally(c->days, s, i)))
			return true;
	return false;
}

int sheet_next(const struct chart *c, int day, int by)
{
	for (day += by; day >= c->low && day < c->high; day += by)
		if (has_first_go(c, day))
			return day;
	return -1;
}

static int rows_of(const struct area *p)
{
	int rows = p->bottom - p->top - SHEET_HEAD_ROWS;

	if (rows < 1)
		return 1;
	return rows < SHEET_ROWS_MAX ? rows : SHEET_ROWS_MAX;
}

/* As many as there is room for, up to chart->last, from the first one on. */
void sheet_days(struct sheet *s, const struct chart *c, const struct area *p)
{
	int room = rows_of(p), first = -1;
	int at = days_from(c->days, c->last + 1);

	*s = (struct sheet) { .chart = c };
	for (int n = 0; n < room; n++) {
		int before = sheet_next(c, at, -1);

		if (before < 0)
			break;
		first = at = before;
	}
	if (first < 0)
		first = sheet_next(c, c->low - 1, 1);
	for (; first >= 0 && s->rows < room; first = sheet_next(c, first, 1))
		s->day[s->rows++] = first;
}

/* --- which stages --- */

static struct group *group_of(struct sheet *s, int stage)
{
	int at = 0;

	while (at < s->groups && s->group[at].stage < stage)
		at++;
	if (at < s->groups && s->group[at].stage == stage)
		return &s->group[at];
	memmove(&s->group[at + 1], &s->group[at],
	    (size_t)(s->groups - at) * sizeof(s->group[0]));
	s->groups++;
	s->group[at] = (struct group) { .stage = stage };
	return &s->group[at];
}

static void find_groups(struct sheet *s)
{
	const struct days *d = s->chart->days;

	for (int row = 0; row < s->rows; row++) {
		const struct day_sum *day = &d->day[s->day[row]];

		for (int i = 0; i < day->tallies; i++) {
			const struct tally *t = days_tally(d, day, i);
			int stage = days_stage(d, day, i);
			int unit = days_unit(d, day, i);
			struct group *g;

			if (!sheet_is_first_go(t) || stage < 0 || unit < 0)
				continue;
			g = group_of(s, stage);
			g->unit[unit] = true;
			g->rung |= t->first_go_pulses > 0;
		}
	}
}

static int unit_columns(const struct chart *c, int unit)
{
	int columns = unit == DAYS_AIR ? 1 : text_columns(c->days->unit[unit]);

	/* Long names need a space between them. */
	return columns > 1 ? columns + 1 : 1;
}

int sheet_rung(const struct sheet *s, const struct group *g)
{
	return s->rungs && g->rung ? RUNG_COLUMNS : 0;
}

/* The width of all stages when names may take so many columns. */
static int measure(struct sheet *s, int names)
{
	int all = 0;

	for (int i = 0; i < s->groups; i++) {
		struct group *g = &s->group[i];
		int name = text_columns(s->chart->days->stage[g->stage]);

		g->marks = 0;
		for (int u = 0; u < SHEET_UNITS; u++)
			if (g->unit[u])
				g->marks += unit_columns(s->chart, u);
		g->width = g->marks + (s->rungs && g->rung ? RUNG_COLUMNS : 0);
		name = name < names ? name : names;
		g->width = g->width > name ? g->width : name;
		all += g->width + SHEET_GAP;
	}
	return all - SHEET_GAP;
}

void sheet_groups(struct sheet *s, int columns)
{
	find_groups(s);
	s->rungs = true;
	for (int names = CHART_NAME_COLUMNS; names >= NAME_LEAST; names--)
		if (measure(s, names) <= columns)
			return;
	s->rungs = false;
	for (int names = CHART_NAME_COLUMNS; names >= NAME_LEAST; names--)
		if (measure(s, names) <= columns)
			return;
	while (s->groups > 1 && measure(s, NAME_LEAST) > columns) {
		s->left_out++;
		s->groups--;
		memmove(&s->group[0], &s->group[1],
		    (size_t)s->groups * sizeof(s->group[0]));
	}
}

int sheet_column(const struct sheet *s, const struct group *g, int unit)
{
	int column = sheet_rung(s, g);

	for (int u = 0; u < unit; u++)
		if (g->unit[u])
			column += unit_columns(s->chart, u);
	return column;
}
