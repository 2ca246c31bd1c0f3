/*
 * journal_database.h - the journal's SQLite database
 *
 *	origins ◀── sittings ◀── turns ◀── measures      days: one roll-up a day
 *	               ▲  ▲                               routines: texts
 *	          shares  notes                           about: student, origin
 *
 * One of these is used by one thread at a time.
 */
#ifndef EVENHAND_WORLD_JOURNAL_DATABASE_H
#define EVENHAND_WORLD_JOURNAL_DATABASE_H

#include <sqlite3.h>
#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/fault.h"
#include "journal_row.h"

/*
 * SQL for what the latest method heard of a turn with this key: NULL for
 * nothing.  Bows only where tops were asked of them.
 */
#define SQL_HEARD(key, name) \
	"(SELECT value FROM measures WHERE turn = " key " AND name = '" name \
	"' ORDER BY method DESC LIMIT 1)"
#define SQL_HEARD_BOWS(key, name) \
	"(SELECT b.value FROM measures b JOIN measures a USING (turn, method)" \
	" WHERE turn = " key " AND b.name = '" name "'" \
	" AND a.name = 'tops_asked' AND a.value > 0" \
	" ORDER BY method DESC LIMIT 1)"

/* Why rows cannot go where they should; TROUBLE_NONE: they can. */
enum trouble {
	TROUBLE_NONE,
	TROUBLE_BUSY,	      /* another program is writing */
	TROUBLE_FULL,	      /* no room on the disk */
	TROUBLE_READ_ONLY,    /* not ours to write */
	TROUBLE_NEWER,	      /* made by a later evenhand */
	TROUBLE_BROKEN,	      /* damaged */
	TROUBLE_OTHER_FILE,   /* no journal at all */
	TROUBLE_MOVED,	      /* taken away while it was open */
	TROUBLE_UNREACHABLE,  /* anything else that the system says */
	TROUBLE_SLOW,	      /* works, in another mode */
	TROUBLE_NOT_KEPT,     /* not even the spool can be written */
	TROUBLE_ELSEWHERE,    /* kept, but not beside the journal */
	TROUBLE_SPOOL,	      /* parts of a spool could not be used */
	TROUBLE_SPOOL_UNREAD, /* a spool cannot be read just now */
	TROUBLE_NO_MEMORY,    /* a row could not be made, and is lost */
	TROUBLE_STARVED,      /* no memory for the database itself */
	TROUBLE_NO_FILES,     /* no file more may be open */
	TROUBLES
};

/* The statements that are kept prepared, see journal_sql.c. */
enum statement {
	WRITE_BEGIN,
	WRITE_COMMIT,
	WRITE_ROLLBACK,
	WRITE_ORIGIN,
	FIND_ORIGIN,
	FIND_SITTING,
	WRITE_LAST,
	WRITE_ROUTINE,
	WRITE_SITTING,
	WRITE_SHARE,
	WRITE_TURN,
	WRITE_LENGTH,
	WRITE_MARK,
	CLEAR_MEASURES,
	WRITE_MEASURES,
	FORGET_MEASURES,
	WRITE_NOTE,
	WRITE_END,
	RENEW_SEEN,
	RENEW_SHARES,
	RENEW_DAY,
	STATEMENTS
};

struct database {
	sqlite3 *handle; /* NULL when closed */
	sqlite3_stmt *statement[STATEMENTS];
	/* Whose roll-ups are to be renewed before the commit. */
	bool renew;
	int64_t renew_day, renew_sitting;
	bool no_memory;		 /* was why a history could not be read whole */
	unsigned long shortages; /* before what is asked of it now */
};

enum applied { APPLIED, REFUSED, FAILED };

/* --- journal_database.c --- */

/*
 * Opens or makes the journal for writing.  Whatever it says, a database that
 * has a handle can be read.  *slow: it works, but in no WAL mode.
 */
enum trouble database_open(struct database *d, const char *path, bool *slow);

/* Gives a new journal the random names of its student and its origin. */
bool database_name(struct database *d);

/* Whether computers may share what lies there: WAL's memory reaches only one. */
bool database_on_network(const char *path);

void database_close(struct database *d);

