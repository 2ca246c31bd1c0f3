/*
 * instrument.h - the four bowed instruments, their strings and positions
 *
 * Strings count from the highest, as players do: string 0 of a cello is A3.
 * A position is named by where finger 1 stands, in semitones above the open
 * string.  On violin, viola and cello first, third and fourth position mean the
 * same in every school (2, 5, 7); second does not (F or F sharp on a cello's D
 * string), so it has no number here and a routine must give the travel
 * instead.  On the double bass the same numbers are the commonest way of
 * counting, and no more [common practice].
 *
 * Finger spacing: cello closed hand, a semitone apart (van Spaandonk's
 * beginner page; Davidoff's Violoncell-Schule); double bass 1, 2, 4 a semitone
 * apart, 3 beside 4; violin and viola the common major pattern 0, 2, 3, 5
 * [common practice].
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_MUSIC_INSTRUMENT_H
#define EVENHAND_MUSIC_INSTRUMENT_H

#include <stdbool.h>

#include "evenhand/base/message.h"

enum instrument {
	INSTRUMENT_VIOLIN,
	INSTRUMENT_VIOLA,
	INSTRUMENT_CELLO,
	INSTRUMENT_BASS,
	INSTRUMENT_COUNT
};

enum { STRINGS_MAX = 6, STRINGS_USUAL = 4, FINGERS_MAX = 4 };

/* What a player holds: strings from the highest, their length in mm. */
struct setup {
	enum instrument instrument;
	int strings;	       /* 1..STRINGS_MAX */
	int open[STRINGS_MAX]; /* MIDI notes, highest string first */
	double length_mm;      /* sounding length of the open string */
	double reference_hz;   /* A4 */
};

/* Its name as files and records have it, and as it is said to people. */
const char *instrument_name(enum instrument i);
enum message_id instrument_word(enum instrument i);

/*
 * The usual tuning and string length of a grown-up's instrument: violin 328
 * mm, viola 375, cello 690, double bass 1050, which is a 3/4 (makers' sheets;
 * smaller sizes vary too much to trust a table, so a player's own measured
 * length is asked for).
 */
struct setup instrument_setup(enum instrument i);

/*
 * Usual string length in mm of a fractional size ("4/4", "3/4", "1/2", ...);
 * 0 when the size is not known for this instrument.  From makers' charts, from
 * memory: a measured length is better and wins.
 */
double instrument_length(enum instrument i, const char *size);

/*
 * Semitones of finger 1 above the open string in a named position: "half",
 * "first", "third", "fourth".  0 when the trade does not agree on the name
 * ("second") or it is unknown.
 */
int instrument_position(enum instrument i, const char *name);

/* Semitones of a finger (1..4) above finger 1 in the usual hand. */
int instrument_finger(enum instrument i, int finger);

/*
 * A string by its letter ("D") or its note ("D3"): its index, or -1.  The
 * highest when two have the same letter.
 */
int setup_string(const struct setup *s, const char *letter);

#endif
