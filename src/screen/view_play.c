/*
 * view_play.c - the page of the playing
 */
#include "view_play.h"

void view_page_play(struct canvas *c, const struct view *v)
{
	const struct session *s = v->session;
	const struct stage *t =
	    &s->wish.routine->stage[s->plan.block[s->at.from.block].stage];

	canvas_put(c, 0, 1, ATTRIBUTE_STRONG, t->title);
}

int64_t view_change_play(const struct view *v, int columns, int rows)
{
	(void)columns, (void)rows;
	return v->heard + 1;
}
