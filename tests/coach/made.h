/*
 * made.h - a routine and a past made in memory, for tests of the coach
 *
 *	struct routine r = programme_cello(TONE);
 *	struct past *past = past_new();
 *	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
 */
#ifndef EVENHAND_TESTS_MADE_H
#define EVENHAND_TESTS_MADE_H

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/coach/history.h"
#include "evenhand/coach/plan.h"
#include "evenhand/routine/routine.h"
#include "programme.h"

enum {
	PLAY_ALL = 100000,
	MANY_SITTINGS = 400,
	MANY_TURNS = 20000,
	MANY_TALLIES = 10000,
	MANY_SHARES = 4000,
	MANY_NOTES = 40,
	DAY_S = 86400,
	FIRST_DAY = 20514, /* 2026-03-02 */
};

static inline struct moment made_moment(int day, int hour)
{
	return (struct moment) { (int64_t)day * DAY_S + hour * 3600, 0 };
}

/* A past that can grow. */
struct past {
	struct history h;
	struct past_sitting sitting[MANY_SITTINGS];
	struct past_turn turn[MANY_TURNS];
	struct tally tally[MANY_TALLIES];
	struct past_share share[MANY_SHARES];
	struct past_note note[MANY_NOTES];
};

static inline struct past *past_new(void)
{
	struct past *p = calloc(1, sizeof(*p));

	assert(p);
	p->h.sitting = p->sitting;
	p->h.turn = p->turn;
	p->h.tally = p->tally;
	p->h.share = p->share;
	p->h.note = p->note;
	return p;
}

static inline void past_note(
    struct past *p, int day, enum note_kind kind, int finger)
{
	assert(p->h.notes < MANY_NOTES);
	p->note[p->h.notes++] = (struct past_note) { .sitting = p->h.sittings,
		.day = day,
		.kind = kind,
		.finger = finger,
		.words = "" };
}

static inline struct past_sitting *past_sit(
    struct past *p, struct moment began, const char *work, enum ended ended)
{
	assert(p->h.sittings < MANY_SITTINGS);
	struct past_sitting *s = &p->sitting[p->h.sittings++];

	s->key = p->h.sittings;
	s->day = moment_practice_day(began);
	s->began = began;
	s->ended = ended;
	strcpy(s->work_stage, work);
	return s;
}

static inline void past_see(
    struct past_sitting *s, const char *stage, bool recap)
{
	for (int i = 0; i < s->blocks; i++)
		if (strcmp(s->seen[i], stage) == 0)
			return;
	if (s->blocks == SEEN_MAX)
		return;
	s->recap[s->blocks] = recap;
	strcpy(s->seen[s->blocks++], stage);
}

static inline struct tally *past_tally(
    struct past *p, const struct past_turn *t)
{
	for (int i = p->h.tallies - 1; i >= 0; i--) {
		struct tally *y = &p->tally[i];

		if (y->day != t->day)
			break;
		if (y->kind == t->kind && strcmp(y->stage, t->stage) == 0 &&
		    strcmp(y->unit, t->unit) == 0)
			return y;
	}
	assert(p->h.tallies < MANY_TALLIES);
	struct tally *y = &p->tally[p->h.tallies++];

	y->day = t->day;
	y->kind = t->kind;
	strcpy(y->stage, t->stage);
	strcpy(y->unit, t->unit);
	return y;
}

/* One turn of the last sitting, with its roll-up. */
static inline void past_turn(struct past *p, enum block_kind kind,
    const char *stage, const char *unit, int round, int pulses, enum mark mark,
    bool first_go)
{
	assert(p->h.turns < MANY_TURNS && p->h.sittings > 0);
	struct past_sitting *s = &p->sitting[p->h.sittings - 1];
	struct past_turn *t = &p->turn[p->h.turns++];

	t->sitting = s->key;
	t->day = s->day;
	t->kind = kind;
	strcpy(t->stage, stage);
	strcpy(t->unit, unit);
	t->round = round;
	t->pulses = pulses;
	t->bows_asked = t->bows_done = kind == BLOCK_AIR ? 0 : 2;
	t->mark = mark;
	t->first_go = first_go;
	past_see(s, stage, kind == BLOCK_RECAP);

	struct tally *y = past_tally(p, t);

	y->turns++;
	y->bows += t->bows_done;
	y->clean += mark == MARK_CLEAN;
	y->shaky += mark == MARK_SHAKY;
	if (first_go) {
		y->first_go = mark;
		y->first_go_pulses = pulses;
	}
}

