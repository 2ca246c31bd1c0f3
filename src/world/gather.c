/*
 * gather.c - a record merged into a journal, in one transaction
 */
#include "evenhand/world/gather.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/world/file.h"
#include "gather_parts.h"
#include "journal_lock.h"
#include "journal_spool.h"
#include "random.h"

/* Beyond it a computer gets another name, long before numbers end. */
#define ROWS_OWN_MOST INT64_C(1000000000000)

struct query *gather_query_of(struct gathering *g, enum gather_query q)
{
	if (g->query[q].st == NULL)
		g->query[q] = query_of(g->d, gather_sql[q]);
	query_again(&g->query[q]);
	return &g->query[q];
}

bool gather_key(struct query *q, int64_t *key)
{
	*key = query_next(q) ? query_whole(q, 0) : 0;
	query_again(q);
	return *key > 0;
}

void gather_added(struct gathering *g, int computer, int64_t row)
{
	g->changed = true;
	if (row <= g->own_rows &&
	    strcmp(g->r->computer[computer].id, g->own) == 0)
		g->own_apart = true;
}

static bool set_ids(struct database *d, const struct student_ids *ids)
{
	char words[IDS_TEXT], sql[IDS_TEXT + 64];
	struct text t = text_in(words, sizeof(words));

	/* Nothing but digits: they were read by record_hex and ids_told. */
	ids_tell(&t, ids);
	snprintf(sql, sizeof(sql), "UPDATE about SET student = '%s'", words);
	return database_run(d, sql);
}

/*
 * Whose journal it is, and whether the record is that one's; an empty journal
 * becomes its student's.  *f is set where it is refused.
 */
static bool same_student(
    struct gathering *g, const struct join_asked *asked, struct fault *f)
{
	struct student_ids known, theirs, both;
	enum join_answer answer;

	query_ids(g->d, &known);
	if (database_number(g->d,
		"SELECT (SELECT count(*) FROM sittings) + "
		"(SELECT count(*) FROM notes)",
		1) == 0)
		known.count = 0;
	ids_of_record(&theirs, g->r);
	answer = join_answer(&known, &theirs, asked, &both);
	if (answer == JOIN_KNOWN)
		return true;
	if (answer != JOIN_TOGETHER)
		return fault_set(
		    f, join_refusal(answer, g->r, &known, &theirs));
	if (known.count > 0)
		g->news->joined = both.count - known.count;
	return set_ids(g->d, &both);
}

static bool add_computers(struct gathering *g)
{
	const struct record *r = g->r;

	g->computer = arena_take(
	    &g->arena, (size_t)(r->computers + 1) * sizeof(*g->computer));
	for (int i = 0; g->computer != NULL && i < r->computers; i++)
		if (!gather_origin(g, r->computer[i].id, r->computer[i].rows,
			&g->computer[i]))
			return false;
	g->no_memory |= g->computer == NULL;
	return g->computer != NULL;
}

static bool add_routine(
    struct gathering *g, const struct record_routine *m, int64_t *key)
{
	char fingerprint[32];
	struct query *q = gather_query_of(g, ADD_ROUTINE);

	snprintf(fingerprint, sizeof(fingerprint), "%016llx",
	    (unsigned long long)m->fingerprint);
	query_put_text(q, 1, fingerprint);
	query_put_text(q, 2, m->name);
	query_put(q, 3, m->edition);
	query_put_text(q, 4, m->text);
	if (query_run(q) != QUERY_GOOD)
		return false;
	q = gather_query_of(g, FIND_ROUTINE);
	query_put_text(q, 1, fingerprint);
	return gather_key(q, key);
}

static bool add_routines(struct gathering *g)
{
	const struct record_routine *m = g->r->routine;

	g->routine = arena_take(
	    &g->arena, (size_t)(g->r->routines + 1) * sizeof(*g->routine));
	for (int i = 0; g->routine != NULL && m != NULL; i++, m = m->next)
		if (!add_routine(g, m, &g->routine[i]))
			return false;
	g->no_memory |= g->routine == NULL;
	return g->routine != NULL;
}

/*
 * This computer goes on under another name when somebody else writes under
 * its own, so that no more clash.
 */
static bool keep_own_name(struct gathering *g)
{
	char id[RECORD_ID_MAX], sql[96];

	if (!g->own_apart && database_last(g->d, g->own) <= ROWS_OWN_MOST)
		return true;
	random_id(id);
	snprintf(sql, sizeof(sql), "UPDATE about SET origin = '%s'", id);
	return database_run(g->d, sql);
}

