/*
 * plan_health.c - what pain, skin and soreness allow today
 *
 * Pain today: nothing more before the day turns.  Two pain days within a
 * fortnight: nothing until the routine says that someone was asked.  For
 * three days after pain: a shorter session, the lowest rung, nothing wide.
 */
#include "plan_parts.h"

bool plan_is_wide(const struct stage *s)
{
	return !s->in_the_air && s->travel_cents > WIDE_CENTS;
}

static bool finger_hurt(const struct plan *p, int finger)
{
	return finger >= 1 && finger <= FINGERS_MAX && (p->hurt >> finger & 1);
}

bool plan_is_hurt(const struct making *m, int unit)
{
	const struct unit *u = &m->routine->unit[unit];

	if (m->routine->take == TAKE_STRINGS)
		return false;
	return finger_hurt(m->plan, u->from) || finger_hurt(m->plan, u->to);
}

/* A journal is a file, and may hold any number for a day. */
static int64_t days_between(int day, int later)
{
	return (int64_t)later - day;
}

/*
 * Also where a clock that was set back, or a flight, put the later one on an
 * earlier date.
 */
bool plan_pain_came_back(const struct history *h)
{
	int last = NEVER;

	for (int i = 0; i < h->notes; i++) {
		const struct past_note *n = &h->note[i];

		if (n->kind != NOTE_PAIN)
			continue;
		if (last != NEVER && n->day != last &&
		    days_between(last, n->day) < PAIN_WINDOW_DAYS &&
		    days_between(n->day, last) < PAIN_WINDOW_DAYS)
			return true;
		last = n->day;
	}
	return false;
}

/*
 * The day of a note.  One dated a day ahead comes from a zone further east, or
 * from before a clock was put right: it hurt all the same, so it is today's.
 */
int plan_note_day(const struct past_note *n, int today)
{
	return days_between(today, n->day) == 1 ? today : n->day;
}

/* The day of the last pain up to today. */
static int last_pain(const struct history *h, int today)
{
	int last = NEVER;

	for (int i = 0; i < h->notes; i++) {
		int day = plan_note_day(&h->note[i], today);

		if (h->note[i].kind == NOTE_PAIN && day <= today && day > last)
			last = day;
	}
	return last;
}

/* What was noted earlier today still holds: nothing heals in hours. */
static void earlier_today(struct making *m)
{
	for (int i = 0; i < m->history->notes; i++) {
		const struct past_note *n = &m->history->note[i];

		if (plan_note_day(n, m->plan->day) != m->plan->day)
			continue;
		if (n->kind == NOTE_SKIN && n->finger >= 1 &&
		    n->finger <= FINGERS_MAX)
			m->plan->hurt |= UINT32_C(1) << n->finger;
		if (n->kind == NOTE_SORE)
			m->plan->air_only = true;
	}
}

void plan_health(struct making *m)
{
	struct plan *p = m->plan;

	p->hurt = m->wish->hurt & ((UINT32_C(2) << FINGERS_MAX) - 2);
	p->air_only = m->wish->air_only;
	earlier_today(m);
	m->pain_day = last_pain(m->history, p->day);
	if (!m->routine->seen && plan_pain_came_back(m->history))
		p->verdict = VERDICT_ASK_FIRST;
	else if (m->pain_day != NEVER && m->pain_day == p->day)
		p->verdict = VERDICT_REST_TODAY;
	m->easing = m->pain_day != NEVER &&
	    days_between(m->pain_day, p->day) <= EASE_DAYS;
	m->no_work = m->where.recap_only ||
	    (m->easing && plan_is_wide(&m->routine->stage[m->stage]));
}
