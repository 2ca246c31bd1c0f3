/*
 * heard.h - what is listened for, and what was heard at an instant
 *
 * Who listens knows what was asked: the lowest and the highest note.  So pitch
 * is looked for from 300 cents under the one to 300 above the other, and what
 * lies outside is told as another sound and never forced inside.
 *
 * Instants are 5 ms apart, number k lies k x 5 ms after the first sample; the
 * pitch is that of this very time, not of an earlier one.
 *
 * Pure values.  Any thread.
 */
#ifndef EVENHAND_LISTEN_HEARD_H
#define EVENHAND_LISTEN_HEARD_H

#include <stdbool.h>

#define HEARD_STEP_S 0.005     /* from instant to instant */
#define HEARD_BEYOND_CENTS 300 /* looked at on both sides of what was asked */

/* Any instrument's notes, and any rate a card may have. */
#define HEARD_LOW_HZ 30.0
#define HEARD_HIGH_HZ 4000.0
enum { HEARD_RATE_MIN = 16000, HEARD_RATE_MAX = 192000 };

/* The lowest and the highest note that may come, HEARD_LOW_HZ and up. */
struct asked {
	double low_hz, high_hz; /* low_hz <= high_hz */
};

enum heard {
	HEARD_NOTHING, /* silence */
	HEARD_NOISE,   /* a sound without a clear pitch */
	HEARD_NOTE,    /* a pitch that fits what was asked */
	HEARD_OTHER    /* a clear pitch elsewhere: another string, an octave,
			  or what two notes at once have in common */
};

struct instant {
	float hz;	/* HEARD_NOTE and HEARD_OTHER, else 0 */
	float sure;	/* 0..1: how alike one period is to the next */
	float level_db; /* of full scale, over some periods */
	float apart;	/* refined notes, every fourth at most: share of the
			  partials that stray as in a room; else 0 */
	enum heard what;
};

/* False when it is out of the bounds above. */
bool asked_valid(const struct asked *a);

#endif
