/*
 * test_device_paced.c - a card that keeps time, freezes, and comes back
 *
 * ALSA's `file` plugin writes into a pipe, and a thread here is the card: it
 * takes frames out of the pipe at 48000 a second, and hears them.
 */
#include "sound_fixture.h"

#include <sys/wait.h>

#include <fcntl.h>
#include <math.h>
#include <pthread.h>
#include <stdatomic.h>

#include "evenhand/base/frames.h"

enum { RATE = 48000, FRAME_BYTES = 2 * sizeof(float), STEP_MS = 4 };

static struct {
	pthread_t thread;
	const char *path;
	atomic_bool end, frozen;
	atomic_llong frames;   /* taken so far */
	atomic_llong sounding; /* the last that was not nothing, from 1 */
	float last;	       /* the sample before; once the thread is over */
	_Atomic float step;    /* the largest between two samples */
} card;

static int64_t now_ns(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec * INT64_C(1000000000) + t.tv_nsec;
}

static void hear(const float *samples, size_t frames)
{
	for (size_t i = 0; i < frames; i++) {
		float x = samples[2 * i];
		float step = fabsf(x - card.last);

		atomic_fetch_add(&card.frames, 1);
		if (x != 0)
			atomic_store(&card.sounding, card.frames);
		card.step = step > card.step ? step : card.step;
		card.last = x;
	}
}

static void *run_card(void *nothing)
{
	static char bytes[RATE * FRAME_BYTES];
	int fd = open(card.path, O_RDONLY | O_NONBLOCK);
	int64_t before = now_ns();
	size_t had = 0;

	while (!card.end && fd >= 0) {
		pause_ms(STEP_MS);
		int64_t now = now_ns();
		size_t due = (size_t)((now - before) * RATE / 1000000000) *
		    FRAME_BYTES;
		ssize_t got;

		before += (int64_t)(due / FRAME_BYTES) * 1000000000 / RATE;
		due = due < sizeof bytes - had ? due : sizeof bytes - had;
		if (card.frozen || due == 0)
			continue;
		got = read(fd, bytes + had, due);
		if (got <= 0)
			continue;
		had += (size_t)got;
		hear((const float *)(const void *)bytes, had / FRAME_BYTES);
		memmove(bytes, bytes + had / FRAME_BYTES * FRAME_BYTES,
		    had % FRAME_BYTES);
		had %= FRAME_BYTES;
	}
	if (fd >= 0)
		close(fd);
	return nothing;
}

struct seat {
	struct sound_keeper *keeper;
	struct device *device;
	pid_t process;
	int64_t frame;	/* the last one seen */
	int64_t heard;	/* the same, at the ear */
	int64_t leaped; /* the furthest it went between two looks */
};

static void begin_card(struct fixture *x)
{
	memset(&card, 0, sizeof card);
	card.path = x->tap;
	assert_int_equal(pthread_create(&card.thread, NULL, run_card, NULL), 0);
}

static struct seat sit_before(
    struct fixture *x, const char *cards, const char *name)
{
	struct sound_wish wish = { .level = 700 };
	struct fault f;
	struct seat s = { 0 };

	snprintf(wish.name, sizeof wish.name, "%s", name);
	fixture_cards(x, cards);
	assert_int_equal(mkfifo(x->tap, 0600), 0);
	s.keeper = sound_keeper_open(sound_program(), &f);
	assert_non_null(s.keeper);
	s.process = keeper_process();
	begin_card(x);
	s.device = device_sound_open(s.keeper, &wish, RATE, true, &f);
	assert_non_null(s.device);
	assert_true(state_reached(s.device, DEVICE_SOUNDS, 3000));
	s.frame = device_frame(s.device);
	return s;
}

static struct seat sit(struct fixture *x)
{
	return sit_before(x, CARD_TAPPED, "");
}

static void rise(struct seat *s)
{
	sound_keeper_close(s->keeper);
	assert_true(gone_within(s->process, 3000));
	card.end = true;
	pthread_join(card.thread, NULL);
}

