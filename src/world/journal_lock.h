/*
 * journal_lock.h - one evenhand for each player at a time
 *
 * The lock hangs on an open file description.  A program that is started by
 * exec never has it (close-on-exec), but a child that is forked and goes on
 * without exec does, and would hold the player for as long as it lives: such a
 * child must call lock_free on its own copy before anything else, which does
 * not give up its parent's.
 */
#ifndef EVENHAND_WORLD_JOURNAL_LOCK_H
#define EVENHAND_WORLD_JOURNAL_LOCK_H

#include <stdbool.h>

/*
 * False when another process (or journal) has the player.  *lock is -1 where
 * no lock can be made, such as in a folder that may not be written: two
 * evenhands then do no harm, as each writes rows of an origin of its own.
 */
bool lock_take(const char *journal, int *lock);

/* Closes this process's copy; the player is free when the last one is. */
void lock_free(int lock);

#endif
