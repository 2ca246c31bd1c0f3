/*
 * test_ring.c - the ring against a plain list, and between two threads
 */
#include <pthread.h>
#include <sched.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/sound/ring.h"

static struct ring ring;

static struct ring_item item_of(int64_t n)
{
	return (struct ring_item) { (int32_t)(n % 7), (int32_t)(n % 1000), n };
}

static void check_item(struct ring_item got, int64_t n)
{
	struct ring_item want = item_of(n);

	assert_int_equal(got.kind, want.kind);
	assert_int_equal(got.slot, want.slot);
	assert_int_equal(got.frame, want.frame);
}

/* Starts both indices anywhere, so that they wrap within a test. */
static void ring_at(uint32_t index)
{
	memset(&ring, 0, sizeof ring);
	atomic_store(&ring.head.value, index);
	atomic_store(&ring.tail.value, index);
}

static void test_empty_and_full(void **state)
{
	struct ring_item item;

	(void)state;
	ring_at(0);
	assert_false(ring_take(&ring, &item));
	for (int i = 0; i < RING_ITEMS; i++)
		assert_true(ring_put(&ring, item_of(i)));
	assert_int_equal(ring_dropped(&ring), 0);
	assert_false(ring_put(&ring, item_of(99)));
	assert_false(ring_put(&ring, item_of(99)));
	assert_int_equal(ring_dropped(&ring), 2);
	for (int i = 0; i < RING_ITEMS; i++) {
		assert_true(ring_take(&ring, &item));
		check_item(item, i);
	}
	assert_false(ring_take(&ring, &item));
}

/* The model: what was put and not dropped comes out, in order. */
static void test_model(void **state)
{
	static const uint32_t starts[] = { 0, 63, UINT32_MAX - 1000,
		INT32_MAX };

	(void)state;
	seeded_begin("ring");
	for (size_t s = 0; s < 4; s++) {
		int64_t list[RING_ITEMS];
		int held = 0;
		uint64_t dropped = 0;

		ring_at(starts[s]);
		for (int64_t n = 0; n < 20000; n++) {
			/* Spells in which one side is the faster. */
			bool put = seeded(0, 99) < (n / 300 % 2 ? 70 : 30);
			struct ring_item item;

			if (put) {
				assert_int_equal(ring_put(&ring, item_of(n)),
				    held < RING_ITEMS);
				if (held < RING_ITEMS)
					list[held++] = n;
				else
					dropped++;
				continue;
			}
			assert_int_equal(ring_take(&ring, &item), held > 0);
			if (held == 0)
				continue;
			check_item(item, list[0]);
			memmove(list, list + 1, (size_t)--held * sizeof *list);
		}
		assert_int_equal(ring_dropped(&ring), dropped);
		assert_true(dropped > 0);
	}
}

enum { PASSED_ON = 200000 };

static void *write_all(void *unused)
{
	for (int64_t n = 0; n < PASSED_ON;)
		if (ring_put(&ring, item_of(n)))
			n++;
		else
			sched_yield();
	return unused;
}

/* One thread writes, this one reads: nothing lost, torn or twice. */
static void test_two_threads(void **state)
{
	pthread_t writer;
	struct ring_item item;

	(void)state;
	ring_at(UINT32_MAX - 500);
	assert_int_equal(pthread_create(&writer, NULL, write_all, NULL), 0);
	for (int64_t n = 0; n < PASSED_ON;)
		if (ring_take(&ring, &item))
			check_item(item, n++);
		else
			sched_yield();
	pthread_join(writer, NULL);
	assert_false(ring_take(&ring, &item));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_empty_and_full),
		cmocka_unit_test(test_model),
		cmocka_unit_test(test_two_threads),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
