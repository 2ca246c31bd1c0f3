/*
 * journal_parts.h - the open journal, as its own files see it
 *
 *	main thread               │ journal's thread
 *	journal_begin ... ──queue─┼─▶ unsaved ─▶ database
 *	                          │           └▶ spool, and later the database
 *
 * What stands under a lock is touched only while it is held.  The thread
 * holds the base lock while it writes, the queue lock only for a moment.
 */
#ifndef EVENHAND_WORLD_JOURNAL_PARTS_H
#define EVENHAND_WORLD_JOURNAL_PARTS_H

#include <pthread.h>

#include "evenhand/world/journal.h"
#include "journal_database.h"
#include "journal_spool.h"

enum { NEWS_MAX = TROUBLES + SPOOL_PLACES };

struct journal {
	char path[SPOOL_PATH_BYTES];
	int lock;     /* of the player, -1 none */
	bool looking; /* opened to be read: no row may come */

	/* Only the main thread: what rows are made from. */
	char origin[ORIGIN_BYTES];
	int64_t sequence; /* the last one given */
	int64_t sitting;  /* sequence of the sitting begun last, 0 none */
	int day;	  /* its practice day */
	bool under_way;	  /* it has not been said to end */
	bool lost;	  /* there was no memory for its own row */
	int bow_ms;
	void *reserve; /* memory that is let go when a row finds none */

	/* Under the queue lock. */
	pthread_mutex_t queue_lock;
	pthread_cond_t wake, handled;
	struct row *first, **last; /* put and not yet taken */
	int64_t put, taken;	   /* rows so far; taken: kept or tried */
	bool stop;
	enum journal_state state;
	struct message news[NEWS_MAX]; /* not yet asked for */
	int news_count;
	uint32_t said; /* bit t: trouble t was told; once is enough */

	/* Under the base lock. */
	pthread_mutex_t base_lock;
	struct database base; /* without a handle it cannot be written */
	enum trouble trouble;
	struct spool spool;
	bool spooled;	     /* rows wait in it */
	struct row *unsaved; /* neither in the base nor in the spool */
	struct row *kept; /* copies: what the sitting begun last began with */
	bool kept_in_base, kept_in_spool;

	bool threaded;
	pthread_t thread;
};

/* --- journal_keep.c: with the base lock held --- */

/* Keeps copies of what a sitting begins with: its later rows need it. */
void journal_remember(struct journal *j, const struct row *rows);

/* Brings spool and unsaved rows into the database, or to the spool. */
void journal_keep(struct journal *j);

/* --- journal_news.c --- */

/* Tells a trouble once, and what it makes of the journal's state. */
void journal_tell(struct journal *j, enum trouble trouble, const char *place);

/* --- journal_queue.c: the main thread --- */

void journal_start(struct journal *j);

/* Puts a chain of rows into the queue; NULL (no memory) is told. */
void journal_put(struct journal *j, struct row *rows);

/* Ends the thread after its last row. */
void journal_stop(struct journal *j);

#endif
