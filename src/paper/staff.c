/*
 * staff.c - how notes are written
 *
 * Everything is counted in quarter tones above C0, 24 to an octave, and looked
 * up in one table of an octave.
 */
#include "evenhand/paper/staff.h"

#include <assert.h>
#include <math.h>

#include "evenhand/base/tongue.h"

enum {
	OCTAVE_QUARTERS = 24,
	LETTERS = 7,
	C0 = 12, /* MIDI */
	LEDGERS_MOST = 3,
};

static const struct {
	int letter;
	enum sign_before before;
	const char *name;
} octave[OCTAVE_QUARTERS] = {
	{ 0, BEFORE_NOTHING, "C" },
	{ 0, BEFORE_HALF_SHARP, "C+1/4" },
	{ 0, BEFORE_SHARP, "C#" },
	{ 1, BEFORE_HALF_FLAT, "D-1/4" },
	{ 1, BEFORE_NOTHING, "D" },
	{ 1, BEFORE_HALF_SHARP, "D+1/4" },
	{ 2, BEFORE_FLAT, "Eb" },
	{ 2, BEFORE_HALF_FLAT, "E-1/4" },
	{ 2, BEFORE_NOTHING, "E" },
	{ 2, BEFORE_HALF_SHARP, "E+1/4" },
	{ 3, BEFORE_NOTHING, "F" },
	{ 3, BEFORE_HALF_SHARP, "F+1/4" },
	{ 3, BEFORE_SHARP, "F#" },
	{ 4, BEFORE_HALF_FLAT, "G-1/4" },
	{ 4, BEFORE_NOTHING, "G" },
	{ 4, BEFORE_HALF_SHARP, "G+1/4" },
	{ 4, BEFORE_SHARP, "G#" },
	{ 5, BEFORE_HALF_FLAT, "A-1/4" },
	{ 5, BEFORE_NOTHING, "A" },
	{ 5, BEFORE_HALF_SHARP, "A+1/4" },
	{ 6, BEFORE_FLAT, "Bb" },
	{ 6, BEFORE_HALF_FLAT, "B-1/4" },
	{ 6, BEFORE_NOTHING, "B" },
	{ 6, BEFORE_HALF_SHARP, "B+1/4" },
};

/* The letter on the bottom line, in steps above C0: E4, F3, D3, G2. */
static const int bottom[CLEFS] = {
	[CLEF_TREBLE] = 4 * LETTERS + 2,
	[CLEF_ALTO] = 3 * LETTERS + 3,
	[CLEF_TENOR] = 3 * LETTERS + 1,
	[CLEF_BASS] = 2 * LETTERS + 4,
};

/* What each reads, from its own clef upwards [common practice]. */
static const struct {
	int count;
	enum clef clef[3];
} reads[INSTRUMENT_COUNT] = {
	[INSTRUMENT_VIOLIN] = { 1, { CLEF_TREBLE } },
	[INSTRUMENT_VIOLA] = { 2, { CLEF_ALTO, CLEF_TREBLE } },
	[INSTRUMENT_CELLO] = { 3, { CLEF_BASS, CLEF_TENOR, CLEF_TREBLE } },
	[INSTRUMENT_BASS] = { 3, { CLEF_BASS, CLEF_TENOR, CLEF_TREBLE } },
};

static int quarters(double note)
{
	int q = (int)lround(2 * (note - C0));

	assert(q >= 0);
	return q;
}

struct written staff_written(double note)
{
	int q = quarters(note);
	struct written w = {
		.step = q / OCTAVE_QUARTERS * LETTERS +
		    octave[q % OCTAVE_QUARTERS].letter,
		.before = octave[q % OCTAVE_QUARTERS].before,
	};

	return w;
}

void staff_name(double note, char *name)
{
	struct text t = text_in(name, STAFF_NAME_MAX);

	text_add(&t, octave[quarters(note) % OCTAVE_QUARTERS].name);
	tongue_note(name);
}

int staff_place(enum clef c, int step)
{
	return step - bottom[c];
}

int staff_ledgers(int place)
{
	if (place > STAFF_TOP)
		return (place - STAFF_TOP) / 2;
	return place < 0 ? place / 2 : 0;
}

int staff_octave(enum instrument i)
{
	return i == INSTRUMENT_BASS ? 12 : 0;
}

enum clef staff_clef(enum instrument i, double highest)
{
	int step = staff_written(highest + staff_octave(i)).step;

	for (int n = 0; n < reads[i].count; n++)
		if (staff_ledgers(staff_place(reads[i].clef[n], step)) <=
		    LEDGERS_MOST)
			return reads[i].clef[n];
	return reads[i].clef[reads[i].count - 1];
}
