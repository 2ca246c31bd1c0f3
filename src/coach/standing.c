/*
 * standing.c - the conditions of rule F4, one by one
 */
#include "evidence.h"

#include <string.h>

enum { NEVER = -1 };

/* The last practice days on a stage, newest first. */
struct gone {
	int days;
	struct first_go go[STANDING_DAYS_MAX];
	bool made[STANDING_DAYS_MAX]; /* a first go was made on that day */
};

/* --- the last practice days --- */

static bool has_day(const struct gone *g, int day)
{
	for (int i = 0; i < g->days; i++)
		if (g->go[i].day == day)
			return true;
	return false;
}

static void look_back(struct gone *g, const struct routine *r,
    const struct history *h, int stage, int most)
{
	for (int i = h->sittings - 1; i >= 0 && g->days < most; i--) {
		const struct past_sitting *s = &h->sitting[i];

		if (has_day(g, s->day) || !history_worked(r, s, stage))
			continue;
		g->made[g->days] = first_go_on(
		    h, r, stage, s->day, &g->go[g->days]);
		g->days++;
	}
}

/* What is being played now is the newest day, or more of it. */
static void add_fresh(struct gone *g, const struct routine *r, int stage,
    const struct fresh *f, int today)
{
	struct first_go now;

	if (!f || !f->worked)
		return;
	now = f->first_go;
	first_go_lesson(&now, r, stage, today);
	if (g->days > 0 && g->go[0].day == today) {
		if (f->marked && !g->made[0])
			g->go[0] = now;
		g->made[0] |= f->marked;
		return;
	}
	if (g->days == STANDING_DAYS_MAX)
		g->days--;
	memmove(&g->go[1], &g->go[0], (size_t)g->days * sizeof(g->go[0]));
	memmove(&g->made[1], &g->made[0], (size_t)g->days * sizeof(g->made[0]));
	g->go[0] = now;
	g->made[0] = f->marked;
	g->days++;
}

static int top_rung(const struct routine *r, int stage)
{
	return r->stage[stage].in_the_air ? 0 : r->ladder[r->ladder_count - 1];
}

static bool good_day(
    const struct routine *r, int stage, const struct gone *g, int i)
{
	return i < g->days && g->made[i] &&
	    g->go[i].pulses >= top_rung(r, stage) &&
	    first_go_clean(r, stage, &g->go[i]);
}

/* Good days among the last so many, when more were added to them. */
static int good_days(
    const struct routine *r, int stage, const struct gone *g, int added, int of)
{
	int good = added < of ? added : of;

	for (int i = 0; i < of - added; i++)
		good += good_day(r, stage, g, i);
	return good;
}

/* --- the conditions --- */

static void count_days(struct standing *s, const struct routine *r,
    const struct history *h, const struct gone *g, const struct fresh *f,
    int today)
{
	int of = r->move_of < STANDING_DAYS_MAX ? r->move_of
						: STANDING_DAYS_MAX;
	int more = 0;

	s->days = history_days_on(h, r, s->stage);
	if (f && f->worked && !history_worked_on(h, r, s->stage, today))
		s->days++;
	s->days_needed = r->move_days;
	s->clean_needed = r->move_clean;
	s->clean_of = of;
	s->clean_days = good_days(r, s->stage, g, 0, of);
	s->top = top_rung(r, s->stage);
	if (!good_day(r, s->stage, g, 0))
		more = 1;
	while (
	    more < of && good_days(r, s->stage, g, more, of) < s->clean_needed)
		more++;
	if (s->days_needed - s->days > more)
		more = s->days_needed - s->days;
	s->more_days = more;
}

/* Whether a finger's skin was noted on a day. */
static bool skin_noted(const struct history *h, int day)
{
	for (int i = 0; i < h->notes; i++)
		if (h->note[i].kind == NOTE_SKIN && h->note[i].day == day)
			return true;
	return false;
}

