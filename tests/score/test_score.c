/*
 * test_score.c - what a passage sounds like and shows, frame by frame
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "evenhand/base/frames.h"
#include "evenhand/score/pulse.h"
#include "evenhand/score/score.h"
#include "seeded.h"

static struct score score;

/* A round of four fingers with the usual times. */
static struct passage usual_passage(int pulses)
{
	return (struct passage) {
		.settle_ms = 4000,
		.count_in_bows = 1,
		.bow_ms = 4000,
		.pulses = pulses,
		.bows_each = 2,
		.turns = 4,
		.unit = { 1, 2, 3, 4 },
		.coming = 1,
		.change_ms = 4000,
		.last_change_ms = 4000,
	};
}

static int sounds_of(enum voice v)
{
	int n = 0;

	for (int i = 0; i < score.sounds; i++)
		n += score.sound[i].voice == (int)v;
	return n;
}

/* Sounds of a voice that begin in from..to-1. */
static int sounds_in(enum voice v, int64_t from, int64_t to)
{
	int n = 0;

	for (int i = 0; i < score.sounds; i++)
		n += score.sound[i].voice == (int)v &&
		    score.sound[i].frame >= from && score.sound[i].frame < to;
	return n;
}

static const struct sound *sound_at(enum voice v, int64_t frame)
{
	for (int i = 0; i < score.sounds; i++)
		if (score.sound[i].voice == (int)v &&
		    score.sound[i].frame == frame)
			return &score.sound[i];
	return NULL;
}

static const struct cue *cue_at(enum cue_kind kind, int64_t frame)
{
	for (int i = 0; i < score.cues; i++)
		if (score.cue[i].kind == (int)kind &&
		    score.cue[i].frame == frame)
			return &score.cue[i];
	return NULL;
}

/* Lead-in of 8 s, then turns of 12 s: 8, 20, 32, 44; the end at 56. */
static void test_times(void **state)
{
	struct passage p = usual_passage(4);

	(void)state;
	assert_int_equal(passage_lead_ms(&p), 8000);
	for (int t = 0; t < 4; t++) {
		assert_int_equal(passage_turn_ms(&p, t), 8000 + 12000 * t);
		assert_int_equal(passage_bows_end_ms(&p, t), 16000 + 12000 * t);
	}
	assert_int_equal(passage_ms(&p), 56000);
	p.change_ms = 3000;
	p.last_change_ms = 7000;
	assert_int_equal(passage_turn_ms(&p, 3), 8000 + 33000);
	assert_int_equal(passage_ms(&p), 56000);
}

/* Every bow has its knock, ticks at the pulses after it, and no others. */
static void test_bows(void **state)
{
	static const int apart[] = { 48000, 32000, 24000 };

	(void)state;
	for (int rung = 0; rung < 3; rung++) {
		int pulses = 4 + 2 * rung;
		struct passage p = usual_passage(pulses);

		assert_true(score_make(&score, &p, 48000));
		for (int bow = 0; bow < 8; bow++) {
			int64_t start = 48000 *
			    (8 + 12 * (bow / 2) + 4 * (bow % 2));

			assert_non_null(sound_at(
			    bow % 2 == 0 ? VOICE_DOWN : VOICE_UP, start));
			assert_null(sound_at(VOICE_TICK, start));
			for (int k = 1; k < pulses; k++)
				assert_non_null(sound_at(
				    VOICE_TICK, start + k * apart[rung]));
		}
		assert_int_equal(sounds_of(VOICE_DOWN), 4);
		assert_int_equal(sounds_of(VOICE_UP), 4);
		assert_int_equal(sounds_of(VOICE_TICK), 8 * (pulses - 1));
	}
}

