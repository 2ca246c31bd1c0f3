/*
 * class_lesson.c - what a lesson page or sheet of one student is made from
 */
#include <string.h>

#include "class.h"

bool class_lesson_of(struct class_lesson *l, const struct class_seen *s,
    const char *id, struct fault *f)
{
	struct plan_wish wish = { .history = &l->history, .now = s->now };

	memset(l, 0, sizeof(*l));
	f->message = message_of(M_NONE);
	if (!class_past(s->folder, id, s->today, &l->routine, &l->history, f))
		return false;
	if (!l->routine)
		return false;
	wish.routine = l->routine;
	plan_make(&l->plan, &wish);
	return true;
}

void class_lesson_done(struct class_lesson *l)
{
	history_done(&l->history);
	routine_free(l->routine);
	l->routine = NULL;
}
