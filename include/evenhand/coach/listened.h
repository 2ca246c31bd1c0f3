/*
 * listened.h - what was heard, and the one thing to say of it
 *
 *	turn_heard ─▶ listened (a turn) ─▶ listened_sum (a block) ─▶ finding
 *
 * The student marks first.  What was heard may then question a clean mark and
 * never gives one; it is told of a block, and only one thing of it, the first
 * of these that there is:
 *
 *	nothing, or other notes, were heard
 *	tops of a unit were not heard, though it was marked clean
 *	tops of a unit were not heard
 *	a unit stopped short, unless the upper note need not be exact
 *	the bow stopped in its way
 *	tops came late or early, where the latency is known
 *	how many swings a second there were
 *	every top was heard
 *
 * A unit is named from FINDING_TOPS missing tops on, because a single one may
 * have been there.  All of it is our own choice.  Pure values; any thread.
 */
#ifndef EVENHAND_COACH_LISTENED_H
#define EVENHAND_COACH_LISTENED_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/message.h"
#include "evenhand/listen/turn.h"
#include "evenhand/routine/routine.h"

struct session;

enum {
	FINDING_TOPS = 2,	    /* missing, of one unit in a block */
	FINDING_SHORT_PERCENT = 85, /* of the travel asked */
	FINDING_STOPS = 2,	    /* of the bow, in a block */
	FINDING_LATE_MS = 80,
	FINDING_SURE_PERCENT = 50, /* what is less sure is not told */
};

/* A turn under way, to be listened to: its bows are being played. */
struct turn_now {
	int64_t frame;	 /* its first bow begins */
	int stage, unit; /* unit -1: in the air */
	int bow_ms, bows, pulses;
};

/* False: no bow is played now. */
bool session_turn_now(const struct session *s, struct turn_now *out);

/* One turn, as marks and pages need it. */
struct listened {
	bool told; /* a measure came; else nothing is set */
	enum turn_answer answer;
	enum turn_distance distance;
	int bows, bows_full;  /* listened to, where tops were asked */
	int tops, tops_asked; /* in these; tops <= tops_asked */
	float travel_share;   /* 0: not known, or not surely */
	int stops;	      /* of the bow */
	bool timed;
	float late_s;
	float rate_hz; /* of a vibrato; 0: not known, or not surely */
};

void listened_of(struct listened *out, const struct turn_heard *h);

/* One unit in a block. */
struct listened_unit {
	int tops, tops_asked;
	int clean_missing;  /* tops not heard in turns marked clean */
	float travel_share; /* the mean of its turns; 0 not known */
};

/* A block of a session, as far as it was told. */
struct listened_sum {
	int turns; /* listened to */
	int heard; /* of these, to the end of saying something */
	int answers[TURN_LITTLE + 1];
	bool far; /* the microphone, in any of them */
	int tops, tops_asked, stops;
	int timed;
	float late_s;  /* mean */
	float rate_hz; /* mean; 0 not known */
	struct listened_unit unit[UNITS_MAX];
};

void listened_sum(struct listened_sum *out, const struct session *s, int block);

/* Tops of a unit in all of the session that was heard, and those asked. */
void listened_tops(const struct session *s, int unit, int *tops, int *asked);

enum finding_kind {
	FINDING_NONE, /* it was not listened to, or says nothing */
	FINDING_UNHEARD,
	FINDING_ELSEWHERE,
	FINDING_CLEAN_MISSING,
	FINDING_MISSING,
	FINDING_SHORT,
	FINDING_BOW,
	FINDING_LATE,
	FINDING_EARLY,
	FINDING_SWINGS,
	FINDING_ALL,
	FINDING_COUNT /* some tops were not heard, of nobody in particular */
};

struct finding {
	enum finding_kind kind;
	int unit;  /* with CLEAN_MISSING, MISSING, SHORT */
	int count; /* tops missing, or stops */
	float rate_hz;
};

struct finding finding_of(const struct listened_sum *sum, bool upper_near);

/* A block of the session in a sentence or two; M_NONE: nothing to tell. */
struct message session_heard(const struct session *s, int block);

/*
 * The same in at most so many letters: the fullest way there is for them, or
 * M_NONE.
 */
struct message session_heard_in(
    const struct session *s, int block, int letters);

/*
 * What there is to say of the microphone when all was played, once: far away,
 * or deaf.  M_NONE: nothing.
 */
struct message session_microphone(const struct session *s);

#endif