/* Bows of six pulses hold no tick a second in; bows of four do. */
static void test_six_holds_no_second(void **state)
{
	struct passage p = usual_passage(6);

	(void)state;
	assert_true(score_make(&score, &p, 48000));
	for (int bow = 0; bow < 8; bow++) {
		int64_t start = 48000 * (8 + 12 * (bow / 2) + 4 * (bow % 2));

		assert_null(sound_at(VOICE_TICK, start + 48000));
	}
	p.pulses = 4;
	assert_true(score_make(&score, &p, 48000));
	assert_non_null(sound_at(VOICE_TICK, 48000 * 8 + 48000));
}

/* The bow's own sounds are the same bytes at every rung. */
static void test_knocks_never_change(void **state)
{
	static struct sound first[8];
	int n;

	(void)state;
	for (int pulses = 1; pulses <= PULSES_MAX; pulses++) {
		struct passage p = usual_passage(pulses);

		assert_true(score_make(&score, &p, 44100));
		n = 0;
		for (int i = 0; i < score.sounds; i++) {
			const struct sound *s = &score.sound[i];

			if (s->voice != VOICE_DOWN && s->voice != VOICE_UP)
				continue;
			if (pulses == 1)
				first[n] = *s;
			assert_memory_equal(&first[n], s, sizeof *s);
			n++;
		}
		assert_int_equal(n, 8);
	}
}

static void test_count_in(void **state)
{
	struct passage p = usual_passage(6);

	(void)state;
	p.count_in_bows = 2;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(sounds_of(VOICE_COUNT), 12);
	for (int k = 0; k < 12; k++)
		assert_non_null(
		    sound_at(VOICE_COUNT, 48000 * 4 + 32000 * (int64_t)k));
	assert_int_equal(cue_at(CUE_COUNT_IN, 48000 * 4)->value, 2);
	assert_int_equal(cue_at(CUE_SETTLE, 0)->value, 4000);
	assert_int_equal(cue_at(CUE_SETTLE, 0)->turn, -1);
}

static int64_t end_of(const struct sound *s)
{
	return s->frame + s->length;
}

/* As many notes as the coming finger, 300 ms apart, over at 600 ms. */
static void test_finger_notes(void **state)
{
	static const int coming[] = { 1, 2, 3, 4, 1 };
	struct passage p = usual_passage(8);

	(void)state;
	assert_true(score_make(&score, &p, 48000));
	for (int i = 0; i < 5; i++) {
		/* In the settling time, then in each change. */
		int64_t to = 48000 * (i == 0 ? 4 : 8 + 12 * i);
		int64_t end = to - 28800, begin = end - 10800;

		assert_int_equal(
		    sounds_in(VOICE_FINGER, to - 48000 * 4, to), coming[i]);
		for (int n = 0; n < coming[i]; n++)
			assert_non_null(
			    sound_at(VOICE_FINGER, begin - 14400 * (int64_t)n));
		assert_int_equal(end_of(sound_at(VOICE_FINGER, begin)), end);
	}
	assert_int_equal(sounds_of(VOICE_FINGER), 11);
}

/* However short the change: all notes, none over a bow, none over another. */
static void test_squeezed_notes(void **state)
{
	(void)state;
	for (int change = 500; change <= 6000; change += 10) {
		struct passage p = usual_passage(4);

		p.turns = 1;
		p.coming = FINGER_NOTES_MAX;
		p.last_change_ms = change;
		assert_true(score_make(&score, &p, 44100));
		int64_t from = frames_of_ms(16000, 44100), to = score.length;
		int64_t last = from;

		assert_int_equal(
		    sounds_in(VOICE_FINGER, from, to), FINGER_NOTES_MAX);
		for (int i = 0; i < score.sounds; i++) {
			const struct sound *s = &score.sound[i];

			if (s->voice != VOICE_FINGER || s->frame < from)
				continue;
			assert_true(s->frame > last && s->length > 0);
			last = end_of(s);
		}
		assert_true(last < to);
	}
}

