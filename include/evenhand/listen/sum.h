/*
 * sum.h - what all stretches of a recording come to
 *
 * Rates, widths and ways are means over the stretches that had one, each
 * counted by its cycles, arrivals or bows; the least and the most of them say
 * how far they lie apart.
 *
 * Pure value.
 */
#ifndef EVENHAND_LISTEN_SUM_H
#define EVENHAND_LISTEN_SUM_H

#include "evenhand/listen/stretch.h"

/* A figure of several stretches. */
struct sum_of {
	double weight; /* 0: none had it */
	double total;  /* weighted */
	double least, most;
};

struct sum {
	int stretches; /* with sound */
	int of_kind[STRETCH_KINDS];
	double seconds; /* all of it */
	double sound_s; /* of sound */
	double note_s;	/* of this that was a note */
	int arrivals, cycles, bows, stops;
	struct sum_of rate_hz, width_cents, regular; /* vibrato */
	struct sum_of middle_semitones; /* vibrato, as MIDI counts, A4 440 */
	struct sum_of way_cents, way_spread, even, pace_hz; /* glides */
	struct sum_of unsteady_db, drift_db;		    /* bows */
};

void sum_add(struct sum *s, const struct stretch *x);

/* The mean; 0 when there is none. */
double sum_mean(const struct sum_of *x);

#endif
