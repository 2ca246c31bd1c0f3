/*
 * test_any.c - the routines that ship, spoilt in every way a file gets spoilt
 *
 * Cut off at every byte, and with bytes changed, lines left out, swapped, said
 * twice or pushed in, and pieces of one in another.  What must hold is in
 * any.h; a random case is brought back by its seed and shown whole.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "any.h"

enum {
	BYTES_MAX = 16384,
	CASES = 1500,
	QUICK = 40,
	CHANGES_MAX = 4,
	USED = 20, /* of so many good ones one is put to use */
};

static struct any any;
static int good, wrong;

/* How many times fewer cases where time is dear. */
static int fewer(void)
{
	if (getenv("EVENHAND_QUICK"))
		return QUICK;
#ifdef __SANITIZE_ADDRESS__
	return 2;
#else
	return 1;
#endif
}

/* The bytes in a piece of memory that ends where they end. */
static void hold(const char *bytes, size_t length)
{
	char *exact = malloc(length > 0 ? length : 1);
	const char *why;

	assert_non_null(exact);
	memcpy(exact, bytes, length);
	any_read(&any, exact, length);
	why = any_wrong(&any);
	if (any.faults.count == 0 && good++ % USED == 0 && why == NULL)
		why = any_use_wrong(&any);
	if (why != NULL && wrong++ < 3)
		print_error("%s: %s\n----\n%.*s\n----\n", why, any.said,
		    (int)length, bytes);
	any_done(&any);
	free(exact);
}

/* A cut at the end of a stage leaves a good routine; most cuts do not. */
static void test_cut_anywhere(void **state)
{
	(void)state;
	seeded_begin("test_cut_anywhere");
	good = wrong = 0;
	for (int i = 0; i < builtin_count(); i++) {
		size_t length;
		const char *text = builtin_text(i, &length);
		/* Where not every byte is, another one is each time. */
		size_t cut = (size_t)seeded(0, fewer() - 1);

		for (; cut < length; cut += (size_t)fewer())
			hold(text, cut);
		hold(text, length);
	}
	print_message("%d good\n", good);
	assert_int_equal(wrong, 0);
	assert_true(good >= builtin_count());
}

/* --- a text and ways to spoil it --- */

static char text[BYTES_MAX];
static int length;

/* Puts other bytes in the place of some; what is too much falls off. */
static void splice(int at, int gone, const char *more, int count)
{
	int rest = length - at - gone;

	if (at + count + rest > BYTES_MAX)
		return;
	memmove(text + at + count, text + at + gone, (size_t)rest);
	memcpy(text + at, more, (size_t)count);
	length = at + count + rest;
}

static int line_at(int at)
{
	while (at > 0 && text[at - 1] != '\n')
		at--;
	return at;
}

/* The bytes of the line that begins at a place, its end among them. */
static int line_length(int at)
{
	int end = at;

	while (end < length && text[end] != '\n')
		end++;
	return end + (end < length) - at;
}

static int some_line(void)
{
	return line_at(seeded(0, length - 1));
}

static void change_byte(void)
{
	static const char signs[] = ":#-[]{}\"',|>*&!%@`\\?~ \t\n\r"
				    "0159aZ./+\xc3\xa4\xe2\x80\xae\x7f";
	char sign = seeded(0, 3) ? signs[seeded(0, (int)sizeof(signs) - 2)]
				 : (char)seeded(0, 255);

	splice(seeded(0, length - 1), seeded(0, 1), &sign, 1);
}

static void drop_byte(void)
{
	splice(seeded(0, length - 1), 1, "", 0);
}

static void drop_line(void)
{
	int at = some_line();

	splice(at, line_length(at), "", 0);
}

static void copy_line(void)
{
	char line[BYTES_MAX];
	int from = some_line(), count = line_length(from);

	memcpy(line, text + from, (size_t)count);
	splice(some_line(), 0, line, count);
}

static void swap_lines(void)
{
	char line[BYTES_MAX];
	int from = some_line(), count = line_length(from);

	memcpy(line, text + from, (size_t)count);
	splice(from, count, "", 0);
	if (length > 0)
		splice(some_line(), 0, line, count);
	else
		splice(0, 0, line, count);
}

static void push_line(void)
{
	splice(some_line(), 0, "        ", seeded(1, 8));
}

static void pull_line(void)
{
	int at = some_line(), spaces = 0;

	while (at + spaces < length && text[at + spaces] == ' ')
		spaces++;
	splice(at, seeded(0, spaces), "", 0);
}

/* Lines of another routine, or homework in the middle of one. */
static void mix(void)
{
	size_t other;
	const char *from = builtin_text(seeded(0, builtin_count() - 1), &other);
	int at = seeded(0, (int)other - 1);
	int count = seeded(1, 200);

	if (count > (int)other - at)
		count = (int)other - at;
	splice(seeded(0, 1) ? some_line() : seeded(0, length - 1), 0, from + at,
	    count);
}

static void spoil(void)
{
	static void (*const ways[])(void) = { change_byte, change_byte,
		drop_byte, drop_line, copy_line, swap_lines, push_line,
		pull_line, mix };

	if (length > 0)
		ways[seeded(0, (int)(sizeof(ways) / sizeof(ways[0])) - 1)]();
}

static void test_spoilt_anyhow(void **state)
{
	int cases = CASES / fewer();

	(void)state;
	seeded_begin("test_spoilt_anyhow");
	good = wrong = 0;
	for (int i = 0; i < cases; i++) {
		int changes = seeded(1, CHANGES_MAX);
		size_t bytes;
		const char *from = builtin_text(
		    seeded(0, builtin_count() - 1), &bytes);

		assert_true(bytes < BYTES_MAX);
		memcpy(text, from, bytes);
		length = (int)bytes;
		while (changes-- > 0)
			spoil();
		hold(text, (size_t)length);
	}
	print_message("%d of %d good\n", good, cases);
	assert_int_equal(wrong, 0);
	/* Both kinds were met. */
	assert_in_range(good, 1, cases - 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_cut_anywhere),
		cmocka_unit_test(test_spoilt_anyhow),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
