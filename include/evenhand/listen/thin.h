/*
 * thin.h - samples of a card made fewer, for all that listens
 *
 * A string is understood from its partials up to some 6 kHz.  So every n-th
 * sample is kept behind a low-pass that lets nothing above fold into them:
 * 48 kHz becomes 16 kHz, 44.1 kHz becomes 22.05 kHz.  Thinned sample j belongs
 * to the instant of the original sample j x n: the filter looks both ways and
 * delays nothing but the answer, by 12 thinned samples.
 *
 * What is no number, and the constant part of a card, are taken away.
 *
 * Pure.  One thread at a time.
 */
#ifndef EVENHAND_LISTEN_THIN_H
#define EVENHAND_LISTEN_THIN_H

#include <stddef.h>

#include "evenhand/base/arena.h"

struct thin;

/*
 * Thins a rate of HEARD_RATE_MIN..MAX as far as a highest note of high_hz
 * allows.  Lives in the arena; NULL when memory is short.
 */
struct thin *thin_new(struct arena *a, int rate, double high_hz);

/* Samples a second that come out: rate / factor. */
double thin_rate(const struct thin *t);

/* How many samples become one. */
int thin_factor(const struct thin *t);

/* Takes n samples and gives at most n / factor + 1: the number of them. */
size_t thin_take(struct thin *t, const float *in, size_t n, float *out);

/*
 * The last ones, when no more samples come: at most THIN_END_MAX.  They bring
 * the count to one for each whole or begun step.
 */
enum { THIN_END_MAX = 16 };
size_t thin_end(struct thin *t, float *out);

#endif
