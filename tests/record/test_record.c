/*
 * test_record.c - records read with distrust: values, places, bounds
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <math.h>

#include "../score/seeded.h"
#include "changed.h"
#include "evenhand/record/moment.h"
#include "evenhand/record/write.h"

/* --- moments ----------------------------------------------------------------- */

static void test_moments(void **state)
{
	/* RFC 3339, 5.8: 1996-12-19T16:39:57-08:00 is 1996-12-20T00:39:57Z;
	   that second by date -u -d 1996-12-20T00:39:57Z +%s. */
	static const struct {
		const char *text;
		int64_t utc;
		int offset;
	} good[] = {
		{ "1970-01-01T00:00:00+00:00", 0, 0 },
		{ "1996-12-19T16:39:57-08:00", 851042397, -8 * 3600 },
		{ "2026-03-02T18:00:00+01:00", 1772470800, 3600 },
		{ "1970-01-01T00:19:32+00:19:32", 0, 1172 },
	};
	static const char *const bad[] = { "", "2026-03-02",
		"2026-03-02T18:00:00", "2026-03-02T18:00:00Z",
		"2026-03-02T1x:00:00+01:00", "2026-02-30T18:00:00+01:00",
		"2026-03-02T24:00:00+01:00", "2026-03-02T18:60:00+01:00",
		"2026-03-02T18:00:60+01:00", "2026-03-02 18:00:00+01:00",
		"2026-03-02T18:00:00+1:00", "2026-03-02T18:00:00+19:00",
		"2026-03-02T18:00:00-00:00", "2026-03-02T18:00:00+01:00:00",
		"2026-03-02T18:00:00+01:00 ", "10000-01-01T00:00:00+00:00",
		"1969-12-31T23:59:59+00:00" };
	struct moment m;
	char bytes[80];

	(void)state;
	for (size_t i = 0; i < sizeof(good) / sizeof(good[0]); i++) {
		struct text t = text_in(bytes, sizeof(bytes));

		assert_true(moment_told(good[i].text, &m));
		assert_int_equal(m.utc, good[i].utc);
		assert_int_equal(m.offset, good[i].offset);
		assert_true(moment_can_be_told(m));
		moment_tell(&t, m);
		assert_string_equal(bytes, good[i].text);
	}
	for (size_t i = 0; i < sizeof(bad) / sizeof(bad[0]); i++)
		assert_false(moment_told(bad[i], &m));
	assert_false(moment_can_be_told((struct moment) { .utc = -1 }));
	assert_false(moment_can_be_told((struct moment) { .utc = INT64_MAX }));
	assert_false(moment_can_be_told((struct moment) { .utc = INT64_MIN }));
	assert_false(moment_can_be_told((struct moment) { 0, 70000 }));
}

/* --- files --------------------------------------------------------------------- */

