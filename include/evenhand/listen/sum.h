/*
 * sum.h - what all stretches of a recording come to
 *
 * Rates, widths and ways are means over the stretches that had one, each
 * counted by its cycles, arrivals or bows; the least and the most of them say
 * how far they lie apart.  The distance of the microphone is that
 * of the middle of all stretches that tell of the room, so one of them alone
 * does not make it far.
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

/* Stretches by how loud the room is: piece k from k / SUM_ROOM_PARTS on. */
enum { SUM_ROOM_PARTS = 100, SUM_ROOMS = 4 * SUM_ROOM_PARTS };

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
	int rooms; /* stretches that tell of it */
	int of_room[SUM_ROOMS];
};

/* One stretch more; begin with all zero. */
void sum_add(struct sum *s, const struct stretch *x);

/* The mean; 0 when there is none. */
double sum_mean(const struct sum_of *x);

/* The median of the room, within half a hundredth; 0: nothing tells of it. */
double sum_room(const struct sum *s);

/* From it, as turn_distance_of has it. */
enum turn_distance sum_distance(const struct sum *s);

#endif
