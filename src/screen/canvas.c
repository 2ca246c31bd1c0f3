/*
 * canvas.c - a page as cells of text
 *
 * A wide sign is two cells: its own and an empty one.  Neither may stay alone:
 * whoever overwrites one half turns the other into a space.
 *
 *	[弓][  ][a]   putting "x" on the second cell leaves   [ ][x][a]
 */
#include "evenhand/screen/canvas.h"

#include <stdbool.h>
#include <string.h>

#include "evenhand/base/text.h"

static int clamp(int value, int most)
{
	if (value < 1)
		return 1;
	return value < most ? value : most;
}

static void cell_space(struct cell *c, unsigned attributes)
{
	*c = (struct cell) { .text = " ", .attributes = (uint8_t)attributes };
}

void canvas_size(struct canvas *c, int columns, int rows)
{
	c->columns = clamp(columns, CANVAS_COLUMNS_MAX);
	c->rows = clamp(rows, CANVAS_ROWS_MAX);
}

void canvas_init(struct canvas *c, int columns, int rows)
{
	canvas_size(c, columns, rows);
	for (int y = 0; y < c->rows; y++)
		for (int x = 0; x < c->columns; x++)
			cell_space(&c->cell[y][x], ATTRIBUTE_PLAIN);
}

static bool is_tail(const struct cell *c)
{
	return c->text[0] == '\0';
}

/* Takes a cell for new text; the other half of a wide sign is let go. */
static void claim(struct canvas *c, int row, int column)
{
	struct cell *at = &c->cell[row][column];

	if (is_tail(at) && column > 0)
		cell_space(at - 1, at[-1].attributes);
	if (column + 1 < c->columns && is_tail(at + 1))
		cell_space(at + 1, at[1].attributes);
}

/* One letter, safe to show; accents that the cell has no room for are lost. */
static void write_text(struct cell *c, const char *s, size_t bytes)
{
	char letter[CELL_BYTES] = "";

	if (bytes >= CELL_BYTES) {
		bytes = CELL_BYTES - 1;
		/* Never half a code point: back to where one starts. */
		while (bytes > 0 && ((unsigned char)s[bytes] & 0xc0) == 0x80)
			bytes--;
	}
	memcpy(letter, s, bytes);
	text_clean(c->text, CELL_BYTES, letter);
}

/* Writes one letter of 1 or 2 columns, or a space for half of one. */
static void put_letter(struct canvas *c, int row, int column, int wide,
    unsigned attributes, const char *s, size_t bytes)
{
	bool whole = column >= 0 && column + wide <= c->columns;

	for (int x = column; x < column + wide; x++) {
		if (x < 0 || x >= c->columns)
			continue;
		claim(c, row, x);
		cell_space(&c->cell[row][x], attributes);
	}
	if (!whole)
		return;

	write_text(&c->cell[row][column], s, bytes);
	if (wide == 2)
		c->cell[row][column + 1].text[0] = '\0';
}

int canvas_put(
    struct canvas *c, int row, int column, unsigned attributes, const char *s)
{
	int took = 0;
	size_t bytes;

	while (*s != '\0') {
		int wide = text_letter(s, &bytes);

		if (wide > 0 && row >= 0 && row < c->rows)
			put_letter(
			    c, row, column + took, wide, attributes, s, bytes);
		took += wide;
		s += bytes;
	}
	return took;
}

size_t canvas_text(const struct canvas *c, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	for (int y = 0; y < c->rows; y++) {
		int used = c->columns;

		while (used > 0 && strcmp(c->cell[y][used - 1].text, " ") == 0)
			used--;
		for (int x = 0; x < used; x++)
			text_add(&t, c->cell[y][x].text);
		text_add(&t, "\n");
	}
	return t.length;
}
