/*
 * dry_run.h - what a routine comes to, in plain lines, before anyone plays it
 *
 * The second half of `evenhand check`: minutes, bows per finger, slide metres
 * and fingertip speed of each stage's session, and how long one pass through
 * all stages takes beside the cap.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_DRY_RUN_H
#define EVENHAND_SCREEN_DRY_RUN_H

#include "evenhand/base/text.h"
#include "evenhand/routine/routine.h"

/* Adds the whole dry run, lines under 80 columns. */
void dry_run_write(struct text *out, const struct routine *r);

#endif
