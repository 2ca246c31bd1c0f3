/*
 * dry_cycle.c - which earlier stages come back, session after session
 *
 * A session holds only some of them; this shows how they take turns.
 */
#include "dry_parts.h"

static uint32_t bit(int stage)
{
	return UINT32_C(1) << stage;
}

static uint32_t came_back(const struct dry *d)
{
	uint32_t stages = 0;

	for (int b = 0; b < d->plan.blocks; b++)
		if (d->plan.block[b].kind == BLOCK_RECAP)
			stages |= bit(d->plan.block[b].stage);
	return stages;
}

static uint32_t earlier_stages(const struct routine *r, int stage)
{
	uint32_t stages = 0;

	for (int i = 0; i < stage && !r->stage[stage].in_the_air; i++)
		if (!r->stage[i].in_the_air)
			stages |= bit(i);
	return stages;
}

static void session(struct dry *d, const char *name, uint32_t stages)
{
	entry_begin(&d->entry, name);
	for (int i = 0; i < d->routine->stages; i++)
		if (stages & bit(i))
			dry_item(d,
			    message_with(
				M_DRY_STAGE, TEXT(d->routine->stage[i].id)));
	entry_end(&d->entry);
}

/* A line a session, the first one as planned, until each has come back. */
static void cycle(struct dry *d, int stage)
{
	const struct routine *r = d->routine;
	uint32_t all = earlier_stages(r, stage), seen = came_back(d);

	session(d, r->stage[stage].id, seen);
	for (int n = 1; seen != all && n <= PLAN_DRY_MAX; n++) {
		plan_dry(&d->plan, r, stage, n);
		session(d, "", came_back(d));
		seen |= came_back(d);
	}
}

void dry_cycle(struct dry *d)
{
	bool headed = false;
	uint32_t first;

	for (int i = 0; i < d->routine->stages; i++) {
		plan_dry(&d->plan, d->routine, i, 0);
		first = came_back(d);
		/* Some come back at once, yet not all. */
		if (first == 0 || first == earlier_stages(d->routine, i))
			continue;
		if (!headed)
			dry_heading(d, message_of(M_DRY_CYCLE));
		headed = true;
		cycle(d, i);
	}
}
