/*
 * stretch.h - what was heard between two pauses of a recording
 *
 * Who measures a recording does not know when bows began or pulses sounded, so
 * nothing is early or late here.  What was played decides what is told:
 *
 *	a swing of 2.6 a second or more		vibrato: how fast, wide, regular
 *	slower or wider, between two notes	glides: when, how far, how even
 *	neither					a note that was held, or several
 *
 * 2.6 lies between the fastest pulses of a routine, 2 a second, and the slowest
 * vibrato that is one, 3; nobody's vibrato is 90 cents wide to each side, and
 * glides in a loud room look like one (our own choices).
 *
 * Pure; lists from an arena.  Any thread.
 */
#ifndef EVENHAND_LISTEN_STRETCH_H
#define EVENHAND_LISTEN_STRETCH_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/turn.h"

#define STRETCH_VIBRATO_HZ 2.6
#define STRETCH_VIBRATO_CENTS 90.0
#define STRETCH_CLEAR 0.3 /* of the sound, to be notes */

/* What is known before. */
struct stretch_asked {
	bool known;	     /* asked holds; else all is looked at */
	struct asked asked;  /* where notes may lie */
	double travel_cents; /* 0: not known */
	bool only_bow;	     /* where the hand stands is not listened to */
};

enum stretch_kind {
	STRETCH_QUIET,	   /* no sound */
	STRETCH_UNCLEAR,   /* less than CLEAR, or notes too short for a bow */
	STRETCH_ELSEWHERE, /* notes, but not those that were asked */
	STRETCH_HELD,	   /* one note */
	STRETCH_NOTES,	   /* several, neither gliding evenly nor swinging */
	STRETCH_GLIDES,
	STRETCH_VIBRATO,
	STRETCH_KINDS
};

/* A bow in it; seconds of the recording. */
struct stretch_bow {
	double from_s, to_s;
	struct bow bow; /* only bows that could be measured are listed */
};

enum { STRETCH_BOWS_MAX = 64, STRETCH_ARRIVALS_MAX = 512 };

struct stretch {
	double from_s, to_s; /* of the recording */
	const struct instant *m;
	size_t n;
	enum stretch_kind kind;
	double sound_s; /* of sound in it */
	double share;	/* of this that was a note, 0..1 */
	double room;	/* how loud it is, as turn.h has it; 0: unknown */
	double hz; /* of the note held, the lower one, or a vibrato's middle */
	double upper_hz; /* GLIDES and NOTES: the upper one; else as hz */
	int arrivals;	 /* GLIDES */
	const struct arrival *arrival; /* seconds of the recording */
	double glide_hz;	       /* their cents are above it */
	struct arrivals sum;
	struct sway sway; /* VIBRATO; seconds of the recording */
	int bows;
	struct stretch_bow bow[STRETCH_BOWS_MAX];
};

/*
 * Measures instants 0..n-1, the first of which is from_s into the recording.
 * False when memory is short.
 */
bool stretch_measure(struct arena *a, const struct stretch_asked *asked,
    const struct instant *m, size_t n, double from_s, struct stretch *out);

#endif