/* No room, no notes: a passage that begins with its count-in or its bow. */
static void test_no_room(void **state)
{
	struct passage p = usual_passage(4);

	(void)state;
	p.settle_ms = 0;
	p.turns = 1;
	p.coming = 0;
	p.tone[0] = 146832;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(sounds_of(VOICE_FINGER), 0);
	assert_int_equal(sounds_of(VOICE_TONE), 0);
	p.count_in_bows = 0;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(sounds_of(VOICE_FINGER), 0);
	assert_int_equal(score.sound[0].frame, 0);
	assert_int_equal(score.sound[0].voice, VOICE_DOWN);
	assert_null(cue_at(CUE_SETTLE, 0));
	assert_null(cue_at(CUE_COUNT_IN, 0));
}

/* The two notes of the stage sound while all is still, before the notes. */
static void test_tones(void **state)
{
	struct passage p = usual_passage(4);

	(void)state;
	p.tone[0] = 164814;
	p.tone[1] = 184997;
	p.unit[0] = FINGER_NOTES_MAX;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(sounds_of(VOICE_TONE), 2);
	assert_int_equal(score.sound[0].millihertz, 164814);
	assert_int_equal(score.sound[1].millihertz, 184997);
	assert_true(end_of(&score.sound[0]) < score.sound[1].frame);
	assert_int_equal(score.sound[2].voice, VOICE_FINGER);
	assert_true(end_of(&score.sound[1]) < score.sound[2].frame);
	assert_true(end_of(&score.sound[9]) < 48000 * 4);
}

/* After so many bows of the block the ticks are gone; the rest stays. */
static void test_fading(void **state)
{
	struct passage p = usual_passage(6);

	(void)state;
	p.fade_after = 4;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(sounds_of(VOICE_TICK), 4 * 5);
	assert_int_equal(sounds_in(VOICE_TICK, 48000 * 32, INT64_MAX), 0);
	p.bows_before = 3;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(sounds_of(VOICE_TICK), 5);
	p.bows_before = 8;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(sounds_of(VOICE_TICK), 0);
	assert_int_equal(sounds_of(VOICE_COUNT), 6);
	assert_int_equal(sounds_of(VOICE_DOWN), 4);
	assert_int_equal(sounds_of(VOICE_UP), 4);
	/* The eye still has them all. */
	assert_non_null(cue_at(CUE_PULSE, 48000 * 8 + 32000));
}

static void test_cues(void **state)
{
	struct passage p = usual_passage(4);

	(void)state;
	assert_true(score_make(&score, &p, 48000));
	for (int bow = 0; bow < 8; bow++) {
		int64_t at = 48000 * (8 + 12 * (bow / 2) + 4 * (bow % 2));

		assert_int_equal(cue_at(CUE_BOW, at)->turn, bow / 2);
		assert_int_equal(cue_at(CUE_BOW, at)->value, bow % 2);
		for (int k = 0; k < 4; k++)
			assert_int_equal(
			    cue_at(CUE_PULSE, at + 48000 * k)->value, k);
	}
	for (int t = 0; t < 4; t++) {
		const struct cue *c = cue_at(CUE_CHANGE, 48000 * (16 + 12 * t));

		assert_int_equal(c->turn, t);
		assert_int_equal(c->value, 4000);
	}
	assert_int_equal(score.cue[score.cues - 1].kind, CUE_END);
	assert_int_equal(score.cue[score.cues - 1].frame, score.length);
	assert_int_equal(score.length, 48000 * 56);
}

/* Nothing but the knock: a swing in the air with no pulse asked for. */
static void test_no_pulses(void **state)
{
	struct passage p = usual_passage(0);

	(void)state;
	p.turns = 1;
	p.bows_each = 4;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(sounds_of(VOICE_TICK), 0);
	assert_int_equal(sounds_of(VOICE_COUNT), 1);
	assert_int_equal(sounds_of(VOICE_DOWN) + sounds_of(VOICE_UP), 4);
}

