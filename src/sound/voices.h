/*
 * voices.h - what each sound is made of
 *
 * A sample of a sound depends on the sound, the rate and its frame from the
 * sound's start, on nothing else: no state is carried from sample to sample,
 * so any cut gives the same samples.  Every sound begins and ends at nothing
 * without a step, and never passes its level.
 *
 *	down bow   ▁█▆▅▃▂▁   196 Hz and a partial, 70 ms
 *	up bow     ▁█▆▅▃▂▁   the same an octave higher
 *	tick       ▁█▃▁      1600 Hz, 15 ms
 *	count-in   ▁█▃▁      1200 Hz, 15 ms
 *	finger     ▁▄████▄▁  its own pitch, soft
 *	tone       ▁▄████▄▁  its own pitch, soft
 *
 * Safe in the audio callback.
 */
#ifndef EVENHAND_SOUND_VOICES_H
#define EVENHAND_SOUND_VOICES_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/score/score.h"
#include "evenhand/sound/rt.h"

enum { PARTIALS = 3 };

/* A sound made ready for its rate. */
struct shape {
	int32_t length; /* frames, at least 1 */
	bool struck;	/* dies away from its start; else held, then let go */
	float level;	/* 0..1 */
	float attack, release;	 /* per frame, one over their lengths */
	float fall;		 /* per frame, one over the whole length */
	uint32_t step[PARTIALS]; /* turns of 2^32 a frame */
	uint64_t bend; /* by which the first step grows a frame, x 2^48 */
	float weight[PARTIALS]; /* their sum is 1 or less */
};

/* Makes a sound ready; an unknown voice or no length is silence. */
RT_SAFE void shape_make(struct shape *v, const struct sound *s, int rate);

/* Writes frames from..from+count-1 of a sound; both ends inside it. */
RT_SAFE void shape_fill(
    const struct shape *v, int32_t from, int32_t count, float *out);

#endif
