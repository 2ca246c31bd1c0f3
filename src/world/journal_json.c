/*
 * journal_json.c - the whole journal as one JSON document (RFC 8259)
 *
 *	{
 *	"evenhand_history": 1,
 *	"routines": [{"fingerprint", "name", "edition", "text"}, ...],
 *	"sittings": [{"sitting", "began", "offset_s", "day", "routine",
 *	    "marking", "work_stage", "asked_stage", "instrument", "cap_ms",
 *	    "planned_ms", "ended", "ended_at", "length_ms", "sequence",
 *	    "stages": [{"stage", "recap"}, ...],
 *	    "shares": [{"stage", "unit", "planned", "dropped", "played"}, ...]},
 *	    ...],
 *	"turns": [{"sitting", "turn", "at", "offset_s", "day", "block", "stage",
 *	    "unit", "round", "pulses", "bows_asked", "bows_done", "first_go",
 *	    "mark", "mark_ms", "resets", "dropouts", "start_ms", "slide_um",
 *	    "measures": {"method", "tops", ...} or null, "sequence"}, ...],
 *	"notes": [{"sitting", "at", "offset_s", "day", "kind", "finger",
 *	    "words", "sequence"}, ...],
 *	"made_on": {"student", "sittings": [{"sitting", "origin", "device",
 *	    "rate"}, ...], "notes": [{"note", "origin"}, ...]}
 *	}
 *
 * Moments ("began", "at", "ended_at") are UTC, and offset_s is how many
 * seconds east of it the clock stood; "day" is the practice day, which turns
 * at four in the morning.  Everything happens in the order of the lists.
 * ended is "cut off" where a sitting was never said to end, and ended_at is
 * then null; a note outside any sitting has sitting null.  Times in ms count
 * from the first sound, slide_um is in micrometres.  measures holds what the
 * latest method heard of the turn, by name, and null where nothing was.
 *
 * Which computer and which device it was stands in made_on and nowhere else,
 * on the last line but one.  So two practices with the same keys at the same
 * times give the same document but for that line.
 *
 * Rows are written as they are read; nothing grows with the journal.
 */
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/base/text.h"
#include "evenhand/record/join.h"
#include "evenhand/world/journal.h"
#include "journal_database.h"

/* Every list is that of some days, the first and the last of which are bound. */
#define SOME_DAYS " WHERE day BETWEEN ?1 AND ?2"

/* What is written: of which days, and where to. */
struct dump {
	struct database *d;
	int first, last;
	FILE *to;
};

/*
 * A column that is JSON already has a name that begins with '='.  A moment is
 * written as datetime does, with the T and the Z of ISO 8601.
 */
static const char routines[] =
    "SELECT fingerprint, name, edition, text FROM routines"
    " WHERE key IN (SELECT routine FROM sittings" SOME_DAYS ")"
    " ORDER BY key";
static const char sittings[] =
    "SELECT s.key AS sitting,"
    "  replace(datetime(began_utc, 'unixepoch'), ' ', 'T') || 'Z' AS began,"
    "  utc_offset AS offset_s, date(day * 86400, 'unixepoch') AS day,"
    "  r.fingerprint AS routine,"
    "  CASE marking WHEN 0 THEN 'turn' ELSE 'round' END AS marking,"
    "  work_stage, asked_stage, instrument, cap_ms, planned_ms,"
    "  CASE ended WHEN 0 THEN 'cut off' WHEN 1 THEN 'whole'"
    "    WHEN 2 THEN 'cap' WHEN 3 THEN 'early' WHEN 4 THEN 'pain'"
    "    WHEN 5 THEN 'no key' WHEN 6 THEN 'input'"
    "    WHEN 7 THEN 'not today' ELSE 'other' END AS ended,"
    "  replace(datetime(ended_utc, 'unixepoch'), ' ', 'T') || 'Z'"
    "    AS ended_at,"
    "  length_ms, sequence,"
    "  (SELECT json_group_array(json_object("
    "      'stage', json_extract(value, '$[0]'), 'recap',"
    "      json(CASE json_extract(value, '$[1]') WHEN 0 THEN 'false'"
    "        ELSE 'true' END)))"
    "    FROM json_each(CASE json_valid(seen) WHEN 1 THEN seen ELSE '[]' END))"
    "    AS '=stages',"
    "  (SELECT json_group_array(json_object('stage', stage, 'unit', unit,"
    "      'planned', planned, 'dropped', dropped, 'played', played))"
    "    FROM shares WHERE sitting = s.key) AS '=shares'"
    " FROM sittings s JOIN routines r ON r.key = s.routine" SOME_DAYS
    " ORDER BY s.key";
