/*
 * load.c - metres and pulses of each finger, and what a week may hold
 */
#include "evenhand/coach/load.h"

#include <math.h>
#include <string.h>

/* A journal is a file, and may hold any number. */
static const int64_t most_um = INT64_C(1000000000000);
static const int64_t most_pulses = 1000000000;

static const double um_in_m = 1e6;

static int64_t within(int64_t value, int64_t most)
{
	if (value < 0)
		return 0;
	return value < most ? value : most;
}

static void add(struct load *to, int64_t slide_um, int64_t pulses)
{
	to->slide_um = within(
	    to->slide_um + within(slide_um, most_um), most_um);
	to->pulses = within(
	    to->pulses + within(pulses, most_pulses), most_pulses);
}

/*
 * The fingers that a unit of a journal loads, bit f for finger f: "3" is
 * finger 3, "1-2" both, "0-1" only finger 1, "D-A" none.
 */
static uint32_t tally_fingers(const char *unit)
{
	uint32_t fingers = 0;
	const char *s = unit + history_elsewhere(unit);

	for (; *s; s++) {
		int finger = *s - '0';

		if (*s == '-')
			continue;
		if (finger < 0 || finger > FINGERS_MAX)
			return 0;
		if (finger > 0)
			fingers |= UINT32_C(1) << finger;
	}
	return fingers;
}

static uint32_t unit_fingers(const struct routine *r, int unit)
{
	const struct unit *u = &r->unit[unit];
	uint32_t fingers = 0;

	if (r->take == TAKE_STRINGS)
		return 0;
	if (u->from >= 1 && u->from <= FINGERS_MAX)
		fingers |= UINT32_C(1) << u->from;
	if (u->to >= 1 && u->to <= FINGERS_MAX)
		fingers |= UINT32_C(1) << u->to;
	return fingers;
}

static void add_fingers(
    struct loads *to, uint32_t fingers, int64_t slide_um, int64_t pulses)
{
	if (slide_um <= 0)
		return;
	for (int f = 1; f <= FINGERS_MAX; f++)
		if (fingers >> f & 1)
			add(&to->finger[f], slide_um, pulses);
}

void load_add_turns(struct loads *to, const struct routine *r, int stage,
    int unit, int pulses, int turns)
{
	double m = routine_turn_m(r, stage, unit, pulses);

	if (turns > 0)
		add_fingers(to, unit_fingers(r, unit),
		    turns * llround(m * um_in_m),
		    (int64_t)turns * r->bows_each * pulses);
}

void load_of_days(
    struct loads *out, const struct history *h, int first, int last)
{
	memset(out, 0, sizeof(*out));
	for (int i = 0; i < h->tallies; i++) {
		const struct tally *t = &h->tally[i];

		if (t->day >= first && t->day <= last)
			add_fingers(out, tally_fingers(t->unit), t->slide_um,
			    t->pulses);
	}
}

/*
 * The base week of a routine.
 *
 * Upwards to a whole micrometre for each bow, so that six such sessions, each
 * turn of which was rounded, are never over.
 */
static void base_week(struct loads *out, const struct routine *r)
{
	const int bows = LOAD_BASE_DAYS * LOAD_BASE_BOWS;
	int top = r->ladder[r->ladder_count - 1];

	memset(out, 0, sizeof(*out));
	for (int s = 0; s < r->stages; s++)
		for (int u = 0; u < r->units; u++) {
			double bow_um = routine_turn_m(r, s, u, top) * um_in_m /
			    r->bows_each;
			struct load base = { (int64_t)ceil(bow_um) * bows,
				(int64_t)top * bows };

			if (base.slide_um == 0)
				continue;
			for (int f = 1; f <= FINGERS_MAX; f++)
				if ((unit_fingers(r, u) >> f & 1) &&
				    base.slide_um > out->finger[f].slide_um)
					out->finger[f] = base;
		}
}

/* One quantity of one finger: the weeks before, the last one first. */
static int64_t allowed_of(int64_t base, const int64_t *week)
{
	bool rising = true;
	int64_t allowed = week[0] * (100 + LOAD_GROWS_PERCENT) / 100;

	for (int i = 0; i < LOAD_RISING_WEEKS; i++)
		rising = rising && week[i] > week[i + 1];
	if (rising)
		allowed = week[0];
	if (allowed < base)
		allowed = base;
	return allowed < 2 * base ? allowed : 2 * base;
}

void load_allowed(struct loads *out, const struct routine *r,
    const struct history *h, int day)
{
	struct loads base, before[LOAD_RISING_WEEKS + 1];
	int64_t um[LOAD_RISING_WEEKS + 1], pulses[LOAD_RISING_WEEKS + 1];

	memset(out, 0, sizeof(*out));
	base_week(&base, r);
	for (int w = 0; w <= LOAD_RISING_WEEKS; w++) {
		int last = day - (w + 1) * LOAD_WEEK_DAYS;

		load_of_days(&before[w], h, last - LOAD_WEEK_DAYS + 1, last);
	}
	for (int f = 1; f <= FINGERS_MAX; f++) {
		for (int w = 0; w <= LOAD_RISING_WEEKS; w++) {
			um[w] = before[w].finger[f].slide_um;
			pulses[w] = before[w].finger[f].pulses;
		}
		out->finger[f].slide_um = allowed_of(
		    base.finger[f].slide_um, um);
		out->finger[f].pulses = allowed_of(
		    base.finger[f].pulses, pulses);
	}
}
