/*
 * test_message_table.c - every sentence agrees with its signature
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdbool.h>
#include <string.h>

#include "evenhand/base/message.h"
#include "evenhand/base/tongue.h"

/* A signature of known letters that its sentence agrees with. */
static bool fits(const char *signature, const char *sentence)
{
	return strspn(signature, "twnchdmfy") == strlen(signature) &&
	    tongue_fits(signature, sentence);
}

static void test_every_sentence(void **state)
{
	int bad = 0;

	(void)state;
	assert_true(M_COUNT > 1);
	for (int i = 1; i < M_COUNT; i++) {
		enum message_id id = (enum message_id)i;

		if (!fits(message_signature(id), message_sentence(id))) {
			print_error("%s: sentence and signature disagree\n",
			    message_name(id));
			bad++;
		}
		if (*message_sentence(id) == '\0') {
			print_error("%s says nothing\n", message_name(id));
			bad++;
		}
	}
	assert_int_equal(bad, 0);
}

/* Every message can be said with arguments of its own signature. */
static void test_every_message_speaks(void **state)
{
	(void)state;
	for (int i = 1; i < M_COUNT; i++) {
		enum message_id id = (enum message_id)i;
		const char *signature = message_signature(id);
		struct argument a[MESSAGE_ARGS_MAX];
		char said[2048];

		for (size_t k = 0; signature[k]; k++)
			a[k] = (struct argument) {
				.kind = (enum argument_kind)signature[k],
				.whole = M_WORD_CLEAN,
				.number = 1.5,
				.text = "tone",
			};
		struct message m = message_build(id, (int)strlen(signature), a);

		assert_true(message_text(&m, said, sizeof(said)) > 0);
		assert_null(strstr(said, "{0"));
		assert_memory_equal(message_name(id), "M_", 2);
	}
}

/* The check itself sees what it is there for. */
static void test_the_check_bites(void **state)
{
	static const struct {
		const char *signature, *sentence;
	} bad[] = {
		{ "", "{0}" },
		{ "t", "{1}{0}" },
		{ "tw", "{0}" },
		{ "t", "{0|bow|bows}" },
		{ "w", "{0|bow}" },
		{ "w", "{0|a|b|c}" },
		{ "w", "{0|a|{0}}" },
		{ "w", "{0" },
		{ "w", "{0x}" },
		{ "x", "{0}" },
		{ "ttttttt", "{0}{1}{2}{3}{4}{5}{6}" },
		{ "", "two\nlines" },
		{ "", "broken \xff" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(bad) / sizeof(*bad); i++)
		assert_false(fits(bad[i].signature, bad[i].sentence));
	assert_true(fits("w", "{0} {0|bow|bows} {take: x}"));
	assert_true(fits("wt", "{0||s} and {1}"));
}

static void test_words(void **state)
{
	struct message m = message_of(M_WORD_NO_MARK);
	char said[32];

	(void)state;
	message_text(&m, said, sizeof(said));
	assert_string_equal(said, "no mark");
	assert_string_equal(message_name(M_WORD_NO_MARK), "M_WORD_NO_MARK");
	assert_string_equal(message_name(M_NONE), "M_NONE");
	m = message_of(M_NONE);
	assert_int_equal(message_text(&m, said, sizeof(said)), 0);
	/* A word can stand inside a sentence, so it has no arguments. */
	for (int i = M_WORD_CLEAN; i < M_COUNT; i++) {
		if (strncmp(message_name((enum message_id)i), "M_WORD_", 7) ==
		    0)
			assert_string_equal(
			    message_signature((enum message_id)i), "");
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_sentence),
		cmocka_unit_test(test_every_message_speaks),
		cmocka_unit_test(test_the_check_bites),
		cmocka_unit_test(test_words),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
