/*
 * test_engine.c - samples to the frame, whatever the cut of time
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "evenhand/base/frames.h"
#include "render.h"

enum { LONG = 48000 * 20 };

static float buffer[LONG];
static float other[LONG];

/* Frames at which something begins after nothing sounded. */
static int onsets(const float *x, int64_t n, int64_t *at, int most)
{
	int found = 0;
	bool quiet = true;

	for (int64_t i = 0; i < n; i++) {
		if (quiet && x[i] != 0 && found < most)
			at[found++] = i;
		/* Sounds cross zero; they do not stay there. */
		quiet = x[i] == 0 && (i == 0 || x[i - 1] == 0);
	}
	return found;
}

/* floor(k T fs / (1000 n) + 1/2), for the small numbers of a test. */
static int64_t pulse_frame(int k, int bow_ms, int pulses, int rate)
{
	int64_t num = (int64_t)k * bow_ms * rate, den = 1000 * (int64_t)pulses;

	return (2 * num + den) / (2 * den);
}

/* Two bows of 3.3 s in 8 pulses: 16 sounds, found in the samples. */
static void test_onsets_at_44100(void **state)
{
	static const int64_t frames[] = { 0, 18191, 36383, 54574, 72765, 90956,
		109148, 127339 };
	struct passage p = render_turn(3300, 8);
	int64_t at[32];

	(void)state;
	struct engine *e = render_engine(44100, 700);
	assert_true(render_play(e, &p, 1000));
	render_to(e, buffer, 44100 * 8, 512);
	assert_int_equal(onsets(buffer, 44100 * 8, at, 32), 16);
	for (int i = 0; i < 16; i++)
		assert_int_equal(at[i], 1000 + i / 8 * 145530 + frames[i % 8]);
	free(e);
}

/* Every rung at every usual rate, at a start drawn by lot. */
static void test_onsets(void **state)
{
	static const int rates[] = { 44100, 48000, 88200, 96000 };
	static const int rungs[] = { 4, 6, 8 };
	int64_t at[32];

	(void)state;
	seeded_begin("onsets");
	for (int i = 0; i < 24; i++) {
		int rate = rates[i % 4], rung = rungs[i % 3];
		int bow_ms = 10 * seeded(100, 450);
		struct passage p = render_turn(bow_ms, rung);
		int64_t start = seeded(0, 5000);
		int64_t end = start + frames_of_ms(2 * bow_ms, rate);
		struct engine *e = render_engine(rate, 500);

		assert_true(render_play(e, &p, start));
		render_to(e, buffer, end, CUT_BY_LOT);
		assert_int_equal(onsets(buffer, end, at, 32), 2 * rung);
		for (int k = 0; k < 2 * rung; k++)
			assert_int_equal(at[k],
			    start + frames_of_ms(k / rung * bow_ms, rate) +
				pulse_frame(k % rung, bow_ms, rung, rate));
		free(e);
	}
}

/* --- any cut of time ------------------------------------------------- */

enum { STEPS = 14 };

/* A command sent when the engine stands at a frame. */
struct step {
	int64_t sent, frame;
	int kind, level;
	struct passage passage;
};

static struct passage passage_by_lot(void)
{
	struct passage p = {
		.settle_ms = seeded(0, 1) * seeded(500, 4000),
		.count_in_bows = seeded(0, 1),
		.bow_ms = seeded(1000, 3000),
		.pulses = seeded(1, 16),
		.bows_each = seeded(1, 3),
		.turns = 2,
		.unit = { seeded(0, 8), seeded(0, 8) },
		.coming = seeded(0, 8),
		.change_ms = seeded(500, 3000),
		.last_change_ms = seeded(500, 3000),
		.tone = { 164814, 184997 },
	};

	return p;
}

static void script_by_lot(struct step *s, int rate)
{
	int64_t sent = 0;

	for (int i = 0; i < STEPS; i++) {
		sent += seeded(0, 2 * rate);
		s[i] = (struct step) {
			.sent = sent,
			.frame = sent + seeded(-rate / 10, rate),
			.kind = i == 0 ? 0 : seeded(0, 3),
			.level = seeded(0, 1000),
			.passage = passage_by_lot(),
		};
		if (s[i].frame < 0)
			s[i].frame = 0;
	}
}

