/*
 * test_device_hear.c - a microphone through real PortAudio, to the sample
 *
 * ALSA's `file` plugin gives a file as what a microphone hears, as fast as it is
 * asked for.  What is taken must be the file, and each sample at the frame that
 * has its number.
 */
#include "sound_fixture.h"

#include "../score/seeded.h"
#include "evenhand/sound/inlet.h"

enum {
	RATE = 48000,
	CHANNELS = 2,
	SECONDS = 20,
	SAMPLES = SECONDS * RATE,
	/* Behind the end of a file its last part comes again and again. */
	QUIET = RATE / 2,
	MOST = 40000,
};

static const struct sound_wish wish = { .level = 500 };
static const struct sound_wish any = { .level = 0 };

/* A microphone beside a card: two channels from the tap's neighbour. */
#define MICROPHONE(name) \
	"pcm." name " { type asym capture.pcm { type plug slave.pcm { " \
	"type file slave.pcm { type null } file '/dev/null' " \
	"infile '%s.in' format raw } } }\n"
#define CARD_BOTH \
	MICROPHONE("mouse") \
	"pcm.tap { type file slave.pcm { type null } file '%s' " \
	"format raw }\npcm.deaf { type asym playback.pcm tap }\n" \
	"pcm.!default { type asym playback.pcm { type plug slave.pcm tap } " \
	"capture.pcm mouse }\n"
#define CARD_DEAF \
	"pcm.!default { type asym playback.pcm { type plug slave.pcm { " \
	"type file slave.pcm { type null } file '%s' format raw } } }\n"

/* What the microphone hears at a sample, on one of its two channels. */
static float made(int64_t sample, int channel)
{
	int64_t x = sample * 7919 % 16384 - 8192;

	return sample < SAMPLES - QUIET ? (float)(channel ? x / 2 : x) / 16384
					: 0;
}

static float mean(int64_t sample)
{
	return (made(sample, 0) + made(sample, 1)) / 2;
}

static void make_file(const struct fixture *x)
{
	static float frames[SAMPLES][CHANNELS];
	char path[128];
	FILE *f;

	for (int64_t i = 0; i < SAMPLES; i++)
		for (int c = 0; c < CHANNELS; c++)
			frames[i][c] = made(i, c);
	snprintf(path, sizeof path, "%s.in", x->tap);
	f = fopen(path, "wb");
	assert_non_null(f);
	assert_int_equal(fwrite(frames, sizeof frames, 1, f), 1);
	fclose(f);
}

static struct device *open_unpaced(
    struct sound_keeper *k, const struct sound_wish *microphone)
{
	struct fault f;
	struct device *d = device_sound_open(k, &wish, RATE, false, &f);

	assert_non_null(d);
	assert_int_equal(device_microphone(d), MICROPHONE_UNWISHED);
	device_listen(d, microphone);
	assert_int_equal(device_microphone(d), MICROPHONE_OPENING);
	return d;
}

/* Closes all, and waits until the keeper has gone. */
static void leave(struct device *d, struct sound_keeper *k)
{
	pid_t keeper = keeper_process();

	device_close(d);
	sound_keeper_close(k);
	assert_true(gone_within(keeper, 3000));
}

/* Takes what there is, in pieces by lot, and compares it. */
static int64_t take(struct device *d, int64_t due)
{
	static float out[MOST];
	struct heard_samples h;

	while ((h = device_hear(d, out, (size_t)seeded(1, MOST))).count > 0) {
		assert_int_equal(h.rate, RATE);
		assert_true(h.frame == (double)due);
		assert_true(h.frames_each == 1);
		assert_int_equal(h.gap, due == 0);
		for (size_t i = 0; i < h.count; i++)
			assert_true(out[i] == mean(due + (int64_t)i));
		due += (int64_t)h.count;
	}
	return due;
}

/* Every sample, at its frame, however it is asked for. */
static void test_exact(void **state)
{
	struct fault f;
	struct sound_keeper *k;
	struct device *d;
	int64_t due = 0;

	seeded_begin("hear");
	fixture_cards(*state, CARD_BOTH);
	make_file(*state);
	k = sound_keeper_open(sound_program(), &f);
	d = open_unpaced(k, &any);
	for (int64_t frame = 0; frame < SAMPLES;) {
		frame += seeded(1, INLET_SAMPLES / 2);
		frame = frame < SAMPLES ? frame : SAMPLES;
		device_advance(d, frame);
		device_look(d);
		due = take(d, due);
		assert_int_equal(due, frame);
		assert_int_equal(device_microphone(d), MICROPHONE_HEARS);
	}
	assert_int_equal(device_state(d), DEVICE_SOUNDS);
	leave(d, k);
}

/* More than it can hold between two takes: it waits, and loses nothing. */
static void test_long_wait(void **state)
{
	struct fault f;
	struct sound_keeper *k;
	struct device *d;

	seeded_begin("wait");
	fixture_cards(*state, CARD_BOTH);
	make_file(*state);
	k = sound_keeper_open(sound_program(), &f);
	d = open_unpaced(k, &any);
	device_advance(d, SAMPLES);
	assert_int_equal(take(d, 0), SAMPLES);
	leave(d, k);
}

