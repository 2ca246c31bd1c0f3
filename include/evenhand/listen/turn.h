/*
 * turn.h - what was heard of one turn, in one value
 *
 *	instants of the turn ──┬─▶ its bows, one by one: tops, stops, calm
 *	what was asked of it ─┘   all tops together: how far, how even
 *			          in the last stage: how fast, how wide
 *
 * A top is a stay on the upper note.  Pulse 0 of a bow falls on the bow's
 * start, so the first top of a turn falls where the sound begins: who begins
 * on the upper note has played it, who begins on the lower one was never asked
 * for it.  Every other top is an arrival with a glide before it.  Hands early
 * or late by the same time all along, or half a pulse away, lose nothing:
 * tops go to bows by the player's own grid of pulses.
 *
 * What cannot be told is not told: `answer` says why, and each measure has a
 * `sure` of its own from 0 to 1.  From a far microphone no width is given,
 * because the room makes every swing look narrower.
 *
 * Pure; scratch from an arena.  Any thread.
 */
#ifndef EVENHAND_LISTEN_TURN_H
#define EVENHAND_LISTEN_TURN_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/arrivals.h"
#include "evenhand/listen/bow.h"
#include "evenhand/listen/heard.h"
#include "evenhand/listen/sway.h"

enum {
	TURN_METHOD = 1, /* raised when a measure comes to mean another thing */
	TURN_BOWS_MAX = 8,
	TURN_PULSES_MAX = 16, /* in a bow */
};

/* The numbers stand in journals: never reuse one. */
enum turn_answer {
	TURN_HEARD = 0,	    /* what is set below holds */
	TURN_SILENT = 1,    /* next to nothing: nobody played, or it is deaf */
	TURN_NOISE = 2,	    /* a sound, but hardly a pitch, or one in pieces:
				 speech */
	TURN_ELSEWHERE = 3, /* a pitch, but mostly not what was asked */
	TURN_LITTLE = 4,    /* too little of it was heard to say anything */
};

/*
 * How far the microphone is.  While the pitch moves, the direct sound has moved
 * on and the room still answers with the pitch of a moment ago; so partials that
 * were turned back by the pitch agree near the string, and the less the louder
 * the room is.  Where nothing moves nothing can be told, and how long a string
 * or a room rings makes no difference.
 */
enum turn_distance {
	DISTANCE_UNKNOWN = 0,
	DISTANCE_NEAR = 1,
	DISTANCE_FAR = 2, /* no widths are given */
};

/* What `room` of a turn, or its mean over some turns, means; 0 is unknown. */
#define ROOM_NEAR 0.95 /* up to here near */
#define ROOM_FAR 1.03  /* from here on far; 1: 4.5 dB of direct over room */
enum turn_distance turn_distance_of(double room);

/* What was asked.  Seconds are from instant 0. */
struct turn_asked {
	struct asked asked;  /* what the instants were looked for in */
	double lower_hz;     /* the lower note, or the finger's own */
	double travel_cents; /* 0: no travel is known, so no tops */
	bool sways;	     /* the last stage: rate and width are asked */
	bool latency_known;  /* late and early may be told */
	int pulses;	     /* of each bow, 0..TURN_PULSES_MAX */
	int bows;	     /* 1..TURN_BOWS_MAX */
	double edge_s[TURN_BOWS_MAX + 1]; /* where bows begin, and the end */
	/* As far as earlier turns tell; unknown, the turn tells for itself. */
	enum turn_distance distance;
};

/* One bow of it. */
struct bow_heard {
	bool listened;	/* enough was heard to count its tops */
	int asked;	/* tops that could be heard: pulses, or one fewer */
	int tops;	/* heard; more than asked when there were more */
	bool full;	/* every one that was asked */
	struct bow bow; /* how calm */
};

struct turn_heard {
	enum turn_answer answer; /* unless TURN_HEARD, only share is set */
	enum turn_distance distance;
	double room;  /* how loud it is; 0: could not be told */
	double share; /* of the instants of its bows that were a note, 0..1 */
	int bows;
	struct bow_heard bow[TURN_BOWS_MAX];
	int bows_listened, bows_full;
	/*
	 * Of the whole turn; asked and heard are tops of the bows listened to.
	 * heard 0: nothing else is set.
	 */
	struct arrivals arrivals;
	struct sway sway;   /* width is 0 unless width_known */
	bool width_known;   /* heard, and from near enough */
	bool calm_known;    /* the four below are set */
	int stops;	    /* over 60 ms, in all bows */
	double drift_db;    /* the largest of a bow, with its sign */
	double unsteady_db; /* the median of its bows */
	double calm_sure;   /* 0..1, of the bow that was heard least */
};

/*
 * Instants before the first edge and behind the last one, a quarter of a
 * second, help where a hand is early or late.  False when memory is short.
 */
bool turn_measure(struct arena *a, const struct turn_asked *asked,
    const struct instant *m, size_t n, struct turn_heard *out);

/*
 * The measures by name, as journals and records keep them: without single bows.
 * A value that was not told is not there.
 *
 *	answer distance share			always; the enums as numbers
 *	room					where it could be told
 *	bows bows_listened bows_full
 *	tops_asked tops_heard			of the bows listened to
 *	travel_cents travel_spread_cents	median and SD of the way up
 *	travel_share				of what was asked
 *	tops_sure
 *	unevenness				SD of top to top over their mean
 *	late_s late_spread_s			with a known latency only
 *	rate_hz cycles rate_unevenness middle_cents
 *	sway_from_s sway_to_s sway_sure
 *	width_cents width_spread_cents		to each side of the middle
 *	stops drift_db unsteady_db calm_sure
 */
enum { TURN_VALUES_MAX = 32 };
struct turn_value {
	const char *name; /* "tops_heard", of static life */
	double value;
};

/* The number of values written into out, which has room for all. */
int turn_values(const struct turn_heard *heard, struct turn_value *out);

#endif
