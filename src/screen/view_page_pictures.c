/*
 * view_page_pictures.c - bars and distances between the sentences
 *
 * Both only show what a sentence of the page says too.
 *
 *	finger 1  ━━━━━━━━━━ 10
 *	finger 1  ━━━━━━━━── 34 of 40
 *
 *	First to fourth position  ║━━━━━●━━━━━━━━━━━━━━━●
 *	A tone apart              ║━━━━━●━━━━━━●
 */
#include "view_page_text.h"

#include <math.h>

#include "evenhand/music/fingerboard.h"
#include "signs.h"

enum {
	NAME_BYTES = 120,
	ROW_BYTES = 1600,
	GAP = 2,
	COUNT_COLUMNS = 4, /* the number behind a bar */
	SUM_COLUMNS = 12,  /* and "34 of 40" */
	TOPS_COLUMNS = 40,
	SCALE_LEAST = 24, /* a shorter string shows nothing */
};

static void pad(struct text *t, int columns)
{
	for (; columns > 0; columns--)
		text_add(t, " ");
}

static void strokes(struct flow *f, struct text *t, enum sign s, int count)
{
	for (; count > 0; count--)
		text_add(t, sign_of(s, f->ascii));
}

static int wider(int a, int b)
{
	return a > b ? a : b;
}

/* --- bows of each unit --- */

static void unit_name(const struct session *s, int unit, char *name)
{
	struct message m = session_unit(s, unit);

	message_text(&m, name, NAME_BYTES);
}

void page_bars(struct flow *f, const struct session *s)
{
	int units = s->wish.routine->units, names = 0, most = 0;
	char name[NAME_BYTES], row[ROW_BYTES];

	for (int u = 0; u < units; u++) {
		unit_name(s, u, name);
		names = wider(names, text_columns(name));
		most = wider(most, session_bows(s, u));
	}

	int room = f->width - names - GAP - COUNT_COLUMNS;

	if (most == 0 || room < 1)
		return;
	flow_gap(f);
	for (int u = 0; u < units; u++) {
		int bows = session_bows(s, u);
		int long_ = most <= room ? bows : bows * room / most;
		struct text t = text_in(row, sizeof(row));

		unit_name(s, u, name);
		text_add(&t, name);
		pad(&t, names + GAP - text_columns(name));
		strokes(f, &t, SIGN_THICK, long_);
		text_format(&t, "%s%d", long_ > 0 ? " " : "", bows);
		flow_row(f, ATTRIBUTE_PLAIN, row);
	}
}

/* --- tops that were heard --- */

/* The longest name of those who were heard; how many they are. */
static int heard_units(const struct session *s, int *names)
{
	char name[NAME_BYTES];
	int count = 0, tops, asked;

	*names = 0;
	for (int u = 0; u < s->wish.routine->units; u++) {
		listened_tops(s, u, &tops, &asked);
		if (asked == 0)
			continue;
		unit_name(s, u, name);
		*names = wider(*names, text_columns(name));
		count++;
	}
	return count;
}

void page_tops(struct flow *f, const struct session *s)
{
	char name[NAME_BYTES], row[ROW_BYTES], sum[NAME_BYTES];
	int names, tops, asked;
	int count = heard_units(s, &names);
	int room = f->width - names - GAP - SUM_COLUMNS;

	room = room < TOPS_COLUMNS ? room : TOPS_COLUMNS;
	if (count == 0 || room < 1)
		return;
	flow_gap(f);
	flow_words(f, ATTRIBUTE_PLAIN, message_sentence(M_PAGES_TOPS));
	for (int u = 0; u < s->wish.routine->units; u++) {
		struct text t = text_in(row, sizeof(row));
		struct message m;

		listened_tops(s, u, &tops, &asked);
		if (asked == 0)
			continue;
		unit_name(s, u, name);
		text_add(&t, name);
		pad(&t, names + GAP - text_columns(name));
		strokes(f, &t, SIGN_THICK, room * tops / asked);
		strokes(f, &t, SIGN_ACROSS, room - room * tops / asked);
		m = message_with(M_PAGES_TOPS_OF, WHOLE(tops), WHOLE(asked));
		message_text(&m, sum, sizeof(sum));
		text_format(&t, " %s", sum);
		flow_row(f, ATTRIBUTE_PLAIN, row);
	}
}

/* --- slides to scale --- */

/* The lowest unit that slides in a stage: its two places. */
static bool slide_of(
    const struct routine *r, int stage, double *from_mm, double *to_mm)
{
	double from, to;

	routine_slide(r, stage, 0, &from, &to);
	*from_mm = fingerboard_mm(r->setup.length_mm, from);
	*to_mm = fingerboard_mm(r->setup.length_mm, to);
	return to > from;
}

/* The longest name and the farthest place of today's slides; how many. */
static int slides(const struct session *s, int *names, double *far_mm)
{
	const struct routine *r = s->wish.routine;
	int count = 0;

	*names = 0;
	*far_mm = 0;
	for (int b = 0; b < s->plan.blocks; b++) {
		int stage = s->plan.block[b].stage;
		double from_mm, to_mm;

		if (!slide_of(r, stage, &from_mm, &to_mm))
			continue;
		count++;
		*names = wider(*names, text_columns(r->stage[stage].title));
		*far_mm = fmax(*far_mm, to_mm);
	}
	return count;
}

/* "║━━━━━●━━━━━━●": a place every mm_each of the string. */
static void slide_row(struct flow *f, struct text *t, double from_mm,
    double to_mm, double mm_each)
{
	int from = (int)lround(from_mm / mm_each);
	int to = (int)lround(to_mm / mm_each);

	text_add(t, sign_of(SIGN_NUT, f->ascii));
	strokes(f, t, SIGN_ACROSS, from - 1);
	text_add(t, sign_of(SIGN_PLACE, f->ascii));
	strokes(f, t, SIGN_THICK, to - from - 1);
	text_add(t, sign_of(SIGN_PLACE, f->ascii));
}

void page_scale(struct flow *f, const struct session *s)
{
	const struct routine *r = s->wish.routine;
	char name[NAME_BYTES], row[ROW_BYTES];
	int names;
	double far_mm;

	if (slides(s, &names, &far_mm) == 0)
		return;

	int room = f->width - names - GAP - 1;

	if (room < SCALE_LEAST)
		return;
	unit_name(s, 0, name);

	struct message head = message_with(M_PAGES_SCALE, TEXT(name));

	message_text(&head, row, sizeof(row));
	flow_gap(f);
	flow_words(f, ATTRIBUTE_PLAIN, flow_keep(f, row));
	for (int b = 0; b < s->plan.blocks; b++) {
		int stage = s->plan.block[b].stage;
		struct text t = text_in(row, sizeof(row));
		double from_mm, to_mm;

		if (!slide_of(r, stage, &from_mm, &to_mm))
			continue;
		text_add(&t, r->stage[stage].title);
		pad(&t, names + GAP - text_columns(r->stage[stage].title));
		slide_row(f, &t, from_mm, to_mm, far_mm / room);
		flow_row(f, ATTRIBUTE_PLAIN, row);
	}
}
