/*
 * journal.h - the practice history on disk (SQLite), on a thread of its own
 *
 * The session's thread puts rows into a queue and goes on; the journal's
 * thread commits each (synchronous FULL), so that a slow disk delays no click
 * and no key, and a power cut costs at most the turn under way.  Roll-ups are
 * kept in the turn's own transaction.  A busy, full, read-only or broken
 * journal never stops the practice: rows go to a spool file beside it, or where
 * that cannot be to one in the user's state folder or /var/tmp, and are offered
 * again; it is said once.
 *
 *	journal_open ─▶ journal_history ─▶ journal_begin, _turn, _mark, ...
 *	                                         │ queue
 *	                             journal's thread ─▶ SQLite │ spool
 */
#ifndef EVENHAND_WORLD_JOURNAL_H
#define EVENHAND_WORLD_JOURNAL_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/date.h"
#include "evenhand/base/fault.h"
#include "evenhand/coach/history.h"
#include "evenhand/coach/session.h"
#include "evenhand/listen/turn.h"

struct journal;

/* How a journal could be opened. */
enum journal_state {
	JOURNAL_GOOD,
	JOURNAL_READ_ONLY, /* the file, its folder, or a newer version */
	JOURNAL_SPOOL,	   /* broken or unreachable: rows go to the spool */
};

/* What the sitting is about; borrowed for the call. */
struct sitting_row {
	const struct routine *routine;
	const struct plan *plan;
	struct moment began; /* wall time of the first sound */
	int rate;
	const char *device; /* "none", "fast", later a device's name */
};

/* --- Only the main thread --- */

/*
 * Opens or makes the journal at path (0600, its folder 0700), takes the
 * player's lock, brings an older schema up to date (after a copy) and offers
 * a spool again.  NULL with a fault when another evenhand has it open, or when
 * the computer lacks what it takes to look into it (journal_lacked).
 * Anything else that is wrong is said by journal_trouble and practice goes on.
 */
struct journal *journal_open(const char *path, struct fault *f);

enum journal_state journal_state(const struct journal *j);

/* What is wrong, once: true and a message when there is something new. */
bool journal_trouble(struct journal *j, struct message *m);

/*
 * Loads the history, with what waits in the spool.  Turns and shares are those
 * of the last HISTORY_TURN_DAYS days and of the last sitting; roll-ups for a
 * routine are those of HISTORY_TALLY_DAYS up to the last practice day, which is
 * all that a plan asks for; all else is whole.  With a routine, what was
 * practised on another instrument is set apart (history_set_apart); NULL leaves
 * all names as they are.  A journal that was found broken or out of reach when
 * it was opened has none; false with a fault, and an empty history, when it
 * proves unreadable only now.
 */
bool journal_history(struct journal *j, struct history *h, int today,
    const struct routine *r, struct fault *f);

/*
 * Whether the fault of a journal is one of the computer, which lacks memory or
 * files: the journal is whole, and no plan should be made without it.
 */
bool journal_lacked(const struct fault *f);

/*
 * Puts a row into the queue and returns at once.  The sitting's rows refer to
 * the sitting begun last and count for its practice day, a note for its own
 * when that is later; a note may also come before any.  A turn whose number is
 * there already takes its place; a mark replaces the one before it.  An end
 * without a sitting under way is nothing.  None of these fails: see
 * journal_trouble.
 */
void journal_begin(struct journal *j, const struct sitting_row *row);
void journal_turn(struct journal *j, const struct turn_row *row,
    const struct routine *r, struct moment at);
void journal_mark(
    struct journal *j, int number, enum mark mark, int64_t mark_ms);
void journal_note(
    struct journal *j, const struct note_row *row, struct moment at);
/* What was heard of a turn; later of the same method takes its place. */
void journal_measures(struct journal *j, int number,
    const struct turn_value *value, int count, int method);
void journal_end(
    struct journal *j, enum ended ended, int64_t length_ms, struct moment at);

/* Waits until all rows put so far are on the disk or in the spool. */
void journal_flush(struct journal *j);

/* Flushes, stops the thread, closes.  NULL is allowed. */
void journal_close(struct journal *j);

/* --- Reading without practising; takes no lock and makes no file --- */

/*
 * Opens the journal to be read only: journal_history and journal_close work on
 * it.  A missing journal is an empty history.  NULL with
 * a fault when it cannot be read.
 */
struct journal *journal_look(const char *path, struct fault *f);

/*
 * Writes everything that was kept from a first to a last practice day as JSON
 * (documented in evenhand.1) to a stream given as a descriptor.  A missing
 * journal is an empty history, not a fault.
 */
bool journal_dump_json(
    const char *path, int first, int last, int descriptor, struct fault *f);

#endif
