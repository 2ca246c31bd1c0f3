/*
 * view_play_layout.c - how much room each part has at a size
 *
 * The largest face is taken in which finger, bow and count stand side by side
 * and every part has its row.  What is left over becomes, one after the other:
 * air between the parts, panels, more air.  It depends on the routine and the
 * size only, so nothing changes its place while one plays.
 *
 * Rows at the least, 12:	and comfortably, 24:
 *
 *	0     stage, time	0     stage, time	13-17 cue
 *	1-5   finger, bow	2     words		20    mark, next
 *	6-8   bow line		3-7   finger, bow	21    news, sound
 *	9     count, cue	9-12  bow line		23    keys
 *	10    mark, next
 *	11    keys
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "view_play.h"

enum {
	COUNT_BYTES = 16,
	AIRS = 5,	 /* over words, bow line, cue, panels, and info */
	AIR_MOST = 3,	 /* rows of each, times the scale */
	SIDE_LEAST = 34, /* columns */
	SIDE_MOST = 60,
	PANELS_WIDE = 100, /* from here on three stand side by side */
};

static const struct face faces[] = {
	{ LETTERS_SEVEN, 4, 2 },
	{ LETTERS_SEVEN, 3, 2 },
	{ LETTERS_SEVEN, 2, 2 },
	{ LETTERS_FIVE, 2, 2 },
	{ LETTERS_SEVEN, 1, 2 },
	{ LETTERS_FIVE, 1, 2 },
	{ LETTERS_FIVE, 1, 1 },
};
enum { FACES = sizeof(faces) / sizeof(faces[0]) };

static int least(int a, int b)
{
	return a < b ? a : b;
}

static int word_columns(const struct face *f, enum message_id id)
{
	char words[WORDS_MAX];

	return letters_columns(f, words_of(message_of(id), words));
}

static int unit_columns(const struct face *f, const struct routine *r)
{
	int most = 0;

	for (int u = 0; u < r->units; u++) {
		int columns = letters_columns(f, r->unit[u].name);

		most = columns > most ? columns : most;
	}
	return most;
}

/* "8/8": the widest that is counted. */
static int count_columns(const struct face *f, const struct routine *r)
{
	char bytes[COUNT_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));
	int top = r->ladder[r->ladder_count - 1];

	if (top < AIR_SWING_BOWS)
		top = AIR_SWING_BOWS;
	text_format(&t, "%d/%d", top, top);
	return letters_columns(f, bytes);
}

/* The widest cue of the routine; 0 without, -1 when one has no drawing. */
static int cue_columns(const struct face *f, const struct routine *r)
{
	int most = 0;

	for (int i = 0; i < r->stages; i++) {
		int columns = letters_columns(f, r->stage[i].cue);

		if (!letters_can(r->stage[i].cue))
			return -1;
		most = columns > most ? columns : most;
	}
	return most;
}

/* --- columns --- */

/* Of the wider of its two words. */
static int bow_columns(const struct face *f, bool signs)
{
	int down = word_columns(f, signs ? M_VIEW_SIGN_DOWN : M_VIEW_BIG_DOWN);
	int up = word_columns(f, signs ? M_VIEW_SIGN_UP : M_VIEW_BIG_UP);

	return down > up ? down : up;
}

/* Columns that finger, bow and count take side by side. */
static int lanes(const struct layout *l, const struct routine *r)
{
	const struct face *f = &l->face;
	int between = f->gap == 1 ? 1 : 3 * f->scale;

	return unit_columns(f, r) + between + bow_columns(f, l->signs) +
	    (l->count >= 0 ? between + count_columns(f, r) : 0);
}

static void set_columns(struct layout *l, const struct routine *r)
{
	const struct face *f = &l->face;
	int unit = l->left + unit_columns(f, r);
	int word = bow_columns(f, l->signs);
	int end = l->right, slack;

	if (l->count >= 0)
		end = l->count = l->right - count_columns(f, r);
	slack = end - unit - word;
	/* In the middle between finger and count, or at the right edge. */
	l->word = l->count >= 0 ? unit + slack / 2 : end - word;
	l->word_end = l->word + word;
	l->unit_end = unit;
}

/* --- rows --- */

/* Rows that every size needs, with letters of this face. */
static int rows_least(const struct face *f, int cue_rows)
{
	return 1 + letters_rows(f) + 3 + (cue_rows ? cue_rows : 1) + 1 + 1;
}

/* Gives one row more to a part while there are any. */
static bool grant(int *left, int rows)
{
	if (*left < rows)
		return false;
	*left -= rows;
	return true;
}

