/*
 * ladder.c - steps of a routine's ladder of pulses: 4, 6, 8
 */
#include "ladder.h"

int rung_fit(const struct routine *r, int pulses)
{
	int fit = r->ladder[0];

	for (int i = 0; i < r->ladder_count; i++)
		if (r->ladder[i] <= pulses)
			fit = r->ladder[i];
	return fit;
}

int rung_lower(const struct routine *r, int pulses)
{
	int lower = r->ladder[0];

	for (int i = 0; i < r->ladder_count; i++)
		if (r->ladder[i] < pulses)
			lower = r->ladder[i];
	return lower;
}

int rung_higher(const struct routine *r, int pulses)
{
	for (int i = 0; i < r->ladder_count; i++)
		if (r->ladder[i] > pulses)
			return r->ladder[i];
	return r->ladder[r->ladder_count - 1];
}
