/*
 * board.c - the string under the fingers, to scale
 */
#include "evenhand/paper/board.h"

#include <math.h>

#include "evenhand/base/message.h"
#include "evenhand/music/fingerboard.h"
#include "evenhand/paper/words.h"

enum { FIGURES = 3, WORDS_BYTES = 64 };

/* In rows. */
#define UNIT_ROOM 1.0	/* for the finger's number */
#define FIGURE_ROOM 2.6 /* for each figure */
#define APART 0.6	/* words from figures */
#define LETTER 0.78	/* the em */
#define BASELINE 0.28	/* of letters, below the middle of a row */
#define BEYOND 1.04	/* some more string than the farthest place */

static const enum message_id headings[FIGURES] = { M_PAPER_NEAR, M_PAPER_FAR,
	M_PAPER_APART };

bool board_slides(const struct routine *r, int stage)
{
	double from, to;

	routine_slide(r, stage, 0, &from, &to);
	return to > from;
}

struct board_places board_places(const struct routine *r, int stage, int unit)
{
	double from, to, length = r->setup.length_mm;

	routine_slide(r, stage, unit, &from, &to);
	return (struct board_places) { fingerboard_mm(length, from),
		fingerboard_mm(length, to),
		fingerboard_slide_mm(length, from, to) };
}

/* Where a string lies on a board. */
static double string_from(const struct board *b)
{
	return UNIT_ROOM * b->row;
}

static double string_wide(double wide, double row)
{
	return wide - (UNIT_ROOM + FIGURES * FIGURE_ROOM) * row;
}

double board_scale(const struct routine *r, int last, double wide, double row)
{
	static const double scales[] = { 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8,
		10, 12, 15, 20 };
	size_t count = sizeof(scales) / sizeof(scales[0]);
	double farthest = 0;

	for (int s = 0; s <= last; s++)
		for (int u = 0; u < r->units; u++)
			farthest = fmax(farthest, board_places(r, s, u).far);
	for (size_t i = 0; i < count; i++)
		if (farthest * BEYOND / scales[i] <= string_wide(wide, row))
			return scales[i];
	return scales[count - 1];
}

double board_high(const struct board *b)
{
	return b->row * (b->routine->units + 1);
}

/* mm from the nut, on the paper; the other way round for the left hand. */
static double x_of(const struct board *b, double x, double mm)
{
	double at = mm / b->scale, wide = string_wide(b->wide, b->row);

	return x + string_from(b) + (b->routine->left_handed ? wide - at : at);
}

static void draw_figures(struct paper *p, const struct board *b,
    const char *const *words, double x, double y, bool bold)
{
	struct lettering how = { LETTER * b->row, bold, SIDE_RIGHT, INK_FULL };

	for (int i = 0; i < FIGURES; i++)
		paper_words(p,
		    x + b->wide - (FIGURES - 1 - i) * FIGURE_ROOM * b->row,
		    y + BASELINE * b->row, how, words[i]);
}

static void draw_string(struct paper *p, const struct board *b,
    const struct board_places *at, double x, double y)
{
	double wide = string_wide(b->wide, b->row) * b->scale;
	double dot = 0.62 * b->row;
	double near = x_of(b, x, at->near), far = x_of(b, x, at->far);

	paper_line(
	    p, x_of(b, x, 0), y, x_of(b, x, wide), y, 0.07 * b->row, INK_FULL);
	paper_line(p, near, y, far, y, 0.24 * b->row, INK_FULL);
	/* The upper place is open, so that dots that touch are two. */
	paper_oval(p, near, y, dot, dot, 0, 0);
	paper_oval(p, far, y, dot, dot, 0, 0.1 * b->row);
}

static void draw_row(struct paper *p, const struct board *b, int stage,
    int unit, double x, double y)
{
	struct board_places at = board_places(b->routine, stage, unit);
	const double mm[FIGURES] = { at.near, at.far, at.apart };
	char figure[FIGURES][WORDS_BYTES];
	const char *words[FIGURES];
	struct lettering how = { LETTER * b->row, true, SIDE_LEFT, INK_FULL };

	for (int i = 0; i < FIGURES; i++) {
		struct text t = text_in(figure[i], WORDS_BYTES);

		text_format(&t, "%ld", lround(mm[i]));
		words[i] = figure[i];
	}
	paper_words(
	    p, x, y + BASELINE * b->row, how, b->routine->unit[unit].name);
	draw_string(p, b, &at, x, y);
	draw_figures(p, b, words, x, y, false);
}

/* mm from the beginning of the string to the end of the first figure's name. */
static double before_figures(const struct board *b)
{
	return string_wide(b->wide, b->row) + (FIGURE_ROOM - APART) * b->row;
}

static void draw_head(
    struct paper *p, const struct board *b, double x, double y)
{
	struct lettering how = { LETTER * b->row, false, SIDE_LEFT, INK_FULL };
	struct message m = message_with(M_PAPER_SCALE, NUMBER(b->scale));
	const char *words[FIGURES];
	char scale[WORDS_BYTES];

	for (int i = 0; i < FIGURES; i++)
		words[i] = message_sentence(headings[i]);
	message_text(&m, scale, sizeof(scale));
	how.size = words_fit(scale, how.size, false,
	    before_figures(b) - words_mm(words[0], how.size, false));
	paper_words(p, x + string_from(b), y + BASELINE * b->row, how, scale);
	draw_figures(p, b, words, x, y, false);
}

void board_draw(
    struct paper *p, const struct board *b, int stage, double x, double y)
{
	int units = b->routine->units;
	double nut = x_of(b, x, 0), middle = y + b->row / 2;

	draw_head(p, b, x, middle);
	for (int u = 0; u < units; u++)
		draw_row(p, b, stage, u, x, middle + (u + 1) * b->row);
	paper_line(p, nut, middle + 0.65 * b->row, nut,
	    middle + (units + 0.35) * b->row, 0.22 * b->row, INK_FULL);
}
