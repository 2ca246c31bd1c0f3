/*
 * chart_fingers.c - bows and slide metres of each finger
 *
 *	            bows			metres along the string
 *	finger 1    ██████████████ 120		███████████████ 24.7
 *	finger 2    ██████████████ 120		██████████████  23.3
 *
 * and, where there is room, the bows of each along the time.  Bars of one kind
 * have one scale, so equal work is an equal length.
 */
#include "chart_parts.h"

#include <string.h>

#include "evenhand/base/tongue.h"
#include "signs.h"
#include "view_play.h"

enum {
	BETWEEN = 2,
	BOWS_COLUMNS = 7, /* of a number behind a bar, with a space */
	STRIP_LEAST = 2,  /* rows of a finger along the time */
	STRIP_MOST = 6,
	UM_TENTH = 100000,
	NUMBER_BYTES = 32,
};

struct work {
	int64_t bows[DAYS_UNITS_MAX], um[DAYS_UNITS_MAX];
	int64_t all_bows, all_um;
	int shown[DAYS_UNITS_MAX]; /* units that played in this time */
	int count;
};

static void add_up(struct work *w, const struct chart *c, const struct axis *a)
{
	bool played[DAYS_UNITS_MAX] = { false };
	int low, high;

	chart_shown(c, a, &low, &high);
	for (int i = low; i < high; i++) {
		const struct day_sum *s = &c->days->day[i];

		for (int k = 0; k < s->tallies; k++) {
			const struct tally *t = days_tally(c->days, s, k);
			int u = days_unit(c->days, s, k);

			if (u < 0 || u == DAYS_AIR)
				continue;
			played[u] = true;
			w->bows[u] += days_bows(t);
			w->um[u] += days_um(t);
			w->all_bows += days_bows(t);
			w->all_um += days_um(t);
		}
	}
	for (int u = 0; u < c->days->units; u++)
		if (played[u])
			w->shown[w->count++] = u;
}

static int64_t most_of(const struct work *w, const int64_t *value)
{
	int64_t most = 0;

	for (int i = 0; i < w->count; i++)
		if (value[w->shown[i]] > most)
			most = value[w->shown[i]];
	return most;
}

/* --- the sums --- */

static void put_name(
    const struct drawing *d, int row, int left, const char *unit)
{
	char words[WORDS_MAX];
	const char *name = unit;

	if (days_finger(unit))
		name = words_of(
		    message_with(M_HISTORY_FINGER, TEXT(unit)), words);
	put_left(d->canvas, row, left, left + chart_gutter(&d->area) - 1,
	    ATTRIBUTE_PLAIN, name);
}

/* To the nearest tenth. */
static double metres_of(int64_t um)
{
	int64_t tenths = (um + UM_TENTH / 2) / UM_TENTH;

	return (double)tenths / 10;
}

