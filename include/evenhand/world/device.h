/*
 * device.h - what makes passages sound and frames pass
 *
 *	                    ┌ null, unpaced   frames as fast as asked for
 *	session ─▶ device ──┼ null, paced     frames by the wall clock
 *	                    └ sound           PortAudio in a child process
 *
 * One face for all.  The session counts frames at one rate from start to end,
 * whatever becomes of the sound: a sound device whose card, server or process
 * is lost goes on by the wall clock, from the frame where it stood, and when
 * sound comes back what is playing then is joined where it would be.  A card of
 * another rate sounds at its own; frames here stay those of the session.
 *
 * Paced, when more than DEVICE_JUMP_MS is missed at once because the program
 * stood still (stopped, the computer slept), that time is lost: the count
 * goes on from where it stood.  Only the device judges that; device_lost_ms
 * tells everybody else.
 *
 * Only the main thread, unless said otherwise.  No call of a paced device waits:
 * not for a server, a card or a process.
 */
#ifndef EVENHAND_WORLD_DEVICE_H
#define EVENHAND_WORLD_DEVICE_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/fault.h"
#include "evenhand/score/score.h"

struct device;
struct sound_keeper; /* evenhand/world/sound_keeper.h */

enum {
	DEVICE_BLOCK = 512,
	DEVICE_JUMP_MS = 250,
	DEVICE_LOST_MS = 250, /* a frame count that stands still so long */
	DEVICE_NAME_MAX = 128,
};

enum device_state {
	DEVICE_UNHEARD, /* no sound is wanted: null devices */
	DEVICE_OPENING, /* a card is being looked for, first time */
	DEVICE_SOUNDS,
	DEVICE_LOST,	/* it was there and is being looked for */
	DEVICE_MISSING, /* there is none, or not the one wished for */
};

/* Which card, as a person writes it. */
struct sound_wish {
	char name[DEVICE_NAME_MAX]; /* "" the default one; part of a name */
	char api[DEVICE_NAME_MAX];  /* host API, "" any */
	int level;		    /* thousandths of full scale */
};

/* The null device at a rate.  NULL with a fault: no thread or memory. */
struct device *device_null_open(int rate, bool paced, struct fault *f);

/*
 * The sound device; it returns at once in DEVICE_OPENING and borrows the
 * keeper.  The card is looked for from the first device_look on.  Unpaced only
 * together with a card that takes frames as fast as they come (a file).  NULL
 * with a fault: no memory.
 */
struct device *device_sound_open(struct sound_keeper *k,
    const struct sound_wish *w, int rate, bool paced, struct fault *f);

/*
 * Plays a passage from a frame on; what is late already is joined where it
 * would be.  False when it cannot be played (no room); unheard devices say
 * true.  The passage is copied.
 */
bool device_play(struct device *d, const struct passage *p, int64_t frame);

/* Silence now: what sounds fades, what was to sound is dropped. */
void device_silence(struct device *d);

/* Level of everything, thousandths of full scale. */
void device_level(struct device *d, int level);

/* Looks after the device: watchdog, child, events.  Call it every 50 ms. */
void device_look(struct device *d);

/*
 * Unpaced: reaches a frame exactly, and waits until the card has taken it.
 * Paced: nothing, time does it.
 */
void device_advance(struct device *d, int64_t frame);

/* The frame that is reached now: the next one to be filled. */
int64_t device_frame(const struct device *d);

/* The frame at the ear now: device_frame less what the card still holds. */
int64_t device_heard(const struct device *d);

/* ms that were lost so far, in no frame, in steps over DEVICE_JUMP_MS. */
int64_t device_lost_ms(const struct device *d);

/*
 * Interruptions of the sound that were noticed, and sounds or commands that
 * full rings dropped; both only grow.
 */
int device_dropouts(const struct device *d);
uint64_t device_dropped(const struct device *d);

enum device_state device_state(const struct device *d);

/* The opened card in words for people and journal; "none", "fast" unheard. */
const char *device_name(const struct device *d);

/* One plain sentence about the sound: M_NONE while opening. */
struct message device_sentence(const struct device *d);

/* --- Its microphone --- */

enum microphone_state {
	MICROPHONE_UNWISHED,
	MICROPHONE_OPENING,
	MICROPHONE_HEARS,
	MICROPHONE_MISSING, /* there is none, or not the one wished for */
	MICROPHONE_NO_ROOM, /* the computer has no more for what hears it */
	MICROPHONE_LOST,    /* it was there and is being looked for */
};

/* Samples that came one after the other, and when. */
struct heard_samples {
	int rate;     /* nominal, of the microphone's card */
	size_t count; /* of samples, mono, -1..1 */
	bool gap;     /* some were lost before the first one */
	/*
	 * The session's frame that was at the ear when the first sample was in
	 * the air, and frames of the session from sample to sample: two cards
	 * never run alike, and this is where that is settled.
	 */
	double frame, frames_each;
};

/*
 * Wishes for a microphone beside the sound (name and api as of a card; level
 * means nothing), before the first device_look.  It is heard by a process of its
 * own, made when it is known whether there is sound; the sound never waits for
 * it and never suffers from it.  A name that fits none is MICROPHONE_MISSING:
 * no other one is listened to.  What hears the computer's own sound (a
 * monitor) is no microphone.  One that is not there is looked for again, now and
 * then.  Devices without a card hear nothing: MICROPHONE_MISSING.
 */
void device_listen(struct device *d, const struct sound_wish *microphone);

enum microphone_state device_microphone(const struct device *d);

/*
 * Takes up to max samples that came meanwhile; count 0 when there are none.  Call
 * it again until there are none, every 50 ms or so: what nobody takes within
 * some seconds is lost (gap).  Frames of neighbouring pieces without a gap fit
 * to a fraction of a ms, not exactly: the two clocks are estimated.
 *
 * Unpaced, samples go with frames: it waits until the microphone has heard what
 * the session has.
 */
struct heard_samples device_hear(struct device *d, float *out, size_t max);

struct latency; /* evenhand/world/latency.h */
struct latency_pair;
struct latencies;

/*
 * Measured delays, borrowed until the device is closed: from then on frames of
 * device_hear are earlier by the delay of the pair of cards that is open, if it
 * is known.  Without it they stand on what the cards say of their own delays,
 * which may be off by some ms, or by 200 without a wire: then nothing can be
 * said of early and late.
 */
void device_correct(struct device *d, const struct latencies *known);

/* The delay that device_hear takes away now; NULL: it is not known. */
const struct latency *device_latency(const struct device *d);

/*
 * How often the times of either card jumped by a ms or more so far, since
 * samples were lost somewhere; only grows.  What was heard in the half second
 * before it grows may be placed wrongly by so much.
 */
int device_jumps(const struct device *d);

/* The pair that is open now; false: one of them is not. */
bool device_pair(const struct device *d, struct latency_pair *pair);

/* Whether wall time has to pass for frames to pass. */
bool device_paced(const struct device *d);

/* Fades out what sounds and lets the device go; never waits for the card. */
void device_close(struct device *d);

#endif
