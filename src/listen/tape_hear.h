/*
 * tape_hear.h - the instants of a stretch, from its samples
 *
 * A stretch is heard in pieces of some seconds, each about notes that lie so
 * near to each other that no octave fits between what is looked for.
 *
 * Pure; memory given back piece by piece.  One thread.
 */
#ifndef LISTEN_TAPE_HEAR_H
#define LISTEN_TAPE_HEAR_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "evenhand/listen/stretch.h"
#include "survey.h"

/* Samples of a stretch and some on both sides, and what is known of it. */
struct tape_sound {
	const float *x;
	size_t samples;
	int64_t first; /* x[0] is this sample of the recording */
	double rate;
	const struct stretch_asked *asked;
	const struct look *look; /* looks of the stretch, note_hz chosen */
	size_t looks;
	int64_t instant; /* of the recording, the stretch's first */
};

/* Fills m[0..SURVEY_STEP looks - 1].  False when memory is short. */
bool tape_hear(const struct tape_sound *s, struct instant *m);

#endif
