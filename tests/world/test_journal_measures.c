/*
 * test_journal_measures.c - what was heard of turns, kept with them
 */
#include <math.h>

#include "journal_fixture.h"

static const struct turn_value heard[] = {
	{ "bows_listened", 2 },
	{ "bows_full", 1 },
	{ "tops_asked", 12 },
	{ "tops_heard", 11 },
	{ "travel_share", 0.9375 },
	{ "late_s", -0.0125 },
};

enum { VALUES = sizeof(heard) / sizeof(heard[0]) };

static void put_heard(struct journal *j, int number, double full, int method)
{
	struct turn_value v[VALUES];

	memcpy(v, heard, sizeof(v));
	v[1].value = full;
	journal_measures(j, number, v, VALUES, method);
}

static void begin_turns(struct fixture *x, struct journal *j, int count)
{
	begin(x, j, DAY_ONE);
	for (int n = 0; n < count; n++) {
		struct turn_row t = turn_of(n, BLOCK_WORK, TONE, 1, 6);

		put_turn(x, j, &t);
	}
}

/* A value of the first turn in thousandths; -1: it is not there. */
static int64_t value_of(const struct fixture *x, int method, const char *name)
{
	char sql[200];

	snprintf(sql, sizeof(sql),
	    "SELECT CAST(round(value * 1000) AS INTEGER) FROM measures m "
	    "JOIN turns t ON t.key = m.turn WHERE t.number = 0 "
	    "AND method = %d AND name = '%s'",
	    method, name);
	return ask(x->path, sql);
}

static void listened_is(const struct fixture *x, int listened, int full)
{
	struct history h;

	look(x, DAY_ONE, &h);
	assert_int_equal(h.tallies, 1);
	assert_int_equal(h.tally[0].bows_listened, listened);
	assert_int_equal(h.tally[0].bows_full, full);
	history_done(&h);
}

static void test_kept(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct history h;

	begin_turns(x, j, 2);
	put_heard(j, 0, 1, 1);
	journal_close(j);
	assert_int_equal(value_of(x, 1, "tops_heard"), 11000);
	assert_int_equal(value_of(x, 1, "late_s"), -13);
	assert_int_equal(value_of(x, 1, "unknown"), -1);
	look(x, DAY_ONE, &h);
	assert_int_equal(h.turns, 2);
	assert_int_equal(h.turn[0].bows_listened, 2);
	assert_int_equal(h.turn[0].bows_full, 1);
	assert_float_equal(h.turn[0].travel_share, 0.9375, 0);
	assert_float_equal(h.turn[0].width_cents, 0, 0);
	assert_int_equal(h.turn[1].bows_listened, 0);
	assert_float_equal(h.turn[1].travel_share, 0, 0);
	history_done(&h);
	listened_is(x, 2, 1);
}

/* A later row takes the whole place of the one before, not only of a value. */
static void test_replaced(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);

	begin_turns(x, j, 1);
	put_heard(j, 0, 0, 1);
	journal_flush(j);
	listened_is(x, 2, 0);
	journal_measures(j, 0, heard, 3, 1);
	journal_flush(j);
	assert_int_equal(value_of(x, 1, "travel_share"), -1);
	listened_is(x, 2, 1);
	/* Another method lives beside it, and the latest is what counts. */
	put_heard(j, 0, 2, 2);
	journal_close(j);
	assert_int_equal(value_of(x, 1, "bows_full"), 1000);
	assert_int_equal(value_of(x, 2, "bows_full"), 2000);
	listened_is(x, 2, 2);
}

/* Where no tops were asked, bows say nothing about them. */
static void test_no_tops_asked(void **state)
{
	static const struct turn_value calm[] = { { "bows_listened", 2 },
		{ "bows_full", 0 }, { "tops_asked", 0 }, { "stops", 1 } };
	struct fixture *x = *state;
	struct journal *j = open_good(x);

	begin_turns(x, j, 1);
	journal_measures(j, 0, calm, 4, 1);
	journal_close(j);
	assert_int_equal(value_of(x, 1, "stops"), 1000);
	listened_is(x, 0, 0);
}

/* What is no number is left out, and the rest is kept. */
static void test_no_number(void **state)
{
	const struct turn_value odd[] = { { "rate_hz", NAN },
		{ "width_cents", INFINITY }, { "stops", 2 } };
	struct fixture *x = *state;
	struct journal *j = open_good(x);

	begin_turns(x, j, 1);
	journal_measures(j, 0, odd, 3, 1);
	journal_close(j);
	assert_int_equal(value_of(x, 1, "rate_hz"), -1);
	assert_int_equal(value_of(x, 1, "width_cents"), -1);
	assert_int_equal(value_of(x, 1, "stops"), 2000);
}

