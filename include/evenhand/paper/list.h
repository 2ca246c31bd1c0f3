/*
 * list.h - the list of a paper as lines of text, between two programs
 *
 *	evenhand-paper 1
 *	title Homework for Wren
 *	author J. Penhallow
 *	day 2026-03-02
 *	page 21000 29700
 *	line 1400 2500 19600 2500 40 100	x y x y pen ink
 *	box 1400 3000 18200 2000 0 10		x y wide high pen ink
 *	oval 5000 5000 250 180 -20 0		x y wide high turned pen
 *	shape 1400 5000 170 20 M 0 0 L 10 20	x y unit pen path
 *	words 1400 2100 700 bold left 8200 100 Homework for Wren
 *						x y size weight side most ink
 *	end
 *
 * Numbers are whole hundredths of a millimetre (ink: percent, turned: degrees),
 * so that a list is the same wherever it is made.  The words of a line go to
 * its end.  A list without its "end" was cut off on its way.
 *
 * Pure; any thread.
 */
#ifndef EVENHAND_PAPER_LIST_H
#define EVENHAND_PAPER_LIST_H

#include <stdbool.h>

#include "evenhand/base/text.h"
#include "evenhand/paper/paper.h"

#define LIST_FIRST "evenhand-paper 1"

enum { LIST_BYTES_MAX = 1024 * 1024, LIST_MM_MAX = 5000 };

/* Writes the whole list; look at out->cut. */
void list_write(struct text *out, const struct paper *p);

/*
 * The same in parts, for more sheets than one paper holds: what stands before
 * the first page (of one of them), the pages of each, the end.
 */
void list_write_begin(struct text *out, const struct paper *p);
void list_write_pages(struct text *out, const struct paper *p);
void list_write_end(struct text *out);

enum list_line {
	LIST_HEAD, /* LIST_FIRST */
	LIST_ITEM,
	LIST_TITLE,
	LIST_AUTHOR,
	LIST_DAY,
	LIST_END,
	LIST_BAD /* not a line of this list */
};

/*
 * Reads one line without its end, not the first one of a list.  Words, paths
 * and what stands behind title, author and day are pointed to in the line
 * itself: item->text.
 */
enum list_line list_read(const char *line, struct paper_item *item);

/* A list on its way, line by line; begins as zeros. */
struct list_look {
	bool begun, ended;
	/* Pages so far, mm: their number, the widest, all of them in height. */
	int pages;
	double wide, high;
};

/*
 * Reads the next line: a string of so many bytes, its end a zero instead of the
 * line feed.  LIST_BAD: it does not stand in a list of this version, or not
 * there, or is not UTF-8.  The list is whole when look->ended.
 */
enum list_line list_next(struct list_look *look, const char *line,
    size_t length, struct paper_item *item);

/* One step of a path. */
struct list_step {
	char kind; /* 'M', 'L', 'C', 'Z' */
	double x[3], y[3];
};

/* Reads the next step and moves on; false at the end or where none is. */
bool list_step(const char **path, struct list_step *step);

#endif
