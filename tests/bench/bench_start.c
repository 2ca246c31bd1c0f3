/*
 * bench_start.c - how long a student waits, and how much memory it takes
 *
 * Runs the real binary (EVENHAND) with pipes for its input and output and
 * prints each figure beside its goal.  Times are medians of several runs in
 * a fresh home folder each.
 */
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <sysexits.h>
#include <time.h>
#include <unistd.h>

#include "bench.h"

enum { RUNS = 15 };

struct child {
	pid_t pid;
	int in, out; /* our ends */
};

static struct child start(char *const *argv)
{
	int in[2], out[2];
	struct child c;

	if (pipe(in) || pipe(out))
		fail("pipe");
	c.pid = fork();
	if (c.pid < 0)
		fail("fork");
	if (c.pid == 0) {
		dup2(in[0], 0);
		dup2(out[1], 1);
		dup2(open("/dev/null", O_WRONLY), 2);
		close(in[1]);
		close(out[0]);
		execv(argv[0], argv);
		_exit(127);
	}
	close(in[0]);
	close(out[1]);
	c.in = in[1];
	c.out = out[0];
	return c;
}

/* Reads to the end (or until stop_at bytes), counting what came. */
static long drain(int fd, long stop_at)
{
	char bytes[4096];
	long all = 0;
	ssize_t n;

	while (all < stop_at && (n = read(fd, bytes, sizeof bytes)) > 0)
		all += n;
	return all;
}

static int finish(struct child *c)
{
	int status = 0;

	close(c->in);
	drain(c->out, 1L << 40);
	close(c->out);
	waitpid(c->pid, &status, 0);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static void first_line(char *binary)
{
	char *argv[] = { binary, "--lines", NULL };
	double ms[RUNS];

	for (int i = 0; i < RUNS; i++) {
		char home[64];

		fresh_home(home, sizeof home);
		double t = now_ms();
		struct child c = start(argv);
		if (drain(c.out, 1) == 0)
			fail("no first line");
		ms[i] = now_ms() - t;
		finish(&c);
		forget_home(home);
	}
	figure("first line of output", "< 15", median(ms, RUNS), "ms");
	beside_true("first line of output");
}

static double whole_ms(char *const *argv, int expected)
{
	double t = now_ms();
	struct child c = start(argv);
	int status = finish(&c);

	if (status != expected) {
		fprintf(
		    stderr, "%s: exit %d, not %d\n", argv[1], status, expected);
		exit(1);
	}
	return now_ms() - t;
}

/* Five minutes with every turn marked by the script. */
static void write_script(const char *path)
{
	FILE *f = fopen(path, "w");

	if (!f)
		fail(path);
	for (int t = 26; t < 300; t += 2)
		fprintf(f, "%d:%02d c\n", t / 60, t % 60);
	fclose(f);
}

static void fast_session(char *binary)
{
	double ms[RUNS];

	for (int i = 0; i < RUNS; i++) {
		char home[64], script[96];
		char *argv[] = { binary, "--lines", "--clock", "fast", "--at",
			"2026-03-02T17:00", "--script", script, NULL };

		fresh_home(home, sizeof home);
		snprintf(script, sizeof script, "%s/keys", home);
		write_script(script);
		ms[i] = whole_ms(argv, 0);
		forget_home(home);
	}
	figure("a whole session with --clock fast", "< 500", median(ms, RUNS),
	    "ms");
}

/*
 * As large as a routine may be: as many stages and self-checks as are read,
 * and the teacher's own notes between them.  With key "chekc" every self-check
 * is a fault as well.
 */
static void write_large(const char *path, const char *key)
{
	enum { STAGES = 24, BYTES = 256 * 1024, NOTE = 80 };
	FILE *f = fopen(path, "w");

	if (!f)
		fail(path);
	fputs("routine: Large\nplayer: {instrument: cello}\n"
	      "homework: {work_on: s0, no_further_than: s0}\nstages:\n",
	    f);
	for (int i = 0; i < STAGES; i++) {
		fprintf(f,
		    "  - id: s%d\n    title: Stage %d\n    travel: tone\n"
		    "    place: string D\n    %s:\n",
		    i, i, key);
		for (int n = 0; n < 8; n++)
			fprintf(f, "      - Shoulders rest, %d\n", n);
		while (ftell(f) < (long)(i + 1) * (BYTES / STAGES) - NOTE)
			fputs("    # the forearm swings, the shoulders rest\n",
			    f);
	}
	fclose(f);
}

static void large_check(char *binary, const char *key, int expected)
{
	double ms[RUNS];
	char home[64], path[96], what[64];
	char *argv[] = { binary, "check", path, NULL };
	struct stat st;

	fresh_home(home, sizeof home);
	snprintf(path, sizeof path, "%s/large.yaml", home);
	write_large(path, key);
	for (int i = 0; i < RUNS; i++)
		ms[i] = whole_ms(argv, expected);
	if (stat(path, &st))
		fail(path);
	snprintf(what, sizeof what, "a file of %ld bytes checked, %s",
	    (long)st.st_size, expected ? "all faults" : "no fault");
	figure(what, "< 20", median(ms, RUNS), "ms");
	forget_home(home);
}

/* Two pages answered, then two seconds into the first lead-in. */
static void memory(char *binary)
{
	char *argv[] = { binary, "--lines", NULL };
	struct timespec second = { 1, 0 };
	char home[64];

	fresh_home(home, sizeof home);
	struct child c = start(argv);
	for (int i = 0; i < 3; i++) {
		nanosleep(&second, NULL);
		if (write(c.in, "\n", 1) != 1)
			fail("write");
	}
	nanosleep(&second, NULL);
	double mb = private_mb(c.pid);
	kill(c.pid, SIGTERM);
	finish(&c);
	forget_home(home);
	figure("private memory while practising", "< 10", mb, "MB");
}

int main(void)
{
	char *binary = getenv("EVENHAND");

	if (!binary) {
		fprintf(stderr, "EVENHAND must name the program\n");
		return 1;
	}
	signal(SIGPIPE, SIG_IGN);
	first_line(binary);
	large_check(binary, "check", EX_OK);
	large_check(binary, "chekc", EX_DATAERR);
	fast_session(binary);
	memory(binary);
	return 0;
}
