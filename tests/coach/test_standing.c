/*
 * test_standing.c - when a stage is secure, and what is missing till then
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "fresh_past.h"

static struct routine r;
static struct standing now;

static int setup(void **state)
{
	r = programme_cello(THIRDS);
	return past_begin(state);
}

static enum mark mark_of(char letter)
{
	return letter == 'c' ? MARK_CLEAN
	    : letter == 's'  ? MARK_SHAKY
			     : MARK_NONE;
}

/* A practice day whose first go was marked so, and nothing else. */
static void day_of(int day, int pulses, const char *marks)
{
	past_sit(past, made_moment(FIRST_DAY + day, 17), r.stage[r.work_on].id,
	    ENDED_WHOLE);
	for (int u = 0; marks[u]; u++)
		past_turn(past, BLOCK_WORK, r.stage[r.work_on].id,
		    r.unit[u].name, 0, pulses, mark_of(marks[u]), true);
}

static enum missing after(int day)
{
	standing_of(&now, &r, &past->h, r.work_on, FIRST_DAY + day, NULL);
	return now.missing;
}

/* Six days on thirds: hold for finger 4 after five, ready after six. */
static void test_six_days(void **state)
{
	(void)state;
	day_of(1, 6, "cscs");
	assert_int_equal(after(1), MISSING_DAYS);
	assert_int_equal(now.days, 1);
	assert_int_equal(now.more_days, 4);
	day_of(2, 6, "sccs");
	day_of(3, 8, "ccsc");
	day_of(4, 8, "cccc");
	assert_int_equal(after(4), MISSING_DAYS);
	day_of(5, 8, "cccs");
	assert_int_equal(after(5), MISSING_CLEAN);
	assert_int_equal(now.unit, 3);
	assert_int_equal(now.day, FIRST_DAY + 5);
	assert_int_equal(now.more_days, 1);
	day_of(6, 8, "cccc");
	assert_int_equal(after(6), MISSING_NOTHING);
	assert_int_equal(now.clean_days, 2);
	assert_int_equal(now.more_days, 0);
}

/* Marks of later rounds change nothing. */
static void test_later_rounds(void **state)
{
	(void)state;
	for (int day = 1; day <= 6; day++) {
		day_of(day, 8, "cccc");
		for (int u = 0; u < r.units; u++)
			past_turn(past, BLOCK_WORK, "thirds", r.unit[u].name, 1,
			    8, MARK_SHAKY, false);
	}
	assert_int_equal(after(6), MISSING_NOTHING);
	past->h.tallies = past->h.turns = past->h.sittings = 0;
	for (int day = 1; day <= 6; day++) {
		day_of(day, 8, "cscc");
		for (int u = 0; u < r.units; u++)
			past_turn(past, BLOCK_WORK, "thirds", r.unit[u].name, 1,
			    8, MARK_CLEAN, false);
	}
	assert_int_equal(after(6), MISSING_CLEAN);
	assert_int_equal(now.unit, 1);
}

/* Each condition by itself, in the order in which they are named. */
static void test_each_condition(void **state)
{
	(void)state;
	for (int day = 1; day <= 5; day++)
		day_of(day, 8, day < 4 ? "cccs" : "cccc");
	assert_int_equal(after(5), MISSING_NOTHING);
	day_of(6, 6, "cccc");
	assert_int_equal(after(6), MISSING_RUNG);
	assert_int_equal(now.rung, 6);
	assert_int_equal(now.top, 8);
	day_of(7, 8, "cc-c");
	assert_int_equal(after(7), MISSING_MARK);
	assert_int_equal(now.unit, 2);
	day_of(8, 8, "cccc");
	assert_int_equal(after(8), MISSING_CLEAN_DAYS);
	assert_int_equal(now.clean_days, 1);
	day_of(9, 8, "cccc");
	assert_int_equal(after(9), MISSING_NOTHING);
	past_note(past, FIRST_DAY + 9, NOTE_SKIN, 2);
	assert_int_equal(after(9), MISSING_WELL);
	assert_int_equal(now.day, FIRST_DAY + 9);
	assert_int_equal(after(12), MISSING_WELL);
	assert_int_equal(after(13), MISSING_NOTHING);
	/* A day ahead it comes from a zone further east; more it is wrong. */
	past->note[0].day = FIRST_DAY + 10;
	assert_int_equal(after(9), MISSING_WELL);
	past->note[0].day = FIRST_DAY + 11;
	assert_int_equal(after(9), MISSING_NOTHING);
	past->note[0].day = FIRST_DAY + 9;
	past->note[0].kind = NOTE_QUESTION;
	assert_int_equal(after(9), MISSING_NOTHING);
}

