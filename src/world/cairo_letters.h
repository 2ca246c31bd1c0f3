/*
 * cairo_letters.h - words of a sheet, drawn by pango
 *
 * Only for evenhand-paper; one thread.
 */
#ifndef EVENHAND_WORLD_CAIRO_LETTERS_H
#define EVENHAND_WORLD_CAIRO_LETTERS_H

#include <stdbool.h>

#include <pango/pangocairo.h>

#include "evenhand/paper/paper.h"

/* Zeros before they are opened. */
struct letters {
	PangoLayout *weight[2]; /* plain, bold */
};

/* Finds the letters of this computer; false: it has none. */
bool letters_open(struct letters *l);

/* Draws words in the colour that was set. */
void letters_put(
    const struct letters *l, cairo_t *cairo, const struct paper_item *words);

void letters_done(struct letters *l);

#endif