static void test_refused(void **state)
{
	(void)state;
	assert_true(score_make(
	    &score, (struct passage[]) { usual_passage(16) }, RATE_MAX));
	assert_false(score_make(
	    &score, (struct passage[]) { usual_passage(17) }, 48000));
	assert_false(score_make(
	    &score, (struct passage[]) { usual_passage(-1) }, 48000));
	assert_false(score_make(
	    &score, (struct passage[]) { usual_passage(4) }, RATE_MAX + 1));
	assert_false(score_make(
	    &score, (struct passage[]) { usual_passage(4) }, RATE_MIN - 1));

	static const size_t fields[] = { offsetof(struct passage, settle_ms),
		offsetof(struct passage, count_in_bows),
		offsetof(struct passage, bow_ms),
		offsetof(struct passage, bows_each),
		offsetof(struct passage, turns),
		offsetof(struct passage, unit[1]),
		offsetof(struct passage, coming),
		offsetof(struct passage, change_ms),
		offsetof(struct passage, last_change_ms),
		offsetof(struct passage, bows_before),
		offsetof(struct passage, tone[1]) };

	for (size_t i = 0; i < sizeof fields / sizeof *fields; i++)
		for (int high = 0; high < 2; high++) {
			struct passage p = usual_passage(4);
			int value = high ? INT32_MAX : -1;

			memcpy((char *)&p + fields[i], &value, sizeof value);
			assert_false(score_make(&score, &p, 48000));
		}
}

/* The most of everything still fits. */
static void test_fullest(void **state)
{
	struct passage p = usual_passage(PULSES_MAX);

	(void)state;
	p.count_in_bows = COUNT_IN_MAX;
	p.bows_each = BOWS_EACH_MAX;
	p.turns = UNITS_MAX;
	for (int i = 0; i < UNITS_MAX; i++)
		p.unit[i] = FINGER_NOTES_MAX;
	p.coming = FINGER_NOTES_MAX;
	p.tone[0] = 100000;
	p.tone[1] = 200000;
	assert_true(score_make(&score, &p, 48000));
	assert_int_equal(score.sounds, 2 + 4 * 16 + 8 * 8 * 16 + 9 * 8);
	assert_int_equal(score.cues, 2 + 4 * 16 + 8 * (8 * 17 + 1) + 1);
}

static struct passage random_passage(void)
{
	struct passage p = {
		.settle_ms = seeded(0, 1) * 10 * seeded(0, 600),
		.count_in_bows = seeded(0, COUNT_IN_MAX),
		.bow_ms = 10 * seeded(100, 2000),
		.pulses = seeded(1, PULSES_MAX),
		.bows_each = seeded(1, BOWS_EACH_MAX),
		.turns = seeded(1, UNITS_MAX),
		.coming = seeded(0, FINGER_NOTES_MAX),
		.change_ms = 10 * seeded(50, 1000),
		.last_change_ms = 10 * seeded(50, 1000),
		.fade_after = seeded(0, 1) * seeded(0, 40),
		.bows_before = seeded(0, 1) * seeded(0, 40),
		.tone = { seeded(0, 1) * 146832, seeded(0, 1) * 220000 },
	};

	for (int i = 0; i < p.turns; i++)
		p.unit[i] = seeded(0, FINGER_NOTES_MAX);
	return p;
}

__extension__ typedef __int128 wide;

/* floor(num / den + 1/2) in 128 bits. */
static int64_t rounded(wide num, wide den)
{
	return (int64_t)((2 * num + den) / (2 * den));
}

/*
 * Ticks and knocks counted out the slow way, straight from the words: bow b
 * of turn t begins at a ms, pulse k of n at k/n of the bow after that.
 */
