/*
 * test_journal_schema.c - an older journal brought up to date
 *
 * The journal's own schema has one version so far, so a second is made up
 * here; the steps, the copy and the rollback are the real ones.
 */
#include "journal_fixture.h"

#include "../../src/world/journal_database.h"

static const char *const good_steps[] = { NULL,
	"ALTER TABLE notes ADD COLUMN colour TEXT" };
static const char *const bad_steps[] = {
	NULL,
	"CREATE TABLE more (a INTEGER) STRICT; INSERT INTO nowhere VALUES (1)"
};

static enum trouble bring_to_two(
    const struct fixture *x, const char *const *steps)
{
	const char *all[] = { journal_schema.step[0], steps[1] };
	const struct schema two = { .versions = 2, .step = all };
	struct database d = { 0 };
	enum trouble trouble;

	assert_true(database_handle(&d, x->path, SQLITE_OPEN_READWRITE));
	assert_int_equal(schema_check(&d, &two), TROUBLE_NONE);
	trouble = schema_bring(&d, x->path, &two);
	database_close(&d);
	return trouble;
}

static void make(struct fixture *x)
{
	struct journal *j = open_good(x);

	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 1);
}

static void test_upgrade(void **state)
{
	struct fixture *x = *state;
	char copy[140];
	struct stat s;

	make(x);
	assert_int_equal(bring_to_two(x, good_steps), TROUBLE_NONE);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 2);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 4);
	assert_int_equal(ask(x->path, "SELECT count(colour) FROM notes"), 0);

	/* The copy is the journal of before, and nobody else's to read. */
	snprintf(copy, sizeof(copy), "%s.version-1", x->path);
	assert_int_equal(stat(copy, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	assert_int_equal(ask(copy, "PRAGMA user_version"), 1);
	assert_int_equal(ask(copy, "SELECT count(*) FROM turns"), 4);
	assert_int_equal(ask(copy, "SELECT count(colour) FROM notes"), -1);
	assert_false(exists(copy, ".part"));

	/* Once more is nothing. */
	assert_int_equal(bring_to_two(x, good_steps), TROUBLE_NONE);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 2);
}

/* A step that fails leaves everything as it was. */
static void test_failed_step(void **state)
{
	struct fixture *x = *state;

	make(x);
	assert_int_not_equal(bring_to_two(x, bad_steps), TROUBLE_NONE);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 1);
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
	snprintf(copy, sizeof(copy), "%s.version-1", x->path);
	f = fopen(copy, "w");
	assert_non_null(f);
	fputs("older", f);
	fclose(f);
	assert_int_equal(bring_to_two(x, good_steps), TROUBLE_NONE);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 2);
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
	snprintf(part, sizeof(part), "%s.version-1.part", x->path);
	assert_int_equal(mkdir(part, 0700), 0);
	assert_int_equal(bring_to_two(x, good_steps), TROUBLE_FULL);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 1);
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
		T(test_failed_step), T(test_no_copy), T(test_first_copy),
		T(test_tables) };

	return cmocka_run_group_tests(tests, NULL, NULL);
}
