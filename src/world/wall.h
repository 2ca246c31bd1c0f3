/*
 * wall.h - frames by the wall clock, as long as this program runs
 *
 *	frames = base + (now - origin) x rate
 *
 * worked out anew from the steady clock whenever it is asked for, so nothing
 * drifts.  A thread looks at the clock every WALL_LOOK_MS, for nothing but to
 * prove that the program runs: when nobody looked for more than DEVICE_JUMP_MS,
 * the program was stopped, the computer slept or was far too busy.  That time
 * is lost, not caught up: the count goes on from where it was last seen.
 *
 * Any thread may ask.
 */
#ifndef EVENHAND_WORLD_WALL_H
#define EVENHAND_WORLD_WALL_H

#include <stdint.h>

#include "evenhand/base/fault.h"

enum { WALL_LOOK_MS = 20 };

struct wall;

/* Begins at frame 0, now.  NULL with a fault: no thread or memory. */
struct wall *wall_open(int rate, struct fault *f);

int64_t wall_frame(struct wall *w);

/* ms of the clock that are in no frame; grows by DEVICE_JUMP_MS or more. */
int64_t wall_lost_ms(struct wall *w);

/* NULL allowed. */
void wall_close(struct wall *w);

#endif
