/*
 * gather_apart.c - names for rows whose numbers are taken, made of their content
 *
 * A copied home folder writes under the same name as the first, so two sittings
 * can have one number.  The one that comes later gets a name made of that name,
 * its number and all that it began with: wherever the two meet, and in
 * whatever order, it gets the same.  Its first eight zeros only tell where it
 * is worth to look; what is the same is always decided by the content.
 */
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "evenhand/base/fingerprint.h"
#include "evenhand/base/text.h"
#include "gather_parts.h"

static const char first[] = "00000000";

/* Another start, for as many bits again. */
#define SECOND_START UINT64_C(0x6c62272e07bb0142)

void apart_sitting_text(struct text *t, const struct record_sitting *s)
{
	text_format(t,
	    "sitting|%" PRId64 "|%d|%d|%016" PRIx64 "|%s|%s|%s|%d|%d|%d",
	    s->began.utc, s->began.offset, s->day, s->routine->fingerprint,
	    s->work_stage, s->asked_stage, s->instrument, s->marking, s->cap_ms,
	    s->planned_ms);
}

void apart_note_text(struct text *t, const struct record_note *n)
{
	text_format(t, "note|%" PRId64 "|%d|%d|%d|%d|%s", n->at.utc,
	    n->at.offset, n->day, (int)n->kind, n->finger, n->words);
}

void apart_id(char id[RECORD_ID_MAX], const char *origin, int64_t row,
    const char *content)
{
	char bytes[APART_TEXT + 64];
	struct text t = text_in(bytes, sizeof(bytes));
	uint64_t a, b;

	text_format(&t, "%s|%" PRId64 "|%s", origin, row, content);
	a = fingerprint_add(FINGERPRINT_START, bytes, t.length);
	b = fingerprint_add(SECOND_START, bytes, t.length);
	snprintf(
	    id, RECORD_ID_MAX, "%s%08" PRIx64 "%016" PRIx64, first, b >> 32, a);
}

bool apart_is(const char *id)
{
	return strncmp(id, first, strlen(first)) == 0;
}

bool gather_origin(
    struct gathering *g, const char *id, int64_t rows, int64_t *key)
{
	struct query *q = gather_query_of(g, ADD_ORIGIN);

	query_put_text(q, 1, id);
	query_put(q, 2, rows);
	if (query_run(q) != QUERY_GOOD)
		return false;
	q = gather_query_of(g, FIND_ORIGIN_KEY);
	query_put_text(q, 1, id);
	return gather_key(q, key);
}
