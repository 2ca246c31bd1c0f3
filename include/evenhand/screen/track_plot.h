/*
 * track_plot.h - the pitch of a recording, drawn in cells
 *
 *	 A3 |        .--.      .--.
 *	G#3 |  ------'  '------'  '---
 *	  G3 |
 *	    +---------------------------
 *	     0:00          0:04     0:08
 *
 * Half a cell is the least step up and down, and a column holds all that fell
 * into its time.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_TRACK_PLOT_H
#define EVENHAND_SCREEN_TRACK_PLOT_H

#include <stdbool.h>

#include "evenhand/listen/outline.h"
#include "evenhand/screen/canvas.h"

enum { TRACK_PLOT_ROWS = 16 };

/*
 * Fills a canvas of so many columns and TRACK_PLOT_ROWS rows.  False when no
 * note is in it: there is nothing to draw.
 */
bool track_plot(struct canvas *c, int columns, const struct outline *o,
    double reference_hz, bool ascii);

#endif
