/*
 * history.c - questions to the practice history
 *
 * A journal names stages as they were called when they were played; a stage
 * that was renamed still knows its old name (was).
 */
#include "evenhand/coach/history.h"

#include <limits.h>
#include <string.h>

#include "session_parts.h"

enum { NEVER = -1 };

bool history_is_stage(const struct routine *r, int stage, const char *name)
{
	const struct stage *s = &r->stage[stage];

	if (strcmp(s->id, name) == 0)
		return true;
	return s->was[0] != '\0' && strcmp(s->was, name) == 0;
}

int history_stage(const struct routine *r, const char *name)
{
	for (int i = 0; i < r->stages; i++)
		if (strcmp(r->stage[i].id, name) == 0)
			return i;
	for (int i = 0; i < r->stages; i++)
		if (history_is_stage(r, i, name))
			return i;
	return -1;
}

bool history_begun(const struct history *h)
{
	return h && h->sittings > 0;
}

bool history_sat(const struct past_sitting *s)
{
	return s->blocks > 0;
}

bool history_sat_here(const struct past_sitting *s)
{
	return history_sat(s) && !history_elsewhere(s->work_stage);
}

int64_t history_end(const struct past_sitting *s)
{
	const int second = 1000;

	/* Time asleep is in no length. */
	return s->ended_utc > s->began.utc
	    ? s->ended_utc
	    : s->began.utc + s->length_ms / second;
}

bool history_worked(
    const struct routine *r, const struct past_sitting *s, int stage)
{
	if (!history_is_stage(r, stage, s->work_stage))
		return false;
	/*
	 * A sitting that never reached its work did not work on it.  The work
	 * comes last, so among very many stages it may not have been kept.
	 */
	if (s->blocks >= SEEN_MAX)
		return true;
	for (int i = 0; i < s->blocks; i++)
		if (!s->recap[i] && history_is_stage(r, stage, s->seen[i]))
			return true;
	return false;
}

bool history_worked_on(
    const struct history *h, const struct routine *r, int stage, int day)
{
	for (int i = h->sittings - 1; i >= 0; i--)
		if (h->sitting[i].day == day &&
		    history_worked(r, &h->sitting[i], stage))
			return true;
	return false;
}

/* Whether an earlier sitting of the same day worked on the stage too. */
static bool worked_before(
    const struct history *h, const struct routine *r, int sitting, int stage)
{
	for (int i = sitting - 1; i >= 0; i--)
		if (h->sitting[i].day == h->sitting[sitting].day &&
		    history_worked(r, &h->sitting[i], stage))
			return true;
	return false;
}

int history_days_on(const struct history *h, const struct routine *r, int stage)
{
	int days = 0, newest = INT_MIN;

	for (int i = 0; i < h->sittings; i++) {
		const struct past_sitting *s = &h->sitting[i];

		if (!history_worked(r, s, stage))
			continue;
		/* Days rise, but where a clock was set back. */
		days += s->day > newest || !worked_before(h, r, i, stage);
		newest = s->day > newest ? s->day : newest;
	}
	return days;
}

int history_first_day_on(
    const struct history *h, const struct routine *r, int stage)
{
	for (int i = 0; i < h->sittings; i++)
		if (history_worked(r, &h->sitting[i], stage))
			return h->sitting[i].day;
	return NEVER;
}

bool history_gone_on(
    const struct history *h, const struct routine *r, int stage, int day)
{
	for (int i = h->turns - 1; i >= 0; i--)
		if (h->turn[i].day == day && h->turn[i].first_go &&
		    history_is_stage(r, stage, h->turn[i].stage))
			return true;
	for (int i = h->tallies - 1; i >= 0; i--) {
		const struct tally *t = &h->tally[i];

		if (t->day == day &&
		    (t->first_go_pulses > 0 || t->first_go != MARK_NONE) &&
		    history_is_stage(r, stage, t->stage))
			return true;
	}
	return false;
}

bool history_hurts(const struct past_note *n)
{
	return n->kind == NOTE_PAIN || n->kind == NOTE_SKIN ||
	    n->kind == NOTE_SORE;
}

void history_done(struct history *h)
{
	arena_done(&h->arena);
	memset(h, 0, sizeof(*h));
}

const char *history_place(const char *words)
{
	for (int i = PAIN_THUMB; i < PAIN_CHOICES; i++)
		if (strcmp(words, message_english(say_pain_place(i))) == 0)
			return message_sentence(say_pain_place(i));
	return words;
}
