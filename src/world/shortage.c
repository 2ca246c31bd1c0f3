/*
 * shortage.c - how often the computer had too little for us
 *
 * A question to a database that found no memory looks like one without an
 * answer, and the code of its error is gone with the next call.  So whoever
 * meets a shortage counts it here, and whoever asked sees by the count that
 * there was one meanwhile.
 */
#include "shortage.h"

#include <stdatomic.h>

static _Atomic unsigned long count;

unsigned long shortage_count(void)
{
	return atomic_load_explicit(&count, memory_order_relaxed);
}

void shortage_note(void)
{
	atomic_fetch_add_explicit(&count, 1, memory_order_relaxed);
}
