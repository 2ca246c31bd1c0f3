/*
 * chart_minutes.c - minutes of practice along the time
 *
 *	10|
 *	  |█   █
 *	 5|█ ▄ █
 *	  |█ █ █  ▄
 *	 0+-----------
 *	   • 		a day with a note of pain or soreness
 *	   03-02
 */
#include "chart_parts.h"
#include "signs.h"
#include "view_play.h"

enum { MINUTE_MS = 60000 };

/* What a stretch of time holds. */
struct minutes {
	int64_t ms[AXIS_MAX];
	bool sore[AXIS_MAX];
	int64_t all, most;
	int days, sittings;
	bool any_sore;
};

static void add_up(
    struct minutes *m, const struct chart *c, const struct axis *a)
{
	int low, high;

	chart_shown(c, a, &low, &high);
	for (int i = low; i < high; i++) {
		const struct day_sum *s = &c->days->day[i];
		int at = axis_index(a, s->day);

		m->ms[at] += s->ms;
		m->sore[at] |= s->sore;
		m->any_sore |= s->sore;
		m->all += s->ms;
		m->days += s->sittings > 0 || s->tallies > 0;
		m->sittings += s->sittings;
		if (m->ms[at] > m->most)
			m->most = m->ms[at];
	}
}

static void draw_notes(const struct drawing *d, int row, int column,
    const struct axis *a, const struct minutes *m)
{
	for (int i = 0; i < a->count; i++)
		if (m->sore[i])
			canvas_put(d->canvas, row, column + axis_column(a, i),
			    ATTRIBUTE_CARE,
			    sign_of(SIGN_ITEM, d->chart->ascii));
}

static struct message sum_of(const struct drawing *d, const struct minutes *m)
{
	int64_t minutes = (m->all + MINUTE_MS / 2) / MINUTE_MS;

	if (m->any_sore)
		return message_with(M_HISTORY_SUM_MINUTES_SORE, WHOLE(m->days),
		    WHOLE(m->sittings), WHOLE(minutes),
		    TEXT(sign_of(SIGN_ITEM, d->chart->ascii)));
	return message_with(M_HISTORY_SUM_MINUTES, WHOLE(m->days),
	    WHOLE(m->sittings), WHOLE(minutes));
}

void chart_minutes(const struct drawing *d, struct told *t)
{
	struct minutes m = { { 0 }, { false }, 0, 0, 0, 0, false };
	struct area p = d->area;
	struct axis a;
	int64_t top;

	chart_axis(d->chart, &p, &a);
	chart_span(d->chart, &a, t);
	add_up(&m, d->chart, &a);
	p.left += chart_gutter(&p);
	p.right = p.left + a.columns;
	/* Under the bars: the line, the notes, the dates. */
	p.bottom -= 3;
	p.top += (p.bottom - p.top) % 2;
	top = chart_scale_top((m.most + MINUTE_MS - 1) / MINUTE_MS);
	chart_frame(d, &p, top);
	chart_bars(d, &p, &a, m.ms, top * MINUTE_MS);
	draw_notes(d, p.bottom + 1, p.left, &a, &m);
	chart_dates(d, p.bottom + 2, p.left, &a);
	t->sum = sum_of(d, &m);
}