static void run_script(
    const struct step *s, int rate, float *out, int64_t n, int cut)
{
	struct engine *e = render_engine(rate, 700);

	for (int i = 0; i < STEPS && s[i].sent < n; i++) {
		render_to(e, out + engine_frame(e), s[i].sent, cut);
		engine_collect(e);
		if (s[i].kind == 2)
			assert_true(engine_silence(e, s[i].frame));
		else if (s[i].kind == 3)
			assert_true(engine_level(e, s[i].level));
		else
			render_play(e, &s[i].passage, s[i].frame);
	}
	render_to(e, out + engine_frame(e), n, cut);
	assert_int_equal(engine_frame(e), n);
	free(e);
}

/* Plays, silences and levels at any frame; blocks of any size. */
static void test_any_cut(void **state)
{
	static const int cuts[] = { 7, 64, 1024, CUT_BY_LOT };
	static const int rates[] = { 44100, 48000, 8000, 96000 };

	int sounded = 0;

	(void)state;
	seeded_begin("cuts");
	for (int i = 0; i < 12; i++) {
		struct step script[STEPS];
		int64_t n = LONG / 2;
		int rate = rates[i % 4];

		script_by_lot(script, rate);
		run_script(script, rate, buffer, n, 1);
		sounded += render_peak(buffer, n) > 0;
		for (size_t c = 0; c < 4; c++) {
			run_script(script, rate, other, n, cuts[c]);
			assert_memory_equal(
			    buffer, other, (size_t)n * sizeof *buffer);
		}
	}
	/* One script or two may be silenced from its start. */
	assert_true(sounded >= 8);
}

/* --- commands -------------------------------------------------------- */

/* A second into a turn: within 5 ms nothing, and the slots are free. */
static void test_silence(void **state)
{
	struct passage p = render_turn(2000, 8);
	int slot;

	(void)state;
	p.last_change_ms = 4000;
	for (int at = 48001; at < 48720; at += 37) {
		struct engine *e = render_engine(48000, 700);

		for (int i = 0; i < ENGINE_SLOTS; i++)
			assert_true(render_play(e, &p, i * 12000));
		assert_null(engine_slot(e, &slot));
		assert_true(engine_silence(e, at));
		render_to(e, buffer, 96000, CUT_BY_LOT);
		assert_true(render_peak(buffer + at - 400, 400) > 0);
		assert_true(render_peak(buffer + at + 240, 40000) == 0);
		engine_collect(e);
		assert_non_null(engine_slot(e, &slot));
		for (int i = 0; i < ENGINE_SLOTS; i++)
			assert_true(render_play(e, &p, 100000));
		free(e);
	}
}

/* Fading is a slope: in the middle of a sound no step is added. */
static void test_fade_has_no_step(void **state)
{
	struct passage p = render_turn(2000, 1);

	(void)state;
	struct engine *e = render_engine(48000, 700);
	assert_true(render_play(e, &p, 0));
	render_to(e, other, 4000, 64);
	free(e);
	e = render_engine(48000, 700);
	assert_true(render_play(e, &p, 0));
	assert_true(engine_silence(e, 500));
	render_to(e, buffer, 4000, 64);
	assert_memory_equal(buffer, other, 501 * sizeof *buffer);
	for (int i = 500; i < 740; i++) {
		float want = other[i] * (1 - (float)(i - 500) / 240);

		assert_true(fabsf(buffer[i] - want) < 1e-6F);
	}
	free(e);
}

/* Silence at once, asked for as frame 0, and what was not yet begun. */
static void test_silence_at_once(void **state)
{
	struct passage p = render_turn(2000, 8);
	int slot;

	(void)state;
	struct engine *e = render_engine(48000, 700);
	assert_true(render_play(e, &p, 0));
	assert_true(render_play(e, &p, 30000));
	render_to(e, buffer, 1000, 64);
	assert_true(engine_silence(e, 0));
	render_to(e, buffer, 96000, 64);
	assert_true(render_peak(buffer, 240) > 0);
	assert_true(render_peak(buffer + 240, 96000 - 1240) == 0);
	engine_collect(e);
	for (int i = 0; i < ENGINE_SLOTS; i++) {
		assert_non_null(engine_slot(e, &slot));
		assert_true(render_play(e, &p, 200000));
	}
	free(e);
}

