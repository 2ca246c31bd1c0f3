/*
 * test_plan.c - whole plans: the worked sessions, recaps over many sessions
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "made.h"

static struct plan plan;

static const struct moment now = { (int64_t)FIRST_DAY * DAY_S + 61200, 0 };

static void plan_for(const struct routine *r)
{
	made_plan(&plan, r, NULL, now);
}

/* Wren's five minutes on `tone`, worked out by hand, in seconds. */
static void test_five_minutes(void **state)
{
	const struct routine r = programme_cello(TONE);
	const int begins[] = { 0, 28, 84, 140 };
	const int wide[] = { 36, 48, 60, 72 };
	const int work[] = { 148, 160, 172, 184, 196, 208, 220, 232, 244 };

	(void)state;
	plan_for(&r);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_int_equal(plan.blocks, 4);
	for (int b = 0; b < 4; b++) {
		assert_int_equal(plan.block[b].start_ms, begins[b] * 1000);
		assert_int_equal(plan.block[b].stage, b);
	}
	assert_int_equal(plan.block[0].kind, BLOCK_AIR);
	assert_int_equal(plan.block[0].turns, 1);
	assert_int_equal(plan.turn[0].unit, -1);
	assert_int_equal(plan.turn[0].start_ms, 8000);
	for (int i = 0; i < 4; i++) {
		const struct plan_turn *t =
		    &plan.turn[plan.block[1].first_turn + i];

		assert_int_equal(t->start_ms, wide[i] * 1000);
		assert_int_equal(t->unit, i);
	}
	const struct plan_block *k = made_work(&plan);

	assert_int_equal(k->rounds, 3);
	assert_int_equal(k->pulses, 6);
	for (int i = 0; i < 9; i++) {
		const struct plan_turn *t = &plan.turn[k->first_turn + i];

		assert_int_equal(t->start_ms, work[i] * 1000);
		assert_int_equal(t->unit, i % 4);
		assert_int_equal(t->round, i / 4);
	}
	assert_int_equal(plan.length_ms, 292000);
	assert_int_equal(plan.bows, 40);
}

static int bows_of(const struct routine *r, int unit)
{
	int bows = 0;

	for (int i = 0; i < plan.turns; i++)
		bows += plan.turn[i].unit == unit ? r->bows_each : 0;
	return bows;
}

static void test_ten_bows_a_finger(void **state)
{
	const struct routine r = programme_cello(TONE);

	(void)state;
	plan_for(&r);
	for (int u = 0; u < 4; u++)
		assert_int_equal(bows_of(&r, u), 10);
}

/* Rounds of work and length of each stage's session. */
static void test_every_stage(void **state)
{
	static const struct {
		int stage, blocks, rounds, length_s;
	} want[] = {
		{ AIR, 1, 8, 168 },
		{ WIDE, 2, 5, 276 },
		{ THIRDS, 3, 4, 284 },
		{ TONE, 4, 3, 292 },
		{ SEMITONE, 4, 3, 292 },
		{ LETTING_GO, 4, 3, 292 },
	};
	const struct routine r = programme_cello(TONE);

	(void)state;
	for (size_t i = 0; i < sizeof(want) / sizeof(want[0]); i++) {
		plan_dry(&plan, &r, want[i].stage, 0);
		assert_int_equal(plan.work_stage, want[i].stage);
		assert_int_equal(plan.blocks, want[i].blocks);
		assert_int_equal(
		    plan.block[plan.blocks - 1].rounds, want[i].rounds);
		assert_int_equal(plan.length_ms, want[i].length_s * 1000);
	}
}

/* The air stage worked on: 8 + 8 x 20 = 168 of 180 seconds. */
static void test_air(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	r.work_on = AIR;
	plan_for(&r);
	assert_int_equal(plan.cap_ms, 180000);
	assert_int_equal(plan.blocks, 1);
	assert_int_equal(plan.turns, 8);
	assert_int_equal(plan.bows, 0);
	for (int i = 0; i < 8; i++) {
		assert_int_equal(plan.turn[i].start_ms, (8 + 20 * i) * 1000);
		assert_int_equal(plan.turn[i].round, i);
		assert_int_equal(plan.turn[i].unit, -1);
	}
}

