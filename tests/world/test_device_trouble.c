/*
 * test_device_trouble.c - sound that does not come, goes, or is ended
 *
 * Whatever becomes of it, the device gives frames and the program lives.
 */
#include "sound_fixture.h"

#include <fcntl.h>
#include <sys/wait.h>

#include "../../src/world/sound_link.h"
#include "evenhand/base/frames.h"
#include "evenhand/world/clock.h"

enum { RATE = 48000 };

static const struct sound_wish wish = { .level = 500 };

struct seat {
	struct sound_keeper *keeper;
	struct device *device;
	pid_t process; /* the keeper's */
};

static struct seat sit_with(
    const char *program, const struct sound_wish *w, bool paced)
{
	struct fault f;
	struct seat s = { .keeper = sound_keeper_open(program, &f) };

	assert_non_null(s.keeper);
	s.process = keeper_process();
	assert_true(s.process > 0);
	s.device = device_sound_open(s.keeper, w, RATE, paced, &f);
	assert_non_null(s.device);
	return s;
}

static struct seat sit(const struct sound_wish *w, bool paced)
{
	return sit_with(sound_program(), w, paced);
}

static void rise(struct seat *s)
{
	device_close(s->device);
	sound_keeper_close(s->keeper);
	assert_true(gone_within(s->process, 3000));
}

/* Frames go by the clock for a while: forward, and at its pace. */
static void goes_by_the_clock(struct device *d)
{
	int64_t began = clock_steady_ns(), took, first, last, now;

	device_look(d);
	first = last = device_frame(d);
	for (int i = 0; i < 30; i++) {
		pause_ms(10);
		device_look(d);
		now = device_frame(d);
		assert_true(now >= last);
		last = now;
	}
	/* A busy computer may be late, by its own doing. */
	took = (clock_steady_ns() - began) / 1000000;
	assert_in_range(last - first, frames_of_ms(290, RATE),
	    frames_of_ms(took + 50, RATE));
	/* Nothing is under way to the ear. */
	assert_true(device_heard(d) >= last);
}

/* PortAudio aborts, or finds nothing, or a card without a clock. */
static void practised_by_sight(struct fixture *x, const char *cards)
{
	struct passage p = { .bow_ms = 1000,
		.pulses = 4,
		.bows_each = 2,
		.turns = 1,
		.last_change_ms = 1000 };
	struct seat s;

	fixture_cards(x, cards);
	s = sit(&wish, true);
	assert_true(device_play(s.device, &p, 4800));
	assert_true(state_reached(s.device, DEVICE_MISSING, 3000));
	assert_int_equal(device_sentence(s.device).id, M_DEVICE_NONE);
	goes_by_the_clock(s.device);
	assert_true(device_play(s.device, &p, 480000));
	device_silence(s.device);
	assert_int_equal(device_lost_ms(s.device), 0);
	rise(&s);
}

static void test_no_default(void **state)
{
	practised_by_sight(*state, CARD_NO_DEFAULT);
}

static void test_no_card(void **state)
{
	struct fixture *x = *state;

	practised_by_sight(x, CARD_NONE);
	/* What the libraries had to say went where it belongs. */
	assert_in_range(size_of(x->log), 1, 65536);
}

/* The program that makes sound is not as it should be: that is said. */
static void unfit(
    const char *program, enum message_id said, enum message_id no_list)
{
	static struct sound_lists lists;
	struct seat s = sit_with(program, &wish, true);
	struct fault f;

	assert_true(state_reached(s.device, DEVICE_MISSING, 3000));
	assert_int_equal(device_sentence(s.device).id, said);
	goes_by_the_clock(s.device);
	device_close(s.device);
	assert_false(sound_list(s.keeper, &lists, 5000, &f));
	assert_int_equal(f.message.id, no_list);
	sound_keeper_close(s.keeper);
	assert_true(gone_within(s.process, 3000));
}

static void test_no_program(void **state)
{
	fixture_cards(*state, CARD_TAPPED);
	unfit("", M_DEVICE_NO_PROGRAM, M_SOUND_NO_PROGRAM);
	unfit("/nowhere/sound", M_DEVICE_NO_PROGRAM, M_SOUND_NO_PROGRAM);
	unfit("/dev/null", M_DEVICE_NO_PROGRAM, M_SOUND_NO_PROGRAM);
}

