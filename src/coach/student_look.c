/*
 * student_look.c - what a day makes of the facts of a student
 */
#include "evenhand/coach/student.h"

#include <string.h>

#include "evenhand/coach/where.h"

enum { WEEK = 7, URGENCY_FIRST = 100000, MESSAGE_BYTES = 300 };

/* A look at a student on a day. */
struct look {
	struct student_state *out;
	const struct student *s;
	int64_t today;
	int64_t until; /* up to which it is known what was practised */
};

/* Adds a reason; the first of its order makes the student's order. */
static void because(struct look *l, enum student_order order, int64_t urgency,
    struct message why)
{
	struct student_state *out = l->out;

	if (out->reasons == 0) {
		out->order = order;
		out->urgency = urgency;
	} else if (order == out->order && urgency > out->urgency) {
		out->urgency = urgency;
	}
	if (out->reasons < STUDENT_REASONS_MAX)
		out->reason[out->reasons++] = (struct student_reason) { order,
			why };
}

/* --- what was practised --- */

static void count_days(struct look *l)
{
	struct student_state *out = l->out;

	for (int i = 0; i < l->s->days; i++) {
		const struct student_day *d = &l->s->day[i];
		int64_t ago = l->today - d->day;

		if (ago < WEEK) {
			out->week_days++;
			out->week_ms += d->ms;
		}
		if (ago < STUDENT_DAYS) {
			out->month_days++;
			out->month_ms += d->ms;
		}
	}
	out->away = l->s->last < 0 ? -1 : (int)(l->today - l->s->last);
}

/* --- pain, skin, soreness: the newest first --- */

static struct message note_message(const struct student_note *n)
{
	if (n->kind == NOTE_PAIN && n->finger > 0)
		return message_with(
		    M_CLASS_PAIN_SKIN, DATE(n->day), WHOLE(n->finger));
	if (n->finger > 0)
		return message_with(
		    M_CLASS_SKIN, DATE(n->day), WHOLE(n->finger));
	if (*n->words)
		return message_with(
		    n->kind == NOTE_PAIN ? M_CLASS_PAIN_AT : M_CLASS_SORE_AT,
		    DATE(n->day), TEXT(history_place(n->words)));
	return message_with(
	    n->kind == NOTE_PAIN ? M_CLASS_PAIN : M_CLASS_SORE, DATE(n->day));
}

/* The newest of a kind, when it is not long ago. */
static void look_at_notes(struct look *l, bool pain, int days)
{
	for (int i = l->s->notes - 1; i >= 0; i--) {
		const struct student_note *n = &l->s->note[i];
		int64_t ago = l->today - n->day;

		if ((n->kind == NOTE_PAIN) != pain || ago >= days)
			continue;
		because(l, STUDENT_PAIN,
		    (pain ? 2 * STUDENT_PAIN_DAYS : STUDENT_PAIN_DAYS) - ago,
		    note_message(n));
		return;
	}
}

static void look_at_pain(struct look *l)
{
	if (l->s->ask_first)
		because(l, STUDENT_PAIN, URGENCY_FIRST,
		    message_with(M_CLASS_ASK_FIRST, WHOLE(STUDENT_PAIN_DAYS)));
	look_at_notes(l, true, STUDENT_PAIN_DAYS);
	look_at_notes(l, false, STUDENT_SORE_DAYS);
}

/* --- stuck --- */

static bool held(const struct student *s)
{
	return s->held_since >= 0 && s->held_days >= STUDENT_HELD_PRACTICE &&
	    (int64_t)s->last - s->held_since >= STUDENT_HELD_DAYS;
}

static void look_at_stage(struct look *l)
{
	const struct student *s = l->s;
	int64_t times = s->usual_days > 0
	    ? INT64_C(100) * s->on_days / s->usual_days
	    : 0;
	struct message hold = student_hold(s);
	char words[MESSAGE_BYTES];

	if (s->back)
		because(l, STUDENT_STUCK, URGENCY_FIRST + times,
		    message_with(
			M_CLASS_BACK, TEXT(s->title), TEXT(s->asked_title)));
	if (s->missing == MISSING_NOTHING)
		return;
	if (times >= INT64_C(100) * STUDENT_USUAL_TIMES)
		because(l, STUDENT_STUCK, times,
		    message_with(M_CLASS_LONG, WHOLE(s->on_days),
			WHOLE(s->usual_days), TEXT(s->title)));
	if (!held(s))
		return;
	message_text(&hold, words, sizeof(words));
	because(l, STUDENT_STUCK, times,
	    message_with(M_CLASS_HELD, WHOLE((s->last - s->held_since) / WEEK),
		WHOLE(s->held_days), TEXT(words)));
}

