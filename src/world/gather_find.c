/*
 * gather_find.c - which row of a journal is the one in a record
 *
 *	the same name and number, and it began with the same	the same
 *	told apart here before: its made name is here		the same
 *	told apart there: a number's made name is its name	the same
 *	none of these						a new one
 *
 * The same for sittings and for notes.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "gather_parts.h"

/* One search under way. */
struct search {
	struct gathering *g;
	const struct rows_like *kind;
	const struct row_wanted *row;
	struct row_found *found;
};

/* What the row that a question gives began with. */
static bool same(
    const struct search *s, const struct query *q, char bytes[APART_TEXT])
{
	struct text t = text_in(bytes, APART_TEXT);

	s->kind->content(&t, q);
	return strcmp(bytes, s->row->content) == 0;
}

static void take(struct search *s, const struct query *q)
{
	s->found->key = query_whole(q, 0);
	s->kind->take(s->found->into, q);
}

/* The row of an origin with the number; *there: there is one. */
static bool look_at(struct search *s, const char *id, bool *there)
{
	struct query *q = gather_query_of(s->g, s->kind->at);
	char bytes[APART_TEXT];

	query_put_text(q, 1, id);
	query_put(q, 2, s->row->number);
	*there = query_next(q);
	if (*there && same(s, q, bytes))
		take(s, q);
	query_again(q);
	return !q->bad;
}

/* Among all with the number the one whose made name is this. */
static bool look_for_made(struct search *s)
{
	struct query *q = gather_query_of(s->g, s->kind->numbered);
	char bytes[APART_TEXT], made[RECORD_ID_MAX];

	query_put(q, 1, s->row->number);
	while (s->found->key == 0 && query_next(q)) {
		if (!same(s, q, bytes))
			continue;
		apart_id(made, query_text(q, s->kind->origin), s->row->number,
		    bytes);
		if (strcmp(made, s->row->id) == 0)
			take(s, q);
	}
	query_again(q);
	return !q->bad;
}

bool gather_find(struct gathering *g, const struct rows_like *kind,
    const struct row_wanted *row, struct row_found *found)
{
	struct search s = { g, kind, row, found };
	char made[RECORD_ID_MAX];
	bool other;

	apart_id(made, row->id, row->number, row->content);
	if (!look_at(&s, row->id, &found->taken) ||
	    (found->key == 0 && !look_at(&s, made, &other)))
		return false;
	return found->key != 0 || !apart_is(row->id) || look_for_made(&s);
}
