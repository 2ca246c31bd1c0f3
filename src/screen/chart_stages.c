/*
 * chart_stages.c - what was worked on and what came again, along the time
 *
 *	wide	     ████ █  ░ ░ ░
 *		     5 days  3 days
 *	thirds		  ███ ██ ░
 *
 * A full sign is work, a shaded one a recap, a low one the arm in the air.
 * Under a week stands on how many of its days the stage was played.
 */
#include "chart_parts.h"

#include <string.h>

#include "evenhand/base/text.h"
#include "signs.h"
#include "view_play.h"

enum { WEEK = 7 };

/* The rows: stages that were played in the time shown. */
struct rows {
	int stage[DAYS_STAGES_MAX];
	int count;
	int left_out;
};

static void find_rows(
    struct rows *r, const struct chart *c, const struct axis *a, int room)
{
	bool played[DAYS_STAGES_MAX] = { false };
	int low, high;

	chart_shown(c, a, &low, &high);
	for (int i = low; i < high; i++)
		for (int k = 0; k < c->days->day[i].tallies; k++) {
			int s = days_stage(c->days, &c->days->day[i], k);

			if (s >= 0)
				played[s] = true;
		}
	for (int s = 0; s < c->days->stages; s++)
		if (played[s])
			r->stage[r->count++] = s;
	/* The newest are kept where there is no room for all. */
	if (r->count > room) {
		r->left_out = r->count - room;
		memmove(r->stage, r->stage + r->left_out,
		    (size_t)room * sizeof(r->stage[0]));
		r->count = room;
	}
}

/* What a stage was in each place: 0 nothing, or 1 + the most it was. */
static void find_kinds(const struct chart *c, const struct axis *a, int stage,
    char *kind, bool *on, int *days)
{
	int low, high;

	chart_shown(c, a, &low, &high);
	for (int i = low; i < high; i++) {
		const struct day_sum *s = &c->days->day[i];
		int at = axis_index(a, s->day);
		bool played = false;

		for (int k = 0; k < s->tallies; k++) {
			const struct tally *t = days_tally(c->days, s, k);

			if (days_stage(c->days, s, k) != stage)
				continue;
			played = true;
			if (kind[at] < 1 + (char)t->kind)
				kind[at] = (char)(1 + t->kind);
		}
		on[at] |= played;
		*days += played;
	}
}

static void put_kinds(const struct drawing *d, int row, int column,
    const struct axis *a, const char *kind)
{
	static const enum sign signs[] = { [1 + BLOCK_AIR] = SIGN_LOWER,
		[1 + BLOCK_RECAP] = SIGN_SHADE,
		[1 + BLOCK_WORK] = SIGN_FULL };

	for (int i = 0; i < a->count; i++)
		if (kind[i] > 0)
			canvas_put(d->canvas, row, column + axis_column(a, i),
			    ATTRIBUTE_PLAIN,
			    sign_of(signs[(int)kind[i]], d->chart->ascii));
}

/* On how many days of each week. */
static void put_counts(const struct drawing *d, int row, int column,
    const struct axis *a, const bool *on)
{
	for (int first = 0; first + WEEK <= a->count; first += WEEK) {
		char words[WORDS_MAX];
		int days = 0;

		for (int i = first; i < first + WEEK; i++)
			days += on[i];
		if (days > 0)
			canvas_put(d->canvas, row,
			    column + axis_column(a, first), ATTRIBUTE_FAINT,
			    words_of(message_with(M_HISTORY_DAYS, WHOLE(days)),
				words));
	}
}

static void draw_row(const struct drawing *d, const struct axis *a, int row,
    int stage, bool counts)
{
	char kind[AXIS_MAX] = { 0 };
	bool on[AXIS_MAX] = { false };
	int gutter = chart_gutter(&d->area), days = 0;
	int column = d->area.left + gutter;

	find_kinds(d->chart, a, stage, kind, on, &days);
	put_left(d->canvas, row, d->area.left, column - 1, ATTRIBUTE_PLAIN,
	    d->chart->days->stage[stage]);
	put_kinds(d, row, column, a, kind);
	if (counts && a->scale == SCALE_DAYS)
		put_counts(d, row + 1, column, a, on);
}

static struct message sum_of(const struct drawing *d, const struct rows *r)
{
	bool ascii = d->chart->ascii;
	const char *work = sign_of(SIGN_FULL, ascii);
	const char *recap = sign_of(SIGN_SHADE, ascii);
	const char *air = sign_of(SIGN_LOWER, ascii);

	if (r->left_out > 0)
		return message_with(M_HISTORY_SUM_STAGES_MORE, TEXT(work),
		    TEXT(recap), TEXT(air), WHOLE(r->left_out));
	return message_with(
	    M_HISTORY_SUM_STAGES, TEXT(work), TEXT(recap), TEXT(air));
}

void chart_stages(const struct drawing *d, struct told *t)
{
	struct rows r = { .count = 0 };
	struct axis a;
	int room = d->area.bottom - d->area.top - 1, each;

	chart_axis(d->chart, &d->area, &a);
	chart_span(d->chart, &a, t);
	find_rows(&r, d->chart, &a, room);
	each = r.count > 0 ? room / r.count : 1;
	each = each < 3 ? each : 3;
	for (int i = 0; i < r.count; i++)
		draw_row(d, &a, d->area.top + i * each, r.stage[i], each > 1);
	chart_dates(d, d->area.top + r.count * each,
	    d->area.left + chart_gutter(&d->area), &a);
	t->sum = sum_of(d, &r);
}
