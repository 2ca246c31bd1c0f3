/*
 * test_letters.c - large letters, and whether they can be read from two metres
 *
 * Reading sizes, from memory of the standards, which are not at hand here: ISO
 * 9241-303:2011 (and ISO 9241-3:1992 before it) and ANSI/HFES 100-2007 ask for
 * a character height of 20 to 22 minutes of arc where text is read with ease,
 * and 16 at the least; for the width of a letter 0.5 to 1 times its height; for
 * its stem 1/6 to 1/12 of it in small text, and bolder is better far away.
 * Minutes of arc: 2 atan(h / 2d), 60 to a degree.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

#include "../../src/screen/view_play.h"
#include "../coach/programme.h"
#include "evenhand/base/text.h"
#include "evenhand/screen/letters.h"

enum { LEAST_ARC = 16, EASY_ARC = 20, AWAY_MM = 2000 };

static const double PI = 3.14159265358979323846;
static struct canvas page;
static char shown[CANVAS_ROWS_MAX * (CANVAS_COLUMNS_MAX * CELL_BYTES + 1)];

static const struct face five = { LETTERS_FIVE, 1, 2 };
static const struct face seven = { LETTERS_SEVEN, 1, 2 };

static const char *look(
    int columns, int rows, const struct face *f, bool ascii, const char *s)
{
	canvas_init(&page, columns, rows);
	letters_draw(&page, 0, 0, ATTRIBUTE_PLAIN, f, ascii, s);
	canvas_text(&page, shown, sizeof(shown));
	return shown;
}

static void keep(char *buffer, size_t size, const char *s)
{
	struct text t = text_in(buffer, size);

	text_add(&t, s);
	assert_false(t.cut);
}

static void test_drawing(void **state)
{
	(void)state;
	assert_string_equal(look(24, 5, &five, false, "2/6"),
	    "▄████▄      ██  ▄████▄\n"
	    "▀▀  ██     ▄█▀  ██\n"
	    " ▄███▀    ▄█▀   █████▄\n"
	    "██▀      ▄█▀    ██  ██\n"
	    "██████  ██      ▀████▀\n");
}

static void test_twins(void **state)
{
	(void)state;
	assert_string_equal(look(14, 5, &five, true, "UP"),
	    "##  ##  #####_\n"
	    "##  ##  ##  ##\n"
	    "##  ##  #####\"\n"
	    "##  ##  ##\n"
	    "\"####\"  ##\n");
}

/* Twice as large: every half cell is a square of half cells. */
static void test_scale(void **state)
{
	const struct face twice = { LETTERS_FIVE, 2, 2 };

	(void)state;
	assert_string_equal(look(12, 10, &twice, false, "C"),
	    "  ████████\n"
	    "████████████\n"
	    "████    ████\n"
	    "████\n"
	    "████\n"
	    "████\n"
	    "████\n"
	    "████    ████\n"
	    "████████████\n"
	    "  ████████\n");
	assert_int_equal(letters_rows(&twice), 10);
	assert_int_equal(letters_columns(&twice, "UP"), 28);
}

/* Every letter has its rows, its columns and a shape of its own. */
static void test_all_different(void **state)
{
	static const char all[] =
	    "ABCDEFGHIJKLMNPQRSTUVWXYZ0123456789-/?!.,'\":;+=#&()~*%";
	static char drawn[64][4096];
	const struct face *faces[] = { &five, &seven };

	(void)state;
	for (int f = 0; f < 2; f++)
		for (size_t i = 0; all[i]; i++) {
			char one[2] = { all[i], '\0' };

			assert_true(letters_can(one));
			keep(drawn[i], sizeof(drawn[i]),
			    look(12, letters_rows(faces[f]), faces[f], true,
				one));
			assert_non_null(strpbrk(drawn[i], "#\"_"));
			for (size_t j = 0; j < i; j++)
				if (strcmp(drawn[i], drawn[j]) == 0)
					fail_msg(
					    "%c looks like %c", all[i], all[j]);
		}
}

/* What is drawn takes as many columns as is said, and no more. */
static void test_columns(void **state)
{
	static const char *const words[] = { "DOWN", "UP", "CLEAN ✓", "~ 2 4",
		"SHAKY", "KEEP EASY", "0-1", "ÄÖÜ ß" };

	(void)state;
	for (int scale = 1; scale <= 3; scale++)
		for (size_t i = 0; i < sizeof(words) / sizeof(words[0]); i++) {
			const struct face f = { LETTERS_SEVEN, scale, 2 };
			int wide = 0;

			canvas_init(&page, CANVAS_COLUMNS_MAX, 30);
			letters_draw(&page, 0, 0, 0, &f, false, words[i]);
			for (int y = 0; y < page.rows; y++)
				for (int x = 0; x < page.columns; x++)
					if (strcmp(page.cell[y][x].text, " ") &&
					    x >= wide)
						wide = x + 1;
			if (letters_columns(&f, words[i]) <= CANVAS_COLUMNS_MAX)
				assert_int_equal(
				    letters_columns(&f, words[i]), wide);
		}
}

