/*
 * test_plan_rules.c - making up, rungs, pain, sore fingers, and the reasons
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "fresh_past.h"

static struct plan plan;
static struct routine r;

static int setup(void **state)
{
	r = programme_cello(TONE);
	return past_begin(state);
}

static void plan_on(int day)
{
	made_plan(&plan, &r, past, made_moment(day, 17));
}

static void play(int work_turns, enum ended ended)
{
	past_play(past, &r, &plan, all_clean, NULL, work_turns, ended);
}

static void expect_order(const char *want)
{
	const struct plan_block *k = made_work(&plan);
	char got[PLAN_TURNS_MAX + 1] = "";

	for (int i = 0; k && i < k->turns; i++)
		strncat(got, r.unit[plan.turn[k->first_turn + i].unit].name, 1);
	got[strlen(want)] = '\0';
	assert_string_equal(got, want);
}

static void expect_shares(int a, int b, int c, int d)
{
	assert_int_equal(plan.share[0], a);
	assert_int_equal(plan.share[1], b);
	assert_int_equal(plan.share[2], c);
	assert_int_equal(plan.share[3], d);
}

/* --- rule F1 over sittings --- */

/* Two sittings cut off after six turns of work, and all is even again. */
static void test_cut_off_twice(void **state)
{
	(void)state;
	plan_on(FIRST_DAY);
	expect_order("123412341234");
	play(6, ENDED_UNDER_WAY);
	plan_on(FIRST_DAY + 1);
	expect_shares(3, 3, 3, 3);
	expect_order("341234123412");
	assert_true(made_reason(&plan, M_COACH_MISSED));
	play(6, ENDED_EARLY);
	plan_on(FIRST_DAY + 2);
	expect_order("123412341234");
	assert_false(made_reason(&plan, M_COACH_MISSED));
}

/* After a week nothing is owed; a whole sitting owes nothing at all. */
static void test_made_up_this_week_only(void **state)
{
	(void)state;
	plan_on(FIRST_DAY);
	play(6, ENDED_UNDER_WAY);
	plan_on(FIRST_DAY + 6);
	expect_order("3412");
	plan_on(FIRST_DAY + 7);
	expect_order("1234");
}

/* One turn each is too little for more turns: they begin, and that is all. */
static void test_owed_little(void **state)
{
	(void)state;
	r.work_on = r.no_further_than = WIDE; /* five rounds */
	plan_on(FIRST_DAY);
	play(6, ENDED_UNDER_WAY);
	plan_on(FIRST_DAY + 1);
	play(6, ENDED_UNDER_WAY); /* 3 4 1 2 3 4 */
	plan_on(FIRST_DAY + 2);
	expect_order("1234");
	play(2, ENDED_UNDER_WAY); /* 1 2 */
	plan_on(FIRST_DAY + 3);
	expect_order("3412");
	expect_shares(5, 5, 5, 5);
	play(PLAY_ALL, ENDED_WHOLE);
	plan_on(FIRST_DAY + 4);
	expect_order("3412");
}

/* Uneven turns of a whole sitting pay back what was missed. */
static void test_extra_turns_pay(void **state)
{
	int played[] = { 3, 3, 0, 0 };

	(void)state;
	plan_on(FIRST_DAY);
	past_sit(past, plan.now, "tone", ENDED_UNDER_WAY);
	past_turn(past, BLOCK_WORK, "tone", "1", 0, 6, MARK_CLEAN, true);
	past_shares(past, &r, &plan, played);
	plan_on(FIRST_DAY + 1);
	expect_shares(2, 2, 4, 4);
	expect_order("341");
	assert_true(made_reason(&plan, M_COACH_MORE));
	play(PLAY_ALL, ENDED_WHOLE);
	plan_on(FIRST_DAY + 2);
	/* Three were missed and two are paid back. */
	expect_shares(3, 3, 3, 3);
	expect_order("3412");
}