/* Four fingers: the least has at least a fifth of all bows. */
static void test_share(void **state)
{
	struct tally *t;

	(void)state;
	for (int day = 1; day <= 6; day++)
		day_of(day, 8, "cccc");
	/* 12 bows each, but finger 3: 9 of 45 is a fifth, 8 of 44 is not. */
	t = &past->tally[past->h.tallies - 2];
	t[0].bows = 0;
	t[-4].bows = 1;
	assert_int_equal(after(6), MISSING_NOTHING);
	t[-4].bows = 0;
	assert_int_equal(after(6), MISSING_SHARE);
	assert_int_equal(now.unit, 2);
	assert_int_equal(now.bows, 8);
	assert_int_equal(now.bows_all, 44);
}

/* A finger that was left out for its skin is not missed on those days. */
static void test_share_healed(void **state)
{
	(void)state;
	for (int day = 1; day <= 16; day++) {
		day_of(day, 8, day <= 10 ? "ccc" : "cccc");
		if (day <= 10)
			past_note(past, FIRST_DAY + day, NOTE_SKIN, 4);
	}
	assert_int_equal(after(16), MISSING_NOTHING);
	/* Left out on other days, or for no reason, it is. */
	past->h.notes = 1;
	assert_int_equal(after(16), MISSING_SHARE);
	assert_int_equal(now.unit, 3);
	past->h.notes = 0;
	assert_int_equal(after(16), MISSING_SHARE);
	assert_int_equal(now.unit, 3);
}

/* What the teacher marked counts over the student's marks of that day. */
static void test_lesson(void **state)
{
	(void)state;
	for (int day = 1; day <= 6; day++)
		day_of(day, 8, "cccc");
	r.lesson_mark[r.lesson_marks++] = (struct lesson_mark) {
		.day = FIRST_DAY + 6, .stage = THIRDS, .clean = 7, .shaky = 8
	};
	assert_int_equal(after(6), MISSING_CLEAN);
	assert_int_equal(now.unit, 3);
	assert_true(now.teacher);
	/* Of another stage, or of another day. */
	r.lesson_mark[0].stage = TONE;
	assert_int_equal(after(6), MISSING_NOTHING);
	r.lesson_mark[0].stage = THIRDS;
	r.lesson_mark[0].day = FIRST_DAY + 2;
	assert_int_equal(after(6), MISSING_NOTHING);
	/* The teacher heard clean what the student took for shaky. */
	day_of(7, 8, "ccss");
	assert_int_equal(after(7), MISSING_CLEAN);
	r.lesson_mark[0] = (struct lesson_mark) {
		.day = FIRST_DAY + 7, .stage = THIRDS, .clean = 12
	};
	assert_int_equal(after(7), MISSING_NOTHING);
}

/* Lessons of one day are one after the other, and of no day but their own. */
static void test_lessons_of_a_day(void **state)
{
	struct first_go g;

	(void)state;
	for (int day = 1; day <= 6; day++)
		day_of(day, 8, day <= 3 ? "sccc" : "cccc");
	/* First heard clean, then shaky: the last two good days are not two. */
	for (int i = 0; i < 2; i++)
		r.lesson_mark[r.lesson_marks++] = (struct lesson_mark) {
			.day = FIRST_DAY + 4 + i,
			.stage = THIRDS,
			.clean = i ? 0 : 8,
			.shaky = i ? 8 : 0
		};
	assert_true(first_go_on(&past->h, &r, THIRDS, FIRST_DAY + 5, &g));
	assert_false(first_go_clean(&r, THIRDS, &g));
	assert_int_equal(g.clean, 7);
	assert_int_equal(g.shaky, 8);
	/* The lesson of the fifth day says nothing of the fourth. */
	assert_true(first_go_on(&past->h, &r, THIRDS, FIRST_DAY + 4, &g));
	assert_true(first_go_clean(&r, THIRDS, &g));
	r.lesson_mark[0].day = FIRST_DAY + 5;
	r.lesson_mark[0].clean = 15;
	assert_true(first_go_on(&past->h, &r, THIRDS, FIRST_DAY + 5, &g));
	assert_int_equal(g.clean, 7);
	/* The other way round. */
	r.lesson_mark[0].day = FIRST_DAY + 6;
	r.lesson_mark[1].day = FIRST_DAY + 5;
	assert_true(first_go_on(&past->h, &r, THIRDS, FIRST_DAY + 6, &g));
	assert_true(first_go_clean(&r, THIRDS, &g));
}

