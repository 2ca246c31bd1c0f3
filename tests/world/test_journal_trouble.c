/*
 * test_journal_trouble.c - a journal that is busy, read-only, full, broken,
 * newer, no journal at all, or on a disk where WAL cannot work
 *
 * Each time the practice goes on, one sentence is told once, what lies there
 * is left alone, and the rows are in the journal as soon as that can be.
 * Root may write anywhere, so what is about rights runs as an ordinary user.
 */
/* For a small disk of our own: unshare and mount are not in POSIX. */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <sched.h>
#include <signal.h>
#include <sys/mount.h>

#include "journal_fixture.h"
#include "ordinary.h"

#include "../score/seeded.h"

static int64_t turns_in(const struct fixture *x)
{
	return ask(x->path, "SELECT count(*) FROM turns");
}

static int turns_looked_at(const struct fixture *x)
{
	struct history h;
	int turns;

	look(x, DAY_ONE, &h);
	turns = h.turns;
	history_done(&h);
	return turns;
}

/* Somebody else writes while we practise, and stops while we still do. */
static void test_busy(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	sqlite3 *other = hold(x);
	struct turn_row t = turn_of(4, BLOCK_WORK, TONE, 0, 6);
	struct message m;

	sit(x, j, DAY_ONE, 4);
	journal_flush(j);
	assert_int_equal(journal_state(j), JOURNAL_SPOOL);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_BUSY);
	assert_true(exists(x->path, ".spool"));
	assert_int_equal(turns_in(x), 0);
	assert_int_equal(turns_looked_at(x), 4);
	put_turn(x, j, &t);
	journal_flush(j);
	assert_false(journal_trouble(j, &m)); /* once is enough */

	let_go(other);
	t.number = 5;
	put_turn(x, j, &t);
	journal_flush(j);
	assert_int_equal(journal_state(j), JOURNAL_GOOD);
	assert_false(exists(x->path, ".spool"));
	assert_int_equal(turns_in(x), 6);
	journal_close(j);
	assert_int_equal(ask(x->path,
			     "SELECT count(*) FROM sittings "
			     "WHERE ended = 1"),
	    1);
	assert_int_equal(ask(x->path, "SELECT sum(mark = 1) FROM turns"), 4);
}

/* Busy to the end: the next opening brings it in, and only once. */
static void test_busy_to_the_end(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	sqlite3 *other = hold(x);
	char spool[140], *bytes;
	int64_t length;

	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	let_go(other);
	snprintf(spool, sizeof(spool), "%s.spool", x->path);
	length = bytes_of(spool, &bytes);
	assert_true(length > 0);
	j = open_good(x);
	sit(x, j, DAY_ONE, 4); /* goes on behind the numbers in the spool */
	journal_close(j);
	assert_int_equal(turns_in(x), 8);
	assert_false(exists(x->path, ".spool"));

	/* A power cut between the commit and the end of the spool. */
	write_bytes(spool, bytes, length);
	j = open_good(x);
	journal_close(j);
	free(bytes);
	assert_int_equal(turns_in(x), 8);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM sittings"), 2);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM origins"), 1);
	assert_false(exists(x->path, ".spool"));
	assert_false(exists(x->path, ".spool.unusable"));
}

/* While it is busy at the opening, numbers in the spool are not used again. */
static void test_busy_at_the_opening(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	sqlite3 *other = hold(x);
	struct fault f;

	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	j = journal_open(x->path, &f);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_BUSY);
	let_go(other);
	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	assert_int_equal(turns_in(x), 8);
}

/* A file, then a folder, that may not be written. */
static void read_only_part(struct fixture *x)
{
	static const mode_t folders[] = { 0700, 0500 },
			    files[] = { 0400, 0600 };
	struct journal *j = open_any(x);

	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	for (int i = 0; i < 2; i++) {
		make_closed(x, folders[i], files[i]);
		j = open_any(x);
		CHECK(journal_state(j) == JOURNAL_READ_ONLY);
		CHECK(trouble_of(j) == M_WORLD_JOURNAL_READ_ONLY);
		CHECK(turns_looked_at(x) == 4 + 4 * i);
		sit(x, j, DAY_ONE, 4);
		journal_flush(j);
		CHECK(turns_looked_at(x) == 8 + 4 * i);
		journal_close(j);
		CHECK(exists(x->path, ".spool") == (i == 0));
		make_closed(x, 0700, 0600);
		j = open_any(x);
		CHECK(journal_state(j) == JOURNAL_GOOD);
		journal_close(j);
		CHECK(ask(x->path, "SELECT count(*) FROM turns") == 8 + 4 * i);
	}
}

