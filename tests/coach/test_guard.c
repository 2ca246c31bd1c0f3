/*
 * test_guard.c - signs of hurry, and what they change
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/coach/guard.h"
#include "fresh_past.h"

enum { LIVES = 3000, SITTINGS = 12 };

static struct routine r;
static struct plan plan;
static struct guard guard;

static int begin(void **state)
{
	r = programme_cello(TONE);
	return past_begin(state);
}

/* A sitting of five minutes at a minute of a day. */
static struct past_sitting *sat(int day, int minute, enum ended ended)
{
	struct past_sitting *s = past_sit(past,
	    (struct moment) { (int64_t)day * DAY_S + minute * 60, 0 },
	    r.stage[r.work_on].id, ended);

	s->length_ms = 300000;
	past_see(s, r.stage[r.work_on].id, false);
	return s;
}

static void look(int day)
{
	guard_of(&guard, &r, &past->h, r.work_on, day);
}

/* Three hours from the end of the one before. */
static void test_early(void **state)
{
	(void)state;
	sat(FIRST_DAY, 9 * 60, ENDED_WHOLE);
	sat(FIRST_DAY, 12 * 60 + 5, ENDED_WHOLE);
	look(FIRST_DAY);
	assert_int_equal(guard.early, 0);
	sat(FIRST_DAY + 1, 9 * 60, ENDED_WHOLE);
	sat(FIRST_DAY + 1, 12 * 60 + 4, ENDED_EARLY);
	look(FIRST_DAY + 1);
	assert_int_equal(guard.early, 1);
	assert_int_equal(guard.signs, 1);
	assert_false(guard.hurried);
	/* Sleep and waiting count as a pause from the end that was said. */
	past->sitting[3].ended_utc = past->sitting[3].began.utc + 7200;
	sat(FIRST_DAY + 1, 17 * 60, ENDED_WHOLE)->ended_utc = 0;
	look(FIRST_DAY + 1);
	assert_int_equal(guard.early, 2);
	/* A window of seven days, today included. */
	look(FIRST_DAY + 7);
	assert_int_equal(guard.early, 2);
	look(FIRST_DAY + 8);
	assert_int_equal(guard.signs, 0);
	look(FIRST_DAY);
	assert_int_equal(guard.signs, 0);
}

/* What the computer broke off may be begun again at once. */
static void test_broken_off(void **state)
{
	static const enum ended by_itself[] = { ENDED_UNDER_WAY, ENDED_INPUT,
		ENDED_NO_KEY };

	(void)state;
	r.per_day = 9;
	for (int i = 0; i < 3; i++) {
		sat(FIRST_DAY + i, 540, by_itself[i]);
		sat(FIRST_DAY + i, 546, ENDED_WHOLE);
	}
	look(FIRST_DAY + 3);
	assert_int_equal(guard.signs, 0);
}

/* A clock that was set back, and sittings in which nothing was played. */
static void test_no_signs(void **state)
{
	(void)state;
	sat(FIRST_DAY, 700, ENDED_WHOLE);
	sat(FIRST_DAY, 600, ENDED_WHOLE);
	past_sit(past, made_moment(FIRST_DAY, 17), "tone", ENDED_NOT_TODAY);
	past_sit(past, made_moment(FIRST_DAY, 17), "tone", ENDED_NOT_TODAY);
	look(FIRST_DAY);
	assert_int_equal(guard.signs, 0);
}

static void test_beyond(void **state)
{
	(void)state;
	r.hours_apart = 0;
	for (int i = 0; i < 4; i++)
		sat(FIRST_DAY, 500 + 100 * i, ENDED_WHOLE);
	look(FIRST_DAY);
	assert_int_equal(guard.beyond, 2);
	assert_false(guard.hurried);
	r.stage[TONE].patience = true;
	look(FIRST_DAY);
	assert_int_equal(guard.needed, 2);
	assert_true(guard.hurried);
	r.per_day = 4;
	look(FIRST_DAY);
	assert_int_equal(guard.beyond, 0);
}

/* Twice on a day is once. */
static void test_later(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY, NOTE_LATER, 0);
	past_note(past, FIRST_DAY, NOTE_LATER, 0);
	look(FIRST_DAY);
	assert_int_equal(guard.later, 1);
	assert_int_equal(guard.signs, 2);
	assert_false(guard.hurried);
	past_note(past, FIRST_DAY + 1, NOTE_LATER, 0);
	past_note(past, FIRST_DAY + 1, NOTE_QUESTION, 0);
	look(FIRST_DAY + 1);
	assert_int_equal(guard.signs, 4);
	assert_true(guard.hurried);
	/* It is nothing that hurts. */
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 17));
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_false(plan.air_only);
}

/* --- with a microphone --- */

/* A turn of a day that was heard: so many bows, so many with every top. */
static struct past_turn *heard(int day, enum mark mark, int listened, int full)
{
	struct past_turn *t;

