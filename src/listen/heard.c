/*
 * heard.c - what is listened for
 */
#include "evenhand/listen/heard.h"

bool asked_valid(const struct asked *a)
{
	return a->low_hz >= HEARD_LOW_HZ && a->low_hz <= a->high_hz &&
	    a->high_hz <= HEARD_HIGH_HZ;
}
