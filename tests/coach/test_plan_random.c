/*
 * test_plan_random.c - what must hold for any routine and any past
 *
 * Random routines, each with a random past that was itself planned and played
 * day by day, with cut-offs, pain, sore fingers and changes of stage between.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "fewer.h"
#include "made.h"

enum { ROUTINES = 1200, QUICK_ROUTINES = 60, DAYS = 12 };

static struct past *past;
static struct routine r;
static struct plan plan;

/* --- random routines --- */

static void random_stage(struct stage *s, int i)
{
	const int travel[] = { 0, 50, 100, 200, 300, 500 };
	char id[ID_MAX];

	snprintf(id, sizeof(id), "stage-%d", i);
	*s = (struct stage) { .title = "A stage",
		.cue = "",
		.say = "",
		.string = 1,
		.from = 2,
		.travel_cents = travel[seeded(0, 5)] };
	strcpy(s->id, id);
	s->in_the_air = seeded(0, 5) == 0 || (i == 0 && seeded(0, 1));
	s->patience = seeded(0, 3) == 0;
	if (seeded(0, 5) == 0)
		s->minutes_ms = seeded(1, 60) * 10000;
	if (seeded(0, 5) == 0)
		s->start_pulses = seeded(1, PULSES_MAX);
}

static void random_units(void)
{
	r.take = (enum take)seeded(0, 2);
	r.units = seeded(1, r.take == TAKE_FINGERS ? 4 : UNITS_MAX);
	for (int u = 0; u < r.units; u++) {
		struct unit *unit = &r.unit[u];

		unit->from = r.take == TAKE_FINGERS ? u + 1 : seeded(0, 3);
		unit->to = r.take == TAKE_FINGERS ? u + 1 : seeded(0, 4);
		snprintf(unit->name, sizeof(unit->name), "%d", u + 1);
	}
}

static void random_routine(void)
{
	r = programme_cello(TONE);
	random_units();
	r.stages = seeded(1, STAGES_MAX);
	for (int i = 0; i < r.stages; i++)
		random_stage(&r.stage[i], i);
	r.work_on = seeded(0, r.stages - 1);
	r.no_further_than = seeded(0, r.stages - 1);
	r.bow_ms = seeded(100, 2000) * 10;
	r.change_ms = seeded(200, 1000) * 10;
	r.bows_each = seeded(1, BOWS_EACH_MAX);
	r.count_in_bows = seeded(0, 4);
	r.cap_ms = seeded(3, 600) * 1000;
	r.recap_num = seeded(0, 4);
	r.recap_den = seeded(r.recap_num > 1 ? r.recap_num : 1, 6);
	r.ladder_count = seeded(1, LADDER_MAX);
	for (int i = 0, pulses = 0; i < r.ladder_count; i++)
		r.ladder[i] = pulses += seeded(1, 2);
	r.make_up = (enum make_up)seeded(0, 2);
	r.decided_by = (enum decided_by)seeded(0, 1);
	r.move_days = seeded(1, 6);
	r.move_clean = seeded(1, 3);
	r.move_of = seeded(r.move_clean, 5);
	r.so_far_given = seeded(0, 1);
	for (int u = 0; u < r.units; u++)
		r.so_far[u] = seeded(0, 100);
	r.seen = seeded(0, 1);
}

/* --- random pasts --- */

static enum mark random_mark(void *context, int stage, int unit, int round)
{
	(void)context, (void)stage, (void)unit, (void)round;
	int of_ten = seeded(0, 9);

	if (of_ten < 2)
		return MARK_SHAKY;
	return of_ten < 3 ? MARK_NONE : MARK_CLEAN;
}

static struct plan_wish random_wish(int day)
{
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = { (int64_t)day * DAY_S + seeded(0, DAY_S - 1),
		    seeded(-12, 14) * 3600 },
		.marking = (enum marking)seeded(0, 1),
		.air_only = seeded(0, 19) == 0 };

	if (seeded(0, 4) == 0)
		w.hurt = (uint32_t)seeded(0, 63);
	return w;
}

static void random_note(int day)
{
	if (past->h.notes < MANY_NOTES && seeded(0, 9) == 0)
		past_note(
		    past, day, (enum note_kind)seeded(1, 4), seeded(0, 4));
}

