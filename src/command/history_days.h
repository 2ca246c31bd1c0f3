/*
 * history_days.h - one practice day in a few lines
 */
#ifndef EVENHAND_COMMAND_HISTORY_DAYS_H
#define EVENHAND_COMMAND_HISTORY_DAYS_H

#include "evenhand/base/text.h"
#include "evenhand/coach/history.h"

/*
 * Adds what was practised on a day: how long, stages, bows of each finger,
 * first-go marks and notes, and an empty line.
 */
void history_add_day(struct text *page, const struct history *h, int day);

#endif
