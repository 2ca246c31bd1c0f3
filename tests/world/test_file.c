/* test_file.c - new files: whole or not at all, and never over what is there */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <dirent.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "evenhand/world/file.h"

static char folder[64], path[96];

static int open_folder(void **state)
{
	(void)state;
	snprintf(folder, sizeof(folder), "/tmp/evenhand-file-XXXXXX");
	if (!mkdtemp(folder))
		return -1;
	snprintf(path, sizeof(path), "%s/week", folder);
	return 0;
}

static int close_folder(void **state)
{
	char command[96];

	(void)state;
	snprintf(command, sizeof(command), "rm -rf %s", folder);
	return system(command);
}

static int entries(void)
{
	DIR *d = opendir(folder);
	int found = 0;

	assert_non_null(d);
	for (struct dirent *e; (e = readdir(d));)
		found += e->d_name[0] != '.';
	closedir(d);
	return found;
}

static void holds(const char *words)
{
	char *bytes;
	size_t length;
	struct fault f;

	assert_true(file_read(path, 1000, &bytes, &length, &f));
	assert_string_equal(bytes, words);
	free(bytes);
}

static void test_write(void **state)
{
	struct stat s;
	struct fault f;

	(void)state;
	umask(022);
	assert_true(file_write(path, "one", 3, false, &f));
	assert_int_equal(stat(path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0644);
	assert_false(file_write(path, "two", 3, false, &f));
	assert_int_equal(f.message.id, M_WORLD_FILE_THERE);
	assert_string_equal(f.path, path);
	holds("one");
	assert_true(file_write(path, "two", 3, true, &f));
	holds("two");
	assert_true(file_replace(path, "three", 5, &f));
	assert_int_equal(stat(path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	holds("three");
	assert_int_equal(entries(), 1);
	umask(077);
	assert_true(file_write(path, "four", 4, true, &f));
	assert_int_equal(stat(path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	umask(022);
	assert_false(file_write("/none-of-these/week", "x", 1, true, &f));
	assert_int_equal(f.message.id, M_WORLD_FILE_NO_FOLDER);
}

/* What comes there meanwhile stays, unless it may be replaced. */
static void test_race(void **state)
{
	struct file_new n;
	struct fault f;

	(void)state;
	assert_true(file_new_open(&n, path, FILE_RIGHTS, false, &f));
	assert_int_equal(write(n.fd, "late", 4), 4);
	assert_int_equal(access(path, F_OK), -1);
	assert_true(file_write(path, "first", 5, false, &f));
	assert_false(file_new_put(&n, &f));
	assert_int_equal(f.message.id, M_WORLD_FILE_THERE);
	assert_int_equal(n.fd, -1);
	holds("first");
	assert_true(file_new_open(&n, path, FILE_RIGHTS, true, &f));
	assert_int_equal(write(n.fd, "late", 4), 4);
	holds("first");
	assert_true(file_new_put(&n, &f));
	holds("late");
	assert_int_equal(entries(), 1);
}

static void test_drop(void **state)
{
	struct file_new n;
	struct fault f;

	(void)state;
	for (int force = 0; force < 2; force++) {
		assert_true(
		    file_new_open(&n, path, FILE_RIGHTS, force == 1, &f));
		assert_int_equal(write(n.fd, "half", 4), 4);
		file_new_drop(&n);
		file_new_drop(&n);
		assert_int_equal(entries(), 0);
	}
	/* It can be read back before it is there. */
	assert_true(file_new_open(&n, path, FILE_RIGHTS, false, &f));
	assert_int_equal(write(n.fd, "whole", 5), 5);
	char back[5];
	assert_int_equal(pread(n.fd, back, 5, 0), 5);
	assert_memory_equal(back, "whole", 5);
	assert_true(file_new_put(&n, &f));
	holds("whole");
}

/* Killed in the middle: nothing is there, or the old one, and nothing else. */
static void test_killed(void **state)
{
	struct fault f;
	struct file_new n;
	int status;

	(void)state;
	for (int force = 0; force < 2; force++) {
		pid_t child = fork();

		assert_true(child >= 0);
		if (child == 0) {
			if (file_new_open(
				&n, path, FILE_RIGHTS, force == 1, &f) &&
			    write(n.fd, "half", 4) == 4)
				raise(SIGKILL);
			_exit(1);
		}
		assert_int_equal(waitpid(child, &status, 0), child);
		assert_true(WIFSIGNALED(status));
		assert_int_equal(WTERMSIG(status), SIGKILL);
#ifdef __linux__
		assert_int_equal(entries(), force);
#endif
		assert_int_equal(access(path, F_OK), force - 1);
		if (force == 0)
			assert_true(file_write(path, "old", 3, false, &f));
	}
	holds("old");
}

/* A pipe or a folder is never replaced by a file. */
static void test_odd(void **state)
{
	struct file_new n;
	struct fault f;

	(void)state;
	assert_int_equal(mkfifo(path, 0600), 0);
	assert_false(file_new_open(&n, path, FILE_RIGHTS, true, &f));
	assert_int_equal(f.message.id, M_WORLD_FILE_ODD);
	assert_int_equal(entries(), 1);
	assert_false(file_new_open(&n, folder, FILE_RIGHTS, true, &f));
	assert_int_equal(f.message.id, M_WORLD_FILE_FOLDER);
	assert_false(file_new_open(&n, path, FILE_RIGHTS, false, &f));
	assert_int_equal(f.message.id, M_WORLD_FILE_THERE);
}

/* Paths without a folder in them, and at the root of one. */
static void test_here(void **state)
{
	struct fault f;
	char before[4096];

	(void)state;
	assert_non_null(getcwd(before, sizeof(before)));
	assert_int_equal(chdir(folder), 0);
	assert_true(file_write("week", "here", 4, false, &f));
	assert_int_equal(chdir(before), 0);
	holds("here");
	assert_int_equal(entries(), 1);
}

int main(void)
{
#define T(t) cmocka_unit_test_setup_teardown(t, open_folder, close_folder)
	const struct CMUnitTest tests[] = {
		T(test_write),
		T(test_race),
		T(test_drop),
		T(test_killed),
		T(test_odd),
		T(test_here),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
