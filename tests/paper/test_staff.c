/*
 * test_staff.c - notes where they belong on five lines, and the string to
 * scale, against published tables
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <string.h>

#include "evenhand/music/pitch.h"
#include "evenhand/paper/board.h"
#include "evenhand/paper/staff.h"

/*
 * Lines from the bottom up, and what is on them: the clefs of MusicXML 4.0
 * (element "clef": G on line 2, F on line 4, C on line 3 or 4), from memory;
 * the letters above and below follow from the order of letters alone.
 */
static const struct {
	enum clef clef;
	const char *named; /* the note that gives it its name */
	int line;	   /* 1..5 from the bottom */
	const char *lines[5];
	const char *spaces[4];
} clefs[] = {
	{ CLEF_TREBLE, "G4", 2, { "E4", "G4", "B4", "D5", "F5" },
	    { "F4", "A4", "C5", "E5" } },
	{ CLEF_ALTO, "C4", 3, { "F3", "A3", "C4", "E4", "G4" },
	    { "G3", "B3", "D4", "F4" } },
	{ CLEF_TENOR, "C4", 4, { "D3", "F3", "A3", "C4", "E4" },
	    { "E3", "G3", "B3", "D4" } },
	{ CLEF_BASS, "F3", 4, { "G2", "B2", "D3", "F3", "A3" },
	    { "A2", "C3", "E3", "G3" } },
};

static int midi(const char *name)
{
	int note = -1;

	assert_true(pitch_parse(name, &note));
	return note;
}

static int place(enum clef c, const char *name)
{
	return staff_place(c, staff_written(midi(name)).step);
}

static void test_lines_and_spaces(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof(clefs) / sizeof(clefs[0]); i++) {
		assert_int_equal(place(clefs[i].clef, clefs[i].named),
		    2 * (clefs[i].line - 1));
		for (int n = 0; n < 5; n++)
			assert_int_equal(
			    place(clefs[i].clef, clefs[i].lines[n]), 2 * n);
		for (int n = 0; n < 4; n++)
			assert_int_equal(
			    place(clefs[i].clef, clefs[i].spaces[n]),
			    2 * n + 1);
	}
}

/* Middle C, and other notes every primer shows with its ledger lines. */
static void test_ledger_lines(void **state)
{
	static const struct {
		enum clef clef;
		const char *note;
		int lines; /* above the staff, negative below */
	} of[] = { { CLEF_TREBLE, "C4", -1 }, { CLEF_TREBLE, "D4", 0 },
		{ CLEF_TREBLE, "G3", -2 }, { CLEF_TREBLE, "A5", 1 },
		{ CLEF_TREBLE, "G5", 0 }, { CLEF_BASS, "C4", 1 },
		{ CLEF_BASS, "B3", 0 }, { CLEF_BASS, "C2", -2 },
		{ CLEF_BASS, "E2", -1 }, { CLEF_BASS, "F2", 0 },
		{ CLEF_BASS, "E4", 2 }, { CLEF_ALTO, "C3", -1 },
		{ CLEF_ALTO, "E3", 0 } };

	(void)state;
	for (size_t i = 0; i < sizeof(of) / sizeof(of[0]); i++)
		assert_int_equal(
		    staff_ledgers(place(of[i].clef, of[i].note)), of[i].lines);
}

static void check_written(
    double note, const char *name, char letter, enum sign_before before)
{
	static const char letters[] = "CDEFGAB";
	char is[STAFF_NAME_MAX];
	struct written w = staff_written(note);

	staff_name(note, is);
	assert_string_equal(is, name);
	assert_int_equal(letters[w.step % 7], letter);
	assert_int_equal(w.before, before);
}

/*
 * The closed hand on a cello's D string: names as in the beginner's page of
 * van Spaandonk and the chart of A. Williams (E F F# G in first position, Eb
 * at its lower end), and upwards by Davidoff's half steps to Bb.
 */
static void test_names(void **state)
{
	(void)state;
	check_written(51, "Eb", 'E', BEFORE_FLAT);
	check_written(52, "E", 'E', BEFORE_NOTHING);
	check_written(53, "F", 'F', BEFORE_NOTHING);
	check_written(54, "F#", 'F', BEFORE_SHARP);
	check_written(55, "G", 'G', BEFORE_NOTHING);
	check_written(56, "G#", 'G', BEFORE_SHARP);
	check_written(57, "A", 'A', BEFORE_NOTHING);
	check_written(58, "Bb", 'B', BEFORE_FLAT);
	check_written(59, "B", 'B', BEFORE_NOTHING);
	check_written(60, "C", 'C', BEFORE_NOTHING);
	check_written(61, "C#", 'C', BEFORE_SHARP);
	/* Half of a semitone. */
	check_written(52.5, "E+1/4", 'E', BEFORE_HALF_SHARP);
	check_written(54.5, "G-1/4", 'G', BEFORE_HALF_FLAT);
	check_written(58.5, "B-1/4", 'B', BEFORE_HALF_FLAT);
	check_written(59.5, "B+1/4", 'B', BEFORE_HALF_SHARP);
}

