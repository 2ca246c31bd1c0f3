/*
 * test_columns.c - widths, clipping, wrapping and the distance of words
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "../score/seeded.h"
#include "evenhand/base/text.h"

static void test_widths(void **state)
{
	static const struct {
		const char *text;
		int columns;
	} cases[] = {
		{ "", 0 },
		{ "LIGHT HAND", 10 },
		{ "\u00e9t\u00e9", 3 },
		{ "e\u0301te\u0301", 3 },
		{ "\u5f13", 2 },
		{ "B\u266d", 2 },
		{ "\t\x1b", 2 },
		{ "\xff\xfe", 2 },
		{ "\u202e", 1 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(*cases); i++)
		assert_int_equal(text_columns(cases[i].text), cases[i].columns);
}

static void test_letters(void **state)
{
	size_t bytes;

	(void)state;
	assert_int_equal(text_letter("", &bytes), 0);
	assert_int_equal(bytes, 0);
	assert_int_equal(text_letter("e\u0301\u0323x", &bytes), 1);
	assert_int_equal(bytes, 5);
	assert_int_equal(text_letter("\u5f13x", &bytes), 2);
	assert_int_equal(bytes, 3);
	assert_int_equal(text_letter("\xe5\xbc", &bytes), 1);
	assert_int_equal(bytes, 1);
	/* A control character carries no accent. */
	assert_int_equal(text_letter("\x1b\u0301", &bytes), 1);
	assert_int_equal(bytes, 1);
}

static void test_wrapping(void **state)
{
	size_t next;

	(void)state;
	assert_int_equal(text_wrap("", 10, &next), 0);
	assert_int_equal(next, 0);
	assert_int_equal(text_wrap("even bow", 10, &next), 8);
	assert_int_equal(next, 8);
	assert_int_equal(text_wrap("even bow", 8, &next), 8);
	assert_int_equal(text_wrap("even bow", 7, &next), 4);
	assert_int_equal(next, 5);
	assert_int_equal(text_wrap("even   bow", 6, &next), 4);
	assert_int_equal(next, 7);
	assert_int_equal(text_wrap("even\nbow", 20, &next), 4);
	assert_int_equal(next, 5);
	assert_int_equal(text_wrap("even \nbow", 4, &next), 4);
	assert_int_equal(next, 6);
	assert_int_equal(text_wrap("\n\nbow", 4, &next), 0);
	assert_int_equal(next, 1);
	assert_int_equal(text_wrap("vibrato", 3, &next), 3);
	assert_int_equal(next, 3);
	/* Nothing fits: a letter goes all the same, or it would never end. */
	assert_int_equal(text_wrap("\u5f13\u5f13", 1, &next), 3);
	assert_int_equal(next, 3);
	assert_int_equal(text_wrap("ab", 0, &next), 1);
	assert_int_equal(next, 1);
}

/* Letters whose widths are known here, without asking the code tested. */
static const struct letter {
	const char *text;
	int columns;
} letters[] = {
	{ " ", 1 },
	{ " ", 1 },
	{ "a", 1 },
	{ "b", 1 },
	{ "\u00e9", 1 },
	{ "e\u0301", 1 },
	{ "\u5f13", 2 },
	{ "\n", 1 },
	{ "\x1b", 1 },
	{ "\xff", 1 },
};
enum { LETTERS = sizeof(letters) / sizeof(*letters), MOST = 20 };

/* A text kept as its letters. */
struct spelt {
	const struct letter *at[MOST];
	int count;
	char text[8 * MOST];
};

static struct spelt spell_random(void)
{
	struct spelt s = { .count = seeded(0, MOST) };

	for (int i = 0; i < s.count; i++) {
		s.at[i] = &letters[seeded(0, LETTERS - 1)];
		strcat(s.text, s.at[i]->text);
	}
	return s;
}

static int width(const struct spelt *s, int from, int to)
{
	int columns = 0;

	for (int i = from; i < to; i++)
		columns += s->at[i]->columns;
	return columns;
}

static size_t bytes_of(const struct spelt *s, int count)
{
	size_t bytes = 0;

	for (int i = 0; i < count; i++)
		bytes += strlen(s->at[i]->text);
	return bytes;
}

static void test_clip_against_a_slow_model(void **state)
{
	(void)state;
	seeded_begin("clip");
	for (int n = 0; n < 20000; n++) {
		struct spelt s = spell_random();
		int columns = seeded(0, 24), longest = 0;

		for (int i = 0; i <= s.count; i++)
			if (width(&s, 0, i) <= columns)
				longest = i;
		assert_int_equal(
		    text_clip(s.text, columns), bytes_of(&s, longest));
		assert_int_equal(text_columns(s.text), width(&s, 0, s.count));
	}
}

static bool is(const struct spelt *s, int i, const char *text)
{
	return i < s->count && strcmp(s->at[i]->text, text) == 0;
}

static int trimmed(const struct spelt *s, int from, int to)
{
	while (to > from && is(s, to - 1, " "))
		to--;
	return to;
}

