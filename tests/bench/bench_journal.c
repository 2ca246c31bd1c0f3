/*
 * bench_journal.c - ten years of practice: how long the start takes
 *
 * Builds a journal of 7 300 sittings and 300 000 turns through the journal's
 * own queue, two sittings a day, and then tells each figure with its goal:
 * of the journal itself, and of EVENHAND, the program, that looks at it.
 * Times are medians; the file is in the system's cache, as on a second start.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "evenhand/coach/plan.h"
#include "evenhand/world/journal.h"

#include "bench.h"

enum {
	DAYS = 3650,
	SITTINGS = 2 * DAYS,
	TURNS = 300000,
	FIRST_DAY = 20514,
	RUNS = 15,
	STAGES = 6,
	UNITS = 4,
};

static struct routine routine;
static struct plan plan;

static void make_routine(void)
{
	static const char *const ids[STAGES] = { "air", "wide", "thirds",
		"tone", "semitone", "letting-go" };

	routine.name = "From wide to still";
	routine.text = "routine: From wide to still\n";
	routine.bow_ms = 4000;
	routine.stages = STAGES;
	routine.units = UNITS;
	for (int i = 0; i < STAGES; i++)
		snprintf(routine.stage[i].id, ID_MAX, "%s", ids[i]);
	for (int i = 0; i < UNITS; i++) {
		snprintf(routine.unit[i].name, UNIT_NAME_MAX, "%d", i + 1);
		plan.share[i] = 8;
	}
}

static struct moment moment_of(int sitting)
{
	return (
	    struct moment) { .utc = (int64_t)(FIRST_DAY + sitting / 2) * 86400 +
		    36000 + sitting % 2 * 25200 };
}

static void put_turn(struct journal *j, int sitting, int n)
{
	/* The air, two recaps that change from time to time, and work. */
	struct turn_row t = { .number = n,
		.bows_asked = 2,
		.bows_done = 2,
		.pulses = 6,
		.start_ms = 8000 + n * 12000,
		.slide_um = 1000000 };

	t.kind = n == 0 ? BLOCK_AIR : n < 9 ? BLOCK_RECAP : BLOCK_WORK;
	t.stage = n == 0 ? 0 : n < 9 ? 1 + (sitting + (n > 4)) % 3 : 4;
	t.unit = n == 0 ? -1 : n % UNITS;
	t.round = n < 9 ? 0 : (n - 9) / UNITS;
	t.first_go = n < 13;
	journal_turn(j, &t, &routine, moment_of(sitting));
	journal_mark(j, n, n % 5 ? MARK_CLEAN : MARK_SHAKY, t.start_ms + 9000);
}

static void put_sitting(struct journal *j, int sitting, int turns)
{
	plan.day = FIRST_DAY + sitting / 2;
	plan.work_stage = 4;
	plan.cap_ms = 600000;
	journal_begin(j,
	    &(struct sitting_row) { .routine = &routine,
		.plan = &plan,
		.began = moment_of(sitting),
		.rate = 48000,
		.device = "none" });
	for (int n = 0; n < turns; n++)
		put_turn(j, sitting, n);
	journal_end(j, ENDED_WHOLE, 500000, moment_of(sitting));
}

static struct journal *open_journal(const char *path)
{
	struct fault f;
	struct journal *j = journal_open(path, &f);

	if (!j || journal_state(j) != JOURNAL_GOOD)
		fail(path);
	return j;
}

static void build(const char *path)
{
	struct journal *j = open_journal(path);
	int turns = 0;

	for (int s = 0; s < SITTINGS; s++) {
		int upto = (int)((int64_t)TURNS * (s + 1) / SITTINGS);

		put_sitting(j, s, upto - turns);
		turns = upto;
		if (s % 50 == 0)
			journal_flush(j); /* keeps the queue short */
	}
	journal_close(j);
}

