/*
 * history_days.c - what was practised, in lines
 *
 *	Week from 2026-03-02: 2 days, 2 sessions, 9:12.
 *	Stages of the week: air on 2 days, wide on 2 days.
 *
 *	2026-03-02: 4:36 in 1 session.
 *	Stages: air, wide (recap), thirds (recap), tone.
 *	Bows: finger 1: 10, finger 2: 10, finger 3: 10, finger 4: 10.
 *	Bows with every top heard: finger 1: 9 of 10, ...
 *	Metres along the string: finger 1: 12.3, ...
 *	First go of tone, 6 pulses: finger 1 clean, finger 2 shaky, ...
 */
#include "history_days.h"

#include <string.h>

#include "evenhand/base/date.h"
#include "history_page.h"
#include "history_stages.h"

enum { UM_TENTH = 100000, MINUTE_MS = 60000 };

/* What a stretch of days comes to. */
struct sums {
	int days, sittings;
	int64_t ms;
	int64_t bows[DAYS_UNITS_MAX], um[DAYS_UNITS_MAX];
	int64_t listened[DAYS_UNITS_MAX], full[DAYS_UNITS_MAX];
	bool played[DAYS_UNITS_MAX];
};

static void sum_day(
    struct sums *s, const struct days *d, const struct day_sum *day)
{
	s->days += day->sittings > 0 || day->tallies > 0;
	s->sittings += day->sittings;
	s->ms += day->ms;
	for (int i = 0; i < day->tallies; i++) {
		const struct tally *t = days_tally(d, day, i);
		int unit = days_unit(d, day, i);

		if (unit < 0 || unit == DAYS_AIR)
			continue;
		s->played[unit] = true;
		s->bows[unit] += days_bows(t);
		s->um[unit] += days_um(t);
		if (t->bows_listened > 0) {
			s->listened[unit] += t->bows_listened;
			s->full[unit] += t->bows_full > 0 ? t->bows_full : 0;
		}
	}
}

/* --- bows, what was heard of them, and metres --- */

static void say_bows(
    struct history_page *p, const struct days *d, const struct sums *s)
{
	struct history_list list;

	list_begin(&list, p, M_HISTORY_BOWS);
	for (int u = 0; u < d->units; u++)
		if (s->played[u])
			list_add(&list,
			    message_with(days_finger(d->unit[u])
				    ? M_HISTORY_BOWS_FINGER
				    : M_HISTORY_BOWS_UNIT,
				TEXT(d->unit[u]), WHOLE(s->bows[u])));
	list_end(&list);
}

/* Where a microphone listened. */
static void say_heard(
    struct history_page *p, const struct days *d, const struct sums *s)
{
	struct history_list list;

	list_begin(&list, p, M_HISTORY_HEARD);
	for (int u = 0; u < d->units; u++)
		if (s->listened[u] > 0)
			list_add(&list,
			    message_with(days_finger(d->unit[u])
				    ? M_HISTORY_HEARD_FINGER
				    : M_HISTORY_HEARD_UNIT,
				TEXT(d->unit[u]), WHOLE(s->full[u]),
				WHOLE(s->listened[u])));
	list_end(&list);
}

static void say_metres(
    struct history_page *p, const struct days *d, const struct sums *s)
{
	struct history_list list;
	int64_t all = 0;

	for (int u = 0; u < d->units; u++)
		all += s->um[u];
	/* Where nothing slides there is nothing to tell. */
	if (all == 0)
		return;
	list_begin(&list, p, M_HISTORY_METRES);
	for (int u = 0; u < d->units; u++) {
		int64_t tenths = (s->um[u] + UM_TENTH / 2) / UM_TENTH;

		if (s->played[u])
			list_add(&list,
			    message_with(days_finger(d->unit[u])
				    ? M_HISTORY_METRES_FINGER
				    : M_HISTORY_METRES_UNIT,
				TEXT(d->unit[u]), NUMBER((double)tenths / 10)));
	}
	list_end(&list);
}

/* --- notes --- */

/* A sentence that can name the place, when one was told. */
static struct message at_place(
    const struct past_note *n, enum message_id with, enum message_id without)
{
	return *n->words ? message_with(with, TEXT(history_place(n->words)))
			 : message_of(without);
}

