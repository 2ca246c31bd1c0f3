/*
 * plan.c - today's session, decided part by part
 *
 * The plan is cleared to zero first and then only set field by field, so that
 * the same input gives the same bytes, gaps between fields too.
 */
#include "evenhand/coach/plan.h"

#include <assert.h>
#include <string.h>

#include "plan_parts.h"

static void look(struct making *m)
{
	struct plan *p = m->plan;
	const struct plan_wish *w = m->wish;

	memset(p, 0, sizeof(*p));
	p->marking = w->marking;
	p->now.utc = w->now.utc;
	p->now.offset = w->now.offset;
	p->day = moment_practice_day(w->now);
	p->work_stage = m->stage;
	p->where = m->where;
	m->in_the_air = m->routine->stage[m->stage].in_the_air;
}

/* Which stages have no first go yet today, and the how-manieth day it is. */
static void look_back(struct making *m)
{
	struct plan *p = m->plan;
	const struct routine *r = m->routine;
	bool counted = history_worked_on(m->history, r, m->stage, p->day);

	for (int i = 0; i < r->stages; i++)
		if (!history_gone_on(m->history, r, i, p->day))
			p->first_go |= UINT32_C(1) << i;
	standing_of(&p->standing, r, m->history, m->stage, p->day, NULL);
	p->day_on_stage = p->standing.days + !counted;
}

static void fill(struct making *m)
{
	plan_cap(m);
	plan_guard_part(m);
	plan_candidates(m);
	plan_fit(m);
	plan_choose(m);
	plan_rung(m);
	plan_guard_rung(m);
	plan_ledger(m);
	plan_load(m);
	plan_layout(m);
}

static void make(struct making *m)
{
	look(m);
	look_back(m);
	plan_health(m);
	plan_guard(m);
	if (m->plan->verdict == VERDICT_PRACTISE) {
		fill(m);
		plan_reasons(m);
		if (m->plan->blocks == 0)
			m->plan->verdict = VERDICT_REST_TODAY;
	} else {
		plan_rest_reasons(m);
	}
	plan_cautions(m);
}

/*
 * Another stage for today, as if the file had asked for it.  Where the student
 * was moved back, that holds: no later one then.
 */
static void wish_stage(struct where *w, const struct plan_wish *wish)
{
	int stage = wish->stage - 1;

	if (stage < 0 || stage == w->at ||
	    stage > wish->routine->no_further_than ||
	    (w->at < w->asked && stage > w->at))
		return;
	w->asked = w->at = stage;
	w->why = WHERE_FILE;
	w->lowest = w->lowest || w->recap_only;
	w->recap_only = false;
}

void plan_make(struct plan *p, const struct plan_wish *w)
{
	struct making m = { .plan = p,
		.wish = w,
		.routine = w->routine,
		.history = w->history };

	where_on(&m.where, w->routine, w->history, moment_practice_day(w->now));
	wish_stage(&m.where, w);
	m.stage = m.where.at;
	make(&m);
}

static void make_dry(struct plan *p, const struct routine *r, int stage,
    const struct history *before)
{
	const struct plan_wish wish = { .routine = r,
		.history = before,
		.now = {
		    .utc = DAY_TURNS_AT + before->sittings * DAY_SECONDS } };
	struct making m = { .plan = p,
		.wish = &wish,
		.routine = r,
		.history = before,
		.where = { .asked = stage, .at = stage, .percent = 100 },
		.stage = stage };

	make(&m);
}

/* A plan as the sitting it becomes when all of it is played. */
static struct past_sitting played(const struct plan *p, const struct routine *r)
{
	struct past_sitting s = { .key = p->day,
		.day = p->day,
		.began = p->now,
		.length_ms = p->length_ms,
		.cap_ms = p->cap_ms,
		.ended = ENDED_WHOLE };

	memcpy(s.work_stage, r->stage[p->work_stage].id, ID_MAX);
	for (int b = 0; b < p->blocks && b < SEEN_MAX; b++) {
		memcpy(s.seen[b], r->stage[p->block[b].stage].id, ID_MAX);
		s.recap[b] = p->block[b].kind == BLOCK_RECAP;
		s.blocks++;
	}
	return s;
}

void plan_dry(struct plan *p, const struct routine *r, int stage, int earlier)
{
	struct past_sitting past[PLAN_DRY_MAX];
	struct history before = { .sitting = past };

	assert(earlier <= PLAN_DRY_MAX);
	make_dry(p, r, stage, &before);
	while (before.sittings < earlier) {
		past[before.sittings++] = played(p, r);
		make_dry(p, r, stage, &before);
	}
}
