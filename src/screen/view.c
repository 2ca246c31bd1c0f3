/*
 * view.c - which page is drawn
 */
#include "evenhand/screen/view.h"

#include "evenhand/base/text.h"
#include "view_pages.h"
#include "view_play.h"

/* A canvas that is smaller than any page: one sentence, wrapped. */
static void draw_small(struct canvas *c)
{
	const struct message m = message_with(
	    M_VIEW_SMALL, WHOLE(VIEW_COLUMNS_MIN), WHOLE(VIEW_ROWS_MIN));
	char words[MESSAGE_TEXT_MAX], line[MESSAGE_TEXT_MAX];
	const char *s = words;

	message_text(&m, words, sizeof(words));
	for (int row = 0; row < c->rows && *s; row++) {
		size_t next, bytes = text_wrap(s, c->columns, &next);
		struct text t = text_in(line, sizeof(line));

		text_add_bytes(&t, s, bytes);
		canvas_put(c, row, 0, ATTRIBUTE_PLAIN, line);
		s += next;
	}
}

static bool small(int columns, int rows)
{
	return columns < VIEW_COLUMNS_MIN || rows < VIEW_ROWS_MIN;
}

/* The playing, unless its keys are being read over it. */
static bool playing(const struct view *v)
{
	return v->session->page == PAGE_PLAY && !v->help;
}

void view_draw(struct canvas *c, const struct view *v)
{
	canvas_init(c, c->columns, c->rows);
	if (small(c->columns, c->rows))
		draw_small(c);
	else if (playing(v))
		view_page_play(c, v);
	else
		view_page_other(c, v);
}

int view_leaves(const struct view *v, int columns, int rows)
{
	if (small(columns, rows) || playing(v))
		return 1;
	return view_leaves_other(v, columns, rows);
}

/* What the keys do changes with the bow, also while they are read. */
static int64_t keys_change(const struct view *v)
{
	struct now n;

	if (v->session->page != PAGE_PLAY)
		return INT64_MAX;
	now_of(v, &n);
	return now_change(v, &n);
}

int64_t view_change(const struct view *v, int columns, int rows)
{
	if (small(columns, rows))
		return INT64_MAX;
	if (!playing(v))
		return keys_change(v);
	return view_change_play(v, columns, rows);
}
