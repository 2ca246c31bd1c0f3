/*
 * class_rows.c - rows of students in the database of a class
 *
 *	students	who: initials, and the day of the newest record
 *	facts		all that a line of the class is made of
 *	notes		what hurt or was sore
 *	files		records that were gathered
 *
 * Facts and notes are of one version of the rules; those of another are thrown
 * away and made anew.
 */
#include <stdio.h>
#include <string.h>

#include "class_parts.h"
#include "evenhand/base/text.h"

enum {
	SQL_BYTES = 4096,
	LAYOUT = 1,
	/* Columns of facts before those of class_columns.c. */
	FACTS_ID = 0,
	FACTS_SIZE,
	FACTS_TIME,
	FACTS_FIRST,
};

/* --- the tables --- */

static const char tables[] =
    "CREATE TABLE IF NOT EXISTS students (id TEXT PRIMARY KEY,"
    " initials TEXT NOT NULL, given INTEGER NOT NULL) STRICT;"
    "CREATE TABLE IF NOT EXISTS files (name TEXT PRIMARY KEY,"
    " size INTEGER NOT NULL, time_ns INTEGER NOT NULL,"
    " hash INTEGER NOT NULL) STRICT;"
    "CREATE INDEX IF NOT EXISTS files_by_hash ON files (hash);"
    "CREATE TABLE IF NOT EXISTS notes (id TEXT NOT NULL,"
    " place INTEGER NOT NULL, day INTEGER NOT NULL, kind INTEGER NOT NULL,"
    " finger INTEGER NOT NULL, words TEXT NOT NULL,"
    " PRIMARY KEY (id, place)) STRICT, WITHOUT ROWID;";

static void add_facts_table(struct text *sql)
{
	text_add(sql,
	    "CREATE TABLE facts (id TEXT PRIMARY KEY,"
	    " journal_size INTEGER NOT NULL, journal_time_ns INTEGER NOT NULL");
	columns_declare(sql);
	text_add(sql, ") STRICT, WITHOUT ROWID");
}

int rows_version(void)
{
	return STUDENT_RULES * 1000 + LAYOUT;
}

bool rows_make(struct database *d)
{
	const int version = rows_version();
	int64_t there = database_number(d, "PRAGMA user_version", 0);
	char bytes[SQL_BYTES], stamp[80];
	struct text sql = text_in(bytes, sizeof(bytes));

	if (there == version)
		return true;
	add_facts_table(&sql);
	snprintf(stamp, sizeof(stamp), "PRAGMA user_version = %d", version);
	if (!database_run(d, "BEGIN IMMEDIATE"))
		return false;
	if (database_run(
		d, "DROP TABLE IF EXISTS facts; DROP TABLE IF EXISTS notes") &&
	    database_run(d, tables) && database_run(d, bytes) &&
	    database_run(d, stamp) && database_run(d, "COMMIT"))
		return true;
	database_run(d, "ROLLBACK");
	return false;
}

/* --- writing --- */

static sqlite3_stmt *prepare(struct database *d, const char *sql)
{
	sqlite3_stmt *st = NULL;

	return sqlite3_prepare_v2(d->handle, sql, -1, &st, NULL) == SQLITE_OK
	    ? st
	    : NULL;
}

static bool run(sqlite3_stmt *st)
{
	bool done = st && sqlite3_step(st) == SQLITE_DONE;

	return sqlite3_finalize(st) == SQLITE_OK && done;
}

static void bind_text(sqlite3_stmt *st, int at, const char *text)
{
	sqlite3_bind_text(st, at, text, -1, SQLITE_TRANSIENT);
}

static bool keep_facts(struct database *d, const struct student *s,
    const struct class_stamp *stamp)
{
	char bytes[SQL_BYTES];
	struct text sql = text_in(bytes, sizeof(bytes));
	sqlite3_stmt *st;

	text_add(&sql, "INSERT OR REPLACE INTO facts VALUES (?");
	for (int i = 1; i < FACTS_FIRST + columns_count(); i++)
		text_add(&sql, ", ?");
	text_add(&sql, ")");
	st = prepare(d, bytes);
	if (!st)
		return false;
	bind_text(st, FACTS_ID + 1, s->id);
	sqlite3_bind_int64(st, FACTS_SIZE + 1, stamp->size);
	sqlite3_bind_int64(st, FACTS_TIME + 1, stamp->time_ns);
	columns_bind(st, FACTS_FIRST + 1, s);
	return run(st);
}

static bool keep_note(struct database *d, const struct student *s, int place)
{
	const struct student_note *n = &s->note[place];
	sqlite3_stmt *st = prepare(
	    d, "INSERT OR REPLACE INTO notes VALUES (?1, ?2, ?3, ?4, ?5, ?6)");

	bind_text(st, 1, s->id);
	sqlite3_bind_int(st, 2, place);
	sqlite3_bind_int(st, 3, n->day);
	sqlite3_bind_int(st, 4, (int)n->kind);
	sqlite3_bind_int(st, 5, n->finger);
	bind_text(st, 6, n->words);
	return run(st);
}

static bool keep_notes(struct database *d, const struct student *s)
{
	sqlite3_stmt *st = prepare(d, "DELETE FROM notes WHERE id = ?1");
	bool good;

	bind_text(st, 1, s->id);
	good = run(st);
	for (int i = 0; good && i < s->notes; i++)
		good = keep_note(d, s, i);
	return good;
}

