/*
 * test_lines_out.c - lines for a reader who does not read, and then does
 */
#include <errno.h>
#include <fcntl.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "evenhand/world/lines_out.h"

/*
 * Who waited a thousandth of a second for each of 30 000 lines would take longer
 * than this; a busy computer does not.
 */
enum { READ_BYTES = 1 << 20, SLOWEST_MS = 20000 };

static int ends[2];
static struct lines_out *out;
static char got[READ_BYTES];
static size_t length;

static int64_t now_ms(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (int64_t)t.tv_sec * 1000 + t.tv_nsec / 1000000;
}

static int begin(void **state)
{
	(void)state;
	if (pipe(ends) != 0)
		return -1;
	fcntl(ends[0], F_SETFL, O_NONBLOCK);
	length = 0;
	out = lines_out_open(ends[1]);
	return out ? 0 : -1;
}

static int end(void **state)
{
	(void)state;
	lines_out_close(out);
	close(ends[0]);
	close(ends[1]);
	return 0;
}

static bool say(int number)
{
	char line[64];
	int bytes = snprintf(line, sizeof line, "line %d of many\n", number);

	return lines_out_say(out, line, (size_t)bytes);
}

/* Reads what there is, and sends on, until nothing more comes. */
static void read_all(int descriptor)
{
	for (int quiet = 0; quiet < 2;) {
		ssize_t n = read(
		    descriptor, got + length, sizeof got - length - 1);

		quiet = n > 0 ? 0 : quiet + 1;
		length += n > 0 ? (size_t)n : 0;
		assert_true(lines_out_send(out));
	}
	got[length] = '\0';
}

/* The lines from one number on, in order; the number that is not there. */
static int follow(const char **at, int number)
{
	char line[64];

	for (;; number++) {
		snprintf(line, sizeof line, "line %d of many\n", number);
		if (strncmp(*at, line, strlen(line)) != 0)
			return number;
		*at += strlen(line);
	}
}

/* Nothing is held back from a reader who reads. */
static void test_read(void **state)
{
	const char *at = got;

	(void)state;
	for (int i = 0; i < 100; i++)
		assert_true(say(i));
	length = (size_t)read(ends[0], got, sizeof got - 1);
	got[length] = '\0';
	assert_int_equal(follow(&at, 0), 100);
	assert_int_equal(*at, '\0');
}

/* Nobody reads: no wait, whole lines kept, the others told of when he does. */
static void test_nobody_reads(void **state)
{
	enum { LINES = 30000 };
	int64_t start = now_ms();
	const char *at = got;
	char told[64];
	int kept;

	(void)state;
	for (int i = 0; i < LINES; i++)
		assert_true(say(i));
	assert_true(now_ms() - start < SLOWEST_MS);
	read_all(ends[0]);
	kept = follow(&at, 0);
	assert_in_range(kept, LINES_OUT_BYTES / 24, LINES - 1);
	snprintf(
	    told, sizeof told, "%d lines were left out here.\n", LINES - kept);
	assert_memory_equal(at, told, strlen(told));
	assert_int_equal(at[strlen(told)], '\0');
	/* And it goes on as if nothing had been. */
	length = 0;
	assert_true(say(7));
	read_all(ends[0]);
	at = got;
	assert_int_equal(follow(&at, 7), 8);
	assert_int_equal(*at, '\0');
}

/* Still full in part: what comes then is left out too, so order holds. */
static void test_in_order(void **state)
{
	const char *at = got;
	int said = 0, kept;

	(void)state;
	while (said < 30000)
		assert_true(say(said++));
	length = (size_t)read(ends[0], got, 5000);
	assert_true(say(said++));
	read_all(ends[0]);
	kept = follow(&at, 0);
	assert_true(kept < said - 1);
	assert_int_equal(atoi(at), said - kept);
}

static void test_gone(void **state)
{
	(void)state;
	signal(SIGPIPE, SIG_IGN);
	close(ends[0]);
	assert_false(say(1));
	assert_int_equal(errno, EPIPE);
	assert_int_equal(pipe(ends), 0);
}

/* The end comes though nobody reads. */
static void test_ends(void **state)
{
	int64_t start = now_ms();

	(void)state;
	for (int i = 0; i < 30000; i++)
		assert_true(say(i));
	lines_out_close(out);
	assert_true(now_ms() - start < SLOWEST_MS);
	out = NULL;
}

/* A terminal that was stopped with Ctrl-S, and goes on. */
static void test_stopped(void **state)
{
	int far = posix_openpt(O_RDWR | O_NOCTTY), near;
	struct winsize size = { .ws_row = 20, .ws_col = 44 };
	int64_t start = now_ms();
	struct termios t;

	(void)state;
	assert_true(far >= 0 && grantpt(far) == 0 && unlockpt(far) == 0);
	near = open(ptsname(far), O_RDWR | O_NOCTTY);
	assert_true(near >= 0);
	assert_int_equal(tcgetattr(near, &t), 0);
	t.c_oflag &= ~(tcflag_t)OPOST;
	t.c_lflag &= ~(tcflag_t)ECHO;
	assert_int_equal(tcsetattr(near, TCSANOW, &t), 0);
	assert_int_equal(ioctl(near, TIOCSWINSZ, &size), 0);
	assert_int_equal(lines_out_columns(near), 44);
	assert_int_equal(lines_out_columns(ends[1]), 0);
	lines_out_close(out);
	out = lines_out_open(near);
	assert_non_null(out);
	assert_int_equal(tcflow(near, TCOOFF), 0);
	for (int i = 0; i < 300; i++)
		assert_true(say(i));
	assert_true(now_ms() - start < SLOWEST_MS);
	fcntl(far, F_SETFL, O_NONBLOCK);
	assert_true(read(far, got, sizeof got) <= 0);
	assert_int_equal(tcflow(near, TCOON), 0);
	for (int i = 0; i < 3000 && !strstr(got, "line 299 of many\n"); i++) {
		read_all(far);
		usleep(10000);
	}
	assert_non_null(strstr(got, "line 0 of many\n"));
	assert_non_null(strstr(got, "line 299 of many\n"));
	lines_out_close(out);
	out = NULL;
	close(near);
	close(far);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, begin, end)
	const struct CMUnitTest tests[] = {
		T(test_read),
		T(test_nobody_reads),
		T(test_in_order),
		T(test_gone),
		T(test_ends),
		T(test_stopped),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
