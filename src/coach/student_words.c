/*
 * student_words.c - a student in a few words, and who comes first
 */
#include "evenhand/coach/student.h"

#include <string.h>

#include "evenhand/base/text.h"
#include "evenhand/coach/plan.h"

enum { ID_SHOWN = 6 };

static struct message of_unit(const struct student *s, enum message_id id)
{
	return message_with(id, WORD(plan_unit_word(s->take)), TEXT(s->unit));
}

struct message student_hold(const struct student *s)
{
	if (!s->known)
		return message_of(M_CLASS_HOLD_UNKNOWN);
	switch (s->missing) {
	case MISSING_NOTHING:
		return message_of(M_CLASS_HOLD_READY);
	case MISSING_DAYS:
		return message_with(
		    M_CLASS_HOLD_DAYS, WHOLE(s->have), WHOLE(s->wanted));
	case MISSING_RUNG:
		return message_with(
		    M_CLASS_HOLD_RUNG, WHOLE(s->have), WHOLE(s->wanted));
	case MISSING_CLEAN:
		return s->in_the_air ? message_of(M_CLASS_HOLD_SWING)
				     : of_unit(s, M_CLASS_HOLD_SHAKY);
	case MISSING_MARK:
		return *s->unit ? of_unit(s, M_CLASS_HOLD_MARK)
				: message_of(M_CLASS_HOLD_NO_MARK);
	case MISSING_CLEAN_DAYS:
		return message_with(
		    M_CLASS_HOLD_CLEAN, WHOLE(s->have), WHOLE(s->wanted));
	case MISSING_SHARE:
		return message_with(M_CLASS_HOLD_SHARE,
		    WORD(plan_unit_word(s->take)), TEXT(s->unit),
		    WHOLE(s->have));
	case MISSING_HEARD:
		return message_with(
		    M_CLASS_HOLD_HEARD, WHOLE(s->have), WHOLE(s->wanted));
	default:
		return message_of(M_CLASS_HOLD_OTHER);
	}
}

bool student_asks(const struct student *s, int today)
{
	return !s->unread && *s->question != '\0' &&
	    (int64_t)today - s->asked < STUDENT_DAYS;
}

int student_compare(const struct student *a, const struct student_state *as,
    const struct student *b, const struct student_state *bs)
{
	int by_name;

	if (as->order != bs->order)
		return as->order < bs->order ? -1 : 1;
	if (as->urgency != bs->urgency)
		return as->urgency > bs->urgency ? -1 : 1;
	by_name = strcmp(a->initials, b->initials);
	return by_name != 0 ? by_name : strcmp(a->id, b->id);
}

enum message_id student_word(enum student_order order)
{
	static const enum message_id words[STUDENT_ORDERS] = {
		[STUDENT_PAIN] = M_CLASS_WORD_PAIN,
		[STUDENT_STUCK] = M_CLASS_WORD_STUCK,
		[STUDENT_HURRIED] = M_CLASS_WORD_HURRIED,
		[STUDENT_ABSENT] = M_CLASS_WORD_ABSENT,
		[STUDENT_UNREAD] = M_CLASS_WORD_UNREAD,
		[STUDENT_READY] = M_CLASS_WORD_READY,
		[STUDENT_FINE] = M_CLASS_WORD_FINE,
		[STUDENT_GONE] = M_CLASS_WORD_GONE,
	};

	return words[order];
}

const char *student_name(const struct student *s, char *buffer, int size)
{
	struct text t = text_in(buffer, (size_t)size);

	if (*s->initials)
		text_add_clean(&t, s->initials);
	else
		text_format(&t, "%.*s", ID_SHOWN, s->id);
	return buffer;
}
