/*
 * view_play_board.c - the fingerboard to scale
 *
 *	║────●━━━━━━━━━━━━●────────────────	first to fourth    154 mm
 *	║────●━━━━━━●──────────────────────	first to third      97 mm
 *	║────●━━━●─────────────────────────	a tone apart        66 mm
 *
 * All rows have one scale, mm to columns, so the distance is seen to shrink
 * from stage to stage, and with the finger.  The nut is at the left, as a
 * right-handed player turns the instrument's picture; for the left hand at the
 * right.
 */
#include "view_play_board.h"

#include <math.h>

#include "evenhand/base/text.h"
#include "evenhand/music/fingerboard.h"
#include "signs.h"

enum {
	OCTAVE = 12,
	MM_COLUMNS = 8,	 /* " 154 mm" */
	TITLE_FROM = 70, /* columns from which on stages have names */
	TITLE_COLUMNS = 28,
	CHOSEN_COLUMNS = 2,
};

/* Where a row's board lies. */
struct strip {
	int column, columns;
	bool mirror;
};

static bool slides(const struct routine *r, int stage, int unit)
{
	double from, to;

	routine_slide(r, stage, unit, &from, &to);
	return to > from;
}

/* Semitones of the farthest place that is shown. */
static double farthest(const struct routine *r)
{
	double most = OCTAVE, from, to;

	for (int i = 0; i < r->stages; i++)
		for (int u = 0; u < r->units; u++) {
			routine_slide(r, i, u, &from, &to);
			most = to > most ? to : most;
		}
	return most;
}

int board_column(const struct routine *r, double semitones, int columns)
{
	double length = r->setup.length_mm;

	return (int)lround(fingerboard_mm(length, semitones) * (columns - 1) /
	    fingerboard_mm(length, farthest(r)));
}

static void dot(struct canvas *c, const struct view *v, int row,
    const struct strip *s, int x, unsigned attributes, enum sign sign)
{
	if (s->mirror)
		x = s->columns - 1 - x;
	canvas_put(c, row, s->column + x, attributes, sign_of(sign, v->ascii));
}

static void draw_strip(struct canvas *c, const struct view *v, int row,
    const struct strip *s, int stage, int unit)
{
	const struct routine *r = v->session->wish.routine;
	double from, to;
	int near, far;

	routine_slide(r, stage, unit, &from, &to);
	near = board_column(r, from, s->columns);
	far = board_column(r, to, s->columns);
	for (int x = 1; x < s->columns; x++)
		dot(c, v, row, s, x, ATTRIBUTE_FAINT, SIGN_ACROSS);
	for (int x = near; x <= far; x++)
		dot(c, v, row, s, x, ATTRIBUTE_BOW, SIGN_THICK);
	dot(c, v, row, s, 0, ATTRIBUTE_BOW, SIGN_NUT);
	dot(c, v, row, s, near, ATTRIBUTE_STRONG, SIGN_PLACE);
	dot(c, v, row, s, far, ATTRIBUTE_STRONG, SIGN_PLACE);
}

static void draw_row(struct canvas *c, const struct view *v, int row,
    int column, int columns, int stage, int unit, bool present)
{
	const struct routine *r = v->session->wish.routine;
	unsigned strong = present ? ATTRIBUTE_STRONG : ATTRIBUTE_FAINT;
	bool titles = columns >= TITLE_FROM;
	int end = column + columns;
	struct strip s = { column + CHOSEN_COLUMNS, 0, v->mirror };
	double from, to;
	char words[WORDS_MAX];

	s.columns = columns - CHOSEN_COLUMNS - MM_COLUMNS -
	    (titles ? TITLE_COLUMNS : 0);
	if (present)
		canvas_put(
		    c, row, column, strong, sign_of(SIGN_CHOSEN, v->ascii));
	draw_strip(c, v, row, &s, stage, unit);
	routine_slide(r, stage, unit, &from, &to);
	put_right(c, row, end - MM_COLUMNS, end, strong,
	    words_of(message_with(M_VIEW_MM,
			 WHOLE(llround(fingerboard_slide_mm(
			     r->setup.length_mm, from, to)))),
		words));
	if (titles)
		put_left(c, row, s.column + s.columns + 2, end - MM_COLUMNS,
		    strong, r->stage[stage].title);
}

/* Who is shown: the one who plays or comes, in the air the first. */
static int unit_shown(const struct now *n)
{
	int unit = n->going == GOING_CHANGE ? n->next_unit : n->unit;

	return unit < 0 ? 0 : unit;
}

static int stages_that_slide(const struct routine *r, int unit)
{
	int count = 0;

	for (int i = 0; i < r->stages; i++)
		count += slides(r, i, unit);
	return count;
}

void play_board(struct canvas *c, const struct view *v, const struct now *n,
    int row, int rows, int column, int columns)
{
	const struct session *s = v->session;
	const struct routine *r = s->wish.routine;
	int unit = unit_shown(n), count = stages_that_slide(r, unit);
	int present = s->plan.block[n->block].stage;
	char who[WORDS_MAX], words[WORDS_MAX];
	bool all = rows > count;

	if (rows < 2 || count == 0 || (!all && !slides(r, present, unit)))
		return;
	words_of(session_unit(s, unit), who);
	put_left(c, row, column, column + columns, ATTRIBUTE_FAINT,
	    words_of(message_with(M_VIEW_BOARD, TEXT(who)), words));
	for (int i = 0; i < r->stages; i++) {
		if (!slides(r, i, unit) || (!all && i != present))
			continue;
		draw_row(c, v, ++row, column, columns, i, unit, i == present);
	}
}