/* As many values as there can be, with the longest names and numbers. */
static void test_many_values(void **state)
{
	static const char name[] = "the_longest_name_there_is";
	static char names[TURN_VALUES_MAX][40];
	struct turn_value v[TURN_VALUES_MAX];
	struct fixture *x = *state;
	struct journal *j = open_good(x);

	for (int i = 0; i < TURN_VALUES_MAX; i++) {
		snprintf(names[i], sizeof(names[i]), "%s_%02d", name, i);
		v[i] = (struct turn_value) { names[i], -1.23456789012e-300 };
	}
	begin_turns(x, j, 1);
	journal_measures(j, 0, v, TURN_VALUES_MAX, 1);
	journal_close(j);
	assert_int_equal(
	    ask(x->path,
		"SELECT count(*) FROM measures WHERE name LIKE 'the%'"),
	    TURN_VALUES_MAX);
}

/* What was heard of the turn that had the number before goes with it. */
static void test_turn_again(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(0, BLOCK_WORK, TONE, 1, 6);

	begin_turns(x, j, 1);
	put_heard(j, 0, 1, 1);
	put_turn(x, j, &t);
	journal_flush(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM measures"), 0);
	listened_is(x, 0, 0);
	put_heard(j, 0, 2, 1);
	journal_close(j);
	listened_is(x, 2, 2);
}

/*
 * Through the spool, where the rows come in order and perhaps once more: the
 * end is the same.
 */
static void test_spooled(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	struct journal *j = open_good(x);
	char command[300];

	journal_close(j);
	ask(x->path, "PRAGMA user_version = 1000");
	j = journal_open(x->path, &f);
	assert_non_null(j);
	begin_turns(x, j, 1);
	put_heard(j, 0, 0, 1);
	put_heard(j, 0, 1, 1);
	journal_close(j);
	ask(x->path, "PRAGMA user_version = 2");
	snprintf(
	    command, sizeof(command), "cp %s.spool %s.again", x->path, x->path);
	assert_int_equal(system(command), 0);
	/* Looked at, where it still lies. */
	listened_is(x, 2, 1);
	journal_close(open_good(x));
	assert_false(exists(x->path, ".spool"));
	listened_is(x, 2, 1);
	snprintf(
	    command, sizeof(command), "mv %s.again %s.spool", x->path, x->path);
	assert_int_equal(system(command), 0);
	journal_close(open_good(x));
	assert_false(exists(x->path, ".spool"));
	listened_is(x, 2, 1);
	assert_int_equal(value_of(x, 1, "travel_share"), 938);
}

/* Roll-ups of an older evenhand have no such numbers. */
static void test_older_list(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);

	begin_turns(x, j, 1);
	put_heard(j, 0, 1, 1);
	journal_close(j);
	ask(x->path,
	    "UPDATE days SET tallies = replace(tallies, ',2,1]', ']')");
	listened_is(x, 0, 0);
}

static void test_json(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	char name[140], bytes[8192];
	struct fault f;
	FILE *to;
	size_t length;

	begin_turns(x, j, 2);
	put_heard(j, 0, 1, 7);
	journal_close(j);
	snprintf(name, sizeof(name), "%s/h.json", x->folder);
	to = fopen(name, "w+");
	assert_non_null(to);
	assert_true(
	    journal_dump_json(x->path, DAY_ONE, DAY_ONE, fileno(to), &f));
	rewind(to);
	length = fread(bytes, 1, sizeof(bytes) - 1, to);
	bytes[length] = '\0';
	fclose(to);
	assert_non_null(strstr(bytes, "\"measures\": {\"method\":7,"));
	assert_non_null(strstr(bytes, "\"tops_heard\":11.0"));
	assert_non_null(strstr(bytes, "\"measures\": null"));
	assert_null(strstr(bytes, "\"sequence\":8"));
}

#define TEST(name) \
	cmocka_unit_test_setup_teardown(name, fixture_open, fixture_close)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(test_kept),
		TEST(test_replaced),
		TEST(test_no_tops_asked),
		TEST(test_no_number),
		TEST(test_many_values),
		TEST(test_turn_again),
		TEST(test_spooled),
		TEST(test_older_list),
		TEST(test_json),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
