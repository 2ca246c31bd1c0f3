/*
 * journal_recount.c - a journal whose roll-ups are not as they were written
 *
 * Days, and what a sitting saw and played, are counted from turns, so they can
 * be counted once more: in a copy in memory, as who looks at a journal changes
 * nothing of it.
 */
#include "journal_database.h"
#include "journal_read.h"

/* Counts for each key that a query gives. */
static bool renew_each(
    struct database *d, const char *keys, enum statement what)
{
	sqlite3_stmt *st = NULL;
	int got = SQLITE_ERROR;
	bool good = true;

	if (sqlite3_prepare_v2(d->handle, keys, -1, &st, NULL) != SQLITE_OK)
		return false;
	while (good && (got = sqlite3_step(st)) == SQLITE_ROW)
		good = database_renew(d, what, sqlite3_column_int64(st, 0));
	sqlite3_finalize(st);
	return good && got == SQLITE_DONE;
}

static bool recount(struct database *d)
{
	static const char sittings[] = "SELECT key FROM sittings";

	if (database_begin(d) && database_run(d, "DELETE FROM days") &&
	    renew_each(d, "SELECT DISTINCT day FROM turns", RENEW_DAY) &&
	    renew_each(d, sittings, RENEW_SEEN) &&
	    renew_each(d, sittings, RENEW_SHARES))
		return database_commit(d);
	database_rollback(d);
	return false;
}

bool history_recount(struct database *d, struct history *h, int today, int days)
{
	struct database copy = { 0 };
	bool good;

	*h = (struct history) { 0 };
	good = database_memory(&copy, d) == TROUBLE_NONE && recount(&copy) &&
	    history_load(&copy, h, today, days);
	d->no_memory = copy.no_memory || (!good && database_starved(d));
	database_close(&copy);
	return good;
}
