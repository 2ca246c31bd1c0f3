/*
 * history_csv.h - what was practised, as tables (RFC 4180)
 */
#ifndef EVENHAND_COMMAND_HISTORY_CSV_H
#define EVENHAND_COMMAND_HISTORY_CSV_H

#include <stdbool.h>

#include "evenhand/screen/days.h"

/* A row for each day, stage, kind of block and unit.  False: said. */
bool history_print_csv(const struct days *d);

/* A row for each session. */
bool history_print_sessions(
    const struct days *d, const struct day_range *range);

#endif
