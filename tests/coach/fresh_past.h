/*
 * fresh_past.h - a past of its own for each test of a file
 *
 * past is empty when a test begins, and freed behind it: these two are what
 * cmocka calls, alone or from a setup that needs more.
 */
#ifndef EVENHAND_TESTS_FRESH_PAST_H
#define EVENHAND_TESTS_FRESH_PAST_H

#include "made.h"

static struct past *past;

static inline int past_begin(void **state)
{
	(void)state;
	past = past_new();
	return 0;
}

static inline int past_end(void **state)
{
	(void)state;
	free(past);
	return 0;
}

#endif
