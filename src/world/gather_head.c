/*
 * gather_head.c - the sitting of a journal that is the one in a record, and a
 * name of its own for one whose number another has
 */
#include <stdlib.h>

#include "evenhand/base/text.h"
#include "gather_parts.h"

static void read_local(void *into, const struct query *q)
{
	struct local *l = into;

	l->key = query_whole(q, 0);
	l->origin = query_whole(q, 1);
	l->day = query_int(q, 2);
	l->ended_row = query_whole(q, 3);
	l->how = query_int(q, 4);
	l->length_ms = query_int(q, 5);
	l->ended.utc = query_whole(q, 6);
	l->ended.offset = query_int(q, 7);
}

/* What a sitting of the journal began with, as one of a record would tell. */
static void local_text(struct text *t, const struct query *q)
{
	struct record_routine routine = { .fingerprint = strtoull(
					      query_text(q, 10), NULL, 16) };
	struct record_sitting s = { .day = query_int(q, 2),
		.began = { query_whole(q, 8), query_int(q, 9) },
		.routine = &routine,
		.work_stage = query_text(q, 11),
		.asked_stage = query_text(q, 12),
		.instrument = query_text(q, 13),
		.marking = query_int(q, 14),
		.cap_ms = query_int(q, 15),
		.planned_ms = query_int(q, 16) };

	apart_sitting_text(t, &s);
}

bool gather_find_sitting(struct gathering *g, const struct record_sitting *s,
    struct local *l, bool *taken)
{
	static const struct rows_like sittings = { SITTING_AT,
		SITTINGS_NUMBERED, 17, local_text, read_local };
	char bytes[APART_TEXT];
	struct text t = text_in(bytes, sizeof(bytes));
	struct row_found found = { .into = l };
	bool good;

	*l = (struct local) { 0 };
	apart_sitting_text(&t, s);
	good = gather_find(g, &sittings,
	    &(struct row_wanted) {
		g->r->computer[s->computer].id, s->row, bytes },
	    &found);
	*taken = found.taken;
	return good;
}

/* The name it gets: the made one it has in the record, or one made now. */
static bool made_origin(struct gathering *g, const struct record_sitting *s,
    const struct local *l, int64_t *origin)
{
	const struct record_computer *c = &g->r->computer[s->computer];
	char bytes[APART_TEXT], made[RECORD_ID_MAX];
	struct text t = text_in(bytes, sizeof(bytes));

	if (apart_is(c->id)) {
		if (!gather_origin(g, c->id, c->rows, origin))
			return false;
		if (*origin != l->origin)
			return true;
	}
	apart_sitting_text(&t, s);
	apart_id(made, c->id, s->row, bytes);
	return gather_origin(g, made, c->rows, origin);
}

bool gather_set_apart(
    struct gathering *g, const struct record_sitting *s, struct local *l)
{
	struct query *q;

	g->news->apart++;
	gather_added(g, s->computer, s->row);
	if (!made_origin(g, s, l, &l->origin))
		return false;
	if (l->key == 0)
		return true;
	q = gather_query_of(g, SET_ORIGIN_OF_SITTING);
	query_put(q, 1, l->key);
	query_put(q, 2, l->origin);
	if (query_run(q) != QUERY_GOOD)
		return false;
	q = gather_query_of(g, SET_ORIGIN_OF_TURNS);
	query_put(q, 1, l->key);
	query_put(q, 2, l->origin);
	return query_run(q) == QUERY_GOOD;
}
