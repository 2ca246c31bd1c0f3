/*
 * plan_layout.c - blocks and turns at their times
 *
 * Everything before this counted as if no finger were hurt.  Here the hurt
 * ones' turns are left out, and what comes after moves forward.  The order is
 * then worked out anew among those who are left, because leaving out turns
 * alone would let a finger play twice running.
 */
#include <string.h>

#include "plan_parts.h"

/* The units left, and a value of each. */
struct left {
	int units;
	int unit[UNITS_MAX];
	int ledger[UNITS_MAX];
	int share[UNITS_MAX];
};

int plan_change_ms(const struct routine *r, enum marking m, int turn, int turns)
{
	const int second = 1000;

	if (m == MARKING_TURN)
		return r->change_ms;
	if (turn < turns - 1)
		return r->change_ms - second;
	return r->change_ms + (turns - 1) * second;
}

static struct plan_block *block_begin(
    struct making *m, enum block_kind kind, int stage, int pulses)
{
	struct plan *p = m->plan;
	struct plan_block *b = &p->block[p->blocks++];

	b->kind = kind;
	b->stage = stage;
	b->pulses = pulses;
	b->start_ms = p->length_ms;
	b->first_turn = p->turns;
	p->length_ms += m->lead_ms;
	b->end_ms = p->length_ms;
	return b;
}

/* One round: these units, or one swing when there are none. */
static void add_round(
    struct making *m, struct plan_block *b, const int *unit, int turns)
{
	const struct routine *r = m->routine;
	struct plan *p = m->plan;

	for (int i = 0; i < turns; i++) {
		struct plan_turn *t = &p->turn[p->turns++];
		int bows = unit ? r->bows_each : AIR_SWING_BOWS;

		t->unit = (int16_t)(unit ? unit[i] : -1);
		t->round = (int16_t)b->rounds;
		t->start_ms = p->length_ms;
		p->length_ms += bows * r->bow_ms +
		    plan_change_ms(r, p->marking, i, turns);
		p->bows += unit ? bows : 0;
	}
	b->rounds++;
	b->turns += turns;
	b->end_ms = p->length_ms;
}

/* One that is left of several would play without a rest, so it rests too. */
static struct left units_left(const struct making *m)
{
	struct left l = { 0 };

	for (int u = 0; u < m->routine->units; u++) {
		if (plan_is_hurt(m, u))
			continue;
		l.unit[l.units] = u;
		l.ledger[l.units] = m->ledger[u];
		l.share[l.units] = m->plan->share[u];
		l.units++;
	}
	if (l.units == 1 && m->routine->units > 1)
		l.units = 0;
	return l;
}

static int sum(const int *value, int count)
{
	int all = 0;

	for (int i = 0; i < count; i++)
		all += value[i];
	return all;
}

static int largest(const int *value, int count)
{
	int at = 0;

	for (int i = 1; i < count; i++)
		if (value[i] > value[at])
			at = i;
	return at;
}

/*
 * With a finger out, one of the others may have more turns than those between
 * can keep apart: two units alternate, equal, and of more no one gets more
 * than all the rest.
 */
static void keep_apart(struct left *l)
{
	while (l->units > 1) {
		int u = largest(l->share, l->units);
		int others = sum(l->share, l->units) - l->share[u];

		if (l->share[u] <= others)
			return;
		l->share[u]--;
	}
}

static void work_block(struct making *m)
{
	struct plan *p = m->plan;
	int units = m->routine->units;
	int order[EQUAL_TURNS_MAX];

	equal_share(m->rounds * units, units, m->ledger, p->share);
	struct left l = units_left(m);

	if (l.units < units)
		keep_apart(&l);
	memcpy(p->dropped, p->share, sizeof(p->dropped));
	for (int i = 0; i < l.units; i++)
		p->dropped[l.unit[i]] -= l.share[i];
	int turns = sum(l.share, l.units);

	if (turns == 0)
		return;
	equal_order(turns, l.units, l.ledger, l.share, order);
	for (int i = 0; i < turns; i++)
		order[i] = l.unit[order[i]];

	struct plan_block *b = block_begin(m, BLOCK_WORK, m->stage, m->pulses);

	for (int i = 0; i < turns; i += l.units)
		add_round(
		    m, b, &order[i], turns - i < l.units ? turns - i : l.units);
}

static void recap_blocks(struct making *m)
{
	struct left l = units_left(m);

	if (l.units == 0)
		return;
	for (int i = 0; i < m->candidates; i++) {
		const struct recap *c = &m->recap[i];

		if (c->chosen)
			add_round(m,
			    block_begin(m, BLOCK_RECAP, c->stage, c->pulses),
			    l.unit, l.units);
	}
}

static void air_block(struct making *m)
{
	if (m->swings == 0)
		return;
	struct plan_block *b = block_begin(m, BLOCK_AIR, m->air_stage, 0);

	for (int i = 0; i < m->swings; i++)
		add_round(m, b, NULL, 1);
}

void plan_layout(struct making *m)
{
	air_block(m);
	recap_blocks(m);
	if (m->rounds > 0)
		work_block(m);
}
