/*
 * view_play_board.h - the fingerboard to scale
 */
#ifndef EVENHAND_SCREEN_VIEW_PLAY_BOARD_H
#define EVENHAND_SCREEN_VIEW_PLAY_BOARD_H

#include "view_play.h"

/* A title, then a row for each stage that slides, or only the present one. */
void play_board(struct canvas *c, const struct view *v, const struct now *n,
    int row, int rows, int column, int columns);

/*
 * Columns from the nut to a place so many semitones above the open string,
 * when the whole board takes columns.  Proportional to mm: half a column off
 * at most.  The board goes to the octave, or to the routine's farthest place.
 */
int board_column(const struct routine *r, double semitones, int columns);

#endif
