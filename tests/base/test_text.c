/*
 * test_text.c - text being put together, cleaned and cut
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <float.h>
#include <math.h>
#include <string.h>

#include "../score/seeded.h"
#include "evenhand/base/text.h"

static void test_adding(void **state)
{
	char buffer[16];
	struct text t = text_in(buffer, sizeof(buffer));

	(void)state;
	assert_string_equal(buffer, "");
	text_add(&t, "bow ");
	text_format(&t, "%d of %s", 2, "2");
	assert_string_equal(buffer, "bow 2 of 2");
	text_add_bytes(&t, ", down", 4);
	assert_string_equal(buffer, "bow 2 of 2, do");
	assert_int_equal(t.length, 14);
	assert_false(t.cut);
	text_add(&t, "x");
	assert_false(t.cut);
	text_add(&t, "y");
	assert_true(t.cut);
	assert_string_equal(buffer, "bow 2 of 2, dox");
}

/* What comes after a cut would stand in the wrong place. */
static void test_nothing_after_a_cut(void **state)
{
	char buffer[6];
	struct text t = text_in(buffer, sizeof(buffer));

	(void)state;
	text_add(&t, "ab\u5f13");
	assert_false(t.cut);
	t = text_in(buffer, sizeof(buffer));
	text_add(&t, "abc\u5f13");
	assert_true(t.cut);
	text_add(&t, "d");
	text_format(&t, "%d", 5);
	text_number(&t, 5);
	assert_string_equal(buffer, "abc");
	assert_int_equal(t.length, 3);
}

static void test_smallest_buffer(void **state)
{
	char buffer[1];
	struct text t = text_in(buffer, 1);

	(void)state;
	text_add(&t, "");
	assert_false(t.cut);
	text_format(&t, "%s", "a");
	assert_true(t.cut);
	assert_string_equal(buffer, "");
	text_clean(buffer, 1, "abc");
	assert_string_equal(buffer, "");
}

static const char *const pieces[] = { "a", " ", "\u00e9", "e\u0301", "\u5f13",
	"\U0001d11e", "q\u0323\u0307", "z" };
enum { PIECES = sizeof(pieces) / sizeof(*pieces), MOST = 24 };

/* A text of random letters; ends[i] is where the i-th of them ends. */
static int random_text(char *text, size_t *ends)
{
	int count = seeded(0, MOST);
	size_t length = 0;

	text[0] = '\0';
	for (int i = 0; i < count; i++) {
		const char *piece = pieces[seeded(0, PIECES - 1)];

		strcpy(text + length, piece);
		length += strlen(piece);
		ends[i] = length;
	}
	return count;
}

/* The longest run of whole letters that a buffer has room for, and no more. */
static void test_cut_at_a_letter(void **state)
{
	(void)state;
	seeded_begin("cut at a letter");
	for (int n = 0; n < 20000; n++) {
		char all[8 * MOST], buffer[8 * MOST];
		size_t ends[MOST], want = 0;
		int count = random_text(all, ends);
		size_t size = (size_t)seeded(1, (int)strlen(all) + 2);
		struct text t = text_in(buffer, size);

		for (int i = 0; i < count && ends[i] < size; i++)
			want = ends[i];
		text_add(&t, all);
		assert_int_equal(t.length, want);
		assert_int_equal(strlen(buffer), want);
		assert_memory_equal(buffer, all, want);
		assert_int_equal(t.cut, want < strlen(all));

		text_clean(buffer, size, all);
		assert_int_equal(strlen(buffer), want);
		assert_memory_equal(buffer, all, want);
	}
}

/* A formatted text is cut between code points at least. */
static void test_cut_format(void **state)
{
	(void)state;
	seeded_begin("cut format");
	for (int n = 0; n < 20000; n++) {
		char all[8 * MOST], buffer[8 * MOST];
		size_t ends[MOST], size;

		random_text(all, ends);
		size = (size_t)seeded(1, (int)strlen(all) + 2);
		struct text t = text_in(buffer, size);

		text_format(&t, "%s", all);
		assert_int_equal(t.length, strlen(buffer));
		assert_true(text_is_utf8(buffer, t.length));
		assert_memory_equal(buffer, all, t.length);
		assert_int_equal(t.cut, size <= strlen(all));
		/* A code point has at most 4 bytes. */
		if (t.cut)
			assert_true(t.length + 4 >= size);
	}
}

