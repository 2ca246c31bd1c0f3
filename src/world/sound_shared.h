/*
 * sound_shared.h - the memory that evenhand and its sound child share
 *
 * One child that sounds at a time.  Each has a number; what it says of itself
 * carries the number, so nothing an earlier child said is taken for its words.
 *
 *	evenhand			child
 *	order, through the keeper ─▶	reads it
 *	beat, permit, quit ─▶		looks at them
 *	commands ─▶ engine		engine ─▶ card
 *			 ◀─ phase, card, time, events
 *
 * A child that hears has a part of its own, struct sound_hearing, and lives
 * beside the one that sounds: neither touches what belongs to the other.
 *
 * The keeper clears a child's part between two children, but for what evenhand
 * writes at any time (quit).
 */
#ifndef EVENHAND_WORLD_SOUND_SHARED_H
#define EVENHAND_WORLD_SOUND_SHARED_H

#include "evenhand/sound/inlet.h"
#include "evenhand/sound/outlet.h"
#include "evenhand/world/sound_list.h"

/*
 * Raised whenever a word in here means something else than before.  Two programs
 * that share the memory also compare their version and its size.
 */
enum { SOUND_LAYOUT = 2, SOUND_LAYOUT_BYTES = 64 };

/* A card that is slow gets more latency, up to here. */
enum { SOUND_LATENCY_MAX_MS = 200 };

enum sound_task { SOUND_PLAY, SOUND_LIST, SOUND_HEAR };

/* What a child is told when it is made. */
struct sound_order {
	int32_t number; /* of the child, 1.. */
	int32_t task;	/* enum sound_task */
	struct sound_wish wish;
	bool paced;
	bool no_other; /* the wished card or none */
	int32_t rate;  /* the session's, tried first */
	int32_t latency_ms;
};

/* How far a child has come. */
enum sound_phase {
	SOUND_BEGINS,
	SOUND_SOUNDS, /* card and engine are ready; frames pass, or samples */
	SOUND_LISTED,
	SOUND_NO_CARD,
	SOUND_SLOW, /* the card takes less than time gives: more latency */
};

/* A number and a phase in one word. */
struct sound_state {
	_Atomic int32_t value;
};

struct sound_shared {
	struct sound_state quit; /* number of the child that is to end */
	struct sound_state state;

	/* From here on cleared before each child. */
	struct sound_order order;
	int32_t keeper;		   /* the process that made the child */
	struct sound_card card;	   /* the one that sounds */
	bool other;		   /* it is not the one wished for */
	int32_t rate;		   /* it was opened at */
	struct outlet_word permit; /* unpaced: frames to be rendered */
	struct outlet outlet;
	struct sound_list list, microphones;
	/* The engine lies behind, at sound_engine(), then sound_hearing(). */
};

/* Of the child that hears. */
struct sound_hearing {
	struct sound_state state;
	struct outlet_word permit; /* unpaced: the session's frame by now */

	/* From here on cleared before each child. */
	struct sound_order order;
	struct sound_card card;
	int32_t rate;
	struct inlet inlet;
};

/* What has come of a child. */
enum sound_phase sound_phase(const struct sound_shared *s, int32_t number);
void sound_phase_set(struct sound_shared *s, enum sound_phase phase);

struct engine *sound_engine(struct sound_shared *s);

/* The same of the child that hears. */
struct sound_hearing *sound_hearing(struct sound_shared *s);
enum sound_phase hearing_phase(const struct sound_hearing *h, int32_t number);
void hearing_phase_set(struct sound_hearing *h, enum sound_phase phase);

/* --- The memory itself --- */

/*
 * Makes the memory, zeroed, and a descriptor of it; it has no name by which
 * others could find it.  NULL: there is no room.
 */
struct sound_shared *sound_shared_make(int *memory);

/* The memory behind a descriptor; NULL: it is none, or too small. */
struct sound_shared *sound_shared_join(int memory);

void sound_shared_leave(struct sound_shared *s);

/* How this program lays it out, in words that another one compares. */
void sound_shared_layout(char *words, size_t size);

/* Clears what a child that sounds, one that hears may have written. */
void sound_shared_clear(struct sound_shared *s);
void sound_hearing_clear(struct sound_hearing *h);

#endif
