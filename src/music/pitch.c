/*
 * pitch.c - notes, cents and frequencies
 */
#include "evenhand/music/pitch.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "evenhand/base/text.h"

enum {
	A4 = 69,
	OCTAVE = 12,
	NOTE_MAX = 127,
	SIGNS_MAX = 2,
};

#define SHARP_SIGN "\u266f"
#define FLAT_SIGN "\u266d"

double pitch_hz(double note, double reference_hz)
{
	return reference_hz * exp2((note - A4) / OCTAVE);
}

double pitch_note(double hz, double reference_hz)
{
	assert(hz > 0 && reference_hz > 0);
	return A4 + OCTAVE * log2(hz / reference_hz);
}

double pitch_cents(double from_hz, double to_hz)
{
	assert(from_hz > 0 && to_hz > 0);
	return 1200 * log2(to_hz / from_hz);
}

double pitch_above(double hz, double cents)
{
	return hz * exp2(cents / 1200);
}

int pitch_nearest(double hz, double reference_hz, double *cents)
{
	double note = pitch_note(hz, reference_hz);
	double nearest = floor(note + 0.5);

	*cents = (note - nearest) * 100;
	return (int)nearest;
}

/* Semitones of a letter above the C of its octave, or -1. */
static int letter_semitones(char letter)
{
	static const char letters[] = "CcDdEeFfGgAaBb";
	static const int semitones[] = { 0, 2, 4, 5, 7, 9, 11 };
	const char *at = letter != '\0' ? strchr(letters, letter) : NULL;

	return at != NULL ? semitones[(at - letters) / 2] : -1;
}

/* Steps over one sign written in either of its two ways. */
static bool skip(const char **s, const char *plain, const char *printed)
{
	const char *sign = strncmp(*s, plain, strlen(plain)) == 0 ? plain
								  : printed;

	if (strncmp(*s, sign, strlen(sign)) != 0)
		return false;
	*s += strlen(sign);
	return true;
}

/* Steps over sharps or flats, not both; returns the semitones they add. */
static int signs(const char **s)
{
	int up = 0, down = 0;

	while (up < SIGNS_MAX && skip(s, "#", SHARP_SIGN))
		up++;
	while (up == 0 && down < SIGNS_MAX && skip(s, "b", FLAT_SIGN))
		down++;
	return up - down;
}

bool pitch_parse(const char *name, int *note)
{
	int found = letter_semitones(*name);
	bool below;

	if (found < 0)
		return false;
	name++;
	found += signs(&name);
	below = *name == '-';
	name += below;
	if (*name < '0' || *name > '9' || name[1] != '\0')
		return false;
	if (below && *name != '1')
		return false;
	/* Octave -1 begins at note 0. */
	found += OCTAVE * ((below ? -1 : *name - '0') + 1);
	if (found < 0 || found > NOTE_MAX)
		return false;
	*note = found;
	return true;
}

void pitch_name(int note, bool flats, char *buffer)
{
	static const char *const sharp[OCTAVE] = { "C", "C#", "D", "D#", "E",
		"F", "F#", "G", "G#", "A", "A#", "B" };
	static const char *const flat[OCTAVE] = { "C", "Db", "D", "Eb", "E",
		"F", "Gb", "G", "Ab", "A", "Bb", "B" };
	struct text t = text_in(buffer, PITCH_NAME_MAX);

	assert(note >= 0 && note <= NOTE_MAX);
	text_add(&t, (flats ? flat : sharp)[note % OCTAVE]);
	text_format(&t, "%d", note / OCTAVE - 1);
}
