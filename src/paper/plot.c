/*
 * plot.c - the pitch and the loudness of a recording, on paper
 */
#include "evenhand/paper/plot.h"

#include <math.h>

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"
#include "evenhand/base/tongue.h"
#include "evenhand/listen/axis.h"
#include "evenhand/music/pitch.h"
#include "evenhand/paper/words.h"

/* ISO 216 A4 lying, in mm. */
#define WIDE 297.0
#define HIGH 210.0
#define EDGE 14.0
#define LEFT 28.0 /* names of notes stand before it */
#define PITCH_TOP 28.0
#define PITCH_HIGH 92.0
#define LEVEL_TOP 130.0
#define LEVEL_HIGH 22.0
#define LOWEST (HIGH - EDGE / 2) /* of a line of words */
#define TITLE 6.5		 /* ems */
#define LABEL 3.2
#define BODY 3.8
#define LEADING 1.35
#define GRID 0.15 /* pens */
#define FRAME 0.3
#define CURVE 0.35
#define PALE 35 /* ink of a grid */

#define AIR 0.06	 /* of the height */
#define LEVEL_SPAN 50.0	 /* dB under the loudest */
#define LINES_APART 5.0	 /* mm between names of notes, at least */
#define TIMES_APART 24.0 /* mm */

enum { NOTES = 127 };

struct plot {
	struct paper *paper;
	const struct plot_wish *w;
	double low, high; /* semitones */
	double loudest;
	double seconds;
};

static double x_of(const struct plot *p, double s)
{
	return LEFT + (WIDE - EDGE - LEFT) * s / p->seconds;
}

static double y_of(const struct plot *p, double hz)
{
	double at = (pitch_note(hz, p->w->reference_hz) - p->low) /
	    (p->high - p->low);

	at = fmin(fmax(at, 0), 1);
	return PITCH_TOP + PITCH_HIGH * (1 - at);
}

static double level_y(const struct plot *p, double db)
{
	double under = fmin(fmax(p->loudest - db, 0), LEVEL_SPAN);

	return LEVEL_TOP + LEVEL_HIGH * under / LEVEL_SPAN;
}

static void label(const struct plot *p, double x, double y,
    enum paper_side side, const char *words)
{
	paper_words(p->paper, x, y,
	    (struct lettering) { LABEL, false, side, INK_FULL }, words);
}

static void draw_notes(const struct plot *p)
{
	int step = 1;

	while (PITCH_HIGH * step / (p->high - p->low) < LINES_APART)
		step++;
	for (int note = (int)ceil(p->low); note <= p->high; note++) {
		double y = PITCH_TOP +
		    PITCH_HIGH * (p->high - note) / (p->high - p->low);
		char name[PITCH_NAME_MAX];

		if (note < 0 || note > NOTES || note % step != 0)
			continue;
		pitch_name(note, false, name);
		tongue_note(name);
		paper_line(p->paper, LEFT, y, WIDE - EDGE, y, GRID, PALE);
		label(p, LEFT - 2, y + LABEL / 3, SIDE_RIGHT, name);
	}
}

static void draw_times(const struct plot *p)
{
	double step = axis_step(p->seconds, (WIDE - EDGE - LEFT) / TIMES_APART);

	for (int n = 0; n * step <= p->seconds; n++) {
		char name[AXIS_TIME_BYTES];
		double x = x_of(p, n * step);

		axis_time(n * step, name);
		paper_line(p->paper, x, PITCH_TOP, x, PITCH_TOP + PITCH_HIGH,
		    GRID, PALE);
		paper_line(p->paper, x, LEVEL_TOP, x, LEVEL_TOP + LEVEL_HIGH,
		    GRID, PALE);
		label(p, x, LEVEL_TOP + LEVEL_HIGH + LABEL * 1.4, SIDE_MIDDLE,
		    name);
	}
}

/* From one height to another, if there is a way between them. */
static void stroke(
    const struct plot *p, double x, double from_hz, double to_x, double to_hz)
{
	paper_line(p->paper, x, y_of(p, from_hz), to_x, y_of(p, to_hz), CURVE,
	    INK_FULL);
}

