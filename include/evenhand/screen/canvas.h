/*
 * canvas.h - a page as cells of text, without any terminal
 *
 * Pages draw into a canvas; one file of the world room copies changed cells
 * to the terminal, and tests compare the canvas with golden text.  A cell holds
 * one letter (with its accents) and attributes; a wide sign takes its cell and
 * an empty one after it.  What falls outside is clipped, never wrapped.
 *
 * Plain value in the caller's memory.  One thread.
 */
#ifndef EVENHAND_SCREEN_CANVAS_H
#define EVENHAND_SCREEN_CANVAS_H

#include <stddef.h>
#include <stdint.h>

enum {
	CANVAS_COLUMNS_MAX = 300,
	CANVAS_ROWS_MAX = 120,
	CELL_BYTES = 12,
};

/*
 * Attributes are meanings, not colours: the terminal file chooses.  None says
 * anything that a word, a sign or a place does not say too.  HAND, BOW, CLEAN
 * and SHAKY stand on cells drawn with blocks, which must not be reversed.
 */
enum attribute {
	ATTRIBUTE_PLAIN = 0,
	ATTRIBUTE_STRONG = 1,
	ATTRIBUTE_FAINT = 2,
	ATTRIBUTE_REVERSE = 4,
	ATTRIBUTE_HAND = 8,  /* the moving mark of the bow line */
	ATTRIBUTE_CARE = 16, /* cautions */
	ATTRIBUTE_CLEAN = 32,
	ATTRIBUTE_SHAKY = 64,
	ATTRIBUTE_BOW = 128, /* the stick, a string: what stands still */
};

struct cell {
	char text[CELL_BYTES]; /* UTF-8, "" behind a wide sign */
	uint8_t attributes;
};

struct canvas {
	int columns, rows; /* clamped to the maxima, at least 1 */
	struct cell cell[CANVAS_ROWS_MAX][CANVAS_COLUMNS_MAX];
};

/* The size alone, clamped; what stands in the cells is not defined. */
void canvas_size(struct canvas *c, int columns, int rows);

/* An empty canvas of spaces; sizes are clamped. */
void canvas_init(struct canvas *c, int columns, int rows);

/* Draws text from a cell on; returns the columns it took, clipped ones too. */
int canvas_put(
    struct canvas *c, int row, int column, unsigned attributes, const char *s);

/* Writes the canvas as rows of text without trailing spaces, '\n' each. */
size_t canvas_text(const struct canvas *c, char *buffer, size_t size);

#endif