static void test_read_only(void **state)
{
	as_ordinary(*state, read_only_part);
}

/* There never was a journal, and the folder takes none. */
static void nothing_there_part(struct fixture *x)
{
	struct journal *j;

	snprintf(x->path, sizeof(x->path), "%s/data/wren.sqlite", x->folder);
	*strrchr(x->path, '/') = '\0';
	CHECK(mkdir(x->path, 0500) == 0);
	x->path[strlen(x->path)] = '/';
	j = open_any(x);
	CHECK(journal_state(j) == JOURNAL_READ_ONLY);
	sit(x, j, DAY_ONE, 4);
	journal_flush(j);
	CHECK(turns_looked_at(x) == 4);
	journal_close(j);
	make_closed(x, 0700, 0);
	j = open_any(x);
	CHECK(journal_state(j) == JOURNAL_GOOD);
	journal_close(j);
	CHECK(ask(x->path, "SELECT count(*) FROM turns") == 4);
}

static void test_nothing_there(void **state)
{
	as_ordinary(*state, nothing_there_part);
}

/* No file may grow any more, then it may again. */
static void full_part(struct fixture *x)
{
	struct journal *j = open_any(x);
	struct turn_row t = turn_of(4, BLOCK_WORK, TONE, 0, 6);

	signal(SIGXFSZ, SIG_IGN);
	limit_files(150000);
	for (int i = 0; i < 200 && journal_state(j) == JOURNAL_GOOD; i++) {
		sit(x, j, DAY_ONE + i, 4);
		journal_flush(j);
	}
	CHECK(journal_state(j) == JOURNAL_SPOOL);
	CHECK(trouble_of(j) == M_WORLD_JOURNAL_FULL);
	CHECK(exists(x->path, ".spool"));

	/* Nothing at all: it waits in memory. */
	limit_files(1);
	t.number = 100;
	put_turn(x, j, &t);
	journal_flush(j);
	CHECK(trouble_of(j) == M_WORLD_JOURNAL_NOT_KEPT);
	limit_files(RLIM_INFINITY);
	t.number = 101;
	put_turn(x, j, &t);
	journal_flush(j);
	CHECK(journal_state(j) == JOURNAL_GOOD);
	CHECK(!exists(x->path, ".spool"));
	journal_close(j);
	CHECK(ask(x->path,
		  "SELECT count(*) = 4 * (SELECT count(*) FROM "
		  "sittings) + 2 FROM turns") == 1);
	CHECK(ask(x->path, "SELECT min(ended) FROM sittings") == 1);
}

static void test_full(void **state)
{
	as_ordinary(*state, full_part);
}

/* A disk of 400 KB; the second place of the spool is on another one. */
static void small_disk_part(struct fixture *x)
{
	char folder[100];
	struct journal *j;
	struct message m;
	int sittings = 0;

	snprintf(folder, sizeof(folder), "%s/data", x->folder);
	CHECK(mkdir(folder, 0700) == 0);
	if (unshare(CLONE_NEWNS) != 0 ||
	    mount("none", "/", NULL, MS_REC | MS_PRIVATE, NULL) != 0 ||
	    mount("none", folder, "tmpfs", 0, "size=400k") != 0) {
		fprintf(stderr,
		    "no rights to mount: the limit of file sizes "
		    "alone was tested\n");
		return;
	}
	j = open_any(x);
	for (; sittings < 400 && journal_state(j) == JOURNAL_GOOD; sittings++) {
		sit(x, j, DAY_ONE + sittings, 4);
		journal_flush(j);
	}
	CHECK(journal_state(j) == JOURNAL_SPOOL);
	CHECK(journal_trouble(j, &m) && m.id == M_WORLD_JOURNAL_FULL);
	for (int i = 0; i < 100; i++)
		sit(x, j, DAY_ONE + sittings++, 4);
	journal_flush(j);
	CHECK(trouble_of(j) == M_WORLD_JOURNAL_ELSEWHERE);
	CHECK(mount("none", folder, "tmpfs", MS_REMOUNT, "size=4m") == 0);
	journal_close(j);
	CHECK(ask(x->path, "SELECT count(*) FROM turns") == 4 * sittings);
	CHECK(ask(x->path, "SELECT count(*) FROM sittings") == sittings);
}

