/*
 * test_days.c - a history set out by days, also where clocks were wrong
 */
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../score/seeded.h"
#include "evenhand/screen/days.h"
#include "terms.h"

static const struct day_range always = { INT_MIN, INT_MAX };

static void test_nothing(void **state)
{
	struct history h = { 0 };
	struct days d;

	(void)state;
	assert_true(days_make(&d, &h, &always));
	assert_int_equal(d.count, 0);
	assert_int_equal(days_from(&d, 0), 0);
	days_done(&d);
}

static void test_a_term(void **state)
{
	struct term *t = term_made();
	struct days d;

	(void)state;
	assert_true(days_make(&d, &t->h, &always));
	/* 12 weeks of 6 days, less the 9 of them from 4 to 13 May. */
	assert_int_equal(d.count, 63);
	assert_int_equal(d.stages, 6);
	for (int i = 0; i < d.stages; i++)
		assert_string_equal(d.stage[i], term_stages[i]);
	assert_int_equal(d.units, 4);
	assert_string_equal(d.unit[0], "1");
	assert_string_equal(d.unit[3], "4");
	for (int i = 0; i < d.count; i++)
		for (int k = 0; k < d.day[i].tallies; k++) {
			const struct tally *y = days_tally(&d, &d.day[i], k);
			int u = days_unit(&d, &d.day[i], k);

			assert_string_equal(
			    d.stage[days_stage(&d, &d.day[i], k)], y->stage);
			assert_string_equal(
			    u == DAYS_AIR ? "" : d.unit[u], y->unit);
		}
	assert_int_equal(d.day[0].sittings, 2);
	assert_int_equal(d.day[1].sittings, 1);
	assert_int_equal(days_from(&d, TERM_DAY + 6), 6);
	assert_int_equal(d.day[6].day, TERM_DAY + 7);
	assert_int_equal(days_from(&d, TERM_DAY + 200), d.count);
	days_done(&d);
	free(t);
}

/* A clock set back: the second session comes before the first. */
static void test_a_clock_set_back(void **state)
{
	struct term *t = term_new();
	struct days d;

	(void)state;
	term_sit(t, TERM_DAY + 3, 1000);
	term_sit(t, TERM_DAY, 2000);
	term_sit(t, TERM_DAY + 3, 4000);
	term_note(t, TERM_DAY + 3, NOTE_QUESTION, "first");
	term_note(t, TERM_DAY - 9, NOTE_SKIN, "");
	term_note(t, TERM_DAY + 3, NOTE_PAIN, "second");
	term_note(t, TERM_DAY, NOTE_LATER, "tone");
	assert_true(days_make(&d, &t->h, &always));
	assert_int_equal(d.count, 3);
	assert_int_equal(d.day[0].day, TERM_DAY - 9);
	assert_int_equal(d.day[0].sittings, 0);
	assert_true(d.day[0].sore);
	assert_int_equal(d.day[1].ms, 2000);
	assert_int_equal(d.day[1].notes, 0);
	assert_false(d.day[1].sore);
	assert_int_equal(d.day[2].ms, 5000);
	assert_int_equal(d.day[2].notes, 2);
	assert_string_equal(d.note[d.day[2].note]->words, "first");
	assert_string_equal(d.note[d.day[2].note + 1]->words, "second");
	days_done(&d);
	free(t);
}

static void test_names_are_those_of_the_range(void **state)
{
	const struct day_range some = { TERM_DAY + 14, TERM_DAY + 20 };
	struct term *t = term_made();
	struct days d;

	(void)state;
	assert_true(days_make(&d, &t->h, &some));
	assert_int_equal(d.count, 6);
	assert_int_equal(d.stages, 2);
	assert_string_equal(d.stage[0], "air");
	assert_string_equal(d.stage[1], "wide");
	days_done(&d);
	free(t);
}

/* Strings and pairs, in whatever order they come. */
static void test_units_in_order(void **state)
{
	static const char *const came[] = { "D-A", "2", "0-1", "", "G", "1" };
	static const char *const sorted[] = { "0-1", "1", "2", "D-A", "G" };
	struct term *t = term_new();
	struct days d;

	(void)state;
	for (int i = 0; i < 6; i++)
		term_tally(t, TERM_DAY + i, "x", came[i], BLOCK_WORK, 2);
	assert_true(days_make(&d, &t->h, &always));
	assert_int_equal(d.units, 5);
	for (int u = 0; u < 5; u++)
		assert_string_equal(d.unit[u], sorted[u]);
	for (int i = 0; i < 6; i++) {
		int u = days_unit(&d, &d.day[i], 0);

		assert_string_equal(u == DAYS_AIR ? "" : d.unit[u], came[i]);
	}
	days_done(&d);
	free(t);
}

