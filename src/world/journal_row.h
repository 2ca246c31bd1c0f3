/*
 * journal_row.h - one row on its way to the journal
 *
 * Everything that is kept goes as rows that need nothing but themselves: each
 * names its origin, its number in that origin's sequence, and the sitting it
 * belongs to by that sitting's number.  So a row can wait in the queue, lie
 * in the spool as a line of text, or come twice, and still lands in the
 * journal exactly once:
 *
 *	2 ⇥ turn ⇥ 3f…a9 ⇥ 17 ⇥ 12 ⇥ 1772470800 ⇥ … ⇥ tone ⇥ 4 ⇥ 85944171f73967e8
 *
 * A row is one piece of memory: numbers, then texts.
 */
#ifndef EVENHAND_WORLD_JOURNAL_ROW_H
#define EVENHAND_WORLD_JOURNAL_ROW_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

enum { ORIGIN_BYTES = 33 }; /* 128 bits in hex, and a zero */

enum row_kind {
	ROW_SITTING,
	ROW_SHARE,
	ROW_TURN,
	ROW_MARK,
	ROW_NOTE,
	ROW_END,
	ROW_MEASURE,
	ROW_KINDS
};

/* Numbers of a row.  What every row has comes first. */
enum {
	ROW_SEQUENCE,	/* in its origin, from 1 */
	ROW_SITTING_OF, /* sequence of the row its sitting began with, or 0 */
	ROW_UTC,
	ROW_OFFSET,
	ROW_DAY, /* practice day of its sitting; of a note the later one */
	ROW_OWN,
};

enum {
	SITTING_EDITION = ROW_OWN,
	SITTING_MARKING,
	SITTING_CAP,
	SITTING_PLANNED,
	SITTING_RATE,
	SITTING_NUMBERS
};
enum { SHARE_PLANNED = ROW_OWN, SHARE_DROPPED, SHARE_NUMBERS };
enum {
	TURN_NUMBER = ROW_OWN,
	TURN_KIND,
	TURN_ROUND,
	TURN_PULSES,
	TURN_ASKED,
	TURN_DONE,
	TURN_FIRST_GO,
	TURN_RESETS,
	TURN_DROPOUTS,
	TURN_START,
	TURN_ENDED,
	TURN_SLIDE,
	TURN_NUMBERS
};
enum { MARK_NUMBER = ROW_OWN, MARK_MARK, MARK_MS, MARK_NUMBERS };
enum { NOTE_KIND = ROW_OWN, NOTE_FINGER, NOTE_NUMBERS };
enum { END_ENDED = ROW_OWN, END_LENGTH, END_NUMBERS };
enum { MEASURE_NUMBER = ROW_OWN, MEASURE_METHOD, MEASURE_NUMBERS };

/* Texts of a row. */
enum {
	SITTING_FINGERPRINT,
	SITTING_NAME,
	SITTING_TEXT,
	SITTING_STAGE,
	SITTING_DEVICE,
	SITTING_INSTRUMENT,
	SITTING_ASKED,
	SITTING_TEXTS
};
enum { SHARE_STAGE, SHARE_UNIT, SHARE_TEXTS };
enum { TURN_STAGE, TURN_UNIT, TURN_TEXTS };
enum { NOTE_WORDS, NOTE_TEXTS };
enum { MEASURE_VALUES, MEASURE_TEXTS }; /* {"tops":16,...} */

enum { ROW_NUMBERS_MAX = TURN_NUMBERS, ROW_TEXTS_MAX = SITTING_TEXTS };

struct row {
	struct row *next;
	enum row_kind kind;
	char origin[ORIGIN_BYTES];
	int64_t number[ROW_NUMBERS_MAX];
	const char *text[ROW_TEXTS_MAX]; /* in the row's own memory */
	int place;    /* of the spool, when it was read from there */
	bool refused; /* by the database it was offered to last */
};

/* What a kind of row holds, and the names its values have in SQL. */
struct row_layout {
	const char *name;
	int numbers, texts;
	const char *number_name[ROW_NUMBERS_MAX];
	const char *text_name[ROW_TEXTS_MAX];
};

extern const struct row_layout row_layouts[ROW_KINDS];

/* A row with its numbers zero and its texts copied; NULL without memory. */
struct row *row_new(enum row_kind kind, const char *const *texts);

/* The same row once more, in no chain; NULL without memory. */
struct row *row_copy(const struct row *row);

/* Writes the row as a line of the spool; false without memory. */
bool row_write(const struct row *row, FILE *to);

/*
 * Reads a line of the spool (without its end; it is changed).  NULL when it
 * was cut off or is none of ours, and with errno ENOMEM without memory.
 */
struct row *row_read(char *line);

/* Frees a chain of rows. */
void rows_free(struct row *first);

#endif
