/*
 * test_guard.c - what the audio callback must never do, it does not do
 *
 * The linker is asked to send every call of the functions below through a
 * guard (--wrap=name).  While outlet_fill runs a flag of its thread is set,
 * and a guarded call then ends the program.  A library call by another
 * library is not seen, but everything our own code calls is.
 */
#include <fcntl.h>
#include <pthread.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "evenhand/sound/inlet.h"
#include "evenhand/sound/outlet.h"
#include "render.h"

static _Thread_local bool in_callback;

static void guard(void)
{
	if (in_callback)
		abort();
}

/*
 * name, what it returns, its parameters, how they are handed on.  The real
 * one is weak: where the linker was not asked, the tests fail with a
 * sentence instead of the link.
 */
#define GUARDED(name, type, parameters, arguments) \
	extern type __real_##name parameters __attribute__((weak)); \
	type __wrap_##name parameters; \
	type __wrap_##name parameters \
	{ \
		guard(); \
		return __real_##name arguments; \
	}

GUARDED(malloc, void *, (size_t n), (n))
GUARDED(calloc, void *, (size_t n, size_t size), (n, size))
GUARDED(realloc, void *, (void *p, size_t n), (p, n))
GUARDED(aligned_alloc, void *, (size_t a, size_t n), (a, n))
GUARDED(pthread_mutex_lock, int, (pthread_mutex_t * m), (m))
GUARDED(pthread_mutex_trylock, int, (pthread_mutex_t * m), (m))
GUARDED(pthread_mutex_unlock, int, (pthread_mutex_t * m), (m))
GUARDED(
    pthread_cond_wait, int, (pthread_cond_t * c, pthread_mutex_t *m), (c, m))
GUARDED(pthread_cond_signal, int, (pthread_cond_t * c), (c))
GUARDED(pthread_create, int,
    (pthread_t * t, const pthread_attr_t *a, void *(*f)(void *), void *p),
    (t, a, f, p))
GUARDED(
    open, int, (const char *path, int flags, mode_t mode), (path, flags, mode))
GUARDED(close, int, (int fd), (fd))
GUARDED(read, ssize_t, (int fd, void *p, size_t n), (fd, p, n))
GUARDED(write, ssize_t, (int fd, const void *p, size_t n), (fd, p, n))
GUARDED(fopen, FILE *, (const char *path, const char *mode), (path, mode))
GUARDED(fwrite, size_t, (const void *p, size_t size, size_t n, FILE *f),
    (p, size, n, f))
GUARDED(fputs, int, (const char *s, FILE *f), (s, f))
GUARDED(clock_gettime, int, (clockid_t c, struct timespec *t), (c, t))
GUARDED(time, time_t, (time_t * t), (t))
GUARDED(nanosleep, int, (const struct timespec *t, struct timespec *left),
    (t, left))
GUARDED(usleep, int, (useconds_t t), (t))
GUARDED(poll, int, (void *p, unsigned long n, int ms), (p, n, ms))

/* The one that returns nothing. */
extern void __real_free(void *p) __attribute__((weak));
void __wrap_free(void *p);
void __wrap_free(void *p)
{
	guard();
	__real_free(p);
}

/* Calls each guarded function once, as our own code might. */
static void call_guarded(int which)
{
	static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
	static pthread_cond_t met = PTHREAD_COND_INITIALIZER;
	struct timespec t = { 0, 1 };
	char byte = 0;
	void *volatile p = NULL;

	switch (which) {
	case 0:
		p = malloc(8);
		break;
	case 1:
		p = calloc(1, 8);
		break;
	case 2:
		p = realloc(p, 8);
		break;
	case 3:
		p = aligned_alloc(64, 64);
		break;
	case 4:
		free(p);
		break;
	case 5:
		pthread_mutex_lock(&lock);
		break;
	case 6:
		pthread_cond_signal(&met);
		break;
	case 7:
		close(open("/dev/null", O_WRONLY, 0));
		break;
	case 8:
		(void)!write(-1, &byte, 1);
		break;
	case 9:
		(void)!read(-1, &byte, 1);
		break;
	case 10:
		clock_gettime(CLOCK_MONOTONIC, &t);
		break;
	case 11:
		nanosleep(&t, NULL);
		break;
	case 12:
		time(NULL);
		break;
	default:
		usleep(1);
		break;
	}
}

