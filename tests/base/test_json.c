/*
 * test_json.c - a JSON document, value by value (RFC 8259)
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/base/json.h"

static char bytes[512];

static void test_document(void **state)
{
	struct text t = text_in(bytes, sizeof(bytes));
	struct json j = json_in(&t);

	(void)state;
	json_open(&j, NULL, '{');
	json_whole(&j, "version", 1);
	json_open(&j, "list", '[');
	json_open(&j, NULL, '{');
	json_text(&j, "name", "D-A");
	json_truth(&j, "good", true);
	json_close(&j, '}');
	json_open(&j, NULL, '{');
	json_close(&j, '}');
	json_close(&j, ']');
	json_open(&j, "none", '[');
	json_close(&j, ']');
	json_whole(&j, "days", 3);
	json_truth(&j, "last", false);
	json_close(&j, '}');
	assert_string_equal(bytes,
	    "{\n"
	    "  \"version\": 1,\n"
	    "  \"list\": [\n"
	    "    {\"name\": \"D-A\", \"good\": true},\n"
	    "    {}],\n"
	    "  \"none\": [],\n"
	    "  \"days\": 3,\n"
	    "  \"last\": false}\n");
}

/* RFC 8259, section 7: what must be escaped. */
static void test_escapes(void **state)
{
	struct text t = text_in(bytes, sizeof(bytes));
	struct json j = json_in(&t);

	(void)state;
	json_text(&j, NULL, "\"\\/\b\n\x1f caf\xc3\xa9 \xf0\x9d\x84\x9e");
	assert_string_equal(bytes,
	    "\"\\\"\\\\/\\u0008\\u000a\\u001f caf\xc3\xa9 "
	    "\xf0\x9d\x84\x9e\"");
}

/* All whole numbers of 64 bits are told. */
static void test_farthest(void **state)
{
	struct text t = text_in(bytes, sizeof(bytes));
	struct json j = json_in(&t);

	(void)state;
	json_open(&j, NULL, '[');
	json_whole(&j, NULL, INT64_MAX);
	json_whole(&j, NULL, INT64_MIN);
	json_close(&j, ']');
	assert_string_equal(
	    bytes, "[\n  9223372036854775807,\n  -9223372036854775808]\n");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_document),
		cmocka_unit_test(test_escapes),
		cmocka_unit_test(test_farthest),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
