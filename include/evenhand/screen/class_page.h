/*
 * class_page.h - a teacher's class, on a full screen and in lines
 *
 *	Class on 2026-03-09: 25 students		  1 of 25
 *	2 pain  3 stuck  1 hurried  4 absent  2 ready  13 fine
 *	  ! pain     W. P.  stopped for pain on 2026-03-08: wrist
 *	  = stuck    K. O.  21 practice days on "A tone apart", and 9 are usual
 *	    fine     B. L.  "A tone apart": 3 of 5 practice days
 *
 * Who needs the teacher comes first (coach/student.h).  A word says why, the
 * sign beside it only helps the eye.  The page under the list tells all of the
 * chosen one; a student's lesson page says what the lesson sheet says.
 *
 * Drawing remembers nothing: the same page and size give the same cells.  All
 * is borrowed of the caller.  Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_CLASS_PAGE_H
#define EVENHAND_SCREEN_CLASS_PAGE_H

#include <stdbool.h>

#include "evenhand/base/text.h"
#include "evenhand/coach/class.h"
#include "evenhand/coach/lesson.h"
#include "evenhand/screen/canvas.h"

enum { CLASS_FIND_BYTES = 64 };

/* Adds the line above those of the students: how many they are. */
void class_head(
    struct text *out, struct class_row *const *order, int count, int today);

/* Adds the line of one student. */
void class_line(struct text *out, const struct class_row *row, int today);

/* What the teacher presses. */
enum class_key {
	CLASS_KEY_NEXT,
	CLASS_KEY_PREVIOUS,
	CLASS_KEY_PAGE_ON,
	CLASS_KEY_PAGE_BACK,
	CLASS_KEY_OPEN,
	CLASS_KEY_SHUT,
	CLASS_KEY_FIND,
	CLASS_KEY_HELP,
	CLASS_KEY_OTHER,
};

struct class_page {
	struct class_row *const *order;
	int count, today;
	int chosen; /* in the order */
	bool ascii; /* no sign beyond ASCII */
	bool help;  /* the keys lie over it */
	bool finding;
	char find[CLASS_FIND_BYTES]; /* only names that hold this; "" all */
	/* The lesson page of the chosen one; NULL: the list is shown. */
	const struct lesson_words *lesson;
	int line; /* of it, the first one shown */
};

/* Draws into a canvas of its size. */
void class_draw(struct canvas *canvas, const struct class_page *page);

/*
 * A key on the list or the lesson page, on a screen of this size: moves,
 * leafs, helps.  What to open, to shut and to find is the caller's to do.
 */
void class_press(
    struct class_page *page, enum class_key key, int columns, int rows);

/* Whether one is chosen: there are students, and its name is not left out. */
bool class_chosen(const struct class_page *page);

/* Only names with such a part (letters a to z in either size); "" all. */
void class_find(struct class_page *page, const char *part);

#endif
