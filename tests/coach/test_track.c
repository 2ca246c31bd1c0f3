/*
 * test_track.c - a session played through with nobody marking, and one stage of
 * it alone
 */
#include "sitting.h"

#include "evenhand/coach/track.h"
#include "made.h"

static struct sitting d;
static struct track t;
static struct plan plan;
static const struct history nothing;

static struct plan_wish wish_of(const struct routine *r)
{
	return (struct plan_wish) { .routine = r,
		.history = &nothing,
		.now = sitting_now(),
		.marking = MARKING_ROUND };
}

/* Every passage of a session in which only keys without a meaning come. */
static void same_as_live(const struct routine *r, int rate, int every_ms)
{
	struct plan_wish w = wish_of(r);

	sitting_begin(&d, r, &nothing, MARKING_ROUND, rate);
	sitting_start(&d);
	for (int64_t ms = every_ms; d.s.page == PAGE_PLAY; ms += every_ms)
		sitting_key(&d, ms, KEY_OTHER);
	plan_make(&plan, &w);
	assert_true(track_make(&t, &w, &plan, rate));
	assert_int_equal(t.rate, rate);
	assert_int_equal(t.passages, d.passages);
	for (int i = 0; i < t.passages; i++) {
		assert_int_equal(t.at[i].frame, d.frame[i] - d.frame[0]);
		assert_memory_equal(
		    &t.at[i].passage, &d.passage[i], sizeof(d.passage[i]));
	}
	assert_int_equal(t.length, d.length_ms * INT64_C(1) * rate / 1000);
	assert_int_equal(t.session.ended, ENDED_WHOLE);
}

static void test_live(void **state)
{
	static const int rates[] = { 44100, 48000, 96000 };

	(void)state;
	for (int i = 0; i < 3; i++)
		for (int stage = AIR; stage <= LETTING_GO; stage++) {
			struct routine r = programme_cello(stage);

			same_as_live(&r, rates[i], 61234);
		}
}

/* Stage tone: air 0:00, wide 0:28, thirds 1:24, tone 2:20, 3:16 and 4:04. */
static void test_places(void **state)
{
	static const int second[] = { 0, 28, 84, 140, 196, 244 };
	static const int stage[] = { AIR, WIDE, THIRDS, TONE, TONE, TONE };
	static const int round[] = { 0, 0, 0, 0, 1, 2 };
	struct routine r = programme_cello(TONE);
	struct plan_wish w = wish_of(&r);

	(void)state;
	plan_make(&plan, &w);
	assert_true(track_make(&t, &w, &plan, 44100));
	assert_int_equal(t.passages, 6);
	for (int i = 0; i < 6; i++) {
		assert_int_equal(t.at[i].frame, 44100 * second[i]);
		assert_int_equal(t.at[i].stage, stage[i]);
		assert_int_equal(t.at[i].round, round[i]);
		assert_int_equal(t.at[i].rounds, i < 3 ? 1 : 3);
		/* Unmarked rounds keep their rung. */
		if (stage[i] == TONE)
			assert_int_equal(t.at[i].passage.pulses, 6);
	}
	assert_int_equal(t.length, 44100 * (4 * 60 + 52));
}

/* Half an hour without a mark is played to its end. */
static void test_long(void **state)
{
	enum { ROUNDS = 40 };
	struct routine r = programme_cello(TONE);
	struct plan_wish w = wish_of(&r);
	int most;

	(void)state;
	assert_true(plan_alone(&plan, &w, 6, 1, &most));
	plan.cap_ms = plan.length_ms = 8000 + ROUNDS * 48000;
	plan.block[0].rounds = ROUNDS;
	plan.block[0].turns = plan.turns = 4 * ROUNDS;
	for (int i = 0; i < plan.turns; i++) {
		plan.turn[i].unit = (int16_t)(i % 4);
		plan.turn[i].round = (int16_t)(i / 4);
	}
	assert_true(track_make(&t, &w, &plan, 48000));
	assert_int_equal(t.session.ended, ENDED_WHOLE);
	assert_int_equal(t.passages, ROUNDS);
	assert_int_equal(t.length, plan.length_ms * INT64_C(48));
	/* A shorter day ends at a turn that still fits. */
	plan.cap_ms -= 20000;
	assert_true(track_make(&t, &w, &plan, 48000));
	assert_int_equal(t.session.ended, ENDED_CAP);
	assert_int_equal(t.passages, ROUNDS);
	assert_int_equal(t.at[ROUNDS - 1].passage.turns, 2);
	assert_true(t.length <= plan.cap_ms * INT64_C(48));
}

