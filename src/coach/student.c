/*
 * student.c - the facts of one line, taken out of a history
 *
 * A history is a file, and may hold any number for a day: all differences of
 * days are taken wide, and what lies more than a day ahead counts as not there
 * yet (one day ahead is today in a zone further east).
 */
#include "evenhand/coach/student.h"

#include <string.h>

#include "evenhand/base/text.h"
#include "evenhand/coach/forecast.h"
#include "evenhand/coach/where.h"
#include "plan_parts.h"

enum {
	DAY_MS = DAY_SECONDS * 1000,
	LOOKED_AT_DAYS = 60,
	CALENDAR_LAST = 2932896, /* 9999-12-31: no later day has a date */
};

/* What is being taken. */
struct taking {
	struct student *out;
	const struct routine *routine;
	const struct history *history;
	int today;
};

static bool there_yet(struct taking *t, int day)
{
	if (day <= CALENDAR_LAST && (int64_t)day - t->today <= 1)
		return true;
	t->out->ahead = true;
	return false;
}

/* --- days --- */

static void take_days(struct taking *t)
{
	const struct history *h = t->history;
	struct student *s = t->out;
	int64_t ms[STUDENT_DAYS] = { 0 };
	bool played[STUDENT_DAYS] = { false };

	for (int i = 0; i < h->sittings; i++) {
		int day = h->sitting[i].day;

		if (!history_sat(&h->sitting[i]) || day < 0 ||
		    !there_yet(t, day))
			continue;
		s->last = day > s->last ? day : s->last;
		s->first = s->first < 0 || day < s->first ? day : s->first;
	}
	for (int i = 0; i < h->sittings && s->last >= 0; i++) {
		const struct past_sitting *p = &h->sitting[i];
		int64_t at = (int64_t)p->day - s->last + STUDENT_DAYS - 1;

		if (!history_sat(p) || at < 0 || at >= STUDENT_DAYS)
			continue;
		played[at] = true;
		ms[at] += p->length_ms > 0 ? p->length_ms : 0;
	}
	for (int i = 0; i < STUDENT_DAYS; i++)
		if (played[i])
			s->day[s->days++] = (struct student_day) {
				s->last - (STUDENT_DAYS - 1) + i,
				(int)(ms[i] < DAY_MS ? ms[i] : DAY_MS),
			};
}

/* --- notes --- */

/* Keeps them in the order of their days; the oldest goes when there are many. */
static void keep_note(struct student *s, const struct past_note *n)
{
	int at;

	if (s->notes == STUDENT_NOTES_MAX) {
		if (n->day < s->note[0].day)
			return;
		memmove(&s->note[0], &s->note[1],
		    (STUDENT_NOTES_MAX - 1) * sizeof(s->note[0]));
		s->notes--;
	}
	for (at = s->notes; at > 0 && s->note[at - 1].day > n->day; at--)
		;
	memmove(&s->note[at + 1], &s->note[at],
	    (size_t)(s->notes - at) * sizeof(s->note[0]));
	s->note[at] = (struct student_note) {
		.day = n->day, .kind = n->kind, .finger = n->finger
	};
	text_clean(
	    s->note[at].words, STUDENT_PLACE_BYTES, n->words ? n->words : "");
	s->notes++;
}

static void take_notes(struct taking *t)
{
	const struct history *h = t->history;
	struct student *s = t->out;

	s->guard_day = s->last;
	for (int i = 0; i < h->notes; i++) {
		const struct past_note *n = &h->note[i];

		if (n->day < 0 || !there_yet(t, n->day))
			continue;
		s->guard_day = n->day > s->guard_day ? n->day : s->guard_day;
		if (history_hurts(n))
			keep_note(s, n);
		else if (n->kind == NOTE_QUESTION && n->words && *n->words &&
		    n->day >= s->asked) {
			s->asked = n->day;
			text_clean(s->question, STUDENT_WORDS_BYTES, n->words);
		}
	}
}

/* --- the stage --- */

/* Bows of a journal may be more than an int holds. */
static int bows_of(int64_t bows)
{
	return bows < INT32_MAX ? (int)bows : INT32_MAX;
}

