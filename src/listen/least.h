/*
 * least.h - least squares with a few unknowns
 *
 * Rows of `unknowns` known numbers and what they should come to are added one
 * by one; the unknowns that leave the smallest sum of squares are then found
 * from the normal equations by elimination.
 *
 * Pure values.  Any thread.
 */
#ifndef LISTEN_LEAST_H
#define LISTEN_LEAST_H

#include <stdbool.h>

enum { LEAST_MAX = 14 };

struct least {
	int unknowns;
	double product[LEAST_MAX][LEAST_MAX], sum[LEAST_MAX];
};

static inline void least_begin(struct least *l, int unknowns)
{
	*l = (struct least) { .unknowns = unknowns };
}

void least_add(struct least *l, const double *row, double is);

/* False when the rows do not tell: too few, or alike. */
bool least_solve(const struct least *l, double *unknown);

#endif