/* Looks after the device for a while, as the session does. */
static void look(struct seat *s, int ms)
{
	int64_t until = now_ns() + ms * INT64_C(1000000);

	while (now_ns() < until) {
		int64_t before = s->frame, heard = s->heard;

		pause_ms(10);
		device_look(s->device);
		s->heard = device_heard(s->device);
		s->frame = device_frame(s->device);
		assert_true(s->frame >= before);
		assert_true(s->heard >= heard);
		assert_true(s->heard <= s->frame);
		if (s->frame - before > s->leaped)
			s->leaped = s->frame - before;
	}
}

static bool look_until(struct seat *s, enum device_state wanted, int ms)
{
	/* One look each: a card may be lost and back within two. */
	for (; ms > 0 && device_state(s->device) != wanted; ms -= 10)
		look(s, 1);
	return device_state(s->device) == wanted;
}

/* Something sounds all the time: knocks of 70 ms, six a second. */
static struct passage noise(void)
{
	return (struct passage) {
		.bow_ms = 1000,
		.pulses = 6,
		.bows_each = 8,
		.turns = 4,
		.last_change_ms = 1000,
	};
}

static void play(struct seat *s)
{
	struct passage p = noise();

	assert_true(device_play(s->device, &p, s->frame + RATE / 10));
}

/* Whether something sounded among the frames the card took since then. */
static bool sounded_since(int64_t frames)
{
	return card.sounding > frames;
}

static void test_pace(void **state)
{
	struct seat s = sit(*state);
	int64_t frame = s.frame, began = now_ns();

	play(&s);
	look(&s, 2000);
	frame = s.frame - frame;
	began = (now_ns() - began) * RATE / 1000000000;
	/* The pipe may fill or run empty meanwhile: 170 ms. */
	assert_in_range(frame, began - RATE / 5, began + RATE / 5);
	assert_true(sounded_since(card.frames - RATE / 2));
	assert_int_equal(device_state(s.device), DEVICE_SOUNDS);
	assert_int_equal(device_lost_ms(s.device), 0);
	device_close(s.device);
	rise(&s);
}

/* The card stands still, and comes back in the middle of the passage. */
static void test_frozen(void **state)
{
	struct seat s = sit(*state);
	int64_t frames, began;

	play(&s);
	look(&s, 500);
	card.frozen = true;
	began = now_ns();
	assert_true(look_until(&s, DEVICE_LOST, 2000));
	/* What the pipe holds, then a quarter of a second. */
	assert_true(now_ns() - began > INT64_C(200000000));
	look(&s, 700);
	frames = card.frames;
	card.frozen = false;
	assert_true(look_until(&s, DEVICE_SOUNDS, 2500));
	look(&s, 1000);
	assert_true(sounded_since(frames + RATE / 4));
	/* Frames went on: never more at once than what was not noticed. */
	assert_in_range(s.leaped, 1, RATE);
	assert_int_equal(device_lost_ms(s.device), 0);
	device_close(s.device);
	rise(&s);
}

/* The child is killed; another takes its place. */
static void new_child(struct seat *s)
{
	pid_t first = child_process(s->process), now = first;

	kill(first, SIGKILL);
	for (int i = 0; i < 150 && (now == first || now == 0); i++) {
		look(s, 20);
		now = child_process(s->process);
	}
	assert_true(now > 0 && now != first);
	assert_true(look_until(s, DEVICE_SOUNDS, 2000));
}

static void test_child_killed(void **state)
{
	struct seat s = sit(*state);
	int64_t frames;

	play(&s);
	look(&s, 500);
	new_child(&s);
	frames = card.frames;
	look(&s, 1000);
	assert_true(sounded_since(frames + RATE / 4));
	device_close(s.device);
	rise(&s);
}

/* How many descriptors a process holds; of those that are what, if not NULL. */
static int holds(pid_t pid, const char *what)
{
	char folder[32], path[300], is[128];
	DIR *all;
	struct dirent *entry;
	int found = 0;

	snprintf(folder, sizeof folder, "/proc/%d/fd", (int)pid);
	all = opendir(folder);
	assert_non_null(all);
	while ((entry = readdir(all)) != NULL) {
		ssize_t length;

		snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
		length = readlink(path, is, sizeof is - 1);
		if (length < 0)
			continue;
		is[length] = '\0';
		found += !what || strncmp(is, what, strlen(what)) == 0;
	}
	closedir(all);
	return found;
}