enum { GUARDED_CALLS = 14 };

/* How a child ends that makes one guarded call, in or out of the flag. */
static int end_of_call(int which, bool in)
{
	int status = -1;

	fflush(stdout);
	pid_t child = fork();
	assert_true(child >= 0);
	if (child == 0) {
		setrlimit(RLIMIT_CORE, &(struct rlimit) { 0, 0 });
		signal(SIGABRT, SIG_DFL);
		in_callback = in;
		call_guarded(which);
		_exit(0);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	return status;
}

/* The guard itself: it stops every one of them, and only in the callback. */
static void test_guard_can_fail(void **state)
{
	(void)state;
	for (int i = 0; i < GUARDED_CALLS; i++) {
		int status = end_of_call(i, true);

		if (!WIFSIGNALED(status) || WTERMSIG(status) != SIGABRT)
			fail_msg("call %d got past the guard: was this test "
				 "linked with --wrap?",
			    i);
		assert_int_equal(end_of_call(i, false), 0);
	}
}

/* What a card's callback runs, but for the time it asks for. */
static void fill_guarded(struct engine *e, float *out, int frames)
{
	static struct outlet outlet;
	struct outlet_time t = { engine_frame(e), engine_frame(e), 1 };

	in_callback = true;
	outlet_fill(&outlet, e, out, frames, 1);
	outlet_publish(&outlet, &t, engine_rate(e), false);
	in_callback = false;
}

static struct passage dense_passage(void)
{
	struct passage p = {
		.settle_ms = 4000,
		.count_in_bows = 1,
		.bow_ms = 1000,
		.pulses = 16,
		.bows_each = 2,
		.turns = 8,
		.unit = { 1, 2, 3, 4, 5, 6, 7, 8 },
		.coming = 8,
		.change_ms = 1000,
		.last_change_ms = 1000,
		.tone = { 164814, 184997 },
	};

	return p;
}

/* Every path of the callback: plays, late ones, silence, levels, overflow. */
static void test_callback(void **state)
{
	static float block[4096];
	struct passage p = dense_passage();
	int slot;

	(void)state;
	seeded_begin("guard");
	struct engine *e = render_engine(48000, 700);
	for (int i = 0; i < 20000; i++) {
		if (engine_slot(e, &slot)) {
			int64_t frame = engine_frame(e) + seeded(-48000, 48000);

			assert_true(render_play(e, &p, frame < 0 ? 0 : frame));
		}
		if (i % 50 == 0)
			engine_level(e, seeded(0, 1000));
		if (i % 400 == 0)
			engine_silence(e, engine_frame(e) + seeded(0, 9000));
		fill_guarded(e, block, seeded(1, 512));
		engine_collect(e);
	}
	assert_true(engine_late(e) > 10);
	for (int i = 0; i < 2 * RING_ITEMS; i++)
		engine_level(e, 500);
	assert_true(engine_dropped(e) > 0);
	fill_guarded(e, block, 4096);
	free(e);
}

/* The other callback: blocks of any size, a full inlet, and some taken out. */
static void test_microphone(void **state)
{
	static struct inlet in;
	static float block[2 * 1024], out[4096];
	struct inlet_block b;

	(void)state;
	seeded_begin("microphone");
	for (int i = 0; i < 20000; i++) {
		int count = seeded(0, 1024);

		in_callback = true;
		inlet_put(&in, block, count, 1 + i % 2, i, i % 100 == 0);
		if (i % 1000 == 0)
			inlet_miss(&in, count);
		in_callback = false;
		if (i % 3 == 0 && i > 5000)
			inlet_take(&in, out, 4096, &b);
	}
	assert_true(inlet_left_out(&in) > 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_guard_can_fail),
		cmocka_unit_test(test_callback),
		cmocka_unit_test(test_microphone),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