static const char turns[] =
    "SELECT sitting, number AS turn,"
    "  replace(datetime(utc, 'unixepoch'), ' ', 'T') || 'Z' AS at,"
    "  utc_offset AS offset_s, date(day * 86400, 'unixepoch') AS day,"
    "  CASE kind WHEN 0 THEN 'air' WHEN 1 THEN 'recap' ELSE 'work' END"
    "    AS block,"
    "  stage, unit, round, pulses, bows_asked, bows_done,"
    "  CASE first_go WHEN 0 THEN 'false' ELSE 'true' END AS '=first_go',"
    "  CASE mark WHEN 1 THEN 'clean' WHEN 2 THEN 'shaky' ELSE 'none' END"
    "    AS mark,"
    "  mark_ms, resets, dropouts, start_ms, slide_um,"
    "  (SELECT CASE count(*) WHEN 0 THEN 'null' ELSE"
    "      json_patch(json_object('method', max(method)),"
    "        json_group_object(name, value)) END"
    "    FROM measures m WHERE m.turn = turns.key AND name <> 'sequence'"
    "    AND method = (SELECT max(method) FROM measures"
    "      WHERE turn = turns.key)) AS '=measures', sequence"
    " FROM turns" SOME_DAYS " ORDER BY key";
static const char notes[] =
    "SELECT sitting,"
    "  replace(datetime(utc, 'unixepoch'), ' ', 'T') || 'Z' AS at,"
    "  utc_offset AS offset_s, date(day * 86400, 'unixepoch') AS day,"
    "  CASE kind WHEN 1 THEN 'pain' WHEN 2 THEN 'skin' WHEN 3 THEN 'sore'"
    "    WHEN 4 THEN 'question' WHEN 5 THEN 'later' ELSE 'other' END"
    "    AS kind,"
    "  finger, words, sequence"
    " FROM notes" SOME_DAYS " ORDER BY key";
static const char places[] =
    "SELECT s.key AS sitting, o.id AS origin, device, rate"
    " FROM sittings s JOIN origins o ON o.key = s.origin" SOME_DAYS
    " ORDER BY s.key";
static const char note_places[] =
    "SELECT row_number() OVER (ORDER BY n.key) AS note, o.id AS origin"
    " FROM notes n JOIN origins o ON o.key = n.origin" SOME_DAYS
    " ORDER BY n.key";

/* A letter of 2 or 3 bytes that no page shows: its code point, else 0. */
static unsigned hidden(const char *s, size_t *bytes)
{
	unsigned char c = (unsigned char)*s;
	char letter[4] = "", clean[4];
	unsigned code;

	*bytes = c < 0xe0 ? 2 : 3;
	if (c < 0xc2 || c > 0xef)
		return 0;
	for (size_t i = 0; i < *bytes; i++)
		if ((letter[i] = s[i]) == '\0')
			return 0;
	text_clean(clean, sizeof(clean), letter);
	if (strcmp(clean, letter) == 0)
		return 0;
	code = c & (*bytes == 2 ? 0x1fU : 0x0fU);
	for (size_t i = 1; i < *bytes; i++)
		code = code << 6 | ((unsigned char)s[i] & 0x3fU);
	return code;
}

/* Writes one letter of a text; hidden ones never as themselves. */
static const char *write_letter(const char *s, bool utf8, FILE *to)
{
	unsigned char c = (unsigned char)*s;
	size_t bytes = 1;

	if (c == '"' || c == '\\') {
		fprintf(to, "\\%c", c);
	} else if (c == '\n') {
		fputs("\\n", to);
	} else if (c == '\t') {
		fputs("\\t", to);
	} else if (c < ' ' || c == 0x7f) {
		fprintf(to, "\\u%04x", c);
	} else if (c >= 0x80 && !utf8) {
		fputs("\\ufffd", to);
	} else if (hidden(s, &bytes)) {
		fprintf(to, "\\u%04x", hidden(s, &bytes));
		return s + bytes;
	} else {
		putc(c, to);
	}
	return s + 1;
}

static void write_text(const char *s, FILE *to)
{
	bool utf8 = text_is_utf8(s, strlen(s));

	putc('"', to);
	while (*s)
		s = write_letter(s, utf8, to);
	putc('"', to);
}