/* A later silence does not put an earlier one off. */
static void test_two_silences(void **state)
{
	struct passage p = render_turn(2000, 8);

	(void)state;
	struct engine *e = render_engine(48000, 700);
	assert_true(render_play(e, &p, 0));
	assert_true(engine_silence(e, 11000));
	assert_true(engine_silence(e, 30000));
	render_to(e, buffer, 48000, CUT_BY_LOT);
	assert_true(render_peak(buffer, 11000) > 0);
	assert_true(render_peak(buffer + 11240, 48000 - 11240) == 0);
	free(e);
}

/* What is played after a silence is meant to sound. */
static void test_play_after_silence(void **state)
{
	struct passage p = render_turn(2000, 8);
	int64_t at[32];

	(void)state;
	struct engine *e = render_engine(48000, 700);
	assert_true(render_play(e, &p, 0));
	render_to(e, buffer, 1000, 64);
	assert_true(engine_silence(e, 9000));
	assert_true(render_play(e, &p, 20000));
	render_to(e, buffer + 1000, 48000, CUT_BY_LOT);
	assert_int_equal(onsets(buffer + 9240, 38000, at, 32), 3);
	assert_int_equal(at[0] + 9240, 20000);
	assert_int_equal(at[1] + 9240, 32000);
	assert_int_equal(at[2] + 9240, 44000);
	free(e);
}

/* Late: the rest of the passage falls where it would have fallen. */
static void test_late(void **state)
{
	struct passage p = render_turn(2000, 8);

	(void)state;
	for (int late = 1; late < 60000; late += 4999) {
		struct engine *e = render_engine(48000, 700);
		struct engine *on_time = render_engine(48000, 700);

		render_to(e, buffer, 5000 + late, 512);
		assert_true(render_play(e, &p, 5000));
		assert_true(render_play(on_time, &p, 5000));
		render_to(e, buffer + 5000 + late, 200000, 512);
		render_to(on_time, other, 200000, 512);
		/* The sound under way is left out, at most 70 ms of it. */
		int64_t from = 5000 + late + 3360;
		assert_memory_equal(buffer + from, other + from,
		    (size_t)(200000 - from) * sizeof *buffer);
		assert_true(render_peak(buffer, 5000 + late) == 0);
		engine_collect(e);
		engine_collect(on_time);
		assert_int_equal(engine_late(e), 1);
		assert_int_equal(engine_late(on_time), 0);
		free(e);
		free(on_time);
	}
}

/* Late until the very frame of a sound: that sound is not late. */
static void test_late_to_a_sound(void **state)
{
	struct passage p = render_turn(2000, 8);
	struct engine *e = render_engine(48000, 700);
	struct engine *on_time = render_engine(48000, 700);
	struct score *s;
	int slot;
	int64_t at;

	(void)state;
	s = engine_slot(e, &slot);
	assert_true(s && score_make(s, &p, 48000) && s->sounds > 3);
	at = 5000 + s->sound[3].frame;
	/* The one before has died away. */
	assert_true(s->sound[3].frame - s->sound[2].frame > 3360);
	render_to(e, buffer, at, 512);
	assert_true(engine_play(e, slot, 5000));
	assert_true(render_play(on_time, &p, 5000));
	render_to(e, buffer + at, at + 3360, 512);
	render_to(on_time, other, at + 3360, 512);
	assert_true(render_peak(other + at, 3360) > 0);
	assert_memory_equal(buffer + at, other + at, 3360 * sizeof *buffer);
	free(e);
	free(on_time);
}

/* All over before it was asked for: nothing sounds, the slot comes back. */
static void test_too_late(void **state)
{
	struct passage p = render_turn(1000, 4);
	int slot;

	(void)state;
	struct engine *e = render_engine(48000, 700);
	render_to(e, buffer, 480000, 512);
	for (int i = 0; i < 3 * ENGINE_SLOTS; i++) {
		assert_true(render_play(e, &p, 0));
		render_to(e, buffer, 480000 + 512 * (i + 1), 512);
		assert_true(render_peak(buffer, 512) == 0);
		engine_collect(e);
		assert_non_null(engine_slot(e, &slot));
	}
	assert_int_equal(engine_late(e), 3 * ENGINE_SLOTS);
	free(e);
}

