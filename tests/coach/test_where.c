/*
 * test_where.c - one stage back and on again, days away, and who decides
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "made.h"

static struct plan plan;
static struct past *past;
static struct routine r;
static const char *today_marks;

static int setup(void **state)
{
	(void)state;
	past = past_new();
	r = programme_cello(TONE);
	r.no_further_than = TONE;
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	free(past);
	return 0;
}

/* Marks by finger in the first round; the air and all else is clean. */
static enum mark as_told(void *context, int stage, int unit, int round)
{
	(void)context, (void)stage;
	if (unit < 0 || round > 0)
		return MARK_CLEAN;
	return today_marks[unit] == 's' ? MARK_SHAKY
	    : today_marks[unit] == 'c'	? MARK_CLEAN
					: MARK_NONE;
}

static void plan_on(int day)
{
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + day, 17));
}

/* A whole session with these marks in its first rounds, recaps too. */
static void play(int day, const char *marks)
{
	plan_on(day);
	today_marks = marks;
	past_play(past, &r, &plan, as_told, NULL, PLAY_ALL, ENDED_WHOLE);
}

/* A session at the lowest rung, whatever the plan begins at. */
static void play_low(int day, const char *marks)
{
	plan_on(day);
	today_marks = marks;
	for (int b = 0; b < plan.blocks; b++)
		if (plan.block[b].kind == BLOCK_WORK)
			plan.block[b].pulses = 4;
	past_play(past, &r, &plan, as_told, NULL, PLAY_ALL, ENDED_WHOLE);
}

static void stage_is(int day, int stage, enum where_why why)
{
	plan_on(day);
	assert_int_equal(plan.work_stage, stage);
	assert_int_equal(plan.where.why, why);
}

/* --- one stage back --- */

/* One bad day holds; two running go back; a clean day there leads on again. */
static void test_two_bad_days(void **state)
{
	(void)state;
	play_low(0, "sscc");
	stage_is(1, TONE, WHERE_FILE);
	play_low(1, "cssc");
	stage_is(2, THIRDS, WHERE_BACK);
	assert_true(made_reason(&plan, M_WHERE_BACK));
	assert_int_equal(plan.where.bad_day[0], FIRST_DAY);
	assert_int_equal(plan.where.bad_day[1], FIRST_DAY + 1);
	play(2, "cccs");
	stage_is(3, THIRDS, WHERE_STAYS);
	assert_true(made_reason(&plan, M_WHERE_STAYS));
	play(3, "cccc");
	stage_is(4, TONE, WHERE_ON);
	assert_int_equal(plan.day_on_stage, 3); /* days are kept */
	play_low(4, "sscc");
	stage_is(5, TONE, WHERE_FILE); /* two, but not running */
	play_low(5, "sscc");
	stage_is(6, THIRDS, WHERE_BACK);
}

static void test_one_shaky(void **state)
{
	(void)state;
	play_low(0, "sscc");
	play_low(1, "cccs");
	stage_is(2, TONE, WHERE_FILE);
	play_low(2, "sscc");
	stage_is(3, TONE, WHERE_FILE);
}

/* Above the lowest rung nothing leads back; the rung falls instead. */
static void test_not_lowest(void **state)
{
	(void)state;
	for (int day = 0; day < 2; day++) {
		past_sit(past, made_moment(FIRST_DAY + day, 17), "tone",
		    ENDED_WHOLE);
		for (int u = 0; u < 4; u++)
			past_turn(past, BLOCK_WORK, "tone", r.unit[u].name, 0,
			    6, MARK_SHAKY, true);
	}
	stage_is(2, TONE, WHERE_FILE);
}

/* What a day works on is settled by its first session. */
static void test_second_session(void **state)
{
	(void)state;
	play_low(0, "sscc");
	play_low(1, "cssc");
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 21));
	assert_int_equal(plan.work_stage, TONE);
	play(2, "cccc");
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 2, 21));
	assert_int_equal(plan.work_stage, THIRDS);
	stage_is(3, TONE, WHERE_ON);
}

