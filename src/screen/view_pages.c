/*
 * view_pages.c - every page but the playing: where its parts stand
 *
 *	title		big letters, where there is room
 *	head		the question in words
 *	text		as much as fits; Tab turns the leaf
 *	answers		at the foot
 *
 * Of several ways to lay a page out the first is taken in which all of it
 * stands on one leaf; when none does, that with the fewest leaves.  The title
 * of a question stays whatever it costs: it is read from the chair.
 */
#include "view_pages.h"

#include <assert.h>

#include "view_first.h"
#include "view_page_fields.h"
#include "view_page_text.h"

enum {
	TEXT_COLUMNS = 76, /* no line of text is longer */
	WAYS_FROM = 108,   /* columns from which on text may stand twice */
	EDGE_COLUMNS = 40,
	BROAD = 4,	 /* answers are no broader than so many times high */
	ROWS_TITLE = 22, /* rows from which on there is a title */
	ROWS_ROOMY = 20,
	COLUMNS_ROOMY = 60,
	COLUMNS_WIDE = 100,
	LINE_BYTES = 1200,
};

/* One way to lay a page out. */
struct manner {
	bool title, pictures, gaps, frames;
	int ways; /* columns of text */
};

/* A page and where its parts stand. */
struct page_plan {
	const struct view *v;
	struct story story;
	struct flow head, text;
	struct fields fields;
	struct manner manner;
	int column, width; /* of the text */
	int side, broad;   /* of the answers: they may be broader */
	int top, foot;	   /* first row, and that of the answers */
	bool big;
	struct face face; /* of the title when big */
	char title[LINE_BYTES];
	int text_row; /* behind the first row */
	int room;     /* rows for the text */
	int leaves;
	bool brief; /* fewer words on small screens */
};

/* --- measuring --- */

static int least(int a, int b)
{
	return a < b ? a : b;
}

static void set_head(struct page_plan *p)
{
	flow_init(&p->head, least(p->width, TEXT_COLUMNS), p->v->ascii);
	for (int i = 0; i < p->story.heads; i++)
		flow_words(&p->head, ATTRIBUTE_STRONG, p->story.head[i]);
}

static void set_text(struct page_plan *p)
{
	const struct manner *m = &p->manner;

	flow_init(&p->text, (p->width - (m->ways - 1) * FLOW_GAP) / m->ways,
	    p->v->ascii);
	p->text.gaps = m->gaps;
	p->text.frames = m->frames;
	p->text.brief = p->brief;
	page_text(&p->text, &p->story, p->v, m->pictures, p->room);
	p->leaves = flow_leaves(&p->text, m->ways, p->room);
}

static int title_rows(const struct page_plan *p)
{
	return p->big ? letters_rows(&p->face) + 1 : 0;
}

static int margin(int columns)
{
	if (columns >= COLUMNS_WIDE)
		return 2;
	return columns >= COLUMNS_ROOMY;
}

static void set_columns(struct page_plan *p, int columns, int rows)
{
	int ways = p->manner.ways;
	int wide = columns - 2 * margin(columns);

	p->width = least(wide, ways * TEXT_COLUMNS + (ways - 1) * FLOW_GAP);
	p->column = (columns - p->width) / 2;
	p->broad = least(wide, BROAD * rows);
	if (p->broad < p->width)
		p->broad = p->width;
	p->side = (columns - p->broad) / 2;
	/* One left edge for all, unless the text would hang far aside. */
	if (p->broad - p->width <= EDGE_COLUMNS)
		p->column = p->side;
}

/* The place of all parts in one manner, and how many leaves it comes to. */
static void lay_out(
    struct page_plan *p, const struct manner *m, int columns, int rows)
{
	const char *title = p->title;

	p->manner = *m;
	set_columns(p, columns, rows);
	fields_fit(&p->fields, &p->story, p->broad, rows);
	p->big = m->title && rows >= ROWS_TITLE &&
	    fields_face(&title, 1, p->broad, fields_letters(rows), &p->face);
	set_head(p);
	p->top = rows >= ROWS_ROOMY && (m->gaps || m->frames);
	p->foot = rows - p->fields.rows;
	p->text_row = title_rows(p) + p->head.rows + (rows >= ROWS_ROOMY);
	p->brief = columns < COLUMNS_ROOMY && rows < ROWS_ROOMY;
	/* One row before the answers, which the leaves are named in. */
	p->room = p->foot - p->top - p->text_row - 1;
	set_text(p);
}

static bool manner_fits(
    const struct page_plan *p, const struct manner *m, int columns, int rows)
{
	return (m->title || !p->story.asks) &&
	    (m->ways == 1 || columns >= WAYS_FROM) &&
	    ((!m->gaps && !m->frames) ||
		(columns >= COLUMNS_ROOMY && rows >= ROWS_ROOMY));
}

