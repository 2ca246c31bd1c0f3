/*
 * test_journal_schema.c - an older journal brought up to date
 *
 * journal-version-1.sql is what the program wrote when its schema had one
 * version.  A step after the newest one is made up; the steps before it, the
 * copy and the rollback are the real ones.
 */
#include "journal_fixture.h"

#include "../../src/world/journal_database.h"

static const char good_step[] = "ALTER TABLE notes ADD COLUMN colour TEXT";
static const char bad_step[] =
    "CREATE TABLE more (a INTEGER) STRICT; INSERT INTO nowhere VALUES (1)";

static enum trouble bring_to_three(const struct fixture *x, const char *step)
{
	const char *all[] = { journal_schema.step[0], journal_schema.step[1],
		step };
	const struct schema three = { .versions = 3, .step = all };
	struct database d = { 0 };
	enum trouble trouble;

	assert_true(database_handle(&d, x->path, SQLITE_OPEN_READWRITE));
	assert_int_equal(schema_check(&d, &three), TROUBLE_NONE);
	trouble = schema_bring(&d, x->path, &three);
	database_close(&d);
	return trouble;
}

static void make(struct fixture *x)
{
	struct journal *j = open_good(x);

	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 2);
}

static void test_upgrade(void **state)
{
	struct fixture *x = *state;
	char copy[140];
	struct stat s;

	make(x);
	assert_int_equal(bring_to_three(x, good_step), TROUBLE_NONE);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 3);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 4);
	assert_int_equal(ask(x->path, "SELECT count(colour) FROM notes"), 0);

	/* The copy is the journal of before, and nobody else's to read. */
	snprintf(copy, sizeof(copy), "%s.version-2", x->path);
	assert_int_equal(stat(copy, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	assert_int_equal(ask(copy, "PRAGMA user_version"), 2);
	assert_int_equal(ask(copy, "SELECT count(*) FROM turns"), 4);
	assert_int_equal(ask(copy, "SELECT count(colour) FROM notes"), -1);
	assert_false(exists(copy, ".part"));

	/* Once more is nothing. */
	assert_int_equal(bring_to_three(x, good_step), TROUBLE_NONE);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 3);
}

/* --- a real journal of version 1 --- */

static void make_old(const struct fixture *x)
{
	FILE *f = fopen("tests/world/journal-version-1.sql", "r");
	char *sql = NULL, folder[100];
	size_t size = 0;
	sqlite3 *d;

	assert_non_null(f);
	assert_true(getdelim(&sql, &size, '\0', f) > 0);
	fclose(f);
	snprintf(folder, sizeof(folder), "%s/data", x->folder);
	assert_int_equal(mkdir(folder, 0700), 0);
	assert_int_equal(sqlite3_open(x->path, &d), SQLITE_OK);
	assert_int_equal(sqlite3_exec(d, sql, NULL, NULL, NULL), SQLITE_OK);
	sqlite3_close(d);
	free(sql);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 1);
}

static void check_old(const struct history *h)
{
	assert_int_equal(h->sittings, 2);
	assert_int_equal(h->turns, 14);
	assert_int_equal(h->tallies, 10);
	assert_int_equal(h->notes, 1);
	assert_string_equal(h->sitting[0].work_stage, "wide");
	assert_string_equal(h->sitting[0].instrument, "");
	assert_int_equal(h->sitting[1].ended, ENDED_EARLY);
	assert_string_equal(h->tally[1].stage, "wide");
	assert_string_equal(h->tally[1].unit, "1");
	assert_string_equal(h->tally[1].instrument, "");
	assert_int_equal(h->tally[1].slide_um, 4934412);
	assert_string_equal(h->note[0].words, "\"Is my thumb too low?\"");
}

/* Looked at only, it stays as it is. */
static void test_old_looked_at(void **state)
{
	struct fixture *x = *state;
	struct history h;

	make_old(x);
	look(x, DAY_ONE + 2, &h);
	check_old(&h);
	history_done(&h);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 1);
	assert_false(exists(x->path, ".version-1"));
}

/*
 * Brought up to date, with a copy; what it holds is of any instrument, and what
 * is added is of its own.
 */
static void test_old_brought(void **state)
{
	struct fixture *x = *state;
	struct history h;
	struct fault f;
	struct journal *j;

	make_old(x);
	x->routine.setup.instrument = INSTRUMENT_CELLO;
	j = open_good(x);
	assert_true(exists(x->path, ".version-1"));
	assert_true(journal_history(j, &h, DAY_ONE + 2, &x->routine, &f));
	check_old(&h);
	history_done(&h);
	sit(x, j, DAY_ONE + 2, 4);
	journal_close(j);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 2);
	assert_int_equal(
	    ask(x->path,
		"SELECT count(*) FROM sittings WHERE instrument = 'cello'"),
	    1);
	look(x, DAY_ONE + 2, &h);
	assert_int_equal(h.tallies, 14);
	assert_string_equal(h.tally[9].instrument, "");
	assert_string_equal(h.tally[13].instrument, "cello");
	history_done(&h);
}

/* A step that fails leaves everything as it was. */
static void test_failed_step(void **state)
{
	struct fixture *x = *state;

	make(x);
	assert_int_not_equal(bring_to_three(x, bad_step), TROUBLE_NONE);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 2);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM more"), -1);
	journal_close(open_good(x));
}

/* A copy that is there already is the older one, and stays. */
static void test_first_copy(void **state)
{
	struct fixture *x = *state;
	char copy[140], back[16] = "";
	FILE *f;

	make(x);
	snprintf(copy, sizeof(copy), "%s.version-2", x->path);
	f = fopen(copy, "w");
	assert_non_null(f);
	fputs("older", f);
	fclose(f);
	assert_int_equal(bring_to_three(x, good_step), TROUBLE_NONE);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 3);
	f = fopen(copy, "r");
	assert_non_null(f);
	assert_non_null(fgets(back, sizeof(back), f));
	fclose(f);
	assert_string_equal(back, "older");
}

/* Without a copy nothing is changed. */
static void test_no_copy(void **state)
{
	struct fixture *x = *state;
	char part[140];

	make(x);
	snprintf(part, sizeof(part), "%s.version-2.part", x->path);
	assert_int_equal(mkdir(part, 0700), 0);
	assert_int_equal(bring_to_three(x, good_step), TROUBLE_FULL);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 2);
}

/* The tables are strict, the keys are kept. */
static void test_tables(void **state)
{
	struct fixture *x = *state;

	make(x);
	assert_int_equal(ask(x->path,
			     "SELECT count(*) = sum(strict) "
			     "FROM pragma_table_list "
			     "WHERE name NOT LIKE 'sqlite%'"),
	    1);
	assert_int_equal(
	    ask(x->path,
		"SELECT journal_mode = 'wal' FROM pragma_journal_mode"),
	    1);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = { T(test_upgrade),
		T(test_old_looked_at), T(test_old_brought), T(test_failed_step),
		T(test_no_copy), T(test_first_copy), T(test_tables) };

	return cmocka_run_group_tests(tests, NULL, NULL);
}
