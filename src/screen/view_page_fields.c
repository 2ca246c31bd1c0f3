/*
 * view_page_fields.c - the two answers of a page, as the pedals lie
 */
#include "view_page_fields.h"

#include "signs.h"

enum {
	GAP = 2,
	PAGE_LETTERS = 5,    /* letters take one row of so many of the page */
	ROWS_BIG = 16,	     /* rows of a page from which on words are big */
	ROWS_FRAMED = 22,    /* and the fields have frames, */
	ROWS_AIRY = 28,	     /* and air round the words */
	COLUMNS_FRAMED = 32, /* if a field is so broad */
	COLUMNS_KEYS = 29,   /* of a field that can name all keys */
	WORDS_BYTES = 320,
};

int fields_letters(int rows)
{
	return rows / PAGE_LETTERS > LETTERS_FIVE ? rows / PAGE_LETTERS
						  : LETTERS_FIVE;
}

bool fields_face(const char *const *words, int count, int columns, int rows,
    struct face *face)
{
	static const struct face faces[] = {
		{ LETTERS_SEVEN, 3, 1 },
		{ LETTERS_FIVE, 3, 1 },
		{ LETTERS_SEVEN, 2, 1 },
		{ LETTERS_FIVE, 2, 1 },
		{ LETTERS_SEVEN, 1, 2 },
		{ LETTERS_SEVEN, 1, 1 },
		{ LETTERS_FIVE, 1, 2 },
		{ LETTERS_FIVE, 1, 1 },
	};

	for (size_t i = 0; i < sizeof(faces) / sizeof(faces[0]); i++) {
		bool fits = letters_rows(&faces[i]) <= rows;

		for (int w = 0; w < count; w++) {
			int wide = letters_columns(&faces[i], words[w]);

			fits &= wide > 0 && wide <= columns;
		}
		if (fits) {
			*face = faces[i];
			return true;
		}
	}
	return false;
}

static int sentence_rows(const struct answer *a, int width)
{
	char words[WORDS_BYTES];
	int rows = 0;
	size_t next;

	message_text(&a->sentence, words, sizeof(words));
	for (const char *s = words; *s; s += next, rows++)
		text_wrap(s, width, &next);
	return rows;
}

/* Columns for a sentence, with air before a frame. */
static int text_width(const struct fields *f)
{
	return f->width - 4 * f->framed;
}

static int larger(int a, int b)
{
	return a > b ? a : b;
}

/* With air at both sides if it can be. */
static bool big_words(struct fields *f, const struct story *story, int page)
{
	const char *words[] = { message_sentence(story->back.word),
		message_sentence(story->forward.word) };
	int inside = f->width - 2 * f->framed;
	int rows = fields_letters(page);

	return page >= ROWS_BIG &&
	    (fields_face(words, 2, inside - 2, rows, &f->face) ||
		fields_face(words, 2, inside, rows, &f->face));
}

void fields_fit(
    struct fields *f, const struct story *story, int columns, int rows)
{
	f->gap = GAP;
	f->width = (columns - GAP) / 2;
	f->framed = rows >= ROWS_FRAMED && f->width >= COLUMNS_FRAMED;
	f->big = big_words(f, story, rows);
	f->air = f->framed && f->big && rows >= ROWS_AIRY;
	f->sentence = larger(sentence_rows(&story->back, text_width(f)),
	    sentence_rows(&story->forward, text_width(f)));
	/* Keys stand in the frame or in a row of their own. */
	f->rows = (f->big ? letters_rows(&f->face) : 1) + f->sentence +
	    2 * f->air + (f->framed ? 2 : 1);
}

/* --- drawing --- */

struct field {
	struct canvas *c;
	const struct fields *f;
	const struct answer *answer;
	bool forward, ascii;
	int row, column;
};

/* A row of text in the middle of the field. */
static void centre(
    const struct field *d, int row, unsigned attributes, const char *words)
{
	int column = d->column + (d->f->width - text_columns(words)) / 2;

	canvas_put(d->c, d->row + row, column, attributes, words);
}

static void draw_edge(const struct field *d, int row, bool top)
{
	int last = d->column + d->f->width - 1;
	enum sign left = top ? SIGN_TOP_LEFT : SIGN_BOTTOM_LEFT;
	enum sign right = top ? SIGN_TOP_RIGHT : SIGN_BOTTOM_RIGHT;

	for (int x = d->column + 1; x < last; x++)
		canvas_put(d->c, d->row + row, x, ATTRIBUTE_PLAIN,
		    sign_of(SIGN_ACROSS, d->ascii));
	canvas_put(d->c, d->row + row, d->column, ATTRIBUTE_PLAIN,
	    sign_of(left, d->ascii));
	canvas_put(d->c, d->row + row, last, ATTRIBUTE_PLAIN,
	    sign_of(right, d->ascii));
}