/* What is written is what sounds: letter and sign make the note again. */
static void test_every_note(void **state)
{
	static const int white[] = { 0, 2, 4, 5, 7, 9, 11 };
	static const double sign[BEFORE_COUNT] = { [BEFORE_SHARP] = 1,
		[BEFORE_FLAT] = -1,
		[BEFORE_HALF_SHARP] = 0.5,
		[BEFORE_HALF_FLAT] = -0.5 };

	(void)state;
	for (int q = 2 * 28; q <= 2 * 110; q++) {
		struct written w = staff_written(q / 2.0);

		assert_true(fabs(12 + w.step / 7 * 12 + white[w.step % 7] +
				sign[w.before] - q / 2.0) < 1e-9);
	}
}

/* Each in its own clef, and in another where it would climb too high. */
static void test_clefs(void **state)
{
	(void)state;
	assert_int_equal(
	    staff_clef(INSTRUMENT_VIOLIN, midi("D6")), CLEF_TREBLE);
	assert_int_equal(staff_clef(INSTRUMENT_VIOLA, midi("E4")), CLEF_ALTO);
	assert_int_equal(staff_clef(INSTRUMENT_VIOLA, midi("A5")), CLEF_TREBLE);
	/* D string, fourth position, finger 4: one ledger line in bass clef. */
	assert_int_equal(staff_clef(INSTRUMENT_CELLO, midi("C4")), CLEF_BASS);
	assert_int_equal(staff_clef(INSTRUMENT_CELLO, midi("G4")), CLEF_BASS);
	assert_int_equal(staff_clef(INSTRUMENT_CELLO, midi("B4")), CLEF_TENOR);
	assert_int_equal(staff_clef(INSTRUMENT_CELLO, midi("A5")), CLEF_TREBLE);
	/* Sounds an octave below what is written. */
	assert_int_equal(staff_octave(INSTRUMENT_BASS), 12);
	assert_int_equal(staff_octave(INSTRUMENT_CELLO), 0);
	assert_int_equal(staff_clef(INSTRUMENT_BASS, midi("C3")), CLEF_BASS);
}

/* A space of the staff and two notes: the staff holds them with its signs. */
static void test_height(void **state)
{
	struct staff low = { INSTRUMENT_VIOLIN, 1, { { "1", { 55, 57 } } } };
	struct staff middle = { INSTRUMENT_VIOLIN, 1, { { "1", { 71, 74 } } } };

	(void)state;
	/* G3 lies on the fifth place below: it needs more room. */
	assert_true(staff_high(&low, 1) > staff_high(&middle, 1));
	assert_true(staff_high(&middle, 2) > 2 * (4 + 1.4 + 1.6));
}

static struct routine cello(void)
{
	struct routine r = { .setup = instrument_setup(INSTRUMENT_CELLO),
		.take = TAKE_FINGERS,
		.units = 4,
		.stages = 1,
		.stage = { { .string = 1, .from = 2, .travel_cents = 500 } } };

	for (int u = 0; u < r.units; u++)
		r.unit[u].from = r.unit[u].to = u + 1;
	return r;
}

/*
 * Shares of a string by semitones from the nut: the table "fret positioning" of
 * the noah.org wiki (2015); its row 4 is misprinted and is 0.206299 by the rule.
 */
static void test_places_in_mm(void **state)
{
	static const double share[] = { 0, 0.056126, 0.109101, 0.159104,
		0.206299, 0.250847, 0.292893, 0.332580, 0.370039, 0.405396,
		0.438769 };
	static const double lengths[] = { 690, 620, 328, 1050 };
	struct routine r = cello();

	(void)state;
	for (int i = 0; i < 4; i++) {
		r.setup.length_mm = lengths[i];
		for (int u = 0; u < 4; u++) {
			struct board_places p = board_places(&r, 0, u);

			assert_true(
			    fabs(p.near - share[2 + u] * lengths[i]) < 0.002);
			assert_true(
			    fabs(p.far - share[7 + u] * lengths[i]) < 0.002);
			assert_true(fabs(p.far - p.near - p.apart) < 1e-9);
		}
	}
}

/* The farthest place fits, and the next larger scale would not do. */
static void test_scale(void **state)
{
	struct routine r = cello();
	struct board b = { &r, 180, 5, 0 };

	(void)state;
	/* 303 mm of string in 180 less the room for figures. */
	assert_true(board_scale(&r, 0, 180, 5) == 2.5);
	r.setup.length_mm = 328;
	assert_true(board_scale(&r, 0, 180, 5) == 1.25);
	assert_true(board_scale(&r, 0, 80, 4) == 4);
	assert_true(board_high(&b) == 25);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_lines_and_spaces),
		cmocka_unit_test(test_ledger_lines),
		cmocka_unit_test(test_names),
		cmocka_unit_test(test_every_note),
		cmocka_unit_test(test_clefs),
		cmocka_unit_test(test_height),
		cmocka_unit_test(test_places_in_mm),
		cmocka_unit_test(test_scale),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
