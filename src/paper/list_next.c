/*
 * list_next.c - a list that comes from somewhere: is each line ours, and in its
 * place?
 */
#include <math.h>
#include <string.h>

#include "evenhand/paper/list.h"

static void count_page(struct list_look *look, const struct paper_item *page)
{
	look->pages++;
	look->high += page->high;
	look->wide = fmax(look->wide, page->wide);
}

enum list_line list_next(struct list_look *look, const char *line,
    size_t length, struct paper_item *item)
{
	enum list_line what;

	if (look->ended || memchr(line, '\0', length) ||
	    !text_is_utf8(line, length))
		return LIST_BAD;
	if (!look->begun) {
		look->begun = strcmp(line, LIST_FIRST) == 0;
		return look->begun ? LIST_HEAD : LIST_BAD;
	}
	what = list_read(line, item);
	if (what == LIST_ITEM && item->kind == PAPER_PAGE)
		count_page(look, item);
	if ((what == LIST_ITEM || what == LIST_END) && look->pages == 0)
		return LIST_BAD;
	look->ended = what == LIST_END;
	return what;
}
