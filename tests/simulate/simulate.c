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
	struct trials trials;
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

static void do_course(const struct task *t, struct shared *s, int i)
{
	course_run(&s->result[i], &t->routine, (enum habit)(i % HABITS),
	    (enum teacher)(i / HABITS % TEACHERS), t->seed, (uint64_t)i);
}

static void do_gate(const struct task *t, struct shared *s, int i)
{
	int gate = i / t->gate_students / LADDERS;

	s->gate_day[i] = gate_run(&t->routine, gate_clean[gate],
	    i / t->gate_students % LADDERS, t->seed + 1, (uint64_t)i);
}

static void do_revisit(const struct task *t, struct shared *s, int i)
{
	static const int stages[] = { 6, 12 }, minutes[] = { 3, 5 };
	static const int clean[] = { 30, 70, 90 };
	struct revisit *v = &s->trials.revisit[i];

	v->stages = stages[i / 6];
	v->cap_ms = minutes[i / 3 % 2] * 60000;
	v->clean_percent = clean[i % 3];
	revisit_run(v, &t->routine, t->seed + 2, (uint64_t)i);
}

static void do_away(const struct task *t, struct shared *s, int i)
{
	int gate = i / AWAY_STUDENTS / AWAYS, days = i / AWAY_STUDENTS % AWAYS;

	s->trials.away[gate][days][i % AWAY_STUDENTS] = away_run(&t->routine,
	    gate_clean[gate], away_days[days], t->seed + 3, (uint64_t)i);
}

static void do_healed(const struct task *t, struct shared *s, int i)
{
	s->trials.healed[i] = healed_run(
	    &t->routine, healed_days[i], t->seed + 4, (uint64_t)i);
}

/* A kind of task and how many there are of it. */
struct kind {
	int count;
	void (*run)(const struct task *t, struct shared *s, int i);
};

enum { KINDS = 5 };

static void kinds_of(const struct task *t, struct kind *kind)
{
	kind[0] = (struct kind) { t->students, do_course };
	kind[1] = (struct kind) { gates_of(t), do_gate };
	kind[2] = (struct kind) { REVISITS, do_revisit };
	kind[3] = (struct kind) { GATES * AWAYS * AWAY_STUDENTS, do_away };
	kind[4] = (struct kind) { HEALED, do_healed };
}

static int tasks_of(const struct task *t)
{
	struct kind kind[KINDS];
	int all = 0;

	kinds_of(t, kind);
	for (int k = 0; k < KINDS; k++)
		all += kind[k].count;
	return all;
}

static void work(const struct task *t, struct shared *s)
{
	struct kind kind[KINDS];
	int i, all = tasks_of(t);

	kinds_of(t, kind);
	while ((i = atomic_fetch_add(&s->next, 1)) < all) {
		int k = 0;

		for (; i >= kind[k].count; k++)
			i -= kind[k].count;
		kind[k].run(t, s, i);
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

static void sum_gates(const struct task *t, struct shared *s)
{
	struct gate *gate = s->trials.gate;

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
	read_options(&t, argc, argv);
	t.gate_students = t.students < 100 ? 60 : 1000;

	struct shared *s = shared_memory(sizeof(*s));

	s->result = shared_memory(sizeof(struct result) * (size_t)t.students);
	s->gate_day = shared_memory(sizeof(int) * (size_t)gates_of(&t));
	printf(
	    "%d students, seed %llu\n", t.students, (unsigned long long)t.seed);
	run(&t, s);
	sum_gates(&t, s);
	table_print(&t.routine, s->result, t.students, &s->trials);
	printf("\ndigest %016llx\n", (unsigned long long)digest(&t, s));
	return check_all(&t.routine, s->result, t.students, &s->trials) > 0;
}
