/*
 * colours.h - how the meanings of cells look, with many colours, few or none
 *
 * Colour adds nothing of its own: whatever it tells is told by a word and a
 * place too.  Without colours the differences that matter are kept by bold,
 * reverse and underline.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_COLOURS_H
#define EVENHAND_SCREEN_COLOURS_H

#include <stdbool.h>

enum palette { PALETTE_NONE, PALETTE_8, PALETTE_256 };

struct style {
	int foreground, background; /* of the palette, -1: the terminal's own */
	bool bold, dim, reverse, underline;
};

/* The look of a cell with these attributes (canvas.h). */
struct style style_of(enum palette p, unsigned attributes);

#endif