static void test_numbers(void **state)
{
	static const struct {
		double number;
		const char *text;
	} cases[] = {
		{ 0, "0" },
		{ -0.0, "0" },
		{ 4.5, "4.5" },
		{ 0.5, "0.5" },
		{ 0.25, "0.25" },
		{ 3.9264, "3.926" },
		{ 3.9266, "3.927" },
		{ 0.001, "0.001" },
		{ 0.01, "0.01" },
		{ 0.0625, "0.063" },
		{ 10, "10" },
		{ 100.1, "100.1" },
		{ 0.9996, "1" },
		{ -1.5, "-1.5" },
		{ -0.0004, "0" },
		{ 1e15, "1000000000000000" },
		{ 1e12, "1000000000000" },
		{ 999999999999.5, "999999999999.5" },
		{ (double)NAN, "?" },
		{ (double)INFINITY, "?" },
		{ -(double)INFINITY, "?" },
	};
	char buffer[400];

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(*cases); i++) {
		struct text t = text_in(buffer, sizeof(buffer));

		text_number(&t, cases[i].number);
		assert_string_equal(buffer, cases[i].text);
	}
	/* The greatest double has 309 digits and is no reason to stumble. */
	struct text t = text_in(buffer, sizeof(buffer));

	text_number(&t, DBL_MAX);
	assert_int_equal(t.length, 309);
	assert_false(t.cut);
}

static void test_cleaning(void **state)
{
	static const struct {
		const char *dirty, *clean;
	} cases[] = {
		{ "plain", "plain" },
		{ "\x1b[31mred\x1b[0m", "?[31mred?[0m" },
		{ "tab\there\n", "tab?here?" },
		{ "del\x7f", "del?" },
		{ "c1 \xc2\x9b"
		  "31m",
		    "c1 ?31m" },
		{ "lines\u2028of\u2029text", "lines?of?text" },
		{ "\u202eturned\u202c \u2066x\u2069 \u200e\u200f\u061c",
		    "?turned? ?x? ???" },
		{ "B\u266d and F\u266f", "B\u266d and F\u266f" },
		{ "broken \xff\xfe", "broken ??" },
		{ "overlong \xc0\xaf", "overlong ??" },
		{ "surrogate \xed\xa0\x80", "surrogate ???" },
		{ "cut \xe5\xbc", "cut ??" },
		{ "e\u0301 stays", "e\u0301 stays" },
		/* No accent may hide a control character. */
		{ "\x1b\u0301", "?\u0301" },
	};
	char buffer[64];

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(*cases); i++) {
		text_clean(buffer, sizeof(buffer), cases[i].dirty);
		assert_string_equal(buffer, cases[i].clean);
	}
}

/* Whatever the bytes: well-formed, nothing that a terminal would obey. */
static void test_cleaning_anything(void **state)
{
	(void)state;
	seeded_begin("clean anything");
	for (int n = 0; n < 50000; n++) {
		char dirty[32], buffer[64];
		int length = seeded(0, 31);

		for (int i = 0; i < length; i++)
			dirty[i] = (char)seeded(1, 255);
		dirty[length] = '\0';
		text_clean(buffer, (size_t)seeded(1, 64), dirty);
		assert_true(text_is_utf8(buffer, strlen(buffer)));
		for (const char *s = buffer; *s; s++) {
			assert_true((unsigned char)*s >= 0x20);
			assert_true(*s != 0x7f);
			if ((unsigned char)*s == 0xc2)
				assert_true((unsigned char)s[1] >= 0xa0);
		}
	}
}

/*
 * The Unicode Standard, table 3-7, well-formed UTF-8 byte sequences (from
 * memory): first byte, range of the second, how many follow.
 */