static void check_against_words(const struct passage *p, int rate)
{
	int ticks = 0;
	int64_t lead = p->settle_ms + (int64_t)p->count_in_bows * p->bow_ms;
	int64_t turn_ms = (int64_t)p->bows_each * p->bow_ms + p->change_ms;

	for (int t = 0; t < p->turns; t++)
		for (int b = 0; b < p->bows_each; b++) {
			int64_t ms = lead + t * turn_ms +
			    b * (int64_t)p->bow_ms;
			int64_t bow = rounded((wide)ms * rate, 1000);
			int n = p->bows_before + t * p->bows_each + b;

			assert_non_null(
			    sound_at(b % 2 ? VOICE_UP : VOICE_DOWN, bow));
			if (p->fade_after > 0 && n >= p->fade_after)
				continue;
			for (int k = 1; k < p->pulses; k++, ticks++)
				assert_non_null(sound_at(VOICE_TICK,
				    bow +
					rounded((wide)k * p->bow_ms * rate,
					    (wide)1000 * p->pulses)));
		}
	assert_int_equal(sounds_of(VOICE_TICK), ticks);
	assert_int_equal(sounds_of(VOICE_DOWN) + sounds_of(VOICE_UP),
	    p->turns * p->bows_each);
	assert_int_equal(sounds_of(VOICE_COUNT), p->count_in_bows * p->pulses);
}

/* Each change of half a second or more tells its whole number. */
static void check_notes(const struct passage *p, int rate)
{
	for (int t = 0; t < p->turns; t++) {
		bool last = t == p->turns - 1;
		int64_t from = frames_of_ms(passage_bows_end_ms(p, t), rate);
		int64_t to = last
		    ? score.length
		    : frames_of_ms(passage_turn_ms(p, t + 1), rate);

		assert_int_equal(sounds_in(VOICE_FINGER, from, to),
		    last ? p->coming : p->unit[t + 1]);
	}
}

/* In order, inside the passage, and no note or tone over a pulse. */
static void check_order(void)
{
	int64_t free_from = 0;

	for (int i = 0; i < score.sounds; i++) {
		const struct sound *s = &score.sound[i];
		bool held = s->voice == VOICE_FINGER || s->voice == VOICE_TONE;

		assert_true(s->frame >= 0 && s->length > 0);
		assert_true(end_of(s) <= score.length);
		assert_true(i == 0 || s->frame >= score.sound[i - 1].frame);
		assert_true(!held || s->frame >= free_from);
		if (held)
			free_from = end_of(s);
		else
			assert_true(s->frame >= free_from);
	}
	for (int i = 1; i < score.cues; i++)
		assert_true(score.cue[i].frame >= score.cue[i - 1].frame);
}

static void test_random(void **state)
{
	(void)state;
	seeded_begin("passages");
	for (int i = 0; i < 1000; i++) {
		struct passage p = random_passage();
		int rate = seeded(RATE_MIN, RATE_MAX);

		assert_true(score_make(&score, &p, rate));
		check_against_words(&p, rate);
		check_notes(&p, rate);
		check_order();
	}
}

/* The same wish gives the same bytes. */
static void test_same_bytes(void **state)
{
	static struct score again;
	struct passage p = usual_passage(8);

	(void)state;
	memset(&score, 0, sizeof score);
	memset(&again, 0, sizeof again);
	assert_true(score_make(&score, &p, 88200));
	assert_true(score_make(&again, &p, 88200));
	assert_memory_equal(&score, &again, sizeof score);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_times),
		cmocka_unit_test(test_bows),
		cmocka_unit_test(test_six_holds_no_second),
		cmocka_unit_test(test_knocks_never_change),
		cmocka_unit_test(test_count_in),
		cmocka_unit_test(test_finger_notes),
		cmocka_unit_test(test_squeezed_notes),
		cmocka_unit_test(test_no_room),
		cmocka_unit_test(test_tones),
		cmocka_unit_test(test_fading),
		cmocka_unit_test(test_cues),
		cmocka_unit_test(test_no_pulses),
		cmocka_unit_test(test_refused),
		cmocka_unit_test(test_fullest),
		cmocka_unit_test(test_random),
		cmocka_unit_test(test_same_bytes),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
