/*
 * view_pages.h - the pages of the full screen, one function each
 *
 * view.c chooses; view_play.c draws the playing, view_pages.c all else.
 */
#ifndef EVENHAND_SCREEN_VIEW_PAGES_H
#define EVENHAND_SCREEN_VIEW_PAGES_H

#include "evenhand/screen/view.h"

/* The canvas is empty and at least VIEW_COLUMNS_MIN x VIEW_ROWS_MIN. */
void view_page_other(struct canvas *c, const struct view *v);
int view_leaves_other(const struct view *v, int columns, int rows);

#endif
