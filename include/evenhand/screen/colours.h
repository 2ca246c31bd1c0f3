/*
 * colours.h - how the meanings of cells look, with many colours, few or none
 *
 * Colour adds nothing of its own: whatever it tells is told by a word and a
 * place too.  Without colours the differences that matter are kept by bold,
 * reverse and underline.
 *
 * With colours the page brings its own background, so that its contrast does
 * not hang on what the terminal happens to be set to: what is read in play has
 * at least 7:1 and all other text 4.5:1 (WCAG 2.x, 1.4.6 and 1.4.3).
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_COLOURS_H
#define EVENHAND_SCREEN_COLOURS_H

#include <stdbool.h>
#include <stdint.h>

enum palette { PALETTE_NONE, PALETTE_8, PALETTE_256 };

struct style {
	int foreground, background; /* of the palette, -1: the terminal's own */
	bool bold, reverse, underline;
};

/*
 * The look of a cell with these attributes (canvas.h).  Of several the most
 * pressing one gives the colours: hand, reverse, care, clean, shaky, bow,
 * strong, faint.
 */
struct style style_of(enum palette p, unsigned attributes);

/* A colour of xterm's 256 as 0xRRGGBB, for pictures. */
uint32_t colour_rgb(int colour);

#endif