/* What all missed alike is owed to nobody, and no later turns pay for it. */
static void test_missed_alike(void **state)
{
	int one[] = { 1, 1, 1, 1 }, uneven[] = { 5, 3, 2, 2 };

	(void)state;
	plan_on(FIRST_DAY);
	past_sit(past, plan.now, "tone", ENDED_UNDER_WAY);
	past_turn(past, BLOCK_WORK, "tone", "1", 0, 6, MARK_CLEAN, true);
	past_shares(past, &r, &plan, one);
	plan_on(FIRST_DAY + 1);
	expect_order("1234");
	memcpy(plan.share, uneven, sizeof(uneven));
	past_sit(past, plan.now, "tone", ENDED_WHOLE);
	past_turn(past, BLOCK_WORK, "tone", "1", 0, 6, MARK_CLEAN, true);
	past_shares(past, &r, &plan, uneven);
	plan_on(FIRST_DAY + 2);
	expect_order("1234");
	expect_shares(3, 3, 3, 3);
	assert_false(made_reason(&plan, M_COACH_MISSED));
}

/* Nothing is made up after pain, for a hurt finger, or if the file says no. */
static void test_not_owed(void **state)
{
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17),
		.hurt = 1 << 3 };

	(void)state;
	plan_on(FIRST_DAY);
	play(6, ENDED_PAIN);
	plan_on(FIRST_DAY + 1);
	expect_order("1234");

	past->h.sittings = past->h.shares = past->h.turns = 0;
	plan_make(&plan, &w);
	assert_int_equal(plan.dropped[2], 3);
	play(PLAY_ALL, ENDED_WHOLE);
	plan_on(FIRST_DAY + 1);
	expect_order("1234");
	plan_make(&plan, &w);
	play(5, ENDED_UNDER_WAY); /* 1 2 4 1 2 */
	plan_on(FIRST_DAY + 1);
	/* 1 and 2 had two of three, 4 one; 3 owes as little as anyone. */
	expect_order("4123");

	r.make_up = MAKE_UP_NONE;
	plan_on(FIRST_DAY + 1);
	expect_order("1234");
}

/* catch_up: four weeks, and the turns that the teacher typed in. */
static void test_catch_up(void **state)
{
	const int so_far[] = { 58, 27, 10, 5 };

	(void)state;
	r.make_up = MAKE_UP_CATCH_UP;
	r.so_far_given = true;
	memcpy(r.so_far, so_far, sizeof(so_far));
	plan_on(FIRST_DAY);
	expect_shares(2, 2, 4, 4);
	expect_order("432143432143");
	for (int i = 0; i < 10; i++) {
		plan_on(FIRST_DAY + i);
		play(PLAY_ALL, ENDED_WHOLE);
	}
	int all[4] = { 58, 27, 10, 5 };
	const int want[4] = { 78, 49, 48, 45 };

	for (int i = 0; i < past->h.tallies; i++)
		if (past->tally[i].kind == BLOCK_WORK)
			all[past->tally[i].unit[0] - '1'] +=
			    past->tally[i].turns;
	for (int u = 0; u < 4; u++)
		assert_int_equal(all[u], want[u]);
}

static void test_catch_up_waits(void **state)
{
	const int so_far[] = { 58, 27, 10, 5 };

	(void)state;
	r.make_up = MAKE_UP_CATCH_UP;
	r.so_far_given = true;
	memcpy(r.so_far, so_far, sizeof(so_far));
	r.work_on = WIDE;
	plan_on(FIRST_DAY);
	expect_shares(5, 5, 5, 5);
	assert_true(made_reason(&plan, M_COACH_CATCH_UP_WIDE));
	play(PLAY_ALL, ENDED_WHOLE);
	past_swing(past, FIRST_DAY + 1, FIRST_DAY + 12);
	plan_on(FIRST_DAY + 13);
	expect_shares(5, 5, 5, 5);
	plan_on(FIRST_DAY + 14);
	assert_true(plan.share[3] > plan.share[0]);

	past_note(past, FIRST_DAY, NOTE_SKIN, 2);
	past_swing(past, FIRST_DAY + 14, FIRST_DAY + 26);
	plan_on(FIRST_DAY + 20);
	expect_shares(5, 5, 5, 5);
	assert_true(made_reason(&plan, M_COACH_CATCH_UP_HURT));
	plan_on(FIRST_DAY + 28);
	assert_true(plan.share[3] > plan.share[0]);
}

/* --- rule F3 --- */

/* A round of work of the last sitting, marks as c, s or -. */
static void round_of(const char *marks, int round, int pulses)
{
	for (int u = 0; marks[u]; u++)
		past_turn(past, BLOCK_WORK, r.stage[r.work_on].id,
		    r.unit[u].name, round, pulses,
		    marks[u] == 'c'	  ? MARK_CLEAN
			: marks[u] == 's' ? MARK_SHAKY
					  : MARK_NONE,
		    round == 0);
}