/* Days on which a finger was left out for its skin count for nobody. */
static void count_bows(struct standing *s, const struct routine *r,
    const struct history *h, const struct fresh *f)
{
	int64_t bows[UNITS_MAX] = { 0 };
	int units = standing_units(r, s->stage), day = NEVER;
	bool skin = false;

	for (int i = 0; i < h->tallies; i++) {
		const struct tally *t = &h->tally[i];
		int unit = history_is_stage(r, s->stage, t->stage)
		    ? standing_unit(r, s->stage, t->unit)
		    : -1;

		if (unit < 0 || t->bows <= 0)
			continue;
		if (t->day != day)
			skin = skin_noted(h, t->day);
		day = t->day;
		bows[unit] += skin ? 0 : t->bows;
	}
	s->unit = 0;
	for (int u = 0; u < units; u++) {
		bows[u] += f && f->worked && !f->hurt ? f->bows[u] : 0;
		s->bows_all += bows[u];
		if (bows[u] < bows[s->unit])
			s->unit = u;
	}
	s->bows = bows[s->unit];
}

/* Over the days whose marks count, and what was heard today. */
static void count_heard(struct standing *s, const struct routine *r,
    const struct history *h, const struct gone *g, const struct fresh *f)
{
	for (int i = 0; i < g->days && i < s->clean_of; i++)
		heard_on(h, r, s->stage, g->go[i].day, &s->bows_listened,
		    &s->bows_full);
	s->bows_listened += f && f->worked ? f->bows_listened : 0;
	s->bows_full += f && f->worked ? f->bows_full : 0;
}

static bool heard_too_few(const struct standing *s)
{
	return s->bows_listened >= HEARD_LEAST &&
	    s->bows_full * 100 < s->bows_listened * HEARD_PERCENT;
}

/* The first unit of a set, -1 when it is empty. */
static int first_unit(uint32_t set)
{
	for (int u = 0; u < UNITS_MAX; u++)
		if (set >> u & 1)
			return u;
	return -1;
}

/* The day of what hurt and is not over yet, or NEVER. */
static int hurt_day(const struct history *h, int today, const struct fresh *f)
{
	int day = f && f->hurt ? today : NEVER;

	for (int i = 0; i < h->notes; i++) {
		const struct past_note *n = &h->note[i];

		if ((n->kind == NOTE_PAIN || n->kind == NOTE_SKIN ||
			n->kind == NOTE_SORE) &&
		    n->day > day && (int64_t)today - n->day <= HURT_DAYS &&
		    (int64_t)n->day - today <= 1)
			day = n->day;
	}
	return day;
}

static enum missing missing_of_day(
    struct standing *s, const struct routine *r, const struct gone *g)
{
	const struct first_go *last = &g->go[0];
	uint32_t all = standing_everybody(r, s->stage);

	if (g->days == 0 || !g->made[0])
		return MISSING_MARK;
	s->day = last->day;
	s->rung = last->pulses;
	s->teacher = last->teacher;
	s->unit = first_unit(last->shaky & all);
	if (s->unit >= 0)
		return MISSING_CLEAN;
	s->unit = first_unit(all & ~last->clean);
	if (s->unit >= 0)
		return MISSING_MARK;
	return s->rung < s->top ? MISSING_RUNG : MISSING_NOTHING;
}

static enum missing missing_of(struct standing *s, const struct routine *r,
    const struct history *h, const struct gone *g, int today,
    const struct fresh *f)
{
	enum missing of_day;

	s->unit = -1;
	s->day = hurt_day(h, today, f);
	if (s->day != NEVER)
		return MISSING_WELL;
	of_day = missing_of_day(s, r, g);
	if (s->days < s->days_needed)
		return MISSING_DAYS;
	if (of_day != MISSING_NOTHING)
		return of_day;
	if (s->clean_days < s->clean_needed)
		return MISSING_CLEAN_DAYS;
	if (!r->stage[s->stage].in_the_air) {
		count_bows(s, r, h, f);
		if (s->bows * 10 * r->units < s->bows_all * SHARE_LEAST_TENTHS)
			return MISSING_SHARE;
	}
	if (!heard_too_few(s))
		return MISSING_NOTHING;
	s->unit = -1;
	return MISSING_HEARD;
}

void standing_of(struct standing *out, const struct routine *r,
    const struct history *h, int stage, int today, const struct fresh *fresh)
{
	struct gone gone = { 0 };

	memset(out, 0, sizeof(*out));
	out->stage = stage;
	look_back(&gone, r, h, stage, STANDING_DAYS_MAX);
	add_fresh(&gone, r, stage, fresh, today);
	count_days(out, r, h, &gone, fresh, today);
	count_heard(out, r, h, &gone, fresh);
	out->missing = missing_of(out, r, h, &gone, today, fresh);
}
