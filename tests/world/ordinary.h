/*
 * ordinary.h - hands laid on a journal: held, closed, limited, looked into
 *
 * Root may write anywhere, so what is about rights runs in a child as an
 * ordinary user.
 */
#ifndef EVENHAND_TESTS_ORDINARY_H
#define EVENHAND_TESTS_ORDINARY_H

#include <sys/resource.h>
#include <sys/wait.h>

#include "journal_fixture.h"

enum { NOBODY = 65534 };

/* In a child a check that fails ends it with its line. */
#define CHECK(condition) \
	do { \
		if (!(condition)) { \
			fprintf( \
			    stderr, "line %d: %s\n", __LINE__, #condition); \
			_exit(1); \
		} \
	} while (0)

static inline int64_t bytes_of(const char *path, char **bytes)
{
	FILE *f = fopen(path, "rb");
	size_t length;

	*bytes = NULL;
	if (!f)
		return -1;
	*bytes = malloc(1 << 22);
	length = fread(*bytes, 1, 1 << 22, f);
	fclose(f);
	return (int64_t)length;
}

static inline void write_bytes(
    const char *path, const char *bytes, int64_t length)
{
	FILE *f = fopen(path, "wb");

	assert_non_null(f);
	assert_int_equal(fwrite(bytes, 1, (size_t)length, f), length);
	assert_int_equal(fclose(f), 0);
}

static inline sqlite3 *hold(const struct fixture *x)
{
	sqlite3 *d;

	assert_int_equal(sqlite3_open(x->path, &d), SQLITE_OK);
	assert_int_equal(
	    sqlite3_exec(d, "BEGIN IMMEDIATE", NULL, NULL, NULL), SQLITE_OK);
	return d;
}

static inline void let_go(sqlite3 *d)
{
	assert_int_equal(
	    sqlite3_exec(d, "ROLLBACK", NULL, NULL, NULL), SQLITE_OK);
	sqlite3_close(d);
}

/* Runs a part as an ordinary user, who owns the folder. */
static inline void as_ordinary(
    struct fixture *x, void (*part)(struct fixture *x))
{
	pid_t child;
	int status = 0;

	fflush(NULL);
	child = fork();
	assert_true(child >= 0);
	if (child == 0) {
		if (geteuid() == 0)
			CHECK(chown(x->folder, NOBODY, NOBODY) == 0 &&
			    setgid(NOBODY) == 0 && setuid(NOBODY) == 0);
		part(x);
		_exit(0);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_true(WIFEXITED(status));
	assert_int_equal(WEXITSTATUS(status), 0);
}

static inline void make_closed(
    struct fixture *x, mode_t folder_mode, mode_t mode)
{
	char folder[100];

	snprintf(folder, sizeof(folder), "%s/data", x->folder);
	CHECK(mode == 0 || chmod(x->path, mode) == 0);
	CHECK(chmod(folder, folder_mode) == 0);
}

static inline struct journal *open_any(struct fixture *x)
{
	struct fault f;
	struct journal *j = journal_open(x->path, &f);

	CHECK(j != NULL);
	return j;
}

static inline void limit_files(rlim_t bytes)
{
	struct rlimit limit;

	CHECK(getrlimit(RLIMIT_FSIZE, &limit) == 0);
	limit.rlim_cur = bytes;
	CHECK(setrlimit(RLIMIT_FSIZE, &limit) == 0);
}

#endif