static void expect_start(int pulses, int clean_rounds, enum message_id why)
{
	plan_on(FIRST_DAY + 1);
	assert_int_equal(made_work(&plan)->pulses, pulses);
	assert_int_equal(plan.clean_rounds, clean_rounds);
	assert_true(made_reason(&plan, why));
}

static void sit(void)
{
	past_sit(past, made_moment(FIRST_DAY, 17), r.stage[r.work_on].id,
	    ENDED_WHOLE);
}

static void test_new_stage_starts(void **state)
{
	(void)state;
	expect_start(6, 0, M_COACH_RUNG_NEW);
	r.work_on = WIDE;
	expect_start(4, 0, M_COACH_RUNG_NEW);
	r.work_on = TONE;
	r.ladder_count = 1;
	expect_start(4, 0, M_COACH_RUNG_NEW);
}

/* Up to 8 for the third round, and one finger shaky there: back to 6. */
static void test_back_to_six(void **state)
{
	(void)state;
	sit();
	round_of("cccc", 0, 6);
	round_of("cccc", 1, 6);
	round_of("cccs", 2, 8);
	expect_start(6, 0, M_COACH_RUNG_LOWER);
}

static void test_all_clean_goes_on(void **state)
{
	(void)state;
	sit();
	round_of("cccc", 0, 6);
	round_of("cccs", 1, 6);
	round_of("cccc", 2, 6);
	expect_start(6, 1, M_COACH_RUNG_CLEAN);
	assert_true(made_reason(&plan, M_COACH_RUNG_NEXT));
	round_of("cccc", 3, 8);
	expect_start(8, 1, M_COACH_RUNG_CLEAN);
	assert_false(made_reason(&plan, M_COACH_RUNG_NEXT));
}

/* An unmarked turn: not all clean, and nothing falls. */
static void test_unmarked(void **state)
{
	(void)state;
	sit();
	round_of("cccc", 0, 6);
	round_of("cc-c", 1, 6);
	expect_start(6, 0, M_COACH_RUNG_KEPT);
}

static void test_cut_off_round(void **state)
{
	(void)state;
	/* Three in one hour are no hurry here. */
	r.per_day = 3;
	r.hours_apart = 0;
	sit();
	round_of("cccc", 0, 8);
	round_of("cc", 1, 8);
	expect_start(8, 0, M_COACH_RUNG_KEPT);
	sit();
	round_of("cs", 0, 8);
	expect_start(6, 0, M_COACH_RUNG_LOWER);
	/* A turn broken off is not clean, whatever its mark. */
	sit();
	round_of("cccc", 0, 8);
	past->turn[past->h.turns - 1].bows_done = 1;
	expect_start(8, 0, M_COACH_RUNG_KEPT);
}

/* A turn that sleep broke off counts by its replay. */
static void test_replayed(void **state)
{
	(void)state;
	sit();
	round_of("c-", 0, 6);
	past->turn[past->h.turns - 1].bows_done = 1;
	past_turn(past, BLOCK_WORK, "tone", "2", 0, 6, MARK_CLEAN, true);
	past_turn(past, BLOCK_WORK, "tone", "3", 0, 6, MARK_CLEAN, true);
	past_turn(past, BLOCK_WORK, "tone", "4", 0, 6, MARK_CLEAN, true);
	expect_start(6, 1, M_COACH_RUNG_CLEAN);
	past->turn[past->h.turns - 1].bows_done = 1;
	expect_start(6, 0, M_COACH_RUNG_KEPT);
}

static void test_lowest(void **state)
{
	(void)state;
	sit();
	round_of("ssss", 0, 4);
	expect_start(4, 0, M_COACH_RUNG_LOWEST);
}

/* Work of another stage and recaps of this one say nothing about its rung. */
static void test_other_rounds(void **state)
{
	(void)state;
	sit();
	round_of("cccc", 0, 8);
	past_sit(past, made_moment(FIRST_DAY, 20), "thirds", ENDED_WHOLE);
	past_turn(past, BLOCK_RECAP, "tone", "1", 0, 6, MARK_SHAKY, false);
	past_turn(past, BLOCK_WORK, "thirds", "1", 0, 4, MARK_SHAKY, true);
	expect_start(8, 1, M_COACH_RUNG_CLEAN);
}

