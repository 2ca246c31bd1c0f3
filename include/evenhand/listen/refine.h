/*
 * refine.h - the pitch of a bow once more, when all of it was heard
 *
 * In a room the sound of an instant ago is still there, and every window that
 * looks at the whole sound reads a swing too narrow and an arrival too late.
 * So the pitch found live is taken out of the sound: each partial is turned
 * back by its phase, and what is still left of its motion is read through a
 * window of some periods.  The direct sound stands still then, the room does
 * not.  The weighted median over all partials is added to the pitch, and all
 * of it is done again, four times.
 *
 * Pure; memory from the arena, some 40 bytes for a sample.  Any thread.
 */
#ifndef EVENHAND_LISTEN_REFINE_H
#define EVENHAND_LISTEN_REFINE_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"

/*
 * Refines the pitch of instants 0..n-1, heard live in thinned samples of this
 * rate.  Sample 0 belongs to instant 0.  Only instants that are HEARD_NOTE
 * change; a gap of others between them stays one.  False when memory is short.
 */
bool refine(struct arena *a, const struct asked *asked, double rate,
    const float *x, size_t samples, struct instant *m, size_t n);

#endif
