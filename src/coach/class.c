/*
 * class.c - all students of a teacher: their order, their names, their words
 */
#include "evenhand/coach/class.h"

#include <stdlib.h>
#include <string.h>

enum { DIGITS = 4, MINUTE_MS = 60000, MESSAGE_BYTES = 400 };

static int by_need(const void *a, const void *b)
{
	const struct class_row *x = *(struct class_row *const *)a;
	const struct class_row *y = *(struct class_row *const *)b;

	return student_compare(x->student, &x->state, y->student, &y->state);
}

static int by_initials(const void *a, const void *b)
{
	const struct class_row *x = *(struct class_row *const *)a;
	const struct class_row *y = *(struct class_row *const *)b;

	return strcmp(x->student->initials, y->student->initials);
}

static bool alike(const struct class_row *a, const struct class_row *b)
{
	return *a->student->initials &&
	    strcmp(a->student->initials, b->student->initials) == 0;
}

/* Names of which there are two get the first digits of the id. */
static void name_rows(struct class_row **order, int count)
{
	qsort(order, (size_t)count, sizeof(struct class_row *), by_initials);
	for (int i = 0; i < count; i++) {
		struct class_row *r = order[i];
		struct text t;

		student_name(r->student, r->name, CLASS_NAME_BYTES);
		if ((i == 0 || !alike(r, order[i - 1])) &&
		    (i == count - 1 || !alike(r, order[i + 1])))
			continue;
		t = text_in(r->name + strlen(r->name),
		    CLASS_NAME_BYTES - strlen(r->name));
		text_format(&t, " (%.*s)", DIGITS, r->student->id);
	}
}

void class_rows(struct class_row *row, struct class_row **order,
    const struct student *student, int count, int today)
{
	for (int i = 0; i < count; i++) {
		row[i].student = &student[i];
		student_look(&row[i].state, &student[i], today);
		order[i] = &row[i];
	}
	if (count == 0)
		return;
	name_rows(order, count);
	qsort(order, (size_t)count, sizeof(struct class_row *), by_need);
}

void class_why(struct text *out, const struct class_row *row)
{
	char words[MESSAGE_BYTES];

	for (int i = 0; i < row->state.reasons; i++) {
		message_text(
		    &row->state.reason[i].message, words, sizeof(words));
		text_format(out, "%s%s", i > 0 ? "; " : "", words);
	}
}

static int64_t minutes(int64_t ms)
{
	return (ms + MINUTE_MS / 2) / MINUTE_MS;
}

static struct message practised(const struct class_row *row)
{
	const struct student_state *st = &row->state;

	return message_with(M_CLASS_PRACTISED, DATE(row->student->last),
	    WHOLE(st->week_days), WHOLE(minutes(st->week_ms)),
	    WHOLE(st->month_days), WHOLE(minutes(st->month_ms)));
}

static struct message stage(const struct class_row *row)
{
	const struct student *s = row->student;
	struct message hold = student_hold(s);
	char words[MESSAGE_BYTES];

	/* How it stands was said as the reason. */
	if (row->state.order == STUDENT_FINE)
		return message_with(M_CLASS_STAGE_FINE, WHOLE(s->stage + 1),
		    WHOLE(s->stages), TEXT(s->title), WHOLE(s->on_days),
		    WHOLE(s->usual_days));
	message_text(&hold, words, sizeof(words));
	return message_with(M_CLASS_STAGE, WHOLE(s->stage + 1),
	    WHOLE(s->stages), TEXT(s->title), WHOLE(s->on_days),
	    WHOLE(s->usual_days), TEXT(words));
}

int class_tell(const struct class_row *row, int today, struct message *out)
{
	const struct student *s = row->student;
	int told = 0;

	if (s->unread)
		return 0;
	if (student_asks(s, today))
		out[told++] = message_with(
		    M_CLASS_ASKS_ON, DATE(s->asked), TEXT(s->question));
	if (s->last >= 0)
		out[told++] = practised(row);
	if (s->known)
		out[told++] = stage(row);
	if (s->given >= 0)
		out[told++] = message_with(student_given_ahead(s, today)
			? M_CLASS_RECORD_AHEAD
			: M_CLASS_RECORD,
		    DATE(s->given));
	return told;
}

void class_counts(struct text *out, struct class_row *const *order, int count)
{
	int of[STUDENT_ORDERS] = { 0 };
	const char *between = "";
	char words[MESSAGE_BYTES];

	for (int i = 0; i < count; i++)
		of[order[i]->state.order]++;
	for (int o = 0; o < STUDENT_ORDERS; o++) {
		struct message m = message_with(M_CLASS_COUNT, WHOLE(of[o]),
		    WORD(student_word((enum student_order)o)));

		if (of[o] == 0)
			continue;
		message_text(&m, words, sizeof(words));
		text_format(out, "%s%s", between, words);
		between = ", ";
	}
	text_add(out, count > 0 ? "." : "");
}

void class_sums(
    struct text *out, struct class_row *const *order, int count, int today)
{
	struct message m = message_with(
	    M_CLASS_TITLE, DATE(today), WHOLE(count));
	char words[MESSAGE_BYTES];

	message_text(&m, words, sizeof(words));
	text_format(out, count > 0 ? "%s. " : "%s.", words);
	class_counts(out, order, count);
}
