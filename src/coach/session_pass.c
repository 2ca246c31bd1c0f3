/*
 * session_pass.c - one passage from a place in the plan, under the cap
 *
 * A passage holds a round from some turn on.  No turn starts that cannot
 * finish with its change before the cap is over, so the round is cut at a
 * turn if it must be; the mark still has its time after the last one:
 *
 *	turn 0 │ 3 s │ turn 1 │ 3 s │ turn 2 │ 7 s          whole round
 *	turn 0 │ 3 s │ turn 1 │ 5 s ┊ cap                   cut to two
 */
#include "session_parts.h"

/* Turns of a round, and the first of them in the plan. */
static int round_turns(const struct plan *p, int block, int round, int *first)
{
	const struct plan_block *b = &p->block[block];
	int turns = 0;

	*first = b->first_turn;
	for (int i = b->first_turn; i < b->first_turn + b->turns; i++) {
		if (p->turn[i].round != round)
			continue;
		if (turns++ == 0)
			*first = i;
	}
	return turns < UNITS_MAX ? turns : UNITS_MAX;
}

struct place pass_settle(const struct plan *p, struct place at)
{
	int first;

	while (at.block < p->blocks &&
	    at.turn >= round_turns(p, at.block, at.round, &first)) {
		at.turn = 0;
		at.round++;
		if (at.round >= p->block[at.block].rounds) {
			at.round = 0;
			at.block++;
		}
	}
	return at;
}

const struct plan_turn *pass_turn(const struct plan *p, struct place at)
{
	int first;

	round_turns(p, at.block, at.round, &first);
	return &p->turn[first + at.turn];
}

/* Soft notes before a turn: as many as tell who comes. */
static int notes(const struct session *s, int unit)
{
	const struct routine *r = s->wish.routine;

	if (unit < 0)
		return 0;
	int count = r->take == TAKE_STRINGS ? unit + 1 : r->unit[unit].to;

	return count < FINGER_NOTES_MAX ? count : FINGER_NOTES_MAX;
}

static int bows_before(const struct session *s, int block)
{
	int bows = 0;

	for (int i = 0; i < s->played; i++)
		if (s->turn_played[i].block == block)
			bows += s->turn_played[i].bows_done;
	return bows;
}

/* The passage's shape, without its turns. */
static void shape(const struct session *s, enum lead lead, struct passing *p)
{
	const struct routine *r = s->wish.routine;
	const struct plan_block *b = &s->plan.block[p->from.block];
	struct passage *a = &p->passage;
	bool air = pass_turn(&s->plan, p->from)->unit < 0;

	a->bow_ms = r->bow_ms;
	a->pulses = p->pulses;
	a->bows_each = air ? AIR_SWING_BOWS : r->bows_each;
	if (lead == LEAD_FULL)
		a->settle_ms = SETTLE_MS;
	if (lead != LEAD_NONE)
		a->count_in_bows = r->count_in_bows;
	/* After a silence something must tell when to begin. */
	if (lead == LEAD_COUNT && a->count_in_bows == 0)
		a->count_in_bows = 1;
	a->fade_after = air ? 0 : r->stage[b->stage].fade_after;
	a->bows_before = bows_before(s, p->from.block);
}

/* Takes so many turns; marks have their time after the last of them. */
static void take_turns(const struct session *s, struct passing *p, int turns)
{
	const struct routine *r = s->wish.routine;
	struct place at = p->from;
	int total = p->from.turn + turns;

	p->passage.turns = turns;
	for (int i = 0; i < turns; i++, at.turn++)
		p->passage.unit[i] = notes(s, pass_turn(&s->plan, at)->unit);
	p->passage.change_ms = turns > 1
	    ? plan_change_ms(r, s->plan.marking, p->from.turn, total)
	    : 0;
	p->passage.last_change_ms = plan_change_ms(
	    r, s->plan.marking, total - 1, total);
}

static bool fits(const struct session *s, const struct passing *p)
{
	int64_t end = p->frame + session_frames(s, passage_ms(&p->passage));

	return end <= s->first_sound + session_frames(s, s->plan.cap_ms);
}

/* The finger that the last change tells of, if its round may still come. */
static int coming(const struct session *s, const struct passing *p)
{
	struct place after = p->from;
	struct passing next = *p;

	after.turn += p->passage.turns;
	after = pass_settle(&s->plan, after);
	if (p->cut_turns > 0 || after.block != p->from.block)
		return 0;
	next.from = after;
	next.passage.settle_ms = next.passage.count_in_bows = 0;
	next.start_ms += passage_ms(&p->passage);
	next.frame = s->origin + session_frames(s, next.start_ms);
	take_turns(s, &next, 1);
	return fits(s, &next) ? next.passage.unit[0] : 0;
}

bool pass_make(const struct session *s, struct place from, enum lead lead,
    int64_t start_ms, int pulses, struct passing *out)
{
	struct passing p = {
		.from = from,
		.pulses = pulses,
		.start_ms = start_ms,
		.frame = s->origin + session_frames(s, start_ms),
	};
	int first;
	int left = round_turns(&s->plan, from.block, from.round, &first) -
	    from.turn;

	shape(s, lead, &p);
	for (int turns = left; turns > 0; turns--) {
		take_turns(s, &p, turns);
		p.cut_turns = left - turns;
		if (!fits(s, &p))
			continue;
		p.passage.coming = coming(s, &p);
		*out = p;
		return true;
	}
	return false;
}