/* What a cue may hold in the languages of our readers. */
static void test_folding(void **state)
{
	static const char *const same[][2] = {
		{ "light hand", "LIGHT HAND" },
		{ "gro\u00dfe", "GROSSE" },
		{ "l\u2019arm", "L'ARM" },
		{ "\u00c6BLE", "AEBLE" },
		{ "na\u0142o", "NALO" },
		{ "o\u0308l", "\u00d6L" },
		{ "e\u0301te\u0301", "\u00c9T\u00c9" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(same) / sizeof(same[0]); i++) {
		char one[8192];

		assert_true(letters_can(same[i][0]));
		keep(one, sizeof(one), look(90, 5, &five, false, same[i][0]));
		assert_string_equal(one, look(90, 5, &five, false, same[i][1]));
	}
	/* An accent is seen. */
	char plain[4096];

	keep(plain, sizeof(plain), look(20, 5, &five, false, "OL"));
	assert_string_not_equal(plain, look(20, 5, &five, false, "\u00d6L"));
	assert_false(letters_can("弓"));
	assert_false(letters_can("Лук"));
	assert_int_equal(letters_columns(&five, "弓"), 0);
	assert_string_equal(look(8, 2, &five, false, "弓"), "\n\n");
	assert_false(letters_can("01234567890123456789012345678901234567890"));
}

/* Half as wide as high at the least, and stems of a fifth or a seventh. */
static void test_proportions(void **state)
{
	(void)state;
	for (const char *s = "ABCDGHKNOPQRSTUVXYZ023456789"; *s; s++) {
		char one[2] = { *s, '\0' };
		/* A row counts for two columns. */
		double narrow = letters_columns(&five, one) / 10.0;
		double high = letters_columns(&seven, one) / 14.0;

		assert_true(narrow >= 0.5 && narrow <= 1);
		assert_true(high >= 0.5 && high <= 1);
	}
}

static double minutes_of_arc(double mm)
{
	return 2 * atan(mm / 2 / AWAY_MM) * 180 / PI * 60;
}

/* Known values: an inch at 100 yards is 0.955 minutes; 5.818 mm at 2 m 10. */
static void test_arc(void **state)
{
	(void)state;
	assert_true(fabs(minutes_of_arc(5.8178) - 10) < 0.001);
	assert_true(
	    fabs(2 * atan(25.4 / 2 / 91440) * 180 / PI * 60 - 0.9549) < 0.001);
}

/* Height in mm of a screen by its inches across and its sides. */
static double screen_mm(double inches, double across, double down)
{
	return inches * 25.4 * down / hypot(across, down);
}

/* Terminals that fill a screen, and windows on one of 1080 dots. */
struct sight {
	const char *screen;
	double inches, across, down;
	int columns, rows;
	int filling; /* rows that would fill the screen */
};

/* What the layout takes for finger and bow. */
static int large_rows(const struct sight *at)
{
	const struct routine r = programme_cello(TONE);
	struct session s = { .wish = { .routine = &r } };
	const struct view v = { .session = &s };
	struct layout l;

	layout_of(&v, at->columns, at->rows, &l);
	return letters_rows(&l.face);
}

static void test_two_metres(void **state)
{
	static const struct sight sights[] = {
		{ "13.3 inch laptop, 40x12", 13.3, 16, 10, 40, 12, 12 },
		{ "13.3 inch laptop, 60x16", 13.3, 16, 10, 60, 16, 16 },
		{ "13.3 inch laptop, 80x24", 13.3, 16, 10, 80, 24, 24 },
		{ "13.3 inch laptop, 120x40", 13.3, 16, 10, 120, 40, 40 },
		{ "13.3 inch laptop, 200x60", 13.3, 16, 10, 200, 60, 60 },
		{ "15.6 inch laptop, 80x24", 15.6, 16, 9, 80, 24, 24 },
		{ "15.6 inch laptop, 120x40", 15.6, 16, 9, 120, 40, 40 },
		{ "15.6 inch laptop, 160x50", 15.6, 16, 9, 160, 50, 50 },
		{ "15.6 inch laptop, 200x60", 15.6, 16, 9, 200, 60, 60 },
		{ "15.6 inch laptop, 240x67", 15.6, 16, 9, 240, 67, 67 },
		{ "15.6 inch laptop, 300x120", 15.6, 16, 9, 300, 120, 120 },
		{ "24 inch monitor, 80x24", 24, 16, 9, 80, 24, 24 },
		{ "24 inch monitor, 240x67", 24, 16, 9, 240, 67, 67 },
		/* Letters 16 dots high. */
		{ "13.3 inch, window of 80x24", 13.3, 16, 9, 80, 24, 67 },
		{ "15.6 inch, window of 80x24", 15.6, 16, 9, 80, 24, 67 },
		{ "24 inch, window of 80x24", 24, 16, 9, 80, 24, 67 },
		{ "15.6 inch, window of 120x40", 15.6, 16, 9, 120, 40, 67 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(sights) / sizeof(sights[0]); i++) {
		const struct sight *s = &sights[i];
		double mm = screen_mm(s->inches, s->across, s->down) /
		    s->filling * large_rows(s);

		printf("%-30s %2d rows %5.1f mm %4.0f minutes of arc\n",
		    s->screen, large_rows(s), mm, minutes_of_arc(mm));
		assert_true(minutes_of_arc(mm) >= EASY_ARC);
	}
}

/*
 * Why not simply text: a capital is about 0.6 of its row, and at 80x24 on a
 * laptop that is a third of what is asked for.
 */
static void test_small_is_too_small(void **state)
{
	double row = screen_mm(15.6, 16, 9) / 24;

	(void)state;
	assert_true(minutes_of_arc(0.6 * row) < LEAST_ARC);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_drawing),
		cmocka_unit_test(test_twins),
		cmocka_unit_test(test_scale),
		cmocka_unit_test(test_all_different),
		cmocka_unit_test(test_columns),
		cmocka_unit_test(test_folding),
		cmocka_unit_test(test_proportions),
		cmocka_unit_test(test_arc),
		cmocka_unit_test(test_two_metres),
		cmocka_unit_test(test_small_is_too_small),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
