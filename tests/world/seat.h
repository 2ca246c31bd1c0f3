/*
 * seat.h - a program in a terminal of its own, as in an xterm
 *
 * Whoever includes it asks for pseudo-terminals before any other header, too.
 */
#ifndef EVENHAND_TESTS_SEAT_H
#define EVENHAND_TESTS_SEAT_H

#ifndef _XOPEN_SOURCE
#define _XOPEN_SOURCE 700
#endif

#include <fcntl.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "evenhand/world/keys.h"

static inline void sleep_ms(int ms)
{
	nanosleep(&(struct timespec) { ms / 1000, ms % 1000 * 1000000L }, NULL);
}

struct seat {
	int master;
	pid_t child;
	struct termios found;
};

/* What the child does with the keys of its terminal. */
typedef void sitting(struct keys *k);

static inline void seat_open(struct seat *s, sitting *part)
{
	s->master = posix_openpt(O_RDWR | O_NOCTTY);
	assert_true(s->master >= 0);
	assert_int_equal(grantpt(s->master), 0);
	assert_int_equal(unlockpt(s->master), 0);
	const char *name = ptsname(s->master);
	int slave = open(name, O_RDWR | O_NOCTTY);
	assert_int_equal(tcgetattr(slave, &s->found), 0);
	s->child = fork();
	if (s->child == 0) {
		/* Whoever runs the tests may ignore some. */
		signal(SIGHUP, SIG_DFL);
		signal(SIGINT, SIG_DFL);
		signal(SIGQUIT, SIG_DFL);
		signal(SIGTERM, SIG_DFL);
		signal(SIGTSTP, SIG_DFL);
		setsid();
		ioctl(slave, TIOCSCTTY, 0);
		close(s->master);
		part(keys_open(slave));
		_exit(0);
	}
	close(slave);
	sleep_ms(100);
}

static inline struct termios seat_now(const struct seat *s)
{
	struct termios t;

	assert_int_equal(tcgetattr(s->master, &t), 0);
	return t;
}

static inline void seat_given_back(const struct seat *s)
{
	struct termios t = seat_now(s);

	assert_int_equal(t.c_lflag, s->found.c_lflag);
	assert_int_equal(t.c_iflag, s->found.c_iflag);
	assert_int_equal(t.c_oflag, s->found.c_oflag);
	assert_memory_equal(t.c_cc, s->found.c_cc, sizeof t.c_cc);
}

#endif
