/*
 * shortage.c - how often the computer had too little for us
 *
 * A question to a database that found no memory looks like one without an
 * answer, and the code of its error is gone with the next call.  So whoever
 * meets a shortage counts it here, and whoever asked sees by the count that
 * there was one meanwhile.
 */
#include "shortage.h"

#include <errno.h>
#include <stdatomic.h>

static _Atomic unsigned long count;
static _Atomic int latest;

unsigned long shortage_count(void)
{
	return atomic_load_explicit(&count, memory_order_relaxed);
}

int shortage_error(void)
{
	return atomic_load_explicit(&latest, memory_order_relaxed);
}

void shortage_note(int error)
{
	if (error != ENOMEM && error != EMFILE && error != ENFILE)
		return;
	atomic_store_explicit(&latest, error, memory_order_relaxed);
	atomic_fetch_add_explicit(&count, 1, memory_order_relaxed);
}
