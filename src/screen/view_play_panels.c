/*
 * view_play_panels.c - what there is room for on a wide or tall screen
 *
 *	bows today		work turns, 7 days	fingerboard
 *	1 ████████░░░░ 8	1 ██████ 12		║──●━━━━━●───  154 mm
 *	2 ████████░░░░ 8	2 ██████ 12		║──●━━━●─────   97 mm
 *
 * Bars of one panel have one scale, so equal work is an equal length.  A bar
 * of today's bows is full when the plan is played.
 */
#include "evenhand/base/text.h"
#include "signs.h"
#include "view_play.h"
#include "view_play_board.h"

enum { BETWEEN = 4, WEEK_DAYS = 7, THREE_WIDE = 100, NUMBER_COLUMNS = 4 };

/* One panel: where it stands, and its bars. */
struct panel {
	int row, rows, column, columns;
};

struct bars {
	int value[UNITS_MAX], full[UNITS_MAX];
	int most;
};

/* --- what is counted --- */

static int in_history(const struct session *s, int unit, int days, bool bows)
{
	const struct history *h = s->wish.history;
	int sum = 0;

	for (int i = 0; h && i < h->tallies; i++) {
		const struct tally *t = &h->tally[i];

		if (t->day <= s->plan.day - days || t->day > s->plan.day ||
		    routine_unit(s->wish.routine, t->unit) != unit)
			continue;
		if (bows)
			sum += t->bows;
		else if (t->kind == BLOCK_WORK)
			sum += t->turns;
	}
	return sum;
}

static int planned_bows(const struct session *s, int unit)
{
	int turns = 0;

	for (int i = 0; i < s->plan.turns; i++)
		turns += s->plan.turn[i].unit == unit;
	return turns * s->wish.routine->bows_each;
}

static int work_turns(const struct session *s, int unit)
{
	int turns = 0;

	for (int i = 0; i < s->played; i++) {
		const struct played_turn *t = &s->turn_played[i];

		turns += t->unit == unit && t->whole &&
		    s->plan.block[t->block].kind == BLOCK_WORK;
	}
	return turns;
}

static void count_today(const struct session *s, struct bars *b)
{
	for (int u = 0; u < s->wish.routine->units; u++) {
		int before = in_history(s, u, 1, true);

		b->value[u] = before + session_bows(s, u);
		b->full[u] = before + planned_bows(s, u);
	}
}

static void count_week(const struct session *s, struct bars *b)
{
	for (int u = 0; u < s->wish.routine->units; u++)
		b->value[u] = in_history(s, u, WEEK_DAYS, false) +
		    work_turns(s, u);
}

/* --- bars --- */

static int widest_name(const struct routine *r)
{
	int most = 0;

	for (int u = 0; u < r->units; u++) {
		int columns = text_columns(r->unit[u].name);

		most = columns > most ? columns : most;
	}
	return most;
}

static void draw_bar(struct canvas *c, const struct view *v, int row, int from,
    int room, const struct bars *b, int unit)
{
	char bytes[NUMBER_COLUMNS * 4];
	struct text t = text_in(bytes, sizeof(bytes));
	int halves = b->most > 0 ? 2 * room * b->value[unit] / b->most : 0;
	int full = b->most > 0 ? room * b->full[unit] / b->most : 0;

	for (int x = 0; x < room; x++) {
		bool whole = 2 * x + 2 <= halves, half = 2 * x + 1 == halves;

		if (whole || (half && !v->ascii))
			canvas_put(c, row, from + x, ATTRIBUTE_PLAIN,
			    sign_of(whole ? SIGN_FULL : SIGN_LEFT, v->ascii));
		else if (x < full)
			canvas_put(c, row, from + x, ATTRIBUTE_FAINT,
			    sign_of(SIGN_SHADE, v->ascii));
	}
	text_format(&t, "%d", b->value[unit]);
	put_right(c, row, from + room, from + room + NUMBER_COLUMNS,
	    ATTRIBUTE_PLAIN, bytes);
}

static void draw_bars(struct canvas *c, const struct view *v,
    const struct now *n, const struct panel *p, enum message_id title,
    struct bars *b)
{
	const struct routine *r = v->session->wish.routine;
	int name = widest_name(r) + 1, now = n->unit;
	char words[WORDS_MAX];

	put_left(c, p->row, p->column, p->column + p->columns, ATTRIBUTE_FAINT,
	    words_of(message_of(title), words));
	for (int u = 0; u < r->units; u++) {
		int most = b->full[u] > b->value[u] ? b->full[u] : b->value[u];

		b->most = most > b->most ? most : b->most;
	}
	for (int u = 0; u < r->units && u + 1 < p->rows; u++) {
		int row = p->row + 1 + u;

		canvas_put(c, row, p->column,
		    u == now ? ATTRIBUTE_STRONG : ATTRIBUTE_PLAIN,
		    r->unit[u].name);
		draw_bar(c, v, row, p->column + name,
		    p->columns - name - NUMBER_COLUMNS, b, u);
	}
}

static void draw_today(struct canvas *c, const struct view *v,
    const struct now *n, const struct panel *p)
{
	struct bars b = { 0 };

	count_today(v->session, &b);
	draw_bars(c, v, n, p, M_VIEW_BOWS_TODAY, &b);
}

static void draw_week(struct canvas *c, const struct view *v,
    const struct now *n, const struct panel *p)
{
	struct bars b = { 0 };

	count_week(v->session, &b);
	draw_bars(c, v, n, p, M_VIEW_WEEK, &b);
}

static void draw_board(struct canvas *c, const struct view *v,
    const struct now *n, const struct panel *p)
{
	play_board(c, v, n, p->row, p->rows, p->column, p->columns);
}

/* --- where they stand --- */

/* Side by side: the bars a quarter each, the fingerboard half. */
static void below_wide(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	int room = l->right - l->left - 2 * BETWEEN, quarter = room / 4;
	struct panel p = { l->panels, l->panel_rows, l->left, quarter };

	draw_today(c, v, n, &p);
	p.column += quarter + BETWEEN;
	draw_week(c, v, n, &p);
	p.column += quarter + BETWEEN;
	p.columns = l->right - p.column;
	draw_board(c, v, n, &p);
}

/* Two of bars side by side, the fingerboard under them. */
static void below_narrow(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	int bars = v->session->wish.routine->units + 1;
	int half = (l->right - l->left - BETWEEN) / 2;
	struct panel p = { l->panels, l->panel_rows, l->left, half };

	draw_today(c, v, n, &p);
	p.column = l->right - half;
	draw_week(c, v, n, &p);
	p = (struct panel) { l->panels + bars + 1, l->panel_rows - bars - 1,
		l->left, l->right - l->left };
	draw_board(c, v, n, &p);
}

/* One under the other, as many as there are rows for. */
static void beside(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l)
{
	int bars = v->session->wish.routine->units + 1;
	int columns = c->columns - l->left - l->side;
	int end = l->info - 1;
	struct panel p = { 2, bars, l->side, columns };

	if (p.row + bars > end)
		return;
	draw_today(c, v, n, &p);
	p.row += bars + 1;
	if (p.row + bars > end)
		return;
	draw_week(c, v, n, &p);
	p.row += bars + 1;
	p.rows = end - p.row;
	draw_board(c, v, n, &p);
}

void play_panels(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l)
{
	if (l->panel_rows > 0 && c->columns >= THREE_WIDE)
		below_wide(c, v, n, l);
	else if (l->panel_rows > 0)
		below_narrow(c, v, n, l);
	else if (l->side > 0)
		beside(c, v, n, l);
}
