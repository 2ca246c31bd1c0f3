/*
 * thread_signals.c - signals are the main thread's, faults are everybody's
 */
#include "thread_signals.h"

#include <stddef.h>

void thread_signals_hold(sigset_t *before)
{
	static const int faults[] = { SIGSEGV, SIGBUS, SIGFPE, SIGILL,
		SIGABRT };
	sigset_t held;

	sigfillset(&held);
	for (size_t i = 0; i < sizeof(faults) / sizeof(faults[0]); i++)
		sigdelset(&held, faults[i]);
	pthread_sigmask(SIG_SETMASK, &held, before);
}

void thread_signals_release(const sigset_t *before)
{
	pthread_sigmask(SIG_SETMASK, before, NULL);
}