/* More names than are kept apart: the rest is there, without a place. */
static void test_too_many_names(void **state)
{
	struct term *t = term_new();
	struct days d;
	int without = 0;

	(void)state;
	for (int i = 0; i < 150; i++) {
		char stage[ID_MAX], unit[UNIT_NAME_MAX];

		snprintf(stage, sizeof(stage), "s%d", i);
		snprintf(unit, sizeof(unit), "%d", i);
		term_tally(t, TERM_DAY, stage, unit, BLOCK_WORK, 2);
	}
	assert_true(days_make(&d, &t->h, &always));
	assert_int_equal(d.stages, DAYS_STAGES_MAX);
	assert_int_equal(d.units, DAYS_UNITS_MAX);
	assert_int_equal(d.day[0].tallies, 150);
	for (int i = 0; i < 150; i++)
		without += days_stage(&d, &d.day[0], i) < 0;
	assert_int_equal(without, 50);
	days_done(&d);
	free(t);
}

/* Lengths below zero and slides round the world. */
static void test_impossible(void **state)
{
	struct term *t = term_new();
	struct days d;
	struct tally *y;

	(void)state;
	term_sit(t, INT_MAX, -5000);
	term_sit(t, INT_MIN, INT_MAX);
	y = term_tally(t, INT_MIN, "", "", BLOCK_WORK, -2);
	y->slide_um = INT64_MIN;
	assert_int_equal(days_bows(y), 0);
	assert_int_equal(days_um(y), 0);
	y->slide_um = INT64_MAX;
	assert_true(days_um(y) * 1000000 > 0);
	assert_true(days_make(&d, &t->h, &always));
	assert_int_equal(d.count, 2);
	assert_int_equal(d.day[0].ms, INT_MAX);
	assert_int_equal(d.day[1].ms, 0);
	days_done(&d);
	free(t);
}

/* However they come, nothing is lost and days rise. */
static void test_any(void **state)
{
	(void)state;
	seeded_begin("days");
	for (int round = 0; round < 300; round++) {
		struct term *t = term_new();
		int tallies = seeded(0, 60), day = seeded(-50, 50);
		struct day_range range = { seeded(-40, 10), seeded(11, 60) };
		int64_t ms = 0, found = 0;
		int rows = 0, took = 0, notes = 0, noted = 0;
		struct days d;

		for (int i = seeded(0, 60); i > 0; i--) {
			int on = seeded(-50, 60), length = seeded(0, 300000);

			term_sit(t, on, length);
			if (on >= range.from && on <= range.to)
				ms += length;
		}
		for (int i = 0; i < tallies; i++) {
			term_tally(t, day, "tone", "1", BLOCK_WORK, 2);
			took += day >= range.from && day <= range.to;
			day += seeded(0, 3);
		}
		for (int i = seeded(0, 10); i > 0; i--) {
			int on = seeded(-50, 60);

			term_note(t, on, NOTE_SORE, "");
			notes += on >= range.from && on <= range.to;
		}
		assert_true(days_make(&d, &t->h, &range));
		for (int i = 0; i < d.count; i++) {
			assert_true(d.day[i].day >= range.from &&
			    d.day[i].day <= range.to);
			assert_true(i == 0 || d.day[i].day > d.day[i - 1].day);
			found += d.day[i].ms;
			rows += d.day[i].tallies;
			noted += d.day[i].notes;
			assert_int_equal(days_from(&d, d.day[i].day), i);
		}
		assert_int_equal(found, ms);
		assert_int_equal(rows, took);
		assert_int_equal(noted, notes);
		days_done(&d);
		free(t);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_nothing),
		cmocka_unit_test(test_a_term),
		cmocka_unit_test(test_a_clock_set_back),
		cmocka_unit_test(test_names_are_those_of_the_range),
		cmocka_unit_test(test_units_in_order),
		cmocka_unit_test(test_too_many_names),
		cmocka_unit_test(test_impossible),
		cmocka_unit_test(test_any),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
