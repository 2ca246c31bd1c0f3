/*
 * test_plan_load.c - no finger comes over its week by what is planned
 *
 * First what a long week of the cello programme is eased by, step by step;
 * then random routines, each lived for weeks with sittings at any hour, whose
 * plans are played as they stand and with every rung that can be gained.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/coach/load.h"
#include "fewer.h"
#include "made.h"

enum { LIVES = 400, QUICK_LIVES = 40, SITTINGS = 40 };

static struct past *past;
static struct routine r;
static struct plan plan;

static void begin(int stage)
{
	free(past);
	past = past_new();
	r = programme_cello(stage);
}

/* A roll-up of something slid earlier. */
static void slid(int day, const char *unit, double m, int pulses)
{
	struct tally *t = &past->tally[past->h.tallies++];

	*t = (struct tally) { .day = day,
		.kind = BLOCK_WORK,
		.slide_um = (int64_t)(m * 1e6),
		.pulses = pulses };
	strcpy(t->stage, "/elsewhere");
	strcpy(t->unit, unit);
}

static void plan_at(int day, int hour)
{
	made_plan(&plan, &r, past, made_moment(day, hour));
}

/* Played before, so that the rung is the highest and there are recaps. */
static void lived(int sessions, int day, int pulses)
{
	for (int i = 0; i < sessions; i++) {
		struct past_sitting *s = past_sit(past,
		    made_moment(day + i, 17), r.stage[r.work_on].id,
		    ENDED_WHOLE);

		s->length_ms = 292000;
		for (int u = 0; u < 4; u++)
			past_turn(past, BLOCK_WORK, r.stage[r.work_on].id,
			    r.unit[u].name, 0, pulses, MARK_CLEAN, true);
	}
}

static void test_nothing_eased(void **state)
{
	(void)state;
	begin(TONE);
	plan_at(FIRST_DAY, 17);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_false(made_reason(&plan, M_COACH_LOAD_OVER_PULSES));
	assert_true(made_reason(&plan, M_COACH_LOAD_FINGER));
	assert_int_equal(plan.length_ms, 292000);
}

/* What a finger had elsewhere is nothing to a routine that leaves it out. */
static void test_finger_left_out(void **state)
{
	(void)state;
	begin(TONE);
	r.units = 3; /* fingers 1 to 3 */
	slid(FIRST_DAY - 1, "4", 140, 500);
	plan_at(FIRST_DAY, 17);
	assert_false(made_reason(&plan, M_COACH_LOAD_OVER_METRES));
	assert_false(made_reason(&plan, M_COACH_LOAD_OVER_PULSES));
	assert_int_equal(made_work(&plan)->pulses, 6);
	/* For one that plays it is. */
	slid(FIRST_DAY - 1, "3", 140, 500);
	plan_at(FIRST_DAY, 17);
	assert_true(made_reason(&plan, M_COACH_LOAD_OVER_METRES));
}

/*
 * A session is 8 pulses of each of two recaps at 4 and 6 bows of work, 64 at 8
 * pulses; 48 with two rounds, 40 with one recap less, 24 with one round, 16
 * with that alone, and 8 when it is at 4.  480 are allowed, and 148 m, of which
 * a wide turn takes 2.5.
 */
