/*
 * ask.h - what a stage of a routine asks of a turn, so that it can be heard
 *
 *	fingers that slide	the lower note of the finger on the stage's
 *				string, and the travel: tops, way, bow
 *	... less than a semitone, or a semitone whose pulses fade
 *				rate and width of the swing as well
 *	finger drops, pairs	where the hand stands is not said: the bow alone
 *	string crossings	the bow alone
 *	in the air		nothing sounds
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_LISTEN_ASK_H
#define EVENHAND_LISTEN_ASK_H

#include <stdbool.h>

#include "evenhand/listen/turn.h"
#include "evenhand/routine/routine.h"

/* When it is played. */
struct ask_time {
	double begin_s; /* of the first bow, from instant 0 */
	int bow_ms;
	int bows;   /* 1..TURN_BOWS_MAX */
	int pulses; /* of each bow, 0..TURN_PULSES_MAX */
};

/*
 * What a turn of a unit asks.  False, and nothing is asked, in the air and when
 * its notes are none that can be heard (heard.h).  travel_cents is 0 and
 * lower_hz the lowest note that may come where only the bow is listened to.
 * The latency and how far the microphone is are the caller's to set.
 */
bool ask_turn(const struct routine *r, int stage, int unit,
    const struct ask_time *when, struct turn_asked *out);

#endif
