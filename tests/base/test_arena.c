/*
 * test_arena.c - memory that is taken piece by piece and given back at once
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdalign.h>
#include <stdbool.h>
#include <string.h>

#include "../score/seeded.h"
#include "evenhand/base/arena.h"

enum { PIECES = 2000 };

static bool all_zero(const unsigned char *piece, size_t size)
{
	for (size_t i = 0; i < size; i++)
		if (piece[i] != 0)
			return false;
	return true;
}

/* Zeroed, aligned, and no piece reaches into another. */
static void fill(struct arena *a)
{
	static unsigned char *piece[PIECES];
	static size_t size[PIECES];
	size_t sum = 0;

	for (int i = 0; i < PIECES; i++) {
		size[i] = (size_t)seeded(0, seeded(0, 50) == 0 ? 40000 : 200);
		piece[i] = arena_take(a, size[i]);
		assert_non_null(piece[i]);
		assert_int_equal((uintptr_t)piece[i] % alignof(max_align_t), 0);
		assert_true(all_zero(piece[i], size[i]));
		memset(piece[i], 1 + i % 255, size[i]);
		sum += size[i];
	}
	for (int i = 0; i < PIECES; i++)
		for (size_t k = 0; k < size[i]; k++)
			assert_int_equal(piece[i][k], 1 + i % 255);
	assert_true(a->taken >= sum);
}

/* The second time the memory has been used before. */
static void test_pieces(void **state)
{
	struct arena a = { 0 };

	(void)state;
	seeded_begin("pieces");
	for (int time = 0; time < 2; time++) {
		fill(&a);
		arena_done(&a);
		assert_null(a.newest);
		assert_int_equal(a.taken, 0);
	}
	arena_done(&a);
	assert_true(arena_take(&a, 0) != arena_take(&a, 0));
	arena_done(&a);
}

static void test_text(void **state)
{
	struct arena a = { 0 };
	char from[] = "tone and more";
	char *copy = arena_text(&a, from, 4);
	char *empty = arena_text(&a, NULL, 0);

	(void)state;
	memset(from, 'x', sizeof(from));
	assert_string_equal(copy, "tone");
	assert_string_equal(empty, "");
	arena_done(&a);
}

static void test_too_much(void **state)
{
	struct arena a = { 0 };

	(void)state;
	assert_null(arena_take(&a, SIZE_MAX));
	assert_null(arena_take(&a, SIZE_MAX / 2 + 1));
	assert_null(arena_text(&a, "", SIZE_MAX));
	assert_int_equal(a.taken, 0);
	assert_non_null(arena_take(&a, 8));
	arena_done(&a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_pieces),
		cmocka_unit_test(test_text),
		cmocka_unit_test(test_too_much),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
