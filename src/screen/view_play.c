/*
 * view_play.c - where each part of the page is drawn
 */
#include "view_play.h"

enum { LATE_LOOKS_A_SECOND = 20 };

void view_page_play(struct canvas *c, const struct view *v)
{
	struct now n;
	struct layout l;

	now_of(v, &n);
	layout_of(v, c->columns, c->rows, &l);
	play_panels(c, v, &n, &l);
	play_above(c, v, &n, &l);
	play_below(c, v, &n, &l);
	play_drain(c, v, &n, &l);
	play_line(c, v, &n, &l);
	play_large(c, v, &n, &l);
}

static int64_t sooner(int64_t a, int64_t b)
{
	return a < b ? a : b;
}

int64_t view_change_play(const struct view *v, int columns, int rows)
{
	struct now n;
	struct layout l;

	now_of(v, &n);
	layout_of(v, columns, rows, &l);

	int64_t next = n.going == GOING_BOW ? play_line_change(v, &n, &l)
					    : play_drain_change(v, &n, &l);

	next = sooner(next, now_change(v, &n));
	next = sooner(next, play_time_change(v));
	if (next > v->heard)
		return next;
	/* The session was not stepped so far yet: it will not be long. */
	return v->heard + v->session->rate / LATE_LOOKS_A_SECOND;
}
