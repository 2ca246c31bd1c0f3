/*
 * signs.h - every sign beyond ASCII that a page uses, and its ASCII twin
 *
 * The one table of them.  A sign and its twin both take one column, so that a
 * page lies the same in both.  None of them carries meaning alone: a word or
 * a place says the same.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_SIGNS_H
#define EVENHAND_SCREEN_SIGNS_H

#include <stdbool.h>

enum sign {
	/* Blocks: letters, the hand, bars. */
	SIGN_FULL,
	SIGN_UPPER,
	SIGN_LOWER,
	SIGN_LEFT,
	SIGN_RIGHT,
	SIGN_SHADE, /* what is still empty of a bar */

	/* Lines. */
	SIGN_THICK, /* the stick of a bow, a string under the fingers */
	SIGN_ACROSS,
	SIGN_DOWN,
	SIGN_TOP_LEFT,
	SIGN_TOP_RIGHT,
	SIGN_BOTTOM_LEFT,
	SIGN_BOTTOM_RIGHT,
	SIGN_NOTCH, /* across a thick line */
	SIGN_NUT,
	SIGN_PLACE, /* where a finger stands on a string */

	/* Beside a word. */
	SIGN_CLEAN,
	SIGN_SHAKY,
	SIGN_BACK,    /* the left pedal */
	SIGN_FORWARD, /* the right pedal */
	SIGN_CHOSEN,
	SIGN_ITEM,
	SIGN_BETWEEN, /* between two short things in one line */
	SIGN_COUNT
};

/* The sign as UTF-8, or its twin. */
const char *sign_of(enum sign s, bool ascii);

#endif
