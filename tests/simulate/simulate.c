/*
 * simulate.c - a world of invented students under the coach's rules
 *
 *	simulate [--students N] [--workers N] [--seed N]
 *
 * Runs whole programmes of N students, prints what the rules did, and ends
 * with 1 when something happened that must not.  The table depends on the
 * seed and the number of students only.
 */
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "../coach/programme.h"
#include "simulate.h"

enum { WORKERS_MAX = 16, LADDERS = 2, LINE_MAX = 80 };

/* What the workers share. */
struct shared {
	atomic_int next, finished;
	struct result *result;
	int *gate_day; /* of each gate, ladder and student */
	struct revisit revisit[REVISITS];
};

struct task {
	int students, gate_students, workers;
	uint64_t seed;
	struct routine routine;
};

static int gates_of(const struct task *t)
{
	return GATES * LADDERS * t->gate_students;
}

static void *shared_memory(size_t size)
{
	void *at = mmap(NULL, size, PROT_READ | PROT_WRITE,
	    MAP_SHARED | MAP_ANONYMOUS, -1, 0);

	if (at == MAP_FAILED) {
		perror("simulate");
		exit(2);
	}
	return at;
}

static void do_gate(const struct task *t, struct shared *s, int i)
{
	int gate = i / t->gate_students / LADDERS;

	s->gate_day[i] = gate_run(&t->routine, gate_clean[gate],
	    i / t->gate_students % LADDERS, t->seed + 1, (uint64_t)i);
}

/*
 * What was not played for three sessions goes first; so nobody waits for more
 * than those and one turn of each of the other stages.
 */
static void do_revisit(const struct task *t, struct revisit *v, int i)
{
	static const int stages[] = { 6, 12 }, minutes[] = { 3, 5 };
	static const int clean[] = { 30, 70, 90 };

	v->stages = stages[i / 6];
	v->cap_ms = minutes[i / 3 % 2] * 60000;
	v->clean_percent = clean[i % 3];
	v->longest = revisit_run(&t->routine, v->stages, v->cap_ms,
	    v->clean_percent / 100.0, t->seed + 2);
	/* The air and the stage that is worked on do not come back. */
	v->allowed = 3 + v->stages - 2;
}

static int tasks_of(const struct task *t)
{
	return t->students + gates_of(t) + REVISITS;
}

static void work(const struct task *t, struct shared *s)
{
	int i, all = tasks_of(t);

	while ((i = atomic_fetch_add(&s->next, 1)) < all) {
		if (i < t->students)
			course_run(&s->result[i], &t->routine,
			    (enum habit)(i % HABITS),
			    (enum teacher)(i / HABITS % TEACHERS), t->seed,
			    (uint64_t)i);
		else if (i < t->students + gates_of(t))
			do_gate(t, s, i - t->students);
		else
			do_revisit(t, &s->revisit[all - 1 - i], all - 1 - i);
		atomic_fetch_add(&s->finished, 1);
	}
}

/* On a terminal: how far it has come. */
static void show_progress(const struct task *t, struct shared *s)
{
	int all = tasks_of(t);

	if (isatty(STDERR_FILENO))
		fprintf(stderr, "\r%d of %d%s", atomic_load(&s->finished), all,
		    atomic_load(&s->finished) == all ? " \n" : " ");
}

static void fork_workers(const struct task *t, struct shared *s, pid_t *worker)
{
	fflush(stdout);
	for (int w = 0; w < t->workers; w++) {
		worker[w] = fork();
		if (worker[w] == 0) {
			work(t, s);
			_exit(0);
		}
		if (worker[w] < 0) {
			perror("simulate");
			exit(2);
		}
	}
}

static void run(const struct task *t, struct shared *s)
{
	const struct timespec moment = { .tv_nsec = 20000000 };
	pid_t worker[WORKERS_MAX];
	int left = t->workers, status;

	fork_workers(t, s, worker);
	while (left > 0) {
		pid_t ended = waitpid(-1, &status, WNOHANG);

		if (ended == 0) {
			show_progress(t, s);
			nanosleep(&moment, NULL);
			continue;
		}
		left--;
		if (ended < 0 || !WIFEXITED(status) || WEXITSTATUS(status)) {
			fprintf(stderr, "simulate: a worker broke down\n");
			exit(2);
		}
	}
	show_progress(t, s);
}

static void sum_gates(
    const struct task *t, const struct shared *s, struct gate *gate)
{
	memset(gate, 0, GATES * sizeof(*gate));
	for (int i = 0; i < gates_of(t); i++) {
		int ladder = i / t->gate_students % LADDERS;
		struct gate *g = &gate[i / t->gate_students / LADDERS];

		g->students = t->gate_students;
		g->by_6[ladder] += s->gate_day[i] <= 6;
		g->by_12[ladder] += s->gate_day[i] <= 12;
	}
}

static uint64_t digest(const struct task *t, const struct shared *s)
{
	uint64_t d = 0;

	for (int i = 0; i < t->students; i++)
		d = (d ^ s->result[i].digest) * UINT64_C(1099511628211);
	for (int i = 0; i < gates_of(t); i++)
		d = (d ^ (uint64_t)s->gate_day[i]) * UINT64_C(1099511628211);
	return d;
}

/* A number after an option, or the end of it all. */
static long number(int argc, char **argv, int i, long low, long high)
{
	char *end = NULL;
	long value = i + 1 < argc ? strtol(argv[i + 1], &end, 10) : low - 1;

	if (end && *end == '\0' && value >= low && value <= high)
		return value;
	fprintf(stderr, "simulate: %s needs a number, %ld to %ld\n", argv[i],
	    low, high);
	exit(2);
}

static void read_options(struct task *t, int argc, char **argv)
{
	for (int i = 1; i < argc; i += 2) {
		if (strcmp(argv[i], "--students") == 0) {
			t->students = (int)number(argc, argv, i, 1, 100000);
		} else if (strcmp(argv[i], "--workers") == 0) {
			t->workers = (int)number(argc, argv, i, 1, WORKERS_MAX);
		} else if (strcmp(argv[i], "--seed") == 0) {
			t->seed = (uint64_t)number(
			    argc, argv, i, 0, 1000000000);
		} else {
			fprintf(stderr,
			    "usage: simulate [--students N] [--workers N] "
			    "[--seed N]\n");
			exit(2);
		}
	}
}

int main(int argc, char **argv)
{
	struct task t = { .students = HABITS * TEACHERS,
		.workers = 2,
		.seed = 1,
		.routine = programme_cello(0) };
	struct gate gate[GATES];

	read_options(&t, argc, argv);
	t.gate_students = t.students < 100 ? 60 : 1000;

	struct shared *s = shared_memory(sizeof(*s));

	s->result = shared_memory(sizeof(struct result) * (size_t)t.students);
	s->gate_day = shared_memory(sizeof(int) * (size_t)gates_of(&t));
	printf(
	    "%d students, seed %llu\n", t.students, (unsigned long long)t.seed);
	run(&t, s);
	sum_gates(&t, s, gate);
	table_print(&t.routine, s->result, t.students, gate, s->revisit);
	printf("\ndigest %016llx\n", (unsigned long long)digest(&t, s));
	return table_check(s->result, t.students, gate, s->revisit) > 0;
}