/* One child after the other: none leaves anything behind. */
static void test_many_children(void **state)
{
	enum { TIMES = 6 };
	struct seat s = sit(*state);
	int held = holds(s.process, NULL), dropouts;
	int64_t frames;

	play(&s);
	dropouts = device_dropouts(s.device);
	for (int i = 0; i < TIMES; i++)
		new_child(&s);
	/* Each time it was interrupted, and that is counted. */
	assert_true(device_dropouts(s.device) >= dropouts + TIMES);
	look(&s, 300);
	frames = card.frames;
	look(&s, 700);
	assert_true(sounded_since(frames + RATE / 4));
	assert_int_equal(holds(s.process, NULL), held);
	device_close(s.device);
	rise(&s);
}

/* Neither of them holds on to what others wait for the end of. */
static void test_holds_nothing(void **state)
{
	int ends[2];
	char path[32], mine[64] = "";
	struct seat s;

	assert_int_equal(pipe(ends), 0);
	snprintf(path, sizeof path, "/proc/self/fd/%d", ends[1]);
	assert_true(readlink(path, mine, sizeof mine - 1) > 0);
	assert_int_equal(holds(getpid(), mine), 2);
	s = sit(*state);
	assert_int_equal(holds(s.process, mine), 0);
	assert_int_equal(holds(child_process(s.process), mine), 0);
	/* The keeper's own way to evenhand is not the child's. */
	assert_int_equal(holds(s.process, "socket:"), 1);
	assert_int_equal(holds(child_process(s.process), "socket:"), 0);
	device_close(s.device);
	rise(&s);
	close(ends[0]);
	close(ends[1]);
}

/* How loud it is counts at once, and for the next child too. */
static void test_level(void **state)
{
	struct seat s = sit(*state);
	int64_t frames;

	play(&s);
	look(&s, 500);
	device_level(s.device, 0);
	look(&s, 500);
	frames = card.frames;
	look(&s, 500);
	assert_false(sounded_since(frames));
	new_child(&s);
	look(&s, 700);
	assert_false(sounded_since(frames));
	device_level(s.device, 700);
	look(&s, 700);
	assert_true(sounded_since(frames));
	device_close(s.device);
	rise(&s);
}

#define CARD_LOUD \
	CARD_TAPPED "pcm.loud { type plug slave.pcm tap " \
		    "hint { show on description 'loud' } }\n"

/* The wished card is waited for, and then another one is better than none. */
static void test_faithful(void **state)
{
	struct seat s = sit_before(*state, CARD_LOUD, "loud");
	int64_t gone;

	assert_int_equal(device_sentence(s.device).id, M_DEVICE_SOUNDS);
	fixture_cards(*state, CARD_TAPPED);
	gone = now_ns();
	kill(child_process(s.process), SIGKILL);
	assert_true(look_until(&s, DEVICE_LOST, 1000));
	assert_true(look_until(&s, DEVICE_SOUNDS, 6000));
	assert_true(now_ns() - gone > INT64_C(1500000000));
	assert_int_equal(device_sentence(s.device).id, M_DEVICE_OTHER);
	/* It is no longer the wished one, so it is there again at once. */
	gone = now_ns();
	new_child(&s);
	assert_true(now_ns() - gone < INT64_C(1500000000));
	device_close(s.device);
	rise(&s);
}

/* Silence is silence, in the passage that sounds and for good. */
static void test_silence(void **state)
{
	struct seat s = sit(*state);
	int64_t frames;

	play(&s);
	look(&s, 700);
	assert_true(sounded_since(card.frames - RATE / 2));
	device_silence(s.device);
	frames = card.frames;
	look(&s, 1000);
	/* The pipe held 170 ms, the card and ALSA some more. */
	assert_false(sounded_since(frames + RATE * 3 / 10));
	/* Also when the card was lost and is back. */
	new_child(&s);
	frames = card.frames;
	look(&s, 700);
	assert_false(sounded_since(frames));
	device_close(s.device);
	rise(&s);
}

/* What is silenced while there is no card is not heard from the next one. */
static void test_silence_while_lost(void **state)
{
	struct seat s = sit(*state);
	int64_t frames;

	play(&s);
	look(&s, 500);
	kill(child_process(s.process), SIGKILL);
	assert_true(look_until(&s, DEVICE_LOST, 2000));
	device_silence(s.device);
	assert_true(look_until(&s, DEVICE_SOUNDS, 2000));
	/* The pipe holds what the first one played. */
	look(&s, 400);
	frames = card.frames;
	look(&s, 700);
	assert_false(sounded_since(frames));
	/* And it is silence, not deafness. */
	play(&s);
	look(&s, 900);
	assert_true(sounded_since(frames));
	device_close(s.device);
	rise(&s);
}