/* Without pedals: 3, 3, 3 and 7 seconds, turns at 0, 11, 22 and 33. */
static void test_marking_round(void **state)
{
	const struct routine r = programme_cello(TONE);
	const int change[] = { 3000, 3000, 3000, 7000 };
	struct history nothing = { 0 };
	struct plan_wish w = { .routine = &r,
		.history = &nothing,
		.now = now,
		.marking = MARKING_ROUND };

	(void)state;
	plan_make(&plan, &w);
	for (int i = 0; i < 4; i++) {
		assert_int_equal(
		    plan_change_ms(&r, MARKING_ROUND, i, 4), change[i]);
		assert_int_equal(plan_change_ms(&r, MARKING_TURN, i, 4), 4000);
	}
	const struct plan_block *k = made_work(&plan);

	for (int i = 0; i < 12; i++)
		assert_int_equal(plan.turn[k->first_turn + i].start_ms,
		    148000 + i / 4 * 48000 + i % 4 * 11000);
	assert_int_equal(plan.length_ms, 292000);
	assert_int_equal(plan_change_ms(&r, MARKING_ROUND, 0, 1), 4000);
}

/* change_seconds 3: a pass is 4:47, so the parts get shorter too. */
static void test_shorter_change(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	r.change_ms = 3000;
	assert_int_equal(routine_air_ms(&r) +
		5 * (routine_lead_ms(&r) + routine_round_ms(&r)),
	    287000);
	plan_for(&r);
	/* 27 + 52 + 52 + 8 + 3 x 44 = 271; a fourth round would be 315. */
	assert_int_equal(plan.length_ms, 271000);
}

/* --- recaps over many sessions --- */

static void played(char *out)
{
	*out = '\0';
	for (int b = 0; b < plan.blocks; b++)
		if (plan.block[b].kind == BLOCK_RECAP)
			strncat(out, &"-ABCDE"[plan.block[b].stage], 1);
}

/* wide A, thirds B, tone C, semitone D, two a session, day after day. */
static void expect_recaps(mark_maker *mark, const char *const *want, int count)
{
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();
	char got[PLAN_BLOCKS_MAX + 1];

	r.work_on = LETTING_GO;
	for (int i = 0; i < count; i++) {
		made_plan(&plan, &r, past, made_moment(FIRST_DAY + i, 17));
		played(got);
		assert_string_equal(got, want[i]);
		past_play(past, &r, &plan, mark, NULL, PLAY_ALL, ENDED_WHOLE);
	}
	free(past);
}

static void test_recaps_clean(void **state)
{
	static const char *const want[] = { "AB", "CD", "AB", "CD", "AB",
		"CD" };

	(void)state;
	expect_recaps(all_clean, want, 6);
}

static enum mark tone_shaky(void *context, int stage, int unit, int round)
{
	(void)context, (void)unit, (void)round;
	return stage == TONE ? MARK_SHAKY : MARK_CLEAN;
}

static void test_recaps_tone_shaky(void **state)
{
	static const char *const want[] = { "AB", "CD", "AC", "BC", "CD" };

	(void)state;
	expect_recaps(tone_shaky, want, 5);
}