static void take_missing(struct taking *t, const struct standing *st)
{
	struct student *s = t->out;
	const struct routine *r = t->routine;

	s->missing = st->missing;
	if (st->unit >= 0 && st->unit < r->units && !s->in_the_air)
		memcpy(s->unit, r->unit[st->unit].name, UNIT_NAME_MAX);
	switch (st->missing) {
	case MISSING_DAYS:
		s->have = st->days;
		s->wanted = st->days_needed;
		break;
	case MISSING_RUNG:
		s->have = st->rung;
		s->wanted = st->top;
		break;
	case MISSING_CLEAN_DAYS:
		s->have = st->clean_days;
		s->wanted = st->clean_needed;
		break;
	case MISSING_SHARE:
		s->have = st->bows_all > 0
		    ? (int)(st->bows * 100 / st->bows_all)
		    : 0;
		break;
	case MISSING_HEARD:
		s->have = bows_of(st->bows_full);
		s->wanted = bows_of(st->bows_listened);
		break;
	default:
		break;
	}
}

/* As it stood after a practice day, but for what hurt. */
static void stood(struct taking *t, int day, struct standing *out)
{
	struct history h = *t->history;

	while (h.sittings > 0 && h.sitting[h.sittings - 1].day > day)
		h.sittings--;
	while (h.tallies > 0 && h.tally[h.tallies - 1].day > day)
		h.tallies--;
	h.notes = 0;
	standing_of(out, t->routine, &h, t->out->stage, day, NULL);
}

/* Since when the same is missing, going back over the practice days. */
static void take_held(struct taking *t, const struct standing *now)
{
	struct student *s = t->out;

	if (now->missing == MISSING_NOTHING || now->missing == MISSING_DAYS)
		return;
	for (int ago = 0; ago < LOOKED_AT_DAYS && s->last - ago >= 0; ago++) {
		int day = s->last - ago;
		struct standing then;

		if (!history_worked_on(t->history, t->routine, s->stage, day))
			continue;
		stood(t, day, &then);
		if (then.missing != now->missing || then.unit != now->unit)
			break;
		s->held_since = day;
		s->held_days++;
	}
}

static void take_stage(struct taking *t)
{
	struct student *s = t->out;
	const struct routine *r = t->routine;
	const struct stage *at;
	struct standing st;
	struct where w;

	where_on(&w, r, t->history, s->last >= 0 ? s->last + 1 : t->today);
	at = &r->stage[w.at];
	s->stages = r->stages;
	s->stage = w.at;
	s->in_the_air = at->in_the_air;
	s->back = w.at < w.asked;
	text_clean(s->title, STUDENT_TITLE_BYTES, at->title);
	text_clean(
	    s->asked_title, STUDENT_TITLE_BYTES, r->stage[w.asked].title);
	s->on_days = history_days_on(t->history, r, w.at);
	s->usual_days = forecast_usual_days(r, w.at);
	s->take = r->take;
	stood(t, t->today < INT32_MAX ? t->today + 1 : t->today, &st);
	take_missing(t, &st);
	take_held(t, &st);
}

/* --- hurry --- */

static void take_guard(struct taking *t)
{
	struct student *s = t->out;

	s->signs_needed = GUARD_SIGNS;
	for (int i = 0; i < GUARD_DAYS && s->guard_day >= 0; i++) {
		struct guard g;

		guard_of(
		    &g, t->routine, t->history, s->stage, s->guard_day + i);
		s->signs[i] = g.signs;
		s->signs_needed = g.needed;
	}
}

void student_of(struct student *out, const struct routine *r,
    const struct history *h, int today)
{
	struct taking t = { out, r, h, today };

	memset(out, 0, sizeof(*out));
	out->given = out->first = out->last = out->asked = -1;
	out->held_since = -1;
	out->made = today;
	take_days(&t);
	take_notes(&t);
	out->known = r != NULL;
	if (!r)
		return;
	out->days_a_week = r->days_a_week;
	out->own_choice = r->decided_by == DECIDED_BY_STUDENT;
	out->ask_first = !r->seen && plan_pain_came_back(h);
	take_stage(&t);
	take_guard(&t);
}