	sat(day, 540, ENDED_WHOLE);
	past_turn(past, BLOCK_WORK, "tone", "1", 0, 8, mark, false);
	t = &past->turn[past->h.turns - 1];
	t->bows_listened = listened;
	t->bows_full = full;
	return t;
}

/* Clean marks, and in no bow every top was heard: two of a day are a sign. */
static void test_unheard(void **state)
{
	struct past_turn *second;

	(void)state;
	r.per_day = 9;
	r.hours_apart = 0;
	heard(FIRST_DAY, MARK_CLEAN, 2, 0);
	look(FIRST_DAY);
	assert_int_equal(guard.unheard, 0);
	second = heard(FIRST_DAY, MARK_CLEAN, 1, 0);
	look(FIRST_DAY);
	assert_int_equal(guard.unheard, 1);
	assert_int_equal(guard.signs, 1);
	/* Not when it was not listened to, or was marked so, or one was full. */
	second->bows_listened = 0;
	look(FIRST_DAY);
	assert_int_equal(guard.signs, 0);
	second->bows_listened = 2;
	second->mark = MARK_SHAKY;
	look(FIRST_DAY);
	assert_int_equal(guard.signs, 0);
	second->mark = MARK_NONE;
	look(FIRST_DAY);
	assert_int_equal(guard.signs, 0);
	second->mark = MARK_CLEAN;
	second->bows_full = 1;
	look(FIRST_DAY);
	assert_int_equal(guard.signs, 0);
}

/* However wrong a microphone is, it alone makes no day slower. */
static void test_unheard_always(void **state)
{
	(void)state;
	r.per_day = 9;
	r.hours_apart = 0;
	r.stage[TONE].patience = true;
	for (int day = 0; day < 7; day++)
		for (int i = 0; i < 3; i++)
			heard(FIRST_DAY + day, MARK_CLEAN, 2, 0);
	look(FIRST_DAY + 6);
	assert_int_equal(guard.unheard, 7);
	assert_int_equal(guard.signs, 1);
	assert_false(guard.hurried);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 7, 17));
	assert_true(made_reason(&plan, M_COACH_HURRY_UNHEARD));
	assert_false(plan.guard.hurried);
	look(FIRST_DAY + 13);
	assert_int_equal(guard.signs, 0);
	past_note(past, FIRST_DAY + 6, NOTE_LATER, 0);
	look(FIRST_DAY + 6);
	assert_int_equal(guard.signs, 3);
	assert_true(guard.hurried);
}

/* --- what it changes --- */

static void test_slower_day(void **state)
{
	(void)state;
	r.stage[TONE].say = "Let it swing.";
	for (int i = 0; i < 2; i++) {
		sat(FIRST_DAY + i, 540, ENDED_WHOLE);
		for (int u = 0; u < 4; u++)
			past_turn(past, BLOCK_WORK, "tone", r.unit[u].name, 0,
			    8, MARK_CLEAN, true);
	}
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 2, 17));
	assert_int_equal(made_work(&plan)->pulses, 8);
	assert_false(made_caution(&plan, M_COACH_CAUTION_HURRY));

	past_note(past, FIRST_DAY, NOTE_LATER, 0);
	past_note(past, FIRST_DAY + 1, NOTE_LATER, 0);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 2, 17));
	assert_true(plan.guard.hurried);
	/* The first go keeps its rung; what comes after it does not. */
	assert_int_equal(made_work(&plan)->pulses, 8);
	assert_int_equal(plan.clean_rounds, 0);
	assert_true(plan.climbed);
	assert_true(plan.slower);
	assert_true(made_reason(&plan, M_COACH_HURRY_AFTER));
	assert_true(made_reason(&plan, M_COACH_HURRY_SIGNS));
	assert_true(made_caution(&plan, M_COACH_CAUTION_HURRY));
	assert_true(made_caution(&plan, M_COACH_CAUTION_SAY));
	/* Two recaps of 56 s and the air are 140; a third makes 196 of 200. */
	assert_true(plan.length_ms <= plan.cap_ms);
}

/* A later session of the day begins lower; the next day does not. */
static void test_slower_twice(void **state)
{
	(void)state;
	past_note(past, FIRST_DAY, NOTE_LATER, 0);
	past_note(past, FIRST_DAY + 1, NOTE_LATER, 0);
	sat(FIRST_DAY + 2, 540, ENDED_WHOLE);
	for (int round = 0; round < 3; round++)
		for (int u = 0; u < 4; u++)
			past_turn(past, BLOCK_WORK, "tone", r.unit[u].name,
			    round, round ? 6 : 8, MARK_CLEAN, round == 0);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 2, 17));
	assert_int_equal(made_work(&plan)->pulses, 6);
	assert_false(plan.slower);
	assert_true(made_reason(&plan, M_COACH_HURRY_RUNG));
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 3, 17));
	assert_int_equal(made_work(&plan)->pulses, 8);
	assert_true(plan.slower);
	/* A second session of the slower day changes nothing for the next. */
	sat(FIRST_DAY + 2, 1140, ENDED_WHOLE);
	for (int u = 0; u < 4; u++)
		past_turn(past, BLOCK_WORK, "tone", r.unit[u].name, 0, 6,
		    MARK_CLEAN, false);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 3, 17));
	assert_int_equal(made_work(&plan)->pulses, 8);
	/* The slow rounds were not all clean: one lower than the first go. */
	past->turn[past->h.turns - 1].mark = MARK_SHAKY;
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 3, 17));
	assert_int_equal(made_work(&plan)->pulses, 6);
}

