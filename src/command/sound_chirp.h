/*
 * sound_chirp.h - one chirp, played and heard
 */
#ifndef EVENHAND_COMMAND_SOUND_CHIRP_H
#define EVENHAND_COMMAND_SOUND_CHIRP_H

#include "evenhand/world/device.h"
#include "evenhand/world/latency_find.h"

/* Room for what is heard of one; zeroed: none. */
struct chirp {
	float *heard, *match, *shape;
	size_t count, room, length;
	double first,
	    each; /* frame of the first sample, and from each to each */
	bool broken;
	bool silent; /* not one sample so far was anything but zero */
	int played;  /* chirps so far */
};

/* For a microphone of a rate; false: no memory.  chirp_done in any case. */
bool chirp_make(struct chirp *c, int rate);
void chirp_done(struct chirp *c);

/*
 * Plays one, waits until it must have been heard, and looks for it; *us: how
 * late it was by the times of both cards.  It ends early when sound_stopped or
 * a card is gone: SWEEP_BROKEN.
 */
enum sweep_way chirp_play(struct chirp *c, struct device *d, double *us);

/* Whether the card sounds and the microphone hears. */
bool chirp_both_there(const struct device *d);

#endif
