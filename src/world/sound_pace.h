/*
 * sound_pace.h - whether a card takes frames as fast as time gives them
 *
 * A buffer much too short for the sound server plays slowly, at some 5 to 70 % of
 * the pace (measured with PortAudio 19.6 on PipeWire), and nobody says so; or it
 * never begins.  That wants more latency.  A busy computer loses a block
 * now and then: that is an interruption, and passes.
 *
 * Plain values, no process: it is told what time it is.
 */
#ifndef EVENHAND_WORLD_SOUND_PACE_H
#define EVENHAND_WORLD_SOUND_PACE_H

#include "evenhand/sound/outlet.h"

enum {
	PACE_FIRST_MS = 1500,	/* a card that wants no block by then is slow */
	PACE_PAUSE_MS = 100,	/* between blocks: no pace to be judged by */
	PACE_SPAN_MS = 1000,	/* the pace is judged over so much ... */
	PACE_LAME_PERCENT = 80, /* ... and below that it is slow at once, ... */
	PACE_TARDY_PERCENT = 98, /* ... below that when it was so ... */
	PACE_TARDY_SPANS = 5,	 /* ... in as many spans after each other */
};

/* Zeroed: nothing was seen yet. */
struct pace {
	int64_t frame, plays_ns; /* a block that was played, and when */
	int64_t asked_ns;	 /* when the last one was asked for */
	int waited_ms;		 /* for the first */
	int tardy;		 /* spans after each other */
};

/*
 * A look at the card, so many ms after the last one: the last block, NULL
 * before the first.  True: it is slow.
 */
bool pace_slow(
    struct pace *p, const struct outlet_time *last, int rate, int since_ms);

#endif