static void test_small_disk(void **state)
{
	pid_t child;
	int status = 0;

	fflush(NULL);
	child = fork();
	if (child == 0) {
		small_disk_part(*state);
		_exit(0);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_int_equal(status, 0);
}

/* Opens what is unfit, practises, and sees that it was not changed. */
static void practise_beside(
    struct fixture *x, enum message_id told, enum journal_state expected)
{
	struct fault f;
	struct history h;
	char *before, *after;
	int64_t length = bytes_of(x->path, &before);
	struct journal *j = journal_open(x->path, &f);

	assert_non_null(j);
	assert_int_equal(trouble_of(j), told);
	assert_int_equal(journal_state(j), expected);
	assert_true(journal_history(j, &h, DAY_ONE, NULL, &f));
	history_done(&h);
	sit(x, j, DAY_ONE, 4);
	journal_flush(j);
	assert_true(journal_history(j, &h, DAY_ONE, NULL, &f));
	assert_true(h.turns >= 4); /* today's are known all the same */
	history_done(&h);
	assert_int_equal(trouble_of(j), M_NONE);
	journal_close(j);
	assert_true(exists(x->path, ".spool"));
	assert_int_equal(bytes_of(x->path, &after), length);
	assert_memory_equal(before, after, (size_t)length);
	free(before);
	free(after);
}

static void make_journal(struct fixture *x, int sittings)
{
	struct journal *j = open_good(x);

	for (int i = 0; i < sittings; i++)
		sit(x, j, DAY_ONE - i, 4);
	journal_close(j);
}

static void test_broken(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	char *bytes, *good;
	int64_t length;

	make_journal(x, 3);
	length = bytes_of(x->path, &good);
	length = bytes_of(x->path, &bytes);

	/* The first page is gone; all but the first; the second half. */
	memset(bytes, 'x', 4096);
	write_bytes(x->path, bytes, length);
	practise_beside(x, M_WORLD_JOURNAL_BROKEN, JOURNAL_SPOOL);
	assert_null(journal_look(x->path, &f));
	assert_int_equal(f.message.id, M_WORLD_JOURNAL_LOOK_BROKEN);
	memcpy(bytes, good, (size_t)length);
	memset(bytes + 4096, 'x', (size_t)length - 4096);
	write_bytes(x->path, bytes, length);
	practise_beside(x, M_WORLD_JOURNAL_BROKEN, JOURNAL_SPOOL);
	write_bytes(x->path, good, length / 2);
	practise_beside(x, M_WORLD_JOURNAL_BROKEN, JOURNAL_SPOOL);

	/* The good copy put back: everything is there. */
	write_bytes(x->path, good, length);
	make_journal(x, 0);
	assert_int_equal(turns_in(x), 6 * 4);
	free(bytes);
	free(good);
}

static void test_other_file(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	struct journal *j;

	make_journal(x, 0);
	unlink(x->path);
	write_bytes(x->path, "Dear diary, today I practised.\n", 31);
	practise_beside(x, M_WORLD_JOURNAL_BROKEN, JOURNAL_SPOOL);
	unlink(x->path);
	write_bytes(x->path, "", 0);
	assert_int_equal(ask(x->path, "CREATE TABLE recipes (a)"), -1);
	practise_beside(x, M_WORLD_JOURNAL_OTHER_FILE, JOURNAL_SPOOL);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM sqlite_schema"), 1);
	assert_null(journal_look(x->path, &f));
	assert_int_equal(f.message.id, M_WORLD_JOURNAL_LOOK_OTHER);

	/* A file of no length is a journal not yet begun. */
	unlink(x->path);
	write_bytes(x->path, "", 0);
	j = open_good(x);
	journal_close(j);
	assert_int_equal(turns_in(x), 8);
}

static void test_newer(void **state)
{
	struct fixture *x = *state;

	make_journal(x, 1);
	ask(x->path, "PRAGMA user_version = 1000");
	practise_beside(x, M_WORLD_JOURNAL_NEWER, JOURNAL_READ_ONLY);
	assert_int_equal(turns_looked_at(x), 8);
	ask(x->path, "PRAGMA user_version = 2");
	make_journal(x, 0);
	assert_int_equal(turns_in(x), 8);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM origins"), 2);
}

/* Where the folder should be, there is a file; where the file, a folder. */
static void test_unreachable(void **state)
{
	struct fixture *x = *state;
	struct fault f;
	char folder[100];
	struct journal *j;

	snprintf(folder, sizeof(folder), "%s/data", x->folder);
	write_bytes(folder, "", 0);
	for (int i = 0; i < 2; i++) {
		j = journal_open(x->path, &f);
		assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_UNREACHABLE);
		assert_int_equal(journal_state(j), JOURNAL_SPOOL);
		sit(x, j, DAY_ONE, 4);
		journal_close(j);
		unlink(folder);
		mkdir(folder, 0700);
		mkdir(x->path, 0700);
	}
	rmdir(x->path);
	make_journal(x, 0);
	assert_int_equal(turns_in(x), 8);
}