/* Words in an edge, near the outer side of the page. */
static void draw_in_edge(
    const struct field *d, int row, unsigned attributes, const char *words)
{
	char spaced[WORDS_BYTES];
	struct text t = text_in(spaced, sizeof(spaced));

	text_add(&t, " ");
	text_add(&t, words);
	text_add(&t, " ");

	int column = d->forward ? d->f->width - 2 - text_columns(spaced) : 2;

	canvas_put(d->c, d->row + row, d->column + column, attributes, spaced);
}

/* "← back, left pedal", the arrow on the outer side. */
static void whose(const struct field *d, char *words)
{
	struct text t = text_in(words, WORDS_BYTES);

	if (!d->forward) {
		text_add(&t, sign_of(SIGN_BACK, d->ascii));
		text_add(&t, " ");
	}
	text_add(&t,
	    message_sentence(
		d->forward ? M_PAGES_PEDAL_FORWARD : M_PAGES_PEDAL_BACK));
	if (d->forward) {
		text_add(&t, " ");
		text_add(&t, sign_of(SIGN_FORWARD, d->ascii));
	}
}

static const char *keys(const struct field *d)
{
	bool all = d->f->width - 4 * d->f->framed >= COLUMNS_KEYS;

	if (d->answer->keys != M_NONE)
		return message_sentence(d->answer->keys);
	if (d->forward)
		return message_sentence(
		    all ? M_PAGES_KEYS_FORWARD : M_PAGES_KEYS_FORWARD_FEW);
	return message_sentence(
	    all ? M_PAGES_KEYS_BACK : M_PAGES_KEYS_BACK_FEW);
}

static void draw_frame(const struct field *d)
{
	int last = d->f->rows - 1;
	char words[WORDS_BYTES];

	draw_edge(d, 0, true);
	draw_edge(d, last, false);
	for (int y = 1; y < last; y++) {
		canvas_put(d->c, d->row + y, d->column, ATTRIBUTE_PLAIN,
		    sign_of(SIGN_DOWN, d->ascii));
		canvas_put(d->c, d->row + y, d->column + d->f->width - 1,
		    ATTRIBUTE_PLAIN, sign_of(SIGN_DOWN, d->ascii));
	}
	whose(d, words);
	draw_in_edge(d, 0, ATTRIBUTE_STRONG, words);
	draw_in_edge(d, last, ATTRIBUTE_FAINT, keys(d));
}

/* " ← NEXT ", the whole width inside the field. */
static void draw_bar(const struct field *d, int row)
{
	const char *word = message_sentence(d->answer->word);
	int first = d->column + d->f->framed;
	int width = d->f->width - 2 * d->f->framed;

	for (int x = 0; x < width; x++)
		canvas_put(
		    d->c, d->row + row, first + x, ATTRIBUTE_REVERSE, " ");
	centre(d, row, ATTRIBUTE_REVERSE | ATTRIBUTE_STRONG, word);
	canvas_put(d->c, d->row + row, first + (d->forward ? width - 2 : 1),
	    ATTRIBUTE_REVERSE,
	    sign_of(d->forward ? SIGN_FORWARD : SIGN_BACK, d->ascii));
}

static void draw_sentence(const struct field *d, int row)
{
	char words[WORDS_BYTES], line[WORDS_BYTES];
	size_t next;

	message_text(&d->answer->sentence, words, sizeof(words));
	for (const char *s = words; *s; s += next, row++) {
		size_t bytes = text_wrap(s, text_width(d->f), &next);
		struct text t = text_in(line, sizeof(line));

		text_add_bytes(&t, s, bytes);
		centre(d, row, ATTRIBUTE_PLAIN, line);
	}
}

static void draw_field(const struct field *d)
{
	int row = d->f->framed;

	if (d->f->framed)
		draw_frame(d);
	if (d->f->big) {
		const char *word = message_sentence(d->answer->word);
		int wide = letters_columns(&d->f->face, word);

		row += d->f->air;
		letters_draw(d->c, d->row + row,
		    d->column + (d->f->width - wide) / 2, ATTRIBUTE_STRONG,
		    &d->f->face, d->ascii, word);
		row += letters_rows(&d->f->face) + d->f->air;
	} else {
		draw_bar(d, row++);
	}
	draw_sentence(d, row);
	if (!d->f->framed)
		centre(d, d->f->rows - 1, ATTRIBUTE_FAINT, keys(d));
}

void fields_draw(struct canvas *c, const struct fields *f,
    const struct story *story, int row, int column, bool ascii)
{
	struct field d = { c, f, &story->back, false, ascii, row, column };

	draw_field(&d);
	d.answer = &story->forward;
	d.forward = true;
	d.column = column + f->width + f->gap;
	draw_field(&d);
}
