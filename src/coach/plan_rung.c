/*
 * plan_rung.c - the rung that work and recaps begin at (rule F3)
 *
 * Work goes on at the rung of the last round when that was all clean, one
 * lower when a turn of it was shaky.  A round that nobody marked, or that was
 * cut off, is not all clean, but nothing falls for it either.  A new stage
 * begins where the teacher says, or one below the top.  After pain all is on
 * the lowest rung, and days without practice cost one rung or all of them.
 *
 * A recap is played at the rung at which it was last clean.
 */
#include "plan_parts.h"

static void rung_after(struct making *m, const struct round_seen *last)
{
	m->rung_was = last->pulses;
	if (last->all_clean) {
		m->rung_why = RUNG_CLEAN;
		m->pulses = rung_fit(m->routine, last->pulses);
		m->plan->clean_rounds = m->pulses == last->pulses;
	} else if (last->shaky > 0) {
		m->rung_why = RUNG_LOWER;
		m->pulses = rung_lower(m->routine, last->pulses);
	} else {
		m->rung_why = RUNG_KEPT;
		m->pulses = rung_fit(m->routine, last->pulses);
	}
}

/*
 * The first go of the last day, from the roll-ups: what is left when the
 * turns of a stage are too long ago to be kept one by one.
 */
static bool first_go_long_ago(const struct making *m, struct round_seen *out)
{
	const struct history *h = m->history;
	int day = NEVER, clean = 0;

	*out = (struct round_seen) { .work = true };
	for (int i = h->tallies - 1; i >= 0; i--) {
		const struct tally *t = &h->tally[i];

		if (t->kind != BLOCK_WORK || t->first_go_pulses <= 0 ||
		    !history_is_stage(m->routine, m->stage, t->stage))
			continue;
		if (day != NEVER && t->day != day)
			break;
		day = t->day;
		out->pulses = t->first_go_pulses;
		clean += t->first_go == MARK_CLEAN;
		out->shaky += t->first_go == MARK_SHAKY;
	}
	out->all_clean = clean >= m->routine->units;
	return day != NEVER;
}

/*
 * On a slower day the rung went down behind a clean round, for the rest of the
 * day: it is that round's rung which counts.  Where it went down by rule F3 the
 * round before was shaky.
 */
static void undo_slower_day(struct round_walk w, struct round_seen *last)
{
	struct round_seen before;

	while (round_before(&w, &before) && before.day == last->day &&
	    before.work) {
		if (before.pulses == last->pulses)
			continue;
		if (before.pulses > last->pulses && before.all_clean)
			last->pulses = before.pulses;
		return;
	}
}

static bool last_work_round(const struct making *m, struct round_seen *out)
{
	struct round_walk w = { m->history, m->routine, m->stage,
		m->history->turns };

	while (round_before(&w, out))
		if (out->work && out->pulses > 0) {
			undo_slower_day(w, out);
			return true;
		}
	return first_go_long_ago(m, out);
}

static void work_rung(struct making *m)
{
	struct round_seen last;

	if (m->rounds == 0) {
		m->rung_why = RUNG_NONE;
		return;
	}
	if (last_work_round(m, &last)) {
		rung_after(m, &last);
	} else {
		m->rung_why = RUNG_NEW;
		m->pulses = rung_fit(
		    m->routine, routine_start_pulses(m->routine, m->stage));
	}
	if (m->easing)
		m->plan->climbed = true; /* none is gained in these days */
	if (m->easing || m->where.lowest) {
		m->rung_why = m->easing ? RUNG_EASED : RUNG_AWAY;
		m->pulses = m->routine->ladder[0];
		m->plan->clean_rounds = 0;
	} else if (m->where.lower) {
		m->rung_why = RUNG_SHORT_AWAY;
		m->pulses = rung_lower(m->routine, m->pulses);
		m->plan->clean_rounds = 0;
	}
}

/* The newest roll-up of a day on which every first go was clean. */
static int long_ago_clean(const struct making *m, int stage)
{
	const struct history *h = m->history;
	int day = NEVER, clean = 0;

	for (int i = h->tallies - 1; i >= 0; i--) {
		const struct tally *t = &h->tally[i];

		if (t->first_go_pulses <= 0 ||
		    !history_is_stage(m->routine, stage, t->stage))
			continue;
		if (t->day != day)
			clean = 0;
		day = t->day;
		clean += t->first_go == MARK_CLEAN;
		if (clean >= m->routine->units)
			return t->first_go_pulses;
	}
	return 0;
}

static int last_clean(const struct making *m, int stage)
{
	struct round_walk w = { m->history, m->routine, stage,
		m->history->turns };
	struct round_seen seen;

	while (round_before(&w, &seen))
		if (seen.all_clean && seen.pulses > 0)
			return seen.pulses;
	return long_ago_clean(m, stage);
}

static void recap_rung(struct making *m, struct recap *c)
{
	const struct routine *r = m->routine;
	int pulses = last_clean(m, c->stage);

	c->was_clean = pulses > 0;
	c->usual = rung_fit(
	    r, c->was_clean ? pulses : routine_start_pulses(r, c->stage));
	c->pulses = c->usual;
	if (m->easing ||
	    (m->where.recap_only && plan_is_wide(&r->stage[c->stage])))
		c->pulses = r->ladder[0];
	else if (m->where.lower)
		c->pulses = rung_lower(r, c->pulses);
}

void plan_rung(struct making *m)
{
	work_rung(m);
	for (int i = 0; i < m->candidates; i++)
		if (m->recap[i].chosen)
			recap_rung(m, &m->recap[i]);
}
