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
	struct engine *e = render_engine(48000, 700);
	struct fault f;
	struct device *d = device_null_open(e, false, &f);

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
	assert_int_equal(device_lost_ms(d), 0);
	device_close(d);
	free(e);
}

/* What it plays reaches its end: the slots come back. */
static void test_unpaced_plays(void **state)
{
	struct engine *e = render_engine(44100, 700);
	struct passage p = render_turn(3300, 8);
	struct fault f;
	struct device *d = device_null_open(e, false, &f);
	int slot;

	(void)state;
	assert_non_null(d);
	for (int i = 0; i < ENGINE_SLOTS; i++)
		assert_true(render_play(e, &p, i * 44100));
	assert_null(engine_slot(e, &slot));
	device_advance(d, 44100 * 12);
	engine_collect(e);
	assert_non_null(engine_slot(e, &slot));
	device_close(d);
	free(e);
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
	struct engine *e = render_engine(rate, 700);
	struct fault f;
	int64_t before = now_ns();
	struct device *d = device_null_open(e, true, &f);
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
	free(e);
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

/* A commanded frame is reached by time alone, and what sounds comes back. */
static void test_paced_plays(void **state)
{
	struct engine *e = render_engine(48000, 700);
	struct passage p = render_turn(1000, 4);
	struct fault f;
	int slot;

	(void)state;
	for (int i = 0; i < ENGINE_SLOTS; i++)
		assert_true(render_play(e, &p, 4800));
	assert_true(engine_silence(e, 9600));
	struct device *d = device_null_open(e, true, &f);
	assert_non_null(d);
	for (int i = 0; i < 500 && !engine_slot(e, &slot); i++) {
		sleep_ms(10);
		engine_collect(e);
	}
	assert_non_null(engine_slot(e, &slot));
	assert_true(device_frame(d) >= 9600);
	device_close(d);
	free(e);
}

/* It goes on from the frame at which the engine stands. */
static void test_paced_goes_on(void **state)
{
	struct engine *e = render_engine(48000, 700);
	struct fault f;
	struct device *d = device_null_open(e, false, &f);

	(void)state;
	assert_non_null(d);
	device_advance(d, 1234567);
	device_close(d);
	int64_t before = now_ns();
	d = device_null_open(e, true, &f);
	assert_non_null(d);
	sleep_ms(50);
	int64_t frame = device_frame(d);
	assert_true(frame >= 1234567);
	assert_true(
	    frame <= 1234567 + (now_ns() - before) * 48000 / 1000000000);
	device_close(d);
	free(e);
}

/*
 * The child counts what its frames lack against the clock, in tens of ms; the
 * device must have counted the same, but for the blocks under way.
 */
static int lost(void)
{
	struct engine *e = render_engine(48000, 700);
	struct fault f;
	int64_t before = now_ns();
	struct device *d = device_null_open(e, true, &f);

	if (!d)
		return 255;
	while (now_ns() - before < INT64_C(1500000000))
		sleep_ms(5);
	int64_t ms = (now_ns() - before) / 1000000 -
	    device_frame(d) * 1000 / 48000;
	int64_t apart = ms - device_lost_ms(d);
	device_close(d);
	free(e);
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
		cmocka_unit_test(test_unpaced_plays),
		cmocka_unit_test(test_paced),
		cmocka_unit_test(test_paced_plays),
		cmocka_unit_test(test_paced_goes_on),
		cmocka_unit_test(test_jump),
		cmocka_unit_test(test_close_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
