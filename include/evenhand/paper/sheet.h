/*
 * sheet.h - the sheets that evenhand puts on paper
 *
 *	homework   the week on one page for the music stand
 *	lesson     what the teacher wants to know before the lesson
 *	class      all students in a list, before their lesson sheets
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

#include "evenhand/coach/class.h"
#include "evenhand/coach/plan.h"
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

/* What the teacher's sheet is made from; all borrowed for the call. */
struct lesson_wish {
	const struct routine *routine;
	const struct history *history;
	const struct plan *plan; /* of today, for that routine and history */
	const char *name;	 /* the student, "" when not known */
	enum sheet_size size;
	bool large;
};

/*
 * The lesson sheet: ready to show, hold or step back and why, one thing to
 * look at, three pictures and twelve lines of the last seven practice days.
 */
void sheet_lesson(struct paper *p, const struct lesson_wish *w);

/* All borrowed for the call. */
struct class_wish {
	struct class_row *const *order;
	int count;
	int today; /* practice day */
	enum sheet_size size;
	bool large;
};

/* One page of the list of a class. */
struct sheet_page {
	int number; /* from 1 */
	int pages;  /* there will be; fewer than 2: no number on it */
	int row;    /* of the order, that begins it */
};

/*
 * A page of the list of a class, who needs the teacher first.  The row that
 * begins the next one; count when there is none.
 */
int sheet_class(
    struct paper *p, const struct class_wish *w, struct sheet_page page);

/* How many pages it takes; they are laid out in p. */
int sheet_class_pages(struct paper *p, const struct class_wish *w);

#endif
