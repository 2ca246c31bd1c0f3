/*
 * sound_count.h - the session's frames, by the card or by the clock
 *
 *	frames  ╱ by the card ╱ lost: by the clock ╱ another card
 *	       ╱             ╱                    ╱
 *
 * One line without steps back: while a card sounds its frames carry the count,
 * else the wall clock does, from where the count stood when the card last
 * moved.  A card's own frames are told apart from the session's by where they
 * began and by their rate.
 *
 * Time that the program stood still is lost (wall.h), but for a card that
 * sounded on meanwhile to somebody's ear.  When it gave up for want of beats,
 * the count goes on from where it stood before, and the card's frames are
 * moved against the session's.
 *
 * A card that takes frames much faster than time gives them has no clock of its
 * own and cannot carry the count.
 *
 * Plain values, no process: it is told what time it is.
 */
#ifndef EVENHAND_WORLD_SOUND_COUNT_H
#define EVENHAND_WORLD_SOUND_COUNT_H

#include <stdbool.h>
#include <stdint.h>

/* What is known at a moment. */
struct count_now {
	int64_t wall, wall_lost_ms; /* of wall.h */
	int64_t card;		    /* the card's frame */
	uint32_t shuts;		    /* how often it gave up */
};

struct count {
	int rate;
	bool timed;
	int64_t frame, lost_ms; /* the session's; read them */
	bool carried;		/* by a card ... */
	bool raced; /* ... that has no clock: it ran ahead of time */

	int card_rate;
	int64_t origin;	    /* session frame of the card's frame 0 */
	int64_t card;	    /* its last frame ... */
	int64_t moved_wall; /* ... and when it was first seen */
	uint32_t shuts;

	int64_t stood, stood_wall; /* by the clock: frame and when */
	int64_t wall_lost_ms;
};

enum { COUNT_AHEAD_MS = 500 }; /* a card may be ahead of time, filling up */

/* timed: the card must keep to the time of the wall. */
void count_begin(struct count *c, int rate, bool timed);

/* Brings the count up to now.  True: the card's frames were moved. */
bool count_look(struct count *c, const struct count_now *now);

/* A card carries the count from now on; from now on the clock does. */
void count_join(struct count *c, int card_rate, const struct count_now *now);
void count_leave(struct count *c);

/* ms of the clock, standstills apart, since the card moved. */
int64_t count_still_ms(const struct count *c, const struct count_now *now);

/* A frame of the session as one of the card's, the nearest; and back, down. */
int64_t count_to_card(const struct count *c, int64_t frame);
int64_t count_from_card(const struct count *c, int64_t card);

#endif
