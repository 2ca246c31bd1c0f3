/*
 * pen.h - going down a page, and on to the next
 *
 * The pen stands at a height of the page.  What is drawn moves it down; what
 * has no room any more begins a page.  Some things stay together: they are
 * tried, and when they run out of the page taken back and begun on a new one.
 */
#ifndef EVENHAND_PAPER_PEN_H
#define EVENHAND_PAPER_PEN_H

#include "evenhand/base/message.h"
#include "evenhand/paper/paper.h"
#include "evenhand/paper/sheet.h"

/* Sizes of letters in mm at their usual size, and the air between lines. */
#define PEN_TITLE 7.4
#define PEN_HEADING 5.0
#define PEN_BODY 4.1
#define PEN_SMALL 3.5
#define PEN_CUE 12.0
#define PEN_LEADING 1.28

/* Pages before those of this paper, and all; fewer than 2 get no number. */
struct pen_pages {
	int before, all;
};

struct pen {
	struct paper *paper;
	double wide, high; /* of the page */
	double scale;	   /* of everything on it */
	double left, room; /* what may be written on */
	double y, top, bottom;
	bool brief; /* no more words than are needed */
	struct pen_pages pages;
	bool kept; /* no page may begin */
	bool over; /* and one should have */
};

/* At the top of a first page. */
void pen_init(struct pen *pen, struct paper *p, enum sheet_size size,
    double scale, struct pen_pages pages);

/* So many usual mm at the pen's scale. */
double pen_mm(const struct pen *pen, double mm);

/* Sees to it that there is room for so many mm of paper. */
void pen_need(struct pen *pen, double mm);

/* Moves down by usual mm; air at the top of a page is left out. */
void pen_air(struct pen *pen, double mm);

/*
 * Words from a place on, wrapped to a width in mm of paper; two or three lines
 * stay on one page.
 */
void pen_words(struct pen *pen, double x, double wide, struct lettering how,
    const char *words);

/* Lettering of a usual size at the pen's scale. */
struct lettering pen_letters(const struct pen *pen, double size, bool bold);

/* The height such words take. */
double pen_words_high(const struct pen *pen, double wide, struct lettering how,
    const char *words);

/* The short name of the weekday of a day number. */
enum message_id pen_weekday(int day);

/* Draws something if this page has room for all of it; else leaves no trace. */
bool pen_try(struct pen *pen, void (*draw)(struct pen *pen, const void *what),
    const void *what);

/* Draws something that stays on one page, if it can. */
void pen_keep(struct pen *pen, void (*draw)(struct pen *pen, const void *what),
    const void *what);

#endif
