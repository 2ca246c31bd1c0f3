/*
 * plan_json.h - today's plan for programs
 *
 * One JSON object (RFC 8259), described in evenhand.1.  Pure; any thread.
 */
#ifndef EVENHAND_SCREEN_PLAN_JSON_H
#define EVENHAND_SCREEN_PLAN_JSON_H

#include "evenhand/base/text.h"
#include "evenhand/coach/forecast.h"
#include "evenhand/coach/plan.h"

enum { PLAN_JSON_BYTES_MAX = 131072 };

/* Adds the plan, its reasons and cautions, and the forecast. */
void plan_json(struct text *out, const struct routine *r, const struct plan *p,
    const struct forecast *f);

#endif
