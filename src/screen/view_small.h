/*
 * view_small.h - what is shown where no page fits: one sentence
 */
#ifndef EVENHAND_SCREEN_VIEW_SMALL_H
#define EVENHAND_SCREEN_VIEW_SMALL_H

#include <stdbool.h>

#include "evenhand/screen/canvas.h"

/* Whether a screen is smaller than any page. */
bool view_is_small(int columns, int rows);

/* Draws the sentence, wrapped. */
void view_draw_small(struct canvas *c);

#endif
