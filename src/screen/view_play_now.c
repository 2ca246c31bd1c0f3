/*
 * view_play_now.c - what is going on at the frame that is heard
 *
 * The session has reached the frame that is being made; the ear is a few
 * milliseconds behind it.  So the passage's own times are asked, not the
 * session's phase:
 *
 *	| settle | count-in | bow 0 | bow 1 | change | bow 0 | ...
 *	                          ▲ heard  ▲ session
 *
 * Just before a passage is heard, the change that it follows is still going
 * on; that one is over for the session, and shown as used up.
 */
#include <string.h>

#include "evenhand/base/frames.h"
#include "view_play.h"

enum { STEPS_A_SECOND = 20 };

static int64_t frames(const struct session *s, int64_t ms)
{
	return s->at.frame + frames_of_ms(ms, s->rate);
}

/* --- what comes --- */

/* Index into plan.turn of a turn of the passage under way. */
static int plan_index(const struct session *s, int turn)
{
	const struct plan_block *b = &s->plan.block[s->at.from.block];
	int i = b->first_turn;

	while (i < b->first_turn + b->turns &&
	    s->plan.turn[i].round < s->at.from.round)
		i++;
	return i + s->at.from.turn + turn;
}

static int unit_of(const struct session *s, int turn)
{
	return s->plan.turn[plan_index(s, turn)].unit;
}

static void comes_turn(const struct session *s, struct now *n, int turn)
{
	n->coming = COMING_TURN;
	n->next_block = s->at.from.block;
	n->next_unit = unit_of(s, turn);
}

static void comes_block(const struct session *s, struct now *n, int block)
{
	n->coming = COMING_BLOCK;
	n->next_block = block;
	n->next_unit = s->plan.turn[s->plan.block[block].first_turn].unit;
}

/* What follows a turn of the passage. */
static void find_coming(const struct session *s, struct now *n, int turn)
{
	const struct plan_block *b = &s->plan.block[s->at.from.block];
	bool last = turn == s->at.passage.turns - 1;

	n->coming = COMING_END;
	n->next_block = n->next_unit = -1;
	if (!last) {
		comes_turn(s, n, turn + 1);
		return;
	}
	if (s->at.cut_turns > 0 || s->next_none)
		return;
	if (plan_index(s, turn) + 1 < b->first_turn + b->turns)
		comes_turn(s, n, turn + 1);
	else if (s->at.from.block + 1 < s->plan.blocks)
		comes_block(s, n, s->at.from.block + 1);
}

/* --- marks --- */

/* As the session itself takes them: one turn, or all of its round. */
static void find_marked(const struct session *s, struct marked *m)
{
	*m = (struct marked) { 0 };
	if (s->played == 0)
		return;

	const struct played_turn *last = &s->turn_played[s->played - 1];

	m->to = s->played;
	m->from = m->to - 1;
	while (s->plan.marking == MARKING_ROUND && m->from > 0 &&
	    s->turn_played[m->from - 1].block == last->block &&
	    s->turn_played[m->from - 1].round == last->round)
		m->from--;
	for (int i = m->from; i < m->to; i++) {
		const struct played_turn *t = &s->turn_played[i];

		m->whole += t->whole;
		m->clean += t->mark == MARK_CLEAN;
		m->shaky += t->mark == MARK_SHAKY;
	}
}

/* --- where the passage is --- */

static void at_lead(const struct session *s, int64_t heard, struct now *n)
{
	const struct passage *p = &s->at.passage;

	n->from = s->at.frame;
	n->until = frames(s, passage_lead_ms(p));
	n->unit = unit_of(s, 0);
	comes_turn(s, n, 0);
	n->going = GOING_SETTLE;
	if (p->count_in_bows == 0 || heard < frames(s, p->settle_ms))
		return;
	n->going = GOING_COUNT;
	n->bows = p->count_in_bows;
	while (n->bow + 1 < n->bows &&
	    heard >=
		frames(s, p->settle_ms + (n->bow + 1) * (int64_t)p->bow_ms))
		n->bow++;
}

static void at_bow(
    const struct session *s, int turn, int64_t heard, struct now *n)
{
	const struct passage *p = &s->at.passage;
	int64_t start = passage_turn_ms(p, turn);

	n->going = GOING_BOW;
	n->unit = unit_of(s, turn);
	n->bows = p->bows_each;
	while (n->bow + 1 < n->bows &&
	    heard >= frames(s, start + (n->bow + 1) * (int64_t)p->bow_ms))
		n->bow++;
	n->from = frames(s, start + n->bow * (int64_t)p->bow_ms);
	n->until = frames(s, start + (n->bow + 1) * (int64_t)p->bow_ms);
	find_coming(s, n, turn);
}

static void at_change(const struct session *s, int turn, struct now *n)
{
	const struct passage *p = &s->at.passage;
	bool last = turn == p->turns - 1;

	n->going = GOING_CHANGE;
	n->unit = unit_of(s, turn);
	n->from = frames(s, passage_bows_end_ms(p, turn));
	n->until = frames(
	    s, last ? passage_ms(p) : passage_turn_ms(p, turn + 1));
	n->asks = s->plan.marking == MARKING_TURN || last;
	find_coming(s, n, turn);
}

