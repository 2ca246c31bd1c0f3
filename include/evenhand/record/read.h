/*
 * read.h - from the words of a file to a record, with distrust
 *
 *	bytes ─▶ record_scan ─▶ (YAML reader, entry by entry) ─▶ record_entry
 *	              │                     at the end ─▶ record_end │
 *	              └──────────── faults with their places ◀───────┘
 *
 * Anybody may have written the file.  Each text, number and list is held
 * against its bounds as it comes; at the end names must refer to what is there
 * and no number of a row may come twice.  Reading ends early when there are
 * many faults.  Pure.  Any thread.
 */
#ifndef EVENHAND_RECORD_READ_H
#define EVENHAND_RECORD_READ_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/fault.h"
#include "evenhand/base/node.h"
#include "evenhand/record/record.h"

enum {
	RECORD_LINE_MAX = 2 * RECORD_ROUTINE_MAX, /* bytes of a line */
	RECORD_FAULTS_MAX = 20,		      /* reading ends after so many */
	RECORD_PART_BYTES = 64 * 1024 * 1024, /* of an entry in memory */
};

/* Private to the reader; all zero but for the first three. */
struct record_reader {
	struct record *r; /* filled */
	struct faults *faults;
	const char *path; /* kept by pointer in the faults */
	bool headed;	  /* it was seen to be a record of ours */
	int before;	  /* faults there were */
	struct row_place
	    *rows; /* numbers of rows, to be told apart at the end */
	size_t row_count, row_room;
	struct record_computer *computer_end;
	struct record_routine **routine_end;
	struct record_sitting **sitting_end;
	struct record_note **note_end;
};

/*
 * Looks at the raw bytes: the name of a record, UTF-8, no control characters, no
 * endless line.
 * False with one fault.
 */
bool record_scan(
    const char *path, const char *bytes, size_t length, struct faults *faults);

/* Begins to read into an all-zero record. */
void record_reader_begin(struct record_reader *rd, struct record *r,
    const char *path, struct faults *faults);

/*
 * Takes an entry of a list under a key of the root, of which all that stands
 * before it was read.  False when reading is to end.
 */
bool record_entry(struct record_reader *rd, const struct node *root,
    const struct node *list, const struct node *entry);

/*
 * All entries were taken; the rest of the root.  True when there was no fault.
 */
bool record_end(struct record_reader *rd, const struct node *root);

/* Frees what only reading needed, in any case. */
void record_reader_done(struct record_reader *rd);

#endif
