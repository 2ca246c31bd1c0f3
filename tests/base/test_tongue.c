/*
 * test_tongue.c - another language changes what is said, and nothing else
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "evenhand/base/date.h"
#include "evenhand/base/tongue.h"

static struct tongue german = {
	.sentence = {
		[M_WORD_CLEAN] = "sauber",
		[M_COUNT - 1] = "zuletzt",
		[M_WORLD_LINES_LEFT_OUT] = "{0} {0|Zeile fehlt|Zeilen fehlen}.",
		[M_WORD_NOTES] = "C Cis Des D Dis Es E F Fis Ges G Gis As A Ais "
				 "B H",
		[M_TRACK_NUMBER] = "{1} ist keine ganze Zahl für {0}",
	},
	.point = ",",
	.date = "d.m.y",
};

static int in_german(void **state)
{
	(void)state;
	tongue_set(&german);
	return 0;
}

static int in_english(void **state)
{
	(void)state;
	tongue_set(NULL);
	return 0;
}

static void is_said(const struct message *m, const char *words)
{
	char said[256];

	assert_int_equal(message_text(m, said, sizeof(said)), strlen(words));
	assert_string_equal(said, words);
}

/* In German and, where there is no tongue, in English. */
static void says(struct message m, const char *spoken, const char *plain)
{
	is_said(&m, spoken);
	tongue_set(NULL);
	is_said(&m, plain);
	tongue_set(&german);
}

static void test_words(void **state)
{
	(void)state;
	says(message_of(M_WORD_CLEAN), "sauber", "clean");
	assert_string_equal(message_sentence(M_WORD_CLEAN), "sauber");
	assert_string_equal(message_english(M_WORD_CLEAN), "clean");
	assert_string_equal(message_sentence(M_COUNT - 1), "zuletzt");
	says(message_with(M_WORLD_LINES_LEFT_OUT, WHOLE(1)), "1 Zeile fehlt.",
	    "1 line was left out here.");
	says(message_with(M_WORLD_LINES_LEFT_OUT, WHOLE(2)), "2 Zeilen fehlen.",
	    "2 lines were left out here.");
	/* Arguments the other way round. */
	says(message_with(M_TRACK_NUMBER, TEXT("--rung"), TEXT("x")),
	    "x ist keine ganze Zahl für --rung",
	    "--rung is a whole number from 1 on, not \"x\"");
	/* What is not there is said in English. */
	says(message_of(M_WORD_SHAKY), "shaky", "shaky");
}

static void test_signs(void **state)
{
	int day;

	(void)state;
	assert_true(date_day(2026, 3, 2, &day));
	says(message_with(M_CLASS_PAIN, DATE(day)), "pain on 02.03.2026",
	    "pain on 2026-03-02");
	says(message_with(M_PAGE_END_METRES, NUMBER(12.5)),
	    "The fingertips travelled 12,5 metres.",
	    "The fingertips travelled 12.5 metres.");
	says(message_with(M_PAGE_END_METRES, NUMBER(-0.125)),
	    "The fingertips travelled -0,125 metres.",
	    "The fingertips travelled -0.125 metres.");
	says(message_with(M_PAGE_END_METRES, NUMBER(12)),
	    "The fingertips travelled 12 metres.",
	    "The fingertips travelled 12 metres.");
	/* As they are typed. */
	says(message_with(M_RECORD_FAR, DAY(day)),
	    "2026-03-02 is too far from the time beside it to be its day",
	    "2026-03-02 is too far from the time beside it to be its day");
	says(message_with(M_ROUTINE_RANGE, TEXT("bow"), FIGURE(1.5), FIGURE(2),
		 TEXT("9")),
	    "\"bow\" goes from 1.5 to 2, not 9",
	    "\"bow\" goes from 1.5 to 2, not 9");
}

static void called(const char *english, const char *other)
{
	char name[8];

	text_clean(name, sizeof(name), english);
	tongue_note(name);
	assert_string_equal(name, other);
}

static void test_notes(void **state)
{
	(void)state;
	called("B3", "H3");
	called("Bb3", "B3");
	called("B", "H");
	called("Bb", "B");
	called("B-1/4", "H-1/4");
	called("A#3", "Ais3");
	called("C#-1", "Cis-1");
	called("Eb", "Es");
	called("G+1/4", "G+1/4");
	called("", "");
	/* What is no name, and names that do not reach so far or are too long. */
	called("X3", "X3");
	called("F##3", "F##3");
	german.sentence[M_WORD_NOTES] = "Do Do# Re\xE2\x99\xAD ReTroppo";
	called("C#4", "Do#4");
	called("Db4",
	    "Re\xE2\x99\xAD"
	    "4");
	called("D4", "D4");
	called("D#4", "D#4");
	tongue_set(NULL);
	called("B3", "B3");
	called("Bb3", "Bb3");
}

static void dates(const char *pattern, const char *whole, const char *brief)
{
	struct tongue t = { .sentence = { NULL } };
	struct text to = text_in(t.date, sizeof(t.date));
	char said[DATE_TEXT_MAX];
	int day;

	text_add(&to, pattern);
	assert_true(date_day(2026, 3, 2, &day));
	tongue_set(&t);
	tongue_date(day, said);
	assert_string_equal(said, whole);
	tongue_date_short(day, said);
	assert_string_equal(said, brief);
}

static void test_dates(void **state)
{
	(void)state;
	dates("", "2026-03-02", "03-02");
	dates("d.m.y", "02.03.2026", "02.03");
	dates("m/d/y", "03/02/2026", "03/02");
	dates("y.m.d", "2026.03.02", "03.02");
	dates("y.d.m", "2026.02.03", "02.03");
}

/* The number comes from the locale, which may have more than one byte. */
static void test_long_point(void **state)
{
	struct tongue t = { .point = "\u066b" };
	char said[16];
	struct text to = text_in(said, sizeof(said));

	(void)state;
	tongue_set(&t);
	tongue_number(&to, 2.25);
	assert_string_equal(said, "2\u066b25");
}

static void test_tenths(void **state)
{
	static const struct {
		double number;
		const char *said;
	} cases[] = {
		{ 200, "200,0" },
		{ 199.66, "199,7" },
		{ -0.04, "0,0" },
		{ -0.25, "-0,3" },
		{ 0.1, "0,1" },
		{ NAN, "?" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		char said[16];
		struct text to = text_in(said, sizeof(said));

		tongue_tenths(&to, cases[i].number);
		assert_string_equal(said, cases[i].said);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(
		    test_words, in_german, in_english),
		cmocka_unit_test_setup_teardown(
		    test_signs, in_german, in_english),
		cmocka_unit_test_setup_teardown(
		    test_notes, in_german, in_english),
		cmocka_unit_test_teardown(test_dates, in_english),
		cmocka_unit_test_teardown(test_long_point, in_english),
		cmocka_unit_test_setup_teardown(
		    test_tenths, in_german, in_english),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