/*
 * Tries every end from the longest down: the first that is a line's end, or
 * lies before or behind a space and leaves something on the line.
 */
static int slow_end(const struct spelt *s, int from, int columns)
{
	int all = from, fits = from;

	while (all < s->count && !is(s, all, "\n"))
		all++;
	for (int end = from; end <= all; end++)
		if (width(s, from, end) <= columns)
			fits = end;
	if (fits == all || is(s, fits, " "))
		return fits;
	for (int end = fits; end > from; end--)
		if (is(s, end - 1, " ") && trimmed(s, from, end) > from)
			return end;
	return fits > from ? fits : from + 1;
}

static int slow_next(const struct spelt *s, int end)
{
	while (is(s, end, " "))
		end++;
	return end + is(s, end, "\n");
}

static void test_wrap_against_a_slow_model(void **state)
{
	(void)state;
	seeded_begin("wrap");
	for (int n = 0; n < 20000; n++) {
		struct spelt s = spell_random();
		int columns = seeded(0, 12), from = 0;
		const char *rest = s.text;

		while (*rest) {
			size_t next, line = text_wrap(rest, columns, &next);
			int end = slow_end(&s, from, columns);
			size_t before = bytes_of(&s, from);

			assert_int_equal(line,
			    bytes_of(&s, trimmed(&s, from, end)) - before);
			from = slow_next(&s, end);
			assert_int_equal(next, bytes_of(&s, from) - before);
			assert_true(next > 0);
			rest += next;
		}
		assert_int_equal(from, s.count);
	}
}

/* As long as a routine file may be, on one line: wrapped without a wait. */
static void test_very_long_line(void **state)
{
	enum { LONG = 256 * 1024 };
	static char line[LONG + 1];
	int lines = 0;
	size_t next;

	(void)state;
	memset(line, 'a', LONG);
	for (const char *s = line; *s; s += next, lines++)
		assert_int_equal(text_wrap(s, 64, &next), 64);
	assert_int_equal(lines, LONG / 64);
	/* One letter with all the accents there can be is one letter. */
	for (int i = 1; i + 2 < LONG; i += 2)
		strcpy(line + i, "\u0301");
	assert_int_equal(text_wrap(line, 1, &next), strlen(line));
	assert_int_equal(text_columns(line), 1);
}

/* The definition itself, without any table. */
static int slow_distance(const char *a, int i, const char *b, int j)
{
	int best, other;

	if (i == 0 || j == 0)
		return i + j;
	best = slow_distance(a, i - 1, b, j - 1) + (a[i - 1] != b[j - 1]);
	other = slow_distance(a, i - 1, b, j) + 1;
	best = other < best ? other : best;
	other = slow_distance(a, i, b, j - 1) + 1;
	best = other < best ? other : best;
	if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
		other = slow_distance(a, i - 2, b, j - 2) + 1;
		best = other < best ? other : best;
	}
	return best;
}

static void random_word(char *word, int most)
{
	int length = seeded(0, most);

	for (int i = 0; i < length; i++)
		word[i] = (char)seeded('a', 'c');
	word[length] = '\0';
}

static void test_distance_against_its_definition(void **state)
{
	(void)state;
	seeded_begin("distance");
	for (int n = 0; n < 3000; n++) {
		char a[8], b[8];
		int limit = seeded(0, 8), want;

		random_word(a, 6);
		random_word(b, 6);
		want = slow_distance(a, (int)strlen(a), b, (int)strlen(b));
		assert_int_equal(text_distance(a, b, limit),
		    want > limit ? limit + 1 : want);
		assert_int_equal(
		    text_distance(a, b, limit), text_distance(b, a, limit));
	}
}

static void test_distance(void **state)
{
	char longer[80];

	(void)state;
	assert_int_equal(text_distance("bows_eech", "bows_each", 2), 1);
	assert_int_equal(text_distance("bows_aech", "bows_each", 2), 1);
	assert_int_equal(text_distance("", "", 2), 0);
	assert_int_equal(text_distance("kitten", "sitting", 9), 3);
	/* Optimal string alignment touches no place twice: 3, not 2. */
	assert_int_equal(text_distance("ca", "abc", 9), 3);
	assert_int_equal(text_distance("pulses", "session", 2), 3);
	/* An accented letter is one letter. */
	assert_int_equal(text_distance("\u00e9t\u00e9", "ete", 9), 2);

	memset(longer, 'a', 79);
	longer[79] = '\0';
	assert_int_equal(text_distance(longer, longer, 2), 0);
	assert_int_equal(text_distance(longer, "a", 100), 101);
	assert_int_equal(text_distance("a", longer, 100), 101);
	longer[64] = '\0';
	assert_int_equal(text_distance(longer, longer + 1, 2), 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_widths),
		cmocka_unit_test(test_letters),
		cmocka_unit_test(test_wrapping),
		cmocka_unit_test(test_clip_against_a_slow_model),
		cmocka_unit_test(test_wrap_against_a_slow_model),
		cmocka_unit_test(test_very_long_line),
		cmocka_unit_test(test_distance_against_its_definition),
		cmocka_unit_test(test_distance),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
