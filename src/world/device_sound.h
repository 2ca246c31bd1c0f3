/*
 * device_sound.h - what a sound device is made of
 *
 *	device_sound.c		the face: frames, levels, passages, words
 *	device_sound_child.c	the child: made, watched, ended, made anew
 *	device_sound_play.c	passages: given to the engine, and again
 *	device_sound_hear.c	the microphone's child: made, watched, made anew
 *	device_sound_times.c	its samples, and which frame they belong to
 */
#ifndef EVENHAND_WORLD_DEVICE_SOUND_H
#define EVENHAND_WORLD_DEVICE_SOUND_H

#include "device_parts.h"
#include "evenhand/world/latency.h"
#include "sound_count.h"
#include "sound_line.h"
#include "sound_link.h"
#include "wall.h"

enum {
	SOUND_PASSAGES_MAX = 8,
	SOUND_LATENCY_MS = 25, /* more when the card asks for it */
};

/* A passage that is not over. */
struct sound_passage {
	struct passage passage;
	int64_t frame, end; /* of the session */
	bool given;	    /* to the engine there is now */
};

/* The microphone beside the sound. */
struct sound_microphone {
	enum microphone_state state;
	struct sound_order order;
	int32_t number; /* of its child; 0: none */
	bool killed;	/* and not yet known to be gone */
	int mute;	/* children after each other that did not answer */
	int opened;	/* times it heard */
	int64_t made_ms, next_ms, lost_at_ms;
	int64_t seen, seen_wall; /* samples that came, and when they moved */
	struct sound_card card;
	const struct latencies *known; /* borrowed; NULL: none */

	struct line in;	  /* its samples */
	struct line out;  /* frames of the card that sounds, ... */
	int32_t sounding; /* ... of this child */
	bool by_card;	  /* the last samples were placed by them */
	int64_t due;	  /* the sample that comes next */
	int64_t stamped;  /* the last block that the line knows */
	int64_t lost_ms;  /* of the session, when it was looked at */
	bool gap;	  /* before the next sample */
	int jumps;	  /* of either line */
};

struct sound_device {
	struct device device;
	struct sound_keeper *keeper; /* borrowed */
	struct sound_shared *shared; /* the keeper's */
	struct wall *wall;	     /* NULL: unpaced */
	struct count count;
	int64_t heard; /* never falls */
	enum device_state state;
	int level;
	bool hush, level_owed; /* commands the ring had no room for */

	/* The child. */
	struct sound_order order;
	int32_t number;	      /* 0: none */
	bool killed;	      /* and not yet known to be gone */
	bool mute;	      /* it did not answer in time */
	int unfit;	      /* its program: SOUND_EXIT_..., 0: it is good */
	int64_t made_ms;      /* when it was made */
	int64_t next_ms;      /* when the next is made */
	int64_t lost_at_ms;   /* when sound was lost, or never there */
	int opened, patience; /* times it sounded; of an opening, ms */
	struct sound_card card;
	bool other;
	int dropouts;	  /* of children before */
	uint64_t dropped; /* the same */

	struct sound_microphone microphone;

	int passages;
	struct sound_passage passage[SOUND_PASSAGES_MAX];
	struct score scratch; /* to see whether a passage has a score */
	char name[2 * DEVICE_NAME_MAX + 4];
};

/* The engine of the child that sounds; NULL when none does. */
struct engine *sounding_engine(const struct sound_device *d);

/* The moment, for the count. */
struct count_now sounding_now(const struct sound_device *d);

/* --- device_sound_child.c --- */

/* Looks after the child; takes and gives the count. */
void sounding_look(struct sound_device *d);

/* The child is to end by itself. */
void sounding_end(struct sound_device *d);

/* --- device_sound_play.c --- */

bool passages_play(
    struct sound_device *d, const struct passage *p, int64_t frame);
void passages_silence(struct sound_device *d);

/* There is a new engine, or its frames were moved: all are given anew. */
void passages_again(struct sound_device *d);

/* Gives the engine what it has not got, and forgets what is over. */
void passages_look(struct sound_device *d);

/* --- device_sound_hear.c --- */

void hearing_wish(struct sound_device *d, const struct sound_wish *microphone);
void hearing_look(struct sound_device *d);

/* Its child is gone; how it ended: SOUND_EXIT_... or 0. */
void hearing_gone(struct sound_device *d, int ended);
void hearing_end(struct sound_device *d);

/* Unpaced: waits for it to open, then lets it go to a frame. */
void hearing_permit(struct sound_device *d, int64_t frame);

/* Whether samples come. */
bool hearing_hears(const struct sound_device *d);

/* --- device_sound_times.c --- */

/* A new microphone; a new look at the time of what sounds. */
void times_begin(struct sound_device *d);
void times_look(struct sound_device *d);

struct heard_samples times_take(struct sound_device *d, float *out, size_t max);

/* The pair of cards that is open; the delay that is known of it, or NULL. */
bool times_pair(const struct sound_device *d, struct latency_pair *pair);
const struct latency *times_latency(const struct sound_device *d);

#endif
