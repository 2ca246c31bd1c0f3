/*
 * lesson_pictures.c - three small pictures of a week
 *
 *	minutes        bows            first round
 *	   #           #  #  #         1  2  3  4
 *	#  #  #  #     #  #  #  #   Mo o  o  o  O
 *	Mo Tu We Th    1  2  3  4   Tu o  o  o  o
 *
 * What was clean is black, what was shaky is white, what was not marked is not
 * there: no colour is needed.
 */
#include <math.h>

#include "evenhand/base/message.h"
#include "lesson.h"

enum { MINUTE_MS = 60000, FIGURE_BYTES = 24, CHARTS = 3 };

/* In usual mm. */
#define CHART_AIR 8.0
#define CHART_HIGH 46.0
#define LABEL 3.4 /* the em */
#define LABEL_ROW 4.6
/* In ems of the labels: room for days and for the rung. */
#define NAMES 2.4
#define RUNG 3.0
#define LABEL_MOST 0.6 /* of a day's room */

struct chart {
	struct pen *pen;
	double x, wide;	    /* mm of paper */
	double top, bottom; /* of what is drawn between headings and labels */
	double label, row;
};

static struct chart chart_of(
    struct pen *pen, int number, double y, enum message_id heading)
{
	double air = pen_mm(pen, CHART_AIR);
	double wide = (pen->room - (CHARTS - 1) * air) / CHARTS;
	struct chart c = { pen, pen->left + number * (wide + air), wide, 0, 0,
		pen_mm(pen, LABEL), pen_mm(pen, LABEL_ROW) };

	/* Seven names of days have to stand side by side. */
	c.label = fmin(c.label, wide / WEEK_DAYS * LABEL_MOST);

	c.top = y + 2 * c.row;
	c.bottom = y + pen_mm(pen, CHART_HIGH) - c.row;
	paper_words(pen->paper, c.x, y + c.label,
	    (struct lettering) { c.label, true, SIDE_LEFT, INK_FULL },
	    message_sentence(heading));
	return c;
}

static void label(const struct chart *c, double x, double y, const char *words)
{
	paper_words(c->pen->paper, x, y,
	    (struct lettering) { c->label, false, SIDE_MIDDLE, INK_FULL },
	    words);
}

/* A bar with its figure over it and its name below. */
static void bar(const struct chart *c, int at, int count, int64_t value,
    int64_t most, const char *name)
{
	double step = c->wide / count, x = c->x + step * (at + 0.5);
	double high = most > 0
	    ? (c->bottom - c->top) * (double)value / (double)most
	    : 0;
	char figure[FIGURE_BYTES];
	struct text t = text_in(figure, sizeof(figure));

	text_format(&t, "%lld", (long long)value);
	if (value > 0)
		paper_box(c->pen->paper, x - step * 0.3, c->bottom - high,
		    step * 0.6, high, 0, INK_FULL);
	label(c, x, c->bottom - high - c->label * 0.3, figure);
	label(c, x, c->bottom + c->row, name);
}

static void draw_base(const struct chart *c)
{
	paper_line(c->pen->paper, c->x, c->bottom, c->x + c->wide, c->bottom,
	    pen_mm(c->pen, 0.3), INK_FULL);
}

static void draw_minutes(struct pen *pen, const struct lesson *l, double y)
{
	struct chart c = chart_of(pen, 0, y, M_LESSON_CHART_MINUTES);
	int64_t most = 0, minutes[WEEK_DAYS];

	for (int i = 0; i < WEEK_DAYS; i++) {
		minutes[i] = (l->facts.week.ms_of[i] + MINUTE_MS / 2) /
		    MINUTE_MS;
		most = minutes[i] > most ? minutes[i] : most;
	}
	draw_base(&c);
	for (int i = 0; i < WEEK_DAYS; i++)
		bar(&c, i, WEEK_DAYS, minutes[i], most,
		    message_sentence(pen_weekday(l->facts.week.first + i)));
}

