/*
 * class_parts.h - what the pages of a class are drawn with
 *
 *	class_lines.c	the class in plain lines
 *	class_page.c	the list on a screen
 *	class_foot.c	what stands below the list: the chosen one, keys, help
 *	class_lesson.c	a lesson page
 *	class_keys.c	keys
 */
#ifndef EVENHAND_SCREEN_CLASS_PARTS_H
#define EVENHAND_SCREEN_CLASS_PARTS_H

#include "evenhand/screen/class_page.h"
#include "view_play.h"

enum {
	CLASS_ROOMY = 20,  /* rows from which there are headings */
	CLASS_TALL = 34,   /* and from which there is air */
	CLASS_WIDE = 110,  /* columns from which four weeks are shown */
	CLASS_MIDDLE = 70, /* and from which the last seven days are */
};

/* Where things stand: columns left..right-1, rows of the list top..bottom-1. */
struct class_area {
	int left, right, top, bottom;
	int foot; /* first row of what is below */
	int keys; /* row of the keys */
};

struct class_area class_area(int columns, int rows);

/* Whether a row is shown while names are looked for. */
bool class_matches(const struct class_page *page, int at);

/* The next row shown after (by 1) or before (-1) one, -1 none. */
int class_next(const struct class_page *page, int at, int by);

/* --- class_foot.c --- */
void class_draw_foot(struct canvas *c, const struct class_page *page,
    const struct class_area *a);
/* The row of the keys, as many as there is room for. */
void class_keys(struct canvas *c, const struct class_area *a,
    const enum message_id *keys, size_t count);
void class_draw_help(struct canvas *c, const struct class_area *a);

/* --- class_lesson.c --- */
void class_draw_lesson(struct canvas *c, const struct class_page *page);
/* Moves on in it; false: its end is shown already. */
bool class_lesson_on(struct class_page *page, int columns, int rows);
bool class_lesson_back(struct class_page *page, int columns, int rows);

#endif