/* Nobody looks: the sound fades after a second, and is back with a look. */
static void test_nobody_looks(void **state)
{
	struct seat s = sit(*state);
	int64_t frames;

	play(&s);
	look(&s, 300);
	pause_ms(1500);
	frames = card.frames;
	pause_ms(500);
	assert_false(sounded_since(frames));
	device_look(s.device);
	s.frame = device_frame(s.device);
	frames = card.frames;
	look(&s, 1000);
	assert_true(sounded_since(frames + RATE / 4));
	assert_int_equal(device_state(s.device), DEVICE_SOUNDS);
	device_close(s.device);
	rise(&s);
}

/* The end is a fade: no step larger than those of the sounds themselves. */
static void test_close(void **state)
{
	struct seat s = sit(*state);
	float step;

	play(&s);
	look(&s, 1500);
	step = card.step;
	assert_true(step > 0);
	device_close(s.device);
	/* The pipe holds the end of it. */
	pause_ms(600);
	rise(&s);
	assert_true(card.step <= step);
	assert_true(card.last == 0);
}

/* A program that plays and looks, until it is killed. */
_Noreturn static void play_on(int told)
{
	const struct sound_wish wish = { .level = 700 };
	struct passage p = noise();
	struct fault f;
	struct sound_keeper *k = sound_keeper_open(sound_program(), &f);
	struct device *d = device_sound_open(k, &wish, RATE, true, &f);

	if (!state_reached(d, DEVICE_SOUNDS, 3000) ||
	    !device_play(d, &p, device_frame(d) + RATE / 10) ||
	    write(told, "", 1) != 1)
		_exit(1);
	for (;;) {
		pause_ms(20);
		device_look(d);
	}
}

/* The end of a program that is killed in mid sound is a fade as well. */
static void test_killed(void **state)
{
	struct fixture *x = *state;
	int told[2];
	pid_t program;
	float step;
	char byte;

	fixture_cards(x, CARD_TAPPED);
	assert_int_equal(mkfifo(x->tap, 0600), 0);
	assert_int_equal(pipe(told), 0);
	program = fork();
	assert_true(program >= 0);
	if (program == 0)
		play_on(told[1]);
	begin_card(x);
	assert_int_equal(read(told[0], &byte, 1), 1);
	pause_ms(1000);
	for (int i = 0; i < 1000 && card.frames - card.sounding > 256; i++)
		pause_ms(1);
	assert_true(card.sounding > 0);
	step = card.step;
	kill(program, SIGKILL);
	waitpid(program, NULL, 0);
	pause_ms(1500);
	card.end = true;
	pthread_join(card.thread, NULL);
	assert_true(card.step <= step);
	assert_true(card.last == 0);
	close(told[0]);
	close(told[1]);
}

/* Nobody looks for ten seconds: the child ends by itself, and is made anew. */
static void test_alone(void **state)
{
	struct seat s = sit(*state);
	pid_t child = child_process(s.process), other = 0;

	play(&s);
	look(&s, 300);
	pause_ms(9000);
	assert_int_equal(child_process(s.process), child);
	assert_true(gone_within(child, 3000));
	device_look(s.device);
	s.frame = device_frame(s.device);
	s.heard = device_heard(s.device);
	/* What is told may lag behind; the new child is what counts. */
	for (int ms = 0; ms < 5000 && other <= 0; ms += 50) {
		look(&s, 50);
		other = child_process(s.process);
		other = other == child ? 0 : other;
	}
	assert_true(other > 0);
	assert_true(look_until(&s, DEVICE_SOUNDS, 3000));
	device_close(s.device);
	rise(&s);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_pace),
		T(test_frozen),
		T(test_child_killed),
		T(test_many_children),
		T(test_holds_nothing),
		T(test_level),
		T(test_faithful),
		T(test_silence),
		T(test_silence_while_lost),
		T(test_nobody_looks),
		T(test_close),
		T(test_killed),
		T(test_alone),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
