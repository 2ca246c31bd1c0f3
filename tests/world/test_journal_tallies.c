/*
 * test_journal_tallies.c - roll-ups equal a count of the turns
 *
 * Random sittings with random turns, marks, changed marks and undone marks go
 * through the journal; a slow, plain model counts the same turns in arrays.
 */
#include "journal_fixture.h"

#include "../score/seeded.h"

enum { TURNS_MAX = 4000, TALLIES_MAX = 2000 };

/* A turn as the model remembers it. */
struct memory {
	struct turn_row row;
	int day;
	enum mark mark;
	int listened, full; /* bows */
};

static struct memory turn[TURNS_MAX];
static int turns;

static struct tally model[TALLIES_MAX];
static int tallies;

static const char *unit_of(const struct fixture *x, const struct turn_row *t)
{
	return t->unit < 0 ? "" : x->routine.unit[t->unit].name;
}

static struct tally *tally_for(const struct fixture *x, const struct memory *m)
{
	const char *stage = x->routine.stage[m->row.stage].id;

	for (int i = 0; i < tallies; i++)
		if (model[i].day == m->day && model[i].kind == m->row.kind &&
		    strcmp(model[i].stage, stage) == 0 &&
		    strcmp(model[i].unit, unit_of(x, &m->row)) == 0)
			return &model[i];
	assert_true(tallies < TALLIES_MAX);
	model[tallies] = (struct tally) { .day = m->day, .kind = m->row.kind };
	strcpy(model[tallies].stage, stage);
	strcpy(model[tallies].unit, unit_of(x, &m->row));
	return &model[tallies++];
}

static void recount(const struct fixture *x)
{
	bool gone[TALLIES_MAX] = { false };

	tallies = 0;
	for (int i = 0; i < turns; i++) {
		const struct memory *m = &turn[i];
		struct tally *t = tally_for(x, m);

		t->turns += m->row.bows_done >= m->row.bows_asked;
		t->bows += m->row.bows_done;
		t->pulses += m->row.bows_done * m->row.pulses;
		t->slide_um += m->row.slide_um;
		t->clean += m->mark == MARK_CLEAN;
		t->shaky += m->mark == MARK_SHAKY;
		t->resets += m->row.resets;
		t->bows_listened += m->listened;
		t->bows_full += m->full;
		if (m->row.first_go && !gone[t - model] &&
		    m->row.bows_done >= m->row.bows_asked) {
			gone[t - model] = true;
			t->first_go = m->mark;
			t->first_go_pulses = m->row.pulses;
		}
	}
}

static void compare(const struct history *h)
{
	assert_int_equal(h->tallies, tallies);
	for (int i = 0; i < tallies; i++) {
		const struct tally *a = &h->tally[i], *b = &model[i];

		assert_string_equal(a->stage, b->stage);
		assert_string_equal(a->unit, b->unit);
		assert_int_equal(a->day, b->day);
		assert_int_equal(a->kind, b->kind);
		assert_int_equal(a->turns, b->turns);
		assert_int_equal(a->bows, b->bows);
		assert_int_equal(a->pulses, b->pulses);
		assert_int_equal(a->slide_um, b->slide_um);
		assert_int_equal(a->clean, b->clean);
		assert_int_equal(a->shaky, b->shaky);
		assert_int_equal(a->first_go, b->first_go);
		assert_int_equal(a->first_go_pulses, b->first_go_pulses);
		assert_int_equal(a->resets, b->resets);
		assert_int_equal(a->bows_listened, b->bows_listened);
		assert_int_equal(a->bows_full, b->bows_full);
	}
}

static struct turn_row random_turn(int n)
{
	static const int rungs[] = { 4, 6, 8 };
	enum block_kind kind = (enum block_kind)seeded(0, 2);
	struct turn_row t = turn_of(n, kind,
	    kind == BLOCK_AIR ? AIR : seeded(WIDE, TONE),
	    kind == BLOCK_AIR ? -1 : seeded(0, 3), rungs[seeded(0, 2)]);

