/*
 * sheet.h - the sheets that evenhand puts on paper
 *
 *	homework   the week on one page for the music stand
 *
 * A sheet is laid out as large as it fits on one page, from a little larger
 * than usual to a little smaller; what is too much even then takes further
 * pages.  Large print does not shrink and takes the pages it needs.
 *
 * Pure; any thread.  The same input gives the same list.
 */
#ifndef EVENHAND_PAPER_SHEET_H
#define EVENHAND_PAPER_SHEET_H

#include <stdbool.h>

#include "evenhand/paper/paper.h"
#include "evenhand/routine/routine.h"

/* ISO 216 A4 is 210 x 297 mm, ANSI letter 8.5 x 11 inches. */
enum sheet_size { SHEET_A4, SHEET_LETTER };

struct sheet_wish {
	const struct routine *routine; /* borrowed for as long as the paper */
	int day;		       /* the week begins on it; day number */
	enum sheet_size size;
	bool large; /* for those who see less */
};

/*
 * The homework: how long and how often, the teacher's note, the stage of the
 * week with its cue, its self-checks with a box for each day, its notes and
 * its places on the string, the earlier stages, the cautions.
 */
void sheet_homework(struct paper *p, const struct sheet_wish *w);

#endif
