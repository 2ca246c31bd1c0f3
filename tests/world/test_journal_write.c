/*
 * test_journal_write.c - rows that come late, twice or out of order
 *
 * Rows are offered to the database as the spool offers them; whichever comes
 * first, the one with the higher number counts.
 */
#include "journal_fixture.h"

#include "../../src/world/journal_database.h"

static const char origin[ORIGIN_BYTES] = "0123456789abcdef0123456789abcdef";

enum { SITTING = 1 };

static struct row *row_of(
    enum row_kind kind, int sequence, const char *const *texts)
{
	struct row *row = row_new(kind, texts);

	assert_non_null(row);
	memcpy(row->origin, origin, ORIGIN_BYTES);
	row->number[ROW_SEQUENCE] = sequence;
	row->number[ROW_SITTING_OF] = SITTING;
	row->number[ROW_UTC] = UTC_ONE + sequence;
	row->number[ROW_DAY] = DAY_ONE;
	return row;
}

static void offer(struct database *d, struct row *row)
{
	assert_int_equal(database_apply(d, row), APPLIED);
	rows_free(row);
}

static void offer_sitting(struct database *d)
{
	static const char *const texts[SITTING_TEXTS] = { "0", "", "", "tone",
		"fast", "cello", "tone" };

	offer(d, row_of(ROW_SITTING, SITTING, texts));
}

static void offer_turn(struct database *d, int sequence, int pulses)
{
	static const char *const texts[TURN_TEXTS] = { "tone", "1" };
	struct row *row = row_of(ROW_TURN, sequence, texts);

	row->number[TURN_KIND] = BLOCK_WORK;
	row->number[TURN_PULSES] = pulses;
	row->number[TURN_ASKED] = row->number[TURN_DONE] = 2;
	offer(d, row);
}

static void offer_mark(struct database *d, int sequence, enum mark mark)
{
	struct row *row = row_of(ROW_MARK, sequence, NULL);

	row->number[MARK_MARK] = mark;
	row->number[MARK_MS] = 1000 * sequence;
	offer(d, row);
}

static void offer_end(struct database *d, int sequence, enum ended ended)
{
	struct row *row = row_of(ROW_END, sequence, NULL);

	row->number[END_ENDED] = ended;
	row->number[END_LENGTH] = 1000 * sequence;
	offer(d, row);
}

/* The journal's database with the sitting in it, in a transaction. */
static void open_begun(const struct fixture *x, struct database *d)
{
	bool slow;

	journal_close(open_good(x));
	assert_int_equal(database_open(d, x->path, &slow), TROUBLE_NONE);
	assert_true(database_begin(d));
	offer_sitting(d);
}

static void close_kept(struct database *d)
{
	assert_true(database_commit(d));
	database_close(d);
}

static void test_older_turn(void **state)
{
	struct fixture *x = *state;
	struct database d;

	open_begun(x, &d);
	offer_turn(&d, 7, 8);
	offer_turn(&d, 5, 4);
	close_kept(&d);
	assert_int_equal(ask(x->path, "SELECT pulses FROM turns"), 8);
	assert_int_equal(ask(x->path, "SELECT sequence FROM turns"), 7);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 1);
}

static void test_older_mark(void **state)
{
	struct fixture *x = *state;
	struct database d;

	open_begun(x, &d);
	offer_turn(&d, 5, 6);
	offer_mark(&d, 8, MARK_SHAKY);
	offer_mark(&d, 6, MARK_CLEAN);
	close_kept(&d);
	assert_int_equal(ask(x->path, "SELECT mark FROM turns"), MARK_SHAKY);
	assert_int_equal(ask(x->path, "SELECT mark_ms FROM turns"), 8000);
}

/* The mark of a turn is there before the turn that takes the number over. */
static void test_mark_before_turn(void **state)
{
	struct fixture *x = *state;
	struct database d;

	open_begun(x, &d);
	offer_turn(&d, 5, 6);
	offer_mark(&d, 8, MARK_SHAKY);
	offer_turn(&d, 7, 4);
	offer_mark(&d, 6, MARK_CLEAN);
	close_kept(&d);
	assert_int_equal(ask(x->path, "SELECT pulses FROM turns"), 4);
	assert_int_equal(ask(x->path, "SELECT mark FROM turns"), MARK_SHAKY);
	assert_int_equal(ask(x->path, "SELECT mark_ms FROM turns"), 8000);
}

static void test_older_end(void **state)
{
	struct fixture *x = *state;
	struct database d;

	open_begun(x, &d);
	offer_end(&d, 9, ENDED_PAIN);
	offer_end(&d, 8, ENDED_WHOLE);
	close_kept(&d);
	assert_int_equal(
	    ask(x->path, "SELECT ended FROM sittings"), ENDED_PAIN);
	assert_int_equal(ask(x->path, "SELECT length_ms FROM sittings"), 9000);
}

/* A note that came before its sitting finds it when it comes again. */
static void test_note_before_sitting(void **state)
{
	static const char *const texts[NOTE_TEXTS] = { "" };
	struct fixture *x = *state;
	struct database d;
	bool slow;

	journal_close(open_good(x));
	assert_int_equal(database_open(&d, x->path, &slow), TROUBLE_NONE);
	for (int i = 0; i < 2; i++) {
		struct row *row = row_of(ROW_NOTE, 3, texts);

		row->number[NOTE_KIND] = NOTE_PAIN;
		assert_true(database_begin(&d));
		if (i == 1)
			offer_sitting(&d);
		offer(&d, row);
		assert_true(database_commit(&d));
		assert_int_equal(ask(x->path, "SELECT count(*) FROM notes"), 1);
		assert_int_equal(
		    ask(x->path, "SELECT count(sitting) FROM notes"), i);
	}
	database_close(&d);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_older_turn),
		T(test_older_mark),
		T(test_mark_before_turn),
		T(test_older_end),
		T(test_note_before_sitting),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