/* The file is replaced while we practise, by a program that copies homes. */
static void test_moved(void **state)
{
	struct fixture *x = *state;
	char old[140], *bytes;
	struct journal *j;
	int64_t length;

	make_journal(x, 1);
	length = bytes_of(x->path, &bytes);
	j = open_good(x);
	snprintf(old, sizeof(old), "%s.old", x->path);
	assert_int_equal(rename(x->path, old), 0);
	write_bytes(x->path, bytes, length);
	sit(x, j, DAY_ONE, 4);
	journal_flush(j);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_MOVED);
	journal_close(j);
	assert_int_equal(turns_in(x), 4);
	make_journal(x, 0);
	assert_int_equal(turns_in(x), 8);
	free(bytes);
}

/* Random damage of all kinds: never a crash, never a hang. */
static void test_random_damage(void **state)
{
	struct fixture *x = *state;
	char *good, *bytes, command[200];
	int nowhere = open("/dev/null", O_WRONLY);
	int64_t length;

	seeded_begin("damage");
	make_journal(x, 6);
	length = bytes_of(x->path, &good);
	bytes = malloc((size_t)length);
	for (int i = 0; i < 60; i++) {
		struct fault f;
		struct history h;
		struct journal *j;

		memcpy(bytes, good, (size_t)length);
		for (int k = seeded(1, 200); k > 0; k--)
			bytes[seeded(seeded(0, 1) ? 0 : 16, (int)length - 1)] =
			    (char)seeded(0, 255);
		write_bytes(x->path, bytes,
		    seeded(0, 3) ? length : seeded(1, (int)length));
		j = journal_open(x->path, &f);
		assert_non_null(j);
		journal_history(j, &h, DAY_ONE, NULL, &f);
		history_done(&h);
		sit(x, j, DAY_ONE, 4);
		journal_flush(j);
		/* In the journal or in the spool. */
		assert_true(journal_state(j) == JOURNAL_GOOD ||
		    exists(x->path, ".spool"));
		journal_close(j);
		journal_dump_json(x->path, INT_MIN, INT_MAX, nowhere, &f);
		j = journal_look(x->path, &f);
		if (j != NULL)
			journal_history(j, &h, DAY_ONE, NULL, &f);
		history_done(&h);
		journal_close(j);
		snprintf(command, sizeof(command), "rm -f %s*", x->path);
		assert_int_equal(system(command), 0);
	}
	close(nowhere);
	free(good);
	free(bytes);
}

/* --- a disk without shared memory: no WAL --- */

static sqlite3_vfs *plain_vfs;
static sqlite3_io_methods no_wal;

static int open_no_wal(
    sqlite3_vfs *v, const char *name, sqlite3_file *file, int flags, int *out)
{
	int rc = plain_vfs->xOpen(v, name, file, flags, out);

	if (rc == SQLITE_OK && file->pMethods) {
		no_wal = *file->pMethods;
		no_wal.iVersion = 1;
		file->pMethods = &no_wal;
	}
	return rc;
}

static void test_no_wal(void **state)
{
	struct fixture *x = *state;
	sqlite3_vfs vfs;
	struct fault f;
	struct journal *j;

	plain_vfs = sqlite3_vfs_find(NULL);
	vfs = *plain_vfs;
	vfs.zName = "no-wal";
	vfs.xOpen = open_no_wal;
	sqlite3_vfs_register(&vfs, 1);
	j = journal_open(x->path, &f);
	assert_non_null(j);
	assert_int_equal(trouble_of(j), M_WORLD_JOURNAL_SLOW);
	assert_int_equal(journal_state(j), JOURNAL_GOOD);
	sit(x, j, DAY_ONE, 4);
	journal_flush(j);
	assert_false(exists(x->path, "-wal"));
	assert_int_equal(turns_looked_at(x), 4);
	journal_close(j);
	sqlite3_vfs_unregister(&vfs);
	assert_int_equal(turns_in(x), 4);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_busy),
		T(test_busy_to_the_end),
		T(test_busy_at_the_opening),
		T(test_read_only),
		T(test_nothing_there),
		T(test_full),
		T(test_small_disk),
		T(test_broken),
		T(test_other_file),
		T(test_newer),
		T(test_unreachable),
		T(test_moved),
		T(test_random_damage),
		T(test_no_wal),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