/* None, none of that name, or a card that only plays: the sound is the same. */
static void hears_nothing(
    struct fixture *x, const char *cards, const char *name)
{
	struct sound_wish microphone = { .level = 0 };
	struct fault f;
	struct sound_keeper *k;
	struct device *d;
	float out[10];

	snprintf(microphone.name, sizeof microphone.name, "%s", name);
	fixture_cards(x, cards);
	make_file(x);
	k = sound_keeper_open(sound_program(), &f);
	d = open_unpaced(k, &microphone);
	for (int i = 1; i <= 10; i++) {
		device_advance(d, i * RATE);
		device_look(d);
		assert_int_equal(device_hear(d, out, 10).count, 0);
	}
	assert_int_equal(device_microphone(d), MICROPHONE_MISSING);
	assert_int_equal(device_state(d), DEVICE_SOUNDS);
	assert_int_equal(device_frame(d), 10 * RATE);
	leave(d, k);
}

static void test_missing(void **state)
{
	hears_nothing(*state, CARD_DEAF, "");
	hears_nothing(*state, CARD_BOTH, "deaf");
	hears_nothing(*state, CARD_BOTH, "no such thing");
}

/* By name; and what plays only is no microphone. */
static void test_choice(void **state)
{
	static struct sound_lists lists;
	const struct sound_list *m = &lists.microphones;
	struct sound_wish mouse = { .name = "Mous" };
	struct fault f;
	struct sound_keeper *k;
	struct device *d;

	fixture_cards(*state, CARD_BOTH);
	make_file(*state);
	k = sound_keeper_open(sound_program(), &f);
	assert_true(sound_list(k, &lists, 5000, &f));
	for (int i = 0; i < m->count; i++) {
		assert_true(strcmp(m->card[i].name, "deaf") != 0);
		assert_true(m->card[i].channels > 0);
		assert_true(m->card[i].is_default ==
		    (strcmp(m->card[i].name, "default") == 0));
	}
	for (int i = 0; i < lists.cards.count; i++)
		assert_true(strcmp(lists.cards.card[i].name, "mouse") != 0);
	d = open_unpaced(k, &mouse);
	device_advance(d, RATE);
	assert_int_equal(device_microphone(d), MICROPHONE_HEARS);
	assert_int_equal(take(d, 0), RATE);
	leave(d, k);
}

/* Whether a process was begun to hear, and not to sound. */
static bool hears(long process)
{
	char path[64], words[256];
	size_t n;
	FILE *f;

	snprintf(path, sizeof path, "/proc/%ld/cmdline", process);
	f = fopen(path, "r");
	if (!f)
		return false;
	n = fread(words, 1, sizeof words - 1, f);
	fclose(f);
	words[n] = '\0';
	return n > 0 && strcmp(words + strlen(words) + 1, "--hear") == 0;
}

/* The child of the keeper that hears: which came first says nothing. */
static pid_t hearing_child(pid_t keeper)
{
	char path[64];
	long found = 0;
	FILE *f;

	snprintf(path, sizeof path, "/proc/%d/task/%d/children", (int)keeper,
	    (int)keeper);
	f = fopen(path, "r");
	assert_non_null(f);
	while (fscanf(f, "%ld", &found) == 1 && !hears(found))
		;
	fclose(f);
	assert_true(hears(found));
	return (pid_t)found;
}

/* The microphone's process is killed: the sound has every frame. */
static void test_killed(void **state)
{
	struct fault f;
	struct sound_keeper *k;
	struct device *d;
	float out[10];
	pid_t keeper;

	fixture_cards(*state, CARD_BOTH);
	make_file(*state);
	k = sound_keeper_open(sound_program(), &f);
	keeper = keeper_process();
	d = open_unpaced(k, &any);
	device_look(d);
	assert_true(state_reached(d, DEVICE_SOUNDS, 3000));
	device_advance(d, RATE);
	assert_int_equal(device_microphone(d), MICROPHONE_HEARS);
	kill(hearing_child(keeper), SIGKILL);
	for (int i = 0; i < 3000 && device_microphone(d) == MICROPHONE_HEARS;
	     i++) {
		pause_ms(10);
		device_look(d);
	}
	assert_int_equal(device_microphone(d), MICROPHONE_LOST);
	assert_int_equal(device_hear(d, out, 10).count, 0);
	device_advance(d, 2 * RATE);
	assert_int_equal(device_frame(d), 2 * RATE);
	assert_int_equal(device_state(d), DEVICE_SOUNDS);
	assert_int_equal(device_dropouts(d), 0);
	leave(d, k);
}

/* Without a card there is nothing to hear. */
static void test_null(void **state)
{
	struct fault f;
	struct device *d = device_null_open(RATE, false, &f);
	float out[10];

	(void)state;
	assert_int_equal(device_microphone(d), MICROPHONE_UNWISHED);
	device_listen(d, &any);
	device_look(d);
	assert_int_equal(device_microphone(d), MICROPHONE_MISSING);
	assert_int_equal(device_hear(d, out, 10).count, 0);
	device_close(d);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_exact),
		T(test_long_wait),
		T(test_missing),
		T(test_choice),
		T(test_killed),
		T(test_null),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