static void draw_bows(struct pen *pen, const struct lesson *l, double y)
{
	struct chart c = chart_of(pen, 1, y, M_LESSON_CHART_BOWS);
	const struct routine *r = l->w->routine;
	int64_t most = 0;

	for (int u = 0; u < r->units; u++)
		most = l->facts.week.bows[u] > most ? l->facts.week.bows[u]
						    : most;
	draw_base(&c);
	for (int u = 0; u < r->units; u++)
		bar(&c, u, r->units, l->facts.week.bows[u], most,
		    r->unit[u].name);
}

/* Clean is filled, shaky is open, no mark is nothing. */
static void dot(const struct chart *c, double x, double y, double wide,
    const struct first_go *g, int unit)
{
	if (g->clean >> unit & 1)
		paper_oval(c->pen->paper, x, y, wide, wide, 0, 0);
	else if (g->shaky >> unit & 1)
		paper_oval(
		    c->pen->paper, x, y, wide, wide, 0, pen_mm(c->pen, 0.5));
}

/* What the two are, below. */
static void draw_legend(const struct chart *c)
{
	static const struct first_go clean = { .clean = 1 };
	static const struct first_go shaky = { .shaky = 1 };
	struct lettering how = { c->label, false, SIDE_LEFT, INK_FULL };
	double y = c->bottom + c->row, wide = c->label * 0.8;

	dot(c, c->x + wide, y - c->label * 0.35, wide, &clean, 0);
	paper_words(c->pen->paper, c->x + 2 * wide, y, how,
	    message_sentence(M_WORD_CLEAN));
	dot(c, c->x + c->wide / 2, y - c->label * 0.35, wide, &shaky, 0);
	paper_words(c->pen->paper, c->x + c->wide / 2 + wide, y, how,
	    message_sentence(M_WORD_SHAKY));
}

/* One day: its name, a dot for each finger, the rung. */
static void draw_day(const struct chart *c, const struct lesson *l, int day,
    int units, double row)
{
	double names = NAMES * c->label, middle = c->top + row * (day + 0.5);
	double step = (c->wide - names - RUNG * c->label) / units;
	double wide = fmin(row * 0.62, step * 0.8);
	const struct first_go *g = &l->facts.week.go[day];
	struct message m = message_with(M_LESSON_CHART_RUNG, WHOLE(g->pulses));
	char rung[FIGURE_BYTES];

	label(c, c->x + names / 2, middle + c->label * 0.35,
	    message_sentence(pen_weekday(l->facts.week.first + day)));
	if (!l->facts.week.gone[day])
		return;
	for (int u = 0; u < units; u++)
		dot(c, c->x + names + step * (u + 0.5), middle, wide, g, u);
	message_text(&m, rung, sizeof(rung));
	if (g->pulses > 0)
		label(c, c->x + c->wide - RUNG * c->label / 2,
		    middle + c->label * 0.35, rung);
}

static void draw_first_goes(struct pen *pen, const struct lesson *l, double y)
{
	struct chart c = chart_of(pen, 2, y, M_LESSON_CHART_FIRST_GO);
	const struct routine *r = l->w->routine;
	int units = standing_units(r, l->facts.stage);
	double names = NAMES * c.label;
	double step = (c.wide - names - RUNG * c.label) / units;

	for (int u = 0; !r->stage[l->facts.stage].in_the_air && u < units; u++)
		label(&c, c.x + names + step * (u + 0.5), c.top - c.label * 0.3,
		    r->unit[u].name);
	for (int i = 0; i < WEEK_DAYS; i++)
		draw_day(&c, l, i, units, (c.bottom - c.top) / WEEK_DAYS);
	draw_legend(&c);
}

void lesson_pictures(struct pen *pen, const struct lesson *l)
{
	double y;

	pen_air(pen, 4);
	pen_need(pen, pen_mm(pen, CHART_HIGH));
	y = pen->y;
	draw_minutes(pen, l, y);
	draw_bows(pen, l, y);
	draw_first_goes(pen, l, y);
	pen->y = y + pen_mm(pen, CHART_HIGH) + pen_mm(pen, 2);
}
