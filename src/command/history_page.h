/*
 * history_page.h - lines on their way out
 *
 * Lines gather on a page that goes out when it is nearly full, so that years
 * take few writes and nothing is cut.  A list that is too long for one
 * sentence goes on in another of the same kind.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_HISTORY_PAGE_H
#define EVENHAND_COMMAND_HISTORY_PAGE_H

#include <stdbool.h>

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"

enum { HISTORY_PAGE_BYTES = 32768, HISTORY_LIST_BYTES = 200 };

struct history_page {
	struct text text;
	bool good; /* standard output still takes it */
	char bytes[HISTORY_PAGE_BYTES];
};

/* A sentence with a list in it: {0} in all but first goes of a rung. */
struct history_list {
	struct history_page *page;
	enum message_id sentence;
	const char *stage; /* of a first go */
	int pulses;	   /* the same */
	struct text items;
	char bytes[HISTORY_LIST_BYTES];
};

void page_begin(struct history_page *p);

/* Adds a sentence, a line as it is, or an empty line. */
void page_say(struct history_page *p, struct message m);
void page_line(struct history_page *p, const char *line);
void page_gap(struct history_page *p);

/* Lets out what is left.  False: standard output took no more; said. */
bool page_end(struct history_page *p);

void list_begin(
    struct history_list *l, struct history_page *p, enum message_id sentence);
void list_add(struct history_list *l, struct message item);

/* Says the list, if anything is in it. */
void list_end(struct history_list *l);

#endif
