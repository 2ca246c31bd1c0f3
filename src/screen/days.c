/*
 * days.c - a history set out day by day
 *
 * Roll-ups come in the order of their days, sessions and notes in the order
 * of the journal, which is not that of the days where a clock was set back.
 * So each list is walked by days, the last two sorted first, and the smallest
 * day that any of them stands at is the next one:
 *
 *	roll-ups   2 2 2 3 3 5          days   2 3 5 9
 *	sittings   2 3 3 5
 *	notes      3 9
 */
#include "evenhand/screen/days.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

/* A thousand kilometres in a day: sums of these stay whole numbers. */
#define UM_MAX INT64_C(1000000000000)

/* A list being walked. */
struct walk {
	int at, end;
};

static int64_t above_zero(int64_t number)
{
	return number > 0 ? number : 0;
}

/* --- names --- */

static int place_of(const char *const *list, int count, const char *name)
{
	for (int i = 0; i < count; i++)
		if (strcmp(list[i], name) == 0)
			return i;
	return -1;
}

static int add_stage(struct days *d, const char *name)
{
	int at = place_of(d->stage, d->stages, name);

	if (at >= 0 || d->stages == DAYS_STAGES_MAX)
		return at;
	d->stage[d->stages] = name;
	return d->stages++;
}

/* In the order they come; sort_units puts them into that of their names. */
static int add_unit(struct days *d, const char *name)
{
	int at = place_of(d->unit, d->units, name);

	if (*name == '\0')
		return DAYS_AIR;
	if (at >= 0 || d->units == DAYS_UNITS_MAX)
		return at;
	d->unit[d->units] = name;
	return d->units++;
}

static void sort_units(struct days *d)
{
	const char *was[DAYS_UNITS_MAX];
	int8_t now[DAYS_UNITS_MAX + 1] = { [DAYS_AIR] = DAYS_AIR };

	memcpy(was, d->unit, sizeof(was));
	for (int u = 0; u < d->units; u++) {
		int at = u;

		for (; at > 0 && strcmp(d->unit[at - 1], was[u]) > 0; at--)
			d->unit[at] = d->unit[at - 1];
		d->unit[at] = was[u];
	}
	for (int u = 0; u < d->units; u++)
		now[u] = (int8_t)place_of(d->unit, d->units, was[u]);
	for (int i = 0; i < d->h->tallies; i++)
		if (d->unit_of[i] >= 0)
			d->unit_of[i] = now[d->unit_of[i]];
}

/* --- days --- */

static int sitting_order(const void *a, const void *b)
{
	const struct past_sitting *x = *(const struct past_sitting *const *)a;
	const struct past_sitting *y = *(const struct past_sitting *const *)b;

	if (x->day != y->day)
		return x->day < y->day ? -1 : 1;
	return (x->key > y->key) - (x->key < y->key);
}

/* Notes of a day stay in the order of the journal. */
static int note_order(const void *a, const void *b)
{
	const struct past_note *x = *(const struct past_note *const *)a;
	const struct past_note *y = *(const struct past_note *const *)b;

	if (x->day != y->day)
		return x->day < y->day ? -1 : 1;
	return (x > y) - (x < y);
}

/* Room for so many pointers; never NULL for want of any. */
static void *pointers(struct days *d, int count)
{
	return arena_take(&d->arena, ((size_t)count + 1) * sizeof(void *));
}

static void take_tallies(
    const struct days *d, struct day_sum *s, struct walk *w)
{
	s->tally = w->at;
	while (w->at < w->end && d->h->tally[w->at].day == s->day)
		w->at++;
	s->tallies = w->at - s->tally;
}

static void take_names(struct days *d, const struct day_sum *s)
{
	for (int i = s->tally; i < s->tally + s->tallies; i++) {
		const struct tally *t = &d->h->tally[i];

		d->stage_of[i] = (int8_t)add_stage(d, t->stage);
		d->unit_of[i] = (int8_t)add_unit(d, t->unit);
	}
}

