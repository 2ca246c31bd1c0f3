/*
 * chart_first_go.c - the marks of the first go, a row for each day
 *
 *	            air  wide    thirds  tone
 *	                 1234    1234    1234
 *	2026-03-02  ✓    4 ✓✓~·
 *	2026-03-04  ✓    6 ✓✓✓✓  6 ✓~✓✓
 *
 * Only days with a first go have a row, so a page may reach over more time
 * than the other charts.  Before the marks stands the rung, in pulses a bow.
 */
#include "chart_sheet.h"

#include "evenhand/base/date.h"
#include "evenhand/base/text.h"
#include "evenhand/base/tongue.h"
#include "signs.h"
#include "view_play.h"

enum { DATE_LONG = 10, DATE_SHORT = 5, COLUMNS_LONG = 58, RUNG_LETTERS = 2 };

void chart_first_go_move(struct chart *c, const struct area *p, bool later)
{
	struct sheet s;
	int next;

	sheet_days(&s, c, p);
	if (s.rows == 0)
		return;
	next = sheet_next(c, s.day[later ? s.rows - 1 : 0], later ? 1 : -1);
	if (next < 0)
		return;
	/* Later by a page, or as far as there is one. */
	for (int n = 1, more = next; later && n < s.rows && more >= 0; n++) {
		more = sheet_next(c, next, 1);
		next = more >= 0 ? more : next;
	}
	c->last = c->days->day[next].day;
}

static bool dates_long(const struct area *p)
{
	return p->right - p->left >= COLUMNS_LONG;
}

static int marks_column(const struct area *p)
{
	return p->left +
	    (dates_long(p) ? DATE_LONG + SHEET_GAP : DATE_SHORT + 1);
}

static void draw_head(const struct drawing *d, const struct sheet *s,
    const struct group *g, int column)
{
	const struct days *days = d->chart->days;

	put_left(d->canvas, d->area.top, column, column + g->width,
	    ATTRIBUTE_STRONG, days->stage[g->stage]);
	for (int u = 0; u < days->units; u++)
		if (g->unit[u])
			put_left(d->canvas, d->area.top + 1,
			    column + sheet_column(s, g, u), d->area.right,
			    ATTRIBUTE_FAINT, days->unit[u]);
}

static void put_mark(
    const struct drawing *d, int row, int column, enum mark mark)
{
	static const struct {
		enum sign sign;
		unsigned attributes;
	} marks[] = {
		[MARK_NONE] = { SIGN_BETWEEN, ATTRIBUTE_FAINT },
		[MARK_CLEAN] = { SIGN_CLEAN, ATTRIBUTE_CLEAN },
		[MARK_SHAKY] = { SIGN_SHAKY, ATTRIBUTE_SHAKY },
	};

	if (column < d->area.right)
		canvas_put(d->canvas, row, column, marks[mark].attributes,
		    sign_of(marks[mark].sign, d->chart->ascii));
}

static void put_rung(const struct drawing *d, int row, int column, int pulses)
{
	char bytes[16];
	struct text t = text_in(bytes, sizeof(bytes));

	text_format(&t, "%d", pulses);
	put_left(d->canvas, row, column, column + RUNG_LETTERS, ATTRIBUTE_FAINT,
	    bytes);
}

static void draw_marks(const struct drawing *d, const struct sheet *s,
    const struct group *g, int column)
{
	const struct days *days = d->chart->days;

	for (int i = 0; i < s->rows; i++) {
		const struct day_sum *day = &days->day[s->day[i]];
		int row = d->area.top + SHEET_HEAD_ROWS + i;

		for (int k = 0; k < day->tallies; k++) {
			const struct tally *t = days_tally(days, day, k);
			int unit = days_unit(days, day, k);

			if (!sheet_is_first_go(t) || unit < 0 ||
			    days_stage(days, day, k) != g->stage)
				continue;
			put_mark(d, row, column + sheet_column(s, g, unit),
			    t->first_go);
			if (sheet_rung(s, g) > 0 && t->first_go_pulses > 0)
				put_rung(d, row, column, t->first_go_pulses);
		}
	}
}

static void draw_dates(const struct drawing *d, const struct sheet *s)
{
	char date[DATE_TEXT_MAX];

	for (int i = 0; i < s->rows; i++) {
		(dates_long(&d->area) ? tongue_date : tongue_date_short)(
		    d->chart->days->day[s->day[i]].day, date);
		canvas_put(d->canvas, d->area.top + SHEET_HEAD_ROWS + i,
		    d->area.left, ATTRIBUTE_PLAIN, date);
	}
}

static struct message sum_of(const struct drawing *d, const struct sheet *s)
{
	bool ascii = d->chart->ascii;
	const char *clean = sign_of(SIGN_CLEAN, ascii);
	const char *shaky = sign_of(SIGN_SHAKY, ascii);
	const char *none = sign_of(SIGN_BETWEEN, ascii);

	if (s->rows == 0)
		return message_of(M_HISTORY_NO_FIRST_GO);
	if (s->left_out > 0)
		return message_with(M_HISTORY_SUM_FIRST_GO_MORE, TEXT(clean),
		    TEXT(shaky), TEXT(none), WHOLE(s->left_out));
	return message_with(
	    s->rungs ? M_HISTORY_SUM_FIRST_GO_RUNG : M_HISTORY_SUM_FIRST_GO,
	    TEXT(clean), TEXT(shaky), TEXT(none));
}

static void tell(const struct sheet *s, struct told *t)
{
	const struct chart *c = s->chart;

	t->sum = message_of(M_NONE);
	t->from = t->to = c->last;
	if (s->rows == 0)
		return;
	t->from = c->days->day[s->day[0]].day;
	t->to = c->days->day[s->day[s->rows - 1]].day;
	t->earlier = sheet_next(c, s->day[0], -1) >= 0;
	t->later = sheet_next(c, s->day[s->rows - 1], 1) >= 0;
}

void chart_first_go(const struct drawing *d, struct told *t)
{
	struct sheet s;
	int column = marks_column(&d->area);

	sheet_days(&s, d->chart, &d->area);
	sheet_groups(&s, d->area.right - column);
	draw_dates(d, &s);
	for (int i = 0; i < s.groups; i++) {
		draw_head(d, &s, &s.group[i], column);
		draw_marks(d, &s, &s.group[i], column);
		column += s.group[i].width + SHEET_GAP;
	}
	tell(&s, t);
	t->sum = sum_of(d, &s);
}