bool rows_keep(struct database *d, const struct student *s,
    const struct class_stamp *stamp)
{
	if (!database_run(d, "SAVEPOINT row"))
		return false;
	if (keep_facts(d, s, stamp) && keep_notes(d, s))
		return database_run(d, "RELEASE row");
	database_run(d, "ROLLBACK TO row; RELEASE row");
	return false;
}

/* A day to come is of a clock that is wrong: any other is newer. */
#define COUNTED(day) "CASE WHEN " day " > ?4 THEN -1 ELSE " day " END"
#define NEWER "(" COUNTED("?3") ", ?3) >= (" COUNTED("given") ", given)"

bool rows_name(struct database *d, const char *id, const char *initials,
    int given, int today)
{
	char clean[STUDENT_INITIALS_BYTES];
	sqlite3_stmt *st = prepare(d,
	    "INSERT INTO students VALUES (?1, ?2, ?3) ON CONFLICT (id) DO "
	    "UPDATE SET given = CASE WHEN " NEWER " THEN ?3 ELSE given END, "
	    "initials = CASE WHEN ?2 = '' THEN initials "
	    "WHEN initials = '' OR " NEWER " THEN ?2 ELSE initials END");

	text_clean(clean, sizeof(clean), initials);
	bind_text(st, 1, id);
	bind_text(st, 2, clean);
	sqlite3_bind_int(st, 3, given);
	sqlite3_bind_int(st, 4, today + STUDENT_EAST);
	return run(st);
}

bool rows_fold(struct database *d, const char *from, const char *to, int today)
{
	char initials[RECORD_INITIALS_MAX] = "";
	sqlite3_stmt *st = prepare(
	    d, "SELECT initials, given FROM students WHERE id = ?1");
	const char *name;
	bool there;
	int given = -1;

	bind_text(st, 1, from);
	there = st && sqlite3_step(st) == SQLITE_ROW;
	if (there) {
		name = (const char *)sqlite3_column_text(st, 0);
		text_clean(initials, sizeof(initials), name ? name : "");
		given = sqlite3_column_int(st, 1);
	}
	sqlite3_finalize(st);
	if (!there)
		return true;
	if (!database_run(d, "SAVEPOINT fold"))
		return false;
	st = prepare(d, "DELETE FROM students WHERE id = ?1");
	bind_text(st, 1, from);
	if (run(st) && rows_name(d, to, initials, given, today))
		return database_run(d, "RELEASE fold");
	database_run(d, "ROLLBACK TO fold; RELEASE fold");
	return false;
}

/* --- reading --- */

static const char *text_of(sqlite3_stmt *st, int at)
{
	const char *text = (const char *)sqlite3_column_text(st, at);

	return text ? text : "";
}

static void read_facts(
    sqlite3_stmt *st, struct student *s, struct class_stamp *stamp)
{
	int behind = FACTS_FIRST + columns_count();

	memset(s, 0, sizeof(*s));
	text_clean(s->id, sizeof(s->id), text_of(st, FACTS_ID));
	stamp->size = sqlite3_column_int64(st, FACTS_SIZE);
	stamp->time_ns = sqlite3_column_int64(st, FACTS_TIME);
	columns_read(st, FACTS_FIRST, s);
	text_clean(s->initials, sizeof(s->initials), text_of(st, behind));
	s->given = sqlite3_column_type(st, behind + 1) == SQLITE_NULL
	    ? -1
	    : sqlite3_column_int(st, behind + 1);
}

static void read_note(sqlite3_stmt *st, struct student *s)
{
	struct student_note *n = &s->note[s->notes];
	int kind = sqlite3_column_int(st, 3);

	if (s->notes == STUDENT_NOTES_MAX)
		return;
	n->day = sqlite3_column_int(st, 2);
	n->kind = kind == NOTE_PAIN || kind == NOTE_SKIN ? (enum note_kind)kind
							 : NOTE_SORE;
	n->finger = sqlite3_column_int(st, 4);
	text_clean(n->words, sizeof(n->words), text_of(st, 5));
	s->notes++;
}

/* The notes of one student; both queries are in the order of ids. */
static int read_notes(sqlite3_stmt *notes, int got, struct student *s)
{
	for (; got == SQLITE_ROW; got = sqlite3_step(notes)) {
		int by_id = strcmp(text_of(notes, 0), s->id);

		if (by_id > 0)
			break;
		if (by_id == 0)
			read_note(notes, s);
	}
	return got;
}

bool rows_each(struct database *d,
    void (*each)(void *context, const struct student *s,
	const struct class_stamp *stamp),
    void *context)
{
	sqlite3_stmt *rows = prepare(d,
	    "SELECT facts.*, students.initials, students.given FROM facts "
	    "LEFT JOIN students ON students.id = facts.id ORDER BY facts.id");
	sqlite3_stmt *notes = prepare(
	    d, "SELECT * FROM notes ORDER BY id, place");
	struct class_stamp stamp;
	struct student s;
	int got = SQLITE_ERROR, note = SQLITE_ERROR;

	if (rows && notes) {
		note = sqlite3_step(notes);
		while ((got = sqlite3_step(rows)) == SQLITE_ROW) {
			read_facts(rows, &s, &stamp);
			note = read_notes(notes, note, &s);
			each(context, &s, &stamp);
		}
	}
	sqlite3_finalize(notes);
	sqlite3_finalize(rows);
	return got == SQLITE_DONE;
}