static void test_places(void **state)
{
	static const struct wrong cases[] = {
		{ "evenhand_record: 1", "evenhand_record: 01",
		    M_RECORD_NOT_RECORD, 1, 18 },
		{ "evenhand_record: 1", "evenhand_record: 3", M_RECORD_NEWER, 1,
		    18 },
		{ "evenhand_record: 1\n", "", M_RECORD_NOT_RECORD, 1, 1 },
		{ "since: 2026-03-02", "since: soon", M_RECORD_DAY, 4, 8 },
		{ "rows: 60", "rows: 0", M_RECORD_WHOLE, 6, 50 },
		{ "rows: 60", "rows: 20", M_RECORD_ROW_BEYOND, 41, 3 },
		{ "text: \"\"", "text: \"a\"", M_RECORD_CHANGED, 11, 9 },
		{ "edition: 4", "edition: four", M_RECORD_WHOLE, 10, 12 },
		{ "  length_ms: 32000\n", "", M_RECORD_MISSING, 13, 3 },
		{ "  length_ms: 32000\n",
		    "  length_ms: 32000\n  length_ms: 1\n", M_RECORD_TWICE, 21,
		    3 },
		{ "how: whole, at: 2026-03-02T18:00:32+01:00, row: 12",
		    "how: whole", M_RECORD_ENDLESS, 21, 8 },
		{ "[tone, 1, 3, 0]", "[tone, 1, 3]", M_RECORD_COLUMNS, 22, 12 },
		{ "[tone, 1, 3, 0]", "[Tone, 1, 3, 0]", M_RECORD_STAGE, 22,
		    13 },
		{ "[tone, 0-1, 3, 1]", "[tone, 1, 3, 1]", M_RECORD_AGAIN, 22,
		    36 },
		{ "[0, air, air, \"\", 0", "[0, sky, air, \"\", 0",
		    M_RECORD_CHOICE, 24, 9 },
		{ "clean, 0, 2, 8000", "clean, 0, 2, 8e3", M_RECORD_WHOLE, 25,
		    40 },
		{ "5, 7, 17000", "5, 4, 17000", M_RECORD_BEFORE, 25, 62 },
		{ "8, 9, 29000", "8, 0, 29000", M_RECORD_MARKLESS, 26, 64 },
		{ "[2, work, tone", "[1, work, tone", M_RECORD_ORDER, 26, 5 },
		{ "row: 10, heard", "row: 5, heard", M_RECORD_BEFORE, 28, 31 },
		{ "tops_asked: 12", "sequence: 12", M_RECORD_MEASURE, 28, 84 },
		{ "kind: skin, finger: 2", "kind: skin, finger: 5",
		    M_RECORD_WHOLE, 41, 75 },
		{ "row: 20", "row: 1", M_RECORD_ROW_TWICE, 31, 1 },
		{ ", computer: 1}", "}", M_RECORD_MISSING, 41, 3 },
		{ "notes:\n- {at: 2026-03-04", "notes:\n- &a {at: 2026-03-04",
		    M_ROUTINE_SIGN, 41, 3 },
		{ "words: \"\"", "words: \"\\e[31m\"", M_RECORD_CONTROL, 41,
		    85 },
		{ "cello}", "zither}", M_RECORD_CHOICE, 18, 48 },
	};
	struct record r;
	struct fault f;

	(void)state;
	assert_true(read_changed("", "", &f, &r));
	assert_int_equal(r.sittings, 2);
	assert_int_equal(r.turns, 3);
	assert_int_equal(r.notes, 2);
	record_done(&r);
	refused(cases, sizeof(cases) / sizeof(cases[0]));
}

/* A number of a measure, through words and back. */
static void test_reals(void **state)
{
	static const struct {
		double value;
		const char *text;
	} known[] = { { 0, "0" }, { 0.1, "0.1" }, { -12.5, "-12.5" },
		{ 440, "440" }, { 1e-20, "0.000000000000" },
		{ 0.0123456789012, "0.0123456789012" } };
	char bytes[80], words[120];
	struct record r;
	struct fault f;

	(void)state;
	seeded_begin("reals");
	for (size_t i = 0; i < sizeof(known) / sizeof(known[0]); i++) {
		struct text t = text_in(bytes, sizeof(bytes));

		record_write_real(&t, known[i].value);
		assert_string_equal(bytes, known[i].text);
	}
	for (int i = 0; i < 2000; i++) {
		struct text t = text_in(bytes, sizeof(bytes));
		/* What the journal keeps: twelve digits. */
		double value;

		snprintf(bytes, sizeof(bytes), "%.12g",
		    (double)(int64_t)(seeded_bits() >> 1) /
			(double)(1 + (seeded_bits() >> seeded(12, 40))));
		value = strtod(bytes, NULL);
		if (!(value < 1e12))
			continue;
		t = text_in(bytes, sizeof(bytes));
		record_write_real(&t, value);
		snprintf(words, sizeof(words), "share: %s", bytes);
		if (!read_changed("share: 0.934", words, &f, &r))
			fail_msg("%s is not read", words);
		/* Sorted by name: late_s, share, tops_asked. */
		if (fabs(r.sitting->measure[0].value[1].value - value) >
		    1e-12 * fabs(value) + 1e-13)
			fail_msg("%.17g came back as %s", value, bytes);
		record_done(&r);
	}
}

