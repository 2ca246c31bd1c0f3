/*
 * test_outlet.c - the gate, the channels, and what is said about time
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include <pthread.h>

#include "../sound/render.h"
#include "evenhand/base/frames.h"
#include "evenhand/sound/outlet.h"

enum { RATE = 48000, SECONDS = 6, FRAMES = RATE * SECONDS, CHANNELS = 2 };

static struct outlet outlet;
static struct engine *engine;
static float plain[FRAMES], out[FRAMES * CHANNELS];

/* A tone all the time, in both engines. */
static int begin(void **state)
{
	struct passage p = render_turn(1000, 16);
	struct engine *other = render_engine(RATE, 500);

	(void)state;
	p.bows_each = 4;
	memset(&outlet, 0, sizeof outlet);
	engine = render_engine(RATE, 500);
	if (!render_play(engine, &p, 0) || !render_play(other, &p, 0))
		return -1;
	render_to(other, plain, FRAMES, CUT_BY_LOT);
	free(other);
	return 0;
}

static int end(void **state)
{
	(void)state;
	free(engine);
	return 0;
}

/* Fills up to a frame in blocks by lot, with a beat before each or none. */
static void fill(int64_t frame, int channels, bool beats)
{
	int64_t now;

	while ((now = engine_frame(engine)) < frame) {
		int size = seeded(1, CUT_MAX);

		if (beats)
			outlet_beat(&outlet);
		if (size > frame - now)
			size = (int)(frame - now);
		outlet_fill(
		    &outlet, engine, out + now * channels, size, channels);
	}
}

static void same_as_plain(int64_t from, int64_t to, int channels)
{
	for (int64_t i = from; i < to; i++)
		for (int c = 0; c < channels; c++)
			assert_true(out[i * channels + c] == plain[i]);
}

static bool nothing(int64_t from, int64_t to)
{
	for (int64_t i = from; i < to; i++)
		if (out[i] != 0)
			return false;
	return true;
}

/* Open, it changes nothing, in one channel or two. */
static void test_open(void **state)
{
	(void)state;
	fill(FRAMES, CHANNELS, true);
	same_as_plain(0, FRAMES, CHANNELS);
	assert_int_equal(outlet_shuts(&outlet), 0);
}

static void test_one_channel(void **state)
{
	(void)state;
	fill(FRAMES, 1, true);
	same_as_plain(0, FRAMES, 1);
}

/* A second without a beat: it fades; a beat opens it again. */
static void test_nobody(void **state)
{
	int64_t fade = frames_of_ms(ENGINE_FADE_MS, RATE);
	int64_t beat = RATE;

	(void)state;
	fill(beat, 1, true);
	/* Seen in the block that begins here. */
	outlet_beat(&outlet);
	fill(2 * beat - CUT_MAX, 1, false);
	same_as_plain(0, 2 * beat - CUT_MAX, 1);
	assert_int_equal(outlet_shuts(&outlet), 0);
	assert_int_equal(outlet_dropouts(&outlet), 0);
	fill(3 * beat, 1, false);
	assert_int_equal(outlet_shuts(&outlet), 1);
	/* What is not heard because of it is an interruption like others. */
	assert_int_equal(outlet_dropouts(&outlet), 1);
	assert_true(nothing(2 * beat + CUT_MAX + fade, 3 * beat));
	fill(4 * beat, 1, true);
	same_as_plain(3 * beat + fade, 4 * beat, 1);
	assert_int_equal(outlet_shuts(&outlet), 1);
	fill(6 * beat, 1, false);
	assert_int_equal(outlet_shuts(&outlet), 2);
	assert_int_equal(outlet_dropouts(&outlet), 2);
	/* No frame was left out meanwhile. */
	assert_int_equal(engine_frame(engine), 6 * RATE);
}

/* A gate that moves makes no step larger than the sounds' own. */
static float largest_step(const float *x, int64_t n)
{
	float largest = 0;

	for (int64_t i = 1; i < n; i++) {
		float step = x[i] > x[i - 1] ? x[i] - x[i - 1]
					     : x[i - 1] - x[i];

		largest = step > largest ? step : largest;
	}
	return largest;
}

static void test_end(void **state)
{
	int64_t at = RATE + 700, fade = frames_of_ms(ENGINE_FADE_MS, RATE);

	(void)state;
	fill(at, 1, true);
	outlet_end(&outlet);
	fill(FRAMES, 1, true);
	same_as_plain(0, at, 1);
	assert_true(nothing(at + fade, FRAMES));
	assert_true(largest_step(out, FRAMES) <= largest_step(plain, FRAMES));
	assert_int_equal(outlet_shuts(&outlet), 1);
	assert_int_equal(outlet_dropouts(&outlet), 0);
}

