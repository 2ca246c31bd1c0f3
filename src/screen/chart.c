/*
 * chart.c - the page round a chart, and its keys
 *
 *	►minutes  fingers  first go  stages
 *	← 2026-03-02 to 2026-04-26	       minutes of practice, by day
 *
 *		the chart
 *
 *	a sentence with its sums
 *	keys
 *
 * One axis serves all charts at a size, so that they show the same time.
 */
#include "evenhand/screen/chart.h"

#include "chart_parts.h"
#include "evenhand/base/text.h"
#include "signs.h"
#include "view_play.h"
#include "view_small.h"

enum {
	CALENDAR_END = 2932897, /* the day after 9999-12-31 */
	ROWS_ROOMY = 20,
	COLUMNS_ROOMY = 60,
	COLUMNS_WIDE = 100,
	COLUMNS_ONE_LINE = 76, /* a sum stays on one row */
	TAB_GAP = 2,
	KEY_GAP = 3,
	KEY_GAP_SMALL = 2,
	SHORT_NAME_COLUMNS = 8
};

bool chart_begin(struct chart *c, const struct days *d, int today)
{
	int at = days_from(d, today + (today < INT32_MAX)) - 1;

	*c = (struct chart) { .days = d };
	c->low = days_from(d, 0);
	c->high = days_from(d, CALENDAR_END);
	if (c->low == c->high)
		return false;
	/* Everything lies ahead where the clock is wrong now: all of it. */
	if (at < c->low || at >= c->high)
		at = c->high - 1;
	c->last = d->day[at].day;
	return true;
}

/* --- where things stand --- */

static int margin(int columns)
{
	if (columns >= COLUMNS_WIDE)
		return 2;
	return columns >= COLUMNS_ROOMY;
}

static bool left_out(const struct chart *c)
{
	return c->high - c->low < c->days->count;
}

/* Rows for the sentences at the foot. */
static int foot_rows(const struct chart *c, int columns)
{
	return (columns < COLUMNS_ONE_LINE ? 2 : 1) * (1 + left_out(c));
}

static struct area area_of(const struct chart *c, int columns, int rows)
{
	int roomy = rows >= ROWS_ROOMY, side = margin(columns);

	return (struct area) { .left = side,
		.right = columns - side,
		.top = 2 + roomy,
		.bottom = rows - 1 - roomy - foot_rows(c, columns) };
}

int chart_gutter(const struct area *p)
{
	bool narrow = p->right - p->left < COLUMNS_ROOMY - 2;

	return 1 + (narrow ? SHORT_NAME_COLUMNS : CHART_NAME_COLUMNS);
}

void chart_axis(const struct chart *c, const struct area *p, struct axis *a)
{
	axis_fit(a, c, p->right - p->left - chart_gutter(p));
}

/* --- the page round the chart --- */

static const enum message_id tabs[CHART_LEAVES] = {
	[CHART_MINUTES] = M_HISTORY_TAB_MINUTES,
	[CHART_FINGERS] = M_HISTORY_TAB_FINGERS,
	[CHART_FIRST_GO] = M_HISTORY_TAB_FIRST_GO,
	[CHART_STAGES] = M_HISTORY_TAB_STAGES,
};

static const enum message_id about[CHART_LEAVES] = {
	[CHART_MINUTES] = M_HISTORY_ABOUT_MINUTES,
	[CHART_FINGERS] = M_HISTORY_ABOUT_FINGERS,
	[CHART_FIRST_GO] = M_HISTORY_ABOUT_FIRST_GO,
	[CHART_STAGES] = M_HISTORY_ABOUT_STAGES,
};

static const enum message_id scales[SCALES] = {
	[SCALE_DAYS] = M_HISTORY_SCALE_DAY,
	[SCALE_WEEKS] = M_HISTORY_SCALE_WEEK,
	[SCALE_MONTHS] = M_HISTORY_SCALE_MONTH,
};

