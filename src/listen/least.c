/*
 * least.c - least squares with a few unknowns
 */
#include "least.h"

#include <math.h>

#define TOO_SMALL 1e-10 /* a pivot, against the largest on the diagonal */

void least_add(struct least *l, const double *row, double is)
{
	for (int i = 0; i < l->unknowns; i++) {
		for (int j = 0; j < l->unknowns; j++)
			l->product[i][j] += row[i] * row[j];
		l->sum[i] += row[i] * is;
	}
}

static void swap(double *a, double *b)
{
	double x = *a;

	*a = *b;
	*b = x;
}

/* The row with the largest number in this column comes up. */
static void pivot(struct least *w, int column)
{
	int best = column;

	for (int i = column + 1; i < w->unknowns; i++)
		if (fabs(w->product[i][column]) >
		    fabs(w->product[best][column]))
			best = i;
	for (int j = 0; j < w->unknowns; j++)
		swap(&w->product[best][j], &w->product[column][j]);
	swap(&w->sum[best], &w->sum[column]);
}

bool least_solve(const struct least *l, double *unknown)
{
	struct least w = *l;
	int n = l->unknowns;
	double largest = 0;

	for (int i = 0; i < n; i++)
		largest = fmax(largest, l->product[i][i]);
	for (int c = 0; c < n; c++) {
		pivot(&w, c);
		if (!(fabs(w.product[c][c]) > TOO_SMALL * largest))
			return false;
		for (int i = c + 1; i < n; i++) {
			double part = w.product[i][c] / w.product[c][c];

			for (int j = c; j < n; j++)
				w.product[i][j] -= part * w.product[c][j];
			w.sum[i] -= part * w.sum[c];
		}
	}
	for (int i = n - 1; i >= 0; i--) {
		double rest = w.sum[i];

		for (int j = i + 1; j < n; j++)
			rest -= w.product[i][j] * unknown[j];
		unknown[i] = rest / w.product[i][i];
	}
	return true;
}
