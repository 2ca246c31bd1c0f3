/*
 * letters.c - a text drawn in large letters
 *
 * A drawing is a grid of half cells, which are about square.  Larger faces
 * take each half cell several times, so their edges stay as sharp:
 *
 *	drawing  #^	twice  ████
 *	         #_	       ██      a ^ fills a row above and none below
 */
#include "evenhand/screen/letters.h"

#include <assert.h>
#include <string.h>

#include "letters_parts.h"
#include "signs.h"

/* A letter found in its drawing: a field of each row of a band. */
struct glyph {
	const char *row[LETTERS_SEVEN];
	int columns;
	const char *accent; /* what stands in the top row instead, or NULL */
};

static const struct {
	char accent;
	const char *drawing;
} accents[] = {
	{ '`', "^#_" },
	{ '\'', "_#^" },
	{ '^', "_##_" },
	{ '"', "^^  ^^" },
	{ '~', "_^^_^" },
	{ 'o', "#^^#" },
	{ 'v', "^##^" },
};

static const char *field(const char *row, int index)
{
	for (; index > 0; index--)
		row = strchr(row, '|') + 1;
	return row;
}

static const char *accent_drawing(char accent)
{
	for (size_t i = 0; i < sizeof(accents) / sizeof(accents[0]); i++)
		if (accents[i].accent == accent)
			return accents[i].drawing;
	return NULL;
}

/*
 * Under an accent the letter begins one row lower, without its second row,
 * which in every letter is the one that can be missed.
 */
static void glyph_of(const struct face *f, struct letter l, struct glyph *g)
{
	const struct band *b = f->rows == LETTERS_FIVE ? letters_five
						       : letters_seven;

	assert(f->rows == LETTERS_FIVE || f->rows == LETTERS_SEVEN);
	while (!strchr(b->codes, l.code))
		b++;

	int index = (int)(strchr(b->codes, l.code) - b->codes);

	g->accent = accent_drawing(l.accent);
	for (int y = 0; y < f->rows; y++)
		g->row[y] = field(b->row[g->accent && y == 1 ? 0 : y], index);
	g->columns = (int)strcspn(g->row[0], "|");
}

/* What is drawn in a cell of the drawing: one of # ^ _ and space. */
static char drawn(const struct glyph *g, int x, int y)
{
	int from, wide;

	if (!g->accent || y > 0)
		return g->row[y][x];
	wide = (int)strlen(g->accent);
	from = (g->columns - wide) / 2;
	return x < from || x >= from + wide ? ' ' : g->accent[x - from];
}

/* Whether a half cell is filled; half rows count from the top. */
static bool filled(const struct glyph *g, int x, int half)
{
	char c = drawn(g, x, half / 2);

	return c == '#' || c == (half % 2 ? '_' : '^');
}

static void draw_glyph(struct canvas *c, int row, int column,
    unsigned attributes, const struct face *f, bool ascii,
    const struct glyph *g)
{
	for (int y = 0; y < f->rows * f->scale; y++)
		for (int x = 0; x < g->columns * f->scale; x++) {
			int from = x / f->scale;
			bool up = filled(g, from, 2 * y / f->scale);
			bool low = filled(g, from, (2 * y + 1) / f->scale);
			enum sign s = up && low ? SIGN_FULL
			    : up		? SIGN_UPPER
						: SIGN_LOWER;

			if (up || low)
				canvas_put(c, row + y, column + x, attributes,
				    sign_of(s, ascii));
		}
}

bool letters_can(const char *s)
{
	struct letter l[LETTERS_MAX];

	return letters_fold(s, l, LETTERS_MAX) >= 0;
}

int letters_rows(const struct face *f)
{
	return f->rows * f->scale;
}

int letters_columns(const struct face *f, const char *s)
{
	struct letter l[LETTERS_MAX];
	int count = letters_fold(s, l, LETTERS_MAX), columns = 0;

	for (int i = 0; i < count; i++) {
		struct glyph g;

		glyph_of(f, l[i], &g);
		columns += g.columns + (i > 0 ? f->gap : 0);
	}
	return columns * f->scale;
}

void letters_draw(struct canvas *c, int row, int column, unsigned attributes,
    const struct face *f, bool ascii, const char *s)
{
	struct letter l[LETTERS_MAX];
	int count = letters_fold(s, l, LETTERS_MAX);

	for (int i = 0; i < count; i++) {
		struct glyph g;

		glyph_of(f, l[i], &g);
		draw_glyph(c, row, column, attributes, f, ascii, &g);
		column += (g.columns + f->gap) * f->scale;
	}
}
