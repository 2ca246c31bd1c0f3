/*
 * bench_record.c - records given and gathered: how long, and how large
 *
 * A week is ten sessions of 21 turns; a class is a thousand such records of a
 * thousand students, gathered by EVENHAND, the program, into one folder.
 */
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "evenhand/base/fingerprint.h"
#include "evenhand/world/gather.h"
#include "evenhand/world/load.h"
#include "evenhand/world/record_file.h"

#include "bench.h"

enum {
	STUDENTS = 1000,
	WEEK = 10,
	TWO_YEARS = 2 * 52 * WEEK,
	TURNS = 21,
	FIRST_DAY = 20514,
};

static struct record_turn turn[TURNS];
static struct record_share share[4];
static struct record_routine routine;
static struct record_computer computer;

/* One routine, four shares, and 21 turns that all sittings have. */
static void make_parts(void)
{
	static const char *const units[] = { "1", "2", "3", "4" };
	size_t length;

	routine.text = builtin_text(0, &length);
	routine.name = "From wide to still";
	routine.edition = 1;
	routine.fingerprint = fingerprint_add(
	    FINGERPRINT_START, routine.text, length);
	for (int i = 0; i < 4; i++)
		share[i] = (struct record_share) { "tone", units[i], 3, 0 };
	for (int i = 0; i < TURNS; i++)
		turn[i] = (struct record_turn) { .number = i,
			.kind = i == 0 ? BLOCK_AIR
			    : i < 9    ? BLOCK_RECAP
				       : BLOCK_WORK,
			.stage = i == 0 ? "air"
			    : i < 9	? "wide"
					: "tone",
			.unit = i == 0 ? "" : units[i % 4],
			.round = i / 4,
			.pulses = i == 0 ? 0 : 6,
			.bows_asked = 2,
			.bows_done = 2,
			.first_go = i < 13,
			.start_ms = 8000 + i * 12000,
			.slide_um = 1234567,
			.mark = i % 5 ? MARK_CLEAN : MARK_SHAKY,
			.mark_ms = 17000 + i * 12000 };
}

static void make_sitting(
    struct record_sitting *s, struct record_turn *turns, int n)
{
	int64_t row = 1 + n * 60;

	*s = (struct record_sitting) { .row = row,
		.began = { (int64_t)(FIRST_DAY + n / 2) * 86400 + 36000 +
			n % 2 * 25200,
		    0 },
		.day = FIRST_DAY + n / 2,
		.routine = &routine,
		.work_stage = "tone",
		.asked_stage = "tone",
		.instrument = "cello",
		.marking = 1,
		.cap_ms = 300000,
		.planned_ms = 292000,
		.length_ms = 292000,
		.how = ENDED_WHOLE,
		.ended_row = row + 55,
		.shares = 4,
		.share = share,
		.turns = TURNS,
		.turn = turns };
	s->ended = s->began;
	memcpy(turns, turn, sizeof(turn));
	for (int i = 0; i < TURNS; i++) {
		turns[i].row = row + 5 + 2 * i;
		turns[i].mark_row = row + 6 + 2 * i;
		turns[i].ended.utc = s->began.utc + 16 + 12 * i;
	}
}

/* A record of so many sittings; the student's id ends in a number. */
static void save(const char *path, int student, int sittings)
{
	struct record r = { .since = -1, .computers = 1, .routines = 1 };
	struct record_sitting *all = calloc((size_t)sittings, sizeof(*all));
	struct record_turn *turns = calloc(
	    (size_t)sittings * TURNS, sizeof(*turns));
	struct fault f;

	if (all == NULL || turns == NULL)
		fail("calloc");
	snprintf(r.student, sizeof(r.student), "%032x", (unsigned)student);
	snprintf(computer.id, sizeof(computer.id), "%032x",
	    (unsigned)student + 0x1000000u);
	computer.rows = sittings * 60;
	r.computer = &computer;
	r.routine = &routine;
	r.sittings = sittings;
	r.sitting = all;
	r.given.utc = (int64_t)(FIRST_DAY + sittings) * 86400;
	for (int i = 0; i < sittings; i++) {
		make_sitting(&all[i], &turns[(ptrdiff_t)i * TURNS], i);
		all[i].next = i + 1 < sittings ? &all[i + 1] : NULL;
	}
	if (!record_save(path, &r, true, &f))
		fail(path);
	free(all);
	free(turns);
}

static double kilobytes(const char *path)
{
	struct stat s;

	if (stat(path, &s) != 0)
		fail(path);
	return (double)s.st_size / 1e3;
}

/* Reads a record and merges it into a journal, twice. */
static void two_years(const char *folder)
{
	char path[128], journal[128];
	struct faults faults = { 0 };
	struct gathered news;
	struct record r;
	struct fault f;
	bool unreadable;
	double start = now_ms();

	snprintf(path, sizeof path, "%s/two-years.yaml", folder);
	snprintf(journal, sizeof journal, "%s/two-years.db", folder);
	save(path, 0, TWO_YEARS);
	figure("a record of two years: write it", "< 1000", now_ms() - start,
	    "ms");
	figure("    its size", "< 5000", kilobytes(path), "kB");
	start = now_ms();
	if (!record_load(path, &r, &faults, &unreadable))
		fail("record_load");
	figure("    read it", "< 1000", now_ms() - start, "ms");
	start = now_ms();
	if (!gather_into(
		journal, &(struct gather_what) { .record = &r }, &news, &f) ||
	    news.sittings_new != TWO_YEARS)
		fail("gather_into");
	figure("    gather it where nothing was", "< 2000", now_ms() - start,
	    "ms");
	start = now_ms();
	if (!gather_into(
		journal, &(struct gather_what) { .record = &r }, &news, &f) ||
	    news.sittings_known != TWO_YEARS)
		fail("gather_into");
	figure("    gather it once more", "< 1000", now_ms() - start, "ms");
	record_done(&r);
}

static void class_of(const char *folder)
{
	const char *program = getenv("EVENHAND");
	char path[128], command[400];
	double start;

	snprintf(path, sizeof path, "%s/given", folder);
	if (mkdir(path, 0700) != 0)
		fail(path);
	for (int i = 0; i < STUDENTS; i++) {
		snprintf(path, sizeof path, "%s/given/%d.yaml", folder, i);
		save(path, i, WEEK);
	}
	figure("a record of a week, ten sessions: its size", "< 20",
	    kilobytes(path), "kB");
	if (!program)
		return;
	snprintf(command, sizeof command,
	    "cd %s && exec '%s' gather --class lessons given/*.yaml > "
	    "/dev/null",
	    folder, program);
	start = now_ms();
	if (system(command) != 0)
		fail(command);
	figure("1000 weekly records gathered into a class", "< 10",
	    (now_ms() - start) / 1e3, "s");
	start = now_ms();
	if (system(command) != 0)
		fail(command);
	figure("    and once more", "< 10", (now_ms() - start) / 1e3, "s");
}

int main(void)
{
	char folder[40];

	fresh_home(folder, sizeof folder);
	make_parts();
	two_years(folder);
	class_of(folder);
	forget_home(folder);
	return 0;
}
