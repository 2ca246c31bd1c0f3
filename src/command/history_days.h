/*
 * history_days.h - what was practised, in lines
 */
#ifndef EVENHAND_COMMAND_HISTORY_DAYS_H
#define EVENHAND_COMMAND_HISTORY_DAYS_H

#include <stdbool.h>

#include "evenhand/screen/days.h"

/*
 * Prints the days, each week after a summary of it, and at the end what more
 * than one day comes to.  False: standard output took no more; said.
 */
bool history_print_days(const struct days *d);

#endif
