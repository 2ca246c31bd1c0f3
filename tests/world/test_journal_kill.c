/*
 * test_journal_kill.c - killed in the middle of writing, at random moments
 *
 * A child practises without a pause and says after each flush how many turns
 * must be there; it is killed with a signal nobody can catch.  The journal
 * then opens clean, every turn that was flushed is in it, and its roll-ups
 * are those of its turns.  In half of the rounds the child writes to the
 * spool.
 */
#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>

#include "journal_fixture.h"

#include "../score/seeded.h"

enum { KILLS = 24, MOST = 500 };

static void practise_on(struct fixture *x, int to)
{
	struct fault f;
	struct journal *j = journal_open(x->path, &f);

	if (j == NULL)
		_exit(1);
	begin(x, j, DAY_ONE);
	for (int n = 0;; n++) {
		struct turn_row t = turn_of(n, BLOCK_WORK, TONE, n % 4, 6);

		put_turn(x, j, &t);
		journal_mark(j, n, MARK_CLEAN, t.start_ms + 9000);
		journal_flush(j);
		if (write(to, "t", 1) != 1)
			_exit(1);
	}
}

/* Lets a child practise for a while; returns the turns it was sure of. */
static int kill_one(struct fixture *x)
{
	int ends[2], turns = 0;
	char c;
	pid_t child;

	assert_int_equal(pipe(ends), 0);
	child = fork();
	assert_true(child >= 0);
	if (child == 0) {
		close(ends[0]);
		practise_on(x, ends[1]);
	}
	close(ends[1]);
	usleep((useconds_t)seeded(0, 60000));
	kill(child, SIGKILL);
	while (read(ends[0], &c, 1) == 1)
		turns++;
	close(ends[0]);
	waitpid(child, NULL, 0);
	return turns;
}

static void test_killed(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	int64_t turns = 0, sure;

	seeded_begin("kill");
	journal_close(j);
	/* Where the machine is slow the first ones may come before any turn. */
	for (int i = 0; i < KILLS || (turns == 0 && i < MOST); i++) {
		/* A journal of the future sends rows to the spool. */
		ask(x->path,
		    i % 2 ? "PRAGMA user_version = 1000"
			  : "PRAGMA user_version = 2");
		sure = turns + kill_one(x);
		ask(x->path, "PRAGMA user_version = 2");
		j = open_good(x);
		journal_close(j);
		turns = ask(x->path, "SELECT count(*) FROM turns");
		/* The one under way may be there too. */
		assert_in_range(turns, sure, sure + 1);
		assert_int_equal(ask(x->path,
				     "SELECT integrity_check = 'ok' "
				     "FROM pragma_integrity_check"),
		    1);
		assert_int_equal(
		    ask(x->path,
			"SELECT count(*) FROM pragma_foreign_key_check"),
		    0);
		assert_int_equal(turns == 0
			? 0
			: ask(x->path,
			      "SELECT sum(json_extract(value, '$[3]')) "
			      "FROM days, json_each(tallies)"),
		    turns);
		assert_false(exists(x->path, ".spool.unusable"));
	}
	assert_true(turns > 0); /* how many depends on the machine */
	assert_int_equal(ask(x->path,
			     "SELECT count(*) FROM sittings "
			     "WHERE ended <> 0"),
	    0);
}

/* The lock goes with whoever had it. */
static void test_lock_freed(void **state)
{
	struct fixture *x = *state;

	kill_one(x);
	journal_close(open_good(x));
}

/*
 * Another program that was started meanwhile does not keep it.  The child that
 * becomes that program is forked while the player is taken, and lives on after
 * the journal is closed.
 */
static void test_lock_not_inherited(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	int ends[2];
	char c;

	/* The pipe's far end closes by exec, and so tells of it. */
	assert_int_equal(pipe(ends), 0);
	fcntl(ends[1], F_SETFD, FD_CLOEXEC);
	pid_t child = fork();
	assert_true(child >= 0);
	if (child == 0) {
		execlp("sleep", "sleep", "60", (char *)NULL);
		_exit(1);
	}
	close(ends[1]);
	assert_int_equal(read(ends[0], &c, 1), 0);
	close(ends[0]);
	journal_close(j);
	j = open_good(x);
	assert_int_equal(waitpid(child, NULL, WNOHANG), 0);
	journal_close(j);
	kill(child, SIGKILL);
	waitpid(child, NULL, 0);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = { T(test_killed), T(test_lock_freed),
		T(test_lock_not_inherited) };

	return cmocka_run_group_tests(tests, NULL, NULL);
}
