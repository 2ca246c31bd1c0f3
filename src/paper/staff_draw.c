/*
 * staff_draw.c - notes on five lines, drawn
 *
 *	       1            2
 *	 ==G==o--o===|====o--o===|==	two notes and the slide between them
 *	      E  F#       F  G
 *
 * Notes have no stems: the bow is the clock, and the beat is not written.
 */
#include <math.h>

#include "evenhand/paper/staff.h"
#include "evenhand/paper/words.h"
#include "glyphs.h"

/* In spaces of the staff. */
#define LETTER 1.75 /* the em of numbers and names */
#define ABOVE 2.6   /* room for the numbers */
#define BELOW 2.4   /* and for the names */
#define HEAD_WIDE 1.3
#define HEAD_HIGH 0.92
#define LINE_PEN 0.1
#define LEDGER 1.1 /* half of a ledger line */
#define SLIDE_AIR 0.95

enum { HEAD_TURNED = -22, BEFORE_ROOM = 3 };

struct drawn {
	const struct staff *s;
	struct paper *p;
	enum clef clef;
	double x, wide, unit;
	double bottom_y;     /* of the bottom line */
	int highest, lowest; /* places with their signs */
};

static struct written written(const struct drawn *d, int bar, int note)
{
	const struct staff *s = d->s;
	struct written w = staff_written(
	    s->bar[bar].note[note] + staff_octave(s->instrument));

	/* The same letter without its sign again needs a natural. */
	if (note > 0 && w.before == BEFORE_NOTHING) {
		struct written first = written(d, bar, 0);

		if (first.step == w.step && first.before != BEFORE_NOTHING)
			w.before = BEFORE_NATURAL;
	}
	return w;
}

static int place(const struct drawn *d, int bar, int note)
{
	return staff_place(d->clef, written(d, bar, note).step);
}

static double y_of(const struct drawn *d, int at)
{
	return d->bottom_y - at * d->unit / 2;
}

static struct drawn measure(const struct staff *s)
{
	struct drawn d = { .s = s };
	double highest = 0;

	for (int b = 0; b < s->bars; b++)
		for (int n = 0; n < STAFF_NOTES; n++)
			highest = fmax(highest, s->bar[b].note[n]);
	d.clef = staff_clef(s->instrument, highest);
	d.highest = STAFF_TOP + glyph_clef_above(d.clef);
	d.lowest = -1 - glyph_clef_below(d.clef);
	for (int b = 0; b < s->bars; b++)
		for (int n = 0; n < STAFF_NOTES; n++) {
			int at = place(&d, b, n);

			d.highest = at + BEFORE_ROOM > d.highest
			    ? at + BEFORE_ROOM
			    : d.highest;
			d.lowest = at - BEFORE_ROOM < d.lowest
			    ? at - BEFORE_ROOM
			    : d.lowest;
		}
	return d;
}

double staff_high(const struct staff *s, double unit)
{
	struct drawn d = measure(s);

	return unit * (ABOVE + BELOW + (d.highest - d.lowest) / 2.0);
}

static void draw_ledgers(struct drawn *d, double x, int at)
{
	int count = staff_ledgers(at);

	for (int i = count; i != 0; i += i > 0 ? -1 : 1) {
		int line = i > 0 ? STAFF_TOP + 2 * i : 2 * i;

		paper_line(d->p, x - LEDGER * d->unit, y_of(d, line),
		    x + LEDGER * d->unit, y_of(d, line), LINE_PEN * d->unit,
		    INK_FULL);
	}
}

static void draw_note(struct drawn *d, int bar, int note, double x)
{
	struct written w = written(d, bar, note);
	int at = staff_place(d->clef, w.step);

	draw_ledgers(d, x, at);
	paper_oval(d->p, x, y_of(d, at), HEAD_WIDE * d->unit,
	    HEAD_HIGH * d->unit, HEAD_TURNED, 0);
	if (w.before != BEFORE_NOTHING)
		glyph_before(
		    d->p, w.before, x - 1.5 * d->unit, y_of(d, at), d->unit);
}

/* A name gets smaller where it would come into the next one's. */
static void draw_name(
    struct drawn *d, const char *name, double x, double y, double room)
{
	struct lettering how = { LETTER * d->unit, false, SIDE_MIDDLE,
		INK_FULL };
	double wide = words_mm(name, how.size, how.bold);

	if (wide > room)
		how.size *= room / wide;
	paper_words(d->p, x, y, how, name);
}

/* The way of the finger between two notes. */
static void draw_slide(struct drawn *d, int bar, double x, double to_x)
{
	struct written w = written(d, bar, 1);
	double end = SLIDE_AIR +
	    (w.before != BEFORE_NOTHING ? GLYPH_BEFORE_WIDE : 0);
	double y = y_of(d, place(d, bar, 0)), to_y = y_of(d, place(d, bar, 1));
	double from = SLIDE_AIR * d->unit, part;

	if (to_x - x <= from + end * d->unit)
		return;
	part = (to_y - y) / (to_x - x);
	paper_line(d->p, x + from, y + from * part, to_x - end * d->unit,
	    to_y - end * d->unit * part, LINE_PEN * d->unit, INK_FULL);
}

static void draw_names(
    struct drawn *d, int bar, const double *x, double middle, double y)
{
	struct lettering number = { LETTER * d->unit * 1.15, true, SIDE_MIDDLE,
		INK_FULL };
	double below = d->bottom_y - d->lowest * d->unit / 2;
	char words[STAFF_NAME_MAX];

	paper_words(
	    d->p, middle, y + LETTER * d->unit, number, d->s->bar[bar].above);
	for (int n = 0; n < STAFF_NOTES; n++) {
		staff_name(d->s->bar[bar].note[n], words);
		draw_name(d, words, x[n], below + LETTER * d->unit,
		    (x[1] - x[0]) * 0.92);
	}
}

static void draw_bar(struct drawn *d, int bar, double x, double wide, double y)
{
	/* What stands before the first note takes its room at the left. */
	double at[STAFF_NOTES] = { x + wide * 0.31, x + wide * 0.8 };

	draw_names(d, bar, at, (at[0] + at[1]) / 2, y);
	for (int n = 0; n < STAFF_NOTES; n++)
		draw_note(d, bar, n, at[n]);
	draw_slide(d, bar, at[0], at[1]);
	paper_line(d->p, x + wide, y_of(d, 0), x + wide, y_of(d, STAFF_TOP),
	    LINE_PEN * d->unit, INK_FULL);
}

void staff_draw(struct paper *p, const struct staff *s, double x, double y,
    double wide, double unit)
{
	struct drawn d = measure(s);
	double from = x + GLYPH_CLEF_WIDE * unit;
	double bar = (wide - GLYPH_CLEF_WIDE * unit) / s->bars;

	d.p = p;
	d.x = x;
	d.wide = wide;
	d.unit = unit;
	d.bottom_y = y + unit * (ABOVE + d.highest / 2.0);
	for (int line = 0; line <= STAFF_TOP; line += 2)
		paper_line(p, x, y_of(&d, line), x + wide, y_of(&d, line),
		    LINE_PEN * unit, INK_FULL);
	glyph_clef(p, d.clef, x + 0.3 * unit, d.bottom_y, unit);
	for (int b = 0; b < s->bars; b++)
		draw_bar(&d, b, from + b * bar, bar, y);
}
