/*
 * test_view_chart.c - charts of a history, beside the ones that were looked at
 */
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/base/date.h"
#include "evenhand/base/text.h"
#include "evenhand/base/tongue.h"
#include "evenhand/screen/chart.h"
#include "golden_pages.h"
#include "terms.h"

static struct canvas canvas;
static struct chart chart;
static struct days days;
static char page[CANVAS_ROWS_MAX * CANVAS_COLUMNS_MAX * 4];
static char pages[GOLDEN_BYTES];

static const struct day_range always = { INT_MIN, INT_MAX };
static const struct {
	int columns, rows;
} sizes[] = { { 40, 12 }, { 60, 16 }, { 80, 24 }, { 120, 40 }, { 200, 60 } };

enum { SIZES = sizeof(sizes) / sizeof(sizes[0]) };

static struct term *begin(struct term *t, const struct day_range *range)
{
	assert_true(days_make(&days, &t->h, range));
	assert_true(chart_begin(&chart, &days, INT_MAX));
	return t;
}

static void end(struct term *t)
{
	days_done(&days);
	free(t);
}

static const char *draw(int columns, int rows)
{
	canvas_init(&canvas, columns, rows);
	chart_draw(&canvas, &chart);
	canvas_text(&canvas, page, sizeof(page));
	return page;
}

static bool shows(const char *words)
{
	return strstr(page, words) != NULL;
}

static void press(enum key key, int columns, int rows)
{
	assert_true(chart_key(&chart, key, columns, rows));
}

static void add_page(struct text *t, const char *what, int columns, int rows)
{
	text_format(t, "--- %s, %d x %d\n", what, columns, rows);
	text_add(t, draw(columns, rows));
	assert_false(t->cut);
}

/* Every chart at every size; then what a key does to it. */
static void test_goldens(void **state)
{
	static const char *const names[CHART_LEAVES] = { "minutes", "fingers",
		"first-go", "stages" };
	struct term *t = begin(term_made(), &always);

	(void)state;
	for (int leaf = 0; leaf < CHART_LEAVES; leaf++) {
		struct text all = text_in(pages, sizeof(pages));
		char name[64];

		chart.leaf = (enum chart_leaf)leaf;
		for (int i = 0; i < SIZES; i++)
			add_page(&all, "days", sizes[i].columns, sizes[i].rows);
		chart.ascii = true;
		add_page(&all, "ascii", 80, 24);
		add_page(&all, "ascii", 40, 12);
		chart.ascii = false;
		press(KEY_BACK, 80, 24);
		add_page(&all, "earlier", 80, 24);
		chart.last = days.day[days.count - 1].day;
		chart.scale = SCALE_WEEKS;
		add_page(&all, "weeks", 80, 24);
		chart.scale = SCALE_MONTHS;
		add_page(&all, "months", 80, 24);
		chart.scale = SCALE_DAYS;
		chart.help = true;
		add_page(&all, "help", 80, 24);
		add_page(&all, "help", 40, 12);
		chart.help = false;
		snprintf(name, sizeof(name), "chart-%s", names[leaf]);
		golden_check(name, pages);
	}
	end(t);
}

/* Dates and decimals as the tongue writes them. */
static void test_tongue(void **state)
{
	static const struct tongue german = { .point = ",", .date = "d.m.y" };
	struct term *t = begin(term_made(), &always);

	(void)state;
	chart.leaf = CHART_FINGERS;
	draw(80, 24);
	assert_true(shows(" 05-04 ") && !shows(" 04.05 "));
	tongue_set(&german);
	draw(80, 24);
	tongue_set(NULL);
	assert_true(shows(" 04.05 ") && !shows(" 05-04 "));
	draw(40, 12);
	assert_true(shows(" 21.0\n"));
	tongue_set(&german);
	draw(40, 12);
	tongue_set(NULL);
	assert_true(shows(" 21,0\n"));
	end(t);
}

/* --- moving --- */

/* Presses until nothing moves any more; how often it moved. */
static int go(enum key key, int columns, int rows)
{
	int moves = 0, last;

	do {
		last = chart.last;
		press(key, columns, rows);
		moves += chart.last != last;
		assert_true(moves < 10000);
	} while (chart.last != last);
	return moves;
}