/* Slots run out, and come back when the last sound has died away. */
static void test_slots(void **state)
{
	struct passage p = render_turn(1000, 4);
	int slot;

	(void)state;
	struct engine *e = render_engine(48000, 700);
	struct score *same = engine_slot(e, &slot);
	assert_ptr_equal(engine_slot(e, &slot), same);
	for (int i = 0; i < ENGINE_SLOTS; i++)
		assert_true(render_play(e, &p, 0));
	assert_null(engine_slot(e, &slot));
	/* The last tick begins at 1750 ms and lasts 15. */
	render_to(e, buffer, 84000 + 719, 64);
	engine_collect(e);
	assert_null(engine_slot(e, &slot));
	render_to(e, buffer, 84000 + 720, 64);
	engine_collect(e);
	assert_non_null(engine_slot(e, &slot));
	assert_int_equal(engine_dropped(e), 0);
	free(e);
}

/* More commands than the ring holds: refused, counted, nothing breaks. */
static void test_full_ring(void **state)
{
	(void)state;
	struct engine *e = render_engine(48000, 700);
	for (int i = 0; i < RING_ITEMS; i++)
		assert_true(engine_level(e, 500));
	assert_false(engine_level(e, 500));
	struct passage p = render_turn(1000, 4);
	int slot, again;
	assert_non_null(engine_slot(e, &slot));
	assert_false(render_play(e, &p, 0));
	assert_non_null(engine_slot(e, &again));
	assert_int_equal(slot, again);
	assert_false(engine_silence(e, 0));
	assert_int_equal(engine_dropped(e), 3);
	render_to(e, buffer, 64, 64);
	assert_true(render_play(e, &p, 64));
	free(e);
}

/* --- level ----------------------------------------------------------- */

static void test_level(void **state)
{
	struct passage p = render_turn(2000, 8);

	(void)state;
	p.settle_ms = 4000;
	p.tone[0] = 220000;
	struct engine *e = render_engine(48000, 800);
	assert_true(render_play(e, &p, 0));
	render_to(e, other, 48000, 512);
	free(e);
	e = render_engine(48000, 800);
	assert_true(render_play(e, &p, 0));
	render_to(e, buffer, 20000, 512);
	assert_true(engine_level(e, 200));
	render_to(e, buffer + 20000, 48000, CUT_BY_LOT);
	/* A tone sounds there; over 20 ms it comes down to a quarter. */
	assert_true(render_peak(other + 20000, 960) > 0.05F);
	for (int i = 0; i < 48000; i++) {
		float part = i < 20000 ? 0
		    : i < 20960	       ? (float)(i - 20000) / 960
				       : 1;
		float want = other[i] * (1 - 0.75F * part);

		assert_true(fabsf(buffer[i] - want) < 1e-6F);
	}
	free(e);
}

/* Levels out of range are the nearest ones in it. */
static void test_level_clamped(void **state)
{
	struct passage p = render_turn(1000, 1);

	(void)state;
	for (int i = 0; i < 2; i++) {
		struct engine *e = render_engine(48000, i ? -5 : 500000);

		assert_true(render_play(e, &p, 0));
		render_to(e, buffer, 4000, 64);
		float peak = render_peak(buffer, 4000);
		assert_true(i ? peak == 0 : peak > 0.3F && peak < 0.7F);
		free(e);
	}
}

/* -3 dB of full scale, at any level, with all there can be at once. */
static void test_peaks(void **state)
{
	struct passage dense = render_turn(1000, 16);

	(void)state;
	dense.bows_each = 8;
	dense.turns = 2;
	dense.unit[1] = 8;
	dense.change_ms = 500;
	dense.last_change_ms = 500;
	dense.coming = 8;
	for (int slots = 1; slots <= ENGINE_SLOTS; slots++) {
		struct engine *e = render_engine(48000, 1000);

		for (int i = 0; i < slots; i++)
			assert_true(render_play(e, &dense, 0));
		render_to(e, buffer, LONG, 512);
		float peak = render_peak(buffer, LONG);
		assert_true(peak < 0.7079F);
		assert_true(slots == 1 || peak > 0.5F);
		free(e);
	}
}

/* Below half of full scale the sum is left as it is. */
static void test_usual_level_is_clean(void **state)
{
	struct passage p = render_turn(2000, 8);

	(void)state;
	struct engine *e = render_engine(48000, 1000);
	struct engine *half = render_engine(48000, 500);
	assert_true(render_play(e, &p, 0));
	assert_true(render_play(half, &p, 0));
	render_to(e, buffer, 192000, 512);
	render_to(half, other, 192000, 512);
	for (int i = 0; i < 192000; i++)
		assert_true(buffer[i] == 2 * other[i]);
	free(e);
	free(half);
}

