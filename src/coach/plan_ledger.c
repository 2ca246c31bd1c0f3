/*
 * plan_ledger.c - what each finger has had before today (rule F1)
 *
 * make_up: interrupted looks at this week's sittings one by one.  What a
 * cut-off sitting left out is missed; a later sitting that gave a unit more
 * than the others pays it back.  What a hurt finger dropped is missed by
 * nobody, and neither is what a stop for pain left out: pain is no
 * interruption to be made up.  A whole sitting counts as even.
 *
 *	planned 3 3 3 3, played 2 2 1 1: missed 1 1 2 2, that is 0 0 1 1
 *
 * make_up: catch_up counts every turn of work of four weeks and what the
 * teacher typed in.  It waits while a stage wider than a tone is new, and
 * after anything that hurt; missed turns are made up meanwhile.
 */
#include <string.h>

#include "plan_parts.h"

/* More turns than anyone plays in a sitting, or in four weeks. */
enum { SAT_MAX = 1000, COUNTED_MAX = 1000000 };

/* A journal is a file, and may hold any number. */
static int within(int value, int most)
{
	if (value < 0)
		return 0;
	return value < most ? value : most;
}

/* One sitting's work turns, unit by unit. */
struct sat_work {
	int planned[UNITS_MAX], left[UNITS_MAX];
	bool any;
};

static void work_of(const struct making *m, int64_t key, struct sat_work *w)
{
	const struct history *h = m->history;

	memset(w, 0, sizeof(*w));
	for (int i = 0; i < h->shares; i++) {
		const struct past_share *s = &h->share[i];
		int unit = s->sitting == key ? routine_unit(m->routine, s->unit)
					     : -1;

		if (unit < 0)
			continue;
		int planned = within(s->planned, SAT_MAX);
		int left = planned - within(s->dropped, SAT_MAX) -
		    within(s->played, SAT_MAX);

		w->any = true;
		w->planned[unit] = within(w->planned[unit] + planned, SAT_MAX);
		w->left[unit] = within(w->left[unit] + left, SAT_MAX);
	}
}

static int least_of(const int *value, int count)
{
	int least = value[0];

	for (int i = 1; i < count; i++)
		if (value[i] < least)
			least = value[i];
	return least;
}

static bool cut_off(const struct past_sitting *s)
{
	return s->ended != ENDED_WHOLE && s->ended != ENDED_PAIN;
}

/* One more sitting over what was missed until then. */
static void miss(struct making *m, const struct past_sitting *s)
{
	struct sat_work w;
	int units = m->routine->units, *missed = m->counted;

	work_of(m, s->key, &w);
	if (!w.any)
		return;
	int least = least_of(w.planned, units);

	for (int u = 0; u < units; u++) {
		missed[u] -= w.planned[u] - least;
		if (missed[u] < 0)
			missed[u] = 0;
		if (cut_off(s))
			missed[u] = within(missed[u] + w.left[u], SAT_MAX);
	}
	least = least_of(missed, units);
	for (int u = 0; u < units; u++)
		missed[u] -= least;
}

static void count_missed(struct making *m)
{
	int today = m->plan->day;

	for (int i = 0; i < m->history->sittings; i++) {
		const struct past_sitting *s = &m->history->sitting[i];

		if (s->day > today - WEEK_DAYS && s->day <= today)
			miss(m, s);
	}
	for (int u = 0; u < m->routine->units; u++)
		m->ledger[u] = -m->counted[u];
}

static void count_all(struct making *m)
{
	const struct routine *r = m->routine;
	int today = m->plan->day;

	for (int u = 0; u < r->units && r->so_far_given; u++)
		m->counted[u] = within(r->so_far[u], COUNTED_MAX);
	for (int i = 0; i < m->history->tallies; i++) {
		const struct tally *t = &m->history->tally[i];
		int unit;

		if (t->kind != BLOCK_WORK || t->day > today ||
		    t->day <= today - CATCH_UP_DAYS)
			continue;
		unit = routine_unit(r, t->unit);
		if (unit >= 0)
			m->counted[unit] = within(
			    m->counted[unit] + within(t->turns, COUNTED_MAX),
			    COUNTED_MAX);
	}
	memcpy(m->ledger, m->counted, sizeof(m->ledger));
}

/* Anything that hurt in the time catch_up looks back on. */
static bool hurt_lately(const struct making *m)
{
	int today = m->plan->day;

	for (int i = 0; i < m->history->notes; i++) {
		const struct past_note *n = &m->history->note[i];
		int day = plan_note_day(n, today);

		if (history_hurts(n) && day <= today &&
		    day > today - CATCH_UP_DAYS)
			return true;
	}
	return m->plan->hurt != 0;
}

static enum past past_of(const struct making *m)
{
	switch (m->routine->make_up) {
	case MAKE_UP_NONE:
		return PAST_NONE;
	case MAKE_UP_CATCH_UP:
		if (m->new_stage && plan_is_wide(&m->routine->stage[m->stage]))
			return PAST_NEW_WIDE;
		return hurt_lately(m) ? PAST_NOTED : PAST_ALL;
	case MAKE_UP_INTERRUPTED:
		break;
	}
	return PAST_MISSED;
}

void plan_ledger(struct making *m)
{
	m->past = past_of(m);
	if (m->past == PAST_ALL)
		count_all(m);
	else if (m->past != PAST_NONE)
		count_missed(m);
}