/* 28 + 3 x 56 = 196 s of recap are two thirds of 300. */
static void test_two_thirds(void **state)
{
	(void)state;
	r.work_on = LETTING_GO;
	sat(FIRST_DAY, 540, ENDED_WHOLE);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 17));
	assert_int_equal(plan.blocks, 4);
	past_note(past, FIRST_DAY, NOTE_LATER, 0);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 17));
	assert_int_equal(plan.blocks, 5);
	assert_int_equal(made_work(&plan)->rounds, 2);
	assert_int_equal(plan.length_ms, 300000);
	r.recap_num = 0;
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 17));
	assert_int_equal(plan.blocks, 2);
}

/* --- another stage for today --- */

static void plan_wished(int stage, int day)
{
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(day, 17),
		.marking = MARKING_TURN,
		.stage = stage + 1 };

	plan_make(&plan, &w);
}

static void test_wished(void **state)
{
	(void)state;
	r.no_further_than = SEMITONE;
	plan_wished(WIDE, FIRST_DAY);
	assert_int_equal(plan.work_stage, WIDE);
	assert_int_equal(made_work(&plan)->stage, WIDE);
	plan_wished(SEMITONE, FIRST_DAY);
	assert_int_equal(plan.work_stage, SEMITONE);
	plan_wished(LETTING_GO, FIRST_DAY);
	assert_int_equal(plan.work_stage, TONE);
	plan_wished(-1, FIRST_DAY);
	assert_int_equal(plan.work_stage, TONE);
	/* After 40 days it is the first stage, whatever was wished. */
	sat(FIRST_DAY, 540, ENDED_WHOLE);
	plan_wished(SEMITONE, FIRST_DAY + 40);
	assert_int_equal(plan.work_stage, AIR);
	/* After ten days an earlier one may be worked on, at the lowest rung. */
	plan_wished(WIDE, FIRST_DAY + 10);
	assert_int_equal(plan.work_stage, WIDE);
	assert_int_equal(made_work(&plan)->pulses, 4);
	assert_true(plan.cap_ms == 180000);
}

/* --- any life --- */

/* More signs never give a higher rung to begin with. */
static void test_any_life(void **state)
{
	(void)state;
	seeded_begin("test_guard");
	for (int n = 0; n < LIVES; n++) {
		int day = FIRST_DAY;

		memset(&past->h.sittings, 0, sizeof(past->h.sittings));
		past->h.turns = past->h.tallies = past->h.shares = 0;
		past->h.notes = 0;
		r = programme_cello(seeded(WIDE, LETTING_GO));
		r.cap_ms = seeded(60, 900) * 1000;
		r.per_day = seeded(1, 3);
		r.recap_num = seeded(0, 1);
		r.recap_den = seeded(1, 4);
		for (int i = 0; i < SITTINGS; i++) {
			static struct plan slow;
			const struct plan_block *a, *b;

			made_plan(
			    &plan, &r, past, made_moment(day, 6 + i % 12));
			past_note(past, day, NOTE_LATER, 0);
			past_note(past, day - 1, NOTE_LATER, 0);
			made_plan(
			    &slow, &r, past, made_moment(day, 6 + i % 12));
			past->h.notes -= 2;
			assert_true(slow.guard.hurried);
			assert_true(slow.guard.signs >= plan.guard.signs);
			assert_true(
			    slow.length_ms <= slow.cap_ms || slow.blocks == 0);
			a = made_work(&plan);
			b = made_work(&slow);
			/* Unless the week's load made it slower already. */
			if (a && b && !made_reason(&plan, M_COACH_LOAD_LOWEST))
				assert_true(b->pulses <= a->pulses);
			past_play(past, &r, &plan, all_clean, NULL,
			    seeded(0, 5) ? PLAY_ALL : seeded(0, 6),
			    (enum ended)seeded(0, 3));
			day += seeded(0, 2);
		}
	}
}

int main(void)
{
#define TEST(f) cmocka_unit_test_setup_teardown(f, begin, past_end)
	const struct CMUnitTest tests[] = { TEST(test_early),
		TEST(test_broken_off), TEST(test_no_signs), TEST(test_beyond),
		TEST(test_later), TEST(test_unheard), TEST(test_unheard_always),
		TEST(test_slower_day), TEST(test_slower_twice),
		TEST(test_two_thirds), TEST(test_wished), TEST(test_any_life) };

	return cmocka_run_group_tests(tests, NULL, NULL);
}