/* With a finger out a round is whole without it. */
static void test_round_without_hurt(void **state)
{
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17),
		.hurt = 1 << 2 };

	(void)state;
	plan_make(&plan, &w);
	play(PLAY_ALL, ENDED_WHOLE);
	expect_start(6, 1, M_COACH_RUNG_CLEAN);
}

/* Turns of long ago are gone; the first go of the last day is known. */
static void test_long_ago(void **state)
{
	(void)state;
	sit();
	round_of("cccc", 0, 8);
	past->h.turns = 0;
	expect_start(8, 1, M_COACH_RUNG_CLEAN);
	past->tally[past->h.tallies - 1].first_go = MARK_SHAKY;
	expect_start(6, 0, M_COACH_RUNG_LOWER);
}

/* Two days each half clean are not one that was all clean. */
static void test_long_ago_halves(void **state)
{
	(void)state;
	for (int day = 0; day < 2; day++) {
		past_sit(past, made_moment(FIRST_DAY - 40 + day, 17), "tone",
		    ENDED_WHOLE);
		for (int u = 0; u < r.units; u++)
			past_turn(past, BLOCK_RECAP, "thirds", r.unit[u].name,
			    0, 8, u / 2 == day ? MARK_CLEAN : MARK_SHAKY, true);
	}
	past->h.turns = 0;
	past_swing(past, FIRST_DAY - 38, FIRST_DAY - 1);
	plan_on(FIRST_DAY);
	assert_int_equal(plan.block[2].stage, THIRDS);
	assert_int_equal(plan.block[2].pulses, 6);
	for (int i = 0; i < past->h.tallies; i++)
		past->tally[i].first_go = MARK_CLEAN;
	plan_on(FIRST_DAY);
	assert_int_equal(plan.block[2].pulses, 8);
}

/* The stage was renamed in a new edition. */
static void test_renamed(void **state)
{
	(void)state;
	plan_on(FIRST_DAY);
	play(PLAY_ALL, ENDED_WHOLE);
	strcpy(r.stage[TONE].was, "tone");
	strcpy(r.stage[TONE].id, "whole-tone");
	expect_start(6, 1, M_COACH_RUNG_CLEAN);
	assert_int_equal(plan.day_on_stage, 2);
}

/* --- pain and sore places --- */

static void test_pain_today(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY, NOTE_PAIN, 0);
	plan_on(FIRST_DAY);
	assert_int_equal(plan.verdict, VERDICT_REST_TODAY);
	assert_int_equal(plan.blocks, 0);
	assert_int_equal(plan.length_ms, 0);
	assert_true(made_reason(&plan, M_COACH_REST_TODAY));
	/* 03:59 is still that day, 04:00 is not. */
	made_plan(&plan, &r, past,
	    (struct moment) { (int64_t)(FIRST_DAY + 1) * DAY_S + 14399, 0 });
	assert_int_equal(plan.verdict, VERDICT_REST_TODAY);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 4));
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
}

/* Dated ahead by a flight west, or by a clock put right: it hurt all the same. */
static void test_pain_dated_ahead(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY + 1, NOTE_PAIN, 0);
	plan_on(FIRST_DAY);
	assert_int_equal(plan.verdict, VERDICT_REST_TODAY);
	plan_on(FIRST_DAY + 2);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_int_equal(plan.cap_ms, 180000);
	/* Years ahead was a wrong clock: nothing waits for it. */
	plan_on(FIRST_DAY - 400);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_int_equal(plan.cap_ms, 300000);
}

/* Three clear days: 60 % of the cap, the lowest rung, nothing wide. */
static void test_clear_days(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY, NOTE_PAIN, 0);
	for (int day = 1; day <= 3; day++) {
		plan_on(FIRST_DAY + day);
		assert_int_equal(plan.cap_ms, 180000);
		assert_true(plan.length_ms <= 180000);
		for (int b = 0; b < plan.blocks; b++) {
			assert_int_not_equal(plan.block[b].stage, WIDE);
			assert_int_not_equal(plan.block[b].stage, THIRDS);
			if (plan.block[b].kind != BLOCK_AIR)
				assert_int_equal(plan.block[b].pulses, 4);
		}
		assert_int_equal(made_work(&plan)->stage, TONE);
		assert_true(made_reason(&plan, M_COACH_EASED));
		/* That says why the rung is low; nothing else is said of it. */
		assert_false(made_reason(&plan, M_COACH_RUNG_NEW));
		assert_false(made_reason(&plan, M_WHERE_RUNG_AWAY));
		assert_true(made_caution(&plan, M_COACH_CAUTION_PAIN));
	}
	plan_on(FIRST_DAY + 4);
	assert_int_equal(plan.cap_ms, 300000);
	assert_int_equal(plan.blocks, 4);
}

