/*
 * journal_write.c - rows brought into the journal, each exactly once
 *
 * A row that comes twice changes nothing (journal_sql.c), so whoever is not sure
 * may bring everything again.
 *
 * Roll-ups are counted anew from their turns in the same transaction, once for
 * each day and sitting, before the next one is touched and before the commit.
 */
#include <string.h>

#include "journal_database.h"

/* The keys of other tables that a row's statements may ask for. */
struct keys {
	int64_t origin, sitting; /* 0: none */
	int64_t length;		 /* of its sitting, as far as is known */
};

/* The statement, ready to be bound; NULL when it cannot be prepared. */
static sqlite3_stmt *statement(struct database *d, enum statement s)
{
	if (d->statement[s] != NULL) {
		sqlite3_reset(d->statement[s]);
		sqlite3_clear_bindings(d->statement[s]);
		return d->statement[s];
	}
	if (sqlite3_prepare_v3(d->handle, journal_sql[s], -1,
		SQLITE_PREPARE_PERSISTENT, &d->statement[s], NULL) != SQLITE_OK)
		return NULL;
	return d->statement[s];
}

static void bind(sqlite3_stmt *st, const char *name, int64_t value)
{
	int at = sqlite3_bind_parameter_index(st, name);

	if (at > 0)
		sqlite3_bind_int64(st, at, value);
}

static void bind_text(sqlite3_stmt *st, const char *name, const char *text)
{
	int at = sqlite3_bind_parameter_index(st, name);

	if (at > 0)
		sqlite3_bind_text(st, at, text, -1, SQLITE_STATIC);
}

/* Runs a statement that was bound; its texts are let go again. */
static bool finish(sqlite3_stmt *st)
{
	bool good = st != NULL && sqlite3_step(st) == SQLITE_DONE;

	if (st != NULL) {
		good = sqlite3_reset(st) == SQLITE_OK && good;
		sqlite3_clear_bindings(st);
	}
	return good;
}

/* Runs a statement with the values of a row. */
static bool run_row(struct database *d, enum statement s, const struct row *row,
    const struct keys *k)
{
	const struct row_layout *l = &row_layouts[row->kind];
	sqlite3_stmt *st = statement(d, s);

	if (st == NULL)
		return false;
	for (int i = 0; i < l->numbers; i++)
		bind(st, l->number_name[i], row->number[i]);
	for (int i = 0; i < l->texts; i++)
		bind_text(st, l->text_name[i], row->text[i]);
	bind_text(st, ":origin_id", row->origin);
	bind(st, ":origin", k->origin);
	bind(st, ":length", k->length);
	if (k->sitting > 0)
		bind(st, ":sitting", k->sitting);
	return finish(st);
}

/* The key a row's question is answered with; 0 none, -1 on an error. */
static int64_t find(struct database *d, enum statement s, const struct row *row,
    const struct keys *k)
{
	sqlite3_stmt *st = statement(d, s);
	int64_t key = 0;
	int rc;

	if (st == NULL)
		return -1;
	bind_text(st, ":origin_id", row->origin);
	bind(st, ":origin", k->origin);
	bind(st, ":sitting_of", row->number[ROW_SITTING_OF]);
	rc = sqlite3_step(st);
	if (rc == SQLITE_ROW)
		key = sqlite3_column_int64(st, 0);
	else if (rc != SQLITE_DONE)
		key = -1;
	sqlite3_reset(st);
	sqlite3_clear_bindings(st);
	return key;
}

bool database_renew(struct database *d, enum statement what, int64_t key)
{
	sqlite3_stmt *st = statement(d, what);

	if (st == NULL)
		return false;
	bind(st, what == RENEW_DAY ? ":day" : ":sitting", key);
	return finish(st);
}

static bool renew(struct database *d)
{
	if (!d->renew)
		return true;
	d->renew = false;
	return database_renew(d, RENEW_DAY, d->renew_day) &&
	    database_renew(d, RENEW_SEEN, d->renew_sitting) &&
	    database_renew(d, RENEW_SHARES, d->renew_sitting);
}