/* Of two unseen as long, the one brought back less often comes first. */
static void test_fewer_recaps_first(void **state)
{
	static const char *const seen[][2] = { { "wide", "thirds" },
		{ "wide", "tone" }, { "semitone", "" } };
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();
	char got[PLAN_BLOCKS_MAX + 1];

	(void)state;
	r.work_on = SEMITONE;
	for (int i = 0; i < 3; i++) {
		past_sit(past, made_moment(FIRST_DAY + i, 17), "semitone",
		    ENDED_WHOLE);
		for (int j = 0; j < 2 && *seen[i][j]; j++)
			past_turn(past, BLOCK_RECAP, seen[i][j], "1", 0, 6,
			    MARK_CLEAN, true);
	}
	r.cap_ms = 200000; /* one recap */
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 3, 17));
	played(got);
	assert_string_equal(got, "B"); /* thirds, longest unseen */
	past_sit(past, made_moment(FIRST_DAY + 3, 17), "semitone", ENDED_WHOLE);
	past_turn(past, BLOCK_RECAP, "thirds", "1", 0, 6, MARK_CLEAN, true);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 4, 17));
	played(got);
	assert_string_equal(got, "C"); /* once, while wide came back twice */
	free(past);
}

enum { MORE = 2, LAST = LETTING_GO + MORE };

static enum mark all_but_ends_shaky(
    void *context, int stage, int unit, int round)
{
	(void)context, (void)unit, (void)round;
	return stage > WIDE && stage < LAST ? MARK_SHAKY : MARK_CLEAN;
}

/* With one recap a session, five that are always shaky leave the sixth room. */
static void test_shaky_leave_room(void **state)
{
	enum { SESSIONS = 36 };
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();
	int times = 0;

	(void)state;
	for (int i = LETTING_GO + 1; i <= LAST; i++) {
		r.stage[i] = r.stage[LETTING_GO];
		snprintf(r.stage[i].id, ID_MAX, "more-%d", i);
	}
	r.stages = LAST + 1;
	r.work_on = r.no_further_than = LAST;
	r.cap_ms = 200000;
	for (int i = 0; i < SESSIONS; i++) {
		made_plan(&plan, &r, past, made_moment(FIRST_DAY + i, 17));
		assert_int_equal(plan.blocks, 3);
		assert_int_equal(plan.block[1].kind, BLOCK_RECAP);
		times += plan.block[1].stage == WIDE;
		past_play(past, &r, &plan, all_but_ends_shaky, NULL, PLAY_ALL,
		    ENDED_WHOLE);
	}
	assert_in_range(times, SESSIONS / 7, SESSIONS / 6);
	free(past);
}

/* The teacher saw it clean that day, whatever the student marked. */
static void test_lesson_marks(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();
	char got[PLAN_BLOCKS_MAX + 1];

	(void)state;
	r.work_on = LETTING_GO;
	for (int i = 0; i < 2; i++) {
		made_plan(&plan, &r, past, made_moment(FIRST_DAY + i, 17));
		past_play(
		    past, &r, &plan, tone_shaky, NULL, PLAY_ALL, ENDED_WHOLE);
	}
	r.lesson_marks = 1;
	r.lesson_mark[0] = (struct lesson_mark) {
		.day = FIRST_DAY + 1, .stage = TONE, .clean = 15
	};
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 2, 17));
	played(got);
	assert_string_equal(got, "AB");
	assert_false(made_reason(&plan, M_COACH_RECAP_SHAKY));

	r.lesson_mark[0].clean = 7;
	r.lesson_mark[0].shaky = 8;
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 2, 17));
	played(got);
	assert_string_equal(got, "AC");
	assert_true(made_reason(&plan, M_COACH_RECAP_SHAKY));
	free(past);
}

/* A sitting left before the first sound is no session. */
static void test_not_today(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();
	char got[PLAN_BLOCKS_MAX + 1];

	(void)state;
	r.work_on = LETTING_GO;
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 17));
	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
	for (int i = 0; i < 4; i++)
		past_sit(past, made_moment(FIRST_DAY + 1, 10 + i), "letting-go",
		    ENDED_NOT_TODAY);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 17));
	played(got);
	assert_string_equal(got, "CD");
	assert_int_equal(plan.day_on_stage, 2);
	free(past);
}