static void draw_tabs(const struct drawing *d)
{
	int column = d->area.left;

	for (int i = 0; i < CHART_LEAVES; i++) {
		bool chosen = d->chart->leaf == (enum chart_leaf)i;

		canvas_put(d->canvas, 0, column, ATTRIBUTE_STRONG,
		    chosen ? sign_of(SIGN_CHOSEN, d->chart->ascii) : " ");
		column += 1 +
		    canvas_put(d->canvas, 0, column + 1,
			chosen ? ATTRIBUTE_STRONG | ATTRIBUTE_REVERSE
			       : ATTRIBUTE_PLAIN,
			message_sentence(tabs[i]));
		column += TAB_GAP - 1;
	}
}

/* The time that is shown, and an arrow to where there is more. */
static int draw_span(const struct drawing *d, const struct told *t)
{
	char words[WORDS_MAX], all[WORDS_MAX];
	struct text line = text_in(all, sizeof(all));
	bool ascii = d->chart->ascii;

	text_add(&line, t->earlier ? sign_of(SIGN_BACK, ascii) : " ");
	text_add(&line, " ");
	text_add(&line,
	    words_of(message_with(M_HISTORY_SPAN, DATE(t->from), DATE(t->to)),
		words));
	text_add(&line, " ");
	text_add(&line, t->later ? sign_of(SIGN_FORWARD, ascii) : " ");
	return d->area.left +
	    canvas_put(d->canvas, 1, d->area.left, ATTRIBUTE_PLAIN, all);
}

static void draw_about(const struct drawing *d, int from)
{
	enum chart_leaf leaf = d->chart->leaf;
	enum message_id scale = leaf == CHART_FIRST_GO
	    ? M_HISTORY_SCALE_DAY
	    : scales[d->chart->scale];
	struct message m = message_with(about[leaf], WORD(scale));
	char words[WORDS_MAX];

	if (text_columns(words_of(m, words)) > d->area.right - from - 1)
		words_of(
		    message_with(M_HISTORY_ABOUT_SHORT, WORD(scale)), words);
	put_right(d->canvas, 1, from, d->area.right, ATTRIBUTE_FAINT, words);
}

/* A sentence in as many rows as it may have; the row behind it. */
static int draw_sentence(const struct drawing *d, int row, struct message m)
{
	int columns = d->area.right - d->area.left;
	int end = row +
	    foot_rows(d->chart, d->canvas->columns) / (1 + left_out(d->chart));
	char words[WORDS_MAX], line[WORDS_MAX];
	const char *s = words_of(m, words);
	size_t next;

	for (; *s && row < end; s += next, row++) {
		size_t bytes = text_wrap(s, columns, &next);
		struct text t = text_in(line, sizeof(line));

		text_add_bytes(&t, s, bytes);
		canvas_put(d->canvas, row, d->area.left, ATTRIBUTE_PLAIN, line);
	}
	return end;
}

static void draw_foot(const struct drawing *d, const struct told *t)
{
	int rows = d->canvas->rows;
	int row = rows - 1 - foot_rows(d->chart, d->canvas->columns);
	int out = d->chart->days->count - (d->chart->high - d->chart->low);

	if (t->sum.id != M_NONE)
		row = draw_sentence(d, row, t->sum);
	if (out > 0)
		draw_sentence(
		    d, row, message_with(M_HISTORY_OUTSIDE, WHOLE(out)));
}

/* --- keys in a row, in words or short --- */

static void add_key(struct text *t, int gap, const char *words)
{
	for (int i = 0; i < gap && t->length > 0; i++)
		text_add(t, " ");
	text_add(t, words);
}

static void keys_line(const struct chart *c, bool small, char *bytes)
{
	struct text t = text_in(bytes, WORDS_MAX);
	int gap = small ? KEY_GAP_SMALL : KEY_GAP;
	char words[WORDS_MAX];

	add_key(&t, gap,
	    words_of(message_with(M_HISTORY_KEY_TIME,
			 TEXT(sign_of(SIGN_BACK, c->ascii)),
			 TEXT(sign_of(SIGN_FORWARD, c->ascii))),
		words));
	if (c->leaf != CHART_FIRST_GO)
		add_key(&t, gap,
		    message_sentence(small ? M_HISTORY_KEY_SCALE_SHORT
					   : M_HISTORY_KEY_SCALE));
	add_key(&t, gap,
	    message_sentence(
		small ? M_HISTORY_KEY_TAB_SHORT : M_HISTORY_KEY_TAB));
	add_key(&t, gap, message_sentence(M_VIEW_KEY_HELP));
	add_key(&t, gap, message_sentence(M_HISTORY_KEY_LEAVE));
}

