/*
 * lesson.h - parts of the teacher's sheet
 */
#ifndef EVENHAND_PAPER_LESSON_H
#define EVENHAND_PAPER_LESSON_H

#include "evenhand/coach/lesson.h"
#include "evenhand/paper/sheet.h"
#include "pen.h"

struct lesson {
	const struct lesson_wish *w;
	struct lesson_facts facts;
	struct lesson_words words;
};

/* Minutes by day, bows by finger, first goes by day and finger. */
void lesson_pictures(struct pen *pen, const struct lesson *l);

#endif
