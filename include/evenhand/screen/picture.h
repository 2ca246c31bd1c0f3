/*
 * picture.h - a canvas as a picture, for papers and pages of the web
 *
 * An SVG with the colours of a terminal that has 256 of them.  Each letter has
 * a place of its own, so that any font will do; blocks and lines are drawn as
 * shapes, so that no font shows gaps between them.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_PICTURE_H
#define EVENHAND_SCREEN_PICTURE_H

#include "evenhand/base/text.h"
#include "evenhand/screen/canvas.h"

/* Adds the picture; the title is what it shows, for those who cannot see it. */
void picture_write(struct text *out, const struct canvas *c, const char *title);

#endif
