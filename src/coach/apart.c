/*
 * apart.c - what was practised on another instrument
 *
 * A stage called "tone" of a violin routine is not the "tone" of a cello one,
 * though one student may play both and have one journal.  A sign before the
 * name is enough: it is in no id and in no name of a unit, so nothing that asks
 * for a stage or for a finger's turns finds them, while sittings, lengths and
 * loads are all there.
 */
#include "evenhand/coach/history.h"

#include <stdlib.h>
#include <string.h>

/* Puts the sign before a name, in a place of so many bytes. */
static void set_sign(char *name, size_t size)
{
	size_t length = strlen(name);

	if (length == 0 || history_elsewhere(name))
		return;
	if (length > size - 2)
		length = size - 2;
	memmove(name + 1, name, length);
	name[0] = ELSEWHERE;
	name[length + 1] = '\0';
}

static bool is_other(const char *of, const char *instrument)
{
	return of[0] != '\0' && strcmp(of, instrument) != 0;
}

static int by_key(const void *key, const void *sitting)
{
	int64_t a = *(const int64_t *)key;
	int64_t b = ((const struct past_sitting *)sitting)->key;

	return (a > b) - (a < b);
}

/* Whether a sitting was one of another instrument; unknown ones were not. */
static bool sat_elsewhere(
    const struct history *h, int64_t key, const char *instrument)
{
	const struct past_sitting *s = h->sittings == 0
	    ? NULL
	    : bsearch(&key, h->sitting, (size_t)h->sittings,
		  sizeof(*h->sitting), by_key);

	return s != NULL && is_other(s->instrument, instrument);
}

static void set_sitting(struct past_sitting *s)
{
	set_sign(s->work_stage, sizeof(s->work_stage));
	set_sign(s->asked_stage, sizeof(s->asked_stage));
	for (int i = 0; i < s->blocks && i < SEEN_MAX; i++)
		set_sign(s->seen[i], sizeof(s->seen[i]));
}

void history_set_apart(struct history *h, const char *instrument)
{
	for (int i = 0; i < h->turns; i++) {
		struct past_turn *t = &h->turn[i];

		if (!sat_elsewhere(h, t->sitting, instrument))
			continue;
		set_sign(t->stage, sizeof(t->stage));
		set_sign(t->unit, sizeof(t->unit));
	}
	for (int i = 0; i < h->shares; i++) {
		struct past_share *s = &h->share[i];

		if (!sat_elsewhere(h, s->sitting, instrument))
			continue;
		set_sign(s->stage, sizeof(s->stage));
		set_sign(s->unit, sizeof(s->unit));
	}
	for (int i = 0; i < h->tallies; i++) {
		struct tally *t = &h->tally[i];

		if (!is_other(t->instrument, instrument))
			continue;
		set_sign(t->stage, sizeof(t->stage));
		set_sign(t->unit, sizeof(t->unit));
	}
	for (int i = 0; i < h->sittings; i++)
		if (is_other(h->sitting[i].instrument, instrument))
			set_sitting(&h->sitting[i]);
}

bool history_elsewhere(const char *name)
{
	return name[0] == ELSEWHERE;
}
