/*
 * plan_alone.c - one stage alone, of what today allows
 *
 * Today's plan says whether the stage may be worked on at all, where it begins
 * and how long a session may be: what it leaves out for pain, for days away or
 * for a full week is not let in by another door.  Then one block is laid out
 * anew, in the teacher's order, because who plays elsewhere counts nothing.
 */
#include <string.h>

#include "plan_parts.h"

/* The block of the work; NULL when today holds none of this stage. */
static const struct plan_block *work_of(const struct plan *p, int stage)
{
	enum block_kind kind;

	for (int i = 0; i < p->blocks; i++) {
		kind = p->block[i].kind;
		if (p->block[i].stage == stage && kind != BLOCK_RECAP &&
		    p->work_stage == stage)
			return &p->block[i];
	}
	return NULL;
}

/* Rounds, or swings, that go under the cap; at most what a block can hold. */
static int most_rounds(const struct making *m)
{
	const struct routine *r = m->routine;
	int units = m->in_the_air ? 1 : r->units;
	int round = m->in_the_air ? routine_air_ms(r) - routine_lead_ms(r)
				  : routine_round_ms(r);
	int most = (m->plan->cap_ms - m->lead_ms) / round;

	return most < EQUAL_TURNS_MAX / units ? most : EQUAL_TURNS_MAX / units;
}

static void lay_out(struct making *m, int rounds)
{
	struct plan *p = m->plan;

	p->blocks = p->turns = p->bows = p->length_ms = 0;
	memset(p->block, 0, sizeof(p->block));
	memset(p->turn, 0, sizeof(p->turn));
	memset(p->share, 0, sizeof(p->share));
	if (m->in_the_air)
		m->swings = rounds;
	else
		m->rounds = rounds;
	plan_layout(m);
}

bool plan_alone(struct plan *p, const struct plan_wish *w, int pulses,
    int rounds, int *most)
{
	struct making m = { .plan = p, .wish = w, .routine = w->routine };
	const struct plan_block *b;

	plan_make(p, w);
	*most = 0;
	m.stage = m.air_stage = w->stage > 0 ? w->stage - 1 : p->work_stage;
	b = work_of(p, m.stage);
	if (p->verdict != VERDICT_PRACTISE || !b)
		return false;
	m.in_the_air = w->routine->stage[m.stage].in_the_air;
	m.lead_ms = routine_lead_ms(w->routine);
	m.pulses = m.in_the_air ? 0 : pulses > 0 ? pulses : b->pulses;
	*most = most_rounds(&m);
	rounds = rounds > 0 ? rounds : b->rounds;
	if (rounds > *most)
		return false;
	lay_out(&m, rounds);
	return p->blocks > 0;
}