static void load(const char *path)
{
	double open_ms[RUNS], history_ms[RUNS];

	for (int i = 0; i < RUNS; i++) {
		struct history h;
		struct fault f;
		double start = now_ms();
		struct journal *j = open_journal(path);
		double opened = now_ms();

		if (!journal_history(j, &h, FIRST_DAY + DAYS, NULL, &f))
			fail("journal_history");
		history_ms[i] = now_ms() - opened;
		open_ms[i] = opened - start;
		if (h.sittings != SITTINGS || h.tallies < DAYS)
			fail("what was loaded");
		if (i == 0)
			printf("ten years: %d sittings, %d turns, %d roll-ups; "
			       "%d turns loaded\n",
			    h.sittings, TURNS, h.tallies, h.turns);
		history_done(&h);
		journal_close(j);
	}
	figure(
	    "ten-year journal: open it", "< 15", median(open_ms, RUNS), "ms");
	figure("ten-year journal: load the history", "< 15",
	    median(history_ms, RUNS), "ms");
}

/* From the start to a sitting's first row on the disk. */
static void first_commit(const char *path)
{
	double ms[RUNS], turn_ms[RUNS];

	for (int i = 0; i < RUNS; i++) {
		double start = now_ms(), put;
		struct journal *j = open_journal(path);

		put_sitting(j, SITTINGS + 2 * i, 1);
		journal_flush(j);
		ms[i] = now_ms() - start;
		put = now_ms();
		put_turn(j, SITTINGS + 2 * i, 1);
		journal_flush(j);
		turn_ms[i] = now_ms() - put;
		journal_close(j);
	}
	figure("ten-year journal: open to first commit", "< 100",
	    median(ms, RUNS), "ms");
	figure("ten-year journal: a turn and its mark to the disk", "< 100",
	    median(turn_ms, RUNS), "ms");
}

static void put_cost(const char *path)
{
	struct journal *j = open_journal(path);
	double start;

	put_sitting(j, SITTINGS + 100, 1);
	start = now_ms(); /* of a thousand: each ms is a us of one */
	for (int n = 1; n < 1001; n++)
		put_turn(j, SITTINGS + 100, n);
	figure("putting a turn and its mark into the queue", "< 20",
	    now_ms() - start, "us");
	journal_close(j);
}

/* What programs that are over took of a processor. */
static double used_ms(void)
{
	struct rusage u;

	getrusage(RUSAGE_CHILDREN, &u);
	return (double)(u.ru_utime.tv_sec + u.ru_stime.tv_sec) * 1e3 +
	    (double)(u.ru_utime.tv_usec + u.ru_stime.tv_usec) / 1e3;
}

/* The whole program, from its start to its end, and its processor's part. */
static void whole(const char *what, const char *goal, const char *arguments)
{
	const char *program = getenv("EVENHAND");
	char command[512];
	double ms[RUNS], used[RUNS];

	if (!program)
		return;
	snprintf(command, sizeof command,
	    "exec '%s' %s --player wren > /dev/null", program, arguments);
	for (int i = 0; i < RUNS; i++) {
		double start = now_ms(), before = used_ms();

		if (system(command) != 0)
			fail(command);
		ms[i] = now_ms() - start;
		used[i] = used_ms() - before;
	}
	figure(what, goal, median(ms, RUNS), "ms");
	figure(
	    "    of which the processor worked", "", median(used, RUNS), "ms");
}

int main(void)
{
	char folder[40], path[128], command[64];
	struct stat s;
	double start;

	fresh_home(folder, sizeof folder);
	snprintf(path, sizeof path, "%s/.local/share/evenhand/player-wren.db",
	    folder);
	make_routine();
	start = now_ms();
	build(path);
	if (stat(path, &s) != 0)
		fail(path);
	printf("built in %.1f s, %.1f MB\n", (now_ms() - start) / 1e3,
	    (double)s.st_size / 1e6);
	load(path);
	whole("ten-year journal: today's plan", "< 20",
	    "today --at 2036-02-28T17:00");
	beside_true("ten-year journal: today's plan");
	whole("ten-year journal: evenhand history, in lines", "< 100",
	    "history --lines");
	whole("ten-year journal: the last weeks of it", "< 100",
	    "history --lines --from 2036-01-01");
	whole("ten-year journal: as a table", "< 100", "history --csv");
	first_commit(path);
	put_cost(path);
	snprintf(command, sizeof command, "rm -rf %s", folder);
	return system(command) == 0 ? 0 : 1;
}
