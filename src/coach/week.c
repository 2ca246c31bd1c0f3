/*
 * week.c - what the last seven practice days come to
 */
#include "evenhand/coach/week.h"

#include <string.h>

/* The place of a day in the week, or -1. */
static int place(const struct week *w, int day)
{
	int64_t at = (int64_t)day - w->first;

	return at >= 0 && at < WEEK_DAYS ? (int)at : -1;
}

static void count_end(struct week *w, enum ended ended)
{
	w->whole += ended == ENDED_WHOLE || ended == ENDED_CAP;
	w->early += ended == ENDED_EARLY || ended == ENDED_NO_KEY;
	w->cut += ended == ENDED_UNDER_WAY || ended == ENDED_INPUT;
	w->pain += ended == ENDED_PAIN;
}

static void count_sittings(struct week *w, const struct history *h)
{
	bool sat[WEEK_DAYS] = { false };

	for (int i = 0; i < h->sittings; i++) {
		const struct past_sitting *s = &h->sitting[i];
		int at = place(w, s->day);

		if (at < 0 || !history_sat(s))
			continue;
		w->sessions++;
		w->days += !sat[at];
		sat[at] = true;
		count_end(w, s->ended);
		if (s->length_ms > 0)
			w->ms_of[at] += s->length_ms;
	}
	for (int i = 0; i < WEEK_DAYS; i++) {
		w->ms += w->ms_of[i];
		if (w->ms_of[i] > w->ms_most)
			w->ms_most = w->ms_of[i];
	}
}

static void count_turns(
    struct week *w, const struct routine *r, const struct history *h)
{
	for (int i = 0; i < h->tallies; i++) {
		const struct tally *t = &h->tally[i];
		int unit = routine_unit(r, t->unit);

		if (place(w, t->day) < 0 || history_elsewhere(t->stage))
			continue;
		w->resets += t->resets > 0 ? t->resets : 0;
		w->bows_listened += t->bows_listened > 0 ? t->bows_listened : 0;
		w->bows_full += t->bows_full > 0 ? t->bows_full : 0;
		if (unit < 0)
			continue;
		w->bows[unit] += t->bows > 0 ? t->bows : 0;
		w->resets_of[unit] += t->resets > 0 ? t->resets : 0;
	}
}

static void count_notes(struct week *w, const struct history *h)
{
	for (int i = 0; i < h->notes; i++) {
		const struct past_note *n = &h->note[i];

		if (place(w, n->day) < 0)
			continue;
		if (history_hurts(n)) {
			w->sore++;
			w->sore_day = n->day;
		} else if (n->kind == NOTE_QUESTION && n->words && *n->words) {
			w->asks = n->words;
		}
	}
}

static void count_goes(
    struct week *w, const struct routine *r, const struct history *h, int stage)
{
	for (int i = 0; i < WEEK_DAYS; i++) {
		w->gone[i] = first_go_on(h, r, stage, w->first + i, &w->go[i]);
		if (!w->gone[i])
			continue;
		w->goes++;
		w->goes_clean += first_go_clean(r, stage, &w->go[i]);
		for (int u = 0; u < standing_units(r, stage); u++)
			w->shaky[u] += (w->go[i].shaky >> u & 1) != 0;
	}
}

/* --- earlier stages that come back --- */

/* The last days, up to one, on which a stage came back, latest first. */
static int returns(const struct routine *r, const struct history *h, int stage,
    int today, int *day)
{
	int count = 0;

	for (int before = today + 1; count < RETURNS; count++) {
		int last = -1;

		for (int i = 0; i < h->tallies; i++) {
			const struct tally *t = &h->tally[i];

			if (t->kind == BLOCK_RECAP && t->day < before &&
			    t->day > last && t->first_go != MARK_NONE &&
			    history_is_stage(r, stage, t->stage))
				last = t->day;
		}
		if (last < 0)
			break;
		day[count] = before = last;
	}
	return count;
}

static bool was_shaky(
    const struct routine *r, const struct history *h, int stage, int day)
{
	for (int i = 0; i < h->tallies; i++) {
		const struct tally *t = &h->tally[i];

		if (t->kind == BLOCK_RECAP && t->day == day &&
		    t->first_go == MARK_SHAKY &&
		    history_is_stage(r, stage, t->stage))
			return true;
	}
	return false;
}

static void look_at_recaps(struct week *w, const struct routine *r,
    const struct history *h, int stage, int today)
{
	int day[RETURNS];

	for (int s = 0; s < stage; s++) {
		int count = returns(r, h, s, today, day), shaky = 0;

		for (int i = 0; i < count; i++)
			shaky += was_shaky(r, h, s, day[i]);
		if (shaky >= RETURNS_SHAKY)
			w->recap_shaky |= UINT32_C(1) << s;
	}
}

void week_of(struct week *out, const struct routine *r, const struct history *h,
    int stage, int today)
{
	*out = (struct week) { .first = today - (WEEK_DAYS - 1) };
	count_sittings(out, h);
	count_turns(out, r, h);
	count_notes(out, h);
	count_goes(out, r, h, stage);
	look_at_recaps(out, r, h, stage, today);
}
