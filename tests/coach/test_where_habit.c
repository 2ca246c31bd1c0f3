/*
 * test_where_habit.c - how far back a habit is looked for, and what makes one
 *
 * As long away twice or more in the four weeks up to the last practice day is
 * a habit, and costs no rung.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "fresh_past.h"

static struct plan plan;

static void played(int day)
{
	past_sit(past, made_moment(FIRST_DAY + day, 17), "tone", ENDED_WHOLE);
	past_turn(past, BLOCK_WORK, "tone", "1", 0, 6, MARK_CLEAN, true);
}

/* Begun, and nothing was heard of it. */
static void begun(int day)
{
	past_sit(past, made_moment(FIRST_DAY + day, 17), "tone", ENDED_EARLY);
}

static bool costs_a_rung(int day)
{
	struct routine r = programme_cello(TONE);

	made_plan(&plan, &r, past, made_moment(FIRST_DAY + day, 17));
	return plan.where.lower;
}

/*
 * Away five days twice, then on each day up to the last one.  The first of the
 * two begins behind a day 27 days before the last, or 28: four weeks are 28
 * days with the last.
 */
static void gone_twice(int last)
{
	played(0);
	for (int day = 6; day <= 10; day++)
		played(day);
	for (int day = 16; day <= last; day++)
		played(day);
}

static void test_within_four_weeks(void **state)
{
	(void)state;
	gone_twice(27);
	assert_false(costs_a_rung(33));
	assert_int_equal(plan.where.away, 5);
}

static void test_before_four_weeks(void **state)
{
	(void)state;
	gone_twice(28);
	assert_true(costs_a_rung(34));
	assert_int_equal(plan.where.away, 5);
}

/* A session in which nothing was heard is no practice day between. */
static void test_begun_is_not_played(void **state)
{
	(void)state;
	for (int week = 0; week < 3; week++) {
		played(7 * week);
		played(7 * week + 1);
		begun(7 * week + 4);
	}
	assert_false(costs_a_rung(21));
	assert_int_equal(plan.where.away, 5);
}

/* Played then, it is one, and the weeks have no such gaps. */
static void test_played_between(void **state)
{
	(void)state;
	for (int week = 0; week < 3; week++) {
		played(7 * week);
		played(7 * week + 1);
		if (week < 2)
			played(7 * week + 4);
	}
	assert_true(costs_a_rung(21));
	assert_int_equal(plan.where.away, 5);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, past_begin, past_end)
	const struct CMUnitTest tests[] = {
		T(test_within_four_weeks),
		T(test_before_four_weeks),
		T(test_begun_is_not_played),
		T(test_played_between),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
