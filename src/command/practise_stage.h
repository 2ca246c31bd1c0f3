/*
 * practise_stage.h - another stage for today (--stage)
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_PRACTISE_STAGE_H
#define EVENHAND_COMMAND_PRACTISE_STAGE_H

#include "practise.h"
#include "practise_call.h"

/*
 * The stage of an id.  False when there is none, or the file has not opened it:
 * said, and *status is the end.
 */
bool stage_opened(
    const struct routine *r, const char *id, int *stage, int *status);

/*
 * Puts the stage that was asked for into the wish, if there is one; routine and
 * journal are read already.  False: it may not be worked on, which is said, and
 * *status is the end.
 */
bool practice_stage(struct practice *p, const struct call *c,
    struct plan_wish *wish, int *status);

#endif
