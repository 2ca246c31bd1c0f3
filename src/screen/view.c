/*
 * view.c - which page is drawn
 */
#include "evenhand/screen/view.h"

#include "view_pages.h"
#include "view_play.h"
#include "view_small.h"

/* The playing, unless its keys are being read over it. */
static bool playing(const struct view *v)
{
	return v->session->page == PAGE_PLAY && !v->help;
}

void view_draw(struct canvas *c, const struct view *v)
{
	canvas_init(c, c->columns, c->rows);
	if (view_is_small(c->columns, c->rows))
		view_draw_small(c);
	else if (playing(v))
		view_page_play(c, v);
	else
		view_page_other(c, v);
}

int view_leaves(const struct view *v, int columns, int rows)
{
	if (view_is_small(columns, rows) || playing(v))
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
	if (view_is_small(columns, rows))
		return INT64_MAX;
	if (!playing(v))
		return keys_change(v);
	return view_change_play(v, columns, rows);
}
