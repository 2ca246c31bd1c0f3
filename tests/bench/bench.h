/*
 * bench.h - what the figures share: a clock, a line each, a home of their own
 *
 * What is printed becomes one table with tests/tools/figures.awk: lines of words
 * set apart by tabs; a line without one stands in the table as it is.  A bench
 * that cannot measure ends with 1; one that misses a goal does not.  One thread.
 */
#ifndef BENCH_H
#define BENCH_H

#include <fcntl.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

static inline void fail(const char *what)
{
	perror(what);
	exit(1);
}

/* ms of the steady clock. */
static inline double now_ms(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

static inline int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;

	return (x > y) - (x < y);
}

static inline double median(double *x, int n)
{
	qsort(x, (size_t)n, sizeof *x, by_size);
	return x[n / 2];
}

/*
 * A figure and its goal, which is in the same unit: "< 15", "<= 3", "> 500",
 * ">= 99.8", "= 0", or "" where there is none.
 */
static inline void figure(
    const char *what, const char *goal, double value, const char *unit)
{
	printf("figure\t%s\t%s\t%.9g\t%s\n", what, goal, value, unit);
	fflush(stdout);
}

/* What somebody else, or nothing at all, comes to where a figure has this name. */
static inline void beside(const char *what, const char *who, double value)
{
	printf("beside\t%s\t%s\t%.9g\n", what, who, value);
	fflush(stdout);
}

/* Starts a program whose output nobody reads; words end with NULL. */
static inline pid_t start_quiet(const char *const *words)
{
	pid_t child = fork();

	if (child < 0)
		fail("fork");
	if (child == 0) {
		dup2(open("/dev/null", O_WRONLY), STDOUT_FILENO);
		execvp(words[0], (char *const *)(uintptr_t)words);
		_exit(127);
	}
	return child;
}

/* ms from its start to its good end. */
static inline double run_ms(const char *const *words)
{
	double began = now_ms();
	int status;

	if (waitpid(start_quiet(words), &status, 0) < 0 || status != 0)
		fail(words[0]);
	return now_ms() - began;
}

/* Beside the time of a whole program: one that does nothing, as often as that. */
static inline void beside_true(const char *what)
{
	static const char *const words[] = { "true", NULL };
	enum { LAUNCHES = 15 };
	double ms[LAUNCHES];

	for (int i = 0; i < LAUNCHES; i++)
		ms[i] = run_ms(words);
	beside(what, "true(1)", median(ms, LAUNCHES));
}

/* A folder of this name is the home, with nothing in it and nothing chosen. */
static inline void home_is(const char *folder)
{
	setenv("HOME", folder, 1);
	unsetenv("XDG_DATA_HOME");
	unsetenv("XDG_CONFIG_HOME");
	unsetenv("XDG_STATE_HOME");
}

/* A fresh home, so that every run is a first run. */
static inline void fresh_home(char *folder, size_t size)
{
	snprintf(folder, size, "/tmp/evenhand-bench-XXXXXX");
	if (!mkdtemp(folder))
		fail(folder);
	home_is(folder);
}

/*
 * What makes the sound ends a moment after the program: it still writes its log
 * into the home, and would take a core from the run that comes next.
 */
static inline void forget_home(const char *folder)
{
	enum { TRIES = 100 };
	struct timespec end = { .tv_nsec = 200000000 };
	struct timespec moment = { .tv_nsec = 20000000 };
	char command[128];

	nanosleep(&end, NULL);
	snprintf(command, sizeof command, "rm -rf %s 2> /dev/null", folder);
	for (int i = 0; i < TRIES; i++) {
		if (system(command) == 0)
			return;
		nanosleep(&moment, NULL);
	}
	fail(command);
}

/* A file of the kernel's about a process; NULL when that is gone. */
static inline FILE *process_file(pid_t pid, const char *name)
{
	char path[64];

	snprintf(path, sizeof path, "/proc/%d/%s", (int)pid, name);
	return fopen(path, "r");
}

/* Private pages of a process in MB, from the kernel's own roll-up; 0: gone. */
static inline double private_mb(pid_t pid)
{
	FILE *f = process_file(pid, "smaps_rollup");
	char line[256];
	double kb = 0;

	while (f && fgets(line, sizeof line, f)) {
		long n;

		if (sscanf(line, "Private_Clean: %ld", &n) == 1 ||
		    sscanf(line, "Private_Dirty: %ld", &n) == 1)
			kb += (double)n;
	}
	if (f)
		fclose(f);
	return kb / 1024;
}

/* Seconds of a core that a process has used so far; 0: gone. */
static inline double used_s(pid_t pid)
{
	FILE *f = process_file(pid, "stat");
	char line[1024], *rest = NULL;
	unsigned long user = 0, own = 0;

	/* utime and stime are the 14th and 15th word; the 2nd is "(name)". */
	if (f && fgets(line, sizeof line, f))
		rest = strrchr(line, ')');
	if (f)
		fclose(f);
	if (rest &&
	    sscanf(rest,
		") %*c %*d %*d %*d %*d %*d %*u %*u %*u %*u %*u %lu %lu", &user,
		&own) != 2)
		fail("stat");
	return (double)(user + own) / (double)sysconf(_SC_CLK_TCK);
}

#endif
