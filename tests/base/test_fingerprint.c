/*
 * test_fingerprint.c - FNV-1a against its published check values
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "evenhand/base/fingerprint.h"

/* 64-bit check values of the FNV reference by Fowler, Noll and Vo (from
 * memory). */
static void test_check_values(void **state)
{
	static const struct {
		const char *bytes;
		uint64_t fingerprint;
	} cases[] = {
		{ "", UINT64_C(0xcbf29ce484222325) },
		{ "a", UINT64_C(0xaf63dc4c8601ec8c) },
		{ "foobar", UINT64_C(0x85944171f73967e8) },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(*cases); i++) {
		uint64_t got = fingerprint_add(
		    FINGERPRINT_START, cases[i].bytes, strlen(cases[i].bytes));

		assert_true(got == cases[i].fingerprint);
	}
}

/* In pieces it comes to the same. */
static void test_goes_on(void **state)
{
	const char *bytes = "foobar";
	uint64_t whole = fingerprint_add(FINGERPRINT_START, bytes, 6);

	(void)state;
	for (size_t cut = 0; cut <= 6; cut++) {
		uint64_t part = fingerprint_add(FINGERPRINT_START, bytes, cut);

		part = fingerprint_add(part, bytes + cut, 6 - cut);
		assert_true(part == whole);
	}
	assert_true(whole != fingerprint_add(FINGERPRINT_START, "foobaz", 6));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_check_values),
		cmocka_unit_test(test_goes_on),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
