/*
 * histories.h - random histories of a student, made through the journal itself
 *
 * A computer is a journal of its own with the same student; they differ in what
 * was practised on them.  Everything that a journal keeps occurs: sittings cut
 * off, turns whose place another takes, marks changed and taken back, notes
 * outside of sittings, measures, clocks that were set back.
 */
#ifndef EVENHAND_TESTS_HISTORIES_H
#define EVENHAND_TESTS_HISTORIES_H

#include <fcntl.h>

#include "journal_fixture.h"

#include "../score/seeded.h"
#include "evenhand/base/fingerprint.h"
#include "evenhand/world/gather.h"
#include "evenhand/world/record_file.h"

#define STUDENT "0123456789abcdef0123456789abcdef"

enum { EDITIONS = 3, PATH_ROOM = 200 };

/* The routine of an edition, whose fingerprint is that of its text. */
static inline void set_edition(struct fixture *x, int edition)
{
	static const char *const texts[EDITIONS] = {
		"routine: From wide to still\n\tnever \"this\" \\ \xc3\xa9\n",
		"  begins further in\n\n# a note: {of: [two]}\n",
		"no end of line, and a return\r\nwithin",
	};

	x->routine.edition = edition + 1;
	x->routine.text = texts[edition];
	x->routine.fingerprint = fingerprint_add(
	    FINGERPRINT_START, texts[edition], strlen(texts[edition]));
}

static inline void path_of(
    const struct fixture *x, const char *name, char path[PATH_ROOM])
{
	snprintf(path, PATH_ROOM, "%s/%s", x->folder, name);
}

static inline struct journal *computer_open(
    const struct fixture *x, const char *name)
{
	char path[PATH_ROOM];
	struct fault f;
	struct journal *j;
	struct message m;

	path_of(x, name, path);
	j = journal_open(path, &f);
	assert_non_null(j);
	assert_false(journal_trouble(j, &m));
	return j;
}

