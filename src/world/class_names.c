/*
 * class_names.c - who a student of a class is: initials out of records
 *
 * The newest record says it; of those written in the same second the one with
 * the greatest initials, so that nothing hangs on the order they came in.  A day
 * or a moment to come is of a clock that is wrong: any other is newer.
 */
#include "class_parts.h"
#include "evenhand/base/date.h"
#include "evenhand/base/text.h"

#define COUNTED(time, most) \
	"CASE WHEN " time " > " most " THEN -1 ELSE " time " END"
#define LATER \
	"(" COUNTED("?3", "?5") ", ?3) > (" COUNTED("given", "?5") ", given)"
#define NEWER \
	"?2 <> '' AND (initials = '' OR (" COUNTED("?4", \
	    "?6") ", ?4, ?2) > (" COUNTED("named", "?6") ", named, initials))"

static const char name_it[] =
    "INSERT INTO students (id, initials, given, named) "
    "VALUES (?1, ?2, ?3, ?4) ON CONFLICT (id) DO UPDATE SET "
    "given = CASE WHEN " LATER " THEN ?3 ELSE given END, "
    "initials = CASE WHEN " NEWER " THEN ?2 ELSE initials END, "
    "named = CASE WHEN " NEWER " THEN ?4 ELSE named END";

bool rows_name(
    struct database *d, const char *id, const struct class_name *n, int today)
{
	char clean[STUDENT_INITIALS_BYTES];
	sqlite3_stmt *st = rows_prepare(d, name_it);
	int most = today + STUDENT_EAST;

	text_clean(clean, sizeof(clean), n->initials);
	rows_bind_text(st, 1, id);
	rows_bind_text(st, 2, clean);
	sqlite3_bind_int(st, 3, n->given);
	sqlite3_bind_int64(st, 4, n->named);
	sqlite3_bind_int(st, 5, most);
	sqlite3_bind_int64(st, 6, ((int64_t)most + 1) * DAY_SECONDS);
	return rows_run(st);
}

/* Who an id is, or nobody; false when no row says so. */
static bool read_name(struct database *d, const char *id, struct class_name *n)
{
	sqlite3_stmt *st = rows_prepare(
	    d, "SELECT initials, given, named FROM students WHERE id = ?1");
	bool there;

	rows_bind_text(st, 1, id);
	there = st && sqlite3_step(st) == SQLITE_ROW;
	if (there) {
		text_clean(n->initials, sizeof(n->initials), rows_text(st, 0));
		n->given = sqlite3_column_int(st, 1);
		n->named = sqlite3_column_int64(st, 2);
	}
	sqlite3_finalize(st);
	return there;
}

bool rows_fold(struct database *d, const char *from, const char *to, int today)
{
	struct class_name n = { "", -1, -1 };
	sqlite3_stmt *st;

	if (!read_name(d, from, &n))
		return true;
	if (!database_run(d, "SAVEPOINT fold"))
		return false;
	st = rows_prepare(d, "DELETE FROM students WHERE id = ?1");
	rows_bind_text(st, 1, from);
	if (rows_run(st) && rows_name(d, to, &n, today))
		return database_run(d, "RELEASE fold");
	database_run(d, "ROLLBACK TO fold; RELEASE fold");
	return false;
}
