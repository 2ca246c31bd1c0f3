/*
 * test_history.c - questions to the practice history
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "made.h"

static struct past *past;
static struct routine r;

static int setup(void **state)
{
	(void)state;
	past = past_new();
	r = programme_cello(TONE);
	strcpy(r.stage[TONE].was, "whole-tone");
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	free(past);
	return 0;
}

static void test_names(void **state)
{
	(void)state;
	assert_true(history_is_stage(&r, TONE, "tone"));
	assert_true(history_is_stage(&r, TONE, "whole-tone"));
	assert_false(history_is_stage(&r, TONE, "semitone"));
	assert_false(history_is_stage(&r, TONE, ""));
	assert_false(history_is_stage(&r, WIDE, ""));
	assert_int_equal(history_stage(&r, "whole-tone"), TONE);
	assert_int_equal(history_stage(&r, "gone"), -1);
	assert_int_equal(history_stage(&r, ""), -1);
	/* An id of today counts before what another stage once was called. */
	strcpy(r.stage[WIDE].was, "tone");
	assert_int_equal(history_stage(&r, "tone"), TONE);
}

/* A sitting of an hour of the day, with these stages; the work comes last. */
static void sit(int day, int hour, const char *first, const char *work)
{
	past_sit(past, made_moment(day, hour), work, ENDED_WHOLE);
	if (*first)
		past_turn(past, BLOCK_RECAP, first, "1", 0, 4, MARK_CLEAN,
		    !history_gone_on(
			&past->h, &r, history_stage(&r, first), day));
}

static void work(const char *stage, int pulses)
{
	int day = past->sitting[past->h.sittings - 1].day;

	past_turn(past, BLOCK_WORK, stage, "1", 0, pulses, MARK_NONE,
	    !history_gone_on(&past->h, &r, history_stage(&r, stage), day));
}

static void test_days_on(void **state)
{
	(void)state;
	assert_int_equal(history_days_on(&past->h, &r, TONE), 0);
	assert_int_equal(history_first_day_on(&past->h, &r, TONE), -1);
	sit(FIRST_DAY, 9, "wide", "whole-tone");
	work("whole-tone", 6);
	sit(FIRST_DAY, 17, "wide", "tone");
	work("tone", 6);
	assert_int_equal(history_days_on(&past->h, &r, TONE), 1);
	/* Stopped before it came to the work: no day on it. */
	sit(FIRST_DAY + 1, 9, "wide", "tone");
	assert_int_equal(history_days_on(&past->h, &r, TONE), 1);
	assert_int_equal(history_days_on(&past->h, &r, WIDE), 0);
	sit(FIRST_DAY + 3, 9, "tone", "semitone");
	work("semitone", 6);
	assert_int_equal(history_days_on(&past->h, &r, TONE), 1);
	sit(FIRST_DAY + 4, 9, "", "tone");
	work("tone", 6);
	assert_int_equal(history_days_on(&past->h, &r, TONE), 2);
	assert_int_equal(history_first_day_on(&past->h, &r, TONE), FIRST_DAY);
	/* A clock set back, and put right: the same days once more. */
	sit(FIRST_DAY, 19, "", "tone");
	work("tone", 6);
	sit(FIRST_DAY + 4, 19, "", "tone");
	work("tone", 6);
	assert_int_equal(history_days_on(&past->h, &r, TONE), 2);
	sit(FIRST_DAY + 2, 19, "", "tone");
	work("tone", 6);
	assert_int_equal(history_days_on(&past->h, &r, TONE), 3);
}

/* The swing before a later stage is no work on the air stage. */
static void test_days_in_the_air(void **state)
{
	(void)state;
	past_sit(past, made_moment(FIRST_DAY, 9), "wide", ENDED_WHOLE);
	past_turn(past, BLOCK_AIR, "air", "", 0, 0, MARK_CLEAN, true);
	work("wide", 4);
	assert_int_equal(history_days_on(&past->h, &r, AIR), 0);
	assert_true(history_gone_on(&past->h, &r, AIR, FIRST_DAY));
	past_sit(past, made_moment(FIRST_DAY + 1, 9), "air", ENDED_WHOLE);
	past_turn(past, BLOCK_AIR, "air", "", 0, 0, MARK_CLEAN, true);
	assert_int_equal(history_days_on(&past->h, &r, AIR), 1);
}

static void test_gone_on(void **state)
{
	(void)state;
	assert_false(history_gone_on(&past->h, &r, TONE, FIRST_DAY));
	sit(FIRST_DAY, 9, "wide", "whole-tone");
	work("whole-tone", 6);
	assert_true(history_gone_on(&past->h, &r, WIDE, FIRST_DAY));
	assert_true(history_gone_on(&past->h, &r, TONE, FIRST_DAY));
	assert_false(history_gone_on(&past->h, &r, SEMITONE, FIRST_DAY));
	assert_false(history_gone_on(&past->h, &r, TONE, FIRST_DAY + 1));
	/* The roll-ups alone know it too, an unmarked first go as well. */
	past->h.turns = 0;
	assert_true(history_gone_on(&past->h, &r, TONE, FIRST_DAY));
}

/* More stages in a sitting than are kept by name. */
static void test_many_stages(void **state)
{
	struct past_sitting *s;

	(void)state;
	s = past_sit(past, made_moment(FIRST_DAY, 9), "tone", ENDED_WHOLE);
	s->blocks = SEEN_MAX;
	for (int i = 0; i < SEEN_MAX; i++)
		strcpy(s->seen[i], "wide");
	assert_true(history_worked(&r, s, TONE));
	assert_false(history_worked(&r, s, WIDE));
	s->blocks = SEEN_MAX + 4;
	assert_true(history_worked(&r, s, TONE));
}

static void test_done(void **state)
{
	struct history h = { 0 };

	(void)state;
	h.turn = arena_take(&h.arena, sizeof(*h.turn));
	h.turns = 1;
	history_done(&h);
	assert_int_equal(h.turns, 0);
	assert_null(h.turn);
	history_done(&h);
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)
	const struct CMUnitTest tests[] = {
		TEST(test_names),
		TEST(test_days_on),
		TEST(test_days_in_the_air),
		TEST(test_gone_on),
		TEST(test_many_stages),
		TEST(test_done),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
