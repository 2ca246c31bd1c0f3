/*
 * seeded.h - random numbers of a test, and the seed that brings them back
 *
 * Every run tries the same cases, so that what fails has been changed;
 * EVENHAND_SEED=n tries others.  The seed is printed.
 */
#ifndef EVENHAND_TESTS_SEEDED_H
#define EVENHAND_TESTS_SEEDED_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

static uint64_t seeded_state;

static inline void seeded_begin(const char *test)
{
	const char *given = getenv("EVENHAND_SEED");

	seeded_state = given ? strtoull(given, NULL, 10) : 2654435761U;
	printf(
	    "%s: EVENHAND_SEED=%llu\n", test, (unsigned long long)seeded_state);
}

/* Where time is dear, as under sanitizers, fewer cases of each kind will do. */
static inline bool seeded_quick(void)
{
	return getenv("EVENHAND_QUICK") != NULL;
}

/* The next 64 bits (splitmix64). */
static inline uint64_t seeded_bits(void)
{
	uint64_t z = seeded_state += UINT64_C(0x9e3779b97f4a7c15);

	z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
	z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
	return z ^ (z >> 31);
}

/* A whole number from low to high, both included. */
static inline int seeded(int low, int high)
{
	return low +
	    (int)(seeded_bits() % ((uint64_t)((int64_t)high - low) + 1));
}

#endif
