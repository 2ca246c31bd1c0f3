/*
 * journal_read.h - the history out of the database
 */
#ifndef EVENHAND_WORLD_JOURNAL_READ_H
#define EVENHAND_WORLD_JOURNAL_READ_H

#include <stdbool.h>

#include "evenhand/coach/history.h"
#include "journal_database.h"

/*
 * Fills an all-zero history as of a practice day, with roll-ups of so many
 * days, -1 of all.  False when it cannot be
 * read, with d->no_memory when that is why; what was read so far is the caller's
 * to free.
 */
bool history_load(struct database *d, struct history *h, int today, int days);

/*
 * The same from roll-ups that are counted anew, in a copy: for a journal whose
 * own cannot be read.  h holds nothing before that is to be freed.
 */
bool history_recount(
    struct database *d, struct history *h, int today, int days);

/* --- journal_read_lists.c: the JSON lists of roll-ups --- */

/*
 * Reads the roll-up of one day into at most room tallies.  False when it is
 * not such a list or holds another number of entries.
 */
bool tallies_read(const char *list, int day, struct tally *to, int entries);

/* Reads the stages of a sitting; those beyond SEEN_MAX are left out. */
bool seen_read(const char *list, struct past_sitting *s);

#endif
