/*
 * test_journal_keep.c - no row is dropped in silence
 *
 * The row a sitting began with may lie where it cannot be read, or have gone
 * with the file it was in.  What comes after it is kept all the same, pain
 * notes before all.
 */
#include "journal_fixture.h"
#include "ordinary.h"

#include "../../src/world/journal_parts.h"

static void put_pain(struct journal *j, int second)
{
	struct note_row pain = { .kind = NOTE_PAIN };

	journal_note(j, &pain, moment_on(DAY_ONE, second));
}

static void put_turns(struct fixture *x, struct journal *j, int turns)
{
	for (int n = 0; n < turns; n++) {
		struct turn_row t = turn_of(n, BLOCK_WORK, TONE, n % 4, 6);

		put_turn(x, j, &t);
		journal_flush(j);
	}
}

/* The name of the spool, and one for a second link to it. */
static void spool_names(
    const struct fixture *x, char spool[200], char link[200])
{
	snprintf(spool, 200, "%s.spool", x->path);
	snprintf(link, 200, "%s/backup", x->folder);
}

static void all_there(const struct fixture *x)
{
	assert_int_equal(ask(x->path, "SELECT count(*) FROM sittings"), 1);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM shares"), 4);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 8);
	assert_int_equal(
	    ask(x->path, "SELECT ended FROM sittings"), ENDED_PAIN);
	assert_int_equal(ask(x->path,
			     "SELECT count(*) FROM notes, sittings "
			     "WHERE notes.sitting = sittings.key"),
	    1);
}

/* The sitting is in a spool that has two names, and so is not trusted. */
static void test_sitting_out_of_sight(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	sqlite3 *other = hold(x);
	char spool[200], link_name[200];

	spool_names(x, spool, link_name);
	begin(x, j, DAY_ONE);
	journal_flush(j);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_BUSY);
	assert_int_equal(link(spool, link_name), 0);
	let_go(other);
	put_turns(x, j, 8);
	put_pain(j, 150);
	journal_end(j, ENDED_PAIN, 150000, moment_on(DAY_ONE, 150));
	journal_flush(j);
	/* Not a word of anything put aside: nothing was. */
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SPOOL_UNREAD);
	assert_int_equal(journal_state(j), JOURNAL_GOOD);
	assert_true(exists(x->path, ".spool"));
	assert_false(exists(x->path, ".spool.unusable"));
	journal_close(j);
	all_there(x);

	/* When the spool can be read its rows are nothing new. */
	assert_int_equal(unlink(link_name), 0);
	journal_close(open_good(x));
	all_there(x);
	assert_false(exists(x->path, ".spool"));
	assert_false(exists(x->path, ".spool.unusable"));
}

/* It can be read again while the practice goes on. */
static void test_in_sight_again(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	sqlite3 *other = hold(x);
	char spool[200], link_name[200];

	spool_names(x, spool, link_name);
	put_pain(j, 0);
	journal_flush(j);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_BUSY);
	assert_int_equal(link(spool, link_name), 0);
	let_go(other);
	begin(x, j, DAY_ONE);
	put_turns(x, j, 1);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SPOOL_UNREAD);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM notes"), 0);
	assert_int_equal(unlink(link_name), 0);
	put_turns(x, j, 2);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM notes"), 1);
	assert_false(exists(x->path, ".spool"));
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 2);
}

/* The journal is taken away in the middle of a sitting. */
static void test_journal_taken_away(void **state)
{
	static const char *const ends[] = { "", "-wal", "-shm" };
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(2, BLOCK_WORK, TONE, 2, 6);

	begin(x, j, DAY_ONE);
	put_turns(x, j, 2);
	for (int i = 0; i < 3; i++) {
		char name[200];

		snprintf(name, sizeof(name), "%s%s", x->path, ends[i]);
		unlink(name);
	}
	put_turn(x, j, &t);
	journal_flush(j);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_MOVED);
	put_pain(j, 60);
	journal_close(j);

	journal_close(open_good(x));
	assert_int_equal(ask(x->path, "SELECT count(*) FROM sittings"), 1);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 1);
	assert_int_equal(ask(x->path, "SELECT sum(played) FROM shares"), 1);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM notes"), 1);
	assert_false(exists(x->path, ".spool.unusable"));
}

