/*
 * view_page_flow.c - text that flows over the leaves of a page
 */
#include "view_page_flow.h"

#include <string.h>

#include "signs.h"

enum { LINE_BYTES = 2048, FRAME_SIDE = 2 };

void flow_init(struct flow *f, int width, bool ascii)
{
	f->width = width;
	f->ascii = ascii;
	f->gaps = false;
	f->frames = false;
	f->rows = 0;
	f->marked = 0;
	f->pieces = 0;
	f->made = text_in(f->bytes, sizeof(f->bytes));
}

const char *flow_keep(struct flow *f, const char *words)
{
	const char *start = f->bytes + f->made.length;

	text_add(&f->made, words);
	text_add_bytes(&f->made, "", 1);
	return start;
}

static void add_row(struct flow *f, enum flow_row kind)
{
	if (f->rows < FLOW_ROWS_MAX)
		f->row[f->rows++] = (uint8_t)kind;
}

/* A piece in the last row. */
static void add_piece(struct flow *f, int column, unsigned attributes,
    const char *words, size_t bytes)
{
	if (f->pieces < FLOW_PIECES_MAX && f->rows > 0)
		f->piece[f->pieces++] = (struct piece) {
			.row = (int16_t)(f->rows - 1),
			.column = (int16_t)column,
			.bytes = (uint16_t)bytes,
			.attributes = (uint8_t)attributes,
			.words = words,
		};
}

void flow_gap(struct flow *f)
{
	if (f->gaps && f->rows > 0 && f->row[f->rows - 1] != ROW_BLANK)
		add_row(f, ROW_BLANK);
}

void flow_named(struct flow *f, unsigned attributes, const char *name,
    int indent, const char *words)
{
	enum flow_row kind = ROW_FIRST;
	size_t next;

	/* A name that is longer than its column has the words behind it. */
	if (*name && text_columns(name) >= indent)
		indent = text_columns(name) + 1;
	do {
		size_t bytes = text_wrap(words, f->width - indent, &next);

		add_row(f, kind);
		if (kind == ROW_FIRST && *name)
			add_piece(f, 0, attributes, name, strlen(name));
		add_piece(f, indent, attributes, words, bytes);
		words += next;
		kind = ROW_ON;
	} while (*words);
}

void flow_words(struct flow *f, unsigned attributes, const char *words)
{
	flow_named(f, attributes, "", 0, words);
}

void flow_row(struct flow *f, unsigned attributes, const char *words)
{
	const char *kept = flow_keep(f, words);

	add_row(f,
	    f->rows > 0 && f->row[f->rows - 1] != ROW_BLANK ? ROW_ON
							    : ROW_FIRST);
	add_piece(f, 0, attributes, kept, text_clip(kept, f->width));
}

void flow_beside(
    struct flow *f, int column, unsigned attributes, const char *words)
{
	add_piece(
	    f, column, attributes, words, text_clip(words, f->width - column));
}

void flow_mark(struct flow *f)
{
	f->marked = f->rows - 1;
}

/* --- frames --- */

static void frame_edge(struct flow *f, enum flow_row kind, bool top)
{
	char bytes[LINE_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	text_add(&t, sign_of(top ? SIGN_TOP_LEFT : SIGN_BOTTOM_LEFT, f->ascii));
	for (int i = 0; i < f->width - 2; i++)
		text_add(&t, sign_of(SIGN_ACROSS, f->ascii));
	text_add(
	    &t, sign_of(top ? SIGN_TOP_RIGHT : SIGN_BOTTOM_RIGHT, f->ascii));
	add_row(f, kind);
	add_piece(f, 0, ATTRIBUTE_PLAIN, flow_keep(f, bytes), t.length);
}

static void frame_row(
    struct flow *f, unsigned attributes, const char *words, size_t bytes)
{
	const char *side = sign_of(SIGN_DOWN, f->ascii);

	add_row(f, ROW_ON);
	add_piece(f, 0, ATTRIBUTE_PLAIN, side, strlen(side));
	add_piece(f, FRAME_SIDE, attributes, words, bytes);
	add_piece(f, f->width - 1, ATTRIBUTE_PLAIN, side, strlen(side));
}

void flow_frame(
    struct flow *f, unsigned attributes, const char *words, int least)
{
	int rows = 0;
	size_t next;

	frame_edge(f, ROW_FIRST, true);
	for (const char *rest = words; *rest || rows < least; rows++) {
		size_t bytes = text_wrap(
		    rest, f->width - 2 * FRAME_SIDE, &next);

		frame_row(f, attributes, rest, bytes);
		rest += next;
	}
	frame_edge(f, ROW_ON, false);
}

/* --- leaves --- */

/* Where a column of so many rows ends that begins at a row. */
static int column_end(const struct flow *f, int start, int rows)
{
	int end = start + rows < f->rows ? start + rows : f->rows;
	int cut = end;

	while (cut < f->rows && cut > start && f->row[cut] == ROW_ON)
		cut--;
	return cut > start ? cut : end;
}

/* Where the next column begins: never with a blank row. */
static int column_start(const struct flow *f, int row)
{
	while (row < f->rows && f->row[row] == ROW_BLANK)
		row++;
	return row;
}

int flow_leaves(const struct flow *f, int ways, int rows)
{
	int columns = 0;

	if (rows < 1)
		rows = 1;
	for (int row = column_start(f, 0); row < f->rows; columns++)
		row = column_start(f, column_end(f, row, rows));
	return columns == 0 ? 1 : (columns + ways - 1) / ways;
}

bool flow_torn(const struct flow *f, int rows)
{
	int row = column_start(f, 0);

	while (row < f->rows) {
		row = column_end(f, row, rows > 0 ? rows : 1);
		if (row < f->rows && f->row[row] == ROW_ON)
			return true;
		row = column_start(f, row);
	}
	return false;
}

bool flow_ends_part(const struct flow *f, int rows)
{
	int end = column_end(f, column_start(f, 0), rows);

	return end == f->rows || f->row[end] == ROW_BLANK;
}

int flow_marked(const struct flow *f, int ways, int rows)
{
	int columns = 0;

	if (rows < 1)
		rows = 1;
	for (int row = column_start(f, 0); row < f->rows; columns++) {
		row = column_start(f, column_end(f, row, rows));
		if (row > f->marked)
			break;
	}
	return columns / ways;
}

static void draw_rows(struct canvas *c, const struct flow *f, int from, int to,
    int row, int column)
{
	char line[LINE_BYTES];

	for (int i = 0; i < f->pieces; i++) {
		const struct piece *p = &f->piece[i];
		struct text t = text_in(line, sizeof(line));

		if (p->row < from || p->row >= to)
			continue;
		text_add_bytes(&t, p->words, p->bytes);
		canvas_put(c, row + p->row - from, column + p->column,
		    p->attributes, line);
	}
}

void flow_draw(struct canvas *c, const struct flow *f, int row, int column,
    int ways, int rows, int leaf)
{
	int from = column_start(f, 0);

	if (rows < 1)
		rows = 1;
	for (int i = 0; i < (leaf + 1) * ways && from < f->rows; i++) {
		int to = column_end(f, from, rows);
		int way = i - leaf * ways;

		if (way >= 0)
			draw_rows(c, f, from, to, row,
			    column + way * (f->width + FLOW_GAP));
		from = column_start(f, to);
	}
}
