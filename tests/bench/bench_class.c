/*
 * bench_class.c - a class of a thousand with two years each: how long it takes
 *
 * One journal of two years is built through the journal's own queue and stands
 * under a thousand names.  The first look makes a row for each of them, out of
 * the journals; every later one reads the rows, which is what a teacher waits
 * for.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bench.h"
#include "evenhand/coach/class.h"
#include "evenhand/world/class_folder.h"
#include "evenhand/world/journal.h"
#include "evenhand/world/load.h"

enum {
	STUDENTS = 1000,
	WEEKS = 104,
	A_WEEK = 5,
	TURNS = 21,
	FIRST_DAY = 20514,
	LAST_DAY = FIRST_DAY + 7 * WEEKS - 3,
	RUNS = 15,
};

static struct plan plan;
static struct routine *routine;

static struct moment moment_of(int day)
{
	return (struct moment) { .utc = (int64_t)day * 86400 + 61200 };
}

static void put_turn(struct journal *j, int day, int n)
{
	struct turn_row t = { .number = n,
		.kind = n == 0 ? BLOCK_AIR
		    : n < 9    ? BLOCK_RECAP
			       : BLOCK_WORK,
		.stage = n == 0 ? 0
		    : n < 9	? 1 + (day + (n > 4)) % 3
				: 4,
		.unit = n == 0 ? -1 : n % 4,
		.round = n < 9 ? 0 : (n - 9) / 4,
		.first_go = n < 13,
		.bows_asked = 2,
		.bows_done = 2,
		.pulses = 6,
		.start_ms = 8000 + n * 12000,
		.slide_um = 1000000 };

	journal_turn(j, &t, routine, moment_of(day));
	journal_mark(j, n, n % 5 ? MARK_CLEAN : MARK_SHAKY, t.start_ms + 9000);
}

static void put_day(struct journal *j, int day)
{
	plan.day = day;
	plan.work_stage = plan.where.asked = 4;
	plan.cap_ms = 300000;
	journal_begin(j,
	    &(struct sitting_row) { .routine = routine,
		.plan = &plan,
		.began = moment_of(day),
		.rate = 48000,
		.device = "none" });
	for (int n = 0; n < TURNS; n++)
		put_turn(j, day, n);
	journal_end(j, ENDED_WHOLE, 292000, moment_of(day));
}

static void build(const char *path)
{
	struct fault f;
	struct journal *j = journal_open(path, &f);

	if (!j || journal_state(j) != JOURNAL_GOOD)
		fail(path);
	for (int w = 0; w < WEEKS; w++) {
		for (int d = 0; d < A_WEEK; d++)
			put_day(j, FIRST_DAY + 7 * w + d);
		journal_flush(j);
	}
	journal_close(j);
}

/* The same file under a name for each student. */
static void multiply(const char *path, const char *folder)
{
	char name[200];

	for (int i = 0; i < STUDENTS; i++) {
		snprintf(
		    name, sizeof name, "%s/students/%032x.sqlite", folder, i);
		if (link(path, name) != 0)
			fail(name);
	}
}

/* The class in its order, as `evenhand class` has it. */
static double look(const char *folder)
{
	double start = now_ms();
	struct fault f;
	struct class_folder *c = class_look(folder, &f);
	struct class_list list;
	struct class_row *row = calloc(STUDENTS, sizeof *row);
	struct class_row **order = calloc(STUDENTS, sizeof *order);

	if (!c || !row || !order ||
	    !class_students(c, &list, LAST_DAY, NULL, NULL, &f) ||
	    list.count != STUDENTS || list.broken > 0 || !list.student[0].known)
		fail("class_students");
	class_rows(row, order, list.student, list.count, LAST_DAY);
	free(row);
	free(order);
	class_list_done(&list);
	class_close(c);
	return now_ms() - start;
}

static void whole(const char *folder)
{
	const char *program = getenv("EVENHAND");
	char command[600];
	double ms[RUNS];

	if (!program)
		return;
	snprintf(command, sizeof command,
	    "exec '%s' class %s --at 2028-02-25T17:00 --csv > /dev/null",
	    program, folder);
	for (int i = 0; i < RUNS; i++) {
		double start = now_ms();

		if (system(command) != 0)
			fail(command);
		ms[i] = now_ms() - start;
	}
	figure(
	    "the whole program, as a table", "< 200", median(ms, RUNS), "ms");
	beside_true("the whole program, as a table");
}

int main(void)
{
	char home[40], path[128], folder[80];
	struct load_paths paths;
	static struct faults faults;
	bool unreadable;
	double ms[RUNS];
	struct fault f;

	fresh_home(home, sizeof home);
	snprintf(path, sizeof path, "%s/one.sqlite", home);
	snprintf(folder, sizeof folder, "%s/class", home);
	routine = load_routine(NULL, &paths, &faults, &unreadable);
	if (!routine)
		fail("the routine");
	build(path);
	class_close(class_open(folder, &f));
	multiply(path, folder);
	figure("a class of 1000, two years each: all rows made", "< 20000",
	    look(folder), "ms");
	for (int i = 0; i < RUNS; i++)
		ms[i] = look(folder);
	figure("the same class, listed", "< 200", median(ms, RUNS), "ms");
	whole(folder);
	routine_free(routine);
	forget_home(home);
	return 0;
}