/* What keeps the bounds is read again, and what does not is refused. */
static void test_bounds(void **state)
{
	static char bytes[ROOM];

	(void)state;
	seeded_begin("bounds");
	for (int i = 0; i < 400; i++) {
		static const int64_t odd[] = { -1, 0, 1, 16, 17, 1000, 1001,
			100000, 100001, 1000000000, 1000000001 };
		int64_t value =
		    odd[seeded(0, (int)(sizeof(odd) / sizeof(odd[0])) - 1)];
		struct text t = text_in(bytes, sizeof(bytes));
		struct record r, again;
		struct faults faults = { 0 };
		struct record_turn *turn;
		struct fault f;
		bool good;

		assert_true(read_changed("", "", &f, &r));
		turn = &r.sitting->turn[1];
		int *const fields[] = { &turn->number, &turn->round,
			&turn->pulses, &turn->bows_done, &turn->bows_asked,
			&turn->resets, &turn->dropouts, &turn->start_ms,
			&turn->mark_ms, &r.sitting->cap_ms,
			&r.sitting->planned_ms, &r.sitting->length_ms,
			&r.sitting->share[0].planned,
			&r.sitting->share[0].dropped, &r.sitting->day };
		*fields[seeded(
		    0, (int)(sizeof(fields) / sizeof(fields[0])) - 1)] = (int)
		    value;
		good = record_sitting_good(&r, r.sitting);
		/* What is beyond its bounds may not even be written. */
		if (!good) {
			record_done(&r);
			continue;
		}
		record_write(&t, &r);
		record_done(&r);
		good = record_parse(
		    "again.yaml", bytes, t.length, &again, &faults);
		record_done(&again);
		if (!good && faults.at[0].message.id != M_RECORD_NO_TURN) {
			fault_text(&faults.at[0], bytes, sizeof(bytes));
			fail_msg("%s", bytes);
		}
	}
}

/* Many faults end the reading; none of them is lost count of. */
static void test_many_faults(void **state)
{
	static char bytes[ROOM];
	struct text t = text_in(bytes, sizeof(bytes));
	struct faults faults = { 0 };
	struct record r;

	(void)state;
	text_add(&t, "evenhand_record: 1\nsittings:\n");
	for (int i = 0; i < 3000; i++)
		text_add(&t, "- wrong\n");
	assert_false(record_parse("r.yaml", bytes, t.length, &r, &faults));
	record_done(&r);
	assert_in_range(faults.count, 10, 40);
	assert_int_equal(faults.left_out, 0);
}

/* What is no record is told as that; in a record, the byte that is wrong. */
static void test_bytes(void **state)
{
	static const struct {
		const char *bytes;
		enum message_id id;
		int line, column;
	} cases[] = {
		{ "%PDF-1.5\n%\xb5\xed\xae\xfb\n", M_RECORD_NOT_RECORD, 1, 1 },
		{ "PK\003\004", M_RECORD_NOT_RECORD, 1, 1 },
		{ "", M_RECORD_NOT_RECORD, 1, 1 },
		{ "evenhand_record: 1\nid: \xb5\n", M_RECORD_NOT_UTF8, 2, 5 },
		{ "evenhand_record: 1\nid: \xc3\xa4\033\n", M_RECORD_CONTROL, 2,
		    6 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct faults faults = { 0 };
		struct record r;

		assert_false(record_parse("r.yaml", cases[i].bytes,
		    strlen(cases[i].bytes), &r, &faults));
		record_done(&r);
		assert_int_equal(faults.count, 1);
		assert_int_equal(faults.at[0].message.id, cases[i].id);
		assert_int_equal(faults.at[0].line, cases[i].line);
		assert_int_equal(faults.at[0].column, cases[i].column);
	}
}

/* A record of which a row was told twice: what is left can be read again. */
static void left_out(struct record *r, int sittings, int notes)
{
	static char bytes[ROOM];
	struct text t = text_in(bytes, sizeof(bytes));
	struct record_left left = { 0 };
	struct faults faults = { 0 };
	struct record again;

	assert_true(record_leave_twice(r, &left));
	assert_int_equal(left.sittings, sittings);
	assert_int_equal(left.notes, notes);
	record_write(&t, r);
	assert_true(record_parse("r.yaml", bytes, t.length, &again, &faults));
	assert_int_equal(again.sittings, r->sittings);
	assert_int_equal(again.turns, r->turns);
	assert_int_equal(again.notes, r->notes);
	record_done(&again);
	record_done(r);
}

static void test_twice(void **state)
{
	struct record r;
	struct fault f;

	(void)state;
	assert_true(read_changed("", "", &f, &r));
	left_out(&r, 0, 0);
	assert_true(read_changed("", "", &f, &r));
	r.sitting->turn[1].row = r.sitting->turn[0].row;
	left_out(&r, 1, 0);
	assert_true(read_changed("", "", &f, &r));
	r.note->row = r.sitting->note->row;
	left_out(&r, 0, 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_twice),
		cmocka_unit_test(test_bytes),
		cmocka_unit_test(test_moments),
		cmocka_unit_test(test_places),
		cmocka_unit_test(test_reals),
		cmocka_unit_test(test_bounds),
		cmocka_unit_test(test_many_faults),
	};

	return cmocka_run_group_tests(tests, read_small, NULL);
}
