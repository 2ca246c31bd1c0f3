/*
 * plan_recap.c - which earlier stages come back today (rule F2)
 *
 * In this order of need: not seen for three sessions or more, the longest of
 * them first; shaky last time; seen longest ago; brought back least often;
 * first in the programme.
 * How many fit is already known; they are played in programme order.
 */
#include <assert.h>

#include "plan_parts.h"

/* What the sittings say: how long unseen, and how often brought back. */
static void count_sittings(struct making *m, int *last)
{
	const struct history *h = m->history;
	int sat = 0;

	for (int i = h->sittings - 1; i >= 0; i--) {
		const struct past_sitting *s = &h->sitting[i];

		if (!history_sat_here(s))
			continue;
		for (int j = 0; j < s->blocks && j < SEEN_MAX; j++) {
			int stage = history_stage(m->routine, s->seen[j]);

			if (stage == -1)
				continue;
			if (last[stage] == NEVER) {
				last[stage] = i;
				m->recap[stage].unseen = sat;
			}
			m->recap[stage].times += s->recap[j];
		}
		sat++;
	}
	for (int i = 0; i < m->routine->stages; i++)
		if (last[i] == NEVER)
			m->recap[i].unseen = sat;
}

/* The teacher's own marks of that day or later count over the student's. */
static const struct lesson_mark *lesson_since(
    const struct making *m, int stage, int day)
{
	const struct lesson_mark *found = NULL;

	for (int i = 0; i < m->routine->lesson_marks; i++) {
		const struct lesson_mark *l = &m->routine->lesson_mark[i];

		if (l->stage == stage && l->day >= day &&
		    l->day <= m->plan->day && (!found || l->day >= found->day))
			found = l;
	}
	return found;
}

static bool shaky_in(const struct making *m, int stage, int sitting)
{
	const struct history *h = m->history;
	const struct past_sitting *s = &h->sitting[sitting];
	bool kept = false;

	for (int i = h->turns - 1; i >= 0; i--) {
		const struct past_turn *t = &h->turn[i];

		if (t->sitting != s->key ||
		    !history_is_stage(m->routine, stage, t->stage))
			continue;
		kept = true;
		if (t->mark == MARK_SHAKY)
			return true;
	}
	for (int i = h->tallies - 1; i >= 0 && !kept; i--)
		if (h->tally[i].day == s->day && h->tally[i].shaky > 0 &&
		    history_is_stage(m->routine, stage, h->tally[i].stage))
			return true;
	return false;
}

static bool shaky_last_time(const struct making *m, int stage, int sitting)
{
	const struct lesson_mark *l = lesson_since(
	    m, stage, sitting == NEVER ? 0 : m->history->sitting[sitting].day);

	if (l)
		return l->shaky != 0;
	return sitting != NEVER && shaky_in(m, stage, sitting);
}

static bool may_come_back(const struct making *m, int stage)
{
	const struct stage *s = &m->routine->stage[stage];

	return !s->in_the_air && !(m->easing && plan_is_wide(s));
}

void plan_candidates(struct making *m)
{
	int last[STAGES_MAX];

	for (int i = 0; i < STAGES_MAX; i++)
		last[i] = NEVER;
	count_sittings(m, last);
	m->candidates = 0;
	for (int i = 0; i < m->stage && !m->in_the_air; i++) {
		struct recap *c = &m->recap[m->candidates];

		if (!may_come_back(m, i))
			continue;
		*c = m->recap[i];
		c->stage = i;
		c->shaky = shaky_last_time(m, i, last[i]);
		m->candidates++;
	}
}

static bool needs_more(const struct recap *a, const struct recap *b)
{
	bool long_a = a->unseen >= UNSEEN_LONG;
	bool long_b = b->unseen >= UNSEEN_LONG;

	if (long_a != long_b)
		return long_a;
	/* Or a few that are always shaky would keep all others away. */
	if (long_a && a->unseen != b->unseen)
		return a->unseen > b->unseen;
	if (a->shaky != b->shaky)
		return a->shaky;
	if (a->unseen != b->unseen)
		return a->unseen > b->unseen;
	if (a->times != b->times)
		return a->times < b->times;
	return a->stage < b->stage;
}

void plan_choose(struct making *m)
{
	for (int n = 0; n < m->recaps_fit; n++) {
		struct recap *best = NULL;

		for (int i = 0; i < m->candidates; i++) {
			struct recap *c = &m->recap[i];

			if (!c->chosen && (!best || needs_more(c, best)))
				best = c;
		}
		assert(best); /* no more fit than there are */
		best->chosen = true;
	}
}
