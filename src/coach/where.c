/*
 * where.c - the stage of today, step by step
 *
 * What a day works on is settled before its first session; a later one of the
 * same day goes on with it.
 */
#include "evenhand/coach/where.h"

#include <string.h>

enum { NONE = -1 };

struct looking {
	struct where *where;
	const struct routine *routine;
	const struct history *history;
	int today;
	const struct past_sitting *last; /* played, or NULL */
	const struct past_sitting *own;	 /* with a stage of this routine */
};

static int smaller(int a, int b)
{
	return a < b ? a : b;
}

/* The newest sitting before this one in which something was played. */
static const struct past_sitting *sat_before(const struct history *h, int i)
{
	while (--i >= 0)
		if (history_sat(&h->sitting[i]))
			return &h->sitting[i];
	return NULL;
}

/* Clear days between two practice days. */
static int clear_days(int day, int later)
{
	int64_t days = (int64_t)later - day - 1;

	if (days < 0)
		return 0;
	return days < INT32_MAX ? (int)days : INT32_MAX;
}

/* The newest one that had a stage of this routine as its work. */
static const struct past_sitting *last_own(
    const struct routine *r, const struct history *h)
{
	for (int i = h->sittings - 1; i >= 0; i--)
		if (history_sat(&h->sitting[i]) &&
		    history_stage(r, h->sitting[i].work_stage) >= 0)
			return &h->sitting[i];
	return NULL;
}

static bool sat_today(const struct looking *l)
{
	return l->own && l->own->day >= l->today;
}

/* --- what the file asks for, or the student has reached --- */

static void asked_of(struct looking *l)
{
	struct where *w = l->where;
	const struct routine *r = l->routine;
	struct standing s;
	int reached;

	w->asked = smaller(r->work_on, r->no_further_than);
	if (r->decided_by != DECIDED_BY_STUDENT || !l->own)
		return;
	reached = history_stage(r, l->own->asked_stage);
	if (reached > w->asked && reached <= r->no_further_than)
		w->asked = reached;
	if (w->asked == r->no_further_than || sat_today(l))
		return;
	standing_of(&s, r, l->history, w->asked, l->today, NULL);
	if (s.missing != MISSING_NOTHING)
		return;
	w->from = w->asked++;
	w->why = WHERE_SECURE;
}

/* --- one stage back, and on again --- */

/* The practice day of this routine's stages before a day, or NONE. */
static int day_before(const struct looking *l, int day)
{
	for (int i = l->history->sittings - 1; i >= 0; i--) {
		const struct past_sitting *s = &l->history->sitting[i];

		if (s->day < day && history_sat(s) &&
		    history_stage(l->routine, s->work_stage) >= 0)
			return s->day;
	}
	return NONE;
}

static bool bad_on(const struct looking *l, int stage, int day)
{
	struct first_go g;

	return day != NONE &&
	    first_go_on(l->history, l->routine, stage, day, &g) &&
	    first_go_bad(l->routine, stage, &g);
}

static bool two_bad_days(const struct looking *l, int stage)
{
	struct where *w = l->where;
	int day = l->own->day, before = day_before(l, day);

	if (!bad_on(l, stage, day) || !bad_on(l, stage, before))
		return false;
	w->bad_day[0] = before;
	w->bad_day[1] = day;
	return true;
}

static bool clean_on(const struct looking *l, int stage, int day)
{
	struct first_go g;

	return first_go_on(l->history, l->routine, stage, day, &g) &&
	    first_go_clean(l->routine, stage, &g);
}

/* From where the last sitting was, when the file asks for the same. */
static void go_on_from(struct looking *l, int stage)
{
	struct where *w = l->where;

	w->at = stage;
	if (w->at < w->asked)
		w->why = WHERE_STAYS;
	if (sat_today(l))
		return;
	if (w->at < w->asked && clean_on(l, w->at, l->own->day)) {
		w->why = WHERE_ON;
		w->from = w->at++;
	} else if (w->at > 0 && two_bad_days(l, w->at)) {
		w->why = WHERE_BACK;
		w->from = w->at--;
	}
}

static void at_of(struct looking *l)
{
	struct where *w = l->where;
	int worked, asked;

	w->at = w->asked;
	if (!l->own || w->why == WHERE_SECURE)
		return;
	worked = history_stage(l->routine, l->own->work_stage);
	asked = l->own->asked_stage[0]
	    ? history_stage(l->routine, l->own->asked_stage)
	    : worked;
	if (asked == w->asked && worked <= asked)
		go_on_from(l, worked);
}

/* --- days away --- */

/* The last long time away before today, and what was played since. */
struct since {
	int away;  /* its clear days, 0 when there was none */
	int first; /* index of the first sitting after it */
	int sittings;
};