static const struct {
	int from, to, low, high, more;
} well_formed[] = {
	{ 0x00, 0x7f, 0, 0, 0 },
	{ 0xc2, 0xdf, 0x80, 0xbf, 1 },
	{ 0xe0, 0xe0, 0xa0, 0xbf, 2 },
	{ 0xe1, 0xec, 0x80, 0xbf, 2 },
	{ 0xed, 0xed, 0x80, 0x9f, 2 },
	{ 0xee, 0xef, 0x80, 0xbf, 2 },
	{ 0xf0, 0xf0, 0x90, 0xbf, 3 },
	{ 0xf1, 0xf3, 0x80, 0xbf, 3 },
	{ 0xf4, 0xf4, 0x80, 0x8f, 3 },
};

static int sequence(const unsigned char *s, int left)
{
	for (size_t i = 0; i < sizeof(well_formed) / sizeof(*well_formed);
	     i++) {
		int more = well_formed[i].more;

		if (*s < well_formed[i].from || *s > well_formed[i].to)
			continue;
		if (more >= left)
			return 0;
		if (more > 0 &&
		    (s[1] < well_formed[i].low || s[1] > well_formed[i].high))
			return 0;
		for (int k = 2; k <= more; k++)
			if (s[k] < 0x80 || s[k] > 0xbf)
				return 0;
		return more + 1;
	}
	return 0;
}

static bool table_says(const unsigned char *s, int length)
{
	while (length > 0) {
		int took = sequence(s, length);

		if (took == 0)
			return false;
		s += took;
		length -= took;
	}
	return true;
}

/* All beginnings of two bytes, with the edges of the third and fourth. */
static void test_utf8(void **state)
{
	static const unsigned char edges[] = { 0x7f, 0x80, 0xbf, 0xc0 };
	int good = 0;

	(void)state;
	for (int pair = 0; pair < 0x10000; pair++) {
		for (int edge = 0; edge < 16; edge++) {
			unsigned char s[4] = { (unsigned char)(pair >> 8),
				(unsigned char)pair, edges[edge / 4],
				edges[edge % 4] };

			for (int length = 0; length <= 4; length++) {
				bool want = table_says(s, length);

				good += want;
				assert_int_equal(text_is_utf8((const char *)s,
						     (size_t)length),
				    want);
			}
		}
	}
	assert_true(good > 0x10000);
	/* A zero is a code point like others; it cuts what stands before. */
	assert_true(text_is_utf8("a\0b", 3));
	assert_false(text_is_utf8("\xe5\0\x93", 3));
}

/* Pairs of Unicode's UnicodeData.txt, field 14 (title case). */
static void test_capitals(void **state)
{
	static const char *const pairs[][2] = {
		{ "wren", "W" },
		{ "Wren", "W" },
		{ "\xc3\xa9mile", "\xc3\x89" },	    /* U+00E9, U+00C9 */
		{ "e\xcc\x81mile", "E\xcc\x81" },   /* with U+0301 */
		{ "\xd0\xb6", "\xd0\x96" },	    /* U+0436, U+0416 */
		{ "\xc7\x86", "\xc7\x85" },	    /* U+01C6, U+01C5 */
		{ "\xe1\x83\x90", "\xe1\x83\x90" }, /* U+10D0, itself */
		{ "\xe6\x9d\xa8", "\xe6\x9d\xa8" }, /* U+6768, itself */
		{ "5th", "5" },
		{ "\xff"
		  "w",
		    "\xff" },
		{ "", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(pairs) / sizeof(pairs[0]); i++) {
		char buffer[16];
		struct text t = text_in(buffer, sizeof(buffer));

		text_add_capital(&t, pairs[i][0]);
		assert_string_equal(buffer, pairs[i][1]);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_adding),
		cmocka_unit_test(test_nothing_after_a_cut),
		cmocka_unit_test(test_smallest_buffer),
		cmocka_unit_test(test_cut_at_a_letter),
		cmocka_unit_test(test_cut_format),
		cmocka_unit_test(test_numbers),
		cmocka_unit_test(test_cleaning),
		cmocka_unit_test(test_cleaning_anything),
		cmocka_unit_test(test_utf8),
		cmocka_unit_test(test_capitals),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
