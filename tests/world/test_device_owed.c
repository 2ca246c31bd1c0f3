/*
 * test_device_owed.c - commands a card has no room for, and what is said of one
 * that did not answer
 *
 * An unpaced card takes commands only with frames, so a ring can be filled
 * before it goes on: what comes then is owed, and goes out in its order.
 */
#include "sound_fixture.h"

#include "evenhand/base/frames.h"
#include "evenhand/score/score.h"
#include "evenhand/sound/ring.h"

enum { RATE = 48000 };

static const struct sound_wish wish = { .level = 500 };

static struct sound_keeper *keeper;
static struct device *device;

static void begin(struct fixture *x, const char *cards, bool paced)
{
	struct fault f;

	fixture_cards(x, cards);
	keeper = sound_keeper_open(sound_program(), &f);
	assert_non_null(keeper);
	device = device_sound_open(keeper, &wish, RATE, paced, &f);
	assert_non_null(device);
}

static void end(void)
{
	pid_t process = keeper_process();

	device_close(device);
	sound_keeper_close(keeper);
	assert_true(gone_within(process, 3000));
}

/* Two bows of a second in four pulses. */
static struct passage bows(void)
{
	return (struct passage) { .bow_ms = 1000,
		.pulses = 4,
		.bows_each = 2,
		.turns = 1,
		.last_change_ms = 1000,
		.unit = { 1 } };
}

/* No command more until the card goes on. */
static void fill_ring(void)
{
	for (int i = 0; i <= RING_ITEMS; i++)
		device_level(device, 500);
	assert_true(device_dropped(device) > 0);
}

/* The loudest of the tap, from some frames before its end on. */
static float loudest(const struct fixture *x, int64_t last)
{
	FILE *f = fopen(x->tap, "rb");
	float pair[2], loud = 0;
	long skip = size_of(x->tap) - (long)(last * (int64_t)sizeof pair);

	assert_non_null(f);
	assert_true(skip >= 0);
	assert_int_equal(fseek(f, skip, SEEK_SET), 0);
	while (fread(pair, sizeof pair, 1, f) == 1) {
		loud = pair[0] > loud ? pair[0] : loud;
		loud = -pair[0] > loud ? -pair[0] : loud;
	}
	fclose(f);
	return loud;
}

/* A silence that waits comes before what was played after it. */
static void test_silence_first(void **state)
{
	struct passage p = bows();

	begin(*state, CARD_TAPPED, false);
	device_advance(device, RATE / 10);
	assert_int_equal(device_state(device), DEVICE_SOUNDS);
	fill_ring();
	device_silence(device);
	assert_true(device_play(device, &p, RATE));
	device_advance(device, RATE / 2);
	device_look(device);
	device_advance(device, 3 * RATE);
	end();
	assert_true(loudest(*state, 2 * RATE) > 0.01F);
}

/* And one that waits silences what was played before it. */
static void test_silence_owed(void **state)
{
	struct passage p = bows();

	begin(*state, CARD_TAPPED, false);
	device_advance(device, RATE / 10);
	assert_true(device_play(device, &p, RATE));
	fill_ring();
	device_silence(device);
	device_advance(device, RATE / 2);
	device_look(device);
	device_advance(device, 3 * RATE);
	end();
	assert_true(loudest(*state, 5 * RATE / 2) == 0.0F);
}

/* Lost with a silence owed: the next card is not silenced for it. */
static void test_silence_lost(void **state)
{
	struct passage p = bows();

	begin(*state, CARD_TAPPED, false);
	device_advance(device, RATE / 10);
	fill_ring();
	device_silence(device);
	assert_true(device_play(device, &p, RATE));
	kill(child_process(keeper_process()), SIGKILL);
	assert_true(state_reached(device, DEVICE_LOST, 3000));
	assert_true(state_reached(device, DEVICE_SOUNDS, 3000));
	device_advance(device, 3 * RATE);
	end();
	assert_true(loudest(*state, 2 * RATE) > 0.01F);
}

/* A card that hangs while it is opened: that is said, in so many words. */
static void hang(struct fixture *x)
{
	begin(x, CARD_TAPPED, true);
	assert_true(state_reached(device, DEVICE_MISSING, 8000));
	assert_int_equal(device_sentence(device).id, M_DEVICE_MUTE);
}

/* Then there is none: it did not fail to answer, it is not there. */
static void test_mute_then_none(void **state)
{
	struct fixture *x = *state;

	assert_int_equal(mkfifo(x->tap, 0600), 0);
	hang(x);
	fixture_cards(x, CARD_NONE);
	for (int i = 0; i < 6000 && device_sentence(device).id == M_DEVICE_MUTE;
	     i++) {
		pause_ms(10);
		device_look(device);
	}
	assert_int_equal(device_state(device), DEVICE_MISSING);
	assert_int_equal(device_sentence(device).id, M_DEVICE_NONE);
	end();
}

/* Or it opens, and keeps no time: that is no card to play on, and answered. */
static void test_mute_then_raced(void **state)
{
	struct fixture *x = *state;
	bool sounded = false;

	assert_int_equal(mkfifo(x->tap, 0600), 0);
	hang(x);
	fixture_cards(x, CARD_NULL);
	for (int i = 0; i < 6000; i++) {
		pause_ms(10);
		device_look(device);
		sounded |= device_state(device) == DEVICE_SOUNDS;
		if (sounded && device_state(device) == DEVICE_MISSING)
			break;
	}
	assert_true(sounded);
	assert_int_equal(device_state(device), DEVICE_MISSING);
	assert_int_equal(device_sentence(device).id, M_DEVICE_NONE);
	end();
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_silence_first),
		T(test_silence_owed),
		T(test_silence_lost),
		T(test_mute_then_none),
		T(test_mute_then_raced),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