/* A loose swing a day and nothing else, so that nobody was away. */
static inline void past_swing(struct past *p, int from, int to)
{
	for (int day = from; day <= to; day++) {
		past_sit(p, made_moment(day, 17), "air", ENDED_WHOLE);
		past_turn(p, BLOCK_AIR, "air", "", 0, 0, MARK_CLEAN, true);
	}
}

static inline void past_shares(struct past *p, const struct routine *r,
    const struct plan *plan, const int *played)
{
	for (int u = 0; u < r->units; u++) {
		if (plan->share[u] == 0)
			continue;
		assert(p->h.shares < MANY_SHARES);
		struct past_share *s = &p->share[p->h.shares++];

		s->sitting = p->h.sittings;
		strcpy(s->stage, r->stage[plan->work_stage].id);
		strcpy(s->unit, r->unit[u].name);
		s->planned = plan->share[u];
		s->dropped = plan->dropped[u];
		s->played = played[u];
	}
}

/* How a turn went. */
typedef enum mark mark_maker(void *context, int stage, int unit, int round);

static inline enum mark all_clean(void *context, int stage, int unit, int round)
{
	(void)context, (void)stage, (void)unit, (void)round;
	return MARK_CLEAN;
}

/* What the last turn of a past has slid, into its roll-up. */
static inline void past_slide(struct past *p, const struct routine *r,
    const struct plan_block *b, int unit)
{
	struct tally *y = past_tally(p, &p->turn[p->h.turns - 1]);

	if (unit < 0)
		return;
	y->pulses += r->bows_each * b->pulses;
	y->slide_um +=
	    (int64_t)(routine_turn_m(r, b->stage, unit, b->pulses) * 1e6 + 0.5);
}

/*
 * Plays a plan up to so many turns of its work.  The rung of a block stays as
 * it began.
 */
static inline void past_play(struct past *p, const struct routine *r,
    const struct plan *plan, mark_maker *mark, void *context, int work_turns,
    enum ended ended)
{
	int played[UNITS_MAX] = { 0 };
	struct past_sitting *sat = past_sit(
	    p, plan->now, r->stage[plan->work_stage].id, ended);

	sat->length_ms = plan->length_ms;
	strcpy(sat->asked_stage, r->stage[plan->where.asked].id);
	for (int b = 0; b < plan->blocks; b++) {
		const struct plan_block *k = &plan->block[b];

		for (int i = 0; i < k->turns; i++) {
			const struct plan_turn *t =
			    &plan->turn[k->first_turn + i];

			if (k->kind == BLOCK_WORK && work_turns-- <= 0)
				break;
			past_turn(p, k->kind, r->stage[k->stage].id,
			    t->unit < 0 ? "" : r->unit[t->unit].name, t->round,
			    k->pulses,
			    mark(context, k->stage, t->unit, t->round),
			    t->round == 0 && (plan->first_go >> k->stage & 1));
			past_slide(p, r, k, t->unit);
			if (k->kind == BLOCK_WORK)
				played[t->unit]++;
		}
	}
	past_shares(p, r, plan, played);
}

static inline void made_plan(struct plan *plan, const struct routine *r,
    const struct past *past, struct moment now)
{
	const struct history nothing = { 0 };
	struct plan_wish w = { .routine = r,
		.history = past ? &past->h : &nothing,
		.now = now,
		.marking = MARKING_TURN };

	plan_make(plan, &w);
}

static inline const struct plan_block *made_work(const struct plan *plan)
{
	const struct plan_block *last = plan->blocks
	    ? &plan->block[plan->blocks - 1]
	    : NULL;

	return last && last->kind == BLOCK_WORK ? last : NULL;
}

static inline bool made_reason(const struct plan *plan, enum message_id id)
{
	for (int i = 0; i < plan->reasons; i++)
		if (plan->reason[i].message.id == id)
			return true;
	return false;
}

static inline bool made_caution(const struct plan *plan, enum message_id id)
{
	for (int i = 0; i < plan->cautions; i++)
		if (plan->caution[i].id == id)
			return true;
	return false;
}

#endif
