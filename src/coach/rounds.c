/*
 * rounds.c - the rounds of a stage as they were marked, newest first
 *
 * Turns of one round lie together in the history.  A round is all clean when
 * every unit that was to play did so to its last bow and was marked clean; an
 * unmarked turn is no clean turn, and a round that was cut off is not whole.
 * A turn that a sleeping computer broke off counts by its replay.
 */
#include <string.h>

#include "plan_parts.h"

static bool same_round(const struct past_turn *a, const struct past_turn *b)
{
	return a->sitting == b->sitting && a->kind == b->kind &&
	    a->round == b->round && strcmp(a->stage, b->stage) == 0;
}

/* Units that were to play in a sitting: all but the hurt ones. */
static int units_then(const struct round_walk *w, int64_t sitting)
{
	const struct history *h = w->history;
	int planned = 0, playing = 0;

	for (int i = h->shares - 1; i >= 0; i--) {
		const struct past_share *s = &h->share[i];

		if (s->sitting != sitting || s->planned <= 0)
			continue;
		planned++;
		playing += s->planned > s->dropped;
	}
	return planned > 0 ? playing : w->routine->units;
}

static bool is_clean(const struct past_turn *t)
{
	return t->mark == MARK_CLEAN && t->bows_done >= t->bows_asked;
}

/* Whether a turn was broken off and then played again as a whole. */
static bool made_good(const struct history *h, int broken)
{
	const struct past_turn *t = &h->turn[broken];

	if (t->bows_done >= t->bows_asked)
		return false;
	for (int i = broken + 1; i < h->turns && same_round(&h->turn[i], t);
	     i++)
		if (strcmp(h->turn[i].unit, t->unit) == 0 &&
		    h->turn[i].bows_done >= h->turn[i].bows_asked)
			return true;
	return false;
}

bool round_before(struct round_walk *w, struct round_seen *out)
{
	const struct past_turn *turn = w->history->turn;
	int i = w->at - 1, turns = 0, clean = 0;

	while (i >= 0 && !history_is_stage(w->routine, w->stage, turn[i].stage))
		i--;
	w->at = i;
	if (i < 0)
		return false;

	const struct past_turn *last = &turn[i];

	out->shaky = 0;
	for (; i >= 0 && same_round(&turn[i], last); i--) {
		if (made_good(w->history, i))
			continue;
		turns++;
		clean += is_clean(&turn[i]);
		out->shaky += turn[i].mark == MARK_SHAKY;
	}
	w->at = i + 1;
	out->day = last->day;
	out->pulses = last->pulses;
	out->work = last->kind == BLOCK_WORK;
	out->all_clean = clean == turns &&
	    turns >= units_then(w, last->sitting);
	return true;
}