/* As an earlier stage it shows nothing of the stage as today's work. */
static void test_recap(void **state)
{
	struct first_go g;

	(void)state;
	past_sit(past, made_moment(FIRST_DAY, 17), "tone", ENDED_WHOLE);
	for (int u = 0; u < r.units; u++)
		past_turn(past, BLOCK_RECAP, "thirds", r.unit[u].name, 0, 8,
		    MARK_CLEAN, true);
	assert_false(first_go_on(&past->h, &r, THIRDS, FIRST_DAY, &g));
	day_of(0, 6, "cccs");
	assert_true(first_go_on(&past->h, &r, THIRDS, FIRST_DAY, &g));
	assert_int_equal(g.clean, 7);
	assert_int_equal(g.shaky, 8);
	assert_int_equal(g.pulses, 6);
}

/* A first go on day 6, all clean at the top rung. */
static const struct fresh clean_top = { .worked = true,
	.marked = true,
	.first_go = { .day = FIRST_DAY + 6, .pulses = 8, .clean = 15 } };

/* The first sitting of a day was stopped before its first go; this one has it. */
static void test_fresh_later(void **state)
{
	(void)state;
	for (int day = 1; day <= 5; day++)
		day_of(day, 8, day == 5 ? "cccc" : "sccc");
	past_sit(past, made_moment(FIRST_DAY + 6, 9), "thirds", ENDED_EARLY);
	past_turn(past, BLOCK_WORK, "thirds", "1", 0, 8, MARK_NONE, false);
	assert_int_equal(after(6), MISSING_MARK);
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 6, &clean_top);
	assert_int_equal(now.missing, MISSING_NOTHING);
	assert_int_equal(now.days, 6);
}

/* A first go at several rungs is one at the lowest of them. */
static void test_lowest_rung(void **state)
{
	struct first_go g;

	(void)state;
	for (int day = 1; day <= 6; day++)
		day_of(day, 8, "cccc");
	past->tally[past->h.tallies - 2].first_go_pulses = 6;
	assert_true(first_go_on(&past->h, &r, THIRDS, FIRST_DAY + 6, &g));
	assert_int_equal(g.pulses, 6);
	assert_int_equal(after(6), MISSING_RUNG);
	assert_int_equal(now.rung, 6);
}

/* In the air the first swing of the day is all there is. */
static void test_air(void **state)
{
	(void)state;
	r.work_on = AIR;
	for (int day = 1; day <= 5; day++) {
		past_sit(
		    past, made_moment(FIRST_DAY + day, 17), "air", ENDED_WHOLE);
		past_turn(past, BLOCK_AIR, "air", "", 0, 0,
		    day == 5 ? MARK_SHAKY : MARK_CLEAN, true);
	}
	assert_int_equal(after(5), MISSING_CLEAN);
	past->tally[past->h.tallies - 1].first_go = MARK_CLEAN;
	assert_int_equal(after(5), MISSING_NOTHING);
}

/* The sitting that is being played counts as if it were over. */
static void test_fresh(void **state)
{
	struct fresh f = { .worked = true,
		.marked = true,
		.first_go = { .day = FIRST_DAY + 6, .pulses = 8, .clean = 15 },
		.bows = { 2, 2, 2, 2 } };

	(void)state;
	for (int day = 1; day <= 5; day++)
		day_of(day, 8, day == 4 ? "cccc" : "sccc");
	assert_int_equal(after(5), MISSING_CLEAN);
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 6, &f);
	assert_int_equal(now.missing, MISSING_NOTHING);
	assert_int_equal(now.days, 6);
	/* The second sitting of the day brings no new first go. */
	day_of(6, 8, "cccs");
	f.marked = false;
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 6, &f);
	assert_int_equal(now.missing, MISSING_CLEAN);
	assert_int_equal(now.days, 6);
	f.hurt = true;
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 6, &f);
	assert_int_equal(now.missing, MISSING_WELL);
}

