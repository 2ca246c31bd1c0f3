/*
 * bow.h - how calm the bow stayed
 *
 * A hand that moves changes the pitch, and a body answers some pitches louder
 * than others; that is no fault of the bow.  What loudness owes to pitch is
 * found from its quick changes, since a bow swells slowly, and is taken away.
 *
 * Pure; scratch from an arena.  Any thread.
 */
#ifndef EVENHAND_LISTEN_BOW_H
#define EVENHAND_LISTEN_BOW_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"

/*
 * Where bows begin, turn and end, in seconds from instant 0: edge i and i + 1
 * hold a bow.  A turn of the bow is heard as a short dip; a pause has an edge
 * on each side, and the piece between them holds no sound.  At most max, 2 or
 * more; -1 when memory is short.
 */
int bow_find(struct arena *a, const struct instant *m, size_t n, double *edge_s,
    int max);

struct bow {
	bool heard;	    /* else nothing below is set */
	int stops;	    /* of more than 60 ms inside */
	double drift_db;    /* from the first to the last third */
	double unsteady_db; /* SD of the level that pitch does not explain */
	double sure;	    /* 0..1: share of it heard */
};

/*
 * One bow, without a quarter of a second at each end, where it begins and
 * turns.  heard is false when half a second or less is left or most of it was
 * silent.  False when memory is short.
 */
bool bow_measure(struct arena *a, const struct instant *m, size_t n,
    double from_s, double to_s, struct bow *out);

#endif
