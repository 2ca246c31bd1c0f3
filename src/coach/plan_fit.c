/*
 * plan_fit.c - how much goes under the cap (rule F2)
 *
 * The air first.  Then recaps, a round each, while they and the air take no
 * more than their part of the cap.  Then as many rounds of work as fit in
 * what is left, and at least one, or a recap gives way:
 *
 *	C 300, L 8, R 48: air 28 + 2 x 56 = 140 of 150 for recap
 *	                  (300 - 140 - 8) / 48 = 3 rounds, done at 292
 *
 * What is left over stays empty.
 *
 * One more recap costs a lead-in too, so just below the cap where it fits
 * there may be room for more rounds in all than just above.  A shorter
 * session must never hold more turns than a longer one, so each also keeps
 * to what the longer ones get.
 */
#include "plan_parts.h"

static int smaller(int a, int b)
{
	return a < b ? a : b;
}

void plan_cap(struct making *m)
{
	const struct routine *r = m->routine;
	const struct stage *s = &r->stage[m->stage];
	int first = history_first_day_on(m->history, r, m->stage);
	int cap = s->minutes_ms ? s->minutes_ms : r->cap_ms;
	int percent = m->where.percent;

	m->file_cap_ms = cap;
	m->new_stage = first == NEVER ||
	    (int64_t)m->plan->day - first < NEW_STAGE_DAYS;
	if (m->new_stage)
		cap = smaller(cap, NEW_STAGE_CAP_MS);
	if (m->easing)
		percent = smaller(percent, EASE_PERCENT);
	cap = (int)((int64_t)cap * percent / 100);
	m->plan->cap_ms = cap;
	/* Where nothing else is played, earlier stages may take it all. */
	m->recap_num = m->where.recap_only ? 1 : r->recap_num;
	m->recap_den = m->where.recap_only ? 1 : r->recap_den;
	m->lead_ms = routine_lead_ms(r);
	m->round_ms = routine_round_ms(r);
}

/* What goes under a cap. */
struct fit {
	int recaps, rounds;
};

static int recap_ms(const struct making *m)
{
	return m->lead_ms + m->round_ms;
}

static int most_rounds(const struct making *m)
{
	return EQUAL_TURNS_MAX / m->routine->units;
}

/* The plain rule, whatever longer sessions would hold. */
static struct fit fit_under(const struct making *m, int64_t cap, int most)
{
	struct fit f = { 0, 0 };
	int64_t used = m->air_ms;

	while (f.recaps < most &&
	    (used + recap_ms(m)) * m->recap_den <= cap * m->recap_num &&
	    used + recap_ms(m) <= cap) {
		used += recap_ms(m);
		f.recaps++;
	}
	if (m->no_work)
		return f;
	while (f.recaps > 0 && used + recap_ms(m) > cap) {
		used -= recap_ms(m);
		f.recaps--;
	}
	if (used + recap_ms(m) <= cap) {
		int64_t n = (cap - used - m->lead_ms) / m->round_ms;

		f.rounds = n < most_rounds(m) ? (int)n : most_rounds(m);
	}
	return f;
}

static int rounds_in_all(const struct making *m, int64_t cap, int most)
{
	struct fit f = fit_under(m, cap, most);

	return f.recaps + f.rounds;
}

/* The fewest rounds that any session from this cap on holds. */
static int longer_hold(const struct making *m, int most)
{
	int64_t cap = m->plan->cap_ms;
	int least = rounds_in_all(m, cap, most);

	for (int j = 1; j <= most; j++) {
		int64_t used = m->air_ms + (int64_t)j * recap_ms(m);
		/* Where the j-th recap comes in, by either of its limits. */
		int64_t by_part = (used * m->recap_den + m->recap_num - 1) /
		    m->recap_num;
		int64_t by_work = used + recap_ms(m);

		if (by_part > cap)
			least = smaller(least, rounds_in_all(m, by_part, most));
		if (by_work > cap)
			least = smaller(least, rounds_in_all(m, by_work, most));
	}
	return least;
}

/* The air stage that goes before the work. */
static int first_air(const struct making *m)
{
	for (int i = 0; i < m->stage; i++)
		if (m->routine->stage[i].in_the_air)
			return i;
	/* Sore elsewhere: the arm may swing whatever the stage. */
	if (m->plan->air_only)
		for (int i = 0; i < m->routine->stages; i++)
			if (m->routine->stage[i].in_the_air)
				return i;
	return NEVER;
}

static void fit_air(struct making *m)
{
	const struct routine *r = m->routine;
	int swing = AIR_SWING_BOWS * r->bow_ms + r->change_ms;

	if (m->in_the_air) {
		m->air_stage = m->stage;
		m->swings = (m->plan->cap_ms - m->lead_ms) / swing;
		m->swings = smaller(m->swings, EQUAL_TURNS_MAX);
		if (m->swings < 0)
			m->swings = 0;
	} else {
		m->air_stage = first_air(m);
		m->swings = m->air_stage != NEVER;
	}
	m->air_ms = m->swings > 0 ? m->lead_ms + m->swings * swing : 0;
	/* Its time stays taken, or a shorter session could hold more. */
	if (m->air_ms > m->plan->cap_ms)
		m->swings = 0;
}

void plan_fit(struct making *m)
{
	/* One block stays for the air and one for the work. */
	int most = smaller(m->candidates, PLAN_BLOCKS_MAX - 2);

	fit_air(m);
	if (m->in_the_air || m->plan->air_only)
		return;
	if (m->recap_num <= 0)
		most = 0;
	m->recaps_fit = fit_under(m, m->plan->cap_ms, most).recaps;
	m->rounds = longer_hold(m, most) - m->recaps_fit;
	if (m->no_work || m->rounds < 0)
		m->rounds = 0;
}
