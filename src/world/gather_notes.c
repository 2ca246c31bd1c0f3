/*
 * gather_notes.c - notes joined: the same number and words, or told apart
 *
 * They never change, so a note is new or known.  One that lost its sitting
 * finds it again when a record knows it.
 */
#include "evenhand/base/text.h"
#include "gather_parts.h"

static void local_text(struct text *t, const struct query *q)
{
	struct record_note n = { .at = { query_whole(q, 2), query_int(q, 3) },
		.day = query_int(q, 4),
		.kind = (enum note_kind)query_within(q, 5, 0, INT16_MAX),
		.finger = query_int(q, 6),
		.words = query_text(q, 7) };

	apart_note_text(t, &n);
}

static void read_sitting(void *into, const struct query *q)
{
	int64_t *sitting = into;

	*sitting = query_whole(q, 1);
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

/* One that is here, with this sitting or with none. */
static bool known(
    struct gathering *g, int64_t key, int64_t its_sitting, int64_t sitting)
{
	struct query *q;

	g->news->notes_known++;
	if (its_sitting != 0 || sitting == 0)
		return true;
	g->changed = true;
	q = gather_query_of(g, SET_NOTE_SITTING);
	query_put(q, 1, key);
	query_put(q, 2, sitting);
	return query_run(q) == QUERY_GOOD;
}

bool gather_note(
    struct gathering *g, const struct record_note *n, int64_t sitting)
{
	static const struct rows_like notes = { NOTE_AT, NOTES_NUMBERED, 8,
		local_text, read_sitting };
	const struct record_computer *c = &g->r->computer[n->computer];
	char bytes[APART_TEXT], made[RECORD_ID_MAX];
	struct text t = text_in(bytes, sizeof(bytes));
	int64_t origin = g->computer[n->computer], its_sitting = 0;
	struct row_found found = { .into = &its_sitting };

	apart_note_text(&t, n);
	if (!gather_find(g, &notes,
		&(struct row_wanted) { c->id, n->row, bytes }, &found))
		return false;
	if (found.key != 0)
		return known(g, found.key, its_sitting, sitting);
	if (!found.taken)
		return add_note(g, n, origin, sitting);
	g->news->apart++;
	apart_id(made, c->id, n->row, bytes);
	return gather_origin(g, made, c->rows, &origin) &&
	    add_note(g, n, origin, sitting);
}
