/*
 * test_journal_instrument.c - one journal, two instruments
 */
#include "journal_fixture.h"

static void play(
    struct fixture *x, struct journal *j, enum instrument instrument, int day)
{
	x->routine.setup.instrument = instrument;
	sit(x, j, day, 4);
}

static void of(const struct fixture *x, enum instrument instrument, int today,
    struct history *h)
{
	struct routine r = x->routine;
	struct fault f;
	struct journal *j = journal_look(x->path, &f);

	r.setup.instrument = instrument;
	assert_non_null(j);
	assert_true(journal_history(j, h, today, &r, &f));
	journal_close(j);
}

/* Two on one day share neither roll-ups nor names. */
static void test_one_day(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct history h;

	play(x, j, INSTRUMENT_CELLO, DAY_ONE);
	play(x, j, INSTRUMENT_VIOLIN, DAY_ONE);
	journal_close(j);
	look(x, DAY_ONE, &h);
	assert_int_equal(h.tallies, 8);
	for (int i = 0; i < 8; i++) {
		assert_string_equal(h.tally[i].stage, "tone");
		assert_int_equal(h.tally[i].turns, 1);
		assert_string_equal(
		    h.tally[i].instrument, i < 4 ? "cello" : "violin");
	}
	assert_string_equal(h.sitting[1].instrument, "violin");
	history_done(&h);

	of(x, INSTRUMENT_CELLO, DAY_ONE, &h);
	for (int i = 0; i < 8; i++) {
		assert_string_equal(h.tally[i].stage, i < 4 ? "tone" : "/tone");
		assert_string_equal(h.turn[i].stage, i < 4 ? "tone" : "/tone");
		assert_string_equal(h.share[i].stage, i < 4 ? "tone" : "/tone");
		assert_int_equal(history_elsewhere(h.tally[i].unit), i >= 4);
	}
	assert_string_equal(h.tally[4].unit, "/1");
	assert_string_equal(h.share[4].unit, "/1");
	assert_string_equal(h.sitting[0].work_stage, "tone");
	assert_string_equal(h.sitting[1].work_stage, "/tone");
	assert_string_equal(h.sitting[1].seen[0], "/tone");
	assert_true(history_sat(&h.sitting[1]));
	x->routine.setup.instrument = INSTRUMENT_CELLO;
	assert_int_equal(history_days_on(&h, &x->routine, TONE), 1);
	history_done(&h);

	of(x, INSTRUMENT_VIOLA, DAY_ONE, &h);
	assert_int_equal(history_days_on(&h, &x->routine, TONE), 0);
	history_done(&h);
}

/* A name of full length keeps its sign and its end. */
static void test_long_name(void **state)
{
	struct fixture *x = *state;
	struct history h;
	struct journal *j;

	memset(x->routine.stage[TONE].id, 'a', ID_MAX - 1);
	j = open_good(x);
	play(x, j, INSTRUMENT_CELLO, DAY_ONE);
	journal_close(j);
	of(x, INSTRUMENT_BASS, DAY_ONE, &h);
	assert_int_equal(strlen(h.tally[0].stage), ID_MAX);
	assert_int_equal(strlen(h.sitting[0].seen[0]), ID_MAX);
	assert_int_equal(h.tally[0].stage[0], ELSEWHERE);
	/* Setting apart twice is the same as once. */
	history_set_apart(&h, "double bass");
	assert_int_equal(strlen(h.tally[0].stage), ID_MAX);
	history_done(&h);
}

/* What waits in a spool has its instrument; older lines have none. */
static void test_spool(void **state)
{
	struct fixture *x = *state;
	struct history h;
	struct fault f;
	struct journal *j = open_good(x);

	journal_close(j);
	ask(x->path, "PRAGMA user_version = 1000");
	j = journal_open(x->path, &f);
	play(x, j, INSTRUMENT_CELLO, DAY_ONE);
	journal_close(j);
	ask(x->path, "PRAGMA user_version = 2");
	assert_true(exists(x->path, ".spool"));
	look(x, DAY_ONE, &h);
	assert_string_equal(h.sitting[0].instrument, "cello");
	assert_string_equal(h.tally[0].instrument, "cello");
	history_done(&h);
	journal_close(open_good(x));
	look(x, DAY_ONE, &h);
	assert_string_equal(h.sitting[0].instrument, "cello");
	history_done(&h);
}

/* Lines as version 1 wrote them, with the sum it put behind them (FNV-1a). */
static void test_old_spool(void **state)
{
	static const char sitting[] =
	    "1\tsitting\t0123456789abcdef0123456789abcdef\t1\t1\t1772470800\t0"
	    "\t20514\t4\t1\t300000\t292000\t48000\t00c0ffee12345678\tName"
	    "\ttext\ttone\tfast";
	struct fixture *x = *state;
	uint64_t sum = UINT64_C(0xcbf29ce484222325);
	struct history h;
	char path[140];
	FILE *to;

	journal_close(open_good(x));
	snprintf(path, sizeof(path), "%s.spool", x->path);
	for (const char *s = sitting; *s; s++)
		sum = (sum ^ (unsigned char)*s) * UINT64_C(0x100000001b3);
	to = fopen(path, "wb");
	assert_non_null(to);
	fprintf(to, "%s\t%016llx\n", sitting, (unsigned long long)sum);
	fclose(to);
	journal_close(open_good(x));
	look(x, DAY_ONE, &h);
	assert_int_equal(h.sittings, 1);
	assert_string_equal(h.sitting[0].work_stage, "tone");
	assert_string_equal(h.sitting[0].instrument, "");
	history_done(&h);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = { T(test_one_day), T(test_long_name),
		T(test_spool), T(test_old_spool) };

	return cmocka_run_group_tests(tests, NULL, NULL);
}
