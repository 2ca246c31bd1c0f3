/*
 * view_pages.c - every page but the playing
 */
#include "view_pages.h"

void view_page_other(struct canvas *c, const struct view *v)
{
	struct message help = session_help(v->session);
	char words[MESSAGE_TEXT_MAX];

	message_text(&help, words, sizeof(words));
	canvas_put(c, c->rows - 1, 1, ATTRIBUTE_PLAIN, words);
}

int view_leaves_other(const struct view *v, int columns, int rows)
{
	(void)v, (void)columns, (void)rows;
	return 1;
}
