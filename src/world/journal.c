/*
 * journal.c - the journal opened, asked and closed
 *
 * Rows of this computer carry the origin in the journal and go on with its
 * sequence.  Where the journal cannot be written, nobody knows how far that
 * sequence got; the rows then get an origin of their own.
 */
#include "evenhand/world/journal.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/world/file.h"
#include "journal_lock.h"
#include "journal_parts.h"
#include "journal_read.h"
#include "random.h"
#include "shortage.h"

/* The rows of a whole session, its routine with them. */
enum { RESERVE_BYTES = 1024 * 1024 };

static struct journal *journal_new(const char *path, struct fault *f)
{
	struct journal *j = calloc(1, sizeof(*j));

	if (j == NULL) {
		fault_set(f, message_of(M_WORLD_JOURNAL_NO_MEMORY));
		return NULL;
	}
	/* One that has none goes without. */
	j->reserve = malloc(RESERVE_BYTES);
	assert(strlen(path) < SPOOL_PATH_BYTES - 64);
	snprintf(j->path, sizeof(j->path), "%s", path);
	j->lock = -1;
	j->last = &j->first;
	pthread_mutex_init(&j->queue_lock, NULL);
	pthread_mutex_init(&j->base_lock, NULL);
	pthread_cond_init(&j->wake, NULL);
	pthread_cond_init(&j->handled, NULL);
	return j;
}

static void journal_free(struct journal *j)
{
	rows_free(j->kept);
	rows_free(j->unsaved);
	database_close(&j->base);
	lock_free(j->lock);
	free(j->reserve);
	pthread_cond_destroy(&j->handled);
	pthread_cond_destroy(&j->wake);
	pthread_mutex_destroy(&j->base_lock);
	pthread_mutex_destroy(&j->queue_lock);
	free(j);
}

/* Numbers that wait in the spool are taken, too; false if not all are known. */
static bool skip_spooled(struct journal *j)
{
	struct spooled all;
	bool known = spool_read(&j->spool, &all);

	for (int p = 0; p < SPOOL_PLACES; p++)
		known = known && all.damaged[p] == 0;
	for (int i = 0; i < all.rows; i++)
		if (strcmp(all.row[i]->origin, j->origin) == 0 &&
		    all.row[i]->number[ROW_SEQUENCE] > j->sequence)
			j->sequence = all.row[i]->number[ROW_SEQUENCE];
	spooled_free(&all);
	return known;
}

static void learn_origin(struct journal *j)
{
	if (j->base.handle != NULL)
		database_text(&j->base, "SELECT origin FROM about", j->origin,
		    sizeof(j->origin));
	if (strlen(j->origin) == ORIGIN_BYTES - 1) {
		j->sequence = database_last(&j->base, j->origin);
		if (j->sequence >= 0 &&
		    (!spool_waits(&j->spool) || skip_spooled(j)))
			return;
	}
	random_id(j->origin);
	j->sequence = 0;
}

struct journal *journal_open(const char *path, struct fault *f)
{
	struct journal *j = journal_new(path, f);

	if (j == NULL)
		return NULL;
	/* What is wrong with it shows when the journal is opened. */
	folder_make_for(path, f);
	if (!lock_take(path, &j->lock)) {
		fault_set(f, message_of(M_WORLD_JOURNAL_LOCKED));
		journal_free(j);
		return NULL;
	}
	spool_init(&j->spool, path);
	j->spooled = spool_waits(&j->spool);
	journal_keep(j);
	/* Nothing is planned without a history that may well be there. */
	if (trouble_short(j->trouble)) {
		short_failed(f, j->trouble);
		journal_free(j);
		return NULL;
	}
	learn_origin(j);
	journal_start(j);
	return j;
}

struct journal *journal_look(const char *path, struct fault *f)
{
	struct journal *j = journal_new(path, f);

	if (j == NULL)
		return NULL;
	j->looking = true;
	j->state = JOURNAL_READ_ONLY;
	j->trouble = database_look(&j->base, path);
	if (j->trouble == TROUBLE_NONE || j->trouble == TROUBLE_NEWER)
		return j;
	look_failed(f, j->trouble, path);
	journal_free(j);
	return NULL;
}

/*
 * The database to read from: the open one, or else what can be looked at,
 * which is left in other; NULL for none, and why.
 */
static struct database *readable(
    struct journal *j, struct database *other, enum trouble *trouble)
{
	*trouble = TROUBLE_NONE;
	if (j->base.handle != NULL && !j->spooled)
		return &j->base;
	if (j->trouble == TROUBLE_BROKEN || j->trouble == TROUBLE_OTHER_FILE)
		*trouble = database_look_at_spool(other, j->path);
	else
		*trouble = database_look(other, j->path);
	return other->handle != NULL ? other : NULL;
}

/* Says that what lies there could not be read, and leaves it alone. */
static void give_up_reading(struct journal *j, struct database *d)
{
	enum trouble trouble = database_trouble(d);

	if (trouble == TROUBLE_BROKEN && d == &j->base && !j->looking) {
		database_close(d);
		j->trouble = trouble;
	}
	/* Who only looks keeps nothing, and hears of it by the fault. */
	if (!j->looking)
		journal_tell(j, trouble, j->path);
}

bool journal_lacked(const struct fault *f)
{
	return f->message.id == M_WORLD_JOURNAL_NO_MEMORY ||
	    f->message.id == M_WORLD_FILE_NO_MORE;
}

bool journal_history(struct journal *j, struct history *h, int today,
    const struct routine *r, struct fault *f)
{
	const int days = r ? HISTORY_TALLY_DAYS : -1;
	struct database other = { 0 }, *d;
	enum trouble trouble;
	bool good, lacks;

	*h = (struct history) { 0 };
	journal_flush(j);
	pthread_mutex_lock(&j->base_lock);
	d = readable(j, &other, &trouble);
	lacks = trouble_short(trouble);
	good = !lacks;
	if (d != NULL && !history_load(d, h, today, days)) {
		history_done(h);
		/* What is not damaged is not counted anew. */
		good = !d->no_memory && history_recount(d, h, today, days);
		lacks = d->no_memory;
		trouble = trouble_of_errno(shortage_error());
		if (!good && !lacks)
			give_up_reading(j, d);
	}
	database_close(&other);
	pthread_mutex_unlock(&j->base_lock);
	if (!good) {
		history_done(h);
		if (lacks)
			short_failed(f, trouble);
		else
			fault_set(f,
			    message_with(
				M_WORLD_JOURNAL_UNREAD, TEXT(j->path)));
	} else if (r != NULL) {
		history_set_apart(h, instrument_name(r->setup.instrument));
	}
	return good;
}

void journal_close(struct journal *j)
{
	if (j == NULL)
		return;
	journal_stop(j);
	/* What waits gets one more chance. */
	if (!j->looking)
		journal_keep(j);
	journal_free(j);
}