/* --- a slot filled by hand ------------------------------------------- */

/* The slow model: sounds that find every voice taken when they begin. */
static uint64_t lost_of(const struct score *s)
{
	int64_t end[ENGINE_VOICES_MAX] = { 0 };
	uint64_t lost = 0;

	for (int i = 0; i < s->sounds; i++) {
		int v = 0;

		while (v < ENGINE_VOICES_MAX && end[v] > s->sound[i].frame)
			v++;
		if (v == ENGINE_VOICES_MAX)
			lost++;
		else
			end[v] = s->sound[i].frame + s->sound[i].length;
	}
	return lost;
}

/* More sounds at once than there are voices: lost, counted, same samples. */
static void test_too_many_sounds(void **state)
{
	(void)state;
	for (int run = 0; run < 2; run++) {
		struct engine *e = render_engine(48000, 300);
		int slot;
		struct score *s = engine_slot(e, &slot);

		s->rate = 48000;
		s->sounds = 400;
		for (int i = 0; i < s->sounds; i++)
			s->sound[i] = (struct sound) {
				.frame = i * 50,
				.length = 1500 + i * 37 % 900,
				.millihertz = 100000 + 1000 * i,
				.voice = VOICE_TONE,
				.level = 50,
			};
		assert_true(engine_play(e, slot, 333));
		render_to(e, run ? buffer : other, 30000, run ? 1 : 1024);
		assert_true(lost_of(s) > 100);
		assert_int_equal(engine_dropped(e), lost_of(s));
		engine_collect(e);
		assert_non_null(engine_slot(e, &slot));
		free(e);
	}
	assert_memory_equal(buffer, other, 30000 * sizeof *buffer);
}

/* Without a passage every sample is nothing at all. */
static void test_quiet(void **state)
{
	(void)state;
	struct engine *e = render_engine(48000, 1000);
	for (int i = 0; i < 5000; i++)
		buffer[i] = 1;
	engine_fill(e, buffer, 0);
	assert_int_equal(engine_frame(e), 0);
	render_to(e, buffer, 5000, CUT_BY_LOT);
	assert_true(render_peak(buffer, 5000) == 0);
	assert_int_equal(engine_frame(e), 5000);
	assert_int_equal(engine_rate(e), 48000);
	free(e);
}

/* A passage that began before the engine did goes on where it would be. */
static void test_began_before(void **state)
{
	enum { RATE = 48000, AGO = RATE * 9 / 10, LENGTH = RATE * 4 };
	static float whole[LENGTH], rest[LENGTH - AGO];
	struct passage p = render_turn(1000, 4);
	struct engine *first = render_engine(RATE, 700);
	struct engine *second = render_engine(RATE, 700);

	(void)state;
	assert_true(render_play(first, &p, 0));
	render_to(first, whole, LENGTH, CUT_BY_LOT);
	/* Nothing sounds at that frame. */
	assert_true(render_peak(whole + AGO - 100, 200) == 0);
	assert_true(render_play(second, &p, -AGO));
	render_to(second, rest, LENGTH - AGO, CUT_BY_LOT);
	assert_memory_equal(rest, whole + AGO, sizeof rest);
	assert_true(render_peak(rest, LENGTH - AGO) > 0);
	free(first);
	free(second);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_onsets_at_44100),
		cmocka_unit_test(test_onsets),
		cmocka_unit_test(test_any_cut),
		cmocka_unit_test(test_silence),
		cmocka_unit_test(test_fade_has_no_step),
		cmocka_unit_test(test_silence_at_once),
		cmocka_unit_test(test_two_silences),
		cmocka_unit_test(test_play_after_silence),
		cmocka_unit_test(test_late),
		cmocka_unit_test(test_late_to_a_sound),
		cmocka_unit_test(test_too_late),
		cmocka_unit_test(test_slots),
		cmocka_unit_test(test_full_ring),
		cmocka_unit_test(test_level),
		cmocka_unit_test(test_level_clamped),
		cmocka_unit_test(test_peaks),
		cmocka_unit_test(test_usual_level_is_clean),
		cmocka_unit_test(test_too_many_sounds),
		cmocka_unit_test(test_quiet),
		cmocka_unit_test(test_began_before),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
