/*
 * test_canvas.c - a page as cells of text
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdbool.h>
#include <string.h>

#include "../score/seeded.h"
#include "evenhand/base/text.h"
#include "evenhand/screen/canvas.h"

static struct canvas page;
static char shown[CANVAS_ROWS_MAX * (CANVAS_COLUMNS_MAX * CELL_BYTES + 1)];

static const char *look(void)
{
	size_t length = canvas_text(&page, shown, sizeof(shown));

	assert_int_equal(length, strlen(shown));
	return shown;
}

static void test_sizes(void **state)
{
	(void)state;
	canvas_init(&page, 3, 2);
	assert_string_equal(look(), "\n\n");
	canvas_init(&page, 0, -5);
	assert_int_equal(page.columns, 1);
	assert_int_equal(page.rows, 1);
	canvas_init(&page, 100000, 100000);
	assert_int_equal(page.columns, CANVAS_COLUMNS_MAX);
	assert_int_equal(page.rows, CANVAS_ROWS_MAX);
}

static void test_putting(void **state)
{
	(void)state;
	canvas_init(&page, 12, 3);
	assert_int_equal(
	    canvas_put(&page, 0, 0, ATTRIBUTE_STRONG, "FINGER"), 6);
	assert_int_equal(canvas_put(&page, 0, 7, 0, "2"), 1);
	assert_int_equal(canvas_put(&page, 2, 1, 0, "e\u0301te\u0301"), 3);
	assert_string_equal(look(), "FINGER 2\n\n e\u0301te\u0301\n");
	assert_int_equal(page.cell[0][0].attributes, ATTRIBUTE_STRONG);
	assert_int_equal(page.cell[0][7].attributes, ATTRIBUTE_PLAIN);
	assert_string_equal(page.cell[2][1].text, "e\u0301");
	canvas_init(&page, 12, 3);
	assert_string_equal(look(), "\n\n\n");
	assert_int_equal(page.cell[0][0].attributes, ATTRIBUTE_PLAIN);
}

static void test_clipping(void **state)
{
	(void)state;
	canvas_init(&page, 5, 2);
	assert_int_equal(canvas_put(&page, 0, 3, 0, "frog"), 4);
	assert_int_equal(canvas_put(&page, 1, -2, 0, "tip!"), 4);
	assert_int_equal(canvas_put(&page, -1, 0, 0, "above"), 5);
	assert_int_equal(canvas_put(&page, 2, 0, 0, "below"), 5);
	assert_int_equal(canvas_put(&page, 0, 99, 0, "right"), 5);
	assert_string_equal(look(), "   fr\np!\n");
}

static void test_wide_signs(void **state)
{
	(void)state;
	canvas_init(&page, 4, 1);
	assert_int_equal(canvas_put(&page, 0, 0, 0, "\u5f13a"), 3);
	assert_string_equal(look(), "\u5f13a\n");
	assert_string_equal(page.cell[0][1].text, "");

	/* Either half of it overwritten takes the whole away. */
	canvas_put(&page, 0, 1, 0, "x");
	assert_string_equal(look(), " xa\n");
	canvas_init(&page, 4, 1);
	canvas_put(&page, 0, 0, 0, "\u5f13a");
	canvas_put(&page, 0, 0, 0, "x");
	assert_string_equal(look(), "x a\n");
	canvas_init(&page, 4, 1);
	canvas_put(&page, 0, 0, 0, "\u5f13\u5f13");
	canvas_put(&page, 0, 1, 0, "\u624b");
	assert_string_equal(look(), " \u624b\n");

	/* Half of one at an edge is a space. */
	canvas_init(&page, 4, 1);
	canvas_put(&page, 0, 0, 0, "abcd");
	assert_int_equal(canvas_put(&page, 0, 3, 0, "\u5f13"), 2);
	assert_string_equal(look(), "abc\n");
	canvas_put(&page, 0, -1, 0, "\u5f13");
	assert_string_equal(look(), " bc\n");
}

static void test_what_must_not_be_shown(void **state)
{
	(void)state;
	canvas_init(&page, 20, 1);
	assert_int_equal(canvas_put(&page, 0, 0, 0,
			     "a\x1b[0m\n\xff\u202e\xc2\x9f"
			     "b"),
	    10);
	assert_string_equal(look(), "a?[0m????b\n");
	/* An accent with no letter under it has no place. */
	canvas_init(&page, 20, 1);
	assert_int_equal(canvas_put(&page, 0, 0, 0, "\u0301x"), 1);
	assert_string_equal(look(), "x\n");
}

/* More accents than a cell holds: as many whole ones as go in. */
static void test_towers_of_accents(void **state)
{
	char tower[200] = "e";

	(void)state;
	for (int i = 0; i < 40; i++)
		strcat(tower, "\u0301");
	canvas_init(&page, 3, 1);
	assert_int_equal(canvas_put(&page, 0, 0, 0, tower), 1);
	assert_int_equal(canvas_put(&page, 0, 1, 0, "b"), 1);
	assert_int_equal(strlen(page.cell[0][0].text), 11);
	assert_true(text_is_utf8(page.cell[0][0].text, 11));
	assert_string_equal(page.cell[0][1].text, "b");

	/* No half accent at the end of it. */
	memmove(tower + 2, tower + 1, strlen(tower));
	memcpy(tower, "\u00e9", 2);
	canvas_put(&page, 0, 0, 0, tower);
	assert_string_equal(
	    page.cell[0][0].text, "\u00e9\u0301\u0301\u0301\u0301");
}

static void test_small_buffer(void **state)
{
	char small[4];

	(void)state;
	canvas_init(&page, 3, 2);
	canvas_put(&page, 0, 0, 0, "ab\u00e9");
	assert_int_equal(canvas_text(&page, small, sizeof(small)), 2);
	assert_string_equal(small, "ab");
}

/*
 * Anything put anywhere: each row still shows as wide as it is, so that a
 * terminal and the canvas never disagree about where a cell lies.
 */
static void test_rows_stay_whole(void **state)
{
	static const char *const pieces[] = { "a", "\u5f13", "e\u0301", " ",
		"\x1b", "\xff", "\u624b\u624b", "\u266d", "\u0301" };

	(void)state;
	seeded_begin("rows");
	for (int n = 0; n < 2000; n++) {
		canvas_init(&page, seeded(1, 9), seeded(1, 3));
		for (int i = 0; i < 30; i++) {
			char text[64] = "";

			for (int k = seeded(0, 4); k > 0; k--)
				strcat(text, pieces[seeded(0, 8)]);
			assert_int_equal(canvas_put(&page, seeded(-1, 3),
					     seeded(-4, 10), 0, text),
			    text_columns(text));
		}
		for (int y = 0; y < page.rows; y++) {
			char row[10 * CELL_BYTES] = "";

			for (int x = 0; x < page.columns; x++) {
				const char *cell = page.cell[y][x].text;
				const char *left = x > 0
				    ? page.cell[y][x - 1].text
				    : "";

				assert_int_equal(
				    *cell == '\0', text_columns(left) == 2);
				strcat(row, cell);
			}
			assert_int_equal(text_columns(row), page.columns);
			assert_true(text_is_utf8(row, strlen(row)));
		}
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_sizes),
		cmocka_unit_test(test_putting),
		cmocka_unit_test(test_clipping),
		cmocka_unit_test(test_wide_signs),
		cmocka_unit_test(test_what_must_not_be_shown),
		cmocka_unit_test(test_towers_of_accents),
		cmocka_unit_test(test_small_buffer),
		cmocka_unit_test(test_rows_stay_whole),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
