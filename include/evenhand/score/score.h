/*
 * score.h - one passage as a frozen list of sounds and of things to see
 *
 * A passage is what is played in one go: an optional lead-in (settling,
 * count-in bows), then turns, each of some bows and a change after it:
 *
 *	|settle 4 s|count-in T|down T|up T|change r|down T|up T|change| ...
 *	 notes: finger      ticks   turn 0  notes      turn 1
 *
 * What is heard, and when:
 *
 *	bow		a knock at its start, low for down, higher for up; it
 *			stands for pulse 0, so no tick sounds with it and the
 *			bow sounds the same at every rung
 *	pulses 1, 2...	a tick each, until they fade
 *	count-in	a count tick at each pulse of such a bow, the first too
 *	settling	the two reference tones if asked for, then the notes
 *			of the first turn's finger
 *	change		the notes of the next turn's finger
 *
 * Finger notes stand 300 ms apart and end 600 ms before the next bow (or
 * count-in); in a short change both shrink, and where notes would be closer
 * than 20 ms there are none.  They never sound over pulses, so a passage that
 * begins with a count-in or a bow at once has none for its first turn.
 *
 * One round at one rung is one passage, because the rung may change between
 * rounds.  The score of a passage is worked out before it sounds and frozen.
 * It is flat data without pointers, so that it can lie in memory that two
 * processes share.  Frames count from the passage's own start.
 *
 * Pure.  Any thread.  The audio callback reads a finished score.
 */
#ifndef EVENHAND_SCORE_SCORE_H
#define EVENHAND_SCORE_SCORE_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/routine/routine.h"

enum {
	SCORE_SOUNDS_MAX = 2048,
	SCORE_CUES_MAX = 2048,
	COUNT_IN_MAX = 4,	 /* bows */
	FINGER_NOTES_MAX = 8,	 /* in one change */
	PASSAGE_MS_MAX = 600000, /* of settling, or of a change */
};

enum voice {
	VOICE_DOWN,   /* low knock: a down bow begins */
	VOICE_UP,     /* higher knock: an up bow begins */
	VOICE_TICK,   /* light tick, 1-2 kHz: a pulse */
	VOICE_COUNT,  /* count-in tick */
	VOICE_FINGER, /* soft low note in the change: the coming finger */
	VOICE_TONE,   /* quiet reference tone, with a pitch */
	VOICE_SWEEP,  /* short rising chirp, by which delays are measured */
	VOICE_KINDS
};

struct sound {
	int64_t frame;	    /* from the passage's start */
	int32_t length;	    /* frames */
	int32_t millihertz; /* VOICE_TONE and VOICE_FINGER, else 0 */
	int16_t voice;	    /* enum voice */
	int16_t level;	    /* thousandths of full scale, 0..1000 */
};

enum cue_kind {
	CUE_SETTLE,   /* value: ms of stillness */
	CUE_COUNT_IN, /* value: bows to count */
	CUE_BOW,      /* value: bow of the turn, 0..; even is a down bow */
	CUE_PULSE,    /* value: pulse of the bow, 0..; 0 follows CUE_BOW */
	CUE_CHANGE,   /* value: ms of the change that begins */
	CUE_END,      /* the passage is over */
};

struct cue {
	int64_t frame;
	int16_t kind; /* enum cue_kind */
	int16_t turn; /* turn of the passage, -1 in the lead-in */
	int32_t value;
};

struct score {
	int32_t rate; /* frames a second */
	int32_t sounds, cues;
	int64_t length;			      /* frames */
	struct sound sound[SCORE_SOUNDS_MAX]; /* by frame, stable */
	struct cue cue[SCORE_CUES_MAX];	      /* by frame, stable */
};

/* The wish: what a passage holds.  A plain value. */
struct passage {
	int settle_ms;	   /* 0: no settling */
	int count_in_bows; /* 0: none */
	int bow_ms;
	int pulses;	     /* of each bow, 0: nothing but its knock */
	int bows_each;	     /* of each turn, 1..BOWS_EACH_MAX */
	int turns;	     /* 1..UNITS_MAX */
	int unit[UNITS_MAX]; /* finger notes before the turn: 1.., 0 none */
	int coming;	     /* finger notes in the last change, 0 none */
	int change_ms;	     /* after each turn but the last */
	int last_change_ms;  /* after the last turn */
	int fade_after;	     /* no ticks after so many bows, 0 never */
	int bows_before;     /* bows of the block played before, for fading */
	int32_t tone[2];     /* millihertz of the two notes, 0 none */
	bool sweeps;	     /* a sweep at each bow, not a knock: no practice */
};

/*
 * ms from a passage's start to a turn's first bow, to the end of its last
 * bow, and to the passage's end.
 */
int passage_lead_ms(const struct passage *p);
int64_t passage_turn_ms(const struct passage *p, int turn);
int64_t passage_bows_end_ms(const struct passage *p, int turn);
int64_t passage_ms(const struct passage *p);

/*
 * Works out the score of a passage at a rate.  False when a value is out of
 * range; every passage in range fits.  Turn and bow starts are frames_of_ms
 * from the passage's start, pulses pulse_at from their bow's start.  Cues of
 * pulses are given for all of them, the count-in (turn -1) and faded ones too.
 */
bool score_make(struct score *s, const struct passage *p, int rate);

#endif
