/*
 * journal_keep.c - rows kept, whatever the disk is like
 *
 *	spool + unsaved ─▶ one transaction ─▶ database
 *	        unsaved ─▶ the spool             when that fails
 *	        unsaved    stays for another try when that fails too
 *
 * The spool goes first, so that a turn finds its sitting.  When a cut comes
 * between the commit and the end of the spool, its rows come once more and
 * change nothing.  That is why what a sitting began with may be brought again
 * whenever it is doubtful that the database has it, and goes along whenever
 * later rows are left in the spool.
 *
 * A row whose sitting is nowhere is refused.  It goes to the spool; and when
 * all of the spool could be read and it is refused once more, that place of
 * the spool is put aside.
 */
#include "journal_parts.h"

/* A trouble that may be over in a while. */
static bool passes(enum trouble t)
{
	return t == TROUBLE_BUSY || t == TROUBLE_FULL ||
	    t == TROUBLE_UNREACHABLE || trouble_short(t);
}

/* Opens the database when it is not, and it may help. */
static void reach(struct journal *j)
{
	bool slow = false;

	if (j->base.handle != NULL ||
	    (j->trouble != TROUBLE_NONE && !passes(j->trouble)))
		return;
	j->trouble = database_open(&j->base, j->path, &slow);
	journal_tell(j, slow ? TROUBLE_SLOW : j->trouble, j->path);
}

void journal_remember(struct journal *j, const struct row *rows)
{
	struct row **end;

	for (; rows != NULL; rows = rows->next) {
		if (rows->kind == ROW_SITTING) {
			rows_free(j->kept);
			j->kept = NULL;
			j->kept_in_base = j->kept_in_spool = false;
		} else if (rows->kind != ROW_SHARE) {
			continue;
		}
		for (end = &j->kept; *end != NULL; end = &(*end)->next)
			continue;
		*end = row_copy(rows);
	}
}

/* Offers a row; false when the database is at fault. */
static bool bring(struct journal *j, struct row *row)
{
	enum applied applied = database_apply(&j->base, row);

	row->refused = applied == REFUSED;
	return applied != FAILED;
}

static bool bring_chain(struct journal *j, struct row *row)
{
	for (; row != NULL; row = row->next)
		if (!bring(j, row))
			return false;
	return true;
}

/* Whether the rows that wait have what their sitting began with. */
static bool begins(const struct row *row)
{
	for (; row != NULL; row = row->next)
		if (row->kind == ROW_SITTING)
			return true;
	return false;
}

/* All that waits, in one transaction. */
static bool bring_all(struct journal *j, const struct spooled *waiting)
{
	if (!database_begin(&j->base))
		return false;
	for (int i = 0; i < waiting->rows; i++)
		if (!bring(j, waiting->row[i]))
			return false;
	if (!j->kept_in_base && !begins(j->unsaved) && !bring_chain(j, j->kept))
		return false;
	return bring_chain(j, j->unsaved) && database_commit(&j->base);
}

static bool any_refused(const struct spooled *waiting, int place)
{
	for (int i = 0; i < waiting->rows; i++)
		if (waiting->row[i]->place == place && waiting->row[i]->refused)
			return true;
	return false;
}

/* What was read of a place is in the database: the place may go. */
static void place_done(
    struct journal *j, const struct spooled *waiting, int place, bool all)
{
	char aside[SPOOL_ASIDE_BYTES];
	bool refused = any_refused(waiting, place);

	/* Their sitting may lie where it cannot be read. */
	if (refused && !all)
		return;
	if (!refused && waiting->damaged[place] == 0)
		spool_remove(&j->spool, place);
	else if (spool_put_aside(&j->spool, place, aside))
		journal_tell(j, TROUBLE_SPOOL, aside);
}

static void spool_done(
    struct journal *j, const struct spooled *waiting, bool all)
{
	for (int i = 0; i < SPOOL_PLACES; i++)
		if (waiting->read[i])
			place_done(j, waiting, i, all);
		else
			journal_tell(j, TROUBLE_SPOOL_UNREAD, j->spool.path[i]);
	j->spooled = !all;
	j->kept_in_spool = false;
}

/* False when the database did not take everything. */
static bool to_database(struct journal *j)
{
	struct spooled waiting = { 0 };
	bool all = true, good = false;

	database_fed(&j->base);
	if (database_moved(&j->base)) {
		database_close(&j->base);
		j->trouble = TROUBLE_MOVED;
		return false;
	}
	if (j->spooled)
		all = spool_read(&j->spool, &waiting);
	good = bring_all(j, &waiting);
	if (good) {
		j->kept_in_base = true;
		if (j->spooled)
			spool_done(j, &waiting, all);
	} else {
		j->trouble = database_trouble(&j->base);
		database_rollback(&j->base);
		if (!passes(j->trouble))
			database_close(&j->base);
	}
	spooled_free(&waiting);
	return good;
}

/* Lets go of unsaved rows; those that were refused stay. */
static void forget_unsaved(struct journal *j)
{
	struct row **at = &j->unsaved;

	while (*at != NULL) {
		struct row *row = *at;

		if (row->refused) {
			at = &row->next;
			continue;
		}
		*at = row->next;
		row->next = NULL;
		rows_free(row);
	}
}

/*
 * Adds the unsaved rows to the spool, behind what their sitting began with:
 * the database that has it may be another one by the time they are read.
 */
static int add_unsaved(struct journal *j)
{
	struct row **end = &j->kept;
	int place;

	if (j->kept_in_spool || begins(j->unsaved)) {
		place = spool_add(&j->spool, j->unsaved);
	} else {
		while (*end != NULL)
			end = &(*end)->next;
		*end = j->unsaved;
		place = spool_add(&j->spool, j->kept);
		*end = NULL;
	}
	j->kept_in_spool = j->kept_in_spool || place >= 0;
	return place;
}

static void to_spool(struct journal *j)
{
	int place = add_unsaved(j);

	if (place < 0) {
		journal_tell(j, TROUBLE_NOT_KEPT, j->path);
		return;
	}
	if (place > 0)
		journal_tell(j, TROUBLE_ELSEWHERE, j->spool.path[place]);
	rows_free(j->unsaved);
	j->unsaved = NULL;
	j->spooled = true;
}

void journal_keep(struct journal *j)
{
	reach(j);
	if (j->unsaved == NULL && !j->spooled)
		return;
	if (j->base.handle != NULL && to_database(j)) {
		forget_unsaved(j);
		j->trouble = TROUBLE_NONE;
	}
	journal_tell(j, j->trouble, j->path);
	if (j->unsaved != NULL)
		to_spool(j);
}
