/*
 * test_story.c - acceptance stories 3 and 10, as far as they are heard
 *
 * A real routine is loaded, planned, practised and played by the engine, and
 * what comes out is listened to: the frames at which something begins to sound
 * after nothing did.
 *
 *	routine ─▶ session ─▶ passage ─▶ score ─▶ engine ─▶ samples ─▶ onsets
 *
 * The program has no way to show frames, and needs none: this test does what
 * src/command/practise_run.c does with a device that is not paced.  The grid
 * by itself is proved in tests/score/test_pulse.c (bow 101 at frame 14553000,
 * a whole day of pulses) and test_score.c, the samples in
 * tests/sound/test_engine.c.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "../sound/render.h"
#include "evenhand/base/frames.h"
#include "evenhand/coach/session.h"
#include "evenhand/world/load.h"

enum { ONSETS_MAX = 2000, TURNS_MAX = 100, PULSES = 8 };

static const struct history nothing;
static struct routine *routine;
static struct session session;
static struct effects effects;
static struct engine *engine;

/* What is heard and kept. */
static int64_t onset[ONSETS_MAX];
static int onsets;
static int quiet; /* frames of nothing just before, 2 is silence */
static int64_t heard_last;
static struct turn_row turn[TURNS_MAX];
static int turns;

static void listen(const float *samples, int64_t from, int n)
{
	for (int i = 0; i < n; i++) {
		if (samples[i] == 0) {
			quiet++;
			continue;
		}
		/* Sounds cross zero; they do not stay there. */
		if (quiet >= 2 && onsets < ONSETS_MAX)
			onset[onsets++] = from + i;
		quiet = 0;
		heard_last = from + i;
	}
}

/* Lets the engine reach a frame, in blocks of any size. */
static void play_to(int64_t frame)
{
	float block[CUT_MAX];
	int64_t left;

	while ((left = frame - engine_frame(engine)) > 0) {
		int64_t from = engine_frame(engine);
		int n = seeded(1, CUT_MAX);

		n = n > left ? (int)left : n;
		engine_fill(engine, block, n);
		listen(block, from, n);
	}
}

static void carry_out(const struct effect *e)
{
	if (e->kind == EFFECT_PASSAGE) {
		engine_collect(engine);
		assert_true(render_play(engine, &e->passage, e->frame));
	} else if (e->kind == EFFECT_SILENCE) {
		assert_true(engine_silence(engine, 0));
	} else if (e->kind == EFFECT_TURN) {
		assert_true(turns < TURNS_MAX);
		turn[turns++] = e->turn;
	}
}

static void step(struct input in)
{
	session_step(&session, &in, &effects);
	assert_false(effects.more);
	for (int i = 0; i < effects.count; i++)
		carry_out(&effects.at[i]);
}

static void reach(int64_t frame)
{
	int64_t wake;

	while ((wake = session_wake(&session)) <= frame) {
		play_to(wake);
		step((struct input) { .kind = INPUT_FRAME, .frame = wake });
	}
	play_to(frame);
}

static int64_t frame_at(int64_t ms)
{
	return session.first_sound + frames_of_ms(ms, session.rate);
}

static void press(int64_t frame, enum key key)
{
	reach(frame);
	step((struct input) { .kind = INPUT_KEY, .frame = frame, .key = key });
}

/* How a line of the built-in cello routine is changed; NULL: not at all. */
static const char *changed(const char *line, const char *bow)
{
	/* Shorter than a full size, so that no slide is too fast at 3.3 s. */
	if (strncmp(line, "  string_length_cm:", 19) == 0)
		return "  string_length_cm: 60";
	if (strncmp(line, "  bow_seconds:", 14) == 0)
		return bow;
	if (strncmp(line, "  work_on:", 10) == 0)
		return "  work_on: tone";
	if (strncmp(line, "  no_further_than:", 18) == 0)
		return "  no_further_than: tone";
	return NULL;
}

/* The built-in cello routine with other bows, worked on at the stage tone. */
static void load(const char *bow)
{
	char path[] = "/tmp/evenhand-story-XXXXXX";
	size_t length;
	const char *text = NULL;
	struct load_paths paths;
	struct faults faults = { 0 };
	bool unreadable;

	for (int i = 0; i < builtin_count(); i++)
		if (strcmp(builtin_name(i), "cello") == 0)
			text = builtin_text(i, &length);
	assert_non_null(text);
	FILE *f = fdopen(mkstemp(path), "w");
	assert_non_null(f);
	for (const char *end; *text; text = end + 1) {
		end = strchr(text, '\n');
		const char *other = changed(text, bow);

		if (other)
			fprintf(f, "%s\n", other);
		else
			fprintf(f, "%.*s\n", (int)(end - text), text);
	}
	fclose(f);
	routine = load_routine(path, &paths, &faults, &unreadable);
	unlink(path);
	assert_non_null(routine);
}

