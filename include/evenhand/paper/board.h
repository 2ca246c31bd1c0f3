/*
 * board.h - the string under the fingers, to scale
 *
 *	1  ║───●━━━━━━━━━●──────────   75   230   154
 *	2  ║─────●━━━━━━━━●─────────  110   255   146
 *
 * A row for each finger: the nut, the string, the two places of a stage, and in
 * figures how many mm they are from the nut and from each other, for this
 * player's string.  For those who finger with the right hand the nut is at the
 * right, as they see it.
 *
 * Pure; any thread.
 */
#ifndef EVENHAND_PAPER_BOARD_H
#define EVENHAND_PAPER_BOARD_H

#include "evenhand/paper/paper.h"
#include "evenhand/routine/routine.h"

struct board {
	const struct routine *routine;
	double wide;  /* mm of all of it */
	double row;   /* mm of one row */
	double scale; /* mm of the string for one of the paper */
};

/* Whether anything slides along the string in a stage. */
bool board_slides(const struct routine *r, int stage);

/*
 * The scale for a board so wide that holds stages 0 to last: 1, 1.25, 1.5, 2,
 * 2.5 and on, so that a ruler helps.
 */
double board_scale(const struct routine *r, int last, double wide, double row);

/* mm from the nut to the two places of a unit, and from one to the other. */
struct board_places {
	double near, far, apart;
};

struct board_places board_places(const struct routine *r, int stage, int unit);

/* mm from top to bottom: a row for each unit and one of headings. */
double board_high(const struct board *b);

/* Draws it with its upper left corner there, in mm of the page. */
void board_draw(
    struct paper *p, const struct board *b, int stage, double x, double y);

#endif