static struct message note_message(const struct past_note *n)
{
	switch (n->kind) {
	case NOTE_PAIN:
		if (n->finger > 0)
			return message_with(
			    M_HISTORY_NOTE_PAIN_SKIN, WHOLE(n->finger));
		return at_place(n, M_HISTORY_NOTE_PAIN_AT, M_HISTORY_NOTE_PAIN);
	case NOTE_SKIN:
		if (n->finger > 0)
			return message_with(
			    M_HISTORY_NOTE_SKIN, WHOLE(n->finger));
		break;
	case NOTE_QUESTION:
		return message_with(M_HISTORY_NOTE_QUESTION, TEXT(n->words));
	case NOTE_SORE:
	case NOTE_LATER:
		break;
	}
	return at_place(n, M_HISTORY_NOTE_SORE_AT, M_HISTORY_NOTE_SORE);
}

/* --- a day, a week, all of it --- */

static struct message day_message(const struct day_sum *day)
{
	if (day->sittings > 0)
		return message_with(M_HISTORY_DAY, DATE(day->day),
		    CLOCK(day->ms), WHOLE(day->sittings));
	return message_with(
	    day->tallies > 0 ? M_HISTORY_DAY_NO_TIME : M_HISTORY_DAY_NOT_PLAYED,
	    DATE(day->day));
}

static void say_day(
    struct history_page *p, const struct days *d, const struct day_sum *day)
{
	struct sums s = { 0 };

	sum_day(&s, d, day);
	page_say(p, day_message(day));
	stages_say(p, d, day);
	say_bows(p, d, &s);
	say_heard(p, d, &s);
	say_metres(p, d, &s);
	first_goes_say(p, d, day);
	for (int i = 0; i < day->notes; i++)
		page_say(p, note_message(d->note[day->note + i]));
	page_gap(p);
}

/* On how many days each stage was played as a recap (1) or otherwise (0). */
struct stage_days {
	int days[DAYS_STAGES_MAX][2];
	int last[DAYS_STAGES_MAX][2]; /* the day counted last, and one more */
};

static void count_stages(struct stage_days *s, const struct days *d, int day)
{
	for (int i = 0; i < d->day[day].tallies; i++) {
		int stage = days_stage(d, &d->day[day], i);
		bool recap = days_tally(d, &d->day[day], i)->kind ==
		    BLOCK_RECAP;

		if (stage < 0 || s->last[stage][recap] == day + 1)
			continue;
		s->last[stage][recap] = day + 1;
		s->days[stage][recap]++;
	}
}

static void say_week_stages(
    struct history_page *p, const struct days *d, int first, int end)
{
	struct stage_days s = { 0 };
	struct history_list list;

	for (int day = first; day < end; day++)
		count_stages(&s, d, day);
	list_begin(&list, p, M_HISTORY_WEEK_STAGES);
	for (int i = 0; i < 2 * d->stages; i++) {
		bool recap = i % 2 == 1;
		int days = s.days[i / 2][recap];

		if (days > 0)
			list_add(&list,
			    message_with(recap ? M_HISTORY_WEEK_STAGE_RECAP
					       : M_HISTORY_WEEK_STAGE,
				TEXT(d->stage[i / 2]), WHOLE(days)));
	}
	list_end(&list);
}

/* A week from its Monday on, then its days; returns the day after them. */
static int say_week(struct history_page *p, const struct days *d, int first)
{
	int monday = date_monday(d->day[first].day), end = first;
	struct sums s = { 0 };

	for (; end < d->count && date_monday(d->day[end].day) == monday; end++)
		sum_day(&s, d, &d->day[end]);
	page_say(p,
	    message_with(M_HISTORY_WEEK, DATE(monday), WHOLE(s.days),
		WHOLE(s.sittings), CLOCK(s.ms)));
	say_week_stages(p, d, first, end);
	page_gap(p);
	for (; first < end; first++)
		say_day(p, d, &d->day[first]);
	return end;
}

static void say_all(struct history_page *p, const struct days *d)
{
	struct sums s = { 0 };

	for (int i = 0; i < d->count; i++)
		sum_day(&s, d, &d->day[i]);
	page_say(p,
	    message_with(M_HISTORY_ALL, DATE(d->day[0].day),
		DATE(d->day[d->count - 1].day), WHOLE(s.days),
		WHOLE(s.sittings), WHOLE((s.ms + MINUTE_MS / 2) / MINUTE_MS)));
	say_bows(p, d, &s);
	say_heard(p, d, &s);
	say_metres(p, d, &s);
}

bool history_print_days(const struct days *d)
{
	struct history_page page;

	page_begin(&page);
	for (int i = 0; i < d->count && page.good;)
		i = say_week(&page, d, i);
	if (d->count > 1)
		say_all(&page, d);
	return page_end(&page);
}