static void test_steps(void **state)
{
	static const struct {
		double m;
		int pulses;
		enum message_id step;
		int work_pulses, rounds;
	} steps[] = {
		{ 0.001, 416, M_NONE, 8, 3 },
		{ 0.001, 417, M_COACH_LOAD_SHORT, 8, 2 },
		{ 0.001, 440, M_COACH_LOAD_SHORT, 8, 2 },
		{ 0.001, 441, M_COACH_LOAD_SHORT, 8, 1 },
		{ 0.001, 464, M_COACH_LOAD_SHORT, 8, 1 },
		{ 0.001, 465, M_COACH_LOAD_LOWEST, 4, 1 },
		{ 0.001, 472, M_COACH_LOAD_LOWEST, 4, 1 },
		{ 0.001, 473, M_COACH_LOAD_AIR, 0, 0 },
		{ 120, 0, M_NONE, 8, 3 },
		{ 147.5, 0, M_COACH_LOAD_AIR, 0, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(steps) / sizeof(steps[0]); i++) {
		begin(TONE);
		r.stage[THIRDS].start_pulses = 4;
		slid(FIRST_DAY - 2, "/1", steps[i].m, steps[i].pulses);
		lived(3, FIRST_DAY - 3, 8);
		plan_at(FIRST_DAY, 17);
		const struct plan_block *work = made_work(&plan);

		assert_int_equal(plan.verdict, VERDICT_PRACTISE);
		assert_int_equal(work ? work->rounds : 0, steps[i].rounds);
		assert_int_equal(work ? work->pulses : 0, steps[i].work_pulses);
		if (steps[i].step != M_NONE)
			assert_true(made_reason(&plan, steps[i].step));
		assert_int_equal(steps[i].step != M_NONE,
		    made_reason(&plan, M_COACH_LOAD_OVER_PULSES) ||
			made_reason(&plan, M_COACH_LOAD_OVER_METRES));
	}
}

/*
 * At 6, where one round more leads up to 8: twice 8 of recaps, one round at 6
 * and two at 8 are 60, and 52 when it stays.
 */
static void test_no_climb(void **state)
{
	static const int had[] = { 420, 421, 428, 429 };
	static const enum message_id step[] = { M_NONE, M_COACH_LOAD_NO_CLIMB,
		M_COACH_LOAD_NO_CLIMB, M_COACH_LOAD_SHORT };

	(void)state;
	for (int i = 0; i < 4; i++) {
		begin(TONE);
		r.stage[THIRDS].start_pulses = 4;
		slid(FIRST_DAY - 2, "1", 0.001, had[i]);
		lived(1, FIRST_DAY - 3, 6);
		plan_at(FIRST_DAY, 17);
		assert_int_equal(plan.climbed, i > 0);
		assert_int_equal(plan.clean_rounds, i == 0);
		assert_int_equal(made_work(&plan)->pulses, 6);
		assert_int_equal(plan.length_ms, i < 3 ? 292000 : 244000);
		if (i > 0)
			assert_true(made_reason(&plan, step[i]));
	}
}

/* A wide recap that was clean at 8 goes down to 4, and that is enough. */
static void test_wide_recap(void **state)
{
	(void)state;
	begin(TONE);
	r.stage[WIDE].start_pulses = 8;
	r.stage[THIRDS].start_pulses = 8;
	slid(FIRST_DAY - 2, "1", 0.001, 480 - 16 - 16 - 48 + 1);
	lived(1, FIRST_DAY - 3, 8);
	plan_at(FIRST_DAY, 17);
	assert_true(made_reason(&plan, M_COACH_LOAD_RECAPS));
	assert_false(made_reason(&plan, M_COACH_LOAD_LOWEST));
	assert_int_equal(plan.block[1].pulses, 4);
	assert_int_equal(plan.block[2].pulses, 4);
	assert_int_equal(made_work(&plan)->pulses, 8);
}

/* The second session of a day goes, and the next day's first does not. */
static void test_second(void **state)
{
	(void)state;
	begin(TONE);
	slid(FIRST_DAY - 2, "1", 0.001, 400);
	plan_at(FIRST_DAY, 9);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
	plan_at(FIRST_DAY, 17);
	assert_int_equal(plan.verdict, VERDICT_REST_TODAY);
	assert_int_equal(plan.blocks, 0);
	assert_true(made_reason(&plan, M_COACH_LOAD_OVER_PULSES));
	assert_true(made_reason(&plan, M_COACH_LOAD_REST));
	assert_false(made_reason(&plan, M_COACH_TOO_SHORT));
	plan_at(FIRST_DAY + 1, 9);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
}

/* Six days of one session each never come near it. */
static void test_ordinary_week(void **state)
{
	(void)state;
	for (int stage = WIDE; stage <= LETTING_GO; stage++) {
		begin(stage);
		for (int day = 0; day < 28; day++) {
			if (day % 7 == 6)
				continue;
			plan_at(FIRST_DAY + day, 17);
			assert_int_equal(plan.verdict, VERDICT_PRACTISE);
			assert_false(
			    made_reason(&plan, M_COACH_LOAD_OVER_PULSES));
			assert_false(
			    made_reason(&plan, M_COACH_LOAD_OVER_METRES));
			past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL,
			    ENDED_WHOLE);
			/* As if each had been played at the top. */
			for (int i = past->h.tallies - 1;
			     i >= 0 && past->tally[i].day == FIRST_DAY + day;
			     i--)
				past->tally[i].pulses = past->tally[i].bows * 8;
		}
	}
}

/* --- any life --- */

