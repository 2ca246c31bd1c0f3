/*
 * apart.h - whether partials stray as they do in a room
 *
 * Pure.  One thread at a time.
 */
#ifndef LISTEN_APART_H
#define LISTEN_APART_H

#include "partials.h"

/*
 * Of a piece that partials_read has just read, with the pitch it found: the
 * share of the partials at an instant that stray farther than those beside a
 * room at the border of trust seldom do, APART_LEAST..1.  0: not looked at, or
 * the pitch has hardly moved.
 */
#define APART_LEAST 0.001F
void apart_measure(struct partials *p, const struct piece *piece, float *apart);

#endif