/* --- what must hold --- */

static int units_in(const struct plan_block *b)
{
	uint32_t seen = 0;
	int units = 0;

	for (int i = 0; i < b->turns; i++) {
		int unit = plan.turn[b->first_turn + i].unit;

		units += !(seen >> unit & 1);
		seen |= UINT32_C(1) << unit;
	}
	return units;
}

static void check_block(const struct plan_block *b)
{
	bool had[UNITS_MAX] = { false };
	int time = b->start_ms + routine_lead_ms(&r), last = -1;

	for (int i = 0; i < b->turns; i++) {
		const struct plan_turn *t = &plan.turn[b->first_turn + i];

		assert_true(t->start_ms >= time);
		assert_in_range(t->round, 0, b->rounds - 1);
		if (b->kind == BLOCK_AIR) {
			assert_int_equal(t->unit, -1);
			time = t->start_ms + AIR_SWING_BOWS * r.bow_ms;
			continue;
		}
		assert_in_range(t->unit, 0, r.units - 1);
		time = t->start_ms + r.bows_each * r.bow_ms;
		if (t->round == 0) {
			assert_false(had[t->unit]);
			had[t->unit] = true;
		}
		assert_true(had[t->unit]);
		if (units_in(b) > 1)
			assert_int_not_equal(t->unit, last);
		last = t->unit;
	}
	assert_true(b->end_ms > time);
}

static bool finger_out(int finger)
{
	return finger >= 1 && finger <= 4 && (plan.hurt >> finger & 1);
}

static bool unit_out(int u)
{
	return r.take != TAKE_STRINGS &&
	    (finger_out(r.unit[u].from) || finger_out(r.unit[u].to));
}

/* The work turns that were planned and not dropped are those that stand. */
static void check_shares(void)
{
	const struct plan_block *k = made_work(&plan);
	int turns[UNITS_MAX] = { 0 }, most = 0, least = PLAN_TURNS_MAX;

	for (int i = 0; k && i < k->turns; i++)
		turns[plan.turn[k->first_turn + i].unit]++;
	for (int u = 0; u < r.units; u++) {
		assert_int_equal(turns[u], plan.share[u] - plan.dropped[u]);
		if (unit_out(u))
			assert_int_equal(turns[u], 0);
		most = plan.share[u] > most ? plan.share[u] : most;
		least = plan.share[u] < least ? plan.share[u] : least;
	}
	/* Nobody is owed anything: equal bows. */
	if (r.make_up == MAKE_UP_NONE || r.units <= 2)
		assert_int_equal(most, least);
	assert_true(most <= 3 * least);
}

/* Never past what the file allows, nor past what is asked or reached. */
static void check_stage(void)
{
	assert_true(plan.work_stage <= plan.where.asked);
	assert_true(plan.where.asked <= r.no_further_than);
	if (r.decided_by == DECIDED_BY_TEACHER)
		assert_true(plan.where.asked <= r.work_on);
	for (int b = 0; b < plan.blocks; b++)
		assert_true(plan.block[b].stage <= plan.work_stage ||
		    plan.block[b].kind == BLOCK_AIR);
}

static void check_plan(void)
{
	int time = 0, turns = 0, bows = 0;

	assert_true(plan.length_ms <= plan.cap_ms || plan.blocks == 0);
	assert_int_equal(plan.verdict != VERDICT_PRACTISE, plan.blocks == 0);
	for (int b = 0; b < plan.blocks; b++) {
		const struct plan_block *k = &plan.block[b];

		assert_int_equal(k->start_ms, time);
		assert_int_equal(k->first_turn, turns);
		assert_true(k->turns > 0 && k->rounds > 0);
		assert_int_equal(
		    k->kind == BLOCK_AIR, r.stage[k->stage].in_the_air);
		if (k->kind == BLOCK_AIR)
			assert_int_equal(k->pulses, 0);
		else
			assert_true(routine_rung(&r, k->pulses) >= 0);
		check_block(k);
		time = k->end_ms;
		turns += k->turns;
	}
	for (int i = 0; i < plan.turns; i++)
		bows += plan.turn[i].unit >= 0 ? r.bows_each : 0;
	assert_int_equal(plan.length_ms, time);
	assert_int_equal(plan.turns, turns);
	assert_int_equal(plan.bows, bows);
	assert_true(plan.reasons > 0);
	check_shares();
}

