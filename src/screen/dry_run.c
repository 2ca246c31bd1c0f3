/*
 * dry_run.c - a routine in figures, before anyone plays it
 *
 * One section after another, each a heading and one entry a stage.
 */
#include "evenhand/screen/dry_run.h"

#include <math.h>

#include "dry_parts.h"
#include "evenhand/base/message.h"
#include "evenhand/coach/plan.h"
#include "evenhand/screen/lines.h"

static void sentence(struct dry *d, struct message m)
{
	lines_say(d->out, &m);
}

void dry_heading(struct dry *d, struct message m)
{
	text_add(d->out, "\n");
	sentence(d, m);
}

void dry_item(struct dry *d, struct message m)
{
	entry_item(&d->entry, &m);
}

static double rounded(double value, double steps)
{
	return round(value * steps) / steps;
}

static int top_rung(const struct routine *r)
{
	return r->ladder[r->ladder_count - 1];
}

/* --- minutes --- */

static void minutes(struct dry *d)
{
	const struct plan *p = &d->plan;

	for (int b = 0; b < p->blocks; b++) {
		const struct plan_block *block = &p->block[b];

		dry_item(d,
		    message_with(M_DRY_BEGINS,
			TEXT(d->routine->stage[block->stage].id),
			CLOCK(block->start_ms)));
	}
	dry_item(d, message_with(M_DRY_ENDS, CLOCK(p->length_ms)));
}

/* --- bows --- */

static bool all_same(const int *value, int count)
{
	for (int i = 1; i < count; i++)
		if (value[i] != value[0])
			return false;
	return true;
}

static int count_bows(const struct dry *d, int *bows)
{
	int swings = 0;

	for (int u = 0; u < UNITS_MAX; u++)
		bows[u] = 0;
	for (int t = 0; t < d->plan.turns; t++) {
		int unit = d->plan.turn[t].unit;

		if (unit >= 0)
			bows[unit] += d->routine->bows_each;
		else
			swings++;
	}
	return swings;
}

static void bows(struct dry *d)
{
	const struct routine *r = d->routine;
	int each[UNITS_MAX], all = 0;
	int swings = count_bows(d, each);

	for (int u = 0; u < r->units; u++)
		all += each[u];
	if (all == 0) {
		dry_item(d, message_with(M_DRY_SWINGS, WHOLE(swings)));
	} else if (all_same(each, r->units)) {
		dry_item(d,
		    message_with(M_DRY_BOWS_EVEN, WHOLE(each[0]), WHOLE(all)));
	} else {
		for (int u = 0; u < r->units; u++)
			dry_item(d,
			    message_with(M_DRY_BOWS_ONE, TEXT(r->unit[u].name),
				WHOLE(each[u])));
		dry_item(d, message_with(M_DRY_BOWS_ALL, WHOLE(all)));
	}
}

/* --- slide metres --- */

/* Of the whole session; pulses 0: as each block begins. */
static double session_m(const struct dry *d, int unit, int pulses)
{
	const struct plan *p = &d->plan;
	double metres = 0;

	for (int b = 0; b < p->blocks; b++) {
		const struct plan_block *block = &p->block[b];
		int count = pulses ? pulses : block->pulses;

		for (int t = 0; t < block->turns; t++)
			if (p->turn[block->first_turn + t].unit == unit)
				metres += routine_turn_m(
				    d->routine, block->stage, unit, count);
	}
	return metres;
}

static void metres(struct dry *d)
{
	const struct routine *r = d->routine;
	bool fingers = r->take == TAKE_FINGERS;

	for (int u = 0; u < r->units; u++) {
		const char *name = r->unit[u].name;
		double low = rounded(session_m(d, u, 0), 10);
		double high = rounded(session_m(d, u, top_rung(r)), 10);

		if (low < high)
			dry_item(d,
			    message_with(fingers ? M_DRY_SLIDE_FINGER_TO
						 : M_DRY_SLIDE_OTHER_TO,
				TEXT(name), NUMBER(low), NUMBER(high)));
		else
			dry_item(d,
			    message_with(fingers ? M_DRY_SLIDE_FINGER
						 : M_DRY_SLIDE_OTHER,
				TEXT(name), NUMBER(high)));
	}
}

/* --- fingertip speed --- */

static double fastest(const struct routine *r, int stage, int pulses)
{
	double most = 0;

	for (int u = 0; u < r->units; u++)
		most = fmax(most, routine_speed(r, stage, u, pulses));
	return most;
}

static void speed(struct dry *d, int stage)
{
	const struct routine *r = d->routine;

	for (int i = 0; i < r->ladder_count; i++)
		dry_item(d,
		    message_with(M_DRY_SPEED_AT,
			NUMBER(rounded(fastest(r, stage, r->ladder[i]), 100)),
			WHOLE(r->ladder[i])));
}

