/*
 * test_list.c - the list of a paper: what is written is read, what is no list
 * is not
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "../score/seeded.h"
#include "evenhand/paper/list.h"
#include "evenhand/paper/words.h"

static struct paper made;
static char bytes[LIST_BYTES_MAX];

static const char *written(void)
{
	struct text t = text_in(bytes, sizeof(bytes));

	list_write(&t, &made);
	assert_false(t.cut);
	return bytes;
}

static void test_written(void **state)
{
	struct lettering how = { 7, true, SIDE_RIGHT, 80 };

	(void)state;
	paper_init(&made, "Homework\033[2J for\tWren", "J. P.", 20514);
	paper_page(&made, 215.9, 279.4);
	paper_line(&made, 14, 25, 201.905, 25, 0.4, 100);
	paper_box(&made, 14, 30, 20, 5.5, 0, 12);
	paper_oval(&made, 50, 60, 2.5, 1.8, -22, 0);
	paper_shape(&made, 14, 50, 1.7, 0.2, "M 0 0 L 10 -20 Z");
	paper_words(&made, 200, 21, how, "two\nlines");
	assert_string_equal(written(),
	    "evenhand-paper 1\n"
	    "title Homework?[2J for?Wren\n"
	    "author J. P.\n"
	    "day 2026-03-02\n"
	    "page 21590 27940\n"
	    "line 1400 2500 20191 2500 40 100\n"
	    "box 1400 3000 2000 550 0 12\n"
	    "oval 5000 6000 250 180 -22 0\n"
	    "shape 1400 5000 170 20 M 0 0 L 10 -20 Z\n"
	    "words 20000 2100 700 bold right 3738 80 two?lines\n"
	    "end\n");
}

/* Each line read and written again is the same line. */
static void test_read_back(void **state)
{
	static struct paper again;
	char line[400];
	const char *s = written(), *end;
	static char first[LIST_BYTES_MAX];

	(void)state;
	test_written(NULL);
	memcpy(first, written(), strlen(bytes) + 1);
	paper_init(&again, made.title, made.author, made.day);
	for (s = first + strlen(LIST_FIRST) + 1; *s; s = end + 1) {
		struct paper_item item;
		enum list_line what;

		end = strchr(s, '\n');
		assert_non_null(end);
		memcpy(line, s, (size_t)(end - s));
		line[end - s] = '\0';
		what = list_read(line, &item);
		assert_int_not_equal(what, LIST_BAD);
		if (what == LIST_TITLE)
			assert_string_equal(item.text, made.title);
		if (what != LIST_ITEM)
			continue;
		again.pages += item.kind == PAPER_PAGE;
		again.item[again.items] = item;
		again.item[again.items].text = made.item[again.items].text
		    ? strcpy(again.bytes + 100 * again.items, item.text)
		    : NULL;
		again.items++;
	}
	assert_int_equal(again.items, made.items);
	made = again;
	assert_string_equal(written(), first);
}

static void test_refused(void **state)
{
	static const char *const lines[] = { "", "page", "page 0 100",
		"page 100", "page 100 100 100", "page 999999999 1",
		"page 100 -5", "line 1 2 3 4 5", "line 1 2 3 4 -5 100",
		"line 1 2 3 4 5 101", "line 1 2 3 4 5 x",
		"line 1.5 2 3 4 5 100", "box 1 2 -3 4 0 10", "oval 1 2 0 4 0 0",
		"oval 1 2 3 4 999 0", "shape 1 2 3 0 ", "shape 1 2 3 0 L 1 2",
		"shape 1 2 3 0 M 1", "shape 1 2 3 0 M 1 2 Q 1 2",
		"shape 1 2 3 0 M 1 500001", "shape 1 2 3 0 M -500001 2",
		"shape 1 2 0 0 M 1 2", "shape 1 2 3 0 M 1 2 C 1 2 3 4 5",
		"words 1 2 3 bold left 4 100", "words 1 2 3 bold left 4 100 ",
		"words 1 2 3 thin left 4 100 x", "words 1 2 3 bold up 4 100 x",
		"words 1 2 0 bold left 4 100 x", "ends", "Words",
		"pages 100 100" };
	struct paper_item item;

	(void)state;
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		if (list_read(lines[i], &item) != LIST_BAD)
			fail_msg("\"%s\" was read", lines[i]);
	assert_int_equal(list_read("page 1 1", &item), LIST_ITEM);
	assert_int_equal(
	    list_read("words 1 2 3 bold left 4 100 x y", &item), LIST_ITEM);
	assert_string_equal(item.text, "x y");
}