static void write_value(sqlite3_stmt *st, int column, FILE *to)
{
	const char *name = sqlite3_column_name(st, column);
	const char *text = (const char *)sqlite3_column_text(st, column);

	if (*name == '=')
		name++;
	fprintf(to, "\"%s\": ", name);
	if (text == NULL)
		fputs("null", to);
	else if (sqlite3_column_type(st, column) == SQLITE_INTEGER ||
	    sqlite3_column_name(st, column) != name)
		fputs(text, to);
	else
		write_text(text, to);
}

static sqlite3_stmt *prepare(const struct dump *u, const char *query)
{
	sqlite3_stmt *st = NULL;

	sqlite3_prepare_v2(u->d->handle, query, -1, &st, NULL);
	/* Without a limit even a day that no number of ours can hold is in. */
	if (st != NULL) {
		sqlite3_bind_int64(
		    st, 1, u->first == INT_MIN ? INT64_MIN : u->first);
		sqlite3_bind_int64(
		    st, 2, u->last == INT_MAX ? INT64_MAX : u->last);
	}
	return st;
}

/* Writes what a query gives as a list, one row a line or all in one. */
static bool write_rows(
    const struct dump *u, const char *query, const char *between)
{
	sqlite3_stmt *st = prepare(u, query);
	int rc = SQLITE_ERROR;
	bool first = true;

	putc('[', u->to);
	while (st != NULL && (rc = sqlite3_step(st)) == SQLITE_ROW) {
		fprintf(u->to, "%s%s{", first ? "" : ",", between);
		for (int i = 0; i < sqlite3_column_count(st); i++) {
			if (i > 0)
				fputs(", ", u->to);
			write_value(st, i, u->to);
		}
		putc('}', u->to);
		first = false;
	}
	fprintf(u->to, "%s]", first ? "" : between);
	return sqlite3_finalize(st) == SQLITE_OK && rc == SQLITE_DONE;
}

static bool write_list(
    const struct dump *u, const char *name, const char *query)
{
	bool good;

	fprintf(u->to, "\"%s\": ", name);
	good = write_rows(u, query, "\n");
	fputs(",\n", u->to);
	return good;
}

static bool write_made_on(const struct dump *u)
{
	char student[IDS_TEXT];
	bool good;

	database_text(
	    u->d, "SELECT student FROM about", student, sizeof(student));
	fputs("\"made_on\": {\"student\": ", u->to);
	write_text(student, u->to);
	fputs(", \"sittings\": ", u->to);
	good = write_rows(u, places, "");
	fputs(", \"notes\": ", u->to);
	good = write_rows(u, note_places, "") && good;
	fputs("}\n", u->to);
	return good;
}

static bool write_all(const struct dump *u)
{
	bool good;

	fputs("{\n\"evenhand_history\": 1,\n", u->to);
	good = database_run(u->d, "BEGIN") &&
	    write_list(u, "routines", routines) &&
	    write_list(u, "sittings", sittings) &&
	    write_list(u, "turns", turns) && write_list(u, "notes", notes) &&
	    write_made_on(u);
	fputs("}\n", u->to);
	return good;
}

/* A stream of our own over the descriptor, which stays the caller's. */
static FILE *stream_over(int descriptor)
{
	int copy = dup(descriptor);
	FILE *to = copy >= 0 ? fdopen(copy, "w") : NULL;

	if (to == NULL && copy >= 0)
		close(copy);
	return to;
}

/* Why a stream takes nothing: the computer has too little, or the reader. */
static bool write_failed(struct fault *f, int error)
{
	enum trouble short_of = trouble_of_errno(error);

	if (trouble_short(short_of))
		return short_failed(f, short_of);
	return fault_set(f,
	    message_with(M_WORLD_JOURNAL_NOT_WRITTEN, TEXT(strerror(error))));
}

bool journal_dump_json(
    const char *path, int first, int last, int descriptor, struct fault *f)
{
	struct database d;
	enum trouble trouble = database_look(&d, path);
	FILE *to = NULL;
	bool good = false;

	if (trouble != TROUBLE_NONE && trouble != TROUBLE_NEWER) {
		look_failed(f, trouble, path);
		goto done;
	}
	to = stream_over(descriptor);
	good = to != NULL && write_all(&(struct dump) { &d, first, last, to });
	if (database_starved(&d))
		good = look_failed(f, database_trouble(&d), path);
	else if (to != NULL && !good)
		look_failed(f, TROUBLE_BROKEN, path);
	/* A disk that is full shows when the last of it is written. */
	if (to == NULL || ferror(to) || fflush(to) != 0)
		good = write_failed(f, errno);
done:
	if (to != NULL)
		fclose(to);
	database_close(&d);
	return good;
}