static bool slides(const struct routine *r, int stage)
{
	const struct stage *s = &r->stage[stage];

	return !s->in_the_air && s->motion == MOTION_SLIDE;
}

static bool any_slides(const struct routine *r)
{
	for (int i = 0; i < r->stages; i++)
		if (slides(r, i))
			return true;
	return false;
}

/* --- all sections --- */

static void section(struct dry *d, struct message m, void (*fill)(struct dry *),
    bool sliding_only)
{
	dry_heading(d, m);
	for (int i = 0; i < d->routine->stages; i++) {
		if (sliding_only && !slides(d->routine, i))
			continue;
		plan_dry(&d->plan, d->routine, i, 0);
		entry_begin(&d->entry, d->routine->stage[i].id);
		fill(d);
		entry_end(&d->entry);
	}
}

static void speed_section(struct dry *d)
{
	dry_heading(d, message_of(M_DRY_SPEED));
	for (int i = 0; i < d->routine->stages; i++) {
		if (!slides(d->routine, i))
			continue;
		entry_begin(&d->entry, d->routine->stage[i].id);
		speed(d, i);
		entry_end(&d->entry);
	}
}

static enum message_id bows_heading(enum take take)
{
	switch (take) {
	case TAKE_PAIRS:
		return M_DRY_BOWS_PAIRS;
	case TAKE_STRINGS:
		return M_DRY_BOWS_STRINGS;
	case TAKE_FINGERS:
		break;
	}
	return M_DRY_BOWS_FINGERS;
}

static void sessions(struct dry *d)
{
	const struct routine *r = d->routine;

	if (r->per_day == 1)
		sentence(d,
		    message_with(M_DRY_SESSION, CLOCK(r->cap_ms),
			WHOLE(r->days_a_week)));
	else
		sentence(d,
		    message_with(M_DRY_SESSIONS, CLOCK(r->cap_ms),
			WHOLE(r->per_day), WHOLE(r->hours_apart),
			WHOLE(r->days_a_week)));
}

static void new_stages(struct dry *d)
{
	if (d->routine->cap_ms > NEW_STAGE_CAP_MS)
		sentence(d,
		    message_with(M_DRY_NEW_STAGE, WHOLE(NEW_STAGE_DAYS),
			CLOCK(NEW_STAGE_CAP_MS)));
}

static void homework(struct dry *d)
{
	const struct routine *r = d->routine;
	const char *work = r->stage[r->work_on].id;
	const char *limit = r->stage[r->no_further_than].id;

	if (*r->homework_for)
		sentence(d,
		    message_with(M_DRY_HOMEWORK_FOR, TEXT(r->homework_for),
			TEXT(work), TEXT(limit)));
	else
		sentence(
		    d, message_with(M_DRY_HOMEWORK, TEXT(work), TEXT(limit)));
}

/* The air once, and one round of every other stage. */
static void one_pass(struct dry *d)
{
	const struct routine *r = d->routine;
	int all = 0;

	for (int i = 0; i < r->stages; i++)
		all += r->stage[i].in_the_air
		    ? routine_air_ms(r)
		    : routine_lead_ms(r) + routine_round_ms(r);
	if (all > r->cap_ms)
		dry_heading(d,
		    message_with(M_DRY_PASS_OVER, WHOLE(r->stages), CLOCK(all),
			NUMBER((all - r->cap_ms) / 1000.0), CLOCK(r->cap_ms)));
	else
		dry_heading(d,
		    message_with(M_DRY_PASS_FITS, WHOLE(r->stages), CLOCK(all),
			CLOCK(r->cap_ms)));
}

static int longest_id(const struct routine *r)
{
	int most = 0;

	for (int i = 0; i < r->stages; i++) {
		int columns = text_columns(r->stage[i].id);

		if (columns > most)
			most = columns;
	}
	return most;
}

void dry_run_write(struct text *out, const struct routine *r)
{
	struct dry d = { .out = out,
		.routine = r,
		.entry = { .out = out, .label = longest_id(r) } };

	sessions(&d);
	new_stages(&d);
	homework(&d);
	section(&d, message_of(M_DRY_MINUTES), minutes, false);
	section(&d, message_of(bows_heading(r->take)), bows, false);
	if (any_slides(r)) {
		section(&d, message_with(M_DRY_METRES, WHOLE(top_rung(r))),
		    metres, true);
		speed_section(&d);
	} else {
		dry_heading(&d, message_of(M_DRY_NO_SLIDE));
	}
	dry_cycle(&d);
	one_pass(&d);
}