static void test_back_and_forth(void **state)
{
	struct term *t = begin(term_made(), &always);

	(void)state;
	draw(80, 24);
	assert_true(shows("2026-03-30 to 2026-05-24"));
	assert_int_equal(go(KEY_BACK, 80, 24), 1);
	draw(80, 24);
	assert_true(shows("2026-03-02 to 2026-04-26 "));
	assert_true(shows("48 days, 56 sessions"));
	assert_int_equal(go(KEY_FORWARD, 80, 24), 1);
	draw(80, 24);
	assert_true(shows("2026-03-30 to 2026-05-24"));
	end(t);
}

/* The first and the last day that the page names. */
static void span(int *from, int *to)
{
	const char *first = strstr(page, "20"), *last = strstr(page, " to ");
	char date[11] = "";

	assert_non_null(first);
	assert_non_null(last);
	memcpy(date, first, 10);
	assert_true(date_parse(date, from));
	memcpy(date, last + 4, 10);
	assert_true(date_parse(date, to));
	assert_true(*from <= *to);
}

/* From the newest page back to the oldest: none leaves a day out. */
static void page_back(int columns, int rows)
{
	int from, to, last, before;

	go(KEY_FORWARD, columns, rows);
	draw(columns, rows);
	span(&from, &to);
	assert_true(to >= days.day[days.count - 1].day);
	for (;;) {
		last = chart.last;
		press(KEY_BACK, columns, rows);
		if (chart.last == last)
			break;
		before = days_from(&days, from) - 1;
		assert_true(before >= 0);
		draw(columns, rows);
		last = from;
		span(&from, &to);
		assert_true(from < last && to >= days.day[before].day);
	}
	assert_true(from <= TERM_DAY);
}

/* Every day comes by, whatever the chart, the scale and the size. */
static void test_every_day_comes(void **state)
{
	struct term *t = begin(term_made(), &always);

	(void)state;
	for (int i = 0; i < CHART_LEAVES * SCALES * SIZES; i++) {
		chart.leaf = (enum chart_leaf)(i / SIZES % CHART_LEAVES);
		chart.scale = (enum chart_scale)(i / SIZES / CHART_LEAVES);
		page_back(sizes[i % SIZES].columns, sizes[i % SIZES].rows);
	}
	end(t);
}

/* Forty years without practice are one step, both ways. */
static void test_years_of_gap(void **state)
{
	struct term *t = term_new();

	(void)state;
	term_day(t, TERM_DAY, 4);
	term_day(t, TERM_DAY + 1, 4);
	term_day(t, TERM_DAY + 40 * 365, 4);
	begin(t, &always);
	for (int leaf = 0; leaf < CHART_LEAVES; leaf++) {
		if (leaf == CHART_FIRST_GO)
			continue;
		chart.leaf = (enum chart_leaf)leaf;
		assert_true(go(KEY_BACK, 80, 24) <= 1);
		draw(80, 24);
		assert_true(shows("2026-03-02 to"));
		assert_int_equal(go(KEY_FORWARD, 80, 24), 1);
		draw(80, 24);
		assert_true(shows("2066"));
	}
	end(t);
}

static void test_scales_end(void **state)
{
	struct term *t = begin(term_made(), &always);

	(void)state;
	press(KEY_LOUDER, 80, 24);
	assert_int_equal(chart.scale, SCALE_DAYS);
	for (int i = 0; i < 5; i++)
		press(KEY_SOFTER, 80, 24);
	assert_int_equal(chart.scale, SCALE_MONTHS);
	draw(80, 24);
	assert_true(shows("by month"));
	/* First goes are by day whatever was chosen for the others. */
	press(KEY_LEAF, 80, 24);
	press(KEY_LEAF, 80, 24);
	press(KEY_LOUDER, 80, 24);
	assert_int_equal(chart.leaf, CHART_FIRST_GO);
	assert_int_equal(chart.scale, SCALE_MONTHS);
	draw(80, 24);
	assert_true(shows("by day"));
	press(KEY_LEAF, 80, 24);
	press(KEY_LEAF, 80, 24);
	assert_int_equal(chart.leaf, CHART_MINUTES);
	end(t);
}

