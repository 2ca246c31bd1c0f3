/*
 * letters.h - letters of five and seven rows, read from two metres
 *
 * A face is one of two drawings, taken once or several times as large.  How
 * large that is to the eye: a letter of h mm at d mm is
 *
 *	2 atan(h / 2d)		 20 mm at 2 m: 34 minutes of arc
 *
 * and 20 to 22 minutes are what screens are asked for, 16 the least.  A 15.6
 * inch screen of 1920 x 1080 dots is 194 mm high, so five rows of 40 are 24 mm.
 *
 * Capitals, digits and what stands between words; small letters are drawn as
 * capitals, accents over a lower letter.  Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_LETTERS_H
#define EVENHAND_SCREEN_LETTERS_H

#include <stdbool.h>

#include "evenhand/screen/canvas.h"

enum { LETTERS_FIVE = 5, LETTERS_SEVEN = 7, LETTERS_MAX = 40 };

struct face {
	int rows;  /* LETTERS_FIVE or LETTERS_SEVEN */
	int scale; /* 1.. times */
	int gap;   /* between letters, 1 or 2, before it is scaled */
};

/* Whether each letter of a text has a drawing, and there are not too many. */
bool letters_can(const char *s);

/* Rows and columns of a text in cells; 0 columns when it cannot be drawn. */
int letters_rows(const struct face *f);
int letters_columns(const struct face *f, const char *s);

/*
 * Draws a text with its upper left cell at a place; cells that are empty stay
 * as they are.  Nothing when it cannot be drawn.
 */
void letters_draw(struct canvas *c, int row, int column, unsigned attributes,
    const struct face *f, bool ascii, const char *s);

#endif