/* A wide stage rests on those days; the air stage gets 108 seconds. */
static void test_clear_days_wide(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY, NOTE_PAIN, 0);
	r.work_on = THIRDS;
	plan_on(FIRST_DAY + 1);
	assert_int_equal(plan.blocks, 1);
	assert_int_equal(plan.block[0].kind, BLOCK_AIR);
	assert_int_equal(plan.turns, 1);
	assert_true(made_reason(&plan, M_COACH_NO_WORK));
	r.work_on = AIR;
	plan_on(FIRST_DAY + 1);
	assert_int_equal(plan.turns, 5);
	assert_int_equal(plan.length_ms, 108000);
}

/* Two pain days in fourteen: not before somebody was asked. */
static void test_pain_twice(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY, NOTE_PAIN, 0);
	past_note(past, FIRST_DAY, NOTE_PAIN, 0);
	plan_on(FIRST_DAY + 1);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	past_note(past, FIRST_DAY + 13, NOTE_PAIN, 0);
	plan_on(FIRST_DAY + 13);
	assert_int_equal(plan.verdict, VERDICT_ASK_FIRST);
	assert_int_equal(plan.blocks, 0);
	assert_true(made_caution(&plan, M_COACH_CAUTION_ASK));
	/* Waiting is no answer. */
	plan_on(FIRST_DAY + 100);
	assert_int_equal(plan.verdict, VERDICT_ASK_FIRST);
	r.seen = true;
	plan_on(FIRST_DAY + 100);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	plan_on(FIRST_DAY + 13);
	assert_int_equal(plan.verdict, VERDICT_REST_TODAY);
	r.seen = false;
	past->note[2].day = FIRST_DAY + 14;
	plan_on(FIRST_DAY + 15);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
}

static void plan_hurt(uint32_t hurt, bool air_only)
{
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17),
		.hurt = hurt,
		.air_only = air_only };

	plan_make(&plan, &w);
}

/* Its turns go and nobody gets them: 28 + 44 + 44 + 8 + 3 x 36 = 232. */
static void test_hurt_finger(void **state)
{
	(void)state;
	plan_hurt(1 << 3, false);
	expect_order("124124124");
	expect_shares(3, 3, 3, 3);
	assert_int_equal(plan.dropped[2], 3);
	assert_int_equal(plan.dropped[0], 0);
	assert_int_equal(plan.blocks, 4);
	assert_int_equal(plan.block[1].turns, 3);
	assert_int_equal(plan.length_ms, 232000);
	assert_int_equal(plan.bows, 30);
	assert_true(made_reason(&plan, M_COACH_HURT));
	assert_true(made_caution(&plan, M_COACH_CAUTION_SKIN));
}

static void test_all_fingers_hurt(void **state)
{
	(void)state;
	plan_hurt(30, false);
	assert_int_equal(plan.blocks, 1);
	assert_int_equal(plan.block[0].kind, BLOCK_AIR);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_true(made_reason(&plan, M_COACH_HURT_ALL));
	r.stages = 5;
	memmove(&r.stage[0], &r.stage[1], 5 * sizeof(r.stage[0]));
	r.work_on = r.no_further_than = 3;
	plan_hurt(30, false);
	assert_int_equal(plan.blocks, 0);
	assert_int_equal(plan.verdict, VERDICT_REST_TODAY);
}