/* The two notes of the first finger of a block: finger 1 on D is E3, F#3. */
static void test_tones(void **state)
{
	struct routine r = programme_cello(TONE);
	struct plan_wish w = wish_of(&r);
	int finger;

	(void)state;
	assert_true(plan_alone(&plan, &w, 6, 2, &(int) { 0 }));
	assert_true(track_make(&t, &w, &plan, 48000));
	finger = t.at[0].passage.unit[0];
	assert_int_equal(finger, 1);
	assert_int_equal(t.at[0].passage.tone[0], 0);
	track_tones(&t, &r);
	/* ISO 16, equal temperament: E3 164.814 Hz, F#3 184.997 Hz. */
	assert_int_equal(t.at[0].passage.tone[0], 164814);
	assert_int_equal(t.at[0].passage.tone[1], 184997);
	/* In the air there is nothing to tune to. */
	w.stage = 1 + AIR;
	assert_true(plan_alone(&plan, &w, 0, 2, &(int) { 0 }));
	assert_true(track_make(&t, &w, &plan, 48000));
	track_tones(&t, &r);
	for (int i = 0; i < t.passages; i++)
		assert_int_equal(t.at[i].passage.tone[0], 0);
}

/* --- one stage alone --- */

/* A lead-in of 8 s, rounds of 48 s: six go under five minutes. */
static void test_alone(void **state)
{
	struct routine r = programme_cello(SEMITONE);
	struct plan_wish w = wish_of(&r);
	int most;

	(void)state;
	w.stage = 1 + TONE;
	for (int rounds = 1; rounds <= 6; rounds++) {
		assert_true(plan_alone(&plan, &w, 4, rounds, &most));
		assert_int_equal(most, 6);
		assert_int_equal(plan.blocks, 1);
		assert_int_equal(plan.block[0].stage, TONE);
		assert_int_equal(plan.block[0].kind, BLOCK_WORK);
		assert_int_equal(plan.block[0].pulses, 4);
		assert_int_equal(plan.turns, 4 * rounds);
		assert_int_equal(plan.bows, 8 * rounds);
		for (int i = 0; i < plan.turns; i++)
			assert_int_equal(plan.turn[i].unit, i % 4);
		assert_int_equal(plan.length_ms, 8000 + 48000 * rounds);
		assert_true(track_make(&t, &w, &plan, 48000));
		assert_int_equal(t.passages, rounds);
		assert_int_equal(t.length, plan.length_ms * INT64_C(48));
	}
	assert_false(plan_alone(&plan, &w, 4, 7, &most));
	assert_int_equal(most, 6);
	/* As today, where nothing else is said. */
	w.stage = 0;
	assert_true(plan_alone(&plan, &w, 0, 0, &most));
	assert_int_equal(plan.block[0].stage, SEMITONE);
	assert_int_equal(plan.block[0].pulses, 6);
	/* Its three minutes hold eight swings of 16 s with a change of 4. */
	w.stage = 1 + AIR;
	assert_true(plan_alone(&plan, &w, 0, 8, &most));
	assert_int_equal(most, 8);
	assert_int_equal(plan.length_ms, 8000 + 8 * 20000);
	assert_int_equal(plan.turn[0].unit, -1);
	assert_false(plan_alone(&plan, &w, 0, 9, &most));
}

/* What today does not hold for pain is not to be had alone either. */
static void test_refused(void **state)
{
	struct past *past = past_new();
	struct routine r = programme_cello(TONE);
	struct plan_wish w = wish_of(&r);
	int today = moment_practice_day(w.now), most;

	(void)state;
	w.history = &past->h;
	past_sit(past, w.now, "tone", ENDED_PAIN);
	past_note(past, today - 1, NOTE_PAIN, 0);
	w.stage = 1 + WIDE;
	assert_false(plan_alone(&plan, &w, 4, 1, &most));
	assert_int_equal(most, 0);
	w.stage = 1 + TONE;
	assert_true(plan_alone(&plan, &w, 4, 1, &most));
	past_note(past, today, NOTE_PAIN, 0);
	assert_false(plan_alone(&plan, &w, 4, 1, &most));
	assert_int_equal(most, 0);
	assert_false(track_make(&t, &w, &plan, 48000));
	/* Beyond what the teacher has opened. */
	past->h.notes = 0;
	r.no_further_than = TONE;
	w.stage = 1 + SEMITONE;
	assert_false(plan_alone(&plan, &w, 4, 1, &most));
	assert_int_equal(most, 0);
	free(past);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_live),
		cmocka_unit_test(test_places),
		cmocka_unit_test(test_long),
		cmocka_unit_test(test_tones),
		cmocka_unit_test(test_alone),
		cmocka_unit_test(test_refused),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