static void take_sittings(const struct past_sitting *const *sitting,
    struct day_sum *s, struct walk *w)
{
	for (; w->at < w->end && sitting[w->at]->day == s->day; w->at++) {
		s->sittings++;
		s->ms += above_zero(sitting[w->at]->length_ms);
	}
}

static void take_notes(const struct days *d, struct day_sum *s, struct walk *w)
{
	s->note = w->at;
	for (; w->at < w->end && d->note[w->at]->day == s->day; w->at++)
		s->sore |= history_hurts(d->note[w->at]);
	s->notes = w->at - s->note;
}

/* The least day that any list stands at; past its end it stands nowhere. */
static int64_t next_day(const struct days *d,
    const struct past_sitting *const *sitting, const struct walk *tallies,
    const struct walk *sittings, const struct walk *notes)
{
	int64_t next = INT64_MAX;

	if (tallies->at < tallies->end)
		next = d->h->tally[tallies->at].day;
	if (sittings->at < sittings->end && sitting[sittings->at]->day < next)
		next = sitting[sittings->at]->day;
	if (notes->at < notes->end && d->note[notes->at]->day < next)
		next = d->note[notes->at]->day;
	return next;
}

static void set_out(struct days *d, const struct past_sitting *const *sitting,
    const struct day_range *range)
{
	struct walk tallies = { 0, d->h->tallies };
	struct walk sittings = { 0, d->h->sittings };
	struct walk notes = { 0, d->notes };
	int64_t day;

	while ((day = next_day(d, sitting, &tallies, &sittings, &notes)) <=
	    range->to) {
		struct day_sum s = { .day = (int)day };

		take_tallies(d, &s, &tallies);
		take_sittings(sitting, &s, &sittings);
		take_notes(d, &s, &notes);
		if (day < range->from)
			continue;
		take_names(d, &s);
		d->day[d->count++] = s;
	}
}

bool days_make(
    struct days *d, const struct history *h, const struct day_range *range)
{
	const struct past_sitting **sitting;
	size_t most = (size_t)h->tallies + (size_t)h->sittings +
	    (size_t)h->notes + 1;

	*d = (struct days) { .h = h };
	sitting = pointers(d, h->sittings);
	d->note = pointers(d, h->notes);
	d->day = arena_take(&d->arena, most * sizeof(*d->day));
	d->stage_of = arena_take(&d->arena, most);
	d->unit_of = arena_take(&d->arena, most);
	if (!sitting || !d->note || !d->day || !d->stage_of || !d->unit_of)
		return false;
	for (int i = 0; i < h->sittings; i++)
		sitting[i] = &h->sitting[i];
	for (int i = 0; i < h->notes; i++)
		if (h->note[i].kind != NOTE_LATER)
			d->note[d->notes++] = &h->note[i];
	qsort(sitting, (size_t)h->sittings, sizeof(void *), sitting_order);
	qsort(d->note, (size_t)d->notes, sizeof(void *), note_order);
	set_out(d, sitting, range);
	sort_units(d);
	return true;
}

void days_done(struct days *d)
{
	arena_done(&d->arena);
	memset(d, 0, sizeof(*d));
}

/* --- questions --- */

int days_from(const struct days *d, int day)
{
	int low = 0, high = d->count;

	while (low < high) {
		int middle = low + (high - low) / 2;

		if (d->day[middle].day < day)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

const struct tally *days_tally(
    const struct days *d, const struct day_sum *s, int i)
{
	return &d->h->tally[s->tally + i];
}

int64_t days_bows(const struct tally *t)
{
	return above_zero(t->bows);
}

int64_t days_um(const struct tally *t)
{
	return t->slide_um < UM_MAX ? above_zero(t->slide_um) : UM_MAX;
}

int days_stage(const struct days *d, const struct day_sum *s, int i)
{
	return d->stage_of[s->tally + i];
}

int days_unit(const struct days *d, const struct day_sum *s, int i)
{
	return d->unit_of[s->tally + i];
}

bool days_finger(const char *unit)
{
	return unit[0] >= '1' && unit[0] <= '4' && unit[1] == '\0';
}
