/*
 * evidence.c - the first go of a stage on a practice day, and what was heard
 *
 * Read from the roll-ups, which stay for ever, with the marks of a lesson of
 * that day laid over it.
 */
#include "evidence.h"

#include <string.h>

int standing_units(const struct routine *r, int stage)
{
	return r->stage[stage].in_the_air ? 1 : r->units;
}

int standing_unit(const struct routine *r, int stage, const char *name)
{
	return r->stage[stage].in_the_air ? 0 : routine_unit(r, name);
}

/* --- the first go of a day --- */

/* The first roll-up of a day or later; they are in the order of their days. */
static int first_tally(const struct history *h, int day)
{
	int low = 0, high = h->tallies;

	while (low < high) {
		int middle = low + (high - low) / 2;

		if (h->tally[middle].day < day)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

void first_go_lesson(
    struct first_go *g, const struct routine *r, int stage, int day)
{
	for (int i = 0; i < r->lesson_marks; i++) {
		const struct lesson_mark *l = &r->lesson_mark[i];

		if (l->stage != stage || l->day != day)
			continue;
		g->clean = (g->clean | l->clean) & ~l->shaky;
		g->shaky = (g->shaky & ~l->clean) | l->shaky;
		g->teacher = true;
	}
}

static void add_mark(struct first_go *g, const struct tally *t, int unit)
{
	uint32_t bit = UINT32_C(1) << unit;

	if (t->first_go == MARK_CLEAN)
		g->clean |= bit;
	else if (t->first_go == MARK_SHAKY)
		g->shaky |= bit;
	if (t->first_go_pulses > 0 &&
	    (g->pulses == 0 || t->first_go_pulses < g->pulses))
		g->pulses = t->first_go_pulses;
}

bool first_go_on(const struct history *h, const struct routine *r, int stage,
    int day, struct first_go *out)
{
	bool made = false;

	memset(out, 0, sizeof(*out));
	out->day = day;
	for (int i = first_tally(h, day);
	     i < h->tallies && h->tally[i].day == day; i++) {
		const struct tally *t = &h->tally[i];
		int unit;

		if (t->kind == BLOCK_RECAP ||
		    !history_is_stage(r, stage, t->stage))
			continue;
		if (t->first_go_pulses <= 0 && t->first_go == MARK_NONE)
			continue;
		made = true;
		unit = standing_unit(r, stage, t->unit);
		if (unit >= 0)
			add_mark(out, t, unit);
	}
	if (made)
		first_go_lesson(out, r, stage, day);
	return made;
}

/* A number of bows of a journal that anybody may have changed. */
static int bows_of(int number)
{
	return number > 0 ? number : 0;
}

void heard_on(const struct history *h, const struct routine *r, int stage,
    int day, int64_t *listened, int64_t *full)
{
	for (int i = first_tally(h, day);
	     i < h->tallies && h->tally[i].day == day; i++) {
		const struct tally *t = &h->tally[i];

		if (t->kind == BLOCK_RECAP ||
		    !history_is_stage(r, stage, t->stage))
			continue;
		*listened += bows_of(t->bows_listened);
		*full += bows_of(t->bows_full);
	}
}

uint32_t standing_everybody(const struct routine *r, int stage)
{
	return (UINT32_C(1) << standing_units(r, stage)) - 1;
}

static int count_bits(uint32_t bits)
{
	int count = 0;

	for (; bits; bits &= bits - 1)
		count++;
	return count;
}

bool first_go_clean(
    const struct routine *r, int stage, const struct first_go *g)
{
	return (g->clean & standing_everybody(r, stage)) ==
	    standing_everybody(r, stage);
}

bool first_go_bad(const struct routine *r, int stage, const struct first_go *g)
{
	int shaky = count_bits(g->shaky & standing_everybody(r, stage));

	return shaky > 0 && shaky * 2 >= standing_units(r, stage) &&
	    g->pulses <= r->ladder[0];
}
