/*
 * gather_notes.c - notes joined: the same number and words, or told apart
 *
 * They never change, so a note is new or known.  One that lost its sitting
 * finds it again when a record knows it.
 */
#include <string.h>

#include "evenhand/base/text.h"
#include "gather_parts.h"

/* A note here: its key, 0 none, and whether it has a sitting. */
struct found {
	int64_t key, sitting;
};

static void local_text(struct text *t, const struct query *q)
{
	struct record_note n = { .at = { query_whole(q, 2), query_int(q, 3) },
		.day = query_int(q, 4),
		.kind = (enum note_kind)query_within(q, 5, 0, INT16_MAX),
		.finger = query_int(q, 6),
		.words = query_text(q, 7) };

	apart_note_text(t, &n);
}

static bool look_at(struct gathering *g, const char *id, int64_t row,
    const char *content, struct found *found, bool *taken)
{
	struct query *q = gather_query_of(g, NOTE_AT);
	char bytes[APART_TEXT];
	struct text t = text_in(bytes, sizeof(bytes));

	query_put_text(q, 1, id);
	query_put(q, 2, row);
	if (query_next(q)) {
		*taken = true;
		local_text(&t, q);
		if (strcmp(bytes, content) == 0)
			*found = (struct found) { query_whole(q, 0),
				query_whole(q, 1) };
	}
	query_again(q);
	return !q->bad;
}

/* Among all with a number the one whose made name is this. */
static bool look_for_made(struct gathering *g, const char *id, int64_t row,
    const char *content, struct found *found)
{
	struct query *q = gather_query_of(g, NOTES_NUMBERED);
	char made[RECORD_ID_MAX];

	query_put(q, 1, row);
	while (found->key == 0 && query_next(q)) {
		char bytes[APART_TEXT];
		struct text t = text_in(bytes, sizeof(bytes));

		local_text(&t, q);
		apart_id(made, query_text(q, 8), row, bytes);
		if (strcmp(bytes, content) == 0 && strcmp(made, id) == 0)
			*found = (struct found) { query_whole(q, 0),
				query_whole(q, 1) };
	}
	query_again(q);
	return !q->bad;
}

static bool add_note(struct gathering *g, const struct record_note *n,
    int64_t origin, int64_t sitting)
{
	struct query *q = gather_query_of(g, ADD_NOTE);

	query_put(q, 1, origin);
	query_put(q, 2, n->row);
	query_put(q, 3, sitting);
	query_put(q, 4, n->at.utc);
	query_put(q, 5, n->at.offset);
	query_put(q, 6, n->day);
	query_put(q, 7, n->kind);
	query_put(q, 8, n->finger);
	query_put_text(q, 9, n->words);
	g->news->notes_new++;
	gather_added(g, n->computer, n->row);
	return query_run(q) == QUERY_GOOD;
}

static bool known(struct gathering *g, const struct found *f, int64_t sitting)
{
	struct query *q;

	g->news->notes_known++;
	if (f->sitting != 0 || sitting == 0)
		return true;
	g->changed = true;
	q = gather_query_of(g, SET_NOTE_SITTING);
	query_put(q, 1, f->key);
	query_put(q, 2, sitting);
	return query_run(q) == QUERY_GOOD;
}

bool gather_note(
    struct gathering *g, const struct record_note *n, int64_t sitting)
{
	const struct record_computer *c = &g->r->computer[n->computer];
	char bytes[APART_TEXT], made[RECORD_ID_MAX];
	struct text t = text_in(bytes, sizeof(bytes));
	struct found found = { 0 };
	int64_t origin = g->computer[n->computer];
	bool taken = false, other = false;

	apart_note_text(&t, n);
	apart_id(made, c->id, n->row, bytes);
	if (!look_at(g, c->id, n->row, bytes, &found, &taken) ||
	    (found.key == 0 &&
		!look_at(g, made, n->row, bytes, &found, &other)) ||
	    (found.key == 0 && apart_is(c->id) &&
		!look_for_made(g, c->id, n->row, bytes, &found)))
		return false;
	if (found.key != 0)
		return known(g, &found, sitting);
	if (!taken)
		return add_note(g, n, origin, sitting);
	g->news->apart++;
	return gather_origin(g, made, c->rows, &origin) &&
	    add_note(g, n, origin, sitting);
}
