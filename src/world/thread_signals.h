/*
 * thread_signals.h - signals are the main thread's, faults are everybody's
 *
 * A thread begins with the mask of the one that makes it.  Hold the signals,
 * make the thread, release them.
 */
#ifndef EVENHAND_WORLD_THREAD_SIGNALS_H
#define EVENHAND_WORLD_THREAD_SIGNALS_H

#include <signal.h>

/*
 * Blocks all signals but those of a fault: a fault that is blocked ends the
 * program before its handler can give the terminal back.
 */
void thread_signals_hold(sigset_t *before);
void thread_signals_release(const sigset_t *before);

#endif
