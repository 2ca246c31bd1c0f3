/*
 * tape.h - a whole recording, heard from its first sample to its last
 *
 *	samples ─▶ survey ─▶ cut into stretches ─▶ notes of each ─▶ live, refine
 *	           every 20 ms    at pauses		                 ─▶ stretch
 *
 * Nothing need be known: the survey looks at all notes an instrument has, and
 * of a note, its octaves and what lies between it chooses those that explain a
 * whole stretch best, not an instant alone.  Pitch is then looked for about
 * these notes only, as when they had been asked.
 *
 * A stretch is what lies between two pauses, at most TAPE_STRETCH_S: so an hour
 * takes no more memory than a minute.
 *
 * Pure; memory of its own.  One thread at a time.
 */
#ifndef EVENHAND_LISTEN_TAPE_H
#define EVENHAND_LISTEN_TAPE_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/listen/stretch.h"

#define TAPE_STRETCH_S 60.0 /* the longest */
#define TAPE_PAUSE_S 0.7    /* of quiet, that ends one */

/* Slower ones are looked at twice as fast: telephones give 8000. */
enum { TAPE_RATE_MIN = 8000, TAPE_RATE_MAX = HEARD_RATE_MAX };

/* From here on: slower ones lack the partials that tell of a room. */
enum { TAPE_ROOM_RATE = HEARD_RATE_MIN };

struct tape;

/* asked->known false: nothing is known.  NULL when memory is short. */
struct tape *tape_new(int rate, const struct stretch_asked *asked);
void tape_free(struct tape *t); /* NULL is allowed */

/* Takes up to TAPE_MAX samples; ask tape_next before the next ones. */
enum { TAPE_MAX = 4096 };
void tape_samples(struct tape *t, const float *x, size_t n);

/* No more samples come. */
void tape_end(struct tape *t);

/*
 * The next stretch that is over; they follow each other without a gap.  Its
 * lists live until the next call.  False: none is over; or memory is short,
 * which tape_failed tells.
 */
bool tape_next(struct tape *t, struct stretch *out);
bool tape_failed(const struct tape *t);

#endif