static inline void sql(const char *path, const char *text)
{
	sqlite3 *d;

	assert_int_equal(
	    sqlite3_open_v2(path, &d, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
	assert_int_equal(sqlite3_exec(d, text, NULL, NULL, NULL), SQLITE_OK);
	sqlite3_close(d);
}

static inline void random_measures(struct journal *j, int number)
{
	struct turn_value v[] = { { "tops_asked", (double)seeded(0, 16) },
		{ "share", (double)seeded(0, 1000) / 997 },
		{ "late_s", (double)seeded(-500, 500) / 8191 } };

	journal_measures(j, number, v, (int)seeded(1, 3), (int)seeded(1, 2));
}

static inline void random_turn(struct fixture *x, struct journal *j, int number)
{
	bool air = number == 0;
	struct turn_row t = turn_of(number,
	    air			    ? BLOCK_AIR
		: seeded(0, 2) == 0 ? BLOCK_RECAP
				    : BLOCK_WORK,
	    air ? AIR : (int)seeded(WIDE, TONE), air ? -1 : (int)seeded(0, 3),
	    air ? 0 : 2 * (int)seeded(2, 4));

	t.round = number / 4;
	t.first_go = number < 5;
	t.resets = seeded(0, 5) == 0;
	t.dropouts = seeded(0, 9) == 0 ? 3 : 0;
	t.bows_done = seeded(0, 7) == 0 ? 1 : 2;
	t.slide_um = seeded(0, 3000000);
	put_turn(x, j, &t);
	for (int n = (int)seeded(0, 2); n > 0; n--)
		journal_mark(
		    j, number, (enum mark)seeded(0, 2), t.start_ms + 9000 + n);
	if (seeded(0, 3) == 0)
		random_measures(j, number);
}

static inline void random_note(struct journal *j, int day)
{
	static const char *const words[] = { "", "thumb \"here\"",
		"Wie h\xc3\xa4lt man das? \\n", "one: two, [three] #4" };
	struct note_row n = { .kind = (enum note_kind)seeded(1, 5),
		.finger = (int)seeded(0, 4) };

	snprintf(n.words, sizeof(n.words), "%s", words[seeded(0, 3)]);
	journal_note(j, &n, moment_on(day, (int)seeded(0, 60000)));
}

static inline void random_sitting(struct fixture *x, struct journal *j, int day)
{
	int turns = (int)seeded(0, 9);

	set_edition(x, (int)seeded(0, EDITIONS - 1));
	x->plan.cap_ms = 300000 - (int)seeded(0, 3) * 10;
	if (seeded(0, 3) == 0)
		random_note(j, day);
	begin(x, j, day);
	for (int n = 0; n < turns; n++) {
		random_turn(x, j, n);
		if (seeded(0, 9) == 0)
			random_turn(x, j, n);
	}
	if (seeded(0, 3) == 0)
		random_note(j, day);
	if (seeded(0, 4) > 0)
		journal_end(j, (enum ended)seeded(1, 7), 8000 + turns * 12000,
		    moment_on(day, 8 + turns * 12));
	if (seeded(0, 5) == 0)
		random_note(j, day);
}

/* So many sittings more on a computer, mostly one day after the other. */
static inline void practise_on_computer(
    struct fixture *x, const char *name, int first_day, int sittings)
{
	char path[PATH_ROOM];
	struct journal *j = computer_open(x, name);
	int day = first_day;

	for (int i = 0; i < sittings; i++) {
		random_sitting(x, j, day);
		day += (int)seeded(0, 2);
		if (seeded(0, 15) == 0)
			day -= 2; /* the clock was set back */
	}
	journal_close(j);
	path_of(x, name, path);
	sql(path, "UPDATE about SET student = '" STUDENT "'");
}

/* A record of a computer, written to a file. */
static inline void give_from(
    const struct fixture *x, const char *name, int since, const char *record)
{
	char journal[PATH_ROOM], path[PATH_ROOM];
	struct record_left left;
	struct record r;
	struct fault f;

	path_of(x, name, journal);
	path_of(x, record, path);
	assert_true(record_take(journal, since, &r, &left, &f));
	assert_int_equal(left.sittings + left.notes, 0);
	r.given = moment_on(DAY_ONE, 0);
	assert_true(record_save(path, &r, true, &f));
	record_done(&r);
}

static inline void load_good(const char *path, struct record *r)
{
	struct faults faults = { 0 };
	char said[400];
	bool unreadable;

	if (record_load(path, r, &faults, &unreadable))
		return;
	fault_text(&faults.at[0], said, sizeof(said));
	fail_msg("%s", said);
}

/* The same, where these ids were said to be one student's. */
static inline struct gathered gather_joined(const struct fixture *x,
    const char *record, const char *name, const struct join_asked *asked)
{
	char journal[PATH_ROOM], path[PATH_ROOM];
	struct gathered news;
	struct record r;
	struct fault f = { 0 };

	path_of(x, name, journal);
	path_of(x, record, path);
	load_good(path, &r);
	if (!gather_into(journal,
		&(struct gather_what) { .record = &r, .asked = *asked }, &news,
		&f)) {
		char said[400];

		fault_text(&f, said, sizeof(said));
		fail_msg("%s", said);
	}
	record_done(&r);
	return news;
}

/* A record gathered into a computer; what it brought. */
static inline struct gathered gather_to(
    const struct fixture *x, const char *record, const char *name)
{
	static const struct join_asked nothing = { 0 };

	return gather_joined(x, record, name, &nothing);
}

/* The history as JSON, without where it was made; the caller frees it. */
static inline char *told(const struct fixture *x, const char *name)
{
	char journal[PATH_ROOM], out[PATH_ROOM];
	struct fault f;
	char *bytes, *made;
	long length;
	FILE *in;
	int file;

	path_of(x, name, journal);
	path_of(x, "told.json", out);
	file = open(out, O_RDWR | O_CREAT | O_TRUNC, 0600);
	assert_true(file >= 0);
	assert_true(journal_dump_json(journal, INT32_MIN, INT32_MAX, file, &f));
	close(file);
	in = fopen(out, "r");
	assert_non_null(in);
	assert_int_equal(fseek(in, 0, SEEK_END), 0);
	length = ftell(in);
	rewind(in);
	bytes = calloc(1, (size_t)length + 1);
	assert_non_null(bytes);
	assert_int_equal(fread(bytes, 1, (size_t)length, in), length);
	fclose(in);
	made = strstr(bytes, "\"made_on\"");
	assert_non_null(made);
	*made = '\0';
	return bytes;
}

/* The one text that SQL gives; the caller frees it. */
static inline char *text_from(const char *path, const char *query)
{
	sqlite3 *d;
	sqlite3_stmt *st = NULL;
	char *text = NULL;

	assert_int_equal(
	    sqlite3_open_v2(path, &d, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
	assert_int_equal(
	    sqlite3_prepare_v2(d, query, -1, &st, NULL), SQLITE_OK);
	if (sqlite3_step(st) == SQLITE_ROW && sqlite3_column_text(st, 0))
		text = strdup((const char *)sqlite3_column_text(st, 0));
	sqlite3_finalize(st);
	sqlite3_close(d);
	return text ? text : strdup("");
}

static inline void same_text(const char *a, const char *b, const char *query)
{
	char *one = text_from(a, query), *two = text_from(b, query);

	assert_string_equal(one, two);
	free(one);
	free(two);
}

/* Two computers tell the same, and their roll-ups are the same. */
static inline void same_told(
    const struct fixture *x, const char *a, const char *b)
{
	char path_a[PATH_ROOM], path_b[PATH_ROOM];
	char *one = told(x, a), *two = told(x, b);

	assert_string_equal(one, two);
	free(one);
	free(two);
	path_of(x, a, path_a);
	path_of(x, b, path_b);
	same_text(path_a, path_b,
	    "SELECT group_concat(day || ' ' || entries || tallies) FROM "
	    "(SELECT * FROM days ORDER BY day)");
	same_text(path_a, path_b,
	    "SELECT group_concat(turn || name || method || printf('%.9g', "
	    "value)) FROM (SELECT * FROM measures ORDER BY turn, method, "
	    "name)");
}

/* The journal is whole and its roll-ups are those of its turns. */
static inline void is_whole(const struct fixture *x, const char *name)
{
	char path[PATH_ROOM];

	path_of(x, name, path);
	assert_int_equal(ask(path,
			     "SELECT integrity_check = 'ok' FROM "
			     "pragma_integrity_check"),
	    1);
	assert_int_equal(
	    ask(path, "SELECT count(*) FROM pragma_foreign_key_check"), 0);
	assert_int_equal(ask(path,
			     "SELECT count(*) FROM turns t JOIN sittings s ON "
			     "s.key = t.sitting WHERE t.origin <> s.origin"),
	    0);
	assert_int_equal(
	    ask(path,
		"SELECT (SELECT total(json_extract(value, '$[3]')) FROM "
		"days, json_each(tallies)) = (SELECT count(*) FROM turns "
		"WHERE bows_done >= bows_asked)"),
	    1);
}

#endif
