/*
 * track.h - what a session plays when nobody marks
 *
 * A track is the session itself, begun and then left alone but for a sign of
 * life: its passages, with the frames at which they begin, are those of a
 * session at the same rate in which no mark is given.  So rungs stay as planned,
 * and what is rendered from a track is what a live session sounds like.
 *
 *	plan ─▶ session ⇄ frames ─▶ passages, each at its frame
 *
 * Frame 0 is the first sound of the session.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_COACH_TRACK_H
#define EVENHAND_COACH_TRACK_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/coach/session.h"

/* A round is one passage, and no round is empty. */
enum { TRACK_PASSAGES_MAX = PLAN_TURNS_MAX };

struct track_passage {
	struct passage passage;
	int64_t frame; /* of its start */
	int stage;
	int round;  /* of its block, 0.. */
	int rounds; /* of its block */
};

/* Too large for a stack. */
struct track {
	int rate;
	int64_t length; /* frames, to the end of the last change */
	int passages;
	struct track_passage at[TRACK_PASSAGES_MAX];
	struct session session; /* as it ended */
};

/*
 * Plays a plan through at a rate.  wish is what the plan was made from; routine
 * and history are borrowed for the call.  False: the plan holds nothing.
 */
bool track_make(struct track *t, const struct plan_wish *wish,
    const struct plan *p, int rate);

/*
 * Lets the two notes of each stage sound once, at the beginning of its block:
 * those of the first finger that plays there.  Stages that have no two notes,
 * and blocks that do not begin with stillness, get none.
 */
void track_tones(struct track *t, const struct routine *r);

#endif