/* Behind its bar: bows as they are, metres with a decimal. */
static void put_value(
    const struct drawing *d, int row, int right, int64_t value, bool metres)
{
	char bytes[NUMBER_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	if (metres)
		tongue_tenths(&t, metres_of(value));
	else
		text_format(&t, "%lld", (long long)value);
	put_right(d->canvas, row, right - BOWS_COLUMNS + 1, right,
	    ATTRIBUTE_PLAIN, bytes);
}

static void draw_sums(const struct drawing *d, const struct area *p,
    const struct work *w, const int64_t *value, bool metres)
{
	char words[WORDS_MAX];
	int64_t most = most_of(w, value);

	words_of(
	    message_of(metres ? M_HISTORY_METRES_ALONG : M_HISTORY_BOWS_ALONE),
	    words);
	if (text_columns(words) > p->right - p->left)
		words_of(message_of(M_HISTORY_METRES_ALONE), words);
	put_left(d->canvas, p->top, p->left, p->right, ATTRIBUTE_FAINT, words);
	for (int i = 0; i < w->count && p->top + 1 + i < p->bottom; i++) {
		int row = p->top + 1 + i;

		chart_lying_bar(d, row, p->left, p->right - BOWS_COLUMNS,
		    value[w->shown[i]], most > 0 ? most : 1);
		put_value(d, row, p->right, value[w->shown[i]], metres);
	}
}

/* --- along the time --- */

static int64_t bows_along(
    const struct chart *c, const struct axis *a, int unit, int64_t *bows)
{
	int64_t most = 0;
	int low, high;

	memset(bows, 0, AXIS_MAX * sizeof(*bows));
	chart_shown(c, a, &low, &high);
	for (int i = low; i < high; i++) {
		const struct day_sum *s = &c->days->day[i];
		int at = axis_index(a, s->day);

		for (int k = 0; k < s->tallies; k++)
			if (days_unit(c->days, s, k) == unit)
				bows[at] += days_bows(
				    days_tally(c->days, s, k));
		if (bows[at] > most)
			most = bows[at];
	}
	return most;
}

static void draw_strip(const struct drawing *d, const struct area *p,
    const struct axis *a, const int64_t *bows, int64_t most)
{
	char bytes[NUMBER_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	for (int x = p->left; x < p->right; x++)
		canvas_put(d->canvas, p->bottom, x, ATTRIBUTE_FAINT,
		    sign_of(SIGN_ACROSS, d->chart->ascii));
	/* How many the highest bar of them all stands for. */
	text_format(&t, "%lld", (long long)most);
	put_right(d->canvas, p->top, d->area.left, p->left - 1, ATTRIBUTE_FAINT,
	    bytes);
	chart_bars(d, p, a, bows, most);
}

/* One strip a finger, all on one scale, where they all have room. */
static void draw_strips(const struct drawing *d, const struct axis *a,
    const struct work *w, int top)
{
	int room = d->area.bottom - 1 - top;
	int each = w->count > 0 ? room / w->count - 1 : 0;
	bool spare = room > w->count * (each + 1) || each > STRIP_LEAST;
	struct area p = { .left = d->area.left + chart_gutter(&d->area) };
	int64_t bows[AXIS_MAX], most = 1;

	if (each < STRIP_LEAST)
		return;
	/* A row free above them, if it costs no strip its least. */
	if (spare && room == w->count * (each + 1))
		each--;
	each = each < STRIP_MOST ? each : STRIP_MOST;
	top += spare;
	for (int i = 0; i < w->count; i++) {
		int64_t m = bows_along(d->chart, a, w->shown[i], bows);

		most = m > most ? m : most;
	}
	p.right = p.left + a->columns;
	for (int i = 0; i < w->count; i++) {
		const char *unit = d->chart->days->unit[w->shown[i]];

		p.top = top + i * (each + 1);
		p.bottom = p.top + each;
		put_name(d, p.bottom - 1, d->area.left, unit);
		bows_along(d->chart, a, w->shown[i], bows);
		draw_strip(d, &p, a, bows, most);
	}
	chart_dates(d, p.bottom + 1, p.left, a);
}

static struct message sum_of(const struct work *w)
{
	return message_with(M_HISTORY_SUM_FINGERS, WHOLE(w->all_bows),
	    NUMBER(metres_of(w->all_um)));
}

void chart_fingers(const struct drawing *d, struct told *t)
{
	struct work w = { .count = 0 };
	struct area p = d->area;
	struct axis a;
	int names = p.left, half, middle;

	chart_axis(d->chart, &p, &a);
	chart_span(d->chart, &a, t);
	add_up(&w, d->chart, &a);
	p.left += chart_gutter(&p);
	half = (p.right - p.left - BETWEEN) / 2;
	middle = p.left + half;
	for (int i = 0; i < w.count && p.top + 1 + i < p.bottom; i++)
		put_name(
		    d, p.top + 1 + i, names, d->chart->days->unit[w.shown[i]]);
	draw_sums(d, &(struct area) { p.left, middle, p.top, p.bottom }, &w,
	    w.bows, false);
	draw_sums(d,
	    &(struct area) { middle + BETWEEN, p.right, p.top, p.bottom }, &w,
	    w.um, true);
	draw_strips(d, &a, &w, p.top + w.count + 1);
	t->sum = sum_of(&w);
}