static void draw_keys(const struct drawing *d)
{
	char words[WORDS_MAX];

	keys_line(d->chart, false, words);
	if (text_columns(words) > d->area.right - d->area.left)
		keys_line(d->chart, true, words);
	put_left(d->canvas, d->canvas->rows - 1, d->area.left, d->area.right,
	    ATTRIBUTE_FAINT, words);
}

/* --- help --- */

static void draw_help(const struct drawing *d)
{
	static const enum message_id all[] = { M_HISTORY_HELP_LATER,
		M_HISTORY_HELP_EARLIER, M_HISTORY_HELP_CLOSER,
		M_HISTORY_HELP_WIDER, M_HISTORY_HELP_TAB, M_HISTORY_HELP_BACK,
		M_HISTORY_HELP_LEAVE };
	int columns = d->area.right - d->area.left;
	int row = d->canvas->rows >= ROWS_ROOMY;

	for (size_t i = 0; i < sizeof(all) / sizeof(all[0]); i++) {
		const char *s = message_sentence(all[i]);
		size_t next;

		for (; *s; s += next, row++) {
			char line[WORDS_MAX];
			size_t bytes = text_wrap(s, columns, &next);
			struct text t = text_in(line, sizeof(line));

			text_add_bytes(&t, s, bytes);
			canvas_put(d->canvas, row, d->area.left,
			    ATTRIBUTE_PLAIN, line);
		}
		row += d->canvas->rows >= ROWS_ROOMY;
	}
}

void chart_draw(struct canvas *canvas, const struct chart *c)
{
	static void (*const draw[CHART_LEAVES])(
	    const struct drawing *, struct told *) = {
		[CHART_MINUTES] = chart_minutes,
		[CHART_FINGERS] = chart_fingers,
		[CHART_FIRST_GO] = chart_first_go,
		[CHART_STAGES] = chart_stages,
	};
	struct drawing d = { canvas, c,
		area_of(c, canvas->columns, canvas->rows) };
	struct told t = { .sum = message_of(M_NONE) };

	canvas_init(canvas, canvas->columns, canvas->rows);
	if (view_is_small(canvas->columns, canvas->rows)) {
		view_draw_small(canvas);
		return;
	}
	if (c->help) {
		draw_help(&d);
		return;
	}
	draw[c->leaf](&d, &t);
	draw_tabs(&d);
	draw_about(&d, draw_span(&d, &t));
	draw_foot(&d, &t);
	draw_keys(&d);
}

/* --- keys --- */

static void move(struct chart *c, int columns, int rows, bool later)
{
	struct area p = area_of(c, columns, rows);
	struct axis a;

	if (view_is_small(columns, rows))
		return;
	if (c->leaf == CHART_FIRST_GO) {
		chart_first_go_move(c, &p, later);
		return;
	}
	chart_axis(c, &p, &a);
	if (later)
		axis_later(&a, c);
	else
		axis_earlier(&a, c);
}

static void change_scale(struct chart *c, int by)
{
	int scale = (int)c->scale + by;

	if (scale >= 0 && scale < SCALES && c->leaf != CHART_FIRST_GO)
		c->scale = (enum chart_scale)scale;
}

bool chart_key(struct chart *c, enum key key, int columns, int rows)
{
	if (key == KEY_LEAVE || key == KEY_ESCAPE)
		return false;
	if (c->help || key == KEY_HELP) {
		c->help = !c->help;
		return true;
	}
	if (key == KEY_FORWARD || key == KEY_BACK)
		move(c, columns, rows, key == KEY_FORWARD);
	else if (key == KEY_LOUDER || key == KEY_SOFTER)
		change_scale(c, key == KEY_LOUDER ? -1 : 1);
	else if (key == KEY_LEAF)
		c->leaf = (c->leaf + 1) % CHART_LEAVES;
	return true;
}
