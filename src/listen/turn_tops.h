/*
 * turn_tops.h - the tops of a turn given to its bows
 *
 * Pure.  Any thread.
 */
#ifndef LISTEN_TURN_TOPS_H
#define LISTEN_TURN_TOPS_H

#include "evenhand/listen/turn.h"

/* What sounded, and the glides up that were found in it. */
struct tops {
	double begin_s;	  /* of the sound, from instant 0 */
	bool begins_high; /* on the upper note, before the first glide */
	const struct arrival *at;
	int n;
};

/* Sets asked, tops and full of every bow; listened is set before. */
void turn_tops(const struct turn_asked *asked, const struct tops *tops,
    struct bow_heard *bow);

#endif
