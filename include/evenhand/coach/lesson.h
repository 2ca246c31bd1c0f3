/*
 * lesson.h - what a teacher wants to know before a lesson, in sentences
 *
 *	READY TO SHOW			the answer: ready, hold, back or stop
 *	Ready to show: play ...		and why
 *	finger 4 was shaky in 2 of 5	one thing to look at
 *	Stage: ...			the week, line by line
 *
 * The sheet of paper and the teacher's screen say the same.  Pure; any thread.
 */
#ifndef EVENHAND_COACH_LESSON_H
#define EVENHAND_COACH_LESSON_H

#include "evenhand/coach/guard.h"
#include "evenhand/coach/plan.h"
#include "evenhand/coach/week.h"

enum { LESSON_WHYS_MAX = 3, LESSON_LINES_MAX = 16 };

/* What it is told from; the first three are borrowed. */
struct lesson_facts {
	const struct routine *routine;
	const struct history *history;
	const struct plan *plan; /* of the day, for that routine and history */
	int stage;		 /* worked on */
	struct week week;
	struct guard guard;
};

/* Gathers them; out borrows r, h and p. */
void lesson_facts_of(struct lesson_facts *out, const struct routine *r,
    const struct history *h, const struct plan *p);

struct lesson_words {
	struct message answer;
	int whys;
	struct message why[LESSON_WHYS_MAX];
	struct message look; /* "Look at one thing: ..." */
	int lines;
	struct message line[LESSON_LINES_MAX];
};

/* Says them, in messages of their own. */
void lesson_words_of(struct lesson_words *out, const struct lesson_facts *l);

#endif
