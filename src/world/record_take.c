/*
 * record_take.c - a record out of a journal
 *
 * Sittings are taken one after the other as they happened, each with what
 * belongs to it.  What no record can hold (a date before 1970, a number that
 * was damaged) is left out and counted, so that what is given can be read.
 */
#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/record/join.h"
#include "record_take.h"

/* Of a day on, or with a note that is. */
#define TAKEN \
	"(s.day >= ?1 OR EXISTS (SELECT 1 FROM notes n " \
	"WHERE n.sitting = s.key AND n.day >= ?1))"

void *take_room(struct taking *k, int number, size_t size)
{
	void *piece = arena_take(&k->r->arena, (size_t)(number + 1) * size);

	k->no_memory = k->no_memory || piece == NULL;
	return piece;
}

const char *take_text(struct taking *k, const struct query *q, int column)
{
	const char *s = query_text(q, column);
	const char *kept = arena_text(&k->r->arena, s, strlen(s));

	k->no_memory = k->no_memory || kept == NULL;
	return kept != NULL ? kept : "";
}

static bool take_computers(struct taking *k)
{
	int number = query_count(k->d, "SELECT count(*) FROM origins");
	struct query q = query_of(k->d,
	    "SELECT key, id, max(last, 1) FROM origins o WHERE EXISTS (SELECT "
	    "1 FROM sittings WHERE origin = o.key) OR EXISTS (SELECT 1 FROM "
	    "notes WHERE origin = o.key) ORDER BY key");

	if (number < 0 || number > RECORD_COMPUTERS_MAX)
		number = RECORD_COMPUTERS_MAX;
	k->r->computer = take_room(k, number, sizeof(*k->r->computer));
	k->computer = take_room(k, number, sizeof(*k->computer));
	while (!k->no_memory && k->r->computers < number && query_next(&q)) {
		struct record_computer *c = &k->r->computer[k->r->computers];

		/* In a damaged journal nothing is sure to be there only once. */
		if (!record_id_good(query_text(&q, 1)) ||
		    record_has_computer(k->r, query_text(&q, 1)))
			continue;
		memcpy(c->id, query_text(&q, 1), RECORD_ID_MAX);
		c->rows = query_whole(&q, 2);
		if (c->rows > RECORD_ROW_MOST)
			c->rows = RECORD_ROW_MOST;
		k->computer[k->r->computers++] = query_whole(&q, 0);
	}
	return query_done(&q);
}

static bool take_routines(struct taking *k)
{
	int number = query_count(k->d, "SELECT count(*) FROM routines");
	struct record_routine **end = &k->r->routine;
	struct query q = query_of(k->d,
	    "SELECT key, fingerprint, name, edition, text FROM routines r "
	    "WHERE EXISTS (SELECT 1 FROM sittings s WHERE s.routine = r.key "
	    "AND " TAKEN ") ORDER BY key");

	query_bind(&q, k->since);
	k->routine = take_room(k, number, sizeof(*k->routine));
	while (!k->no_memory && k->r->routines < number && query_next(&q)) {
		struct record_routine *m = take_room(k, 0, sizeof(*m));

		if (m == NULL)
			break;
		m->fingerprint = strtoull(query_text(&q, 1), NULL, 16);
		m->name = take_text(k, &q, 2);
		m->edition = query_int(&q, 3);
		m->text = take_text(k, &q, 4);
		/* Sittings of one that no record can hold are left out. */
		if (!record_routine_good(m) ||
		    record_routine_of(k->r, m->fingerprint) != NULL)
			continue;
		k->routine[k->r->routines++] = query_whole(&q, 0);
		*end = m;
		end = &m->next;
	}
	return query_done(&q);
}

static bool take_sittings(struct taking *k)
{
	struct record_sitting **end = &k->r->sitting;
	struct query q = query_of(k->d,
	    "SELECT " TAKE_SITTING " FROM sittings s WHERE " TAKEN
	    " ORDER BY s.key");

	query_bind(&q, k->since);
	while (!k->no_memory && query_next(&q))
		take_sitting(k, &q, &end);
	return query_done(&q);
}

static bool take_all(struct taking *k)
{
	struct query outside = query_of(k->d,
	    "SELECT " TAKE_NOTE " FROM notes WHERE sitting IS NULL "
	    "AND day >= ?1 ORDER BY key");
	bool good;

	take_prepare(k);
	good = take_computers(k) && take_routines(k) && take_sittings(k);
	if (good)
		take_notes(k, &outside, k->since, &k->r->note);
	good = query_done(&outside) && good;
	return take_prepared_done(k) && good;
}

/*
 * The first of the student's ids, and the others.  False when what was taken is
 * nobody's; where there is no journal yet there is nothing, and no student.
 */
static bool take_ids(struct database *d, struct record *r)
{
	struct student_ids ids;
	struct text t = text_in(r->student, sizeof(r->student));

	query_ids(d, &ids);
	if (ids.count > 0)
		text_add(&t, ids.id[0]);
	for (int i = 1; i < ids.count; i++)
		ids_add(&r->also, ids.id[i]);
	return ids.count > 0 || (r->sittings == 0 && r->notes == 0);
}

bool record_take(const char *journal, int since, struct record *r,
    struct record_left *left, struct fault *f)
{
	struct database d;
	enum trouble trouble = database_look(&d, journal);
	struct taking k = { .d = &d, .r = r, .left = left, .since = since };
	bool good;

	*r = (struct record) { 0 };
	*left = (struct record_left) { 0 };
	if (trouble != TROUBLE_NONE) {
		database_close(&d);
		return trouble == TROUBLE_NEWER
		    ? fault_set(f,
			  message_with(M_RECORD_JOURNAL_NEWER, TEXT(journal)))
		    : look_failed(f, trouble, journal);
	}
	r->since = since;
	if (since < 0)
		k.since = INT_MIN;
	good = database_run(&d, "BEGIN") && take_all(&k) && take_ids(&d, r);
	if (database_starved(&d))
		trouble = database_trouble(&d);
	database_close(&d);
	if (trouble_short(trouble))
		return look_failed(f, trouble, journal);
	if (good && !k.no_memory)
		k.no_memory = !record_leave_twice(r, left);
	if (good && !k.no_memory)
		return true;
	return k.no_memory ? fault_set(f, message_of(M_RECORD_NO_MEMORY))
			   : look_failed(f, TROUBLE_BROKEN, journal);
}