/*
 * Rows are left in the spool while the journal is busy, and an older copy of
 * the journal comes to its place, in which the sitting never began.
 */
static void test_older_copy(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(2, BLOCK_WORK, TONE, 2, 6);
	char command[600];
	sqlite3 *other;

	journal_close(j);
	snprintf(command, sizeof(command), "cp %s %s.copy", x->path, x->path);
	assert_int_equal(system(command), 0);
	j = open_good(x);
	begin(x, j, DAY_ONE);
	put_turns(x, j, 2);
	/* Busy twice: what was in the spool the first time is gone by then. */
	other = hold(x);
	put_turn(x, j, &t);
	journal_flush(j);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_BUSY);
	let_go(other);
	put_turn(x, j, &t);
	journal_flush(j);
	assert_false(exists(x->path, ".spool"));
	other = hold(x);
	put_turn(x, j, &t);
	put_pain(j, 60);
	journal_close(j);
	let_go(other);
	snprintf(command, sizeof(command),
	    "rm -f %s-wal %s-shm && mv %s.copy %s", x->path, x->path, x->path,
	    x->path);
	assert_int_equal(system(command), 0);

	journal_close(open_good(x));
	assert_int_equal(ask(x->path, "SELECT count(*) FROM sittings"), 1);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 1);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM notes"), 1);
	assert_false(exists(x->path, ".spool.unusable"));
}

/* The sitting is deleted under our hands: it is brought again. */
static void test_sitting_deleted(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(0, BLOCK_WORK, TONE, 0, 6);

	begin(x, j, DAY_ONE);
	journal_flush(j);
	ask(x->path, "DELETE FROM shares");
	ask(x->path, "DELETE FROM sittings");
	put_turn(x, j, &t);
	journal_flush(j);
	assert_true(exists(x->path, ".spool"));
	put_pain(j, 60);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM sittings"), 1);
	assert_int_equal(ask(x->path, "SELECT sum(played) FROM shares"), 1);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 1);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM notes"), 1);
	assert_false(exists(x->path, ".spool"));
	assert_false(exists(x->path, ".spool.unusable"));
}

/* A spool without its first line: what cannot be used is put aside, said. */
static void test_no_sitting_anywhere(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	sqlite3 *other = hold(x);
	struct fault f;
	char command[400];

	begin(x, j, DAY_ONE);
	put_turns(x, j, 2);
	put_pain(j, 60);
	journal_close(j);
	let_go(other);
	snprintf(command, sizeof(command), "sed -i 1d %s.spool", x->path);
	assert_int_equal(system(command), 0);
	j = journal_open(x->path, &f);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SPOOL_DAMAGED);
	assert_int_equal(journal_state(j), JOURNAL_GOOD);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 0);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM notes"), 1);
	assert_true(exists(x->path, ".spool.unusable"));
	assert_false(exists(x->path, ".spool"));
}

/* What only adds to a trouble changes nothing in what the journal is. */
static void test_added_troubles(void **state)
{
	static const enum trouble added[] = { TROUBLE_NOT_KEPT,
		TROUBLE_ELSEWHERE, TROUBLE_SPOOL, TROUBLE_SPOOL_UNREAD };
	struct fixture *x = *state;
	struct journal *j = open_good(x);

	for (size_t i = 0; i < sizeof(added) / sizeof(added[0]); i++) {
		journal_tell(j, TROUBLE_NONE, x->path);
		journal_tell(j, added[i], x->path);
		assert_int_equal(journal_state(j), JOURNAL_GOOD);
		assert_int_not_equal(trouble_of(j), M_NONE);
		journal_tell(j, TROUBLE_READ_ONLY, x->path);
		journal_tell(j, added[i], x->path);
		assert_int_equal(journal_state(j), JOURNAL_READ_ONLY);
		trouble_of(j);
	}
	journal_close(j);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_sitting_out_of_sight),
		T(test_in_sight_again),
		T(test_journal_taken_away),
		T(test_older_copy),
		T(test_sitting_deleted),
		T(test_no_sitting_anywhere),
		T(test_added_troubles),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
