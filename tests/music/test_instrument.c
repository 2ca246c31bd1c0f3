/*
 * test_instrument.c - strings, positions and fingers against published tables
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/music/instrument.h"
#include "evenhand/music/pitch.h"

static void test_names(void **state)
{
	(void)state;
	for (int i = 0; i < INSTRUMENT_COUNT; i++)
		for (int j = 0; j < i; j++)
			assert_string_not_equal(
			    instrument_name((enum instrument)i),
			    instrument_name((enum instrument)j));
	for (int i = 0; i < INSTRUMENT_COUNT; i++)
		assert_string_equal(instrument_name((enum instrument)i),
		    message_english(instrument_word((enum instrument)i)));
	assert_string_equal(instrument_name(INSTRUMENT_BASS), "double bass");
}

/*
 * Open strings from the highest.  Cello C2 G2 D3 A3 in fifths, viola an octave
 * higher (handwiki.org, "Cello"); double bass MIDI 28 33 38 43 (M. Fielding,
 * "Pitch vs frequency"); violin G3 D4 A4 E5 (common practice).
 */
static void test_open_strings(void **state)
{
	static const char *const open[INSTRUMENT_COUNT][STRINGS_USUAL] = {
		[INSTRUMENT_VIOLIN] = { "E5", "A4", "D4", "G3" },
		[INSTRUMENT_VIOLA] = { "A4", "D4", "G3", "C3" },
		[INSTRUMENT_CELLO] = { "A3", "D3", "G2", "C2" },
		[INSTRUMENT_BASS] = { "G2", "D2", "A1", "E1" },
	};

	(void)state;
	for (int i = 0; i < INSTRUMENT_COUNT; i++) {
		struct setup s = instrument_setup((enum instrument)i);

		assert_int_equal(s.instrument, i);
		assert_int_equal(s.strings, STRINGS_USUAL);
		assert_true(s.reference_hz == PITCH_ISO_16);
		for (int k = 0; k < STRINGS_USUAL; k++) {
			int note = -1;

			assert_true(pitch_parse(open[i][k], &note));
			assert_int_equal(s.open[k], note);
		}
	}
	assert_int_equal(instrument_setup(INSTRUMENT_BASS).open[3], 28);
}

static void test_finding_strings(void **state)
{
	struct setup s = instrument_setup(INSTRUMENT_CELLO);
	/* Strings of one letter twice, and one between the letters. */
	struct setup odd = { .strings = 3, .open = { 62, 54, 50 } };

	(void)state;
	assert_int_equal(setup_string(&s, "A"), 0);
	assert_int_equal(setup_string(&s, "D"), 1);
	assert_int_equal(setup_string(&s, "g"), 2);
	assert_int_equal(setup_string(&s, "C"), 3);
	assert_int_equal(setup_string(&s, "D3"), 1);
	assert_int_equal(setup_string(&s, "D4"), -1);
	assert_int_equal(setup_string(&s, "E"), -1);
	assert_int_equal(setup_string(&s, ""), -1);
	assert_int_equal(setup_string(&s, "H"), -1);
	assert_int_equal(setup_string(&s, "string D, the second one"), -1);
	assert_int_equal(setup_string(&odd, "D"), 0);
	assert_int_equal(setup_string(&odd, "D3"), 2);
	assert_int_equal(setup_string(&odd, "F#"), 1);
	assert_int_equal(setup_string(&odd, "Gb"), 1);
	assert_int_equal(setup_string(&odd, "F"), -1);
}

/*
 * The closed hand on the cello's D string.  First position: van Spaandonk's
 * beginner page (1 = E, 2 = F, 3 = F sharp, 4 = G).  Fourth position: finger 1
 * seven semitones up, Davidoff, Violoncell-Schule (1888), "The Concept of
 * Positions".  The others are worked from these two.
 */
static void test_cello_hand(void **state)
{
	static const struct {
		const char *position;
		const char *finger[FINGERS_MAX];
	} rows[] = {
		{ "half", { "Eb3", "E3", "F3", "F#3" } },
		{ "first", { "E3", "F3", "F#3", "G3" } },
		{ "third", { "G3", "G#3", "A3", "Bb3" } },
		{ "fourth", { "A3", "Bb3", "B3", "C4" } },
	};
	struct setup s = instrument_setup(INSTRUMENT_CELLO);
	int d = s.open[setup_string(&s, "D")];

	(void)state;
	for (size_t i = 0; i < sizeof(rows) / sizeof(*rows); i++) {
		int at = instrument_position(
		    INSTRUMENT_CELLO, rows[i].position);

		for (int finger = 1; finger <= FINGERS_MAX; finger++) {
			int note = -1;

			assert_true(
			    pitch_parse(rows[i].finger[finger - 1], &note));
			assert_int_equal(d + at +
				instrument_finger(INSTRUMENT_CELLO, finger),
			    note);
		}
	}
	assert_int_equal(instrument_position(INSTRUMENT_CELLO, "fourth"), 7);
}