/* As broad as its place, so that few places are no hatching. */
static void draw_level(const struct plot *p, double x, double wide, double db)
{
	paper_line(p->paper, x, LEVEL_TOP + LEVEL_HIGH, x, level_y(p, db),
	    fmax(wide, GRID), PALE);
}

/* A place as a stroke from its lowest to its highest, and on to the next. */
static void draw_place(const struct plot *p, int i)
{
	const struct outline *o = p->w->outline;
	const struct outline_place *a = &o->place[i];
	const struct outline_place *b = i + 1 < o->places ? a + 1 : a;
	double step = HEARD_STEP_S * (double)o->each;
	double x = x_of(p, i * step), to = x_of(p, (i + 1) * step);

	if (a->high_hz > a->low_hz)
		stroke(p, x, (double)a->low_hz, x, (double)a->high_hz);
	if (a->low_hz > 0 && b->low_hz > a->high_hz)
		stroke(p, x, (double)a->high_hz, to, (double)b->low_hz);
	else if (b->low_hz > 0 && b->high_hz <= a->low_hz)
		stroke(p, x, (double)a->low_hz, to, (double)b->high_hz);
	if ((double)a->level_db > p->loudest - LEVEL_SPAN)
		draw_level(p, (x + to) / 2, to - x, (double)a->level_db);
}

static void draw_frames(const struct plot *p)
{
	paper_box(p->paper, LEFT, PITCH_TOP, WIDE - EDGE - LEFT, PITCH_HIGH,
	    FRAME, INK_FULL);
	paper_box(p->paper, LEFT, LEVEL_TOP, WIDE - EDGE - LEFT, LEVEL_HIGH,
	    FRAME, INK_FULL);
	label(p, LEFT, LEVEL_TOP - LABEL / 2, SIDE_LEFT,
	    message_sentence(M_MEASURE_PLOT_LEVEL));
	label(p, LEFT, PITCH_TOP - LABEL / 2, SIDE_LEFT,
	    message_sentence(M_MEASURE_PLOT_PITCH));
}

/* Lines that a sentence takes. */
static int lines_of(const char *sentence)
{
	int lines = 0;

	for (size_t next; *sentence; sentence += next, lines++)
		words_wrap(sentence, BODY, false, WIDE - 2 * EDGE, &next);
	return lines;
}

/* Sentences, as many as have room to their end. */
static void write_words(const struct plot *p)
{
	double y = LEVEL_TOP + LEVEL_HIGH + LABEL * 3.4;
	struct lettering how = { BODY, false, SIDE_LEFT, INK_FULL };

	for (int i = 0; i < p->w->words; i++) {
		const char *rest = p->w->word[i];

		if (y + (lines_of(rest) - 1) * BODY * LEADING > LOWEST)
			break;
		while (*rest) {
			char line[512];
			struct text t = text_in(line, sizeof(line));
			size_t next,
			    n = words_wrap(
				rest, BODY, false, WIDE - 2 * EDGE, &next);

			text_add_bytes(&t, rest, n);
			paper_words(p->paper, EDGE, y, how, line);
			y += BODY * LEADING;
			rest += next;
		}
	}
}

static void find_bounds(struct plot *p)
{
	const struct outline *o = p->w->outline;

	p->seconds = outline_s(o);
	p->loudest = (double)outline_join(o, 0, o->places).level_db;
	axis_notes(o, p->w->reference_hz, AIR, &p->low, &p->high);
}

void paper_plot(struct paper *paper, const struct plot_wish *w)
{
	struct plot p = { .paper = paper, .w = w };
	struct lettering title = { TITLE, true, SIDE_LEFT, INK_FULL };
	char line[512];
	struct text t = text_in(line, sizeof(line));

	paper_init(paper, w->title, "", w->day);
	paper_page(paper, WIDE, HIGH);
	text_add_bytes(
	    &t, w->title, words_clip(w->title, TITLE, true, WIDE - 2 * EDGE));
	paper_words(paper, EDGE, EDGE + TITLE, title, line);
	find_bounds(&p);
	draw_notes(&p);
	draw_times(&p);
	for (int i = 0; i < w->outline->places; i++)
		draw_place(&p, i);
	draw_frames(&p);
	write_words(&p);
}
