/*
 * history_page.c - lines on their way out
 */
#include "history_page.h"

#include "evenhand/screen/lines.h"
#include "options.h"

enum { ROOM_BYTES = 4096 };

void page_begin(struct history_page *p)
{
	p->text = text_in(p->bytes, sizeof(p->bytes));
	p->good = true;
}

static void let_out(struct history_page *p)
{
	if (p->good && p->text.length > 0)
		p->good = command_print(&p->text);
	p->text = text_in(p->bytes, sizeof(p->bytes));
}

/* Room for any one sentence. */
static void make_room(struct history_page *p)
{
	if (p->text.length + ROOM_BYTES > sizeof(p->bytes))
		let_out(p);
}

void page_say(struct history_page *p, struct message m)
{
	make_room(p);
	lines_say(&p->text, &m);
}

void page_line(struct history_page *p, const char *line)
{
	make_room(p);
	text_add(&p->text, line);
}

void page_gap(struct history_page *p)
{
	page_line(p, "\n");
}

bool page_end(struct history_page *p)
{
	let_out(p);
	return p->good;
}

void list_begin(
    struct history_list *l, struct history_page *p, enum message_id sentence)
{
	l->page = p;
	l->sentence = sentence;
	l->stage = NULL;
	l->pulses = 0;
	l->items = text_in(l->bytes, sizeof(l->bytes));
}

void list_add(struct history_list *l, struct message item)
{
	char words[HISTORY_LIST_BYTES];
	size_t length = message_text(&item, words, sizeof(words));

	if (l->items.length > 0 &&
	    l->items.length + length + 2 >= sizeof(l->bytes))
		list_end(l);
	text_add(&l->items, l->items.length > 0 ? ", " : "");
	text_add(&l->items, words);
}

static struct message sentence_of(const struct history_list *l)
{
	if (l->sentence == M_HISTORY_FIRST_GO)
		return message_with(l->sentence, TEXT(l->stage),
		    WHOLE(l->pulses), TEXT(l->bytes));
	if (l->sentence == M_HISTORY_FIRST_GO_AIR)
		return message_with(
		    l->sentence, TEXT(l->stage), TEXT(l->bytes));
	return message_with(l->sentence, TEXT(l->bytes));
}

void list_end(struct history_list *l)
{
	if (l->items.length > 0)
		page_say(l->page, sentence_of(l));
	l->items = text_in(l->bytes, sizeof(l->bytes));
}