/* A recap is played where it was last all clean; new, where it would begin. */
static void test_recap_rung(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();

	(void)state;
	r.work_on = THIRDS;
	plan_for(&r);
	assert_int_equal(plan.block[1].pulses, 4); /* wide: start_pulses */
	past_sit(past, made_moment(FIRST_DAY, 17), "wide", ENDED_WHOLE);
	for (int round = 0; round < 3; round++)
		for (int u = 0; u < 4; u++)
			past_turn(past, BLOCK_WORK, "wide", r.unit[u].name,
			    round, round < 2 ? 6 : 8,
			    round == 2 && u == 3 ? MARK_NONE : MARK_CLEAN,
			    round == 0);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 17));
	assert_int_equal(plan.block[1].pulses, 6);

	/* The same from roll-ups alone, when the turns are long ago. */
	past->h.turns = 0;
	past_swing(past, FIRST_DAY + 2, FIRST_DAY + 59);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 60, 17));
	assert_int_equal(plan.block[1].pulses, 6);

	/* The teacher took a rung out of the ladder. */
	r.ladder_count = 2;
	r.ladder[1] = 8;
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 60, 17));
	assert_int_equal(plan.block[1].pulses, 4);
	free(past);
}

/* --- the cap --- */

static void test_cap(void **state)
{
	static const struct {
		int cap_s, recaps, rounds, length_s;
	} want[] = {
		{ 20, 0, 0, 0 },  /* nothing fits */
		{ 83, 0, 0, 28 }, /* the air alone */
		{ 84, 0, 1, 84 }, /* the shortest with a round */
		{ 167, 0, 2, 132 },
		{ 168, 1, 1, 140 }, /* 28 + 56 is just half */
		{ 279, 1, 3, 236 },
		{ 280, 2, 2, 244 },
		{ 291, 2, 2, 244 },
		{ 292, 2, 3, 292 },
		{ 300, 2, 3, 292 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(want) / sizeof(want[0]); i++) {
		struct routine r = programme_cello(TONE);
		const struct plan_block *k;
		int recaps = 0;

		r.cap_ms = want[i].cap_s * 1000;
		plan_for(&r);
		k = made_work(&plan);
		for (int b = 0; b < plan.blocks; b++)
			recaps += plan.block[b].kind == BLOCK_RECAP;
		assert_int_equal(recaps, want[i].recaps);
		assert_int_equal(k ? k->rounds : 0, want[i].rounds);
		assert_int_equal(plan.length_ms, want[i].length_s * 1000);
		assert_int_equal(plan.verdict,
		    want[i].length_s ? VERDICT_PRACTISE : VERDICT_REST_TODAY);
	}
}

/* A recap gives way when it would leave no room for a round of work. */
static void test_recap_gives_way(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	r.recap_num = r.recap_den = 1;
	r.cap_ms = 200000;
	plan_for(&r);
	/* 28 + 3 x 56 = 196 would fit, but with no work. */
	assert_int_equal(plan.blocks, 4);
	assert_int_equal(made_work(&plan)->rounds, 1);
	assert_int_equal(plan.length_ms, 196000);
}

/* Longer sessions wait until a stage is a fortnight old. */
static void test_long_session(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();

	(void)state;
	r.cap_ms = 900000;
	plan_for(&r);
	assert_int_equal(plan.cap_ms, 300000);
	assert_true(made_reason(&plan, M_COACH_CAP_NEW));
	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
	past_swing(past, FIRST_DAY + 1, FIRST_DAY + 12);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 13, 17));
	assert_int_equal(plan.cap_ms, 300000);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 14, 17));
	assert_int_equal(plan.cap_ms, 900000);
	assert_int_equal(plan.day_on_stage, 2);
	free(past);
}

static void test_no_further(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	r.work_on = SEMITONE;
	r.no_further_than = THIRDS;
	plan_for(&r);
	assert_int_equal(plan.work_stage, THIRDS);
}

/* --- days and first goes --- */