static void test_keys_of_the_page(void **state)
{
	struct term *t = begin(term_made(), &always);

	(void)state;
	press(KEY_HELP, 80, 24);
	draw(80, 24);
	assert_true(shows("q or Esc: leave."));
	press(KEY_FORWARD, 80, 24);
	draw(80, 24);
	assert_true(shows("minutes of practice"));
	press(KEY_HURT, 80, 24);
	press(KEY_OTHER, 80, 24);
	assert_false(chart_key(&chart, KEY_LEAVE, 80, 24));
	assert_false(chart_key(&chart, KEY_ESCAPE, 80, 24));
	end(t);
}

/* --- what is drawn is what was kept --- */

static int count(const char *sign)
{
	int found = 0;

	for (const char *s = page; (s = strstr(s, sign)); s += strlen(sign))
		found++;
	return found;
}

/* One day of ten minutes in a scale of ten fills the chart from top to foot. */
static void test_heights(void **state)
{
	struct term *t = term_new();

	(void)state;
	term_sit(t, TERM_DAY, 600000);
	term_sit(t, TERM_DAY + 1, 300000);
	term_sit(t, TERM_DAY + 2, 1000);
	begin(t, &always);
	draw(80, 24);
	/* 14 rows: 14 for ten minutes, 7 for five, half a cell for a second. */
	assert_int_equal(count("█"), 14 + 7);
	assert_int_equal(count("▄"), 1);
	assert_true(shows("3 days, 3 sessions, 15 minutes."));
	end(t);
}

static void test_only_the_range(void **state)
{
	const struct day_range some = { TERM_DAY + 7, TERM_DAY + 8 };
	struct term *t = begin(term_made(), &some);

	(void)state;
	assert_int_equal(days.count, 2);
	draw(80, 24);
	assert_true(shows("2 days, 3 sessions"));
	assert_false(shows("\xe2\x86\x90 2026"));
	end(t);
}

static void test_left_out_is_said(void **state)
{
	struct term *t = term_new();

	(void)state;
	for (int i = 0; i < 30; i++) {
		char name[ID_MAX];

		snprintf(name, sizeof(name), "stage-number-%d", i);
		term_tally(t, TERM_DAY, name, "1", BLOCK_WORK, 2)
		    ->first_go_pulses = 4;
	}
	begin(t, &always);
	chart.leaf = CHART_STAGES;
	draw(80, 24);
	assert_true(shows("No room for"));
	chart.leaf = CHART_FIRST_GO;
	draw(80, 24);
	assert_true(shows("No room for"));
	end(t);
}

/* --- what a journal cannot mean --- */

static void test_impossible(void **state)
{
	static const int odd[] = { INT_MIN, -1000000, -1, 0, 2932896, 2932897,
		INT_MAX };
	struct term *t = term_new();

	(void)state;
	for (size_t i = 0; i < sizeof(odd) / sizeof(odd[0]); i++) {
		struct tally *y;

		term_sit(t, odd[i], i % 2 ? INT_MAX : INT_MIN);
		y = term_tally(t, odd[i], "", "", BLOCK_WORK, INT_MAX);
		y->slide_um = i % 2 ? INT64_MAX : INT64_MIN;
		y->first_go_pulses = INT_MAX;
		y = term_tally(t, odd[i], "tone", "1", BLOCK_RECAP, -7);
		y->slide_um = INT64_MAX;
		y->first_go_pulses = -3;
	}
	begin(t, &always);
	assert_int_equal(days.count, 7);
	assert_int_equal(chart.high - chart.low, 2);
	for (int leaf = 0; leaf < CHART_LEAVES; leaf++)
		for (int scale = 0; scale < SCALES; scale++) {
			chart.leaf = (enum chart_leaf)leaf;
			chart.scale = (enum chart_scale)scale;
			go(KEY_BACK, 80, 24);
			draw(80, 24);
			assert_true(shows(
			    "5 days have dates before 1970 or after 9999"));
			go(KEY_FORWARD, 80, 24);
			draw(80, 24);
		}
	end(t);
	/* Nothing but such days: no chart can be drawn. */
	t = term_new();
	term_sit(t, -1, 1000);
	assert_true(days_make(&days, &t->h, &always));
	assert_false(chart_begin(&chart, &days, TERM_DAY));
	end(t);
}

