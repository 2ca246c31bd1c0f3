/*
 * glyphs.h - the signs of a staff as paths of our own
 *
 * Their unit is one space of the staff.  0, 0 of a clef lies on the line it
 * names, at its left edge; of a sign before a note in its middle, at the height
 * of the note.
 */
#ifndef EVENHAND_PAPER_GLYPHS_H
#define EVENHAND_PAPER_GLYPHS_H

#include "evenhand/paper/staff.h"

/* Room in spaces: of a clef with some air, and of a sign before a note. */
#define GLYPH_CLEF_WIDE 3.4
#define GLYPH_BEFORE_WIDE 1.2

/* Draws a clef: its left edge, the bottom line's y, mm of a space. */
void glyph_clef(
    struct paper *p, enum clef c, double x, double bottom_y, double unit);

/* Places above the top line and below the bottom one that a clef takes. */
int glyph_clef_above(enum clef c);
int glyph_clef_below(enum clef c);

/* Draws what stands before a note. */
void glyph_before(
    struct paper *p, enum sign_before b, double x, double y, double unit);

#endif