/* A passage without a lead-in, before it is heard: the change before it. */
static void at_edge(const struct session *s, struct now *n)
{
	n->going = GOING_CHANGE;
	n->from = n->until = s->at.frame;
	n->unit = s->played ? s->turn_played[s->played - 1].unit : -1;
	n->asks = true;
	comes_turn(s, n, 0);
}

/* Which part of the passage a frame lies in. */
static void find_part(const struct session *s, int64_t heard, struct now *n)
{
	const struct passage *p = &s->at.passage;
	int turn = 0;

	if (passage_lead_ms(p) == 0 && heard < s->at.frame) {
		at_edge(s, n);
		return;
	}
	if (heard < frames(s, passage_lead_ms(p))) {
		at_lead(s, heard, n);
		return;
	}
	while (turn + 1 < p->turns &&
	    heard >= frames(s, passage_turn_ms(p, turn + 1)))
		turn++;
	if (heard < frames(s, passage_bows_end_ms(p, turn)))
		at_bow(s, turn, heard, n);
	else
		at_change(s, turn, n);
}

/* --- evenly in time --- */

/*
 * Frame of a step of a stretch of ms: the rule of pulses, so that a step that
 * falls on a pulse is at its very frame.
 */
static int64_t step_frame(int64_t ms, int rate, int64_t step, int64_t steps)
{
	return (2 * step * ms * rate + 1000 * steps) / (2000 * steps);
}

/* Of which stretch the steps are: of a bow, or what remains of a change. */
static int64_t stretch_ms(const struct view *v, const struct now *n)
{
	const struct passage *p = &v->session->at.passage;
	int64_t length = n->until - n->from;

	if (n->going == GOING_BOW)
		return p->bow_ms;
	return frames_to_ms(length, v->session->rate);
}

int now_steps(const struct view *v, const struct now *n, int most)
{
	int64_t ms = stretch_ms(v, n);
	int pulses = n->pulses > 0 ? n->pulses : 1;
	int64_t steps = ms * STEPS_A_SECOND / 1000;

	if (steps > most)
		steps = most;
	return steps < pulses ? pulses : (int)(steps / pulses) * pulses;
}

int now_step(const struct view *v, const struct now *n, int steps)
{
	int64_t ms = stretch_ms(v, n), gone = v->heard - n->from;
	int step = 0;

	if (ms <= 0)
		return steps;
	while (step < steps &&
	    step_frame(ms, v->session->rate, step + 1, steps) <= gone)
		step++;
	return step;
}

int64_t now_step_change(const struct view *v, const struct now *n, int steps)
{
	int64_t ms = stretch_ms(v, n);
	int step = now_step(v, n, steps);

	if (ms <= 0 || step >= steps)
		return n->until;
	return n->from + step_frame(ms, v->session->rate, step + 1, steps);
}

/* --- all of it --- */

/* Pulses of this bow or count-in; in the air its bow lengths are counted. */
static void find_pulse(const struct view *v, struct now *n)
{
	const struct passage *p = &v->session->at.passage;
	int64_t start = n->from;

	if (n->going != GOING_BOW && n->going != GOING_COUNT)
		return;
	if (n->air) {
		/* One bow of count-in is not counted. */
		n->pulses = n->bows > 1 ? n->bows : 0;
		n->pulse = n->bow + 1;
		return;
	}
	if (n->going == GOING_COUNT)
		start = frames(
		    v->session, p->settle_ms + n->bow * (int64_t)p->bow_ms);
	n->pulses = p->pulses;
	n->still = p->pulses > 0 && p->bow_ms / p->pulses < PULSE_SHOWN_MS;
	for (n->pulse = p->pulses > 0; n->pulse < n->pulses; n->pulse++)
		if (start +
			step_frame(
			    p->bow_ms, v->session->rate, n->pulse, n->pulses) >
		    v->heard)
			break;
}

void now_of(const struct view *v, struct now *n)
{
	const struct session *s = v->session;

	*n = (struct now) { .block = s->at.from.block };
	find_part(s, v->heard, n);
	n->air = s->plan.block[n->block].kind == BLOCK_AIR;
	n->late = n->going != GOING_CHANGE && v->heard < s->late_until;
	find_marked(s, &n->marked);
	find_pulse(v, n);
}

static int64_t sooner(int64_t a, int64_t b)
{
	return a < b ? a : b;
}

/* When the next pulse of a bow or count-in is shown. */
static int64_t pulse_change(const struct view *v, const struct now *n)
{
	const struct passage *p = &v->session->at.passage;
	int64_t start = n->from;

	if (n->going == GOING_COUNT)
		start = frames(
		    v->session, p->settle_ms + n->bow * (int64_t)p->bow_ms);
	/* Pulses that are too quick are not shown, and need no drawing. */
	if (n->air || n->pulses == 0 || n->still)
		return start + frames_of_ms(p->bow_ms, v->session->rate);
	return start +
	    step_frame(p->bow_ms, v->session->rate, n->pulse, n->pulses);
}

int64_t now_change(const struct view *v, const struct now *n)
{
	const struct session *s = v->session;
	int64_t next = n->until;

	if (n->late)
		next = sooner(next, s->late_until);
	if (n->going == GOING_SETTLE) {
		next = sooner(next, frames(s, s->at.passage.settle_ms));
		if (v->heard < s->at.frame)
			next = sooner(next, s->at.frame);
	}
	if (n->going == GOING_BOW || n->going == GOING_COUNT)
		next = sooner(next, pulse_change(v, n));
	return next;
}