/*
 * Second position is F or F sharp on the D string by different schools
 * (Davidoff counts both), so the name alone gives no number.
 */
static void test_no_second_position(void **state)
{
	static const char *const unknown[] = { "second", "", "First", "first ",
		"fifth", "thumb" };

	(void)state;
	for (int i = 0; i < INSTRUMENT_COUNT; i++)
		for (size_t k = 0; k < sizeof(unknown) / sizeof(*unknown); k++)
			assert_int_equal(
			    instrument_position((enum instrument)i, unknown[k]),
			    0);
}

/* Common practice: violin and viola 0 2 3 5, double bass 1, 2 and 4. */
static void test_other_hands(void **state)
{
	static const int upper[] = { 0, 2, 3, 5 };

	(void)state;
	for (int finger = 1; finger <= FINGERS_MAX; finger++) {
		assert_int_equal(instrument_finger(INSTRUMENT_VIOLIN, finger),
		    upper[finger - 1]);
		assert_int_equal(instrument_finger(INSTRUMENT_VIOLA, finger),
		    upper[finger - 1]);
	}
	assert_int_equal(instrument_finger(INSTRUMENT_BASS, 1), 0);
	assert_int_equal(instrument_finger(INSTRUMENT_BASS, 2), 1);
	assert_int_equal(instrument_finger(INSTRUMENT_BASS, 4), 2);
	/* First position, finger 4 on a violin's D string is A. */
	assert_int_equal(62 + instrument_position(INSTRUMENT_VIOLIN, "first") +
		instrument_finger(INSTRUMENT_VIOLIN, 4),
	    69);
}

/*
 * A. Carruthers: full-size cellos sound on 685 to 697 mm.  Svencino workshop:
 * violins on about 325 to 330.  A maker's sheet for the viola: 365, 375, 375
 * to 384.  Smaller cellos and the double bass: makers' charts, from memory.
 */
static void test_lengths(void **state)
{
	static const struct {
		enum instrument instrument;
		const char *size;
		double low, high;
	} rows[] = {
		{ INSTRUMENT_CELLO, "4/4", 685, 697 },
		{ INSTRUMENT_VIOLIN, "4/4", 325, 330 },
		{ INSTRUMENT_VIOLA, "4/4", 365, 384 },
		{ INSTRUMENT_CELLO, "7/8", 650, 660 },
		{ INSTRUMENT_CELLO, "3/4", 620, 650 },
		{ INSTRUMENT_CELLO, "1/2", 560, 600 },
		{ INSTRUMENT_CELLO, "1/4", 490, 530 },
		{ INSTRUMENT_BASS, "3/4", 1040, 1060 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(rows) / sizeof(*rows); i++) {
		double mm = instrument_length(rows[i].instrument, rows[i].size);

		assert_true(mm >= rows[i].low && mm <= rows[i].high);
	}
	for (int i = 0; i < INSTRUMENT_COUNT; i++) {
		enum instrument kind = (enum instrument)i;
		const char *usual = kind == INSTRUMENT_BASS ? "3/4" : "4/4";

		assert_true(instrument_length(kind, usual) ==
		    instrument_setup(kind).length_mm);
		assert_true(instrument_length(kind, "2/3") == 0);
		assert_true(instrument_length(kind, "") == 0);
	}
}

/* The smaller the fraction, the shorter the string. */
static void test_sizes_shrink(void **state)
{
	static const char *const sizes[] = { "4/4", "7/8", "3/4", "1/2", "1/4",
		"1/8", "1/16" };

	(void)state;
	for (int i = 0; i < INSTRUMENT_COUNT; i++) {
		double last = 10000;

		for (size_t k = 0; k < sizeof(sizes) / sizeof(*sizes); k++) {
			double mm = instrument_length(
			    (enum instrument)i, sizes[k]);

			assert_true(mm < last);
			if (mm > 0)
				last = mm;
		}
		assert_true(last > 150);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_names),
		cmocka_unit_test(test_open_strings),
		cmocka_unit_test(test_finding_strings),
		cmocka_unit_test(test_cello_hand),
		cmocka_unit_test(test_no_second_position),
		cmocka_unit_test(test_other_hands),
		cmocka_unit_test(test_lengths),
		cmocka_unit_test(test_sizes_shrink),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
