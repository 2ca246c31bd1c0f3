/*
 * paper.h - what stands on sheets of paper: strokes, shapes and words
 *
 *	page 210 x 297
 *	words at 14, 21: "Homework for Wren", 7 mm high, bold
 *	line from 14, 25 to 196, 25, 0.4 wide
 *
 * All places are millimetres from the left upper corner of the page, y down.
 * Nothing here knows how it gets on paper: the list is written down line by
 * line (list.h), and the program evenhand-paper draws it.  What comes first
 * lies below; words come in the order in which they are read.
 *
 * Ink is percent of black; no colours, so that any printer will do.
 *
 * Plain value, large: keep it off the stack.  Pure; any thread.
 */
#ifndef EVENHAND_PAPER_PAPER_H
#define EVENHAND_PAPER_PAPER_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/text.h"

enum {
	PAPER_ITEMS_MAX = 6000,
	PAPER_BYTES_MAX = 65536, /* of all words */
	PAPER_TITLE_MAX = 200,	 /* bytes of title and author with their zero */
	INK_FULL = 100,
};

enum paper_kind {
	PAPER_PAGE,  /* a new page: wide, high */
	PAPER_LINE,  /* x, y to to_x, to_y */
	PAPER_BOX,   /* x, y; wide, high */
	PAPER_OVAL,  /* its middle x, y; wide, high; turned */
	PAPER_SHAPE, /* x, y: where its own 0, 0 lies; size; path */
	PAPER_WORDS, /* x, y on the line the letters stand on; size; text */
	PAPER_KINDS
};

enum paper_side { SIDE_LEFT, SIDE_MIDDLE, SIDE_RIGHT };

struct paper_item {
	enum paper_kind kind;
	double x, y;
	double to_x, to_y;
	double wide, high; /* mm; of words: the most they may take, in wide */
	double pen;	   /* mm; 0: filled */
	double size;	   /* mm: of letters the em, of a shape its unit */
	int turned;	   /* degrees, clockwise */
	int ink;	   /* percent */
	bool bold;
	enum paper_side side; /* which end of the words stands at x */
	/*
	 * Words, or the path of a shape: "M x y", "L x y", "C x y x y x y" and
	 * "Z", whole hundredths of its unit.  In the list's own bytes, or the
	 * caller's, for good.
	 */
	const char *text;
};

struct paper {
	char title[PAPER_TITLE_MAX];
	char author[PAPER_TITLE_MAX]; /* "" when none */
	int day;		      /* it was made on; day number */
	int pages;
	int items;
	struct paper_item item[PAPER_ITEMS_MAX];
	struct text words;
	char bytes[PAPER_BYTES_MAX];
	bool cut; /* something did not fit and was left out */
};

/* How words look. */
struct lettering {
	double size; /* mm, the em: 10 points are 3.53 mm */
	bool bold;
	enum paper_side side;
	int ink;
};

/* An empty list.  Title and author are cleaned of control characters. */
void paper_init(
    struct paper *p, const char *title, const char *author, int day);

/* Begins a page of such a size; everything until the next one is on it. */
void paper_page(struct paper *p, double wide, double high);

/* A straight line, its pen in mm. */
void paper_line(struct paper *p, double x, double y, double to_x, double to_y,
    double pen, int ink);

/* A rectangle; pen 0 fills it. */
void paper_box(struct paper *p, double x, double y, double wide, double high,
    double pen, int ink);

/* An oval round its middle, turned clockwise; pen 0 fills it. */
void paper_oval(struct paper *p, double x, double y, double wide, double high,
    int turned, double pen);

/* A path in its own units of so many mm; pen in mm, 0 fills it. */
void paper_shape(struct paper *p, double x, double y, double unit, double pen,
    const char *path);

/*
 * One line of words, cleaned of control characters.  It never takes more room
 * than words_mm says (words.h): other letters are made narrower.
 */
void paper_words(struct paper *p, double x, double y, struct lettering how,
    const char *words);

/* How far the list has come, and back to there. */
struct paper_place {
	int pages, items;
	size_t bytes;
};

struct paper_place paper_here(const struct paper *p);
/* What came behind that place is gone. */
void paper_back(struct paper *p, struct paper_place where);

#endif
