/*
 * test_fault.c - faults with their places, in order
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "../score/seeded.h"
#include "evenhand/base/fault.h"
#include "evenhand/base/text.h"

static void test_places(void **state)
{
	static const struct {
		const char *path;
		int line, column;
		const char *text;
	} cases[] = {
		{ NULL, 0, 0, "no mark" },
		{ "wren.yaml", 12, 9, "wren.yaml:12:9: no mark" },
		{ "wren.yaml", 12, 0, "wren.yaml:12: no mark" },
		{ "wren.yaml", 0, 0, "wren.yaml: no mark" },
		{ "wren.yaml", 0, 5, "wren.yaml: no mark" },
		{ NULL, 3, 4, "3:4: no mark" },
		{ "", 0, 0, "\"\": no mark" },
		/* A file name may not speak to the terminal either. */
		{ "a\x1b[2J\xff.yaml", 1, 1, "a?[2J?.yaml:1:1: no mark" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(*cases); i++) {
		struct fault f;
		char text[100];
		size_t length;

		assert_false(fault_set(&f, message_of(M_WORD_NO_MARK)));
		assert_null(f.path);
		assert_int_equal(f.line, 0);
		assert_false(fault_at(
		    &f, cases[i].path, cases[i].line, cases[i].column));
		length = fault_text(&f, text, sizeof(text));
		assert_string_equal(text, cases[i].text);
		assert_int_equal(length, strlen(text));
	}
}

static void test_small_buffers(void **state)
{
	struct fault f;
	char whole[100], part[100];
	size_t all;

	(void)state;
	fault_set(&f, message_of(M_WORD_NO_MARK));
	fault_at(&f, "\u00e9t\u00fcde.yaml", 12, 9);
	all = fault_text(&f, whole, sizeof(whole));
	for (size_t size = 1; size <= all + 1; size++) {
		size_t length = fault_text(&f, part, size);

		assert_true(length < size);
		assert_int_equal(strlen(part), length);
		assert_memory_equal(part, whole, length);
		assert_true(text_is_utf8(part, length));
	}
	assert_string_equal(part, whole);
}

static void test_more_than_fit(void **state)
{
	static struct faults list;

	(void)state;
	for (int i = 0; i < FAULTS_MAX + 3; i++)
		assert_false(faults_add(
		    &list, message_of(M_WORD_SHAKY), "wren.yaml", i + 1, 1));
	assert_int_equal(list.count, FAULTS_MAX);
	assert_int_equal(list.left_out, 3);
	assert_int_equal(list.at[FAULTS_MAX - 1].line, FAULTS_MAX);
}

static void test_order(void **state)
{
	static struct faults list;
	static const struct {
		const char *path;
		int line, column;
	} given[] = { { "b.yaml", 9, 1 }, { "a.yaml", 3, 7 },
		{ "b.yaml", 2, 5 }, { NULL, 0, 0 }, { "b.yaml", 2, 3 },
		{ "a.yaml", 0, 0 } },
	  want[] = { { "b.yaml", 2, 3 }, { "b.yaml", 2, 5 }, { "b.yaml", 9, 1 },
		  { "a.yaml", 0, 0 }, { "a.yaml", 3, 7 }, { NULL, 0, 0 } };

	(void)state;
	for (int i = 0; i < 6; i++)
		faults_add(&list, message_of(M_WORD_SHAKY), given[i].path,
		    given[i].line, given[i].column);
	faults_sort(&list);
	/* Files keep the order in which they were first met. */
	for (int i = 0; i < 6; i++) {
		assert_ptr_equal(list.at[i].path, want[i].path);
		assert_int_equal(list.at[i].line, want[i].line);
		assert_int_equal(list.at[i].column, want[i].column);
	}
}

/* Sorted, complete, and equals stand as they were found. */
static void test_order_of_many(void **state)
{
	static const char *const paths[] = { "a", "b", "c" };

	(void)state;
	seeded_begin("order");
	for (int n = 0; n < 500; n++) {
		struct faults list = { 0 };
		int count = seeded(0, FAULTS_MAX), seen[FAULTS_MAX] = { 0 };

		/* The id tells in which order they were found. */
		for (int i = 0; i < count; i++) {
			faults_add(&list, message_of(M_NONE),
			    paths[seeded(0, 2)], seeded(1, 4), seeded(1, 2));
			list.at[i].message.id = (enum message_id)i;
		}
		faults_sort(&list);
		assert_int_equal(list.count, count);
		for (int i = 0; i < count; i++)
			seen[list.at[i].message.id]++;
		for (int i = 0; i < count; i++)
			assert_int_equal(seen[i], 1);
		for (int i = 1; i < count; i++) {
			const struct fault *a = &list.at[i - 1],
					   *b = &list.at[i];
			int x = a->line * 10 + a->column;
			int y = b->line * 10 + b->column;

			if (strcmp(a->path, b->path) != 0)
				continue;
			assert_true(x <= y);
			if (x == y)
				assert_true(a->message.id < b->message.id);
		}
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_places),
		cmocka_unit_test(test_small_buffers),
		cmocka_unit_test(test_more_than_fit),
		cmocka_unit_test(test_order),
		cmocka_unit_test(test_order_of_many),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
