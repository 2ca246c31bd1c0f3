/*
 * picture.c - a canvas as a picture
 *
 *	ground		one rectangle, and one for each run of another ground
 *	shapes		blocks and lines, in parts of a cell of 10 x 20
 *	letters		runs of one look, each letter at its own place
 */
#include "evenhand/screen/picture.h"

#include <string.h>

#include "evenhand/screen/colours.h"
#include "signs.h"

enum {
	WIDE = 10, /* of a cell */
	HIGH = 20,
	EDGE = 15,     /* round the canvas */
	BASELINE = 15, /* of letters, below the top of a cell */
	FONT = 16,
	SHAPES_MAX = 4,
};

#define PALE " fill-opacity=\"0.25\""

struct box {
	int x, y, wide, high;
};

/* What a sign is made of; boxes as wide as a cell grow together in a row. */
static const struct shape {
	enum sign sign;
	struct box box[SHAPES_MAX];
} shapes[] = {
	{ SIGN_FULL, { { 0, 0, 10, 20 } } },
	{ SIGN_UPPER, { { 0, 0, 10, 10 } } },
	{ SIGN_LOWER, { { 0, 10, 10, 10 } } },
	{ SIGN_LEFT, { { 0, 0, 5, 20 } } },
	{ SIGN_RIGHT, { { 5, 0, 5, 20 } } },
	{ SIGN_SHADE, { { 0, 0, 10, 20 } } },
	{ SIGN_THICK, { { 0, 8, 10, 4 } } },
	{ SIGN_ACROSS, { { 0, 9, 10, 2 } } },
	{ SIGN_DOWN, { { 4, 0, 2, 20 } } },
	{ SIGN_TOP_LEFT, { { 4, 9, 6, 2 }, { 4, 9, 2, 11 } } },
	{ SIGN_TOP_RIGHT, { { 0, 9, 6, 2 }, { 4, 9, 2, 11 } } },
	{ SIGN_BOTTOM_LEFT, { { 4, 9, 6, 2 }, { 4, 0, 2, 11 } } },
	{ SIGN_BOTTOM_RIGHT, { { 0, 9, 6, 2 }, { 4, 0, 2, 11 } } },
	{ SIGN_NOTCH, { { 0, 8, 10, 4 }, { 3, 0, 4, 20 } } },
	{ SIGN_NUT, { { 2, 0, 2, 20 }, { 6, 0, 2, 20 } } },
};

static const struct shape *shape_of(const char *text)
{
	for (size_t i = 0; i < sizeof(shapes) / sizeof(shapes[0]); i++)
		if (strcmp(text, sign_of(shapes[i].sign, false)) == 0)
			return &shapes[i];
	return NULL;
}

static struct style look(const struct cell *c)
{
	return style_of(PALETTE_256, c->attributes);
}

static void write_box(
    struct text *out, struct box b, int colour, const char *more)
{
	text_format(out,
	    "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" "
	    "fill=\"#%06x\"%s/>\n",
	    b.x, b.y, b.wide, b.high, (unsigned)colour_rgb(colour), more);
}

static int left(int column)
{
	return EDGE + column * WIDE;
}

static int top(int row)
{
	return EDGE + row * HIGH;
}

/* --- ground and shapes --- */

/* Columns from one on that look the same in what the test compares. */
static int run(const struct canvas *c, int row, int column,
    bool (*same)(const struct cell *a, const struct cell *b))
{
	const struct cell *first = &c->cell[row][column];
	int end = column + 1;

	while (end < c->columns && same(first, &c->cell[row][end]))
		end++;
	return end - column;
}

static bool same_ground(const struct cell *a, const struct cell *b)
{
	return look(a).background == look(b).background;
}

static bool same_sign(const struct cell *a, const struct cell *b)
{
	return look(a).foreground == look(b).foreground &&
	    strcmp(a->text, b->text) == 0;
}

