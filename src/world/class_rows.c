/*
 * class_rows.c - rows of students in the database of a class
 *
 *	students	who: initials, the moment of the record they are of, and
 *			the day of the newest record
 *	facts		all that a line of the class is made of
 *	notes		what hurt or was sore
 *	files		records that were gathered
 *
 * Facts and notes are of one version of the rules; those of another are thrown
 * away and made anew.  Each row of facts carries a seal over what it holds, so
 * one that somebody or a disk changed is made anew as well.
 */
#include <stdio.h>
#include <string.h>

#include "class_parts.h"
#include "evenhand/base/fingerprint.h"
#include "evenhand/base/text.h"

enum {
	SQL_BYTES = 4096,
	LAYOUT = 2,
	/* Columns of facts before those of class_columns.c. */
	FACTS_ID = 0,
	FACTS_SIZE,
	FACTS_TIME,
	FACTS_SEAL,
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
	    " journal_size INTEGER NOT NULL, journal_time_ns INTEGER NOT NULL,"
	    " seal INTEGER NOT NULL");
	columns_declare(sql);
	text_add(sql, ") STRICT, WITHOUT ROWID");
}

/* Version 1 knew of one day alone, that of the newest record. */
static bool add_named(struct database *d)
{
	return database_number(d,
		   "SELECT count(*) FROM pragma_table_info('students') "
		   "WHERE name = 'named'",
		   0) > 0 ||
	    database_run(d,
		"ALTER TABLE students ADD COLUMN named INTEGER NOT NULL "
		"DEFAULT -1;"
		"UPDATE students SET named = given * 86400 WHERE given >= 0");
}

int rows_version(void)
{
	return STUDENT_RULES * 1000 + LAYOUT;
}

bool rows_make(struct database *d)
{
	const int version = rows_version();
	int64_t there = database_number(d, "PRAGMA user_version", -1);
	char bytes[SQL_BYTES], stamp[80];
	struct text sql = text_in(bytes, sizeof(bytes));

	if (there == version || there < 0)
		return there == version;
	add_facts_table(&sql);
	snprintf(stamp, sizeof(stamp), "PRAGMA user_version = %d", version);
	if (!database_run(d, "BEGIN IMMEDIATE"))
		return false;
	if (database_run(
		d, "DROP TABLE IF EXISTS facts; DROP TABLE IF EXISTS notes") &&
	    database_run(d, tables) && add_named(d) && database_run(d, bytes) &&
	    database_run(d, stamp) && database_run(d, "COMMIT"))
		return true;
	database_run(d, "ROLLBACK");
	return false;
}

/* --- writing --- */

sqlite3_stmt *rows_prepare(struct database *d, const char *sql)
{
	sqlite3_stmt *st = NULL;

	return sqlite3_prepare_v2(d->handle, sql, -1, &st, NULL) == SQLITE_OK
	    ? st
	    : NULL;
}

const char *rows_text(sqlite3_stmt *st, int at)
{
	const char *text = (const char *)sqlite3_column_text(st, at);

	return text ? text : "";
}

bool rows_run(sqlite3_stmt *st)
{
	bool done = st && sqlite3_step(st) == SQLITE_DONE;

	return sqlite3_finalize(st) == SQLITE_OK && done;
}

void rows_bind_text(sqlite3_stmt *st, int at, const char *text)
{
	sqlite3_bind_text(st, at, text, -1, SQLITE_TRANSIENT);
}

/* A number over all that a row holds. */
static int64_t seal_of(const struct student *s)
{
	uint64_t seal = columns_seal(s);

	for (int i = 0; i < s->notes; i++) {
		const struct student_note *n = &s->note[i];
		const int numbers[] = { n->day, (int)n->kind, n->finger };
		char clean[STUDENT_PLACE_BYTES];

		text_clean(clean, sizeof(clean), n->words);
		seal = fingerprint_add(seal, numbers, sizeof(numbers));
		seal = fingerprint_add(seal, clean, strlen(clean) + 1);
	}
	return (int64_t)seal;
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
	st = rows_prepare(d, bytes);
	if (!st)
		return false;
	rows_bind_text(st, FACTS_ID + 1, s->id);
	sqlite3_bind_int64(st, FACTS_SIZE + 1, stamp->size);
	sqlite3_bind_int64(st, FACTS_TIME + 1, stamp->time_ns);
	sqlite3_bind_int64(st, FACTS_SEAL + 1, seal_of(s));
	columns_bind(st, FACTS_FIRST + 1, s);
	return rows_run(st);
}

static bool keep_note(struct database *d, const struct student *s, int place)
{
	const struct student_note *n = &s->note[place];
	sqlite3_stmt *st = rows_prepare(
	    d, "INSERT OR REPLACE INTO notes VALUES (?1, ?2, ?3, ?4, ?5, ?6)");

	rows_bind_text(st, 1, s->id);
	sqlite3_bind_int(st, 2, place);
	sqlite3_bind_int(st, 3, n->day);
	sqlite3_bind_int(st, 4, (int)n->kind);
	sqlite3_bind_int(st, 5, n->finger);
	rows_bind_text(st, 6, n->words);
	return rows_run(st);
}

static bool keep_notes(struct database *d, const struct student *s)
{
	sqlite3_stmt *st = rows_prepare(d, "DELETE FROM notes WHERE id = ?1");
	bool good;

	rows_bind_text(st, 1, s->id);
	good = rows_run(st);
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

/* --- reading --- */

static void read_facts(
    sqlite3_stmt *st, struct student *s, struct class_stamp *stamp)
{
	int behind = FACTS_FIRST + columns_count();

	memset(s, 0, sizeof(*s));
	text_clean(s->id, sizeof(s->id), rows_text(st, FACTS_ID));
	stamp->size = sqlite3_column_int64(st, FACTS_SIZE);
	stamp->time_ns = sqlite3_column_int64(st, FACTS_TIME);
	columns_read(st, FACTS_FIRST, s);
	text_clean(s->initials, sizeof(s->initials), rows_text(st, behind));
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
	text_clean(n->words, sizeof(n->words), rows_text(st, 5));
	s->notes++;
}

/* The notes of one student; both queries are in the order of ids. */
static int read_notes(sqlite3_stmt *notes, int got, struct student *s)
{
	for (; got == SQLITE_ROW; got = sqlite3_step(notes)) {
		int by_id = strcmp(rows_text(notes, 0), s->id);

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
	sqlite3_stmt *rows = rows_prepare(d,
	    "SELECT facts.*, students.initials, students.given FROM facts "
	    "LEFT JOIN students ON students.id = facts.id ORDER BY facts.id");
	sqlite3_stmt *notes = rows_prepare(
	    d, "SELECT * FROM notes ORDER BY id, place");
	struct class_stamp stamp;
	struct student s;
	int got = SQLITE_ERROR, note = SQLITE_ERROR;
	bool whole;

	if (rows && notes) {
		note = sqlite3_step(notes);
		while ((got = sqlite3_step(rows)) == SQLITE_ROW) {
			read_facts(rows, &s, &stamp);
			note = read_notes(notes, note, &s);
			if (sqlite3_column_int64(rows, FACTS_SEAL) !=
			    seal_of(&s))
				stamp = (struct class_stamp) { -1, -1 };
			each(context, &s, &stamp);
		}
	}
	/* Notes that could not be read end with an error. */
	whole = sqlite3_finalize(notes) == SQLITE_OK;
	sqlite3_finalize(rows);
	return whole && got == SQLITE_DONE;
}
