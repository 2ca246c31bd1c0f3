/*
 * ear.h - listens to one turn after the other, as samples come
 *
 *	ear_begin ─▶ ear_take, ear_take, ... ─▶ ear_work, ... ─▶ ear_end
 *	   what is asked	 samples	  between keys	  the turn
 *
 * While samples come only the live pitch is read; the finer one and the measure
 * come when the turn is over, in pieces, so that who has keys to look after can
 * do so between them.  Instant 0 is the first sample after ear_begin.
 *
 * Memory is taken by ear_begin and given back by ear_end, none between: for
 * each second of a turn 64 kB of samples at 48 kHz, more only for notes above
 * 660 Hz.  A turn is heard for EAR_S_MAX seconds; later bows count as not
 * listened to.
 *
 * Pure.  One thread at a time.
 */
#ifndef EVENHAND_LISTEN_EAR_H
#define EVENHAND_LISTEN_EAR_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/listen/turn.h"

#define EAR_S_MAX 64.0
#define EAR_AFTER_S 0.5 /* kept behind the last edge that was asked */

struct ear;

/* For samples of this rate, HEARD_RATE_MIN..MAX.  NULL when memory is short. */
struct ear *ear_new(int rate);
void ear_free(struct ear *e); /* NULL is allowed */

/*
 * Begins a turn; one that was under way is forgotten.  asked->asked is valid
 * and the edges say how long to listen.  False when memory is short: nothing is
 * listened to then, and all below does nothing.
 */
bool ear_begin(struct ear *e, const struct turn_asked *asked);

/* Any number of samples; what lies beyond the turn is left. */
void ear_take(struct ear *e, const float *x, size_t n);

/* So many samples did not arrive: silence stands in for them. */
void ear_lost(struct ear *e, size_t n);

/* Seconds that were taken since ear_begin. */
double ear_taken_s(const struct ear *e);

/*
 * No more samples come: refines some seconds of the turn.  True while there is
 * more to do; each call takes some 1/60 of EAR_WORK_S.
 */
#define EAR_WORK_S 4.0
bool ear_work(struct ear *e);

/*
 * Does what work is left and measures the turn.  What is asked may have become
 * clearer than it was (where edges lie, how far the microphone is), but for its
 * bounds.  The turn is over then, whatever the answer.  False when there was no
 * turn or memory is short.
 */
bool ear_end(
    struct ear *e, const struct turn_asked *asked, struct turn_heard *out);

/*
 * What was kept of the turn under way: instants, refined as far as ear_work has
 * come.  Lives until the turn is over or more is taken.
 */
const struct instant *ear_instants(const struct ear *e, size_t *n);

#endif