/* The teacher's new file counts more than what was. */
static void test_teacher_speaks(void **state)
{
	(void)state;
	play_low(0, "sscc");
	play_low(1, "cssc");
	play(2, "cccs");
	r.work_on = r.no_further_than = SEMITONE;
	stage_is(3, SEMITONE, WHERE_FILE);
	play(3, "cccc");
	r.work_on = r.no_further_than = WIDE;
	stage_is(4, WIDE, WHERE_FILE);
}

/* In the lesson the teacher saw the second day otherwise. */
static void test_lesson_mark(void **state)
{
	(void)state;
	play_low(0, "sscc");
	play_low(1, "cssc");
	r.lesson_mark[r.lesson_marks++] = (struct lesson_mark) {
		.day = FIRST_DAY + 1, .stage = TONE, .clean = 15
	};
	stage_is(2, TONE, WHERE_FILE);
}

/* --- days away --- */

static int start_on(int day)
{
	plan_on(day);
	return made_work(&plan) ? made_work(&plan)->pulses : 0;
}

/* Who plays at weekends loses a rung twice, and not every Saturday. */
static void test_weekends(void **state)
{
	(void)state;
	play(0, "cccc");
	play(1, "cccc");
	plan_on(7);
	assert_int_equal(plan.where.away, 5);
	assert_true(plan.where.lower);
	play(7, "cccc");
	play(8, "cccc");
	plan_on(14);
	assert_true(plan.where.lower);
	play(14, "cccc");
	play(15, "cccc");
	plan_on(21);
	assert_int_equal(plan.where.away, 5);
	assert_false(plan.where.lower);
	plan_on(22);
	assert_true(plan.where.lower); /* six are more than five */
	plan_on(24);
	assert_true(plan.where.recap_only); /* and eight are long for anyone */
}

static void test_few_days(void **state)
{
	(void)state;
	play(0, "cccc");
	assert_int_equal(start_on(4), 6); /* three clear days */
	assert_false(made_reason(&plan, M_WHERE_AWAY_LOWER));
	assert_int_equal(start_on(5), 4); /* four */
	assert_true(made_reason(&plan, M_WHERE_AWAY_LOWER));
	assert_int_equal(plan.cap_ms, 300000);
	assert_int_equal(start_on(8), 4); /* seven */
	play(8, "cccc");
	assert_int_equal(start_on(9), 4); /* goes on from there */
	assert_false(made_reason(&plan, M_WHERE_AWAY_LOWER));
}

/* What was clean at 6 comes again at 4 after four days, and next day at 6. */
static void test_few_days_recaps(void **state)
{
	(void)state;
	play(0, "cccc");
	plan_on(5);
	assert_true(plan.where.lower);
	assert_int_equal(plan.block[2].stage, THIRDS);
	assert_int_equal(plan.block[2].pulses, 4);
	past_swing(past, FIRST_DAY + 5, FIRST_DAY + 5);
	plan_on(6);
	assert_int_equal(plan.block[2].stage, THIRDS);
	assert_int_equal(plan.block[2].pulses, 6);
}

