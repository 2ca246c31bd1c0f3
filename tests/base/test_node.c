/*
 * test_node.c - finding one's way in a tree of YAML nodes
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/base/node.h"

static void test_get(void **state)
{
	struct node minutes = {
		.kind = NODE_WORD, .key = "minutes", .word = "5"
	};
	struct node days = { .kind = NODE_WORD,
		.key = "days_a_week",
		.word = "6",
		.next = &minutes };
	struct node map = { .kind = NODE_MAP, .first = &days };
	struct node list = { .kind = NODE_LIST, .first = &days };

	(void)state;
	assert_ptr_equal(node_get(&map, "minutes"), &minutes);
	assert_ptr_equal(node_get(&map, "days_a_week"), &days);
	assert_null(node_get(&map, "minute"));
	assert_null(node_get(&map, "minutes "));
	assert_null(node_get(&map, ""));
	/* Only a map has keys. */
	assert_null(node_get(&list, "minutes"));
	assert_null(node_get(&minutes, "minutes"));
	assert_null(node_get(NULL, "minutes"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_get),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