static void write_ground(struct text *out, const struct canvas *c)
{
	const struct cell plain = { " ", ATTRIBUTE_PLAIN };

	write_box(out,
	    (struct box) {
		0, 0, c->columns * WIDE + 2 * EDGE, c->rows * HIGH + 2 * EDGE },
	    look(&plain).background, "");
	for (int y = 0; y < c->rows; y++)
		for (int x = 0, some; x < c->columns; x += some) {
			const struct cell *at = &c->cell[y][x];

			some = run(c, y, x, same_ground);
			if (!same_ground(at, &plain))
				write_box(out,
				    (struct box) {
					left(x), top(y), some * WIDE, HIGH },
				    look(at).background, "");
		}
}

/* The boxes of a sign that stands so many times side by side. */
static void write_shape(struct text *out, const struct shape *s, int row,
    int column, int times, int colour)
{
	for (int i = 0; i < SHAPES_MAX && s->box[i].wide > 0; i++) {
		bool whole = s->box[i].wide == WIDE;

		for (int n = 0; n < (whole ? 1 : times); n++) {
			struct box b = s->box[i];

			b.x += left(column + n);
			b.y += top(row);
			if (whole)
				b.wide = times * WIDE;
			write_box(
			    out, b, colour, s->sign == SIGN_SHADE ? PALE : "");
		}
	}
}

static void write_shapes(struct text *out, const struct canvas *c)
{
	for (int y = 0; y < c->rows; y++)
		for (int x = 0, some; x < c->columns; x += some) {
			const struct cell *at = &c->cell[y][x];
			const struct shape *s = shape_of(at->text);

			some = run(c, y, x, same_sign);
			if (s)
				write_shape(
				    out, s, y, x, some, look(at).foreground);
		}
}

/* --- letters --- */

static bool is_letter(const struct cell *c)
{
	return c->text[0] != '\0' && strcmp(c->text, " ") != 0 &&
	    !shape_of(c->text);
}

static bool same_look(const struct cell *a, const struct cell *b)
{
	struct style s = look(a), t = look(b);

	/* A space or the second half of a wide letter breaks no run. */
	return s.foreground == t.foreground && s.bold == t.bold &&
	    !shape_of(b->text);
}

static void write_escaped(struct text *out, const char *s)
{
	for (; *s; s++) {
		if (*s == '&')
			text_add(out, "&amp;");
		else if (*s == '<')
			text_add(out, "&lt;");
		else if (*s == '>')
			text_add(out, "&gt;");
		else if (*s == '"')
			text_add(out, "&quot;");
		else
			text_add_bytes(out, s, 1);
	}
}

/*
 * A run of letters of one look.  Each is a text of its own: a list of places in
 * one text is not understood everywhere.
 */
static void write_letters(
    struct text *out, const struct canvas *c, int row, int column, int some)
{
	const struct cell *cell = &c->cell[row][column];
	struct style s = look(cell);

	text_format(out, "<g fill=\"#%06x\"%s>\n",
	    (unsigned)colour_rgb(s.foreground),
	    s.bold ? " font-weight=\"bold\"" : "");
	for (int i = 0; i < some; i++) {
		if (!is_letter(&cell[i]))
			continue;
		text_format(out, "<text x=\"%d\" y=\"%d\">", left(column + i),
		    top(row) + BASELINE);
		write_escaped(out, cell[i].text);
		text_add(out, "</text>");
	}
	text_add(out, "\n</g>\n");
}

static void write_text(struct text *out, const struct canvas *c)
{
	for (int y = 0; y < c->rows; y++)
		for (int x = 0, some; x < c->columns; x += some) {
			some = 1;
			if (!is_letter(&c->cell[y][x]))
				continue;
			some = run(c, y, x, same_look);
			write_letters(out, c, y, x, some);
		}
}

void picture_write(struct text *out, const struct canvas *c, const char *title)
{
	int wide = c->columns * WIDE + 2 * EDGE;
	int high = c->rows * HIGH + 2 * EDGE;

	text_format(out,
	    "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" "
	    "height=\"%d\" viewBox=\"0 0 %d %d\" role=\"img\">\n<title>",
	    wide, high, wide, high);
	write_escaped(out, title);
	text_add(out, "</title>\n<g shape-rendering=\"crispEdges\">\n");
	write_ground(out, c);
	write_shapes(out, c);
	text_format(out,
	    "</g>\n<g font-family=\"monospace\" font-size=\"%d\">\n", FONT);
	write_text(out, c);
	text_add(out, "</g>\n</svg>\n");
}
