/*
 * journal_keep.c - rows kept, whatever the disk is like
 *
 *	spool + unsaved ─▶ one transaction ─▶ database
 *	        unsaved ─▶ the spool             when that fails
 *	        unsaved    stays for another try when that fails too
 *
 * The spool goes first, so that a turn finds its sitting.  When a cut comes
 * between the commit and the end of the spool, its rows come once more and
 * change nothing.
 */
#include "journal_parts.h"

/* A trouble that may be over in a while. */
static bool passes(enum trouble t)
{
	return t == TROUBLE_BUSY || t == TROUBLE_FULL ||
	    t == TROUBLE_UNREACHABLE;
}

void journal_reach(struct journal *j)
{
	bool slow = false;

	if (j->base.handle != NULL ||
	    (j->trouble != TROUBLE_NONE && !passes(j->trouble)))
		return;
	j->trouble = database_open(&j->base, j->path, &slow);
	journal_tell(j, slow ? TROUBLE_SLOW : j->trouble, j->path);
}

/* Brings a row in; false when the database is at fault. */
static bool bring(struct journal *j, const struct row *row, int *refused)
{
	enum applied applied = database_apply(&j->base, row);

	*refused += applied == REFUSED;
	return applied != FAILED;
}

/* All that waits, in one transaction. */
static bool bring_all(
    struct journal *j, const struct spooled *waiting, int *refused)
{
	if (!database_begin(&j->base))
		return false;
	for (int i = 0; i < waiting->rows; i++)
		if (!bring(j, waiting->row[i], refused))
			return false;
	for (const struct row *row = j->unsaved; row != NULL; row = row->next)
		if (!bring(j, row, refused))
			return false;
	return database_commit(&j->base);
}

/* Rows of the spool are in the database: the spool may go. */
static void spool_done(
    struct journal *j, const struct spooled *waiting, bool all)
{
	bool keep = !all || waiting->damaged > 0;

	spool_clear(&j->spool, waiting, keep);
	if (keep)
		journal_tell(j, TROUBLE_SPOOL, j->spool.path[0]);
	j->spooled = false;
}

/* False when the database did not take everything. */
static bool to_database(struct journal *j)
{
	struct spooled waiting = { 0 };
	int refused = 0;
	bool all = true, good = false;

	if (database_moved(&j->base)) {
		database_close(&j->base);
		j->trouble = TROUBLE_MOVED;
		return false;
	}
	if (j->spooled)
		all = spool_read(&j->spool, &waiting);
	good = bring_all(j, &waiting, &refused);
	if (good && j->spooled) {
		spool_done(j, &waiting, all && refused == 0);
	} else if (!good) {
		j->trouble = database_trouble(&j->base);
		database_rollback(&j->base);
		if (!passes(j->trouble))
			database_close(&j->base);
	}
	spooled_free(&waiting);
	return good;
}

static void forget_unsaved(struct journal *j)
{
	rows_free(j->unsaved);
	j->unsaved = NULL;
}

static void to_spool(struct journal *j)
{
	int place = spool_add(&j->spool, j->unsaved);

	if (place < 0) {
		journal_tell(j, TROUBLE_NOT_KEPT, j->path);
		return;
	}
	forget_unsaved(j);
	j->spooled = true;
}

void journal_keep(struct journal *j)
{
	journal_reach(j);
	if (j->unsaved == NULL && !j->spooled)
		return;
	if (j->base.handle != NULL && to_database(j)) {
		forget_unsaved(j);
		j->trouble = TROUBLE_NONE;
		journal_tell(j, TROUBLE_NONE, j->path);
		return;
	}
	journal_tell(j, j->trouble, j->path);
	if (j->unsaved != NULL)
		to_spool(j);
}
