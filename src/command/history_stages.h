/*
 * history_stages.h - the stages of a day and their first goes, in lines
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_HISTORY_STAGES_H
#define EVENHAND_COMMAND_HISTORY_STAGES_H

#include "evenhand/screen/days.h"
#include "history_page.h"

/* One sentence: which stages were played; nothing when none was. */
void stages_say(
    struct history_page *p, const struct days *d, const struct day_sum *day);

/*
 * A sentence for each stage that had its first go, with its instrument where
 * the day has the stage on two.
 */
void first_goes_say(
    struct history_page *p, const struct days *d, const struct day_sum *day);

#endif
