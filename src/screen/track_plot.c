/*
 * track_plot.c - the pitch of a recording, drawn in cells
 */
#include "evenhand/screen/track_plot.h"

#include <math.h>

#include "evenhand/base/text.h"
#include "evenhand/base/tongue.h"
#include "evenhand/listen/axis.h"
#include "evenhand/music/pitch.h"
#include "signs.h"

enum {
	LEFT = 5, /* columns of names of notes */
	FOOT = 2, /* rows of the axis and its times */
	ROWS = TRACK_PLOT_ROWS - FOOT,
	HALVES = 2 * ROWS,
	TIME_COLUMNS = 18, /* from one time to the next, at least */
};

#define AIR 0.08 /* of the height, above and below */

struct plot {
	struct canvas *canvas;
	const struct outline *o;
	double low, high; /* semitones at the bottom and at the top */
	double reference_hz;
	bool ascii;
	int columns; /* of the curve */
};

/* Half row from the bottom at which a note lies. */
static int half_of(const struct plot *p, double hz)
{
	double at = (pitch_note(hz, p->reference_hz) - p->low) /
	    (p->high - p->low) * HALVES;

	return (int)fmin(fmax(floor(at), 0), HALVES - 1);
}

static void put_half(const struct plot *p, int column, int half, bool both)
{
	enum sign s = both ? SIGN_FULL : half % 2 ? SIGN_UPPER : SIGN_LOWER;

	canvas_put(p->canvas, ROWS - 1 - half / 2, LEFT + 1 + column,
	    ATTRIBUTE_PLAIN, sign_of(s, p->ascii));
}

static void draw_column(
    const struct plot *p, int column, const struct outline_place *at)
{
	int low, high;

	if (at->low_hz <= 0)
		return;
	/* What lies outside is left out, not drawn at the edge. */
	if (pitch_note((double)at->high_hz, p->reference_hz) < p->low ||
	    pitch_note((double)at->low_hz, p->reference_hz) > p->high)
		return;
	low = half_of(p, (double)at->low_hz);
	high = half_of(p, (double)at->high_hz);
	for (int half = low; half <= high; half++) {
		bool both = half % 2 == 0 && half < high;

		put_half(p, column, half, both);
		half += both;
	}
}

static void draw_curve(const struct plot *p)
{
	for (int x = 0; x < p->columns; x++) {
		int from = (int)((int64_t)x * p->o->places / p->columns);
		int to = (int)((int64_t)(x + 1) * p->o->places / p->columns);
		struct outline_place at = outline_join(
		    p->o, from, to > from ? to : from + 1);

		draw_column(p, x, &at);
	}
}

static void draw_frame(const struct plot *p)
{
	for (int row = 0; row < ROWS; row++)
		canvas_put(p->canvas, row, LEFT, ATTRIBUTE_FAINT,
		    sign_of(SIGN_DOWN, p->ascii));
	canvas_put(p->canvas, ROWS, LEFT, ATTRIBUTE_FAINT,
	    sign_of(SIGN_BOTTOM_LEFT, p->ascii));
	for (int x = 0; x < p->columns; x++)
		canvas_put(p->canvas, ROWS, LEFT + 1 + x, ATTRIBUTE_FAINT,
		    sign_of(SIGN_ACROSS, p->ascii));
}

/* As many names as have a row between them. */
static void draw_notes(const struct plot *p)
{
	int step = 1, taken = ROWS;

	while ((p->high - p->low) / step > (double)ROWS / 2)
		step++;
	for (int note = (int)ceil(p->low); note <= p->high; note++) {
		double at = (note - p->low) / (p->high - p->low) * ROWS;
		int row = ROWS - 1 - (int)fmin(at, ROWS - 1);
		char name[PITCH_NAME_MAX];

		if (note % step != 0 || row >= taken || note < 0 || note > 127)
			continue;
		pitch_name(note, false, name);
		tongue_note(name);
		canvas_put(p->canvas, row, LEFT - 1 - text_columns(name),
		    ATTRIBUTE_FAINT, name);
		taken = row;
	}
}

static void draw_times(const struct plot *p)
{
	double seconds = outline_s(p->o);
	double step = axis_step(seconds, (double)p->columns / TIME_COLUMNS);

	for (int n = 0; n * step <= seconds; n++) {
		char name[AXIS_TIME_BYTES];
		int at = (int)(n * step / seconds * p->columns);

		axis_time(n * step, name);
		if (at + text_columns(name) > p->columns)
			break;
		canvas_put(
		    p->canvas, ROWS + 1, LEFT + 1 + at, ATTRIBUTE_FAINT, name);
	}
}

bool track_plot(struct canvas *c, int columns, const struct outline *o,
    double reference_hz, bool ascii)
{
	struct plot p = { c, o, 0, 0, reference_hz, ascii, 0 };

	canvas_init(c, columns, TRACK_PLOT_ROWS);
	if (!axis_notes(o, reference_hz, AIR, &p.low, &p.high))
		return false;
	p.columns = c->columns - LEFT - 1;
	draw_frame(&p);
	draw_notes(&p);
	draw_times(&p);
	draw_curve(&p);
	return true;
}
