/*
 * knocks.h - the knocks at the beginnings of bows taken out of what was heard
 *
 * Pure.  Any thread.
 */
#ifndef LISTEN_KNOCKS_H
#define LISTEN_KNOCKS_H

#include <stddef.h>

#include "evenhand/listen/heard.h"

/*
 * Instants under a knock near one of the edges, in seconds from instant 0,
 * become HEARD_NOISE: a gap short enough to be gone across (series.h).
 */
void knocks_take(struct instant *m, size_t n, const double *edge_s, int edges);

#endif
