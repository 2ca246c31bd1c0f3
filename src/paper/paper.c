/*
 * paper.c - what stands on sheets of paper: strokes, shapes and words
 */
#include "evenhand/paper/paper.h"

#include <assert.h>

#include "evenhand/paper/words.h"

static void clean(char *to, const char *from)
{
	struct text t = text_in(to, PAPER_TITLE_MAX);

	text_add_clean(&t, from);
}

void paper_init(struct paper *p, const char *title, const char *author, int day)
{
	clean(p->title, title);
	clean(p->author, author);
	p->day = day;
	p->pages = 0;
	p->items = 0;
	p->words = text_in(p->bytes, sizeof(p->bytes));
	p->cut = false;
}

static void add(struct paper *p, struct paper_item item)
{
	assert(p->pages > 0);
	if (p->items == PAPER_ITEMS_MAX)
		p->cut = true;
	else
		p->item[p->items++] = item;
}

void paper_page(struct paper *p, double wide, double high)
{
	p->pages++;
	add(p,
	    (struct paper_item) {
		.kind = PAPER_PAGE, .wide = wide, .high = high });
}

void paper_line(struct paper *p, double x, double y, double to_x, double to_y,
    double pen, int ink)
{
	add(p,
	    (struct paper_item) { .kind = PAPER_LINE,
		.x = x,
		.y = y,
		.to_x = to_x,
		.to_y = to_y,
		.pen = pen,
		.ink = ink });
}

void paper_box(struct paper *p, double x, double y, double wide, double high,
    double pen, int ink)
{
	add(p,
	    (struct paper_item) { .kind = PAPER_BOX,
		.x = x,
		.y = y,
		.wide = wide,
		.high = high,
		.pen = pen,
		.ink = ink });
}

void paper_oval(struct paper *p, double x, double y, double wide, double high,
    int turned, double pen)
{
	add(p,
	    (struct paper_item) { .kind = PAPER_OVAL,
		.x = x,
		.y = y,
		.wide = wide,
		.high = high,
		.turned = turned,
		.pen = pen,
		.ink = INK_FULL });
}

void paper_shape(struct paper *p, double x, double y, double unit, double pen,
    const char *path)
{
	add(p,
	    (struct paper_item) { .kind = PAPER_SHAPE,
		.x = x,
		.y = y,
		.size = unit,
		.pen = pen,
		.ink = INK_FULL,
		.text = path });
}

void paper_words(struct paper *p, double x, double y, struct lettering how,
    const char *words)
{
	const char *kept = p->words.bytes + p->words.length;

	if (p->words.length + 1 >= p->words.size || *words == '\0') {
		p->cut |= *words != '\0';
		return;
	}
	text_add_clean(&p->words, words);
	/* Each has a zero of its own behind it. */
	if (p->words.cut || p->words.length + 1 >= p->words.size) {
		p->cut = true;
		return;
	}
	p->words.bytes[++p->words.length] = '\0';
	add(p,
	    (struct paper_item) { .kind = PAPER_WORDS,
		.x = x,
		.y = y,
		.wide = words_mm(kept, how.size, how.bold),
		.size = how.size,
		.bold = how.bold,
		.side = how.side,
		.ink = how.ink,
		.text = kept });
}

struct paper_place paper_here(const struct paper *p)
{
	return (struct paper_place) { p->pages, p->items, p->words.length };
}

void paper_back(struct paper *p, struct paper_place where)
{
	p->pages = where.pages;
	p->items = where.items;
	p->words.length = where.bytes;
	p->words.bytes[where.bytes] = '\0';
}
