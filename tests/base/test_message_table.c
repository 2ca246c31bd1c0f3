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
#include "evenhand/base/text.h"

/* What is wrong with a place of a sentence, or NULL; sets where it ends. */
static const char *wrong_place(
    const char *place, const char *signature, bool *used, const char **end)
{
	size_t index = (size_t)(*place - '0');
	const char *bar;

	*end = strchr(place, '}');
	if (*end == NULL)
		return "a place is not closed";
	if (index >= strlen(signature))
		return "a place has no argument";
	used[index] = true;
	if (place[1] == '}')
		return NULL;
	if (place[1] != '|')
		return "a place is neither {0} nor {0|one|more}";
	if (signature[index] != 'w')
		return "only a whole number can choose a word";
	bar = memchr(place + 2, '|', (size_t)(*end - place - 2));
	if (bar == NULL ||
	    memchr(bar + 1, '|', (size_t)(*end - bar - 1)) != NULL)
		return "a choice is between two words";
	if (memchr(place, '{', (size_t)(*end - place)) != NULL)
		return "a place stands in a place";
	return NULL;
}

static const char *wrong_sentence(const char *signature, const char *sentence)
{
	bool used[MESSAGE_ARGS_MAX] = { false };
	char clean[1024];

	if (strlen(signature) > MESSAGE_ARGS_MAX)
		return "too many arguments";
	if (strspn(signature, "twnchdm") != strlen(signature))
		return "an unknown letter in the signature";
	if (strlen(sentence) >= sizeof(clean))
		return "longer than any screen";
	text_clean(clean, sizeof(clean), sentence);
	if (strcmp(clean, sentence) != 0)
		return "a control character or broken UTF-8";
	for (const char *s = sentence; *s; s++) {
		const char *why, *end;

		if (*s != '{' || s[1] < '0' || s[1] > '9')
			continue;
		why = wrong_place(s + 1, signature, used, &end);
		if (why != NULL)
			return why;
		s = end;
	}
	for (size_t i = 0; i < strlen(signature); i++)
		if (!used[i])
			return "an argument is not used";
	return NULL;
}

static void test_every_sentence(void **state)
{
	int bad = 0;

	(void)state;
	assert_true(M_COUNT > 1);
	for (int i = 1; i < M_COUNT; i++) {
		enum message_id id = (enum message_id)i;
		const char *why = wrong_sentence(
		    message_signature(id), message_sentence(id));

		if (why != NULL) {
			print_error("%s: %s\n", message_name(id), why);
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
		assert_non_null(
		    wrong_sentence(bad[i].signature, bad[i].sentence));
	assert_null(wrong_sentence("w", "{0} {0|bow|bows} {take: x}"));
	assert_null(wrong_sentence("wt", "{0||s} and {1}"));
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