/*
 * In the first minutes, and on the page of the day behind them, forward turns
 * the leaves before it goes on, and says so; at the end back does.  These words
 * are shorter than what they stand in for, so they fit.
 */
static void name_more(struct page_plan *p)
{
	const struct session *s = p->v->session;

	if (p->v->leaf + 1 >= p->leaves)
		return;
	if (view_first_shows(p->v) || (s->page == PAGE_TODAY && s->taught))
		p->story.forward = (struct answer) { M_FIRST_BIG_MORE,
			message_of(M_FIRST_DO_MORE), M_NONE };
	else if (s->page == PAGE_END && !p->v->help)
		p->story.back = (struct answer) { M_FIRST_BIG_MORE,
			message_of(M_PAGES_BACK_MORE), M_NONE };
}

static void plan_page(
    struct page_plan *p, const struct view *v, int columns, int rows)
{
	static const struct manner manners[] = {
		{ true, true, true, true, 1 },
		{ true, true, true, true, 2 },
		{ false, true, true, true, 1 },
		{ false, true, true, true, 2 },
		{ false, true, false, true, 1 },
		{ true, false, true, true, 1 },
		{ false, false, true, true, 1 },
		{ false, false, true, true, 2 },
		{ true, false, false, true, 1 },
		{ true, false, false, false, 1 },
		{ false, false, false, false, 1 },
		{ false, false, false, false, 2 },
	};
	const struct manner *best = NULL;
	int fewest = 0;

	p->v = v;
	story_tell(&p->story, v);
	message_text(&p->story.title, p->title, sizeof(p->title));
	for (size_t i = 0; i < sizeof(manners) / sizeof(manners[0]); i++) {
		if (!manner_fits(p, &manners[i], columns, rows))
			continue;
		lay_out(p, &manners[i], columns, rows);
		/* A sentence is not read on at the top of the page. */
		if (manners[i].ways > 1 && flow_torn(&p->text, p->room))
			continue;
		if (p->leaves == 1)
			return;
		if (!best || p->leaves < fewest) {
			best = &manners[i];
			fewest = p->leaves;
		}
	}
	/* The plainest ones fit everywhere. */
	assert(best);
	lay_out(p, best, columns, rows);
	name_more(p);
}

/* --- drawing --- */

static int leaf_of(const struct page_plan *p)
{
	/* What is chosen is seen first. */
	int first = flow_marked(&p->text, p->manner.ways, p->room);
	int leaf = p->v->leaf > 0 ? p->v->leaf : 0;

	return (first + leaf) % p->leaves;
}

static void draw_more(struct canvas *c, const struct page_plan *p)
{
	struct message m = message_with(
	    M_PAGES_MORE, WHOLE(leaf_of(p) + 1), WHOLE(p->leaves));
	char words[LINE_BYTES];

	if (p->leaves == 1)
		return;
	message_text(&m, words, sizeof(words));
	canvas_put(c, p->foot - 1, p->side + p->broad - text_columns(words),
	    ATTRIBUTE_STRONG, words);
}

/*
 * Rows of a column: as few as need be, so that columns are about equally long;
 * but what belongs together is not torn apart for that.
 */
static int column_rows(const struct page_plan *p)
{
	int ways = p->manner.ways, best = p->room;

	if (p->leaves > 1)
		return p->room;
	for (int rows = p->room;
	     rows > 0 && flow_leaves(&p->text, ways, rows) == 1; rows--)
		if (flow_ends_part(&p->text, rows))
			best = rows;
	return best;
}

/* Where the text begins, or in the middle when it is wider than that. */
static int title_column(const struct page_plan *p)
{
	int wide = letters_columns(&p->face, p->title);

	return wide <= p->width ? p->column : p->side + (p->broad - wide) / 2;
}

static void draw_page(struct canvas *c, const struct page_plan *p)
{
	int rows = column_rows(p);
	/* With room to spare it stands in the middle. */
	int row = p->top + (p->room - rows) / 2;

	if (p->big)
		letters_draw(c, row, title_column(p), ATTRIBUTE_STRONG,
		    &p->face, p->v->ascii, p->title);
	flow_draw(
	    c, &p->head, row + title_rows(p), p->column, 1, p->head.rows, 0);
	flow_draw(c, &p->text, row + p->text_row, p->column, p->manner.ways,
	    rows, leaf_of(p));
	draw_more(c, p);
	fields_draw(c, &p->fields, &p->story, p->foot, p->side, p->v->ascii);
}

static bool is_over(const struct view *v)
{
	return v->session->page == PAGE_OVER && !view_first_shows(v);
}

void view_page_other(struct canvas *c, const struct view *v)
{
	struct page_plan p;

	if (is_over(v))
		return;
	plan_page(&p, v, c->columns, c->rows);
	draw_page(c, &p);
}

int view_leaves_other(const struct view *v, int columns, int rows)
{
	struct page_plan p;

	if (is_over(v))
		return 1;
	plan_page(&p, v, columns, rows);
	return p.leaves;
}