/* From the first page to the first sound, with marks after each turn. */
static void begin(const char *bow, int rate)
{
	struct plan_wish wish = { .history = &nothing,
		.now = { INT64_C(1772470800), 0 }, /* 2026-03-02T17:00 UTC */
		.marking = MARKING_TURN };

	load(bow);
	wish.routine = routine;
	engine = render_engine(rate, 500);
	onsets = turns = 0;
	quiet = 2;
	heard_last = -1;
	session_begin(&session, &wish, rate, &effects);
	press(frames_of_ms(1000, rate), KEY_FORWARD);
	press(frames_of_ms(2000, rate), KEY_FORWARD);
	assert_int_equal(session.page, PAGE_PLAY);
}

static void end(void)
{
	assert_int_equal(engine_late(engine), 0);
	assert_int_equal(engine_dropped(engine), 0);
	free(engine);
	routine_free(routine);
}

/* A clean mark in each change until a time of the session. */
static void all_clean_until(int64_t ms)
{
	int64_t until = frame_at(ms), wake;

	while ((wake = session_wake(&session)) <= until &&
	    session.page == PAGE_PLAY) {
		int before = turns;

		reach(wake);
		if (turns > before)
			press(
			    wake + frames_of_ms(500, session.rate), KEY_CLEAN);
	}
	reach(until);
}

/* Onsets in a bow, and where: counted from its first frame. */
static int in_bow(int64_t start, int64_t length, int64_t *at)
{
	int found = 0;

	for (int i = 0; i < onsets; i++)
		if (onset[i] >= start && onset[i] < start + length &&
		    found < ONSETS_MAX)
			at[found++] = onset[i] - start;
	return found;
}

/* Every bow on the string has its pulses at these frames and no others. */
static int bows_at(int pulses, const int64_t *wanted)
{
	static int64_t at[ONSETS_MAX];
	int64_t bow = frames_of_ms(routine->bow_ms, session.rate);
	int bows = 0;

	for (int t = 0; t < turns; t++) {
		if (turn[t].unit < 0 || turn[t].pulses != pulses)
			continue;
		for (int b = 0; b < turn[t].bows_done; b++, bows++) {
			int64_t start = frame_at(
			    turn[t].start_ms + (int64_t)b * routine->bow_ms);

			assert_int_equal(in_bow(start, bow, at), pulses);
			for (int k = 0; k < pulses; k++)
				assert_int_equal(at[k], wanted[k]);
		}
	}
	return bows;
}

/* --- 3. the pulse grid --- */

/* 48 kHz, bows of 4 s: 48000, 32000 and 24000 apart; none of six at 48000. */
static void test_grid_of_four_seconds(void **state)
{
	static const int64_t four[] = { 0, 48000, 96000, 144000 };
	static const int64_t six[] = { 0, 32000, 64000, 96000, 128000, 160000 };
	static const int64_t eight[] = { 0, 24000, 48000, 72000, 96000, 120000,
		144000, 168000 };

	(void)state;
	begin("  bow_seconds: 4", 48000);
	all_clean_until(292000);
	/* Wide begins at 4; the work is at 6 and, all clean twice, at 8. */
	assert_int_equal(turns, 21);
	assert_int_equal(session.page, PAGE_END);
	assert_int_equal(bows_at(4, four), 8);
	assert_int_equal(bows_at(6, six), 8 + 16);
	assert_int_equal(bows_at(8, eight), 8);
	end();
}

/* 44.1 kHz, bows of 3.3 s: 18191.25 frames a pulse, each rounded anew. */
static void test_grid_of_three_point_three(void **state)
{
	static const int64_t eight[PULSES] = { 0, 18191, 36383, 54574, 72765,
		90956, 109148, 127339 };
	/* 145530 / 6 is whole. */
	static const int64_t six[] = { 0, 24255, 48510, 72765, 97020, 121275 };

	(void)state;
	begin("  bow_seconds: 3.3", 44100);
	all_clean_until(299000);
	assert_int_equal(session.page, PAGE_END);
	assert_true(bows_at(8, eight) >= 8);
	assert_true(bows_at(6, six) >= 16);
	end();
}

/* --- 10. silence within 50 ms --- */

/* h at 3:20, where an up bow begins, and at any moment of the turn. */
static void test_silence(void **state)
{
	static const int rates[] = { 44100, 48000, 96000 };

	(void)state;
	for (int i = 0; i < 12; i++) {
		int rate = rates[i % 3];
		int64_t ms = i < 3 ? 200000 : seeded(196001, 203999);

		begin("  bow_seconds: 4", rate);
		all_clean_until(195000);
		press(frame_at(ms), KEY_HURT);
		assert_int_equal(session.page, PAGE_PAIN_WHERE);
		/* It was sounding: the last pulse was within 2/3 s. */
		assert_true(heard_last > frame_at(ms - 670));
		reach(frame_at(ms + 30000));
		assert_true(heard_last < frame_at(ms + 50));
		end();
	}
}

static int seed(void **state)
{
	(void)state;
	seeded_begin("stories");
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_grid_of_four_seconds),
		cmocka_unit_test(test_grid_of_three_point_three),
		cmocka_unit_test(test_silence),
	};

	return cmocka_run_group_tests(tests, seed, NULL);
}