	t.bows_done = seeded(0, 5) ? 2 : seeded(0, 1);
	t.first_go = seeded(0, 2) == 0;
	t.resets = seeded(0, 2);
	t.slide_um = seeded(0, 9000000);
	return t;
}

/* Some turns are heard, some of them twice. */
static void random_heard(struct journal *j, struct memory *m)
{
	m->listened = seeded(0, 2);
	m->full = seeded(0, m->listened);
	journal_measures(j, m->row.number,
	    (struct turn_value[]) { { "bows_listened", m->listened },
		{ "bows_full", m->full }, { "tops_asked", 12 } },
	    3, 1);
}

/* One sitting of random turns and marks; some marks come much later. */
static void random_sitting(struct fixture *x, struct journal *j, int day)
{
	int first = turns, count = seeded(0, 20);

	begin(x, j, day);
	for (int n = 0; n < count; n++) {
		turn[turns] = (struct memory) { .row = random_turn(n),
			.day = day };
		put_turn(x, j, &turn[turns++].row);
		for (int k = seeded(0, 3); k > 0; k--) {
			struct memory *m = &turn[seeded(first, turns - 1)];

			m->mark = (enum mark)seeded(MARK_NONE, MARK_SHAKY);
			journal_mark(j, m->row.number, m->mark, n * 12000);
			if (seeded(0, 1))
				random_heard(j, m);
		}
		if (seeded(0, 9) == 0)
			journal_flush(j);
	}
	if (seeded(0, 3))
		journal_end(j, ENDED_WHOLE, 1, moment_on(day, 300));
}

static void compare_with_file(const struct fixture *x, int today)
{
	struct history h;

	look(x, today, &h);
	recount(x);
	compare(&h);
	history_done(&h);
}

static void test_recount(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	int day = DAY_ONE;

	seeded_begin("tallies");
	turns = 0;
	for (int s = 0; s < 120; s++) {
		day += seeded(0, 1);
		random_sitting(x, j, day);
		if (s % 20 != 19)
			continue;
		journal_close(j);
		compare_with_file(x, day);
		j = open_good(x);
	}
	journal_close(j);
	compare_with_file(x, day);
}

/* A turn that comes again under its number takes the place of the first. */
static void test_turn_again(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(0, BLOCK_WORK, TONE, 1, 6);
	struct history h;

	begin(x, j, DAY_ONE);
	t.bows_done = 1;
	put_turn(x, j, &t);
	t.bows_done = 2;
	t.resets = 1;
	put_turn(x, j, &t);
	journal_close(j);
	look(x, DAY_ONE, &h);
	assert_int_equal(h.turns, 1);
	assert_int_equal(h.turn[0].bows_done, 2);
	assert_int_equal(h.tallies, 1);
	assert_int_equal(h.tally[0].bows, 2);
	assert_int_equal(h.tally[0].turns, 1);
	assert_int_equal(h.tally[0].resets, 1);
	assert_int_equal(h.share[1].played, 1);
	history_done(&h);
}

static struct tally first_go_of(const struct fixture *x)
{
	struct history h;
	struct tally t;

	look(x, DAY_ONE, &h);
	assert_int_equal(h.tallies, 1);
	t = h.tally[0];
	history_done(&h);
	return t;
}

/* A first go that was broken off is none; the same turn again, whole, is. */
static void test_first_go_broken_off(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(0, BLOCK_WORK, TONE, 1, 8);

	begin(x, j, DAY_ONE);
	t.first_go = true;
	t.bows_done = 1;
	put_turn(x, j, &t);
	journal_flush(j);
	assert_int_equal(first_go_of(x).first_go_pulses, 0);
	assert_int_equal(first_go_of(x).first_go, MARK_NONE);
	t.number = 1;
	t.bows_done = 2;
	t.pulses = 6;
	put_turn(x, j, &t);
	journal_mark(j, 1, MARK_CLEAN, 30000);
	t.number = 2;
	t.pulses = 4;
	put_turn(x, j, &t);
	journal_close(j);
	assert_int_equal(first_go_of(x).first_go_pulses, 6);
	assert_int_equal(first_go_of(x).first_go, MARK_CLEAN);
	assert_int_equal(first_go_of(x).turns, 2);
}