static void random_routine(void)
{
	static const int travel[] = { 50, 100, 200, 300, 500 };

	r = programme_cello(TONE);
	r.units = seeded(1, 4);
	r.stages = seeded(1, 8);
	for (int i = 0; i < r.stages; i++) {
		struct stage *s = &r.stage[i];

		snprintf(s->id, sizeof(s->id), "stage-%d", i);
		s->title = "A stage";
		s->cue = s->say = "";
		s->checks = 0;
		s->string = 1;
		s->from = 2;
		s->in_the_air = seeded(0, 6) == 0 || (i == 0 && seeded(0, 1));
		s->travel_cents = travel[seeded(0, 4)];
		s->minutes_ms = seeded(0, 6) ? 0 : seeded(1, 60) * 10000;
		s->start_pulses = seeded(0, 4) ? 0 : seeded(1, 8);
		s->patience = seeded(0, 3) == 0;
	}
	r.work_on = seeded(0, r.stages - 1);
	r.no_further_than = r.stages - 1;
	r.bow_ms = seeded(200, 800) * 10;
	r.change_ms = seeded(200, 600) * 10;
	r.bows_each = seeded(1, 4);
	r.count_in_bows = seeded(0, 2);
	r.cap_ms = seeded(60, 1200) * 1000;
	r.recap_num = seeded(0, 2);
	r.recap_den = seeded(r.recap_num > 1 ? r.recap_num : 1, 3);
	r.ladder_count = seeded(1, 4);
	for (int i = 0, pulses = 2; i < r.ladder_count; i++)
		r.ladder[i] = pulses += seeded(1, 2);
	r.make_up = (enum make_up)seeded(0, 2);
	r.so_far_given = seeded(0, 1);
	for (int u = 0; u < r.units; u++)
		r.so_far[u] = seeded(0, 100);
}

static enum mark random_mark(void *context, int stage, int unit, int round)
{
	(void)context, (void)stage, (void)unit, (void)round;
	return seeded(0, 7) ? MARK_CLEAN : MARK_SHAKY;
}

/* The rung of a round when all before it was clean and one step is gained. */
static int best_rung(const struct plan_block *b, int round)
{
	bool gained = b->kind == BLOCK_WORK && !plan.climbed &&
	    round + plan.clean_rounds >= 2;

	for (int i = 0; gained && i < r.ladder_count; i++)
		if (r.ladder[i] > b->pulses)
			return r.ladder[i];
	return b->pulses;
}

/* Even at the best of rungs the week is kept. */
static void check_week(int day)
{
	struct loads week, allowed, today = { 0 };

	load_of_days(&week, &past->h, day - 6, day);
	load_allowed(&allowed, &r, &past->h, day);
	for (int b = 0; b < plan.blocks; b++)
		for (int i = 0; i < plan.block[b].turns; i++) {
			const struct plan_block *k = &plan.block[b];
			const struct plan_turn *t =
			    &plan.turn[k->first_turn + i];

			if (t->unit >= 0)
				load_add_turns(&today, &r, k->stage, t->unit,
				    best_rung(k, t->round), 1);
		}
	for (int f = 1; f <= FINGERS_MAX; f++) {
		const struct load *t = &today.finger[f];

		if (t->slide_um == 0)
			continue;
		assert_true(week.finger[f].slide_um + t->slide_um <=
		    allowed.finger[f].slide_um);
		assert_true(week.finger[f].pulses + t->pulses <=
		    allowed.finger[f].pulses);
	}
}

static void check_even(void)
{
	for (int u = 1; u < r.units; u++)
		if (r.make_up == MAKE_UP_NONE)
			assert_int_equal(plan.share[u], plan.share[0]);
}

static int eased;

static void one_life(void)
{
	struct plan_wish w = { .routine = &r, .marking = MARKING_TURN };
	int day = FIRST_DAY;

	free(past);
	past = past_new();
	w.history = &past->h;
	random_routine();
	for (int i = 0; i < SITTINGS; i++) {
		w.now = made_moment(day, 5 + i % 15);
		w.hurt = seeded(0, 9) ? 0 : UINT32_C(1) << seeded(1, 4);
		plan_make(&plan, &w);
		assert_true(plan.length_ms <= plan.cap_ms || plan.blocks == 0);
		check_week(day);
		check_even();
		if (w.hurt == 0) {
			fewer_when_shorter(&plan, &w);
			fewer_without(&plan, &w);
		}
		eased += made_reason(&plan, M_COACH_LOAD_OVER_PULSES) ||
		    made_reason(&plan, M_COACH_LOAD_OVER_METRES);
		past_play(past, &r, &plan, random_mark, NULL,
		    seeded(0, 4) ? PLAY_ALL : seeded(0, 8),
		    (enum ended)seeded(1, 3));
		if (seeded(0, 19) == 0)
			r.work_on = seeded(0, r.stages - 1);
		day += seeded(0, 9) ? seeded(0, 1) : seeded(0, 9);
	}
}

static void test_any_life(void **state)
{
	int lives = getenv("EVENHAND_QUICK") ? QUICK_LIVES : LIVES;

	(void)state;
	seeded_begin("test_plan_load");
	for (int i = 0; i < lives; i++)
		one_life();
	printf("%d of %d plans were eased\n", eased, lives * SITTINGS);
	assert_true(eased > lives);
	free(past);
	past = NULL;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_nothing_eased),
		cmocka_unit_test(test_finger_left_out),
		cmocka_unit_test(test_steps),
		cmocka_unit_test(test_no_climb),
		cmocka_unit_test(test_wide_recap),
		cmocka_unit_test(test_second),
		cmocka_unit_test(test_ordinary_week),
		cmocka_unit_test(test_any_life),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
