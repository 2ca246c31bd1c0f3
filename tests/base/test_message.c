/*
 * test_message.c - messages turned into sentences
 *
 * A small table of this test's own takes the place of the real one: the three
 * functions below are found before those of the library.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <limits.h>
#include <string.h>

#include "../score/seeded.h"
#include "evenhand/base/message.h"
#include "evenhand/base/text.h"

enum {
	PLAIN = 1,
	ONE_TEXT,
	COUNTED,
	MIXED,
	ONE_WORD,
	LEFT,
	TWO_TEXTS,
	BRACKETS,
	ONE_NUMBER,
	ONE_CLOCK,
	ONE_TIME,
	ONE_DATE,
	SIX_TEXTS,
	TURNED,
};

static const struct {
	const char *signature, *sentence;
} table[] = {
	[PLAIN] = { "", "Warm hands?" },
	[ONE_TEXT] = { "t", "I do not know \"{0}\"" },
	[COUNTED] = { "w", "{0} {0|bow|bows}" },
	[MIXED] = { "twn", "{0}: {1} {1|turn|turns}, {2} m" },
	[ONE_WORD] = { "m", "the bow goes {0} now" },
	[LEFT] = { "", "left" },
	[TWO_TEXTS] = { "tt", "{0}|{1}" },
	[BRACKETS] = { "t", "write {take: {0}} or { or }" },
	[ONE_NUMBER] = { "n", "{0}" },
	[ONE_CLOCK] = { "c", "{0}" },
	[ONE_TIME] = { "h", "{0}" },
	[ONE_DATE] = { "d", "{0}" },
	[SIX_TEXTS] = { "tttttt", "{0}|{1}|{2}|{3}|{4}|{5}" },
	[TURNED] = { "tt", "{1} before {0}{0}" },
};

const char *message_name(enum message_id id)
{
	(void)id;
	return "";
}

const char *message_signature(enum message_id id)
{
	return table[id].signature;
}

const char *message_english(enum message_id id)
{
	return table[id].sentence;
}

#define OF(id) ((enum message_id)(id))

static char said[1024];

static const char *say(struct message m)
{
	size_t length = message_text(&m, said, sizeof(said));

	assert_int_equal(length, strlen(said));
	return said;
}

static void test_sentences(void **state)
{
	(void)state;
	assert_string_equal(say(message_of(OF(PLAIN))), "Warm hands?");
	assert_string_equal(say(message_with(OF(ONE_TEXT), TEXT("bows_eech"))),
	    "I do not know \"bows_eech\"");
	assert_string_equal(
	    say(message_with(OF(ONE_TEXT), TEXT(NULL))), "I do not know \"\"");
	assert_string_equal(
	    say(message_with(OF(MIXED), TEXT("tone"), WHOLE(4), NUMBER(4.93))),
	    "tone: 4 turns, 4.93 m");
	assert_string_equal(say(message_with(OF(ONE_WORD), WORD(LEFT))),
	    "the bow goes left now");
	assert_string_equal(
	    say(message_with(OF(TURNED), TEXT("a"), TEXT("b"))), "b before aa");
	assert_string_equal(say(message_with(OF(BRACKETS), TEXT("pairs"))),
	    "write {take: pairs} or { or }");
	/* A text that looks like a place is not one. */
	assert_string_equal(say(message_with(OF(ONE_TEXT), TEXT("{0}"))),
	    "I do not know \"{0}\"");
}

