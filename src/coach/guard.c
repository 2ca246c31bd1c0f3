/*
 * guard.c - signs of hurry in the last seven days
 */
#include "evenhand/coach/guard.h"

#include <string.h>

enum { HOUR_S = 3600 };

static bool in_window(int day, int today)
{
	int64_t ago = (int64_t)today - day;

	return ago >= 0 && ago < GUARD_DAYS;
}

/* Whether it was over because somebody wanted it, not the computer. */
static bool ended_by_hand(const struct past_sitting *s)
{
	return s->ended != ENDED_UNDER_WAY && s->ended != ENDED_INPUT &&
	    s->ended != ENDED_NO_KEY;
}

/* A clock that was set back makes no sign. */
static bool was_early(const struct past_sitting *s,
    const struct past_sitting *before, int hours_apart)
{
	int64_t gap = s->began.utc - history_end(before);

	return ended_by_hand(before) && gap >= 0 &&
	    gap < (int64_t)hours_apart * HOUR_S;
}

static void count_sittings(struct guard *g, const struct routine *r,
    const struct history *h, int today)
{
	const struct past_sitting *before = NULL;
	int on_day = 0;

	for (int i = 0; i < h->sittings; i++) {
		const struct past_sitting *s = &h->sitting[i];

		if (!history_sat(s))
			continue;
		on_day = before && before->day == s->day ? on_day + 1 : 1;
		if (in_window(s->day, today)) {
			g->beyond += on_day > r->per_day;
			g->early += before &&
			    was_early(s, before, r->hours_apart);
		}
		before = s;
	}
}

static void count_notes(struct guard *g, const struct history *h, int today)
{
	bool asked[GUARD_DAYS] = { false };

	for (int i = 0; i < h->notes; i++)
		if (h->note[i].kind == NOTE_LATER &&
		    in_window(h->note[i].day, today))
			asked[today - h->note[i].day] = true;
	for (int d = 0; d < GUARD_DAYS; d++)
		g->later += asked[d];
}

/*
 * A turn marked clean that was listened to, and in none of its bows every top
 * was heard.
 */
static bool unheard(const struct past_turn *t)
{
	return t->mark == MARK_CLEAN && t->bows_listened > 0 &&
	    t->bows_full == 0;
}

/* Turns are kept for longer than the days that are looked at. */
static void count_unheard(struct guard *g, const struct history *h, int today)
{
	int turns[GUARD_DAYS] = { 0 };

	for (int i = 0; i < h->turns; i++)
		if (in_window(h->turn[i].day, today) && unheard(&h->turn[i]))
			turns[today - h->turn[i].day]++;
	for (int d = 0; d < GUARD_DAYS; d++)
		g->unheard += turns[d] >= GUARD_UNHEARD;
}

void guard_of(struct guard *out, const struct routine *r,
    const struct history *h, int stage, int today)
{
	memset(out, 0, sizeof(*out));
	count_sittings(out, r, h, today);
	count_notes(out, h, today);
	count_unheard(out, h, today);
	out->signs = out->early + out->beyond +
	    GUARD_LATER_COUNTS * out->later + (out->unheard > 0);
	out->needed = r->stage[stage].patience ? GUARD_SIGNS_PATIENCE
					       : GUARD_SIGNS;
	out->hurried = out->signs >= out->needed;
}
