/*
 * view_page_fields.h - the two answers of a page, as the pedals lie
 *
 *	┌ ← back, left pedal ────────┐  ┌─────── forward, right pedal → ┐
 *	│        a big word          │  │          a big word           │
 *	│   what it does, in words   │  │                               │
 *	└ its keys ──────────────────┘  └───────────────────────────────┘
 *
 * Back is always on the left and forward on the right, at the foot of the
 * page.  Where the room is short the frame goes first, then the big letters.
 */
#ifndef EVENHAND_SCREEN_VIEW_PAGE_FIELDS_H
#define EVENHAND_SCREEN_VIEW_PAGE_FIELDS_H

#include "evenhand/screen/letters.h"
#include "view_page_story.h"

struct fields {
	bool framed, big;
	bool air;	  /* empty rows above and below the big word */
	struct face face; /* when big */
	int width;	  /* of one of the two */
	int sentence;	  /* rows of what they do */
	int rows;	  /* of a field */
	int gap;	  /* columns between the two */
};

/* How the answers of a story fit into a page of so many columns and rows. */
void fields_fit(
    struct fields *f, const struct story *story, int columns, int rows);

void fields_draw(struct canvas *c, const struct fields *f,
    const struct story *story, int row, int column, bool ascii);

/*
 * Rows that a line of large letters may take on a page of so many rows: the
 * more rows a screen has, the smaller they are.
 */
int fields_letters(int rows);

/*
 * The largest face in which each of the words fits into so many columns and
 * rows; false when there is none.
 */
bool fields_face(const char *const *words, int count, int columns, int rows,
    struct face *face);

#endif
