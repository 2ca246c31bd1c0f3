/*
 * turn.h - what was heard of one turn, in one value
 *
 *	instants of the turn ──┬─▶ its bows, one by one: tops, stops, calm
 *	what was asked of it ─┘   all tops together: how far, how even
 *			          in the last stage: how fast, how wide
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
	TURN_NOISE = 2,	    /* a sound, but hardly a pitch */
	TURN_ELSEWHERE = 3, /* a pitch, but mostly not what was asked */
	TURN_LITTLE = 4,    /* too little of it was heard to say anything */
};

/* How far the microphone is, from how a sound dies away. */
enum turn_distance {
	DISTANCE_UNKNOWN = 0,
	DISTANCE_NEAR = 1,
	DISTANCE_FAR = 2, /* no widths are given */
};

/* What was asked.  Seconds are from instant 0. */
struct turn_asked {
	struct asked asked;  /* what the instants were looked for in */
	double lower_hz;     /* the lower note, or the finger's own */
	double travel_cents; /* 0: no travel, so no tops */
	bool sways;	     /* the last stage: rate and width are asked */
	bool latency_known;  /* late and early may be told */
	int pulses;	     /* of each bow, 0..TURN_PULSES_MAX */
	int bows;	     /* 1..TURN_BOWS_MAX */
	double edge_s[TURN_BOWS_MAX + 1]; /* where bows begin, and the end */
	enum turn_distance distance;	  /* as far as is known by now */
};

/* One bow of it. */
struct bow_heard {
	bool listened;	/* enough was heard to count its tops */
	int tops;	/* heard of turn_asked.pulses */
	struct bow bow; /* how calm */
};

struct turn_heard {
	enum turn_answer answer;
	enum turn_distance distance;
	double share; /* of its instants that were a note, 0..1 */
	int bows;
	struct bow_heard bow[TURN_BOWS_MAX];
	int bows_listened, bows_full; /* full: every top asked was heard */
	struct arrivals arrivals;     /* heard 0: nothing set */
	struct sway sway;
	bool calm_known;    /* the three below are set */
	int stops;	    /* over 60 ms, in all bows */
	double drift_db;    /* the largest of a bow, with its sign */
	double unsteady_db; /* the median of its bows */
};

/* False when memory is short. */
bool turn_measure(struct arena *a, const struct turn_asked *asked,
    const struct instant *m, size_t n, struct turn_heard *out);

/*
 * The measures by name, as journals and records keep them.  A value that was
 * not told is not there.
 */
enum { TURN_VALUES_MAX = 24 };
struct turn_value {
	const char *name; /* "tops_heard", of static life */
	double value;
};
int turn_values(const struct turn_heard *heard, struct turn_value *out);

/* The other way: a value by its name; unknown names change nothing. */
void turn_value_set(struct turn_heard *heard, const char *name, double value);

#endif
