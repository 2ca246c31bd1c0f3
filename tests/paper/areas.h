/*
 * areas.h - whether anything on a paper meets words or is cut by its edge
 *
 * Words count as wide as they may become, and as high as any letter is.
 */
#ifndef EVENHAND_TESTS_AREAS_H
#define EVENHAND_TESTS_AREAS_H

#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>

#include "evenhand/paper/paper.h"

enum { AREAS_EDGE = 6 }; /* mm that printers leave white */

/* What an item covers; of letters, all that may stand over and under. */
struct area {
	double left, top, right, bottom;
};

static inline struct area area_of(const struct paper_item *i)
{
	double left = i->x;

	switch (i->kind) {
	case PAPER_WORDS:
		if (i->side == SIDE_RIGHT)
			left -= i->wide;
		else if (i->side == SIDE_MIDDLE)
			left -= i->wide / 2;
		return (struct area) { left, i->y - 0.76 * i->size,
			left + i->wide, i->y + 0.24 * i->size };
	case PAPER_OVAL:
		return (struct area) { i->x - i->wide / 2, i->y - i->high / 2,
			i->x + i->wide / 2, i->y + i->high / 2 };
	case PAPER_LINE:
		return (struct area) { fmin(i->x, i->to_x), fmin(i->y, i->to_y),
			fmax(i->x, i->to_x), fmax(i->y, i->to_y) };
	case PAPER_BOX:
		return (
		    struct area) { i->x, i->y, i->x + i->wide, i->y + i->high };
	default:
		return (struct area) { i->x, i->y, i->x, i->y };
	}
}

static inline bool areas_meet(struct area a, struct area b)
{
	double air = 0.02;

	return a.left < b.right - air && b.left < a.right - air &&
	    a.top < b.bottom - air && b.top < a.bottom - air;
}

/* Words keep clear of words, boxes, ovals and lines after them on a page. */
static inline void areas_page(
    const struct paper *p, int from, int to, const char *what)
{
	for (int i = from; i < to; i++) {
		const struct paper_item *one = &p->item[i];

		for (int n = from; n < to; n++) {
			const struct paper_item *other = &p->item[n];

			if (n == i || one->kind != PAPER_WORDS ||
			    other->kind == PAPER_SHAPE)
				continue;
			if (areas_meet(area_of(one), area_of(other)))
				fail_msg("%s: \"%s\" meets %s (%.1f, %.1f)",
				    what, one->text,
				    other->text ? other->text : "a stroke",
				    other->x, other->y);
		}
	}
}

static void areas_edges(
    const struct paper_item *page, const struct paper_item *i, const char *what)
{
	struct area a = area_of(i);

	if (a.left < AREAS_EDGE || a.top < AREAS_EDGE ||
	    a.right > page->wide - AREAS_EDGE ||
	    a.bottom > page->high - AREAS_EDGE)
		fail_msg("%s: over the edge at %.1f, %.1f: %s", what, i->x,
		    i->y, i->text ? i->text : "a stroke");
}

static inline void areas_check(const struct paper *p, const char *what)
{
	int from = 0;

	assert_int_equal(p->item[0].kind, PAPER_PAGE);
	for (int i = 1; i <= p->items; i++) {
		if (i < p->items && p->item[i].kind != PAPER_PAGE) {
			areas_edges(&p->item[from], &p->item[i], what);
			continue;
		}
		areas_page(p, from + 1, i, what);
		from = i;
	}
}

#endif