/* Of a panel with all it can show; see view_play_panels.c. */
static int panel_rows(const struct routine *r, int columns)
{
	int bars = r->units + 1, board = r->stages + 1;

	if (columns >= PANELS_WIDE)
		return bars > board ? bars : board;
	return bars + 1 + board;
}

/* Bars alone, the least a panel row is worth having for. */
static int panel_least(const struct routine *r)
{
	return r->units + 1;
}

/* Rows of the cue; a small count stands beside a small one, over a large one. */
static int cue_rows(const struct layout *l, const struct face *cue)
{
	return cue->scale ? letters_rows(cue) + (l->count < 0) : 1;
}

static void share_rows(
    struct layout *l, const struct routine *r, int columns, int rows)
{
	int cue = cue_rows(l, &l->cue_face);
	int left = rows - rows_least(&l->face, cue);
	int air[AIRS] = { 0 };
	static const int first[] = { 1, 2, 4, 0 };
	bool label = grant(&left, 1), status = grant(&left, 1);
	int panels = 0, row = 1;

	l->line_rows = 3 + (grant(&left, l->face.scale) ? l->face.scale : 0);
	for (int i = 0; i < 4; i++)
		air[first[i]] = grant(&left, 1);
	if (left >= panel_least(r) + 1) {
		panels = least(left - 1, panel_rows(r, columns));
		left -= panels + 1;
		air[3] = 1;
	}
	for (int more = 1; more < AIR_MOST * l->face.scale; more++)
		for (int i = 0; i < AIRS; i++)
			if (i != 3 || panels)
				air[i] += grant(&left, 1);

	l->label = -1;
	row += air[0];
	if (label)
		l->label = row++;
	l->large = row;
	row += letters_rows(&l->face) + air[1];
	l->line = row;
	row += l->line_rows + air[2];
	l->counted = row;
	l->cue = row + (l->cue_face.scale && l->count < 0);
	row += cue + air[3];
	l->panels = row;
	l->panel_rows = panels;
	l->keys = rows - 1;
	l->status = status ? l->keys - 1 : -1;
	l->info = l->keys - 1 - status;
	/* Air between the small lines, where there is more than enough. */
	if (left > 2 && status) {
		l->status--;
		l->info -= 1;
	}
}

/* --- all --- */

static bool fits(struct layout *l, const struct routine *r, int room, int rows)
{
	if (rows_least(&l->face, 0) > rows)
		return false;
	l->count = 0;
	l->signs = false;
	if (lanes(l, r) <= room)
		return true;
	/* Larger letters are no gain when the count gets small. */
	if (l->face.scale > 1 || l->face.gap > 1)
		return false;
	l->count = -1;
	if (lanes(l, r) <= room)
		return true;
	l->signs = true;
	return lanes(l, r) <= room;
}

/* The largest face for the cue, not larger than the rest. */
static void choose_cue(
    struct layout *l, const struct routine *r, int room, int rows)
{
	l->cue_face = (struct face) { 0 };
	for (int i = 0; i < FACES; i++) {
		const struct face *f = &faces[i];
		int columns = cue_columns(f, r);

		if (letters_rows(f) > letters_rows(&l->face) ||
		    columns > room || columns <= 0 ||
		    rows_least(&l->face, cue_rows(l, f)) > rows)
			continue;
		l->cue_face = *f;
		return;
	}
}

/* Panels at the side of a page that is wide and low. */
static void choose_side(struct layout *l, const struct routine *r)
{
	int needs = lanes(l, r);
	int cue = l->cue_face.scale ? cue_columns(&l->cue_face, r) : 0;
	int room = l->right - l->left, side;

	needs = needs > cue ? needs : cue;
	side = room - needs - 4 * l->face.scale;
	if (l->panel_rows > 0 || side < SIDE_LEAST)
		return;
	side = least(side, SIDE_MOST);
	l->side = l->right - side;
	l->right = l->side - 4;
}

void layout_of(const struct view *v, int columns, int rows, struct layout *l)
{
	const struct routine *r = v->session->wish.routine;
	int margin = columns < 60 ? 0 : columns / 40;
	int room = columns - 2 * margin;

	*l = (struct layout) { .left = margin, .right = columns - margin };
	for (int i = 0; i < FACES; i++) {
		l->face = faces[i];
		/* Comfort: the words, the cue and its rows come with it. */
		if (fits(l, r, room, rows) &&
		    (letters_rows(&faces[i]) == LETTERS_FIVE ||
			rows >= 2 * letters_rows(&faces[i]) + 12))
			break;
	}
	choose_cue(l, r, room, rows);
	share_rows(l, r, columns, rows);
	choose_side(l, r);
	set_columns(l, r);
}
