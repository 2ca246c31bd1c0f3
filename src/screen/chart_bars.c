/*
 * chart_bars.c - bars along an axis, and lying ones
 *
 *	10|
 *	  |█   █
 *	 5|█ ▄ █
 *	  |█ █ █  ▄
 *	 0+---------
 *	  03-02    03-09
 *
 * A number of the scale stands beside the row that a bar of that height fills
 * last.  Half a cell is the least step, and the least that anything is drawn.
 */
#include "chart_parts.h"

#include "evenhand/base/date.h"
#include "evenhand/base/tongue.h"
#include "signs.h"
#include "view_play.h"

enum { DATE_COLUMNS = 5, HALVES = 2, NUMBER_BYTES = 24 };

void chart_span(const struct chart *c, const struct axis *a, struct told *t)
{
	t->from = axis_from(a);
	t->to = axis_to(a);
	t->earlier = days_from(c->days, t->from) > c->low;
	t->later = days_from(c->days, t->to + 1) < c->high;
}

void chart_shown(
    const struct chart *c, const struct axis *a, int *low, int *high)
{
	*low = days_from(c->days, axis_from(a));
	*high = days_from(c->days, axis_to(a) + 1);
	if (*low < c->low)
		*low = c->low;
	if (*high > c->high)
		*high = c->high;
}

int64_t chart_scale_top(int64_t most)
{
	static const int steps[] = { 2, 4, 6, 8, 10 };
	int64_t ten = 1;

	for (;; ten *= 10)
		for (size_t i = 0; i < sizeof(steps) / sizeof(steps[0]); i++)
			if (most <= steps[i] * ten || ten > INT64_MAX / 100)
				return steps[i] * ten;
}

/* Half cells of a bar in a space of so many, at least one of what there is. */
static int halves_of(int64_t value, int64_t top, int cells)
{
	double share = (double)value / (double)top;
	int halves = (int)(share * HALVES * cells + 0.5);

	if (halves > HALVES * cells)
		return HALVES * cells;
	return value > 0 && halves == 0 ? 1 : halves;
}

void chart_bars(const struct drawing *d, const struct area *p,
    const struct axis *a, const int64_t *value, int64_t top)
{
	bool ascii = d->chart->ascii;

	for (int i = 0; i < a->count; i++) {
		int column = p->left + axis_column(a, i);
		int halves = halves_of(value[i], top, p->bottom - p->top);

		for (int y = p->bottom - 1; halves > 0; y--, halves -= HALVES)
			canvas_put(d->canvas, y, column, ATTRIBUTE_PLAIN,
			    sign_of(
				halves > 1 ? SIGN_FULL : SIGN_LOWER, ascii));
	}
}

static void put_number(const struct drawing *d, int row, int right,
    unsigned attributes, int64_t number)
{
	char bytes[NUMBER_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	text_format(&t, "%lld", (long long)number);
	canvas_put(
	    d->canvas, row, right - text_columns(bytes), attributes, bytes);
}

void chart_frame(const struct drawing *d, const struct area *p, int64_t top)
{
	bool ascii = d->chart->ascii;
	int line = p->left - 1, rows = p->bottom - p->top;

	for (int y = p->top; y < p->bottom; y++)
		canvas_put(d->canvas, y, line, ATTRIBUTE_FAINT,
		    sign_of(SIGN_DOWN, ascii));
	canvas_put(d->canvas, p->bottom, line, ATTRIBUTE_FAINT,
	    sign_of(SIGN_BOTTOM_LEFT, ascii));
	for (int x = p->left; x < p->right; x++)
		canvas_put(d->canvas, p->bottom, x, ATTRIBUTE_FAINT,
		    sign_of(SIGN_ACROSS, ascii));
	put_number(d, p->top, line, ATTRIBUTE_FAINT, top);
	if (rows >= 4 && rows % HALVES == 0)
		put_number(d, p->top + rows / HALVES, line, ATTRIBUTE_FAINT,
		    top / HALVES);
	put_number(d, p->bottom, line, ATTRIBUTE_FAINT, 0);
}

/* What stands under the i-th place: a month and day, or a year. */
static void label_of(const struct axis *a, int i, char *bytes)
{
	struct text t = text_in(bytes, DATE_TEXT_MAX);
	int day = axis_first_day(a->scale, a->first + i), year, month, dom;

	date_of(day, &year, &month, &dom);
	if (a->scale == SCALE_MONTHS)
		text_format(&t, "%04d", year);
	else
		tongue_date_short(day, bytes);
}

void chart_dates(
    const struct drawing *d, int row, int column, const struct axis *a)
{
	static const int every[] = { 7, 3, 12 };
	char bytes[DATE_TEXT_MAX];

	for (int i = 0; i < a->count; i += every[a->scale]) {
		int at = axis_column(a, i);

		/* None that only half fits. */
		if (at + DATE_COLUMNS > a->columns)
			break;
		label_of(a, i, bytes);
		canvas_put(d->canvas, row, column + at, ATTRIBUTE_FAINT, bytes);
	}
}

void chart_lying_bar(const struct drawing *d, int row, int left, int right,
    int64_t value, int64_t top)
{
	bool ascii = d->chart->ascii;
	int halves = halves_of(value, top, right - left);

	for (int x = left; halves > 0; x++, halves -= HALVES)
		canvas_put(d->canvas, row, x, ATTRIBUTE_PLAIN,
		    sign_of(
			halves > 1 || ascii ? SIGN_FULL : SIGN_LEFT, ascii));
}
