/*
 * test_inlet.c - what a microphone's callback puts, its listener takes, in order
 */
#include <math.h>
#include <pthread.h>
#include <sched.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdatomic.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/sound/inlet.h"

enum { MOST = 4096 };

static struct inlet *empty(void)
{
	struct inlet *in = aligned_alloc(64, (sizeof *in + 63) / 64 * 64);

	assert_non_null(in);
	memset(in, 0, sizeof *in);
	return in;
}

/* A sample tells its own number: multiples of 2^-20 are exact. */
static float value_of(int64_t number)
{
	return (float)(number % (1 << 20)) / (1 << 20);
}

static bool put(struct inlet *in, int64_t *number, int count)
{
	float block[MOST];
	bool kept;

	for (int i = 0; i < count; i++)
		block[i] = value_of(*number + i);
	kept = inlet_put(in, block, count, 1, 1000 + *number, false);
	*number += count;
	return kept;
}

/* Takes all there is, in pieces by lot; how many, and that they are right. */
static int64_t take_all(struct inlet *in, int64_t *due)
{
	float out[MOST];
	struct inlet_block b;
	int64_t taken = 0;
	size_t count;

	while ((count = inlet_take(in, out, (size_t)seeded(1, MOST), &b)) > 0) {
		assert_int_equal(count, b.count);
		if (*due >= 0)
			assert_int_equal(b.number, *due);
		if (b.time_ns != 0)
			assert_int_equal(b.time_ns, 1000 + b.number);
		for (size_t i = 0; i < count; i++)
			assert_true(out[i] == value_of(b.number + (int64_t)i));
		*due = b.number + (int64_t)count;
		taken += (int64_t)count;
	}
	return taken;
}

static void test_order(void **state)
{
	struct inlet *in = empty();
	int64_t number = 0, due = 0, taken = 0;

	(void)state;
	seeded_begin("inlet");
	/* Several times round. */
	for (int i = 0; i < 3000; i++) {
		for (int k = seeded(0, 10); k > 0; k--)
			assert_true(put(in, &number, seeded(1, 512)));
		taken += take_all(in, &due);
	}
	assert_true(number > 4 * INLET_SAMPLES);
	assert_int_equal(taken, number);
	assert_int_equal(inlet_heard(in), number);
	assert_int_equal(inlet_left_out(in), 0);
	free(in);
}

/* Full, in samples or in blocks: blocks are left out whole, and counted. */
static void fills(int size)
{
	struct inlet *in = empty();
	int64_t number = 0, due = 0, kept = 0, lost;

	for (int i = 0; i < 2 * INLET_SAMPLES / size; i++)
		kept += put(in, &number, size) ? size : 0;
	lost = number - kept;
	assert_true(kept <= INLET_SAMPLES);
	assert_true(kept > INLET_SAMPLES - size ||
	    kept == INT64_C(1) * INLET_BLOCKS * size);
	assert_true(lost > 0);
	assert_int_equal(inlet_left_out(in), lost);
	assert_int_equal(inlet_heard(in), number);
	assert_int_equal(take_all(in, &due), kept);

	/* The next block tells by its number that some are missing. */
	assert_true(inlet_room(in, size));
	assert_true(put(in, &number, size));
	due = number - size;
	assert_int_equal(take_all(in, &due), size);
	free(in);
}

static void test_full(void **state)
{
	(void)state;
	fills(256);
	fills(1000);
	fills(16);
	fills(MOST);
}

static void test_drop(void **state)
{
	struct inlet *in = empty();
	struct inlet_block b;
	int64_t number = 0, due = -1;
	float out[10];

	(void)state;
	seeded_begin("drop");
	for (int i = 0; i < 10; i++)
		put(in, &number, 100);
	assert_int_equal(inlet_take(in, out, 10, &b), 10);
	assert_true(inlet_peek(in, &b));
	assert_int_equal(b.number, 10);
	assert_int_equal(b.count, 90);
	assert_int_equal(b.time_ns, 0);
	inlet_drop(in);
	assert_false(inlet_peek(in, &b));
	assert_int_equal(take_all(in, &due), 0);
	put(in, &number, 100);
	due = number - 100;
	assert_int_equal(take_all(in, &due), 100);
	/* What came to nobody has its numbers too. */
	inlet_miss(in, 77);
	assert_int_equal(inlet_heard(in), number + 77);
	free(in);
}

/* Two channels are their mean; what is out of bounds is brought within. */
static void test_values(void **state)
{
	const float frames[] = { 1, 0, 0.5F, -0.5F, 7, 7, -7, -9, NAN, 1,
		INFINITY, -INFINITY, NAN, NAN };
	const float expected[] = { 0.5F, 0, 1, -1, 0.5F, 0, 0 };
	struct inlet *in = empty();
	struct inlet_block b;
	float out[7];

	(void)state;
	assert_true(inlet_put(in, frames, 7, 2, 5, true));
	assert_true(inlet_put(in, frames, 0, 2, 6, true));
	assert_int_equal(inlet_take(in, out, 7, &b), 7);
	assert_int_equal(b.broken, true);
	for (int i = 0; i < 7; i++)
		assert_true(out[i] == expected[i]);
	assert_int_equal(inlet_take(in, out, 7, &b), 0);
	free(in);
}

/* --- Between two threads ---------------------------------------------------- */

enum { BLOCKS = 20000 };

static atomic_bool over;

static void *callback(void *argument)
{
	int64_t number = 0;

	for (int i = 0; i < BLOCKS; i++) {
		put(argument, &number, 1 + i % 400);
		if (i % 32 == 0)
			sched_yield();
	}
	atomic_store(&over, true);
	return NULL;
}

/* Takes what is there: in order, but some may be left out. */
static int64_t take_some(struct inlet *in, int64_t *due)
{
	float out[MOST];
	struct inlet_block b;
	int64_t taken = 0;
	size_t count;

	while ((count = inlet_take(in, out, 300, &b)) > 0) {
		assert_true(b.number >= *due);
		for (size_t i = 0; i < count; i++)
			assert_true(out[i] == value_of(b.number + (int64_t)i));
		*due = b.number + (int64_t)count;
		taken += (int64_t)count;
	}
	return taken;
}

static void test_threads(void **state)
{
	struct inlet *in = empty();
	int64_t due = 0, taken = 0;
	pthread_t thread;
	bool last;

	(void)state;
	assert_int_equal(pthread_create(&thread, NULL, callback, in), 0);
	do {
		last = atomic_load(&over);
		taken += take_some(in, &due);
	} while (!last);
	pthread_join(thread, NULL);
	assert_int_equal(taken + inlet_left_out(in), inlet_heard(in));
	free(in);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_order),
		cmocka_unit_test(test_full),
		cmocka_unit_test(test_drop),
		cmocka_unit_test(test_values),
		cmocka_unit_test(test_threads),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
