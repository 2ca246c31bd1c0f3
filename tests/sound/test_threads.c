/*
 * test_threads.c - the engine between a session's thread and a callback
 *
 * Meant for ThreadSanitizer, but what it counts holds in any build: every
 * passage that was played comes back, once.
 */
#include <pthread.h>
#include <sched.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdatomic.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "render.h"

enum { PASSAGES = 300, BLOCK = 256 };

static atomic_bool stop;

static void *callback(void *argument)
{
	struct engine *e = argument;
	float block[BLOCK];

	while (!atomic_load(&stop)) {
		engine_fill(e, block, BLOCK);
		sched_yield();
	}
	return NULL;
}

/* Waits for a free slot; the callback gives them back in its own time. */
static struct score *wait_slot(struct engine *e, int *slot)
{
	struct score *s;

	while (!(s = engine_slot(e, slot))) {
		engine_collect(e);
		sched_yield();
	}
	return s;
}

static void play_all(struct engine *e)
{
	for (int i = 0; i < PASSAGES; i++) {
		struct passage p = render_turn(1000, 1 + i % 16);
		int slot;
		struct score *s = wait_slot(e, &slot);
		int64_t frame = engine_frame(e) + seeded(-2000, 20000);

		assert_true(score_make(s, &p, engine_rate(e)));
		while (!engine_play(e, slot, frame < 0 ? 0 : frame))
			sched_yield();
		if (i % 3 == 0)
			engine_level(e, seeded(0, 1000));
		if (i % 7 == 0)
			engine_silence(e, engine_frame(e) + seeded(-99, 9999));
	}
}

static bool all_back(struct engine *e)
{
	struct passage p = render_turn(1000, 4);
	int slot, n = 0;

	engine_collect(e);
	for (; engine_slot(e, &slot) && n < ENGINE_SLOTS; n++)
		if (!render_play(e, &p, engine_frame(e)))
			return false;
	return n == ENGINE_SLOTS;
}

static void test_two_threads(void **state)
{
	struct engine *e = render_engine(8000, 700);
	pthread_t thread;

	(void)state;
	seeded_begin("threads");
	atomic_store(&stop, false);
	assert_int_equal(pthread_create(&thread, NULL, callback, e), 0);
	play_all(e);
	while (!engine_silence(e, 0))
		sched_yield();
	/* Two blocks after the silence everything has faded. */
	int64_t done = engine_frame(e) + 3 * BLOCK;
	while (engine_frame(e) < done)
		sched_yield();
	atomic_store(&stop, true);
	pthread_join(thread, NULL);
	assert_true(all_back(e));
	assert_true(engine_late(e) <= PASSAGES);
	free(e);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_two_threads),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