static void test_counting(void **state)
{
	static const struct {
		int64_t count;
		const char *text;
	} cases[] = {
		{ 0, "0 bows" },
		{ 1, "1 bow" },
		{ 2, "2 bows" },
		{ -1, "-1 bow" },
		{ -2, "-2 bows" },
		{ 11, "11 bows" },
		{ 21, "21 bows" },
		{ INT64_MAX, "9223372036854775807 bows" },
		{ INT64_MIN, "-9223372036854775808 bows" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(*cases); i++)
		assert_string_equal(
		    say(message_with(OF(COUNTED), WHOLE(cases[i].count))),
		    cases[i].text);
}

static void test_clocks(void **state)
{
	static const struct {
		int64_t ms;
		const char *text;
	} cases[] = {
		{ 0, "0:00" },
		{ 499, "0:00" },
		{ 500, "0:01" },
		{ 28000, "0:28" },
		{ 59499, "0:59" },
		{ 59500, "1:00" },
		{ 292000, "4:52" },
		{ 308000, "5:08" },
		{ 3600000, "60:00" },
		{ -499, "0:00" },
		{ -500, "-0:01" },
		{ -5000, "-0:05" },
		{ INT64_MAX, "153722867280912:56" },
		{ INT64_MIN, "-153722867280912:56" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(*cases); i++)
		assert_string_equal(
		    say(message_with(OF(ONE_CLOCK), CLOCK(cases[i].ms))),
		    cases[i].text);
}

static void test_times_and_dates(void **state)
{
	(void)state;
	assert_string_equal(say(message_with(OF(ONE_TIME), TIME(0))), "00:00");
	assert_string_equal(
	    say(message_with(OF(ONE_TIME), TIME(17 * 60 + 5))), "17:05");
	assert_string_equal(
	    say(message_with(OF(ONE_TIME), TIME(1439))), "23:59");
	/* Past midnight it is early again. */
	assert_string_equal(
	    say(message_with(OF(ONE_TIME), TIME(1440 + 65))), "01:05");
	assert_string_equal(say(message_with(OF(ONE_TIME), TIME(-1))), "23:59");

	assert_string_equal(
	    say(message_with(OF(ONE_DATE), DATE(0))), "1970-01-01");
	assert_string_equal(
	    say(message_with(OF(ONE_DATE), DATE(20514))), "2026-03-02");
	assert_string_equal(
	    say(message_with(OF(ONE_DATE), DATE(-1))), "1969-12-31");
	assert_true(
	    strlen(say(message_with(OF(ONE_DATE), DATE(INT64_MAX)))) > 0);
	assert_true(
	    strlen(say(message_with(OF(ONE_DATE), DATE(INT64_MIN)))) > 0);
}

static void test_numbers(void **state)
{
	(void)state;
	assert_string_equal(say(message_with(OF(ONE_NUMBER), NUMBER(4))), "4");
	assert_string_equal(
	    say(message_with(OF(ONE_NUMBER), NUMBER(0.7))), "0.7");
	assert_string_equal(
	    say(message_with(OF(ONE_NUMBER), NUMBER(-2.125))), "-2.125");
}

/* Nothing that a routine holds can give orders to the terminal. */
static void test_store_is_clean(void **state)
{
	(void)state;
	assert_string_equal(say(message_with(OF(TWO_TEXTS), TEXT("\x1b]0;x\a"),
				TEXT("a\u202eb\xff"))),
	    "?]0;x?|a?b?");
}

static void test_long_text(void **state)
{
	char longer[1000], want[1000];
	struct message m;

	(void)state;
	memset(longer, 'x', sizeof(longer));
	longer[MESSAGE_TEXT_MAX - 1] = '\0';
	m = message_with(OF(ONE_TEXT), TEXT(longer));
	assert_string_equal(m.store, longer);

	longer[MESSAGE_TEXT_MAX - 1] = 'x';
	longer[sizeof(longer) - 1] = '\0';
	m = message_with(OF(ONE_TEXT), TEXT(longer));
	strcpy(want, longer);
	strcpy(want + MESSAGE_TEXT_MAX - 4, "...");
	assert_string_equal(m.store, want);

	/* A short text leaves its room to a long one, on either side. */
	say(message_with(OF(TWO_TEXTS), TEXT("ab"), TEXT(longer)));
	assert_int_equal(strlen(said), MESSAGE_TEXT_MAX - 2 + 1);
	assert_memory_equal(said, "ab|xxx", 6);
	say(message_with(OF(TWO_TEXTS), TEXT(longer), TEXT("ab")));
	assert_int_equal(strlen(said), MESSAGE_TEXT_MAX - 2 + 1);
	assert_string_equal(said + MESSAGE_TEXT_MAX - 8, "x...|ab");
	/* Two long ones share. */
	say(message_with(OF(TWO_TEXTS), TEXT(longer), TEXT(longer)));
	assert_int_equal(strchr(said, '|') - said, MESSAGE_TEXT_MAX / 2 - 1);
}

static void test_long_letters(void **state)
{
	char longer[1000] = "";
	struct message m;

	(void)state;
	for (int i = 0; i < 100; i++)
		strcat(longer, "e\u0301");
	m = message_with(OF(ONE_TEXT), TEXT(longer));
	/* 236 bytes are left before the three points: 78 whole letters. */
	assert_int_equal(strlen(m.store), 78 * 3 + 3);
	assert_true(text_is_utf8(m.store, strlen(m.store)));
}

/* Six texts of any length: each is there, whole or with its points. */
static void test_six_texts(void **state)
{
	(void)state;
	seeded_begin("six texts");
	for (int n = 0; n < 5000; n++) {
		char text[6][400];
		struct argument a[6];
		size_t kept = 0;

		for (int i = 0; i < 6; i++) {
			int length = seeded(0, seeded(0, 399));

			memset(text[i], 'a' + i, (size_t)length);
			text[i][length] = '\0';
			a[i] = TEXT(text[i]);
		}
		struct message m = message_build(OF(SIX_TEXTS), 6, a);

		for (int i = 0; i < 6; i++) {
			const char *own = m.store + m.value[i].whole;
			size_t length = strlen(own);

			kept += length + 1;
			if (strcmp(own, text[i]) == 0)
				continue;
			assert_true(length + 1 >= MESSAGE_TEXT_MAX / 6);
			assert_string_equal(own + length - 3, "...");
			assert_memory_equal(own, text[i], length - 3);
		}
		assert_true(kept <= MESSAGE_TEXT_MAX);
	}
}

static void test_small_buffers(void **state)
{
	struct message m = message_with(
	    OF(MIXED), TEXT("\u5f13"), WHOLE(12), NUMBER(1.5));
	char whole[64], part[64];
	size_t all = message_text(&m, whole, sizeof(whole));

	(void)state;
	for (size_t size = 1; size <= all + 1; size++) {
		size_t length = message_text(&m, part, size);

		assert_true(length < size);
		assert_int_equal(length, strlen(part));
		assert_memory_equal(part, whole, length);
		assert_true(text_is_utf8(part, length));
	}
	assert_string_equal(part, whole);
}

/* A copy says the same when the first one is gone. */
static void test_copies(void **state)
{
	struct message m = message_with(OF(ONE_TEXT), TEXT("tone"));
	struct message copy = m;

	(void)state;
	memset(&m, 0, sizeof(m));
	assert_string_equal(say(copy), "I do not know \"tone\"");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_sentences),
		cmocka_unit_test(test_counting),
		cmocka_unit_test(test_clocks),
		cmocka_unit_test(test_times_and_dates),
		cmocka_unit_test(test_numbers),
		cmocka_unit_test(test_store_is_clean),
		cmocka_unit_test(test_long_text),
		cmocka_unit_test(test_long_letters),
		cmocka_unit_test(test_six_texts),
		cmocka_unit_test(test_small_buffers),
		cmocka_unit_test(test_copies),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