/* Three turns more for two fingers, and one of the others hurt. */
static void test_hurt_among_uneven(void **state)
{
	const int so_far[] = { 58, 27, 10, 5 };

	(void)state;
	r.make_up = MAKE_UP_INTERRUPTED;
	memcpy(r.so_far, so_far, sizeof(so_far));
	int played[] = { 3, 3, 0, 0 };

	plan_on(FIRST_DAY - 1);
	past_sit(past, plan.now, "tone", ENDED_UNDER_WAY);
	past_turn(past, BLOCK_WORK, "tone", "1", 0, 6, MARK_CLEAN, true);
	past_shares(past, &r, &plan, played);
	plan_hurt(1 << 1, false); /* 2 2 4 4 without finger 1 */
	expect_shares(2, 2, 4, 4);
	expect_order("3423434234");
	const struct plan_block *k = made_work(&plan);

	assert_int_equal(k->rounds, 4);
	assert_int_equal(plan.turn[k->first_turn + 9].round, 3);
	plan_hurt(1 << 1 | 1 << 4, false); /* 2 and 3 alternate, equal */
	expect_order("3232");
	assert_int_equal(plan.dropped[2], 2);
	assert_true(made_reason(&plan, M_COACH_APART));
	/* 3 alone would play without a rest, so it rests too. */
	plan_hurt(1 << 1 | 1 << 2 | 1 << 4, false);
	assert_null(made_work(&plan));
	assert_int_equal(plan.dropped[2], 4);
	assert_int_equal(plan.blocks, 1);
	assert_int_equal(plan.block[0].kind, BLOCK_AIR);
	assert_true(made_reason(&plan, M_COACH_HURT_ALL));
}

static void test_pairs_and_strings(void **state)
{
	(void)state;
	r.take = TAKE_PAIRS;
	r.unit[0] = (struct unit) { "0-1", 0, 1 };
	r.unit[1] = (struct unit) { "1-2", 1, 2 };
	r.unit[2] = (struct unit) { "2-3", 2, 3 };
	r.unit[3] = (struct unit) { "3-4", 3, 4 };
	plan_hurt(1 << 1, false);
	expect_shares(3, 3, 3, 3);
	assert_int_equal(plan.dropped[0], 3);
	assert_int_equal(plan.dropped[1], 3);
	assert_int_equal(plan.dropped[2], 0);
	assert_int_equal(plan.dropped[3], 0);
	/* Strings are no fingers. */
	r.take = TAKE_STRINGS;
	plan_hurt(1 << 1, false);
	assert_int_equal(plan.dropped[0], 0);
}

static void test_air_only(void **state)
{
	(void)state;
	plan_hurt(0, true);
	assert_int_equal(plan.blocks, 1);
	assert_int_equal(plan.length_ms, 28000);
	assert_true(made_reason(&plan, M_COACH_AIR_ONLY));
	past_note(past, FIRST_DAY, NOTE_SORE, 0);
	plan_on(FIRST_DAY);
	assert_true(plan.air_only);
	plan_on(FIRST_DAY + 1);
	assert_false(plan.air_only);
}

/* A sore finger stays out for the rest of the day. */
static void test_skin_today(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY, NOTE_SKIN, 2);
	plan_on(FIRST_DAY);
	assert_int_equal(plan.hurt, 1 << 2);
	assert_int_equal(plan.dropped[1], 3);
	plan_on(FIRST_DAY - 1);
	assert_int_equal(plan.hurt, 1 << 2);
	plan_on(FIRST_DAY + 1);
	assert_int_equal(plan.hurt, 0);
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, past_end)
	const struct CMUnitTest tests[] = {
		TEST(test_cut_off_twice),
		TEST(test_made_up_this_week_only),
		TEST(test_owed_little),
		TEST(test_extra_turns_pay),
		TEST(test_missed_alike),
		TEST(test_not_owed),
		TEST(test_catch_up),
		TEST(test_catch_up_waits),
		TEST(test_new_stage_starts),
		TEST(test_back_to_six),
		TEST(test_all_clean_goes_on),
		TEST(test_unmarked),
		TEST(test_cut_off_round),
		TEST(test_replayed),
		TEST(test_lowest),
		TEST(test_other_rounds),
		TEST(test_round_without_hurt),
		TEST(test_long_ago),
		TEST(test_long_ago_halves),
		TEST(test_renamed),
		TEST(test_pain_today),
		TEST(test_pain_dated_ahead),
		TEST(test_clear_days),
		TEST(test_clear_days_wide),
		TEST(test_pain_twice),
		TEST(test_hurt_finger),
		TEST(test_all_fingers_hurt),
		TEST(test_hurt_among_uneven),
		TEST(test_pairs_and_strings),
		TEST(test_air_only),
		TEST(test_skin_today),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
