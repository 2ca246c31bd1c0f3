/*
 * elsewhere.h - whether the sound is another one than was asked
 *
 * A slow look beside the quick search: at all longer periods in samples thinned
 * once more, and at a half and a third of the period found.
 *
 *	half a period is as alike as a whole one       an octave too high
 *	a third of it                                  a twelfth too high
 *	a longer period is much more alike             lower
 *
 * Two notes at once have a longer period in common, or none.
 *
 * Pure; memory from an arena once.  One thread at a time.
 */
#ifndef LISTEN_ELSEWHERE_H
#define LISTEN_ELSEWHERE_H

#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"
#include "match.h"

struct elsewhere;

struct elsewhere *elsewhere_new(
    struct arena *a, const struct asked *asked, double rate);

/* The samples of the quick search as they come, LIVE_TAKE_MAX at most. */
void elsewhere_take(struct elsewhere *e, const float *x, size_t n);

/*
 * What a look at the newest samples says.  `hz` is what the quick search found
 * with `likeness` about `at`, or 0 when it found nothing.  Returns the pitch
 * that the sound has instead, or 0 when it fits.  The samples about `at` reach
 * as far as the quick search does.
 */
double elsewhere_look(
    struct elsewhere *e, struct row_at at, double hz, double likeness);

#endif
