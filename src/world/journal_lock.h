/*
 * journal_lock.h - one evenhand for each player at a time
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
void lock_free(int lock);

#endif
