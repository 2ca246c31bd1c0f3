/*
 * list_write.c - the list of a paper, written down line by line
 */
#include <math.h>

#include "evenhand/base/date.h"
#include "evenhand/paper/list.h"

static long whole(double mm)
{
	return lround(mm * 100);
}

static void write_words(struct text *out, const struct paper_item *i)
{
	static const char *const sides[] = { "left", "middle", "right" };

	text_format(out, "words %ld %ld %ld %s %s %ld %d %s\n", whole(i->x),
	    whole(i->y), whole(i->size), i->bold ? "bold" : "plain",
	    sides[i->side], whole(i->wide), i->ink, i->text);
}

static void write_item(struct text *out, const struct paper_item *i)
{
	long x = whole(i->x), y = whole(i->y);

	switch (i->kind) {
	case PAPER_PAGE:
		text_format(
		    out, "page %ld %ld\n", whole(i->wide), whole(i->high));
		break;
	case PAPER_LINE:
		text_format(out, "line %ld %ld %ld %ld %ld %d\n", x, y,
		    whole(i->to_x), whole(i->to_y), whole(i->pen), i->ink);
		break;
	case PAPER_BOX:
		text_format(out, "box %ld %ld %ld %ld %ld %d\n", x, y,
		    whole(i->wide), whole(i->high), whole(i->pen), i->ink);
		break;
	case PAPER_OVAL:
		text_format(out, "oval %ld %ld %ld %ld %d %ld\n", x, y,
		    whole(i->wide), whole(i->high), i->turned, whole(i->pen));
		break;
	case PAPER_SHAPE:
		text_format(out, "shape %ld %ld %ld %ld %s\n", x, y,
		    whole(i->size), whole(i->pen), i->text);
		break;
	case PAPER_WORDS:
		write_words(out, i);
		break;
	case PAPER_KINDS:
		break;
	}
}

void list_write_begin(struct text *out, const struct paper *p)
{
	char day[DATE_TEXT_MAX];

	date_text(p->day, day);
	text_format(out, LIST_FIRST "\ntitle %s\nauthor %s\nday %s\n", p->title,
	    p->author, day);
}

void list_write_pages(struct text *out, const struct paper *p)
{
	for (int i = 0; i < p->items; i++)
		write_item(out, &p->item[i]);
}

void list_write_end(struct text *out)
{
	text_add(out, "end\n");
}

void list_write(struct text *out, const struct paper *p)
{
	list_write_begin(out, p);
	list_write_pages(out, p);
	list_write_end(out);
}