/* Closes and hands the trouble on. */
enum trouble database_give_up(struct database *d, enum trouble trouble);

/*
 * What the last error of the database, or one of the system, means.  Where
 * there was a shortage since the database was opened or fed, it means that.
 */
enum trouble database_trouble(const struct database *d);
enum trouble trouble_of_errno(int error);

/*
 * Whether memory, or files that may be open, were short since then; answers may
 * be less than the truth.
 */
bool database_starved(const struct database *d);

/* Whether a trouble is such a shortage, and its fault; false. */
bool trouble_short(enum trouble t);
bool short_failed(struct fault *f, enum trouble t);

/* What is asked from now on has nothing to do with shortages before. */
void database_fed(struct database *d);

/* Opens a connection that trusts nothing a file brings along. */
bool database_handle(struct database *d, const char *path, int flags);

/*
 * Whether another file, or none, lies where the journal was opened: what is
 * written now would go with the old one.
 */
bool database_moved(struct database *d);

/* Runs SQL without results. */
bool database_run(struct database *d, const char *sql);

/* The one whole number a query gives, or otherwise. */
int64_t database_number(struct database *d, const char *sql, int64_t otherwise);

/* The one text a query gives, cut to size; "" when there is none. */
void database_text(struct database *d, const char *sql, char *buffer, int size);

/* --- journal_look.c --- */

/* An empty journal in memory, nameless, or a copy of another database. */
enum trouble database_memory(struct database *d, struct database *from);

/*
 * Opens a database for reading only, without making files: also in a folder
 * that cannot be written.  False, with errno, when it cannot be opened; what is
 * wrong inside shows later.
 */
bool database_still(struct database *d, const char *path);

/*
 * Opens a journal for reading only, with the rows of its spool, without a
 * lock and without making files; a missing one is empty.  Readable whenever it
 * has a handle then: a newer or a broken one may have, with TROUBLE_NEWER or
 * TROUBLE_BROKEN.
 */
enum trouble database_look(struct database *d, const char *path);

/*
 * Adds the rows of the spool to what a database shows, or to an empty one.
 * TROUBLE_STARVED or _NO_FILES, and closed: not all of them could be read.
 */
enum trouble database_look_at_spool(struct database *d, const char *path);

/* Sets the fault of a journal that cannot be looked at; false. */
bool look_failed(struct fault *f, enum trouble t, const char *path);

/* --- journal_new.c --- */

/*
 * Writes a database of memory to a path where nothing lies: for its owner alone,
 * whole or not at all, and on the disk when this returns; its name only is when
 * its folder is (folder_to_disk).
 */
enum trouble database_put_new(struct database *d, const char *path);

/* --- journal_schema.c --- */

/* SQL that brings the schema from version i to version i + 1. */
struct schema {
	int versions;
	const char *const *step;
};

extern const struct schema journal_schema;

/*
 * Brings the schema up to date, each step in one transaction; from version 1
 * on a copy of the file is made first ("path.version-1"), but for a database
 * in memory, which has no path.
 */
enum trouble schema_bring(
    struct database *d, const char *path, const struct schema *s);

/* Whether this is a journal that we may write; TROUBLE_NONE for an empty file. */
enum trouble schema_check(struct database *d, const struct schema *s);

/* --- journal_sql.c --- */

extern const char *const journal_sql[STATEMENTS];

/* --- journal_write.c --- */

/* Begins and ends a transaction; commit also renews the roll-ups. */
bool database_begin(struct database *d);
bool database_commit(struct database *d);
void database_rollback(struct database *d);

/*
 * Counts a roll-up anew: RENEW_DAY of a day, RENEW_SEEN or RENEW_SHARES of the
 * sitting with this key.  For those who write turns by themselves.
 */
bool database_renew(struct database *d, enum statement what, int64_t key);

/*
 * Brings one row in.  REFUSED: it does not fit what is there (its sitting is
 * missing), and nothing was changed.  A note is never refused for that: it
 * then stands outside of any sitting.  A row that is there already is APPLIED.
 */
enum applied database_apply(struct database *d, const struct row *row);

/* The highest number in the sequence of an origin, 0 none, -1 not known. */
int64_t database_last(struct database *d, const char *origin);

#endif
