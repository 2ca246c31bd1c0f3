/*
 * letters_parts.h - what the files of the letters share
 */
#ifndef EVENHAND_SCREEN_LETTERS_PARTS_H
#define EVENHAND_SCREEN_LETTERS_PARTS_H

#include "evenhand/screen/letters.h"

/* Some letters side by side, parted by bars; the last band has no codes. */
struct band {
	const char *codes;
	const char *row[LETTERS_SEVEN];
};

extern const struct band letters_five[], letters_seven[];

/* A letter to draw: the code of a drawing, and what stands above it. */
struct letter {
	char code;
	char accent; /* one of ` ' ^ " ~ o v, ' ' none */
};

/*
 * The letters of a text, signs and accented ones broken up into what can be
 * drawn: "Größe" is G R O with dots, S S E.  Returns how many, at most most;
 * -1 when something in it has no drawing.
 */
int letters_fold(const char *s, struct letter *out, int most);

#endif
