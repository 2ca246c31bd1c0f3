/*
 * journal_past.c - which stages of a routine were practised, looked up only
 *
 * Sittings remember the routine they were of, turns their sitting; the rest
 * is counting.
 */
#include "evenhand/world/journal_past.h"

#include <stddef.h>

#include "journal_database.h"

static const char query[] =
    "SELECT turns.stage, count(*) FROM turns"
    " JOIN sittings ON turns.sitting = sittings.key"
    " WHERE sittings.routine IN (SELECT key FROM routines WHERE name = ?1)"
    " GROUP BY turns.stage ORDER BY min(turns.key)";

static bool look(sqlite3_stmt *rows, const char *routine,
    void (*each)(void *context, const char *id, int turns), void *context)
{
	int got;

	if (sqlite3_bind_text(rows, 1, routine, -1, SQLITE_STATIC) != SQLITE_OK)
		return false;
	while ((got = sqlite3_step(rows)) == SQLITE_ROW) {
		const char *id = (const char *)sqlite3_column_text(rows, 0);

		if (!id)
			return false;
		each(context, id, sqlite3_column_int(rows, 1));
	}
	return got == SQLITE_DONE;
}

bool journal_past_stages(const char *path, const char *routine,
    void (*each)(void *context, const char *id, int turns), void *context,
    struct fault *f)
{
	struct database d = { 0 };
	sqlite3_stmt *rows = NULL;
	enum trouble trouble = database_look(&d, path);
	bool good = false;

	if (trouble != TROUBLE_NONE || !d.handle) {
		look_failed(f, trouble, path);
		goto done;
	}
	/* A file without tables is a journal that was never written to. */
	if (database_number(&d, "SELECT count(*) FROM sqlite_schema", 0) == 0) {
		good = true;
		goto done;
	}
	if (sqlite3_prepare_v2(d.handle, query, -1, &rows, NULL) == SQLITE_OK)
		good = look(rows, routine, each, context);
	if (!good)
		look_failed(f, database_trouble(&d), path);
done:
	sqlite3_finalize(rows);
	database_close(&d);
	return good;
}
