/*
 * test_apart.c - one student, two instruments
 *
 * A history of a cello student that was played on the violin too: no rung, no
 * evidence, no debt and no recap of a stage comes from the other instrument,
 * and its load, its pauses and its sessions count.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "evenhand/coach/load.h"
#include "fresh_past.h"

static struct routine r;
static struct plan plan;

static int begin(void **state)
{
	r = programme_cello(TONE);
	return past_begin(state);
}

/* A session of today's plan, on an instrument. */
static void play(int day, int hour, const char *instrument, int turns)
{
	int tally = past->h.tallies;

	made_plan(&plan, &r, past, made_moment(day, hour));
	past_play(past, &r, &plan, all_clean, NULL, turns,
	    turns == PLAY_ALL ? ENDED_WHOLE : ENDED_EARLY);
	strcpy(past->sitting[past->h.sittings - 1].instrument, instrument);
	for (; tally < past->h.tallies; tally++)
		strcpy(past->tally[tally].instrument, instrument);
}

static void test_rung_and_evidence(void **state)
{
	struct plan before;

	(void)state;
	play(FIRST_DAY, 9, "violin", PLAY_ALL);
	history_set_apart(&past->h, "cello");
	made_plan(&before, &r, past, made_moment(FIRST_DAY + 1, 9));
	assert_int_equal(before.day_on_stage, 1);
	assert_true(made_reason(&before, M_COACH_RUNG_NEW));
	assert_false(made_reason(&before, M_COACH_RECAP_FACTS));
	/* The same on the cello is not the first day any more. */
	history_set_apart(&past->h, "violin");
	assert_true(history_elsewhere(past->sitting[0].work_stage));
	play(FIRST_DAY + 1, 9, "cello", PLAY_ALL);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 2, 9));
	assert_int_equal(plan.day_on_stage, 2);
	assert_true(made_reason(&plan, M_COACH_RUNG_CLEAN));
}

/* Turns that a violin session left out are owed to nobody on the cello. */
static void test_no_debt(void **state)
{
	(void)state;
	play(FIRST_DAY, 9, "violin", 6);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 9));
	assert_true(made_reason(&plan, M_COACH_MISSED));
	history_set_apart(&past->h, "cello");
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 9));
	assert_false(made_reason(&plan, M_COACH_MISSED));
}

/* Three violin sessions are no three sessions in which a stage was unseen. */
static void test_recaps(void **state)
{
	(void)state;
	play(FIRST_DAY, 9, "cello", PLAY_ALL);
	for (int i = 0; i < 3; i++)
		play(FIRST_DAY + i, 17, "violin", PLAY_ALL);
	history_set_apart(&past->h, "cello");
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 3, 9));
	assert_false(made_reason(&plan, M_COACH_RECAP_LONG));
}

/* A finger does not know which string it is on. */
static void test_load(void **state)
{
	struct loads before, after;

	(void)state;
	play(FIRST_DAY, 9, "violin", PLAY_ALL);
	load_of_days(&before, &past->h, FIRST_DAY, FIRST_DAY);
	history_set_apart(&past->h, "cello");
	load_of_days(&after, &past->h, FIRST_DAY, FIRST_DAY);
	for (int f = 1; f <= FINGERS_MAX; f++) {
		assert_true(after.finger[f].slide_um > 0);
		assert_int_equal(
		    after.finger[f].slide_um, before.finger[f].slide_um);
	}
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 10));
	assert_true(made_caution(&plan, M_COACH_CAUTION_GAP));
}

int main(void)
{
#define TEST(f) cmocka_unit_test_setup_teardown(f, begin, past_end)
	const struct CMUnitTest tests[] = { TEST(test_rung_and_evidence),
		TEST(test_no_debt), TEST(test_recaps), TEST(test_load) };

	return cmocka_run_group_tests(tests, NULL, NULL);
}
