/*
 * session_standing.c - how the stage stands after what was just played
 *
 * The history ends before this sitting, so what it adds is laid over it.
 */
#include "evenhand/coach/standing.h"
#include "session_parts.h"

static bool is_work(const struct session *s, const struct played_turn *t)
{
	const struct plan_block *b = &s->plan.block[t->block];

	return b->stage == s->plan.work_stage && b->kind != BLOCK_RECAP;
}

static void add_turn(struct fresh *f, const struct played_turn *t)
{
	int unit = t->unit < 0 ? 0 : t->unit;
	uint32_t bit = UINT32_C(1) << unit;

	f->worked = true;
	f->bows[unit] += t->bows_done;
	f->bows_listened += t->heard.bows;
	f->bows_full += t->heard.bows_full;
	if (!t->first_go)
		return;
	f->marked = true;
	if (t->mark == MARK_CLEAN)
		f->first_go.clean |= bit;
	else if (t->mark == MARK_SHAKY)
		f->first_go.shaky |= bit;
	if (f->first_go.pulses == 0 || t->pulses < f->first_go.pulses)
		f->first_go.pulses = t->pulses;
}

struct message session_standing(const struct session *s)
{
	const struct plan *p = &s->plan;
	struct fresh f = { .first_go = { .day = p->day } };
	struct standing now;

	if (s->pain || p->where.at < p->where.asked || !s->wish.history)
		return message_of(M_NONE);
	for (int i = 0; i < s->played; i++)
		if (is_work(s, &s->turn_played[i]))
			add_turn(&f, &s->turn_played[i]);
	if (!f.worked)
		return message_of(M_NONE);
	f.hurt = p->hurt != 0 || p->air_only;
	standing_of(
	    &now, s->wish.routine, s->wish.history, p->work_stage, p->day, &f);
	return standing_message(s->wish.routine, &now);
}
