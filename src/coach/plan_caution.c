/*
 * plan_caution.c - the cautions that go with today, in our own words
 *
 * What matters most comes first.  None of them stops anything by itself: what
 * must not be played is already out of the plan.
 */
#include "plan_parts.h"

enum { HOUR_S = 3600, MINUTE_S = 60 };

static void first_run(struct making *m)
{
	for (int i = 0; i < m->history->sittings; i++)
		if (history_sat(&m->history->sitting[i]))
			return;
	plan_caution(m, message_of(M_COACH_CAUTION_AID));
	plan_caution(m, message_of(M_COACH_CAUTION_CHILD));
	plan_caution(m, message_of(M_COACH_CAUTION_DOCTOR));
}

static void of_health(struct making *m)
{
	const struct plan *p = m->plan;

	if (p->verdict == VERDICT_ASK_FIRST)
		plan_caution(m, message_of(M_COACH_CAUTION_ASK));
	if (m->easing || p->verdict == VERDICT_ASK_FIRST) {
		plan_caution(m, message_of(M_COACH_CAUTION_PAIN));
		plan_caution(m, message_of(M_COACH_CAUTION_NUMB));
	}
	if (p->hurt)
		plan_caution(m, message_of(M_COACH_CAUTION_SKIN));
}

struct message plan_before_start(const struct history *h)
{
	return message_of(history_begun(h) ? M_COACH_CAUTION_START
					   : M_COACH_CAUTION_START_FIRST);
}

/* Today's sittings: how many, and when the last one ended. */
static int sat_today(const struct making *m, int64_t *ended)
{
	const struct history *h = m->history;
	int sat = 0;

	for (int i = 0; i < h->sittings; i++) {
		const struct past_sitting *s = &h->sitting[i];

		if (s->day != m->plan->day || !history_sat(s))
			continue;
		*ended = history_end(s);
		sat++;
	}
	return sat;
}

static void of_sessions(struct making *m)
{
	const struct routine *r = m->routine;
	int64_t ended = 0;
	int sat = sat_today(m, &ended);

	if (sat == 0)
		return;
	struct moment due = { ended + (int64_t)r->hours_apart * HOUR_S,
		m->wish->now.offset };

	if (sat >= r->per_day) {
		plan_caution(
		    m, message_with(M_COACH_CAUTION_ENOUGH, WHOLE(sat)));
	} else if (due.utc > m->wish->now.utc) {
		/* Due at 16:35:20 is 16:36: early by no second. */
		due.utc += MINUTE_S - 1;
		plan_caution(m,
		    message_with(M_COACH_CAUTION_GAP, WHOLE(r->hours_apart),
			TIME(moment_minute(due))));
	}
}

static void of_week(struct making *m)
{
	const struct history *h = m->history;
	int today = m->plan->day, days = 0, last = NEVER;

	for (int i = 0; i < h->sittings; i++) {
		const struct past_sitting *s = &h->sitting[i];

		if (!history_sat(s) || s->day >= today ||
		    s->day <= today - WEEK_DAYS || s->day == last)
			continue;
		last = s->day;
		days++;
	}
	if (days > 0 && days >= m->routine->days_a_week)
		plan_caution(m,
		    message_with(M_COACH_CAUTION_DAY_OFF, WHOLE(days),
			WHOLE(WEEK_DAYS - 1), WHOLE(m->routine->days_a_week)));
}

void plan_cautions(struct making *m)
{
	of_health(m);
	first_run(m);
	if (m->plan->verdict != VERDICT_PRACTISE)
		return;
	plan_caution(m, plan_before_start(m->history));
	if (m->where.away >= AWAY_LONG)
		plan_caution(m, message_of(M_COACH_CAUTION_LOWER));
	of_sessions(m);
	of_week(m);
	plan_guard_cautions(m);
}