/* The real one, told that the memory is laid out in another way. */
static void test_other_version(void **state)
{
	struct fixture *x = *state;
	char path[128], line[4200];
	FILE *f;

	fixture_cards(x, CARD_TAPPED);
	snprintf(path, sizeof path, "%s/sound", x->folder);
	f = fopen(path, "w");
	assert_non_null(f);
	fprintf(f, "#!/bin/sh\nexec '%s' \"$1\" \"0.$2\"\n", sound_program());
	fclose(f);
	assert_int_equal(chmod(path, 0700), 0);
	unfit(path, M_DEVICE_OTHER_PROGRAM, M_SOUND_OTHER_PROGRAM);
	snprintf(
	    line, sizeof line, "grep -q 'Start evenhand instead' '%s'", x->log);
	assert_int_equal(system(line), 0);
	/* Nor does it take what is no memory. */
	snprintf(line, sizeof line, "'%s' --for 0.1.0/1/1 2> /dev/null",
	    sound_program());
	assert_int_equal(WEXITSTATUS(system(line)), 64);
}

/* An installation that changes while somebody practises. */
static void test_program_gone(void **state)
{
	struct fixture *x = *state;
	char path[128];
	struct seat s;

	fixture_cards(x, CARD_TAPPED);
	snprintf(path, sizeof path, "%s/sound", x->folder);
	assert_int_equal(symlink(sound_program(), path), 0);
	s = sit_with(path, &wish, false);
	device_advance(s.device, 48000);
	assert_int_equal(device_state(s.device), DEVICE_SOUNDS);
	assert_int_equal(unlink(path), 0);
	kill(child_process(s.process), SIGKILL);
	assert_true(state_reached(s.device, DEVICE_MISSING, 3000));
	assert_int_equal(device_sentence(s.device).id, M_DEVICE_NO_PROGRAM);
	device_advance(s.device, 96000);
	assert_int_equal(device_frame(s.device), 96000);
	rise(&s);
}

/* Where there never was a card, the computer is not kept busy with looking. */
static void test_seldom(void **state)
{
	struct seat s;

	fixture_cards(*state, CARD_NONE);
	s = sit(&wish, true);
	assert_true(state_reached(s.device, DEVICE_MISSING, 3000));
	pause_ms(300);
	for (int i = 0; i < 100; i++) {
		pause_ms(20);
		device_look(s.device);
		assert_int_equal(child_process(s.process), 0);
	}
	rise(&s);
}

static void test_no_clock(void **state)
{
	practised_by_sight(*state, CARD_NULL);
}

/* To open a pipe that nobody reads never ends. */
static void test_hangs(void **state)
{
	struct fixture *x = *state;
	struct seat s;
	pid_t child;

	fixture_cards(x, CARD_TAPPED);
	assert_int_equal(mkfifo(x->tap, 0600), 0);
	s = sit(&wish, true);
	assert_true(state_reached(s.device, DEVICE_MISSING, 6000));
	assert_int_equal(device_sentence(s.device).id, M_DEVICE_MUTE);
	goes_by_the_clock(s.device);
	child = child_process(s.process);
	assert_true(child > 0);
	rise(&s);
	assert_true(gone_within(child, 3000));
}

/* A wish that fits a part of a name, and one that fits none. */
static void test_wishes(void **state)
{
	static const char cards[] =
	    "pcm.Low_box { type null }\npcm.high_box { type null }\n"
	    "pcm.!default { type null }\n";
	static const struct {
		struct sound_wish wish;
		const char *name;
		enum message_id id;
	} cases[] = {
		{ { .name = "" }, "default, ALSA", M_DEVICE_SOUNDS_USUAL },
		{ { .name = "high" }, "high_box, ALSA", M_DEVICE_SOUNDS },
		{ { .name = "LOW" }, "Low_box, ALSA", M_DEVICE_SOUNDS },
		{ { .name = "box", .api = "als" }, NULL, M_DEVICE_SOUNDS },
		{ { .name = "", .api = "ALSA" }, NULL, M_DEVICE_SOUNDS },
		{ { .name = "cupboard" }, "default, ALSA", M_DEVICE_OTHER },
		{ { .name = "low", .api = "JACK" }, "default, ALSA",
		    M_DEVICE_OTHER },
	};

	fixture_cards(*state, cards);
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct seat s = sit(&cases[i].wish, false);

		device_advance(s.device, 480);
		assert_int_equal(device_state(s.device), DEVICE_SOUNDS);
		assert_int_equal(device_sentence(s.device).id, cases[i].id);
		if (cases[i].name)
			assert_string_equal(
			    device_name(s.device), cases[i].name);
		else
			assert_string_not_equal(device_name(s.device), "none");
		rise(&s);
	}
}

