/*
 * test_pitch.c - notes, cents and frequencies against published tables
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <string.h>

#include "../score/seeded.h"
#include "evenhand/music/pitch.h"

static void near(double got, double want, double within)
{
	if (!(fabs(got - want) <= within))
		fail_msg("%.10g is not within %g of %.10g", got, within, want);
}

/*
 * Frequencies to 2 decimals: B. H. Suits's table of equal-tempered notes, A4 =
 * 440 Hz (as copied by auditoryneuroscience.com).  The numbers follow the
 * convention 60 = middle C = C4.
 */
static void test_published_frequencies(void **state)
{
	static const struct {
		const char *name;
		int note;
		double hz;
	} rows[] = {
		{ "E1", 28, 41.20 },
		{ "A1", 33, 55.00 },
		{ "C2", 36, 65.41 },
		{ "D2", 38, 73.42 },
		{ "G2", 43, 98.00 },
		{ "C3", 48, 130.81 },
		{ "D3", 50, 146.83 },
		{ "E3", 52, 164.81 },
		{ "F3", 53, 174.61 },
		{ "F#3", 54, 185.00 },
		{ "G3", 55, 196.00 },
		{ "G#3", 56, 207.65 },
		{ "A3", 57, 220.00 },
		{ "Bb3", 58, 233.08 },
		{ "B3", 59, 246.94 },
		{ "C4", 60, 261.63 },
		{ "D4", 62, 293.66 },
		{ "A4", 69, 440.00 },
		{ "E5", 76, 659.26 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(rows) / sizeof(*rows); i++) {
		char name[PITCH_NAME_MAX];
		double cents;
		int note;

		assert_true(pitch_parse(rows[i].name, &note));
		assert_int_equal(note, rows[i].note);
		near(pitch_hz(note, PITCH_ISO_16), rows[i].hz, 0.005);
		assert_int_equal(
		    pitch_nearest(rows[i].hz, PITCH_ISO_16, &cents), note);
		near(cents, 0, 0.2);
		pitch_name(note, rows[i].name[1] == 'b', name);
		assert_string_equal(name, rows[i].name);
	}
}

/* GNU Emacs Calc manual, "Musical Notes": 500 Hz = B4 + 21.3094853649 cents;
 * MIDI 84 = C6; 0 = C(-1) and 127 = G9. */
static void test_worked_notes(void **state)
{
	char name[PITCH_NAME_MAX];
	double cents;

	(void)state;
	assert_int_equal(pitch_nearest(500, PITCH_ISO_16, &cents), 71);
	near(cents, 21.3094853649, 1e-9);
	pitch_name(71, false, name);
	assert_string_equal(name, "B4");
	pitch_name(84, false, name);
	assert_string_equal(name, "C6");
	pitch_name(0, true, name);
	assert_string_equal(name, "C-1");
	pitch_name(127, false, name);
	assert_string_equal(name, "G9");
}

/* ISO 16: A4 is 440 Hz.  An octave has 1200 cents, a semitone 100. */
static void test_standard_pitch(void **state)
{
	(void)state;
	near(pitch_hz(69, PITCH_ISO_16), 440, 0);
	near(pitch_cents(220, 440), 1200, 1e-12);
	near(pitch_cents(440, 220), -1200, 1e-12);
	near(pitch_cents(440, pitch_hz(70, 440)), 100, 1e-9);
	near(pitch_above(440, 1200), 880, 1e-12);
	near(pitch_above(440, -100), pitch_hz(68, 440), 1e-9);
	/* Another reference carries every note with it. */
	near(pitch_hz(57, 442), 221, 1e-9);
	near(pitch_note(221, 442), 57, 1e-12);
}

/*
 * A just fifth is 3:2, 1.955 cents wider than a tempered one; a cello tuned
 * down from A3 = 220 Hz in just fifths (worked from the ratio).
 */
static void test_just_fifths(void **state)
{
	static const struct {
		double hz, cents;
		int note;
	} rows[] = {
		{ 146.667, -1.955, 50 },
		{ 97.778, -3.910, 43 },
		{ 65.185, -5.865, 36 },
	};
	double hz = 220;

	(void)state;
	near(pitch_cents(2, 3) - 700, 1.955, 0.0005);
	for (size_t i = 0; i < sizeof(rows) / sizeof(*rows); i++) {
		double cents;

		hz = hz * 2 / 3;
		near(hz, rows[i].hz, 0.0005);
		assert_int_equal(
		    pitch_nearest(hz, PITCH_ISO_16, &cents), rows[i].note);
		near(cents, rows[i].cents, 0.0006);
	}
	/* A violin's E from A 440: 660 against 659.26 Hz. */
	near(pitch_cents(pitch_hz(76, 440), 660), 1.955, 0.0005);
}

static void test_reading_names(void **state)
{
	static const struct {
		const char *name;
		int note;
	} good[] = {
		{ "c4", 60 },
		{ "bb3", 58 },
		{ "b3", 59 },
		{ "B#3", 60 },
		{ "Cb4", 59 },
		{ "F##3", 55 },
		{ "Bbb3", 57 },
		{ "E\u266d3", 51 },
		{ "f\u266f3", 54 },
		{ "C-1", 0 },
		{ "B#-1", 12 },
		{ "G9", 127 },
		{ "Abb9", 127 },
	};
	static const char *const bad[] = { "", "D", "3", "H3", "D#", "D10",
		"D-2", "D--1", "Cb-1", "G#9", "D#b3", "Db#3", "D###3", "D 3",
		" D3", "D3 ", "D\u266e3", "D3\n", "-1", "#3", "D\3773", "b" };
	int note = 7;

	(void)state;
	for (size_t i = 0; i < sizeof(bad) / sizeof(*bad); i++)
		if (pitch_parse(bad[i], &note))
			fail_msg("read \"%s\"", bad[i]);
	assert_int_equal(note, 7);
	for (size_t i = 0; i < sizeof(good) / sizeof(*good); i++) {
		assert_true(pitch_parse(good[i].name, &note));
		assert_int_equal(note, good[i].note);
	}
}

static void test_names_come_back(void **state)
{
	(void)state;
	for (int note = 0; note <= 127; note++) {
		for (int flats = 0; flats < 2; flats++) {
			char name[PITCH_NAME_MAX];
			int again = -1;

			pitch_name(note, flats, name);
			assert_true(pitch_parse(name, &again));
			assert_int_equal(again, note);
			assert_null(strchr(name, flats ? '#' : 'b'));
		}
	}
}

static void test_frequencies_come_back(void **state)
{
	(void)state;
	seeded_begin("frequencies");
	for (int i = 0; i < 100000; i++) {
		double note = seeded(0, 127000) / 1000.0;
		double reference = seeded(38000, 47000) / 100.0, cents;
		double hz = pitch_hz(note, reference);
		int nearest = pitch_nearest(hz, reference, &cents);

		near(pitch_note(hz, reference), note, 1e-9);
		near(nearest + cents / 100, note, 1e-9);
		assert_true(fabs(cents) <= 50);
		near(pitch_cents(reference, hz), (note - 69) * 100, 1e-7);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_published_frequencies),
		cmocka_unit_test(test_worked_notes),
		cmocka_unit_test(test_standard_pitch),
		cmocka_unit_test(test_just_fifths),
		cmocka_unit_test(test_reading_names),
		cmocka_unit_test(test_names_come_back),
		cmocka_unit_test(test_frequencies_come_back),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
