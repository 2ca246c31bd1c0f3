/*
 * test_terminal_slow.c - a terminal that takes nothing for a while
 *
 * The terminal is a pair of ours.  Nobody reads at its far end, as when a word
 * is marked with the mouse: pictures go on being shown without a wait, and
 * the last one arrives when somebody reads again.
 */
#include <fcntl.h>
#include <poll.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "evenhand/world/keys.h"
#include "evenhand/world/terminal.h"

enum { COLUMNS = 120, ROWS = 40, PICTURES = 200, SLOWEST_MS = 5000 };

struct line {
	int far;    /* the terminal's own end */
	int report; /* one letter for each thing done */
	pid_t pid;
	char *seen; /* all that came */
	size_t length;
};

static int64_t now_ms(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (int64_t)t.tv_sec * 1000 + t.tv_nsec / 1000000;
}

static void picture(struct canvas *c, int number)
{
	char words[COLUMNS + 1];

	canvas_init(c, COLUMNS, ROWS);
	for (int y = 0; y < ROWS; y++) {
		/* No letter twice running: a row may not be sent short. */
		for (int x = 0; x < COLUMNS; x++)
			words[x] = (char)('a' + (number + y + x) % 26);
		words[COLUMNS] = '\0';
		canvas_put(c, y, 0, ATTRIBUTE_PLAIN, words);
	}
}

/* Shows pictures to a terminal that stands still, then the last words. */
static void show_all(int report)
{
	static struct canvas c;
	struct keys *k = keys_open(STDIN_FILENO);
	struct terminal *t = terminal_open(TERMINAL_AUTO);
	int64_t before = now_ms(), slowest = 0;
	int columns, rows, held = 0;

	terminal_size(t, &columns, &rows);
	for (int i = 0; i < PICTURES; i++) {
		int64_t took;

		picture(&c, i);
		terminal_show(t, &c);
		held += !terminal_ready(t);
		took = now_ms() - before;
		slowest = took > slowest ? took : slowest;
		before = now_ms();
	}
	/* s: it was in no way quick; f: it never stood still at all */
	if (write(report, slowest > SLOWEST_MS ? "s" : held ? "h" : "f", 1) < 0)
		_exit(2);
	while (!terminal_ready(t))
		poll(NULL, 0, 5);
	canvas_init(&c, COLUMNS, ROWS);
	canvas_put(&c, 3, 3, ATTRIBUTE_PLAIN, "THE LAST");
	terminal_show(t, &c);
	while (!terminal_ready(t))
		poll(NULL, 0, 5);
	/* And now it stands still while all is to end. */
	if (write(report, "l", 1) < 0)
		_exit(2);
	for (int i = 0; i < PICTURES; i++) {
		picture(&c, i);
		terminal_show(t, &c);
	}
	terminal_close(t);
	keys_close(k);
	if (write(report, "e", 1) < 0)
		_exit(2);
	_exit(0);
}

static struct line line_open(void)
{
	struct line l = { .far = posix_openpt(O_RDWR | O_NOCTTY) };
	struct winsize size = { .ws_row = ROWS, .ws_col = COLUMNS };
	int ends[2], near;

	assert_true(l.far >= 0 && grantpt(l.far) == 0 && unlockpt(l.far) == 0);
	assert_int_equal(pipe(ends), 0);
	l.report = ends[0];
	l.pid = fork();
	assert_true(l.pid >= 0);
	if (l.pid == 0) {
		setsid();
		near = open(ptsname(l.far), O_RDWR);
		ioctl(near, TIOCSCTTY, 0);
		ioctl(near, TIOCSWINSZ, &size);
		dup2(near, STDIN_FILENO);
		dup2(near, STDOUT_FILENO);
		setenv("TERM", "xterm", 1);
		close(l.far);
		close(ends[0]);
		show_all(ends[1]);
	}
	close(ends[1]);
	l.seen = calloc(1, 1);
	return l;
}

/* The next thing done, within a while; 0: none. */
static char reported(const struct line *l, int ms)
{
	struct pollfd p = { .fd = l->report, .events = POLLIN };
	char c = 0;

	if (poll(&p, 1, ms) == 1 && read(l->report, &c, 1) != 1)
		c = 0;
	return c;
}

/* Reads what comes until something else is done; that. */
static char read_until_reported(struct line *l)
{
	for (int64_t until = now_ms() + 10000; now_ms() < until;) {
		struct pollfd p[2] = { { .fd = l->far, .events = POLLIN },
			{ .fd = l->report, .events = POLLIN } };
		char piece[4096];
		ssize_t got;

		if (poll(p, 2, 100) > 0 && !(p[0].revents & POLLIN) &&
		    p[1].revents)
			return reported(l, 0);
		got = p[0].revents & POLLIN ? read(l->far, piece, sizeof piece)
					    : 0;
		if (got <= 0)
			continue;
		l->seen = realloc(l->seen, l->length + (size_t)got + 1);
		assert_non_null(l->seen);
		memcpy(l->seen + l->length, piece, (size_t)got);
		l->length += (size_t)got;
		l->seen[l->length] = '\0';
	}
	return 0;
}

static void test_stands_still(void **state)
{
	struct line l = line_open();
	char first, last, end;
	int status;

	(void)state;
	first = reported(&l, 60000);
	if (first == 0)
		kill(l.pid, SIGKILL);
	assert_int_equal(first, 'h');
	last = read_until_reported(&l);
	assert_int_equal(last, 'l');
	assert_non_null(strstr(l.seen, "THE LAST"));
	/* Nobody reads any more: it ends all the same. */
	end = reported(&l, 60000);
	if (end == 0)
		kill(l.pid, SIGKILL);
	assert_int_equal(end, 'e');
	assert_int_equal(waitpid(l.pid, &status, 0), l.pid);
	assert_int_equal(status, 0);
	close(l.far);
	close(l.report);
	free(l.seen);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_stands_still),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
