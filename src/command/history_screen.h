/*
 * history_screen.h - what was practised, on a full screen
 */
#ifndef EVENHAND_COMMAND_HISTORY_SCREEN_H
#define EVENHAND_COMMAND_HISTORY_SCREEN_H

#include "evenhand/screen/days.h"
#include "evenhand/world/terminal.h"

/*
 * Shows the charts until a key leaves them.  False: there is no screen to be
 * had or nothing that could be drawn, and lines are the way.  *status is the
 * exit status otherwise.
 */
bool history_show_charts(const struct days *d, enum terminal_colours colours,
    bool ascii, int *status);

#endif
