/*
 * view_play_line.c - the bow and the hand on it
 *
 *	                 ██			the hand
 *	▄▄▄▄▄▄▄▄▄▄▄▄▄▄▄▄▄██▄▄▄▄▄▄▄▄▄▄▄▄▄▄▄▄▄	stick
 *	████━━━━━━━╋━━━━━██╋━━━━━━━╋━━━━━━━▌	frog, hair, notches, tip
 *	frog                             tip
 *
 * The bow lies still and the hand goes the way the arm goes: a right arm goes
 * to the right on a down bow, so the frog, where that begins, is at the left;
 * for a left arm at the right.  Each notch is a pulse, and the hand comes to
 * it at its very frame.
 *
 * In the air is no bow: a forearm swings from side to side, once in a bow
 * length, slow at the ends as an arm is.
 *
 * What blinks: the hand takes a cell once in a bow going down and once going
 * up, so in any second of bows of a second or more a cell lights up at most
 * twice.
 */
#include <math.h>

#include "signs.h"
#include "view_play.h"

enum {
	FROG = 4,      /* columns */
	HAND = 2,      /* columns, times the scale */
	FOREARM = 6,   /* likewise */
	AIR_POSTS = 1, /* columns of what ends a swing */
	FROG_GAP = 1,  /* so that the hand is not taken for the frog */
};

static const double PI = 3.14159265358979323846;

/* A stretch of columns counted from the frog, and its three rows. */
struct pen {
	struct canvas *c;
	int from, columns;
	bool mirror, ascii;
};

static struct pen pen_of(
    struct canvas *c, const struct view *v, const struct layout *l)
{
	return (
	    struct pen) { c, l->left, l->right - l->left, v->mirror, v->ascii };
}

static void dot(
    const struct pen *p, int row, int x, unsigned attributes, enum sign s)
{
	if (p->mirror) {
		x = p->columns - 1 - x;
		s = s == SIGN_LEFT    ? SIGN_RIGHT
		    : s == SIGN_RIGHT ? SIGN_LEFT
				      : s;
	}
	canvas_put(p->c, row, p->from + x, attributes, sign_of(s, p->ascii));
}

static void dots(const struct pen *p, int row, int from, int to,
    unsigned attributes, enum sign s)
{
	for (int x = from; x < to; x++)
		dot(p, row, x, attributes, s);
}

/* The row of the stick; over it the hand stands out, under it are two more. */
static int stick_row(const struct layout *l)
{
	return l->line + l->line_rows - 3;
}

/* --- what moves --- */

/* Half columns from half on, in rows from..to. */
static void block(const struct pen *p, int from, int to, int half, int halves)
{
	/* Without half blocks to whole columns, always as wide. */
	if (p->ascii)
		half -= half % 2;
	for (int x = half / 2; 2 * x < half + halves; x++) {
		bool first = 2 * x >= half, second = 2 * x + 1 < half + halves;
		enum sign s = first && second ? SIGN_FULL
		    : first		      ? SIGN_LEFT
					      : SIGN_RIGHT;

		for (int row = from; row <= to; row++)
			dot(p, row, x, ATTRIBUTE_HAND, s);
	}
}

static int hand_columns(const struct now *n, const struct layout *l)
{
	return (n->air ? FOREARM : HAND) * l->face.scale;
}

/* Columns from one end to where the hand's middle may be, and its way. */
static int way_start(const struct now *n, const struct layout *l)
{
	return (n->air ? AIR_POSTS : FROG + FROG_GAP) + hand_columns(n, l) / 2;
}

static int way_columns(const struct now *n, const struct layout *l)
{
	int end = AIR_POSTS + hand_columns(n, l) / 2;

	return l->right - l->left - way_start(n, l) - end;
}

/* How far it is on its way, in half columns. */
static int way_gone(
    const struct view *v, const struct now *n, const struct layout *l)
{
	int halves = 2 * way_columns(n, l);
	int steps = now_steps(v, n, halves);
	double gone = (double)now_step(v, n, steps) / steps;

	if (n->air)
		gone = (1 - cos(PI * gone)) / 2;
	if (n->bow % 2 == 1)
		gone = 1 - gone;
	return (int)lround(gone * halves);
}

/* The rows of a swing lie round one in the middle. */
static int swing_top(const struct layout *l)
{
	return l->line + (l->line_rows % 2 == 0);
}

static void draw_hand(const struct pen *p, const struct view *v,
    const struct now *n, const struct layout *l)
{
	int columns = hand_columns(n, l);
	int half = 2 * way_start(n, l) + way_gone(v, n, l) - columns;

	if (n->air)
		block(p, swing_top(l), l->line + l->line_rows - 1, half,
		    2 * columns);
	else
		block(p, l->line, stick_row(l) + 1, half, 2 * columns);
}

/* --- what stands still --- */

static void draw_notches(
    const struct pen *p, const struct now *n, const struct layout *l)
{
	int start = way_start(n, l), way = way_columns(n, l);

	for (int k = 0; k <= n->pulses && n->pulses > 0; k++) {
		int x = start + k * way / n->pulses;

		dot(p, stick_row(l) + 1, x, ATTRIBUTE_BOW, SIGN_NOTCH);
	}
}

static void draw_ends(const struct pen *p, const struct view *v, int row)
{
	char frog[WORDS_MAX], tip[WORDS_MAX];
	int to = p->from + p->columns;

	words_of(message_of(M_VIEW_FROG), frog);
	words_of(message_of(M_VIEW_TIP), tip);
	put_left(
	    p->c, row, p->from, to, ATTRIBUTE_FAINT, v->mirror ? tip : frog);
	put_right(
	    p->c, row, p->from, to, ATTRIBUTE_FAINT, v->mirror ? frog : tip);
}

static void draw_bow(const struct pen *p, const struct view *v,
    const struct now *n, const struct layout *l)
{
	int row = stick_row(l);

	dots(p, row, 0, p->columns, ATTRIBUTE_BOW, SIGN_LOWER);
	dots(p, row + 1, FROG, p->columns - 1, ATTRIBUTE_BOW, SIGN_THICK);
	dots(p, row + 1, 0, FROG, ATTRIBUTE_BOW, SIGN_FULL);
	dot(p, row + 1, p->columns - 1, ATTRIBUTE_BOW, SIGN_LEFT);
	draw_notches(p, n, l);
	draw_ends(p, v, row + 2);
}

static void draw_swing(const struct pen *p, const struct layout *l)
{
	int end = l->line + l->line_rows - 1, top = swing_top(l);
	int row = (top + end) / 2;

	dots(p, row, 1, p->columns - 1, ATTRIBUTE_BOW, SIGN_ACROSS);
	for (int y = top; y <= end; y++) {
		dot(p, y, 0, ATTRIBUTE_BOW, SIGN_DOWN);
		dot(p, y, p->columns - 1, ATTRIBUTE_BOW, SIGN_DOWN);
	}
}

void play_line(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l)
{
	struct pen p = pen_of(c, v, l);

	if (n->going != GOING_BOW)
		return;
	if (n->air)
		draw_swing(&p, l);
	else
		draw_bow(&p, v, n, l);
	draw_hand(&p, v, n, l);
}

int64_t play_line_change(
    const struct view *v, const struct now *n, const struct layout *l)
{
	int halves = 2 * way_columns(n, l);

	return now_step_change(v, n, now_steps(v, n, halves));
}