/* One keeper, several devices after each other, and lists between them. */
static void test_again(void **state)
{
	static struct sound_lists lists;
	const struct sound_list *list = &lists.cards;
	struct fault f;
	struct sound_keeper *k;

	fixture_cards(*state, CARD_TAPPED);
	k = sound_keeper_open(sound_program(), &f);
	assert_non_null(k);
	for (int i = 1; i <= 3; i++) {
		struct device *d = device_sound_open(k, &wish, RATE, false, &f);

		assert_non_null(d);
		device_advance(d, i * 10000);
		assert_int_equal(device_state(d), DEVICE_SOUNDS);
		assert_int_equal(device_frame(d), i * 10000);
		device_close(d);
		assert_true(sound_list(k, &lists, 5000, &f));
		assert_int_equal(list->count, 2);
	}
	sound_keeper_close(k);
}

static void test_list(void **state)
{
	static struct sound_lists lists;
	const struct sound_list *list = &lists.cards;
	struct fault f;
	struct sound_keeper *k;
	int defaults = 0;

	fixture_cards(*state,
	    "pcm.bluez_output { type null }\npcm.box { type null }\n"
	    "pcm.!default { type null }\n");
	k = sound_keeper_open(sound_program(), &f);
	assert_true(sound_list(k, &lists, 5000, &f));
	assert_int_equal(list->count, 3);
	assert_int_equal(list->left_out, 0);
	for (int i = 0; i < list->count; i++) {
		const struct sound_card *c = &list->card[i];

		assert_string_equal(c->api, "ALSA");
		assert_int_equal(
		    c->wireless, strcmp(c->name, "bluez_output") == 0);
		assert_int_equal(
		    c->is_default, strcmp(c->name, "default") == 0);
		assert_true(c->rate > 0 && c->channels > 0);
		assert_true(c->low_ms <= c->high_ms);
		defaults += c->is_default;
	}
	assert_int_equal(defaults, 1);

	/* None is an answer; an abort is not. */
	fixture_cards(*state, CARD_NONE);
	assert_true(sound_list(k, &lists, 5000, &f));
	assert_int_equal(list->count, 0);
	fixture_cards(*state, CARD_NO_DEFAULT);
	assert_false(sound_list(k, &lists, 5000, &f));
	assert_int_equal(f.message.id, M_DEVICE_NO_LIST);
	sound_keeper_close(k);
}

static void test_wireless(void **state)
{
	(void)state;
	assert_true(sound_wireless("Bluetooth headset"));
	assert_true(sound_wireless("bluez_output.00_11.a2dp-sink"));
	assert_true(sound_wireless("Kitchen (AirPlay)"));
	assert_true(sound_wireless("WIRELESS SPEAKER"));
	assert_false(sound_wireless("Built-in Audio Analog Stereo"));
	assert_false(sound_wireless("USB headset"));
	assert_false(sound_wireless(""));
}

/* The child is killed again and again; every frame is reached all the same. */
static void test_child_killed(void **state)
{
	struct seat s;
	int64_t frame = 0;

	fixture_cards(*state, CARD_TAPPED);
	s = sit(&wish, false);
	device_advance(s.device, frame = 48000);
	for (int i = 0; i < 3; i++) {
		pid_t child = child_process(s.process);

		assert_int_equal(device_state(s.device), DEVICE_SOUNDS);
		assert_true(child > 0);
		kill(child, i == 0 ? SIGKILL : SIGSEGV);
		assert_true(gone_within(child, 2000));
		device_advance(s.device, frame += 100);
		assert_int_equal(device_frame(s.device), frame);
		assert_int_equal(device_state(s.device), DEVICE_LOST);
		assert_int_equal(device_sentence(s.device).id, M_DEVICE_LOST);
		assert_true(state_reached(s.device, DEVICE_SOUNDS, 3000));
		device_advance(s.device, frame += 48000);
		assert_int_equal(device_frame(s.device), frame);
	}
	rise(&s);
}

/* Waits for the next report: of which child, 0 when none comes. */
static int32_t reported(struct sound_keeper *k)
{
	struct sound_report r;

	for (int i = 0; i < 3000; i++, pause_ms(10))
		if (keeper_report(k, &r))
			return r.number;
	return 0;
}

/* To end a child ends that one, or one that is not made yet, and no other. */
static void test_numbers(void **state)
{
	struct sound_order order = { .task = SOUND_PLAY, .rate = RATE };
	struct fault f;
	struct sound_keeper *k;
	int32_t gone, plays, owed;
	pid_t process, child;

	fixture_cards(*state, CARD_TAPPED);
	k = sound_keeper_open(sound_program(), &f);
	process = keeper_process();
	gone = keeper_make(k, &(struct sound_order) { .task = SOUND_LIST });
	assert_int_equal(reported(k), gone);
	plays = keeper_make(k, &order);
	for (int i = 0;
	     i < 3000 && sound_phase(keeper_shared(k), plays) != SOUND_SOUNDS;
	     i++)
		pause_ms(10);
	child = child_process(process);
	assert_true(child > 0);
	keeper_kill(k, gone);
	keeper_kill(k, plays + 1);
	/* Its turn comes when the other has ended; it is not waited for. */
	owed = keeper_make(k, &order);
	keeper_kill(k, owed);
	assert_int_equal(reported(k), owed);
	assert_int_equal(child_process(process), child);
	keeper_kill(k, plays);
	assert_int_equal(reported(k), plays);
	assert_int_equal(child_process(process), 0);
	sound_keeper_close(k);
	assert_true(gone_within(process, 3000));
}

