/*
 * judge.h - whether a microphone can be trusted, and if not, why
 *
 * It is told all samples of the first turns, and whether the player was asked
 * to play meanwhile:
 *
 *	dead	  no sample differs from the one before, for two seconds
 *	quiet	  the loud part of what was played is under JUDGE_QUIET_DB
 *	clips	  many pieces of 10 ms stand at the end of the scale
 *	filtered  made for speech: silence cut out (gated), nothing above some
 *		  4 kHz (narrow), or a held tone that is taken for noise and
 *		  turned down in every bow (pumped)
 *	noisy	  what sounds between turns is hardly softer than the turns: hum,
 *		  a fan, other players
 *	far	  the room is louder than trust allows (turn.h)
 *
 * The worst of them is told.  Nothing is said before there is enough to say it
 * from, and FINE only after a turn was heard.
 *
 * Pure values.  One thread at a time.
 */
#ifndef EVENHAND_LISTEN_JUDGE_H
#define EVENHAND_LISTEN_JUDGE_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/listen/turn.h"

#define JUDGE_QUIET_DB (-55.0) /* of full scale, a tenth is louder */
#define JUDGE_CLIPS 0.02       /* of the pieces while playing */
#define JUDGE_NOISY_DB 15.0    /* between the two, at least */

enum judgement {
	JUDGE_UNKNOWN,
	JUDGE_FINE,
	JUDGE_DEAD,
	JUDGE_QUIET,	/* evidence: dB of full scale */
	JUDGE_CLIPS_IT, /* evidence: share of the pieces, 0..1 */
	JUDGE_GATED,	/* evidence: times a second it was cut off */
	JUDGE_NARROW,	/* evidence: dB of the high part under the middle */
	JUDGE_PUMPED,	/* evidence: dB by which a bow fades */
	JUDGE_NOISY,	/* evidence: dB of noise under the playing */
	JUDGE_FAR,	/* evidence: mean of turn_heard.room */
};

struct judged {
	enum judgement what;
	double evidence;
};

enum { JUDGE_DB = 128, JUDGE_FILTERS = 4 };

/* A band: some equal filters, each with two values of its past. */
struct judge_band {
	double b, a1, a2; /* b (1 - z^-2) / (1 + a1 z^-1 + a2 z^-2) */
	double past[JUDGE_FILTERS][2];
	double energy; /* while playing */
};

struct judge {
	int rate, piece; /* samples in 10 ms */
	size_t in_piece;
	double sum; /* squares of it */
	bool clipped;
	float last;
	size_t samples, others;	     /* those that differ from the one before */
	double before_db[2];	     /* of the last pieces, the newest first */
	size_t cuts;		     /* from sound to nothing at once */
	size_t pieces[2], clips;     /* not playing, playing */
	unsigned at_db[2][JUDGE_DB]; /* pieces by level, 0 is full scale */
	struct judge_band middle, high;
	int bows, fading; /* of turns that were heard */
	double fade_db;
	int heard, rooms; /* turns; those that told of the room */
	double room;	  /* sum of them */
};

/* rate is HEARD_RATE_MIN..MAX. */
void judge_begin(struct judge *j, int rate);

/* Samples as they come from the card, and whether it was time to play. */
void judge_take(struct judge *j, const float *x, size_t n, bool playing);

/* A turn that was measured of them. */
void judge_turn(struct judge *j, const struct turn_heard *t);

/* How far it is, from all turns so far. */
enum turn_distance judge_distance(const struct judge *j);

/* What is known by now. */
struct judged judge_tell(const struct judge *j);

#endif
