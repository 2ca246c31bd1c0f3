/*
 * lesson.h - parts of the teacher's sheet
 */
#ifndef EVENHAND_PAPER_LESSON_H
#define EVENHAND_PAPER_LESSON_H

#include "evenhand/coach/guard.h"
#include "evenhand/paper/sheet.h"
#include "pen.h"
#include "week.h"

struct lesson {
	const struct lesson_wish *w;
	int stage; /* worked on */
	struct week week;
	struct guard guard;
};

/* Minutes by day, bows by finger, first goes by day and finger. */
void lesson_pictures(struct pen *pen, const struct lesson *l);

#endif
