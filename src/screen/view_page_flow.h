/*
 * view_page_flow.h - text that flows over the leaves of a page
 *
 * Paragraphs are set into rows of one width; the rows then fill columns, and
 * columns fill leaves.  A paragraph is kept together where it fits.
 *
 *	sentences ─▶ flow of rows ─▶ leaf 1 [column][column], leaf 2 ...
 *
 * Nothing is ever cut away but what goes beyond FLOW_ROWS_MAX.  Words are
 * borrowed and must outlive the flow, those of flow_row are copied.
 */
#ifndef EVENHAND_SCREEN_VIEW_PAGE_FLOW_H
#define EVENHAND_SCREEN_VIEW_PAGE_FLOW_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/text.h"
#include "evenhand/screen/canvas.h"

enum {
	FLOW_ROWS_MAX = 1000,
	FLOW_PIECES_MAX = 2500,
	FLOW_BYTES = 16384,
	FLOW_GAP = 4, /* columns between two columns of text */
};

enum flow_row { ROW_FIRST, ROW_ON, ROW_BLANK };

/* A stretch of text in a row. */
struct piece {
	int16_t row, column;
	uint16_t bytes;
	uint8_t attributes;
	const char *words;
};

struct flow {
	int width;
	bool ascii;
	bool gaps;   /* blank rows between parts */
	bool frames; /* frames where they are wanted */
	bool brief;  /* so little room that fewer words are told */
	int rows;
	int marked; /* the row to be seen first, 0 when none is named */
	uint8_t row[FLOW_ROWS_MAX]; /* enum flow_row */
	int pieces;
	struct piece piece[FLOW_PIECES_MAX];
	struct text made; /* words that were put together here */
	char bytes[FLOW_BYTES];
};

void flow_init(struct flow *f, int width, bool ascii);

/* A blank row before what follows, when there are gaps; never the first. */
void flow_gap(struct flow *f);

/* A paragraph. */
void flow_words(struct flow *f, unsigned attributes, const char *words);

/* A paragraph with a name before it; all its rows begin at the indent. */
void flow_named(struct flow *f, unsigned attributes, const char *name,
    int indent, const char *words);

/* One row as it is, cut at the width; it belongs to the row before it. */
void flow_row(struct flow *f, unsigned attributes, const char *words);

/* A paragraph in a frame of at least so many rows. */
void flow_frame(
    struct flow *f, unsigned attributes, const char *words, int least);

/* A piece anywhere in the last row. */
void flow_beside(
    struct flow *f, int column, unsigned attributes, const char *words);

/* Keeps words for as long as the flow lives. */
const char *flow_keep(struct flow *f, const char *words);

/* The last row is the one to be seen first. */
void flow_mark(struct flow *f);

/* Leaves when each has so many columns of text of so many rows. */
int flow_leaves(const struct flow *f, int ways, int rows);

/* Whether a paragraph is torn apart where a column of so many rows ends. */
bool flow_torn(const struct flow *f, int rows);

/* Whether the first column, of so many rows, ends where a part ends. */
bool flow_ends_part(const struct flow *f, int rows);

/* On which of them the marked row stands. */
int flow_marked(const struct flow *f, int ways, int rows);

/* Draws one of them. */
void flow_draw(struct canvas *c, const struct flow *f, int row, int column,
    int ways, int rows, int leaf);

#endif