static void test_first_go(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();

	(void)state;
	plan_for(&r);
	assert_int_equal(plan.first_go, 63);
	assert_int_equal(plan.day_on_stage, 1);
	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);

	/* The same evening: air, wide, thirds and tone have had theirs. */
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 21));
	assert_int_equal(plan.first_go, 1 << SEMITONE | 1 << LETTING_GO);
	assert_int_equal(plan.day_on_stage, 1);
	/* Half past three at night is still the day before. */
	made_plan(&plan, &r, past,
	    (struct moment) { (int64_t)(FIRST_DAY + 1) * DAY_S + 12600, 0 });
	assert_int_equal(plan.day, FIRST_DAY);
	assert_int_equal(plan.day_on_stage, 1);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 1, 5));
	assert_int_equal(plan.first_go, 63);
	assert_int_equal(plan.day_on_stage, 2);
	free(past);
}

static void test_cautions(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = past_new();

	(void)state;
	plan_for(&r);
	assert_true(made_caution(&plan, M_COACH_CAUTION_AID));
	assert_true(made_caution(&plan, M_COACH_CAUTION_CHILD));
	/* There was no last time. */
	assert_true(made_caution(&plan, M_COACH_CAUTION_START_FIRST));
	assert_false(made_caution(&plan, M_COACH_CAUTION_START));
	assert_false(made_caution(&plan, M_COACH_CAUTION_HURRY));
	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);

	r.work_on = SEMITONE;
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 18));
	assert_false(made_caution(&plan, M_COACH_CAUTION_AID));
	assert_true(made_caution(&plan, M_COACH_CAUTION_START));
	assert_false(made_caution(&plan, M_COACH_CAUTION_START_FIRST));
	assert_true(made_caution(&plan, M_COACH_CAUTION_HURRY));
	assert_true(made_caution(&plan, M_COACH_CAUTION_GAP));
	/* Done at 17:04:52, so due at 20:04:52, which is 20:05 on a clock. */
	for (int i = 0; i < plan.cautions; i++) {
		char words[256];

		message_text(&plan.caution[i], words, sizeof(words));
		if (plan.caution[i].id == M_COACH_CAUTION_GAP)
			assert_non_null(strstr(words, "20:05"));
	}
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 21));
	assert_false(made_caution(&plan, M_COACH_CAUTION_GAP));
	/* Two hours of it asleep: done at seven, so nine is too early. */
	past->sitting[past->h.sittings - 1].ended_utc =
	    made_moment(FIRST_DAY, 19).utc;
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 21));
	assert_true(made_caution(&plan, M_COACH_CAUTION_GAP));
	past->sitting[past->h.sittings - 1].ended_utc = 0;
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 21));
	past_play(past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 22));
	assert_true(made_caution(&plan, M_COACH_CAUTION_ENOUGH));

	for (int i = 1; i < 6; i++) {
		made_plan(&plan, &r, past, made_moment(FIRST_DAY + i, 17));
		assert_false(made_caution(&plan, M_COACH_CAUTION_DAY_OFF));
		past_play(
		    past, &r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
	}
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 6, 17));
	assert_true(made_caution(&plan, M_COACH_CAUTION_DAY_OFF));
	made_plan(&plan, &r, past, made_moment(FIRST_DAY + 7, 17));
	assert_false(made_caution(&plan, M_COACH_CAUTION_DAY_OFF));
	free(past);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_five_minutes),
		cmocka_unit_test(test_ten_bows_a_finger),
		cmocka_unit_test(test_every_stage),
		cmocka_unit_test(test_air),
		cmocka_unit_test(test_marking_round),
		cmocka_unit_test(test_shorter_change),
		cmocka_unit_test(test_recaps_clean),
		cmocka_unit_test(test_recaps_tone_shaky),
		cmocka_unit_test(test_fewer_recaps_first),
		cmocka_unit_test(test_shaky_leave_room),
		cmocka_unit_test(test_lesson_marks),
		cmocka_unit_test(test_not_today),
		cmocka_unit_test(test_recap_rung),
		cmocka_unit_test(test_cap),
		cmocka_unit_test(test_recap_gives_way),
		cmocka_unit_test(test_long_session),
		cmocka_unit_test(test_no_further),
		cmocka_unit_test(test_first_go),
		cmocka_unit_test(test_cautions),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
