/*
 * past.c - a history that grows as a journal would
 *
 * It keeps what the journal gives back: roll-ups for ever, single turns and
 * shares for four weeks and for the last sitting.
 */
#include <stdlib.h>
#include <string.h>

#include "simulate.h"

enum { SITTINGS, TURNS, TALLIES, SHARES, NOTES };

static void *grown(struct past *p, int list, void *at, int count, size_t size)
{
	if (count < p->room[list])
		return at;
	p->room[list] = 2 * count + 64;
	at = realloc(at, (size_t)p->room[list] * size);
	if (!at)
		abort();
	return at;
}

#define GROW(p, list, name, count) \
	((p)->h.name = grown( \
	     p, list, (p)->h.name, (p)->h.count, sizeof(*(p)->h.name)), \
	    memset(&(p)->h.name[(p)->h.count], 0, sizeof(*(p)->h.name)), \
	    &(p)->h.name[(p)->h.count++])

void past_init(struct past *p)
{
	memset(p, 0, sizeof(*p));
}

void past_done(struct past *p)
{
	free(p->h.sitting);
	free(p->h.turn);
	free(p->h.tally);
	free(p->h.share);
	free(p->h.note);
	past_init(p);
}

static void name(char *to, size_t size, const char *from)
{
	snprintf(to, size, "%s", from);
}

void past_note(struct past *p, int day, enum note_kind kind, int finger)
{
	struct past_note *n = GROW(p, NOTES, note, notes);

	n->sitting = p->h.sittings;
	n->day = day;
	n->kind = kind;
	n->finger = finger;
	n->words = "";
}

static void share(
    struct past *p, const struct plan *plan, const struct routine *r, int unit)
{
	struct past_share *s = GROW(p, SHARES, share, shares);

	s->sitting = p->h.sittings;
	name(s->stage, sizeof(s->stage), r->stage[plan->work_stage].id);
	name(s->unit, sizeof(s->unit), r->unit[unit].name);
	s->planned = plan->share[unit];
	s->dropped = plan->dropped[unit];
}

void past_sit(struct past *p, const struct plan *plan, const struct routine *r)
{
	struct past_sitting *s = GROW(p, SITTINGS, sitting, sittings);

	s->key = p->h.sittings;
	s->day = plan->day;
	s->began = plan->now;
	s->cap_ms = plan->cap_ms;
	name(s->work_stage, sizeof(s->work_stage),
	    r->stage[plan->work_stage].id);
	name(s->asked_stage, sizeof(s->asked_stage),
	    r->stage[plan->where.asked].id);
	p->first_turn = p->h.turns;
	for (int u = 0; u < r->units; u++)
		if (plan->share[u] > 0)
			share(p, plan, r, u);
}

static void see(struct past_sitting *s, const char *stage, bool recap)
{
	for (int i = 0; i < s->blocks; i++)
		if (strcmp(s->seen[i], stage) == 0)
			return;
	if (s->blocks == SEEN_MAX)
		return;
	s->recap[s->blocks] = recap;
	name(s->seen[s->blocks], sizeof(s->seen[0]), stage);
	s->blocks++;
}

static struct tally *tally_of(struct past *p, const struct past_turn *t)
{
	for (int i = p->h.tallies - 1; i >= 0; i--) {
		struct tally *y = &p->h.tally[i];

		if (y->day != t->day)
			break;
		if (y->kind == t->kind && strcmp(y->stage, t->stage) == 0 &&
		    strcmp(y->unit, t->unit) == 0)
			return y;
	}
	struct tally *y = GROW(p, TALLIES, tally, tallies);

	y->day = t->day;
	y->kind = t->kind;
	name(y->stage, sizeof(y->stage), t->stage);
	name(y->unit, sizeof(y->unit), t->unit);
	return y;
}

static void count_share(struct past *p, const struct past_turn *t)
{
	for (int i = p->h.shares - 1; i >= 0; i--) {
		struct past_share *s = &p->h.share[i];

		if (s->sitting != t->sitting)
			return;
		s->played += strcmp(s->unit, t->unit) == 0;
	}
}

void past_turn(
    struct past *p, const struct turn_row *row, const struct routine *r)
{
	struct past_sitting *s = &p->h.sitting[p->h.sittings - 1];
	struct past_turn *t = GROW(p, TURNS, turn, turns);
	struct tally *y;

	t->sitting = s->key;
	t->day = s->day;
	t->kind = row->kind;
	name(t->stage, sizeof(t->stage), r->stage[row->stage].id);
	if (row->unit >= 0)
		name(t->unit, sizeof(t->unit), r->unit[row->unit].name);
	t->round = row->round;
	t->pulses = row->pulses;
	t->bows_asked = row->bows_asked;
	t->bows_done = row->bows_done;
	t->first_go = row->first_go;
	t->resets = row->resets;
	see(s, t->stage, t->kind == BLOCK_RECAP);
	y = tally_of(p, t);
	y->turns += t->bows_done == t->bows_asked;
	y->bows += t->bows_done;
	y->pulses += t->bows_done * t->pulses;
	y->slide_um += row->slide_um;
	y->resets += t->resets;
	if (t->first_go)
		y->first_go_pulses = t->pulses;
	if (t->kind == BLOCK_WORK && t->bows_done == t->bows_asked)
		count_share(p, t);
}

void past_mark(struct past *p, int number, enum mark mark)
{
	struct past_turn *t = &p->h.turn[p->first_turn + number];
	struct tally *y = tally_of(p, t);

	y->clean += (mark == MARK_CLEAN) - (t->mark == MARK_CLEAN);
	y->shaky += (mark == MARK_SHAKY) - (t->mark == MARK_SHAKY);
	t->mark = mark;
	if (t->first_go)
		y->first_go = mark;
}

void past_end(struct past *p, enum ended ended, int64_t length_ms)
{
	struct past_sitting *s = &p->h.sitting[p->h.sittings - 1];

	s->ended = ended;
	s->length_ms = (int)length_ms;
	s->ended_utc = s->began.utc + length_ms / 1000;
}

void past_forget(struct past *p, int day)
{
	struct history *h = &p->h;
	int64_t last = h->sittings ? h->sitting[h->sittings - 1].key : 0;
	int turns = 0, shares = 0;

	while (turns < h->turns && h->turn[turns].sitting != last &&
	    h->turn[turns].day <= day - HISTORY_TURN_DAYS)
		turns++;
	while (shares < h->shares && h->share[shares].sitting != last &&
	    h->sitting[h->share[shares].sitting - 1].day <=
		day - HISTORY_TURN_DAYS)
		shares++;
	h->turns -= turns;
	h->shares -= shares;
	if (turns > 0)
		memmove(h->turn, h->turn + turns,
		    (size_t)h->turns * sizeof(*h->turn));
	if (shares > 0)
		memmove(h->share, h->share + shares,
		    (size_t)h->shares * sizeof(*h->share));
}
