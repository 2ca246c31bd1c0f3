/*
 * dry_parts.h - what the sections of a dry run share
 */
#ifndef EVENHAND_SCREEN_DRY_PARTS_H
#define EVENHAND_SCREEN_DRY_PARTS_H

#include "entry.h"
#include "evenhand/base/message.h"
#include "evenhand/base/text.h"
#include "evenhand/coach/plan.h"
#include "evenhand/routine/routine.h"

/* What the sections lean on. */
struct dry {
	struct text *out;
	const struct routine *routine;
	struct entry entry; /* the one under way */
	struct plan plan;
};

/* A line of its own after an empty one. */
void dry_heading(struct dry *d, struct message m);

/* One item of the entry under way. */
void dry_item(struct dry *d, struct message m);

/* The section of earlier stages; nothing when they always come back at once. */
void dry_cycle(struct dry *d);

#endif