/* The same input gives the same bytes, whatever lay there before. */
static void check_same(const struct plan_wish *w)
{
	static struct plan again;
	struct plan_wish other;

	memset(&again, 0xa5, sizeof(again));
	memset(&other, 0x5a, sizeof(other));
	other.routine = w->routine;
	other.history = w->history;
	other.now.utc = w->now.utc;
	other.now.offset = w->now.offset;
	other.marking = w->marking;
	other.hurt = w->hurt;
	other.air_only = w->air_only;
	other.stage = w->stage;
	plan_make(&again, &other);
	assert_memory_equal(&plan, &again, sizeof(plan));
}

static void one_life(void)
{
	memset(&past->h, 0, sizeof(past->h));
	free(past);
	past = past_new();
	random_routine();
	for (int i = 0, day = FIRST_DAY; i < DAYS; i++) {
		struct plan_wish w = random_wish(day);

		plan_make(&plan, &w);
		check_plan();
		check_stage();
		check_same(&w);
		fewer_when_shorter(&plan, &w);
		fewer_without(&plan, &w);
		past_play(past, &r, &plan, random_mark, NULL,
		    seeded(0, 2) ? PLAY_ALL : seeded(0, 12),
		    (enum ended)seeded(0, 7));
		random_note(day);
		if (seeded(0, 5) == 0)
			r.work_on = seeded(0, r.stages - 1);
		day += seeded(0, 9) ? seeded(0, 2) : seeded(0, 60);
	}
}

static void test_any_life(void **state)
{
	int lives = getenv("EVENHAND_QUICK") ? QUICK_ROUTINES : ROUTINES;

	(void)state;
	seeded_begin("test_plan_random");
	past = past_new();
	for (int i = 0; i < lives; i++)
		one_life();
	free(past);
}

/* Each stage's first session, as the dry run shows it. */
static void test_any_dry(void **state)
{
	(void)state;
	seeded_begin("test_plan_random dry");
	for (int i = 0; i < 500; i++) {
		random_routine();
		for (int s = 0; s < r.stages; s++) {
			plan_dry(&plan, &r, s, 0);
			assert_int_equal(plan.work_stage, s);
			assert_int_equal(plan.day_on_stage, 1);
			check_plan();
		}
	}
}

/*
 * Where n stages may come back and a session holds k of them, each is seen
 * again within n / k sessions, rounded up, when all goes well every day.
 */
static void come_back(void)
{
	int last[STAGES_MAX], fit = 0, due;

	random_routine();
	r.decided_by = DECIDED_BY_TEACHER;
	past = past_new();
	memset(last, 0, sizeof(last));
	for (int day = 1; day <= 2 * STAGES_MAX; day++) {
		int recaps = 0, earlier = 0;

		made_plan(&plan, &r, past, made_moment(FIRST_DAY + day, 17));
		for (int b = 0; b < plan.blocks; b++) {
			const struct plan_block *k = &plan.block[b];

			if (k->kind != BLOCK_RECAP)
				continue;
			recaps++;
			last[k->stage] = day;
		}
		if (day == 1)
			fit = recaps;
		/* In its first fortnight a stage has a shorter cap. */
		if (fit == 0 || recaps < fit)
			break;
		for (int s = 0; s < plan.work_stage; s++)
			earlier += !r.stage[s].in_the_air;
		due = (earlier + fit - 1) / fit;
		for (int s = 0; s < plan.work_stage; s++)
			if (!r.stage[s].in_the_air)
				assert_true(day - last[s] <= due);
		past_play(
		    past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
	}
	free(past);
}

static void test_each_comes_back(void **state)
{
	(void)state;
	seeded_begin("test_plan_random recap");
	for (int i = 0; i < 300; i++)
		come_back();
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_any_life),
		cmocka_unit_test(test_any_dry),
		cmocka_unit_test(test_each_comes_back),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
