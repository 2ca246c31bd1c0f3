/*
 * journal_past.h - which stages of a routine were practised, looked up only
 *
 * For `evenhand check`: takes no lock, makes no file, changes nothing, and
 * works while somebody practises.  A routine is known by its name, so that two
 * routines of one student do not mix and a new edition meets the history of
 * the old ones.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_JOURNAL_PAST_H
#define EVENHAND_WORLD_JOURNAL_PAST_H

#include <stdbool.h>

#include "evenhand/base/fault.h"

/*
 * Calls back with the id and the number of turns of every stage that was
 * practised in a routine of this name, in the order they first came.  A
 * missing journal has none.  False when it cannot be read: *f says why.
 */
bool journal_past_stages(const char *path, const char *routine,
    void (*each)(void *context, const char *id, int turns), void *context,
    struct fault *f);

#endif
