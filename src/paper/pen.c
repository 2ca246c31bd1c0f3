/*
 * pen.c - going down a page, and on to the next
 */
#include "pen.h"

#include <math.h>

#include "evenhand/base/date.h"
#include "evenhand/base/message.h"
#include "evenhand/paper/words.h"

enum { MESSAGE_BYTES = 80 };

/* Lines of words that stay on one page; of more, the first ones do. */
#define LINES_TOGETHER 3

#define MARGIN 14.0
#define FOOT 3.2	  /* the em of the page number, usual mm */
#define FOOT_PART 0.6	  /* of the margin lies below it */
#define BASELINE_PART 0.8 /* of the em lies above the line of the letters */

static const struct {
	double wide, high;
} sizes[] = {
	[SHEET_A4] = { 210, 297 },
	[SHEET_LETTER] = { 215.9, 279.4 },
};

static void begin_page(struct pen *pen)
{
	struct message m = message_with(M_PAPER_PAGE_OF,
	    WHOLE(pen->pages.before + pen->paper->pages + 1),
	    WHOLE(pen->pages.all));
	struct lettering how = pen_letters(pen, FOOT, false);
	char words[MESSAGE_BYTES];

	paper_page(pen->paper, pen->wide, pen->high);
	pen->y = pen->top;
	if (pen->pages.all < 2)
		return;
	how.side = SIDE_RIGHT;
	message_text(&m, words, sizeof(words));
	paper_words(pen->paper, pen->wide - MARGIN,
	    pen->high - MARGIN * FOOT_PART, how, words);
}

void pen_init(struct pen *pen, struct paper *p, enum sheet_size size,
    double scale, struct pen_pages pages)
{
	*pen = (struct pen) { .paper = p,
		.wide = sizes[size].wide,
		.high = sizes[size].high,
		.scale = scale,
		.left = MARGIN,
		.room = sizes[size].wide - 2 * MARGIN,
		.top = MARGIN,
		.bottom = sizes[size].high - MARGIN,
		.pages = pages };
	begin_page(pen);
}

double pen_mm(const struct pen *pen, double mm)
{
	return mm * pen->scale;
}

void pen_need(struct pen *pen, double mm)
{
	if (pen->y + mm <= pen->bottom)
		return;
	if (pen->kept)
		pen->over = true;
	else if (pen->y > pen->top)
		begin_page(pen);
}

void pen_air(struct pen *pen, double mm)
{
	if (pen->y > pen->top)
		pen->y += pen_mm(pen, mm);
}

struct lettering pen_letters(const struct pen *pen, double size, bool bold)
{
	return (
	    struct lettering) { pen_mm(pen, size), bold, SIDE_LEFT, INK_FULL };
}

void pen_words(struct pen *pen, double x, double wide, struct lettering how,
    const char *words)
{
	char line[512];

	pen_need(pen,
	    fmin(pen_words_high(pen, wide, how, words),
		LINES_TOGETHER * how.size * PEN_LEADING));
	while (*words != '\0') {
		size_t next,
		    length = words_wrap(words, how.size, how.bold, wide, &next);
		struct text t = text_in(line, sizeof(line));

		pen_need(pen, how.size * PEN_LEADING);
		text_add_bytes(&t, words, length);
		paper_words(pen->paper, x,
		    pen->y + how.size * (PEN_LEADING - 1 + BASELINE_PART), how,
		    line);
		pen->y += how.size * PEN_LEADING;
		words += next;
	}
}

double pen_words_high(
    const struct pen *pen, double wide, struct lettering how, const char *words)
{
	double high = 0;
	size_t next;

	(void)pen;
	for (; *words != '\0'; words += next) {
		words_wrap(words, how.size, how.bold, wide, &next);
		high += how.size * PEN_LEADING;
	}
	return high;
}

enum message_id pen_weekday(int day)
{
	static const enum message_id names[] = { M_PAPER_MONDAY,
		M_PAPER_TUESDAY, M_PAPER_WEDNESDAY, M_PAPER_THURSDAY,
		M_PAPER_FRIDAY, M_PAPER_SATURDAY, M_PAPER_SUNDAY };

	return names[day - date_monday(day)];
}

bool pen_try(struct pen *pen, void (*draw)(struct pen *pen, const void *what),
    const void *what)
{
	struct pen begun = *pen;
	struct paper_place here = paper_here(pen->paper);
	bool over;

	pen->kept = true;
	draw(pen, what);
	over = pen->over;
	if (over) {
		paper_back(pen->paper, here);
		*pen = begun;
	}
	pen->kept = false;
	return !over;
}

void pen_keep(struct pen *pen, void (*draw)(struct pen *pen, const void *what),
    const void *what)
{
	if (pen_try(pen, draw, what))
		return;
	if (pen->y > pen->top) {
		begin_page(pen);
		if (pen_try(pen, draw, what))
			return;
	}
	draw(pen, what);
}
