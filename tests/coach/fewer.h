/*
 * fewer.h - what must hold of a plan beside another one of the same past
 *
 * A shorter session never has more turns, and a finger that is left out never
 * means more for anybody.
 */
#ifndef EVENHAND_TESTS_FEWER_H
#define EVENHAND_TESTS_FEWER_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/coach/plan.h"

/* A shorter cap never adds a turn. */
static inline void fewer_when_shorter(
    const struct plan *plan, const struct plan_wish *w)
{
	static struct plan shorter;
	struct routine less = *w->routine;
	struct plan_wish wish = *w;

	for (int i = 0; i < less.stages; i++)
		less.stage[i].minutes_ms = 0;
	/* Just below, where rounds and recaps change places, or anywhere. */
	less.cap_ms = plan->cap_ms -
	    (seeded(0, 1) ? seeded(0, 1000) : seeded(0, plan->cap_ms / 2));
	if (less.cap_ms <= 0)
		return;
	wish.routine = &less;
	plan_make(&shorter, &wish);
	assert_true(shorter.turns <= plan->turns);
	assert_true(shorter.bows <= plan->bows);
}

static inline void fewer_count(const struct plan *plan, int *turns)
{
	for (int i = 0; i < plan->turns; i++)
		if (plan->turn[i].unit >= 0)
			turns[plan->turn[i].unit]++;
}

/* A finger left out: less for it, and not a turn more for anyone. */
static inline void fewer_without(
    const struct plan *plan, const struct plan_wish *w)
{
	static struct plan without;
	struct plan_wish wish = *w;
	int before[UNITS_MAX] = { 0 }, after[UNITS_MAX] = { 0 };

	/* catch_up waits when something hurts, so there is another past. */
	if (w->routine->make_up == MAKE_UP_CATCH_UP)
		return;
	wish.hurt |= UINT32_C(1) << seeded(1, FINGERS_MAX);
	plan_make(&without, &wish);
	fewer_count(plan, before);
	fewer_count(&without, after);
	for (int u = 0; u < w->routine->units; u++)
		assert_true(after[u] <= before[u]);
	assert_true(without.length_ms <= plan->length_ms);
}

#endif