/* Today is one of the last three days, and the one before those is none. */
static void test_fresh_is_newest(void **state)
{
	(void)state;
	for (int day = 1; day <= 5; day++)
		day_of(day, 8, day == 3 ? "cccc" : "sccc");
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 6, &clean_top);
	assert_int_equal(now.clean_days, 1);
	assert_int_equal(now.missing, MISSING_CLEAN_DAYS);
	/* Nor does a day that nobody marked lend its place to another. */
	past->h.tallies = past->h.turns = past->h.sittings = 0;
	for (int day = 1; day <= 5; day++)
		day_of(day, 8, day == 5 ? "----" : "cccc");
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 6, &clean_top);
	assert_int_equal(now.clean_days, 2);
	r.move_clean = 3;
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 6, &clean_top);
	assert_int_equal(now.missing, MISSING_CLEAN_DAYS);
	/* As many days as are looked at, and today: the oldest is forgotten. */
	r.move_of = STANDING_DAYS_MAX;
	past->h.tallies = past->h.turns = past->h.sittings = 0;
	for (int day = 1; day <= STANDING_DAYS_MAX; day++)
		day_of(
		    day + 5 - STANDING_DAYS_MAX, 8, day == 1 ? "sccc" : "cccc");
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 6, &clean_top);
	assert_int_equal(now.clean_days, STANDING_DAYS_MAX);
}

/* --- with a microphone --- */

/* What was heard of the last day's work of each of four fingers. */
static void heard_of(int listened, int full)
{
	for (int i = 1; i <= 4; i++) {
		past->tally[past->h.tallies - i].bows_listened = listened;
		past->tally[past->h.tallies - i].bows_full = full;
	}
}

/* Every top heard in four bows of five, over the days whose marks count. */
static void test_heard(void **state)
{
	(void)state;
	for (int day = 1; day <= 5; day++)
		day_of(day, 8, "cccc");
	assert_int_equal(after(5), MISSING_NOTHING);
	heard_of(5, 4);
	assert_int_equal(after(5), MISSING_NOTHING);
	assert_int_equal(now.bows_listened, 20);
	assert_int_equal(now.bows_full, 16);
	heard_of(5, 3);
	assert_int_equal(after(5), MISSING_HEARD);
	assert_int_equal(now.unit, -1);
	assert_int_equal(standing_message(&r, &now).id, M_STANDING_HEARD);
	/* It never stands before what marks say, and never makes one clean. */
	past->tally[past->h.tallies - 1].first_go = MARK_SHAKY;
	assert_int_equal(after(5), MISSING_CLEAN);
	heard_of(5, 5);
	assert_int_equal(after(5), MISSING_CLEAN);
	past->tally[past->h.tallies - 1].first_go = MARK_CLEAN;
	assert_int_equal(after(5), MISSING_NOTHING);
}

/* A few bows say nothing, nor do days that are past. */
static void test_heard_little(void **state)
{
	(void)state;
	day_of(1, 8, "cccc");
	heard_of(10, 0);
	for (int day = 2; day <= 5; day++)
		day_of(day, 8, "cccc");
	assert_int_equal(after(5), MISSING_NOTHING);
	assert_int_equal(now.bows_listened, 0);
	heard_of(1, 0);
	assert_int_equal(after(5), MISSING_NOTHING);
	assert_int_equal(now.bows_listened, 4);
	heard_of(2, 0);
	assert_int_equal(after(5), MISSING_HEARD);
	/* A recap of the stage is no work on it. */
	for (int i = 1; i <= 4; i++)
		past->tally[past->h.tallies - i].kind = BLOCK_RECAP;
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 5, NULL);
	assert_int_equal(now.bows_listened, 0);
	/* Numbers that cannot be. */
	for (int i = 1; i <= 4; i++)
		past->tally[past->h.tallies - i].kind = BLOCK_WORK;
	heard_of(INT32_MAX, -5);
	assert_int_equal(after(5), MISSING_HEARD);
	heard_of(-5, INT32_MAX);
	assert_int_equal(after(5), MISSING_NOTHING);
}

