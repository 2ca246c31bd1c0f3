/*
 * test_sound_log.c - however much is printed, the log is small and private
 */
#include <fcntl.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

#include "../../src/world/sound_log.h"

static char folder[] = "/tmp/evenhand-log-XXXXXX";
static char path[sizeof folder + 40];
static int ends[2];

static int begin(void **state)
{
	(void)state;
	strcpy(folder + sizeof folder - 7, "XXXXXX");
	if (!mkdtemp(folder) || pipe(ends) != 0)
		return -1;
	snprintf(path, sizeof path, "%s/a/b/sound.log", folder);
	fcntl(ends[0], F_SETFL, O_NONBLOCK);
	fcntl(ends[1], F_SETFL, O_NONBLOCK);
	return 0;
}

static int end(void **state)
{
	char command[sizeof folder + 16];

	(void)state;
	close(ends[0]);
	snprintf(command, sizeof command, "rm -rf %s", folder);
	return system(command);
}

static long size(void)
{
	struct stat s;

	return stat(path, &s) == 0 ? (long)s.st_size : -1;
}

static void test_bounded(void **state)
{
	static char noise[3000];
	struct sound_log l;
	struct stat s;
	long printed = 0;

	(void)state;
	memset(noise, 'x', sizeof noise);
	sound_log_begin(&l, path);
	assert_true(sound_log_drain(&l, ends[0]));
	/* Nothing printed, no log. */
	assert_int_equal(size(), -1);
	assert_int_equal(write(ends[1], "first\n", 6), 6);
	assert_true(sound_log_drain(&l, ends[0]));
	assert_int_equal(size(), 6);
	while (printed < 1000000) {
		ssize_t n = write(ends[1], noise, sizeof noise);

		printed += n > 0 ? n : 0;
		assert_true(sound_log_drain(&l, ends[0]));
	}
	assert_int_equal(size(), SOUND_LOG_MAX);
	assert_int_equal(stat(path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	close(ends[1]);
	while (sound_log_drain(&l, ends[0]))
		;
	close(l.file);

	/* The next run begins anew. */
	sound_log_begin(&l, path);
	assert_int_equal(size(), -1);
}

/* Where it cannot be kept, the pipe is emptied all the same. */
static void test_no_place(void **state)
{
	struct sound_log l;
	char byte;

	(void)state;
	sound_log_begin(&l, "");
	assert_int_equal(write(ends[1], "lost\n", 5), 5);
	assert_true(sound_log_drain(&l, ends[0]));
	assert_true(read(ends[0], &byte, 1) < 0);
	sound_log_begin(&l, "/dev/null/sound.log");
	assert_int_equal(write(ends[1], "lost\n", 5), 5);
	assert_true(sound_log_drain(&l, ends[0]));
	assert_true(read(ends[0], &byte, 1) < 0);
	close(ends[1]);
	assert_false(sound_log_drain(&l, ends[0]));
}

/* What lies there under that name is not written through. */
static void test_link(void **state)
{
	struct sound_log l;
	char other[sizeof folder + 40], inner[sizeof folder + 40];

	(void)state;
	snprintf(other, sizeof other, "%s/precious", folder);
	snprintf(inner, sizeof inner, "%s/a", folder);
	mkdir(inner, 0700);
	snprintf(inner, sizeof inner, "%s/a/b", folder);
	mkdir(inner, 0700);
	sound_log_begin(&l, path);
	assert_int_equal(symlink(other, path), 0);
	assert_int_equal(write(ends[1], "noise\n", 6), 6);
	assert_true(sound_log_drain(&l, ends[0]));
	assert_int_equal(access(other, F_OK), -1);
	close(ends[1]);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, begin, end)
	const struct CMUnitTest tests[] = {
		T(test_bounded),
		T(test_no_place),
		T(test_link),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