/* Ten days away at semitone, the last session having recapped tone. */
static void test_ten_days(void **state)
{
	double metres[4] = { 0 };

	(void)state;
	r.work_on = r.no_further_than = SEMITONE;
	play(0, "cccc");
	play(1, "cccc");
	play(2, "cccc");
	assert_int_equal(plan.block[2].stage, TONE);
	plan_on(13);
	assert_int_equal(plan.where.away, 10);
	assert_int_equal(plan.cap_ms, 180000);
	assert_int_equal(plan.blocks, 3);
	assert_int_equal(plan.block[1].stage, WIDE);
	assert_int_equal(plan.block[1].pulses, 4);
	assert_int_equal(plan.block[2].stage, THIRDS);
	assert_int_equal(plan.block[2].pulses, 4);
	assert_int_equal(plan.length_ms, 140000);
	for (int u = 0; u < 4; u++)
		metres[u] = routine_turn_m(&r, WIDE, u, 4) +
		    routine_turn_m(&r, THIRDS, u, 4);
	/* The published string length 690 mm and equal temperament. */
	assert_true(metres[0] > 4.025 && metres[0] < 4.035);
	assert_true(metres[1] > 3.805 && metres[1] < 3.815);
	assert_true(metres[2] > 3.585 && metres[2] < 3.595);
	assert_true(metres[3] > 3.385 && metres[3] < 3.395);
	assert_true(made_reason(&plan, M_WHERE_AWAY_RECAP));

	/* Not all clean: once more. */
	play(13, "cccs");
	plan_on(14);
	assert_int_equal(plan.cap_ms, 180000);
	assert_null(made_work(&plan));
	assert_true(made_reason(&plan, M_WHERE_AWAY_RECAP_AGAIN));
	/* All clean, but not to the end: once more. */
	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_EARLY);
	plan_on(15);
	assert_null(made_work(&plan));
	assert_true(made_reason(&plan, M_WHERE_AWAY_RECAP_AGAIN));
	/* All clean: the stage is back, on the lowest rung. */
	play(15, "cccc");
	plan_on(16);
	assert_int_equal(plan.cap_ms, 300000);
	assert_non_null(made_work(&plan));
	assert_int_equal(made_work(&plan)->stage, SEMITONE);
	assert_int_equal(made_work(&plan)->pulses, 4);
	assert_true(made_reason(&plan, M_WHERE_RUNG_AWAY));
	play(16, "cccc");
	plan_on(17);
	assert_false(made_reason(&plan, M_WHERE_RUNG_AWAY));
}

/* Only what is wider than a tone goes to the lowest rung. */
static void test_ten_days_narrow(void **state)
{
	bool tone = false;

	(void)state;
	r.work_on = r.no_further_than = SEMITONE;
	r.cap_ms = 600000;
	for (int day = 0; day < 7; day++)
		play(day, "cccc");
	plan_on(17);
	assert_true(plan.where.recap_only);
	for (int b = 1; b < plan.blocks; b++) {
		tone |= plan.block[b].stage == TONE;
		assert_int_equal(
		    plan.block[b].pulses, plan.block[b].stage == TONE ? 6 : 4);
	}
	assert_true(tone);
}

/* Where the teacher wants no earlier stages, it is the stage itself. */
static void test_ten_days_no_recaps(void **state)
{
	(void)state;
	r.recap_num = 0;
	play(0, "cccc");
	plan_on(11);
	assert_int_equal(plan.where.away, 10);
	assert_int_equal(plan.cap_ms, 180000);
	assert_false(plan.where.recap_only);
	assert_true(made_reason(&plan, M_WHERE_AWAY_SELF));
	assert_non_null(made_work(&plan));
	assert_int_equal(made_work(&plan)->stage, TONE);
	assert_int_equal(made_work(&plan)->pulses, 4);
	for (int b = 0; b < plan.blocks; b++)
		assert_int_not_equal(plan.block[b].kind, BLOCK_RECAP);
}

/* Eight days away on the first stage with a string: that stage itself. */
static void test_away_at_wide(void **state)
{
	(void)state;
	r.work_on = r.no_further_than = WIDE;
	play(0, "cccc");
	plan_on(9);
	assert_int_equal(plan.where.away, 8);
	assert_int_equal(plan.cap_ms, 180000);
	assert_int_equal(made_work(&plan)->stage, WIDE);
	assert_int_equal(made_work(&plan)->pulses, 4);
	assert_true(made_reason(&plan, M_WHERE_AWAY_SELF));
	play(9, "cscc");
	plan_on(10);
	assert_int_equal(plan.cap_ms, 180000);
	play(10, "cccc");
	plan_on(11);
	assert_int_equal(plan.cap_ms, 300000);
}

