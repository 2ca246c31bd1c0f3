/*
 * test_device.c - time without a sound card: exact when asked, true when paced
 */
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "../sound/render.h"
#include "evenhand/world/device.h"

static int64_t now_ns(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec * INT64_C(1000000000) + t.tv_nsec;
}

static void sleep_ms(int ms)
{
	nanosleep(&(struct timespec) { ms / 1000, ms % 1000 * 1000000L }, NULL);
}

static void test_unpaced(void **state)
{
	struct fault f;
	struct device *d = device_null_open(48000, false, &f);

	(void)state;
	seeded_begin("unpaced");
	assert_non_null(d);
	assert_false(device_paced(d));
	assert_string_equal(device_name(d), "fast");
	sleep_ms(30);
	assert_int_equal(device_frame(d), 0);
	for (int64_t frame = 0, i = 0; i < 200; i++) {
		frame += seeded(0, 5000);
		device_advance(d, frame);
		assert_int_equal(device_frame(d), frame);
		/* The past stays where it is. */
		device_advance(d, frame - 100);
		assert_int_equal(device_frame(d), frame);
	}
	assert_int_equal(device_heard(d), device_frame(d));
	assert_int_equal(device_lost_ms(d), 0);
	device_close(d);
}

/* Whatever is played, nothing is heard, and nothing is missed. */
static void plays_unheard(bool paced)
{
	struct passage p = render_turn(3300, 8);
	struct fault f;
	struct device *d = device_null_open(44100, paced, &f);

	assert_non_null(d);
	assert_int_equal(device_state(d), DEVICE_UNHEARD);
	for (int i = 0; i < 100; i++)
		assert_true(device_play(d, &p, (int64_t)i * 44100));
	device_silence(d);
	device_level(d, 300);
	device_look(d);
	device_advance(d, 44100);
	assert_int_equal(device_dropouts(d), 0);
	assert_int_equal(device_dropped(d), 0);
	assert_int_equal(device_sentence(d).id, M_DEVICE_UNHEARD);
	device_close(d);
}

static void test_plays_unheard(void **state)
{
	(void)state;
	plays_unheard(false);
	plays_unheard(true);
}

enum { LOOKS = 40 };

static int by_size(const void *a, const void *b)
{
	int64_t x = *(const int64_t *)a, y = *(const int64_t *)b;

	return (x > y) - (x < y);
}

/*
 * Looks at a paced device again and again.  Its frames must never run ahead
 * of the clock; returned is how far behind they were in the middle case.
 */
static int64_t usual_lag(int rate)
{
	struct fault f;
	int64_t before = now_ns();
	struct device *d = device_null_open(rate, true, &f);
	int64_t after = now_ns(), last = 0, lag[LOOKS];

	assert_non_null(d);
	assert_true(device_paced(d));
	assert_string_equal(device_name(d), "none");
	for (int i = 0; i < LOOKS; i++) {
		sleep_ms(10);
		int64_t early = now_ns() - after;
		int64_t frame = device_frame(d);
		int64_t late = now_ns() - before;

		assert_true(frame >= last);
		assert_true(frame <= late * rate / 1000000000);
		lag[i] = early * rate / 1000000000 - frame;
		last = frame;
	}
	/* Advancing is for the other kind. */
	device_advance(d, INT64_MAX);
	assert_true(device_frame(d) < 100 * (int64_t)rate);
	device_close(d);
	qsort(lag, LOOKS, sizeof *lag, by_size);
	return lag[LOOKS / 2];
}

/* Within two blocks of the clock; a very busy computer may try again. */
static void test_paced(void **state)
{
	static const int rates[] = { 44100, 96000 };

	(void)state;
	for (size_t r = 0; r < 2; r++) {
		int64_t lag = INT64_MAX;

		for (int i = 0; i < 4 && lag > 2 * DEVICE_BLOCK; i++)
			lag = usual_lag(rates[r]);
		assert_true(lag <= 2 * DEVICE_BLOCK);
	}
}

/*
 * The child counts what its frames lack against the clock, in tens of ms; the
 * device must have counted the same, but for what it took to open.
 */
static int lost(void)
{
	struct fault f;
	int64_t before = now_ns();
	struct device *d = device_null_open(48000, true, &f);

	if (!d)
		return 255;
	while (now_ns() - before < INT64_C(1500000000))
		sleep_ms(5);
	int64_t ms = (now_ns() - before) / 1000000 -
	    device_frame(d) * 1000 / 48000;
	int64_t apart = ms - device_lost_ms(d);
	device_close(d);
	if (apart < -20 || apart > 60)
		return 254;
	return (int)(ms / 10);
}

enum { STOPPED = 4 };

/* Children that are stopped for so many ms; what each lost, in tens of ms. */
static void lost_when_stopped(const int *ms, int *got)
{
	pid_t child[STOPPED];
	int status, stood = 0;

	fflush(stdout);
	for (int i = 0; i < STOPPED; i++) {
		child[i] = fork();
		assert_true(child[i] >= 0);
		if (child[i] == 0)
			_exit(lost());
	}
	sleep_ms(600);
	for (int i = 0; i < STOPPED; i++)
		kill(child[i], SIGSTOP);
	for (int i = 0; i < STOPPED; i++) {
		sleep_ms(ms[i] - stood);
		kill(child[i], SIGCONT);
		stood = ms[i];
	}
	for (int i = 0; i < STOPPED; i++) {
		assert_int_equal(waitpid(child[i], &status, 0), child[i]);
		assert_true(WIFEXITED(status));
		got[i] = WEXITSTATUS(status);
	}
}

/*
 * A stopped program does not race through the time it was stopped; what stood
 * still is lost, no more, and nothing of it made up.  A shorter stop is made
 * good; a very busy computer may try again.
 */
static void test_jump(void **state)
{
	static const int ms[STOPPED] = { 100, 300, 400, 500 };
	int got[STOPPED] = { 255 };

	(void)state;
	for (int i = 0; i < 4 && got[0] > 5; i++)
		lost_when_stopped(ms, got);
	assert_in_range(got[0], 0, 5);
	for (int i = 1; i < STOPPED; i++)
		assert_in_range(got[i], ms[i] / 10 - 2, ms[i] / 10 + 40);
}

static void test_close_nothing(void **state)
{
	(void)state;
	device_close(NULL);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_unpaced),
		cmocka_unit_test(test_plays_unheard),
		cmocka_unit_test(test_paced),
		cmocka_unit_test(test_jump),
		cmocka_unit_test(test_close_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
