/*
 * staff.h - notes on five lines
 *
 *	            place
 *	 ----o----  10      C4, a ledger line above a bass clef
 *	            9  B3
 *	 ---------  8  A3   the top line
 *	     ...
 *	 ---------  0  G2   the bottom line
 *
 * A note is written as a letter and what stands before it.  Which of two names
 * a black key gets is what players of strings mostly call it: C#, Eb, F#, G#,
 * Bb.  Half of a semitone has signs of its own, a sharp with one stroke and a
 * flat turned round.
 *
 * Clefs: G4 on the second line (treble), F3 on the fourth (bass), C4 on the
 * third (alto) or fourth (tenor).  A double bass is written an octave higher
 * than it sounds.
 *
 * Pure; any thread.
 */
#ifndef EVENHAND_PAPER_STAFF_H
#define EVENHAND_PAPER_STAFF_H

#include "evenhand/music/instrument.h"
#include "evenhand/paper/paper.h"

enum clef { CLEF_TREBLE, CLEF_ALTO, CLEF_TENOR, CLEF_BASS, CLEFS };

enum sign_before {
	BEFORE_NOTHING,
	BEFORE_SHARP,
	BEFORE_FLAT,
	BEFORE_NATURAL,
	BEFORE_HALF_SHARP, /* a quarter tone up */
	BEFORE_HALF_FLAT,
	BEFORE_COUNT
};

struct written {
	int step; /* letters above C0: C4 is 28, B3 is 27 */
	enum sign_before before;
};

enum {
	STAFF_TOP = 8, /* place of the top line; the bottom one is 0 */
	STAFF_NOTES = 2,
	STAFF_BARS_MAX = 8,
	STAFF_NAME_MAX = 12,
};

/* A few notes under one number, between two bar lines. */
struct staff_bar {
	char above[STAFF_NAME_MAX];
	double
	    note[STAFF_NOTES]; /* MIDI, as they sound; nearest quarter tone */
};

struct staff {
	enum instrument instrument;
	int bars;
	struct staff_bar bar[STAFF_BARS_MAX];
};

/* How a MIDI note is written, to the nearest quarter tone. */
struct written staff_written(double note);

/* Its name without an octave: "F#", "Bb", "E+1/4"; STAFF_NAME_MAX bytes. */
void staff_name(double note, char *name);

/* The place of a letter under a clef: 0 the bottom line, 1 the space above. */
int staff_place(enum clef c, int step);

/* Ledger lines up to a place: above the staff positive, below it negative. */
int staff_ledgers(int place);

/* Semitones that are written above what sounds: 12 for a double bass. */
int staff_octave(enum instrument i);

/*
 * The clef in which an instrument reads notes up to this one: its own while
 * three ledger lines are enough, then the next higher that it uses.
 */
enum clef staff_clef(enum instrument i, double highest);

/* mm from top to bottom that a staff takes, one space of it being unit mm. */
double staff_high(const struct staff *s, double unit);

/* Draws it: its left upper corner, and how wide it is to be. */
void staff_draw(struct paper *p, const struct staff *s, double x, double y,
    double wide, double unit);

#endif