static struct since long_away(const struct looking *l)
{
	const struct history *h = l->history;
	struct since s = { .away = l->where->away, .first = h->sittings };

	if (s.away >= AWAY_LONG)
		return s;
	for (int i = h->sittings - 1; i >= 0; i--) {
		const struct past_sitting *before;

		if (!history_sat(&h->sitting[i]))
			continue;
		before = sat_before(h, i);
		s.sittings++;
		s.first = i;
		s.away = before ? clear_days(before->day, h->sitting[i].day)
				: 0;
		if (s.away >= AWAY_LONG || !before)
			return s;
	}
	return s;
}

/* Everything that was played on a day in turns was marked clean. */
static bool day_clean(const struct history *h, int day)
{
	int64_t turns = 0, clean = 0, swings = 0, loose = 0;

	for (int i = h->tallies - 1; i >= 0 && h->tally[i].day >= day; i--) {
		const struct tally *t = &h->tally[i];
		bool air = t->kind == BLOCK_AIR;

		if (t->day != day)
			continue;
		*(air ? &swings : &turns) += t->turns;
		*(air ? &loose : &clean) += t->clean;
	}
	return turns > 0 ? clean >= turns : swings > 0 && loose >= swings;
}

/* Whether what is played after some days away was played, and all clean. */
static bool eased_in(const struct looking *l, const struct since *s)
{
	const struct history *h = l->history;

	for (int i = s->first; i < h->sittings; i++)
		if (h->sitting[i].ended == ENDED_WHOLE &&
		    day_clean(h, h->sitting[i].day))
			return true;
	return false;
}

static bool worked_since(const struct looking *l, const struct since *s)
{
	for (int i = s->first; i < l->history->sittings; i++)
		if (history_worked(
			l->routine, &l->history->sitting[i], l->where->at))
			return true;
	return false;
}

/* Whether there is an earlier stage on a string. */
static bool has_earlier(const struct routine *r, int stage)
{
	for (int i = 0; i < stage; i++)
		if (!r->stage[i].in_the_air)
			return true;
	return false;
}

static void ease_in(struct looking *l, const struct since *s)
{
	struct where *w = l->where;
	/* A teacher who wants no earlier stages gets none here either. */
	bool earlier = l->routine->recap_num > 0 &&
	    has_earlier(l->routine, w->at);

	if (eased_in(l, s) || (earlier && worked_since(l, s)))
		return;
	w->percent = AWAY_PERCENT;
	w->recap_only = earlier;
	w->recap_again = s->sittings > 0;
	w->lowest = true;
}

/* Whether so many clear days were usual in the four weeks up to the last. */
static bool usual(const struct looking *l, int away)
{
	const struct history *h = l->history;
	const struct past_sitting *later = l->last;
	int gaps = 0;

	for (int i = h->sittings - 1; i >= 0; i--) {
		const struct past_sitting *s = &h->sitting[i];

		if ((int64_t)l->last->day - s->day >= HABIT_DAYS)
			break;
		if (!history_sat(s))
			continue;
		gaps += clear_days(s->day, later->day) >= away;
		later = s;
	}
	return gaps >= HABIT_GAPS;
}

/* What the days before today change, and a long time before them. */
static void look_at_days(struct looking *l)
{
	struct where *w = l->where;
	struct since s;

	w->away = l->last ? clear_days(l->last->day, l->today) : 0;
	w->lower = w->away >= AWAY_SHORT && w->away < AWAY_LONG &&
	    !usual(l, w->away);
	s = long_away(l);
	if (s.away < AWAY_LONG)
		return;
	if (s.sittings == 0 && s.away >= AWAY_BACK) {
		bool start = s.away >= AWAY_START;

		w->why = start ? WHERE_AWAY_START : WHERE_AWAY_BACK;
		w->from = w->at;
		w->at = start || w->at == 0 ? 0 : w->at - 1;
	}
	w->lowest = !worked_since(l, &s);
	if (s.away < AWAY_BACK)
		ease_in(l, &s);
	else if (s.away < AWAY_START && s.sittings < 2)
		w->percent = s.sittings == 0 ? AWAY_PERCENT
					     : AWAY_SECOND_PERCENT;
}

void where_on(struct where *out, const struct routine *r,
    const struct history *h, int today)
{
	struct looking l = { .where = out,
		.routine = r,
		.history = h,
		.today = today,
		.last = sat_before(h, h->sittings),
		.own = last_own(r, h) };

	memset(out, 0, sizeof(*out));
	out->why = WHERE_FILE;
	out->percent = 100;
	asked_of(&l);
	at_of(&l);
	look_at_days(&l);
}
