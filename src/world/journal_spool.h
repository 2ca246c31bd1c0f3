/*
 * journal_spool.h - rows that could not be written, as lines of text
 *
 *	wren.sqlite ── cannot be written ──▶ wren.sqlite.spool
 *	     nor that ──▶ $XDG_STATE_HOME/evenhand, ~/.local/state/evenhand
 *	     nor that ──▶ /var/tmp/evenhand-…
 *
 * Lines are added and forced to the disk.  They are offered to the journal
 * again later; the files go when it has them all.
 */
#ifndef EVENHAND_WORLD_JOURNAL_SPOOL_H
#define EVENHAND_WORLD_JOURNAL_SPOOL_H

#include <stdbool.h>
#include <stddef.h>

#include "journal_row.h"

enum {
	SPOOL_PLACES = 4,
	SPOOL_PATH_BYTES = 4200,
	SPOOL_ASIDE_BYTES = SPOOL_PATH_BYTES + 24,
};

struct spool {
	/* Beside the journal, then elsewhere; "": no such place. */
	char path[SPOOL_PLACES][SPOOL_PATH_BYTES];
};

/* What lies in a spool, in the order of each origin's sequence. */
struct spooled {
	int rows;
	struct row **row;
	bool read[SPOOL_PLACES];   /* a place that could not be read stays */
	int damaged[SPOOL_PLACES]; /* lines that are no rows */
};

void spool_init(struct spool *s, const char *journal);

/* Whether any rows wait there. */
bool spool_waits(const struct spool *s);

/*
 * Adds a chain of rows and forces them to the disk.  Returns the place that
 * took them, or -1 when none would.
 */
int spool_add(const struct spool *s, const struct row *rows);

/* Reads all of it; false when there is some that cannot be read. */
bool spool_read(const struct spool *s, struct spooled *all);
void spooled_free(struct spooled *all);

/* Removes a place after its rows were taken in. */
void spool_remove(const struct spool *s, int place);

/*
 * Puts a place aside that holds what is of no use, under a name that is left
 * in aside; false when it has to stay.
 */
bool spool_put_aside(
    const struct spool *s, int place, char aside[SPOOL_ASIDE_BYTES]);

#endif
