/*
 * runs.h - notes that follow each other as a hand and a bow can play them
 *
 * A run is a row of notes without a leap.  A finger glides, so pitch leaps only
 * where another sound is heard for a moment: an open string that rings on, or a
 * voice, where the bow turns and its own string is softest.  And a bow sounds
 * for a second at least, while a voice is broken off by consonants and breath.
 *
 * Pure.  Any thread.
 */
#ifndef LISTEN_RUNS_H
#define LISTEN_RUNS_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/listen/heard.h"

/* Short, softer runs that leap from a long one beside become HEARD_NOISE. */
void runs_clean(struct instant *m, size_t n, const struct asked *asked);

/*
 * Whether it is a voice, and no bow: of the sound only this share, 0..1, is
 * notes, and half of those lie in runs that are shorter than any bow.
 */
bool runs_speak(const struct instant *m, size_t n, double share);

#endif