/* A whole list, line by line; false when one of them is refused. */
static bool taken(const char *list, size_t length, struct list_look *look)
{
	static char copy[LIST_BYTES_MAX];
	struct paper_item item;

	*look = (struct list_look) { 0 };
	memcpy(copy, list, length);
	copy[length] = '\0';
	for (char *line = copy; line < copy + length;) {
		char *end = memchr(line, '\n', (size_t)(copy + length - line));

		if (!end)
			return false;
		*end = '\0';
		if (list_next(look, line, (size_t)(end - line), &item) ==
		    LIST_BAD)
			return false;
		line = end + 1;
	}
	return look->ended;
}

/* A list that was cut off anywhere, or begins otherwise, is none. */
static void test_whole(void **state)
{
	struct list_look look;
	size_t length;

	(void)state;
	test_written(NULL);
	length = strlen(bytes);
	for (size_t cut = 0; cut < length; cut++)
		assert_false(taken(bytes, cut, &look));
	assert_true(taken(bytes, length, &look));
	assert_int_equal(look.pages, 1);
	assert_true(fabs(look.wide - 215.9) < 1e-9);
	assert_true(fabs(look.high - 279.4) < 1e-9);
	bytes[strlen("evenhand-paper ")] = '2';
	assert_false(taken(bytes, length, &look));
}

/* Each line has its place, and nothing comes behind the end. */
static void test_in_their_places(void **state)
{
	static const struct {
		const char *list;
		bool whole;
	} lists[] = {
		{ LIST_FIRST "\npage 1 1\nend\n", true },
		{ LIST_FIRST "\npage 1 1\npage 2 2\nend\n", true },
		{ LIST_FIRST "\nend\n", false },
		{ LIST_FIRST "\nline 1 1 2 2 1 100\npage 1 1\nend\n", false },
		{ LIST_FIRST "\npage 1 1\nend\nend\n", false },
		{ LIST_FIRST "\npage 1 1\nend\npage 1 1\n", false },
		{ LIST_FIRST "\npage 1 1\n" LIST_FIRST "\nend\n", false },
		{ "page 1 1\nend\n", false },
		{ LIST_FIRST "\ntitle \xff\npage 1 1\nend\n", false },
	};
	struct list_look look;

	(void)state;
	for (size_t i = 0; i < sizeof(lists) / sizeof(lists[0]); i++)
		if (taken(lists[i].list, strlen(lists[i].list), &look) !=
		    lists[i].whole)
			fail_msg("%s", lists[i].list);
	/* A zero within a line. */
	look = (struct list_look) { .begun = true };
	assert_int_equal(
	    list_next(&look, "title a\0b", 9, &(struct paper_item) { 0 }),
	    LIST_BAD);
}

/* Whatever stands there, nothing is read behind its end. */
static void test_any_bytes(void **state)
{
	static const char *const words[] = { "page ", "line ", "words ",
		"shape ", "M ", "C ", "Z ", "-", "bold ", "left ", "100 ", "7 ",
		"x", " ", "99999999 ", "\xc3\xa9" };
	int read = 0;

	(void)state;
	/* Half of the words are numbers: some forty lines are read. */
	seeded_begin("test_any_bytes");
	for (int n = 0; n < 50000; n++) {
		char line[200];
		struct text t = text_in(line, sizeof(line));
		struct paper_item item;

		for (int i = seeded(1, 12); i > 0; i--)
			text_add(&t,
			    words[seeded(0, 1) ? seeded(0, 15)
					       : seeded(10, 11)]);
		if (list_read(line, &item) != LIST_ITEM)
			continue;
		read++;
		assert_true(item.ink >= 0 && item.ink <= INK_FULL);
		assert_true(fabs(item.x) <= LIST_MM_MAX);
		assert_true(item.text >= line && item.text <= line + t.length
			? true
			: !*item.text);
	}
	assert_true(read > 0);
}