/* The charts begin with today; what lies ahead can still be gone to. */
static void test_days_ahead(void **state)
{
	struct term *t = term_new();

	(void)state;
	term_day(t, TERM_DAY, 4);
	term_day(t, TERM_DAY + 9000, 4);
	assert_true(days_make(&days, &t->h, &always));
	assert_true(chart_begin(&chart, &days, TERM_DAY + 5));
	assert_int_equal(chart.last, TERM_DAY);
	assert_int_equal(go(KEY_FORWARD, 80, 24), 1);
	assert_int_equal(chart.last, TERM_DAY + 9000);
	/* With a clock that stands before all of it, all of it is ahead. */
	assert_true(chart_begin(&chart, &days, TERM_DAY - 5));
	assert_int_equal(chart.last, TERM_DAY + 9000);
	end(t);
}

static void test_small(void **state)
{
	struct term *t = begin(term_made(), &always);

	(void)state;
	draw(39, 12);
	assert_true(shows("This window is too small."));
	draw(40, 11);
	assert_true(shows("This window is too small."));
	press(KEY_BACK, 40, 11);
	draw(40, 12);
	assert_true(shows("to 2026-05-24"));
	end(t);
}

/* --- any keys, any sizes --- */

static void check_ascii(void)
{
	for (const char *s = page; *s; s++)
		if ((unsigned char)*s >= 0x80)
			fail_msg("no ASCII: %.20s", s);
}

static void test_any_keys(void **state)
{
	static const enum key keys[] = { KEY_FORWARD, KEY_BACK, KEY_LEAF,
		KEY_LOUDER, KEY_SOFTER, KEY_HELP, KEY_OTHER, KEY_DIGIT };
	struct term *t = begin(term_made(), &always);

	(void)state;
	seeded_begin("keys and sizes");
	for (int i = 0; i < 4000; i++) {
		int columns = seeded(1, i % 8 ? 130 : 320);
		int rows = seeded(1, i % 8 ? 50 : 130);

		press(keys[seeded(0, sizeof(keys) / sizeof(keys[0]) - 1)],
		    columns, rows);
		chart.ascii = i % 2;
		draw(columns, rows);
		if (chart.ascii)
			check_ascii();
		assert_in_range(chart.last, TERM_DAY, TERM_DAY + 84);
	}
	end(t);
}

/* A sign and its twin stand in the same cells. */
static void test_twins(void **state)
{
	static struct canvas signs;
	struct term *t = begin(term_made(), &always);

	(void)state;
	for (int leaf = 0; leaf < CHART_LEAVES; leaf++)
		for (int i = 0; i < SIZES; i++) {
			chart.leaf = (enum chart_leaf)leaf;
			chart.ascii = false;
			draw(sizes[i].columns, sizes[i].rows);
			signs = canvas;
			chart.ascii = true;
			draw(sizes[i].columns, sizes[i].rows);
			check_ascii();
			for (int y = 0; y < canvas.rows; y++)
				for (int x = 0; x < canvas.columns; x++) {
					const struct cell *a =
					    &signs.cell[y][x];
					const struct cell *b =
					    &canvas.cell[y][x];

					assert_int_equal(
					    a->attributes, b->attributes);
					assert_int_equal(
					    strcmp(a->text, " ") == 0,
					    strcmp(b->text, " ") == 0);
				}
		}
	end(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_goldens),
		cmocka_unit_test(test_tongue),
		cmocka_unit_test(test_back_and_forth),
		cmocka_unit_test(test_every_day_comes),
		cmocka_unit_test(test_years_of_gap),
		cmocka_unit_test(test_scales_end),
		cmocka_unit_test(test_keys_of_the_page),
		cmocka_unit_test(test_heights),
		cmocka_unit_test(test_only_the_range),
		cmocka_unit_test(test_left_out_is_said),
		cmocka_unit_test(test_impossible),
		cmocka_unit_test(test_days_ahead),
		cmocka_unit_test(test_small),
		cmocka_unit_test(test_any_keys),
		cmocka_unit_test(test_twins),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
