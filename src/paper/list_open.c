/*
 * list_open.c - a list that came from somewhere: whole, and ours?
 */
#include <math.h>
#include <string.h>

#include "evenhand/paper/list.h"

/* The next line, made a string; NULL where none ends any more. */
static char *next_line(char **at, const char *end)
{
	char *line = *at;
	char *stop = memchr(line, '\n', (size_t)(end - line));

	if (!stop)
		return NULL;
	*stop = '\0';
	*at = stop + 1;
	return line;
}

/* One line; false when it may not stand there. */
static bool look(
    const char *line, struct list_pages *pages, enum list_line *what)
{
	struct paper_item item;

	*what = list_read(line, &item);
	if (*what != LIST_ITEM)
		return *what != LIST_BAD;
	if (item.kind != PAPER_PAGE)
		return pages->pages > 0;
	pages->pages++;
	pages->high += item.high;
	pages->wide = fmax(pages->wide, item.wide);
	return true;
}

bool list_open(char *list, size_t length, struct list_pages *pages)
{
	const char *end = list + length;
	enum list_line what = LIST_BAD;
	char *at = list, *line;

	*pages = (struct list_pages) { 0 };
	if (length == 0 || memchr(list, '\0', length) ||
	    !text_is_utf8(list, length))
		return false;
	line = next_line(&at, end);
	if (!line || strcmp(line, LIST_FIRST) != 0)
		return false;
	while (what != LIST_END) {
		line = next_line(&at, end);
		if (!line || !look(line, pages, &what))
			return false;
	}
	return pages->pages > 0 && at == end;
}
