/*
 * series.h - rows of numbers: middle, spread, and a pitch as cents
 *
 * Pure.  Any thread.
 */
#ifndef LISTEN_SERIES_H
#define LISTEN_SERIES_H

#include <stddef.h>

#include "evenhand/base/arena.h"
#include "evenhand/listen/heard.h"

/*
 * The number under which the given share of x lies, evenly between two of
 * them.  Sorts x.  n > 0.
 */
double series_share(double *x, size_t n, double share);

/* Half of them lie below.  Sorts x.  n > 0. */
double series_median(double *x, size_t n);

double series_mean(const double *x, size_t n);

/* Over n, not n - 1. */
double series_sd(const double *x, size_t n);

/*
 * Cents of each instant above hz.  Gaps of up to 80 ms, where a bow turns, are
 * gone straight across; NAN where there is no note for longer.  NULL when
 * memory is short.
 */
double *series_cents(
    struct arena *a, const struct instant *m, size_t n, double hz);

#endif