static bool merge(struct gathering *g)
{
	const struct record *r = g->r;

	if (!add_computers(g) || !add_routines(g))
		return false;
	for (const struct record_sitting *s = r->sitting; s; s = s->next)
		if (!gather_sitting(g, s))
			return false;
	for (const struct record_note *n = r->note; n; n = n->next)
		if (!gather_note(g, n, 0))
			return false;
	return (!g->changed || gather_order(g)) && keep_own_name(g);
}

static void gathering_done(struct gathering *g)
{
	for (int i = 0; i < GATHER_QUERIES; i++)
		query_done(&g->query[i]);
	free(g->day);
	arena_done(&g->arena);
	arena_done(&g->scratch);
}

/* Why it did not go into the journal. */
static bool fault_of(
    struct database *d, enum trouble t, const char *path, struct fault *f)
{
	static const enum message_id sentences[TROUBLES] = {
		[TROUBLE_BUSY] = M_GATHER_BUSY,
		[TROUBLE_FULL] = M_GATHER_FULL,
		[TROUBLE_READ_ONLY] = M_GATHER_READ_ONLY,
		[TROUBLE_NEWER] = M_GATHER_NEWER,
		[TROUBLE_BROKEN] = M_GATHER_BROKEN,
		[TROUBLE_OTHER_FILE] = M_GATHER_OTHER_FILE,
	};

	database_close(d);
	if (trouble_short(t))
		return short_failed(f, t);
	return fault_set(f,
	    message_with(
		sentences[t] != M_NONE ? sentences[t] : M_GATHER_UNREACHABLE,
		TEXT(path)));
}

static bool gather_open(struct database *d, const char *path,
    const struct gather_what *what, struct gathered *news, struct fault *f)
{
	struct gathering g = { .d = d, .r = what->record, .news = news };
	enum trouble trouble;
	bool good;

	*news = (struct gathered) { 0 };
	f->message = message_of(M_NONE);
	database_text(d, "SELECT origin FROM about", g.own, sizeof(g.own));
	g.own_rows = database_last(d, g.own);
	/* Keys move, and what refers to them after them. */
	good = database_run(d, "PRAGMA foreign_keys = OFF") &&
	    database_run(d, "PRAGMA temp_store = MEMORY") &&
	    database_begin(d) && same_student(&g, &what->asked, f) &&
	    merge(&g) && !database_starved(d) && database_commit(d);
	trouble = good ? TROUBLE_NONE : database_trouble(d);
	gathering_done(&g);
	if (good)
		return true;
	*news = (struct gathered) { 0 };
	database_rollback(d);
	if (f->message.id == M_NONE && !g.no_memory)
		return fault_of(d, trouble, path, f);
	database_close(d);
	return f->message.id != M_NONE
	    ? false
	    : fault_set(f, message_of(M_RECORD_NO_MEMORY));
}

/* A new journal is made in memory, and put into its place with all of it. */
static bool gather_new(const char *path, const struct gather_what *what,
    struct gathered *news, struct fault *f)
{
	struct database d = { 0 };
	enum trouble trouble = database_memory(&d, NULL);

	if (trouble == TROUBLE_NONE && !database_name(&d))
		trouble = database_trouble(&d);
	if (trouble != TROUBLE_NONE)
		return fault_of(&d, trouble, path, f);
	if (!gather_open(&d, path, what, news, f))
		return false;
	trouble = database_put_new(&d, path);
	if (trouble != TROUBLE_NONE)
		return fault_of(&d, trouble, path, f);
	database_close(&d);
	return true;
}

static bool gather_there(const char *path, const struct gather_what *what,
    struct gathered *news, struct fault *f)
{
	struct database d = { 0 };
	bool slow, good;
	enum trouble trouble = database_open(&d, path, &slow);

	if (trouble != TROUBLE_NONE)
		return fault_of(&d, trouble, path, f);
	good = gather_open(&d, path, what, news, f);
	database_close(&d);
	return good;
}

bool gather_into(const char *journal, const struct gather_what *what,
    struct gathered *news, struct fault *f)
{
	bool good = false;
	int lock = -1;

	/* What is wrong with it shows when the journal is opened. */
	folder_make_for(journal, f);
	if (what->into == GATHER_OWN && !lock_take(journal, &lock))
		return fault_set(f, message_of(M_WORLD_JOURNAL_LOCKED));
	if (access(journal, F_OK) != 0) {
		good = gather_new(journal, what, news, f);
		if (good && what->into == GATHER_OWN)
			folder_to_disk(journal);
	}
	/* It was there, or came meanwhile. */
	if (!good && access(journal, F_OK) == 0)
		good = gather_there(journal, what, news, f);
	lock_free(lock);
	return good;
}