/* The widths of a wide sans serif: M is wide, i is not, bold is wider. */
static void test_widths(void **state)
{
	(void)state;
	/* DejaVu Sans 2.37 itself: A 684, V 684, space 318 thousandths. */
	assert_true(fabs(words_mm("AV A", 10, false) - 23.70) < 1e-9);
	assert_true(words_mm("MMM", 1, false) > 3 * words_mm("i", 1, false));
	assert_true(words_mm("Wren", 5, true) > words_mm("Wren", 5, false));
	/* An accent that stands on a letter takes no room of its own. */
	assert_true(fabs(words_mm("e\xcc\x81", 1, false) -
			words_mm("\xc3\xa9", 1, false)) < 1e-9);
	assert_true(words_mm("", 5, false) == 0);
	/* A word of another alphabet takes about what it is drawn with. */
	assert_true(words_mm("\xd0\xbb\xd0\xbe\xd0\xba", 1, false) < 2.5);
	assert_true(words_mm("\xe3\x8b\x90", 1, false) >= 1);
}

/* Where the first line of words ends, in a room for so many of them. */
static void ends(const char *words, const char *most, const char *line)
{
	size_t next,
	    length = words_wrap(
		words, 1, false, words_mm(most, 1, false), &next);

	assert_int_equal(length, strlen(line));
	assert_memory_equal(words, line, length);
}

/* A line ends at a space or behind a hyphen of a word, not inside a date. */
static void test_hyphens(void **state)
{
	(void)state;
	ends("Ann-Sophie", "Ann-Soph", "Ann-");
	ends("of Ann-Sophie", "of Ann-Soph", "of Ann-");
	ends("of Ann-Sophie", "of Ann", "of");
	ends("since 2026-03-02", "since 2026-03", "since");
	ends("G -1/4", "G -", "G");
	ends("\xc3\x96-\xc3\x9c", "\xc3\x96-i", "\xc3\x96-");
}

/* Wrapped anywhere, lines fit, nothing is lost and it comes to an end. */
static void test_wrapped(void **state)
{
	(void)state;
	seeded_begin("test_wrapped");
	for (int n = 0; n < 3000; n++) {
		char words[200], joined[200];
		struct text t = text_in(words, sizeof(words));
		struct text j = text_in(joined, sizeof(joined));
		double mm = seeded(1, 60);
		size_t next;

		for (int i = seeded(1, 60); i > 0; i--)
			text_add(&t, seeded(0, 5) ? "\xc3\xa4" : " ");
		for (const char *s = words; *s; s += next) {
			size_t length = words_wrap(s, 2, false, mm, &next);
			char line[200];
			struct text l = text_in(line, sizeof(line));

			assert_true(next > 0);
			text_add_bytes(&l, s, length);
			if (words_mm(line, 2, false) > mm)
				assert_int_equal(length, strlen("\xc3\xa4"));
			text_add(&j, line);
		}
		for (const char *a = words, *b = joined;; a++, b++) {
			a += strspn(a, " ");
			b += strspn(b, " ");
			assert_int_equal(*a, *b);
			if (!*a)
				break;
		}
	}
}

/* More than fits is said, and what was there before is kept. */
static void test_full(void **state)
{
	struct lettering how = { 4, false, SIDE_LEFT, 100 };
	struct paper_place here;

	(void)state;
	paper_init(&made, "", "", 0);
	paper_page(&made, 10, 10);
	paper_words(&made, 1, 1, how, "kept");
	here = paper_here(&made);
	for (int i = 0; i < PAPER_ITEMS_MAX + 3; i++)
		paper_line(&made, 0, 0, 1, 1, 1, 100);
	assert_true(made.cut);
	assert_int_equal(made.items, PAPER_ITEMS_MAX);
	paper_back(&made, here);
	assert_int_equal(made.items, 2);
	assert_string_equal(made.item[1].text, "kept");
	paper_words(&made, 1, 1, how, "more");
	assert_string_equal(made.item[2].text, "more");
	assert_string_equal(made.item[1].text, "kept");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_written),
		cmocka_unit_test(test_read_back),
		cmocka_unit_test(test_refused),
		cmocka_unit_test(test_whole),
		cmocka_unit_test(test_in_their_places),
		cmocka_unit_test(test_any_bytes),
		cmocka_unit_test(test_widths),
		cmocka_unit_test(test_hyphens),
		cmocka_unit_test(test_wrapped),
		cmocka_unit_test(test_full),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