/* It opens over as many frames as it closes, not at a stroke. */
static void test_opens_softly(void **state)
{
	int64_t fade = frames_of_ms(ENGINE_FADE_MS, RATE), heard = 3 * RATE;
	float before = 0;

	(void)state;
	fill(3 * RATE, 1, false);
	fill(4 * RATE, 1, true);
	for (int64_t i = heard; i < heard + 2 * fade; i++) {
		float part;

		if (plain[i] < 0.01f && plain[i] > -0.01f)
			continue;
		part = out[i] / plain[i];
		assert_true(part >= before - 0.001f);
		assert_true(part - before <=
		    (float)(i - heard + 1) / (float)fade + 0.001f);
		heard = i;
		before = part;
	}
	assert_true(before > 0.999f);
}

/* --- Time --------------------------------------------------------------- */

enum { BLOCK = 256, MS_NS = 1000000 };

/* Publishes blocks as a card would play them; returns the next frame. */
static int64_t publish(int64_t frame, int blocks, int64_t late_ns)
{
	for (int i = 0; i < blocks; i++, frame += BLOCK) {
		/* Asked for with some jitter, played without. */
		int64_t asked = frame * 1000000000 / RATE +
		    seeded(0, 4 * MS_NS);
		struct outlet_time t = { .frame = frame,
			.time_ns = asked + late_ns,
			.delay_ns = frame * 1000000000 / RATE + 30 * MS_NS -
			    asked + seeded(-MS_NS, MS_NS) };

		outlet_publish(&outlet, &t, RATE, false);
	}
	return frame;
}

static void test_time(void **state)
{
	struct outlet_time t;
	int64_t frame;

	(void)state;
	assert_false(outlet_read(&outlet, &t));
	frame = publish(0, 1000, 0);
	assert_true(outlet_read(&outlet, &t));
	assert_int_equal(t.frame, frame - BLOCK);
	assert_int_equal(outlet_dropouts(&outlet), 0);
	/* Played later by 60 ms from now on: one interruption. */
	frame = publish(frame, 1000, 60 * MS_NS);
	assert_int_equal(outlet_dropouts(&outlet), 1);
	frame = publish(frame, 1000, 2000 * INT64_C(1000000));
	assert_int_equal(outlet_dropouts(&outlet), 2);
	/* A clock a little off the frames is none. */
	for (int i = 0; i < 20000; i++)
		frame = publish(
		    frame, 1, 2000 * INT64_C(1000000) + i * INT64_C(1000));
	assert_int_equal(outlet_dropouts(&outlet), 2);
	t.frame = frame;
	outlet_publish(&outlet, &t, RATE, true);
	assert_true(outlet_dropouts(&outlet) >= 3);
}

/* Late in two steps, each of which could be no more than jitter. */
static void test_late_by_halves(void **state)
{
	int64_t frame = publish(0, 1000, 0);

	(void)state;
	frame = publish(frame, 2, 30 * MS_NS);
	assert_int_equal(outlet_dropouts(&outlet), 0);
	publish(frame, 1000, 60 * MS_NS);
	assert_int_equal(outlet_dropouts(&outlet), 1);
}

static void test_begins_late(void **state)
{
	(void)state;
	/* A card that begins takes its time. */
	publish(publish(0, 20, 0), 1000, 300 * MS_NS);
	assert_int_equal(outlet_dropouts(&outlet), 0);
}

/*
 * While a card begins each of its times is believed anew: one that was late at
 * first does not hide an interruption soon afterwards.
 */
static void test_settles_anew(void **state)
{
	int blocks = (int)(frames_of_ms(OUTLET_SETTLE_MS, RATE) / BLOCK);
	int64_t frame = publish(0, blocks - 5, 35 * MS_NS);

	(void)state;
	frame = publish(frame, 10, 0);
	assert_int_equal(outlet_dropouts(&outlet), 0);
	publish(frame, 3, 60 * MS_NS);
	assert_int_equal(outlet_dropouts(&outlet), 1);
}

static void *write_times(void *nothing)
{
	for (int64_t i = 1; i < 300000; i++) {
		struct outlet_time t = { i, 3 * i, 5 * i };

		outlet_publish(&outlet, &t, RATE, false);
	}
	return nothing;
}

/* What is read was written in one go. */
static void test_whole(void **state)
{
	pthread_t thread;
	struct outlet_time t = { 0 };

	(void)state;
	assert_int_equal(pthread_create(&thread, NULL, write_times, NULL), 0);
	while (t.frame < 299999)
		if (outlet_read(&outlet, &t)) {
			assert_int_equal(t.time_ns, 3 * t.frame);
			assert_int_equal(t.delay_ns, 5 * t.frame);
		}
	pthread_join(thread, NULL);
	/* One that died half way is not waited for. */
	atomic_fetch_add(&outlet.turn.value, 1);
	assert_false(outlet_read(&outlet, &t));
}

static int seed(void **state)
{
	(void)state;
	seeded_begin("outlet");
	return 0;
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, begin, end)
	const struct CMUnitTest tests[] = {
		T(test_open),
		T(test_one_channel),
		T(test_nobody),
		T(test_end),
		T(test_opens_softly),
		T(test_time),
		T(test_late_by_halves),
		T(test_begins_late),
		T(test_settles_anew),
		T(test_whole),
	};

	return cmocka_run_group_tests(tests, seed, NULL);
}
