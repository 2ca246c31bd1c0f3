/*
 * moment.h - a moment as it stands in a record: 2026-03-02T17:00:00+01:00
 *
 * The time is that of the clock on the wall, what follows is how far it stood
 * east of UTC (RFC 3339, section 5.6, with seconds where a clock has them:
 * +00:19:32).  Years 1970 to 9999.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_RECORD_MOMENT_H
#define EVENHAND_RECORD_MOMENT_H

#include <stdbool.h>

#include "evenhand/base/date.h"
#include "evenhand/base/text.h"

/* Whether a moment can be written so. */
bool moment_can_be_told(struct moment m);

/* Adds a moment that can be told. */
void moment_tell(struct text *t, struct moment m);

/* Reads what moment_tell writes, and nothing else; false leaves *out. */
bool moment_told(const char *s, struct moment *out);

#endif
