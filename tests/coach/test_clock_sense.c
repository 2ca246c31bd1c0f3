/*
 * test_clock_sense.c - plans on nights, in summer time, abroad and with clocks
 * that were wrong
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "fresh_past.h"

enum { HOUR = 3600, NEARLY_9999 = 2932896 };

static struct plan plan;
static struct routine r;

static int setup(void **state)
{
	r = programme_cello(TONE);
	return past_begin(state);
}

/* Local time of a day at so many hours east of UTC. */
static struct moment there(int day, int hour, int minute, int east)
{
	return (struct moment) {
		.utc = (int64_t)day * DAY_S + (hour - east) * HOUR +
		    minute * 60,
		.offset = east * HOUR,
	};
}

static void plan_at(struct moment now)
{
	made_plan(&plan, &r, past, now);
}

static void play(void)
{
	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
}

/* Practised at ten to midnight: at twenty past it is the same day. */
static void test_after_midnight(void **state)
{
	(void)state;
	plan_at(there(FIRST_DAY, 23, 50, 0));
	assert_int_not_equal(plan.first_go, 0);
	play();
	plan_at(there(FIRST_DAY + 1, 0, 20, 0));
	assert_int_equal(plan.day, FIRST_DAY);
	assert_int_equal(plan.first_go >> TONE & 1, 0);
	assert_true(made_caution(&plan, M_COACH_CAUTION_GAP));
	plan_at(there(FIRST_DAY + 1, 3, 59, 0));
	assert_int_equal(plan.day, FIRST_DAY);
	plan_at(there(FIRST_DAY + 1, 4, 0, 0));
	assert_int_equal(plan.day, FIRST_DAY + 1);
	assert_int_equal(plan.first_go >> TONE & 1, 1);
	assert_false(made_caution(&plan, M_COACH_CAUTION_GAP));
}

/*
 * 2026-03-29, Berlin: 02:00 becomes 03:00.  The day before, 23:00 to 03:30 is
 * three and a half hours; in the autumn (2026-10-25) 23:00 to 01:30 is two and
 * a half, and an hour later by the clock, at 01:30 again, three and a half.
 */
static void test_summer_time(void **state)
{
	const int spring = 20541, autumn = 20751;

	(void)state;
	plan_at(there(spring - 1, 23, 0, 1));
	play();
	plan_at(there(spring, 3, 30, 2));
	assert_int_equal(plan.day, spring - 1);
	assert_false(made_caution(&plan, M_COACH_CAUTION_GAP));
	free(past);
	past = past_new();
	plan_at(there(autumn - 1, 23, 0, 2));
	play();
	plan_at(there(autumn, 1, 30, 2));
	assert_true(made_caution(&plan, M_COACH_CAUTION_GAP));
	plan_at(there(autumn, 2, 30, 1));
	assert_int_equal(plan.day, autumn - 1);
	assert_false(made_caution(&plan, M_COACH_CAUTION_GAP));
}

/* A flight west: what was played today lies on tomorrow's date. */
static void test_the_date_line(void **state)
{
	(void)state;
	plan_at(there(FIRST_DAY + 1, 8, 0, 13));
	play();
	plan_at(there(FIRST_DAY, 20, 0, -8));
	assert_int_equal(plan.day, FIRST_DAY);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_non_null(made_work(&plan));
	play();
	plan_at(there(FIRST_DAY + 1, 20, 0, -8));
	assert_int_equal(plan.day, FIRST_DAY + 1);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	/* The first go of this date was made in the east. */
	assert_int_equal(plan.first_go >> TONE & 1, 0);
}

/* A clock that ran years ahead and was put right changes no plan for worse. */
static void test_a_clock_put_right(void **state)
{
	static struct plan fresh;

	(void)state;
	plan_at(there(FIRST_DAY, 17, 0, 0));
	fresh = plan;
	plan_at(there(FIRST_DAY + 20000, 17, 0, 0));
	play();
	plan_at(there(FIRST_DAY, 17, 0, 0));
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_int_equal(plan.cap_ms, fresh.cap_ms);
	assert_int_equal(plan.first_go, fresh.first_go);
	for (int u = 0; u < r.units; u++)
		assert_int_equal(plan.share[u], fresh.share[u]);
}

/* Two pain days in a fortnight, whichever date came first. */
static void test_pain_and_a_clock_set_back(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY + 6, NOTE_PAIN, 0);
	past_note(past, FIRST_DAY, NOTE_PAIN, 0);
	plan_at(there(FIRST_DAY + 10, 17, 0, 0));
	assert_int_equal(plan.verdict, VERDICT_ASK_FIRST);
	r.seen = true;
	plan_at(there(FIRST_DAY + 10, 17, 0, 0));
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
}

static void test_pain_far_apart(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY + 14, NOTE_PAIN, 0);
	past_note(past, FIRST_DAY, NOTE_PAIN, 0);
	plan_at(there(FIRST_DAY + 30, 17, 0, 0));
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
}

/* Plans at the ends of the calendar, and thousands of years after practice. */
static void test_the_ends(void **state)
{
	(void)state;
	plan_at(there(0, 17, 0, 0));
	assert_int_equal(plan.day, 0);
	play();
	plan_at(there(NEARLY_9999, 17, 0, 0));
	assert_int_equal(plan.day, NEARLY_9999);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	play();
	plan_at(there(0, 21, 0, 0));
	assert_int_equal(plan.day, 0);
	plan_at((struct moment) { INT64_MAX, 64800 });
	plan_at((struct moment) { INT64_MIN, -64800 });
	assert_true(plan.day < 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(
		    test_after_midnight, setup, past_end),
		cmocka_unit_test_setup_teardown(
		    test_summer_time, setup, past_end),
		cmocka_unit_test_setup_teardown(
		    test_the_date_line, setup, past_end),
		cmocka_unit_test_setup_teardown(
		    test_a_clock_put_right, setup, past_end),
		cmocka_unit_test_setup_teardown(
		    test_pain_and_a_clock_set_back, setup, past_end),
		cmocka_unit_test_setup_teardown(
		    test_pain_far_apart, setup, past_end),
		cmocka_unit_test_setup_teardown(test_the_ends, setup, past_end),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