static void test_fifteen_days(void **state)
{
	(void)state;
	play(0, "cccc");
	plan_on(15); /* fourteen clear days */
	assert_int_equal(plan.work_stage, TONE);
	plan_on(16);
	assert_int_equal(plan.work_stage, THIRDS);
	assert_int_equal(plan.cap_ms, 180000);
	assert_int_equal(made_work(&plan)->pulses, 4);
	assert_true(made_reason(&plan, M_WHERE_AWAY_BACK));
	play(16, "cccs");
	plan_on(17);
	assert_int_equal(plan.work_stage, THIRDS);
	assert_int_equal(plan.cap_ms, 240000);
	play(17, "cccs");
	plan_on(18);
	assert_int_equal(plan.cap_ms, 300000);
	play(18, "cccc");
	stage_is(19, TONE, WHERE_ON);
	assert_int_equal(made_work(&plan)->pulses, 4);
}

/* Twenty-nine days and more: from the first stage, a clean day each. */
static void test_long_away(void **state)
{
	(void)state;
	play(0, "cccc");
	stage_is(29, THIRDS, WHERE_AWAY_BACK);
	stage_is(30, AIR, WHERE_AWAY_START);
	assert_true(made_reason(&plan, M_WHERE_AWAY_START));
	play(30, "cccc");
	stage_is(31, WIDE, WHERE_ON);
	play(31, "ccsc");
	stage_is(32, WIDE, WHERE_STAYS);
	play(32, "cccc");
	stage_is(33, THIRDS, WHERE_ON);
	play(33, "cccc");
	stage_is(34, TONE, WHERE_ON);
	play(34, "cccc");
	stage_is(35, TONE, WHERE_FILE);
}

/* A clock set back, and a journal from the future: never days away. */
static void test_clock_back(void **state)
{
	(void)state;
	play(20, "cccc");
	stage_is(5, TONE, WHERE_FILE);
	assert_int_equal(plan.where.away, 0);
	past->sitting[0].day = INT32_MAX;
	stage_is(5, TONE, WHERE_FILE);
	past->sitting[0].day = INT32_MIN;
	stage_is(5, AIR, WHERE_AWAY_START);
}

/* --- the student decides --- */

static void test_student(void **state)
{
	(void)state;
	r.decided_by = DECIDED_BY_STUDENT;
	r.no_further_than = SEMITONE;
	for (int day = 0; day < 5; day++) {
		stage_is(day, TONE, WHERE_FILE);
		plan.block[plan.blocks - 1].pulses = 8;
		today_marks = "cccc";
		past_play(
		    past, &r, &plan, as_told, NULL, PLAY_ALL, ENDED_WHOLE);
	}
	/* What a day works on is settled by its first session here too. */
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 4, 21));
	assert_int_equal(plan.work_stage, TONE);
	stage_is(5, SEMITONE, WHERE_SECURE);
	assert_true(made_reason(&plan, M_WHERE_SECURE));
	play(5, "ssss");
	stage_is(6, SEMITONE, WHERE_FILE); /* stays there */
	/* The file lets nobody past its limit. */
	r.no_further_than = TONE;
	stage_is(6, TONE, WHERE_FILE);
}

static void test_teacher_decides(void **state)
{
	(void)state;
	r.no_further_than = SEMITONE;
	for (int day = 0; day < 8; day++) {
		plan_on(day);
		plan.block[plan.blocks - 1].pulses = 8;
		today_marks = "cccc";
		past_play(
		    past, &r, &plan, as_told, NULL, PLAY_ALL, ENDED_WHOLE);
	}
	stage_is(8, TONE, WHERE_FILE);
	assert_true(made_reason(&plan, M_STANDING_READY));
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)
	const struct CMUnitTest tests[] = {
		TEST(test_two_bad_days),
		TEST(test_one_shaky),
		TEST(test_not_lowest),
		TEST(test_second_session),
		TEST(test_teacher_speaks),
		TEST(test_lesson_mark),
		TEST(test_weekends),
		TEST(test_few_days),
		TEST(test_few_days_recaps),
		TEST(test_ten_days),
		TEST(test_ten_days_narrow),
		TEST(test_ten_days_no_recaps),
		TEST(test_away_at_wide),
		TEST(test_fifteen_days),
		TEST(test_long_away),
		TEST(test_clock_back),
		TEST(test_student),
		TEST(test_teacher_decides),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