/* What is heard tonight counts tonight. */
static void test_heard_fresh(void **state)
{
	struct fresh f = { .worked = true,
		.bows = { 2, 2, 2, 2 },
		.bows_listened = 8,
		.bows_full = 6 };

	(void)state;
	for (int day = 1; day <= 5; day++)
		day_of(day, 8, "cccc");
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 5, &f);
	assert_int_equal(now.missing, MISSING_HEARD);
	f.bows_full = 7;
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 5, &f);
	assert_int_equal(now.missing, MISSING_NOTHING);
	/* Together with the session before it. */
	heard_of(2, 1);
	standing_of(&now, &r, &past->h, THIRDS, FIRST_DAY + 5, &f);
	assert_int_equal(now.bows_listened, 16);
	assert_int_equal(now.missing, MISSING_HEARD);
}

/*
 * How sharp the rule is: who is truly clean so often with each of four fingers
 * is let through by day 6 and by day 12 with these chances.  Every course of
 * twelve days is put to the rule and weighed by its chance, so the figures are
 * exact (computed from the rule itself; binomial, no source needed).
 */
static void test_odds(void **state)
{
	static const struct {
		double clean;
		int by_6, by_12; /* percent */
	} rows[] = { { .70, 18, 49 }, { .80, 42, 83 }, { .90, 78, 99 },
		{ .95, 93, 100 }, { .98, 99, 100 } };
	enum { DAYS = 12, COURSES = 1 << DAYS };
	static int first[COURSES];

	(void)state;
	for (int c = 0; c < COURSES; c++) {
		past->h.tallies = past->h.turns = past->h.sittings = 0;
		first[c] = DAYS + 1;
		for (int d = 1; d <= DAYS && first[c] > DAYS; d++) {
			day_of(d, 8, c >> (d - 1) & 1 ? "cccc" : "cccs");
			if (after(d) == MISSING_NOTHING)
				first[c] = d;
		}
	}
	for (size_t i = 0; i < sizeof(rows) / sizeof(rows[0]); i++) {
		double q = pow(rows[i].clean, 4), by_6 = 0, by_12 = 0;

		for (int c = 0; c < COURSES; c++) {
			double chance = 1;

			for (int d = 0; d < DAYS; d++)
				chance *= c >> d & 1 ? q : 1 - q;
			by_6 += first[c] <= 6 ? chance : 0;
			by_12 += first[c] <= DAYS ? chance : 0;
		}
		assert_int_equal(lround(by_6 * 100), rows[i].by_6);
		assert_int_equal(lround(by_12 * 100), rows[i].by_12);
	}
}

/* The plan says it, and the numbers to who asks why. */
static void test_said(void **state)
{
	static struct plan plan;

	(void)state;
	for (int day = 1; day <= 6; day++)
		day_of(day, 8, "cccc");
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 7, 17));
	assert_int_equal(plan.work_stage, THIRDS);
	assert_true(made_reason(&plan, M_STANDING_READY));
	assert_true(made_reason(&plan, M_STANDING_COUNTS));
	assert_true(made_reason(&plan, M_STANDING_ODDS));
	day_of(7, 8, "cscc");
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 8, 17));
	assert_true(made_reason(&plan, M_STANDING_UNIT));
	assert_true(made_reason(&plan, M_STANDING_MORE));
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, past_end)
	const struct CMUnitTest tests[] = {
		TEST(test_six_days),
		TEST(test_later_rounds),
		TEST(test_each_condition),
		TEST(test_share),
		TEST(test_share_healed),
		TEST(test_lesson),
		TEST(test_lessons_of_a_day),
		TEST(test_recap),
		TEST(test_fresh_later),
		TEST(test_lowest_rung),
		TEST(test_air),
		TEST(test_fresh),
		TEST(test_fresh_is_newest),
		TEST(test_heard),
		TEST(test_heard_little),
		TEST(test_heard_fresh),
		TEST(test_odds),
		TEST(test_said),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
