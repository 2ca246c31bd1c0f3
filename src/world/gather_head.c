/*
 * gather_head.c - which sitting of a journal is the one in a record
 *
 *	the same name and number, and it began with the same	the same
 *	told apart here before: its made name is here		the same
 *	told apart there: a number's made name is its name	the same
 *	none of these						a new one
 */
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/text.h"
#include "gather_parts.h"

static void read_local(const struct query *q, struct local *l)
{
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

/* The sitting of an origin with a number, when it began with this. */
static bool look_at(struct gathering *g, const char *id, int64_t row,
    const char *content, struct local *found, bool *taken)
{
	struct query *q = gather_query_of(g, SITTING_AT);
	char bytes[APART_TEXT];
	struct text t = text_in(bytes, sizeof(bytes));

	query_put_text(q, 1, id);
	query_put(q, 2, row);
	if (query_next(q)) {
		*taken = true;
		local_text(&t, q);
		if (strcmp(bytes, content) == 0)
			read_local(q, found);
	}
	query_again(q);
	return !q->bad;
}

/* Among all with a number the one whose made name is this. */
static bool look_for_made(struct gathering *g, const char *id, int64_t row,
    const char *content, struct local *found)
{
	struct query *q = gather_query_of(g, SITTINGS_NUMBERED);
	char made[RECORD_ID_MAX];

	query_put(q, 1, row);
	while (found->key == 0 && query_next(q)) {
		char bytes[APART_TEXT];
		struct text t = text_in(bytes, sizeof(bytes));

		local_text(&t, q);
		apart_id(made, query_text(q, 17), row, bytes);
		if (strcmp(bytes, content) == 0 && strcmp(made, id) == 0)
			read_local(q, found);
	}
	query_again(q);
	return !q->bad;
}

bool gather_find_sitting(struct gathering *g, const struct record_sitting *s,
    struct local *found, bool *taken)
{
	const char *id = g->r->computer[s->computer].id;
	char bytes[APART_TEXT], made[RECORD_ID_MAX];
	struct text t = text_in(bytes, sizeof(bytes));
	bool other = false;

	*found = (struct local) { 0 };
	*taken = false;
	apart_sitting_text(&t, s);
	if (!look_at(g, id, s->row, bytes, found, taken) || found->key != 0)
		return found->key != 0;
	apart_id(made, id, s->row, bytes);
	if (!look_at(g, made, s->row, bytes, found, &other))
		return false;
	return found->key != 0 || !apart_is(id) ||
	    look_for_made(g, id, s->row, bytes, found);
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
