/*
 * bench_screen.c - the full screen: how soon it is up, and what it costs
 *
 * Runs the real binary (EVENHAND) on a terminal of its own making and prints
 * each figure beside its goal.  The last figure draws and writes pages in this
 * process, where nothing else is measured with them.
 */
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

#include "evenhand/base/frames.h"
#include "evenhand/screen/view.h"
#include "evenhand/world/load.h"

#include "bench.h"

enum {
	RUNS = 15,
	COLUMNS_WIDE = 120,
	ROWS_TALL = 40,
	PLAY_S = 20,
	PAGE_BYTES = 500, /* no first page has fewer */
};

struct seat {
	pid_t pid;
	int terminal; /* our end */
};

/* The other end of a new terminal, of a size. */
static int open_terminal(char *name, size_t size)
{
	struct winsize w = { .ws_col = COLUMNS_WIDE, .ws_row = ROWS_TALL };
	int master = posix_openpt(O_RDWR | O_NOCTTY);

	if (master < 0 || grantpt(master) || unlockpt(master))
		fail("posix_openpt");
	snprintf(name, size, "%s", ptsname(master));
	if (ioctl(master, TIOCSWINSZ, &w))
		fail("TIOCSWINSZ");
	return master;
}

static struct seat start(char *const *argv)
{
	char name[64];
	struct seat s = { .terminal = open_terminal(name, sizeof name) };

	s.pid = fork();
	if (s.pid < 0)
		fail("fork");
	if (s.pid == 0) {
		setsid();
		for (int d = 0; d < 3; d++)
			dup2(open(name, O_RDWR), d);
		close(s.terminal);
		execv(argv[0], argv);
		_exit(127);
	}
	return s;
}

/* Reads what is shown for so many ms; bytes, and when the last came. */
static long watch(const struct seat *s, int ms, double *last)
{
	double end = now_ms() + ms;
	long all = 0;
	char bytes[16384];

	for (double left = ms; left > 0; left = end - now_ms()) {
		struct pollfd p = { .fd = s->terminal, .events = POLLIN };
		ssize_t n;

		if (poll(&p, 1, (int)left + 1) <= 0)
			continue;
		n = read(s->terminal, bytes, sizeof bytes);
		if (n <= 0)
			break;
		all += n;
		*last = now_ms();
	}
	return all;
}

/* Most of a page, and all that follows without a pause. */
static long watch_page(const struct seat *s, double *last)
{
	long all = 0, more;

	for (int tries = 0; all < PAGE_BYTES && tries < 1000; tries++)
		all += watch(s, 10, last);
	while ((more = watch(s, 10, last)) > 0)
		all += more;
	return all;
}

/* Ends it; the CPU seconds it took. */
static double finish(const struct seat *s)
{
	struct rusage r;
	int status;

	kill(s->pid, SIGTERM);
	if (wait4(s->pid, &status, 0, &r) < 0)
		fail("wait4");
	close(s->terminal);
	return (double)r.ru_utime.tv_sec + (double)r.ru_stime.tv_sec +
	    (double)(r.ru_utime.tv_usec + r.ru_stime.tv_usec) / 1e6;
}

/*
 * To the last byte of the first page: it comes in one go, and what is said of
 * the sound, which is being opened meanwhile, comes later.
 */
static void first_page(char *binary)
{
	char *argv[] = { binary, NULL };
	double ms[RUNS];

	for (int i = 0; i < RUNS; i++) {
		char home[64];
		double begun, last = 0;

		fresh_home(home, sizeof home);
		begun = now_ms();
		struct seat s = start(argv);
		if (watch_page(&s, &last) < PAGE_BYTES)
			fail("no first page");
		ms[i] = last - begun;
		finish(&s);
		forget_home(home);
	}
	figure("start to the first full page", "< 15", median(ms, RUNS), "ms");
	beside_true("start to the first full page");
}

/* Into the first lead-in and beyond, at true pace. */
static void playing(char *binary)
{
	char *argv[] = { binary, "--marking", "turn", NULL };
	char home[64];
	double last, cpu;

	fresh_home(home, sizeof home);
	struct seat s = start(argv);
	for (int i = 0; i < 4; i++) {
		watch(&s, 600, &last);
		if (write(s.terminal, "\r", 1) != 1)
			fail("write");
	}
	watch(&s, 500, &last);
	cpu = used_s(s.pid);
	watch(&s, PLAY_S * 1000, &last);
	cpu = used_s(s.pid) - cpu;
	double mb = private_mb(s.pid);
	if (mb <= 0)
		fail("the program is gone");
	finish(&s);
	forget_home(home);
	figure(
	    "playing on 120x40, of one core", "< 2", 100 * cpu / PLAY_S, "%");
	figure("private memory of the full screen", "< 10", mb, "MB");
}

/* A page of the built-in routine, somewhere in its first bows, drawn again
 * and again a thirtieth of a second later. */
static void redraw(void)
{
	enum { DRAWS = 600, RATE = 48000 };
	static struct load_paths paths;
	static struct faults faults;
	static struct session session;
	static struct effects effects;
	static struct canvas canvas;
	static struct history none;
	bool unreadable = false;
	struct routine *r = load_routine(NULL, &paths, &faults, &unreadable);
	struct plan_wish wish = { .routine = r, .history = &none };

	struct input in = { .kind = INPUT_KEY, .key = KEY_FORWARD };
	double ms[DRAWS];

	if (!r)
		fail("the built-in routine");
	session_begin(&session, &wish, RATE, &effects);
	for (int i = 0; i < 2; i++) {
		in.frame += RATE;
		session_step(&session, &in, &effects);
	}
	for (int i = 0; i < DRAWS; i++) {
		struct view v = { .session = &session };

		v.heard = session.first_sound +
		    frames_of_ms(12000 + 33 * i, RATE);
		in = (struct input) { .kind = INPUT_FRAME, .frame = v.heard };
		session_step(&session, &in, &effects);
		canvas_init(&canvas, COLUMNS_WIDE, ROWS_TALL);
		double t = now_ms();
		view_draw(&canvas, &v);
		ms[i] = now_ms() - t;
	}
	routine_free(r);
	qsort(ms, DRAWS, sizeof *ms, by_size);
	figure("a page of 120x40 drawn, half of the times", "< 1",
	    ms[DRAWS / 2], "ms");
	figure("a page of 120x40 drawn, 99 of 100 times", "< 1",
	    ms[DRAWS * 99 / 100], "ms");
}

int main(void)
{
	char *binary = getenv("EVENHAND");

	if (!binary) {
		fprintf(stderr, "EVENHAND must name the program\n");
		return 1;
	}
	setenv("TERM", "xterm-256color", 1);
	setenv("LC_ALL", "C.UTF-8", 1);
	redraw();
	first_page(binary);
	playing(binary);
	return 0;
}