/* --- hurried --- */

static void look_at_hurry(struct look *l)
{
	const struct student *s = l->s;
	int64_t since = l->today - s->guard_day;
	int signs;

	if (s->guard_day < 0 || since >= GUARD_DAYS)
		return;
	signs = s->signs[since > 0 ? since : 0];
	if (signs >= s->signs_needed)
		because(l, STUDENT_HURRIED, signs,
		    message_with(
			M_CLASS_HURRY, WHOLE(signs), WHOLE(s->signs_needed)));
}

/* --- absent --- */

/* Clear days that are more than the file's own days a week leave. */
static int days_missed(const struct student *s)
{
	int usual = s->days_a_week > 0 ? WEEK / s->days_a_week : 0;

	return usual > AWAY_SHORT ? usual : AWAY_SHORT;
}

static void look_at_fortnight(struct look *l)
{
	const struct student *s = l->s;
	int days = 0;

	if (l->until - s->first < STUDENT_FORTNIGHT - 1)
		return;
	for (int i = 0; i < s->days; i++)
		days += l->until - s->day[i].day < STUDENT_FORTNIGHT &&
		    s->day[i].day <= l->until;
	if (days < s->days_a_week)
		because(l, STUDENT_ABSENT, 0,
		    message_with(M_CLASS_SELDOM, WHOLE(days),
			WHOLE(INT64_C(2) * s->days_a_week)));
}

static void look_for_practice(struct look *l)
{
	const struct student *s = l->s;
	int64_t unseen = l->today - l->until;
	int64_t away = l->until - s->last - 1;

	if (s->last < 0)
		because(l, STUDENT_ABSENT, 0, message_of(M_CLASS_NEVER));
	else if (away >= days_missed(s))
		because(l, STUDENT_ABSENT, away,
		    message_with(M_CLASS_AWAY, WHOLE(away), DATE(s->last)));
	else
		look_at_fortnight(l);
	if (l->until >= 0 && unseen >= STUDENT_RECORD_DAYS)
		because(l, STUDENT_ABSENT, unseen,
		    message_with(
			M_CLASS_NO_RECORD, WHOLE(unseen), DATE(l->until)));
}

/* --- all of it --- */

static void look_at_all(struct look *l)
{
	const struct student *s = l->s;

	if (l->until >= 0 && l->today - l->until >= STUDENT_GONE_DAYS) {
		because(l, STUDENT_GONE, 0,
		    message_with(M_CLASS_GONE, DATE(l->until)));
		return;
	}
	look_at_pain(l);
	if (s->known) {
		look_at_stage(l);
		look_at_hurry(l);
	}
	look_for_practice(l);
	if (s->known && s->missing == MISSING_NOTHING && !s->back)
		because(l, STUDENT_READY, 0,
		    message_with(s->own_choice ? M_CLASS_SECURE : M_CLASS_READY,
			TEXT(s->title)));
	if (l->out->reasons == 0) {
		struct message hold = student_hold(s);
		char words[MESSAGE_BYTES];

		message_text(&hold, words, sizeof(words));
		because(l, STUDENT_FINE, 0,
		    s->known
			? message_with(M_CLASS_AT, TEXT(s->title), TEXT(words))
			: hold);
	}
}

bool student_given_ahead(const struct student *s, int today)
{
	return s->given > (int64_t)today + STUDENT_EAST;
}

int student_known_until(const struct student *s, int today)
{
	int until = student_given_ahead(s, today) ? -1 : s->given;

	until = until < s->guard_day ? s->guard_day : until;
	return until < today ? until : today;
}

void student_look(struct student_state *out, const struct student *s, int today)
{
	struct look l = { .out = out, .s = s };

	memset(out, 0, sizeof(*out));
	today = today < s->guard_day ? s->guard_day : today;
	l.today = today;
	l.until = student_known_until(s, today);
	if (s->unread) {
		out->away = -1;
		because(&l, STUDENT_UNREAD, 0, message_of(M_CLASS_UNREAD));
		return;
	}
	count_days(&l);
	look_at_all(&l);
}