/* Notes whose roll-ups change; those of another one are renewed first. */
static bool touch(struct database *d, int64_t day, int64_t sitting)
{
	if (d->renew && (d->renew_day != day || d->renew_sitting != sitting) &&
	    !renew(d))
		return false;
	d->renew = true;
	d->renew_day = day;
	d->renew_sitting = sitting;
	return true;
}

bool database_begin(struct database *d)
{
	d->renew = false;
	return finish(statement(d, WRITE_BEGIN));
}

bool database_commit(struct database *d)
{
	return renew(d) && finish(statement(d, WRITE_COMMIT));
}

void database_rollback(struct database *d)
{
	d->renew = false;
	/* Some errors have ended the transaction by themselves. */
	if (d->handle != NULL && !sqlite3_get_autocommit(d->handle))
		finish(statement(d, WRITE_ROLLBACK));
}

static bool apply_turn(
    struct database *d, const struct row *row, struct keys *k)
{
	k->length = row->number[TURN_ENDED];
	return run_row(d, WRITE_TURN, row, k) &&
	    run_row(d, FORGET_MEASURES, row, k) &&
	    run_row(d, WRITE_LENGTH, row, k) &&
	    touch(d, row->number[ROW_DAY], k->sitting);
}

static bool apply_mark(
    struct database *d, const struct row *row, struct keys *k)
{
	k->length = row->number[MARK_MS];
	return run_row(d, WRITE_MARK, row, k) &&
	    run_row(d, WRITE_LENGTH, row, k) &&
	    touch(d, row->number[ROW_DAY], k->sitting);
}

static bool apply_measure(
    struct database *d, const struct row *row, struct keys *k)
{
	return run_row(d, CLEAR_MEASURES, row, k) &&
	    run_row(d, WRITE_MEASURES, row, k) &&
	    touch(d, row->number[ROW_DAY], k->sitting);
}

static bool apply_kind(
    struct database *d, const struct row *row, struct keys *k)
{
	switch (row->kind) {
	case ROW_SITTING:
		return run_row(d, WRITE_ROUTINE, row, k) &&
		    run_row(d, WRITE_SITTING, row, k);
	case ROW_SHARE:
		return run_row(d, WRITE_SHARE, row, k);
	case ROW_TURN:
		return apply_turn(d, row, k);
	case ROW_MARK:
		return apply_mark(d, row, k);
	case ROW_NOTE:
		return run_row(d, WRITE_NOTE, row, k);
	case ROW_END:
		return run_row(d, WRITE_END, row, k);
	case ROW_MEASURE:
		return apply_measure(d, row, k);
	case ROW_KINDS:
		break;
	}
	return false;
}

/* Only a note may stand outside of any sitting. */
static bool needs_sitting(const struct row *row)
{
	return row->kind != ROW_SITTING && row->kind != ROW_NOTE;
}

enum applied database_apply(struct database *d, const struct row *row)
{
	struct keys k = { 0 };

	if (!run_row(d, WRITE_ORIGIN, row, &k))
		return FAILED;
	k.origin = find(d, FIND_ORIGIN, row, &k);
	if (k.origin <= 0)
		return FAILED;
	if (row->kind != ROW_SITTING)
		k.sitting = find(d, FIND_SITTING, row, &k);
	if (k.sitting < 0)
		return FAILED;
	if (k.sitting == 0 && needs_sitting(row))
		return REFUSED;
	if (apply_kind(d, row, &k) && run_row(d, WRITE_LAST, row, &k))
		return APPLIED;
	return (sqlite3_errcode(d->handle) & 0xff) == SQLITE_CONSTRAINT
	    ? REFUSED
	    : FAILED;
}

int64_t database_last(struct database *d, const char *origin)
{
	sqlite3_stmt *st = NULL;
	int64_t last = 0;

	if (sqlite3_prepare_v2(d->handle,
		"SELECT last FROM origins WHERE id = ?", -1, &st,
		NULL) != SQLITE_OK)
		return -1;
	sqlite3_bind_text(st, 1, origin, -1, SQLITE_STATIC);
	if (sqlite3_step(st) == SQLITE_ROW)
		last = sqlite3_column_int64(st, 0);
	return sqlite3_finalize(st) == SQLITE_OK ? last : -1;
}
