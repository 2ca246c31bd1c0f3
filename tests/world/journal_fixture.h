/*
 * journal_fixture.h - a folder, a routine and rows for tests of the journal
 *
 * The routine is what a journal needs of one and no more: ids, names, text.
 */
#ifndef EVENHAND_TESTS_JOURNAL_FIXTURE_H
#define EVENHAND_TESTS_JOURNAL_FIXTURE_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>
#include <sqlite3.h>

#include "evenhand/coach/plan.h"
#include "evenhand/world/journal.h"

/* Monday 2 March 2026, 17:00 UTC: day 20514. */
enum { DAY_ONE = 20514 };
#define UTC_ONE INT64_C(1772470800)

enum { AIR, WIDE, THIRDS, TONE };

struct fixture {
	char folder[80];
	char path[120];
	struct routine routine;
	struct plan plan;
};

static inline int fixture_open(void **state)
{
	static const char *const ids[] = { "air", "wide", "thirds", "tone" };
	struct fixture *x = calloc(1, sizeof(*x));

	snprintf(x->folder, sizeof(x->folder), "/tmp/evenhand-test-XXXXXX");
	assert_non_null(mkdtemp(x->folder));
	/* Places of spools, too, are inside. */
	setenv("HOME", x->folder, 1);
	unsetenv("XDG_STATE_HOME");
	snprintf(x->path, sizeof(x->path), "%s/data/wren.sqlite", x->folder);
	x->routine.name = "From wide to still";
	x->routine.edition = 4;
	x->routine.fingerprint = UINT64_C(0x00c0ffee12345678);
	x->routine.text =
	    "routine: From wide to still\n\tnever \"this\" \\ é\n";
	x->routine.bow_ms = 4000;
	x->routine.units = 4;
	x->routine.stages = 4;
	for (int i = 0; i < 4; i++) {
		snprintf(x->routine.unit[i].name, UNIT_NAME_MAX, "%d", i + 1);
		snprintf(x->routine.stage[i].id, ID_MAX, "%s", ids[i]);
	}
	x->plan.day = DAY_ONE;
	x->plan.cap_ms = 300000;
	x->plan.length_ms = 292000;
	x->plan.work_stage = TONE;
	x->plan.where.asked = TONE;
	x->plan.marking = MARKING_ROUND;
	for (int i = 0; i < 4; i++)
		x->plan.share[i] = 3;
	*state = x;
	return 0;
}

static inline int fixture_close(void **state)
{
	struct fixture *x = *state;
	char command[200];

	snprintf(command, sizeof(command), "chmod -R u+rwX %s; rm -rf %s",
	    x->folder, x->folder);
	if (system(command) != 0)
		fprintf(stderr, "%s is left\n", x->folder);
	free(x);
	return 0;
}

static inline struct moment moment_on(int day, int second)
{
	return (struct moment) {
		.utc = UTC_ONE + (int64_t)(day - DAY_ONE) * 86400 + second,
		.offset = 3600,
	};
}

static inline struct journal *open_good(const struct fixture *x)
{
	struct fault f;
	struct journal *j = journal_open(x->path, &f);
	struct message m;

	assert_non_null(j);
	assert_false(journal_trouble(j, &m));
	assert_int_equal(journal_state(j), JOURNAL_GOOD);
	return j;
}

static inline void begin(struct fixture *x, struct journal *j, int day)
{
	x->plan.day = day;
	journal_begin(j,
	    &(struct sitting_row) { .routine = &x->routine,
		.plan = &x->plan,
		.began = moment_on(day, 0),
		.rate = 48000,
		.device = "fast" });
}

/* A whole turn of a unit, number n of its sitting. */
static inline struct turn_row turn_of(
    int n, enum block_kind kind, int stage, int unit, int pulses)
{
	return (struct turn_row) { .number = n,
		.kind = kind,
		.stage = stage,
		.unit = unit,
		.pulses = pulses,
		.bows_asked = 2,
		.bows_done = 2,
		.start_ms = 8000 + n * 12000,
		.slide_um = 1000000 + n };
}

static inline void put_turn(
    struct fixture *x, struct journal *j, const struct turn_row *t)
{
	journal_turn(j, t, &x->routine,
	    moment_on(x->plan.day, (int)(t->start_ms / 1000) + 8));
}

/* One sitting of work on the tone, so many turns, all marked clean. */
static inline void sit(struct fixture *x, struct journal *j, int day, int turns)
{
	begin(x, j, day);
	for (int n = 0; n < turns; n++) {
		struct turn_row t = turn_of(n, BLOCK_WORK, TONE, n % 4, 6);

		t.round = n / 4;
		t.first_go = n < 4;
		put_turn(x, j, &t);
		journal_mark(j, n, MARK_CLEAN, t.start_ms + 9000);
	}
	journal_end(j, ENDED_WHOLE, 8000 + turns * 12000,
	    moment_on(day, 8 + turns * 12));
}

/* What SQL says about the file, seen by a connection of its own. */
static inline int64_t ask(const char *path, const char *sql)
{
	sqlite3 *d;
	sqlite3_stmt *st = NULL;
	int64_t answer = -1;

	assert_int_equal(
	    sqlite3_open_v2(path, &d, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
	if (sqlite3_prepare_v2(d, sql, -1, &st, NULL) == SQLITE_OK &&
	    sqlite3_step(st) == SQLITE_ROW)
		answer = sqlite3_column_int64(st, 0);
	sqlite3_finalize(st);
	sqlite3_close(d);
	return answer;
}

/* Loads the history of a journal that is opened only to be read. */
static inline void look(const struct fixture *x, int today, struct history *h)
{
	struct fault f;
	struct journal *j = journal_look(x->path, &f);

	assert_non_null(j);
	assert_true(journal_history(j, h, today, NULL, &f));
	journal_close(j);
}

static inline bool exists(const char *path, const char *end)
{
	char name[5000];

	snprintf(name, sizeof(name), "%s%s", path, end);
	return access(name, F_OK) == 0;
}

/* The id of the one trouble there is to tell, M_NONE for none. */
static inline enum message_id trouble_of(struct journal *j)
{
	struct message m = { .id = M_NONE };

	if (journal_trouble(j, &m))
		assert_false(journal_trouble(j, &(struct message) { 0 }));
	return m.id;
}

#endif