static void turn_is(const struct fixture *x, int bows, enum mark mark)
{
	struct history h;

	look(x, DAY_ONE, &h);
	assert_int_equal(h.turns, 1);
	assert_int_equal(h.turn[0].bows_done, bows);
	assert_int_equal(h.turn[0].mark, mark);
	assert_int_equal(h.tally[0].clean, mark == MARK_CLEAN);
	history_done(&h);
}

/* The mark of a turn goes when another takes its number. */
static void test_mark_of_the_turn_before(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(0, BLOCK_WORK, TONE, 1, 6);

	begin(x, j, DAY_ONE);
	put_turn(x, j, &t);
	journal_mark(j, 0, MARK_CLEAN, 17000);
	journal_flush(j);
	turn_is(x, 2, MARK_CLEAN);
	t.bows_done = 1;
	put_turn(x, j, &t);
	journal_flush(j);
	turn_is(x, 1, MARK_NONE);
	assert_int_equal(
	    ask(x->path, "SELECT count(*) FROM turns WHERE mark_ms IS NULL"),
	    1);
	journal_mark(j, 0, MARK_SHAKY, 18000);
	journal_close(j);
	turn_is(x, 1, MARK_SHAKY);
}

/* Shares: what was planned, dropped and played, of whole turns of work. */
static void test_shares(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct history h;

	x->plan.share[3] = 0;
	x->plan.dropped[3] = 3;
	sit(x, j, DAY_ONE, 6);
	journal_close(j);
	look(x, DAY_ONE, &h);
	assert_int_equal(h.shares, 4);
	for (int u = 0; u < 4; u++) {
		assert_string_equal(h.share[u].stage, "tone");
		assert_int_equal(h.share[u].planned, u < 3 ? 3 : 0);
		assert_int_equal(h.share[u].dropped, u < 3 ? 0 : 3);
		assert_int_equal(h.share[u].played, u < 2 ? 2 : 1);
	}
	history_done(&h);
}

static int tallies_for(struct fixture *x, int today, const struct routine *r)
{
	struct fault f;
	struct history h;
	struct journal *j = journal_look(x->path, &f);
	int count;

	assert_non_null(j);
	assert_true(journal_history(j, &h, today, r, &f));
	count = h.tallies;
	assert_int_equal(h.sittings, 3);
	history_done(&h);
	journal_close(j);
	return count;
}

/*
 * For a plan the roll-ups go back 400 days from the last practice day, however
 * long ago that is, and whatever a wrong clock wrote ahead of now.
 */
static void test_long_ago(void **state)
{
	enum { AHEAD = 5000 };
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	int a_day;

	sit(x, j, DAY_ONE, 6);
	sit(x, j, DAY_ONE + HISTORY_TALLY_DAYS - 1, 6);
	sit(x, j, DAY_ONE + AHEAD, 6);
	journal_close(j);
	a_day = tallies_for(x, DAY_ONE, NULL) / 3;
	assert_true(a_day > 0);
	assert_int_equal(
	    tallies_for(x, DAY_ONE + 3000, &x->routine), 3 * a_day);
	ask(x->path, "UPDATE days SET day = day - 1 WHERE day = 20514");
	assert_int_equal(
	    tallies_for(x, DAY_ONE + 3000, &x->routine), 2 * a_day);
	assert_int_equal(tallies_for(x, DAY_ONE + 3000, NULL), 3 * a_day);
	/* Before the first day of all: what is ahead stays ahead. */
	assert_int_equal(tallies_for(x, DAY_ONE - 9, &x->routine), 3 * a_day);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_recount),
		T(test_turn_again),
		T(test_first_go_broken_off),
		T(test_mark_of_the_turn_before),
		T(test_shares),
		T(test_long_ago),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
