/*
 * live.h - the pitch of a string while it is being bowed
 *
 * Two pieces of sound, each one period of the lowest note long, lie on both
 * sides of an instant; the distance at which they are most alike is the period
 * there:
 *
 *	2 sum(a b) / (sum(a a) + sum(b b))      (the normalised difference of
 *	McLeod and Wyvill, "A smarter way to find pitch", ICMC 2005, here with
 *	both pieces about the instant)
 *
 * So an instant is known one lowest period after it was played, 8 ms on a D
 * string.  What was asked bounds the search; a slower look at all periods says
 * whether the sound is another one.
 *
 * Pure; memory from an arena once, and none while it listens.  One thread at a
 * time.
 */
#ifndef EVENHAND_LISTEN_LIVE_H
#define EVENHAND_LISTEN_LIVE_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"

struct live;

/* For thinned samples of this rate (thin.h).  NULL when memory is short. */
struct live *live_new(struct arena *a, const struct asked *asked, double rate);

/*
 * Takes up to LIVE_TAKE_MAX samples; ask live_next until it has no more before
 * the next ones.
 */
enum { LIVE_TAKE_MAX = 4096 };
void live_take(struct live *l, const float *x, size_t n);

/* The next instant, when all it needs was heard. */
bool live_next(struct live *l, struct instant *m);

/* Thinned samples that must have come behind an instant before it is known. */
int live_behind(const struct live *l);

#endif
