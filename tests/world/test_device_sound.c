/*
 * test_device_sound.c - through real PortAudio, to the frame
 *
 * The card is ALSA's `null` below `file`, which takes frames as they come and
 * keeps them: what stands in the file is what a loudspeaker would have got.
 * It must be, bit by bit, what an engine gives that is run in this process.
 */
#include "sound_fixture.h"

#include "../sound/render.h"
#include "evenhand/base/frames.h"

enum { RATE = 48000, CHANNELS = 2, LEVEL = 500 };

static const struct sound_wish wish = { .level = LEVEL };

static struct device *open_unpaced(struct sound_keeper *k, int rate)
{
	struct fault f;
	struct device *d = device_sound_open(k, &wish, rate, false, &f);

	assert_non_null(d);
	assert_int_equal(device_state(d), DEVICE_OPENING);
	assert_int_equal(device_sentence(d).id, M_NONE);
	return d;
}

/* Samples of the first channel as they stand in the tap. */
static float *tapped(const struct fixture *x, int64_t *frames)
{
	long found = size_of(x->tap);
	size_t size = found > 0 ? (size_t)found : 0;
	FILE *f = fopen(x->tap, "rb");
	float *samples;

	assert_non_null(f);
	assert_in_range(size, 1, 1 << 30);
	*frames = (int64_t)(size / sizeof(float) / CHANNELS);
	samples = calloc(size, 1);
	assert_non_null(samples);
	assert_int_equal(fread(samples, 1, size, f), size);
	fclose(f);
	for (int64_t i = 0; i < *frames; i++) {
		/* Both sides say the same. */
		assert_true(samples[2 * i] == samples[2 * i + 1]);
		samples[i] = samples[2 * i];
	}
	return samples;
}

static int64_t first_sound(const float *x, int64_t n)
{
	for (int64_t i = 0; i < n; i++)
		if (x[i] != 0)
			return i;
	return n;
}

/*
 * From the first sound on the tap is what was expected.  PortAudio begins with
 * some silence of its own.
 */
static void same_sound(
    const struct fixture *x, const float *expected, int64_t n)
{
	int64_t taps, first = first_sound(expected, n);
	float *tap = tapped(x, &taps);
	int64_t offset = first_sound(tap, taps) - first;

	assert_true(first < n);
	assert_true(offset >= 0);
	assert_true(taps - offset >= n);
	assert_memory_equal(tap + offset + first, expected + first,
	    (size_t)(n - first) * sizeof *tap);
	assert_int_equal(first_sound(tap + offset + n, taps - offset - n),
	    taps - offset - n);
	free(tap);
}

/* Closes all, and waits until the child has gone, and so the tap is whole. */
static void close_all(struct device *d, struct sound_keeper *k)
{
	pid_t keeper = keeper_process(), child = child_process(keeper);

	assert_true(keeper > 0 && child > 0);
	device_close(d);
	sound_keeper_close(k);
	assert_true(gone_within(child, 3000));
	assert_true(gone_within(keeper, 3000));
}

static struct passage minutes(int turns)
{
	struct passage p = render_turn(3300, 8);

	p.settle_ms = 3000;
	p.count_in_bows = 1;
	p.turns = turns;
	for (int i = 0; i < turns; i++)
		p.unit[i] = i + 1;
	p.tone[0] = 220000;
	p.tone[1] = 246942;
	return p;
}

/* Passages, silence in the middle of one, and another: every sample. */
static void plays_exactly(struct fixture *x, int rate)
{
	struct passage long_one = minutes(8), other = render_turn(1700, 6);
	int64_t cut = frames_of_ms(31234, rate),
		end = frames_of_ms(50000, rate);
	float *expected = calloc((size_t)end, sizeof *expected);
	struct engine *e = render_engine(rate, LEVEL);
	struct fault f;
	struct sound_keeper *k = sound_keeper_open(sound_program(), &f);
	struct device *d = open_unpaced(k, rate);

	assert_non_null(expected);
	for (int64_t frame = 0; frame < cut;) {
		if (frame == 0)
			assert_true(device_play(d, &long_one, 1234));
		frame += seeded(1, 30000);
		frame = frame < cut ? frame : cut;
		device_advance(d, frame);
		device_look(d);
		assert_int_equal(device_frame(d), frame);
		assert_int_equal(device_heard(d), frame);
	}
	assert_int_equal(device_state(d), DEVICE_SOUNDS);
	assert_int_equal(device_sentence(d).id, M_DEVICE_SOUNDS_USUAL);
	assert_string_equal(device_name(d), "default, ALSA");
	device_silence(d);
	assert_true(device_play(d, &other, cut + rate));
	device_advance(d, end);
	assert_int_equal(device_frame(d), end);
	assert_int_equal(device_lost_ms(d), 0);
	assert_int_equal(device_dropped(d), 0);

	assert_true(render_play(e, &long_one, 1234));
	render_to(e, expected, cut, CUT_BY_LOT);
	assert_true(engine_silence(e, 0));
	assert_true(render_play(e, &other, cut + rate));
	render_to(e, expected + cut, end, CUT_BY_LOT);
	free(e);
	close_all(d, k);
	same_sound(x, expected, end);
	free(expected);
}

static void test_exact(void **state)
{
	fixture_cards(*state, CARD_TAPPED);
	plays_exactly(*state, 48000);
	plays_exactly(*state, 44100);
}

/* More passages than the engine has slots, one after the other. */
static void test_many(void **state)
{
	struct passage p = render_turn(1000, 5);
	struct fault f;
	struct sound_keeper *k;
	struct device *d;
	int64_t length = frames_of_ms(passage_ms(&p), RATE), end = 40 * length;
	float *expected = calloc((size_t)end, sizeof *expected);
	struct engine *e = render_engine(RATE, LEVEL);

	assert_non_null(expected);
	fixture_cards(*state, CARD_TAPPED);
	k = sound_keeper_open(sound_program(), &f);
	d = open_unpaced(k, RATE);
	for (int i = 0; i < 40; i++) {
		assert_true(device_play(d, &p, i * length + 100));
		device_advance(d, i * length + length / 2);
		engine_collect(e);
		assert_true(render_play(e, &p, i * length + 100));
		render_to(e, expected + engine_frame(e),
		    i * length + length / 2, 512);
	}
	device_advance(d, end);
	render_to(e, expected + engine_frame(e), end, 512);
	free(e);
	close_all(d, k);
	same_sound(*state, expected, end);
	free(expected);
}

static int seed(void **state)
{
	(void)state;
	seeded_begin("sound");
	return 0;
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_exact),
		T(test_many),
	};

	return cmocka_run_group_tests(tests, seed, NULL);
}
