/*
 * view_play.h - the page of the playing, and the parts it is made of
 *
 *	view_play.c		where everything stands
 *	view_play_now.c		what is going on at the frame that is heard
 *	view_play_layout.c	how much room each part has at a size
 */
#ifndef EVENHAND_SCREEN_VIEW_PLAY_H
#define EVENHAND_SCREEN_VIEW_PLAY_H

#include "evenhand/screen/view.h"

/* The canvas is empty and at least VIEW_COLUMNS_MIN x VIEW_ROWS_MIN. */
void view_page_play(struct canvas *c, const struct view *v);

/* As view_change, for PAGE_PLAY. */
int64_t view_change_play(const struct view *v, int columns, int rows);

#endif