/* A child that stands still is given a second to end, and then killed. */
static void test_end_patience(void **state)
{
	struct seat s;
	pid_t child;
	int64_t since;

	fixture_cards(*state, CARD_TAPPED);
	s = sit(&wish, false);
	device_advance(s.device, 4800);
	child = child_process(s.process);
	kill(child, SIGSTOP);
	since = clock_steady_ns();
	device_close(s.device);
	sound_keeper_close(s.keeper);
	assert_true(gone_within(child, 3000));
	assert_true(clock_steady_ns() - since > 900 * INT64_C(1000000));
	assert_true(gone_within(s.process, 3000));
}

/* Without its keeper there is no sound any more, and that is all. */
static void test_keeper_killed(void **state)
{
	struct seat s;
	pid_t child;

	fixture_cards(*state, CARD_TAPPED);
	s = sit(&wish, false);
	device_advance(s.device, 48000);
	child = child_process(s.process);
	assert_true(child > 0);
	kill(s.process, SIGKILL);
	assert_true(gone_within(child, 2000));
	device_look(s.device);
	device_advance(s.device, 96000);
	assert_int_equal(device_frame(s.device), 96000);
	assert_int_equal(device_state(s.device), DEVICE_MISSING);
	assert_int_equal(device_sentence(s.device).id, M_DEVICE_KEEPER_GONE);
	rise(&s);
}

/* The program dies at once; keeper and child follow. */
static void test_killed(void **state)
{
	int pipes[2];
	pid_t program, found[2] = { 0 };

	fixture_cards(*state, CARD_TAPPED);
	assert_int_equal(pipe(pipes), 0);
	program = fork();
	assert_true(program >= 0);
	if (program == 0) {
		struct seat s = sit(&wish, false);

		device_advance(s.device, 4800);
		found[0] = s.process;
		found[1] = child_process(s.process);
		if (write(pipes[1], found, sizeof found) > 0)
			pause();
		_exit(1);
	}
	assert_int_equal(read(pipes[0], found, sizeof found), sizeof found);
	assert_true(found[0] > 0 && found[1] > 0);
	kill(program, SIGKILL);
	waitpid(program, NULL, 0);
	assert_true(gone_within(found[0], 3000));
	assert_true(gone_within(found[1], 3000));
	close(pipes[0]);
	close(pipes[1]);
}

/* Signals for everybody in the terminal do not reach the sound. */
static void test_signals(void **state)
{
	static const int numbers[] = { SIGINT, SIGHUP, SIGTERM, SIGQUIT,
		SIGTSTP };
	struct seat s;
	pid_t child;

	fixture_cards(*state, CARD_TAPPED);
	s = sit(&wish, false);
	device_advance(s.device, 4800);
	child = child_process(s.process);
	assert_true(getpgid(child) != getpgid(0));
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
		kill(child, numbers[i]);
		kill(s.process, numbers[i]);
	}
	pause_ms(50);
	device_look(s.device);
	device_advance(s.device, 9600);
	assert_int_equal(device_state(s.device), DEVICE_SOUNDS);
	assert_int_equal(child_process(s.process), child);
	rise(&s);
}

/* Neither holds what the program was given: whoever waits for its end. */
static void test_holds_nothing(void **state)
{
	int pipes[2];
	char byte;
	struct seat s;

	fixture_cards(*state, CARD_TAPPED);
	assert_int_equal(pipe(pipes), 0);
	s = sit(&wish, false);
	device_advance(s.device, 4800);
	close(pipes[1]);
	fcntl(pipes[0], F_SETFL, O_NONBLOCK);
	assert_int_equal(read(pipes[0], &byte, 1), 0);
	close(pipes[0]);
	rise(&s);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_no_default),
		T(test_no_card),
		T(test_no_program),
		T(test_other_version),
		T(test_program_gone),
		T(test_seldom),
		T(test_no_clock),
		T(test_hangs),
		T(test_wishes),
		T(test_again),
		T(test_list),
		T(test_wireless),
		T(test_child_killed),
		T(test_numbers),
		T(test_end_patience),
		T(test_keeper_killed),
		T(test_killed),
		T(test_signals),
		T(test_holds_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
