/*
 * record.h - what a student gives away of the practice, as one value
 *
 *	journal ─▶ record ─▶ words of a file ─▶ record ─▶ another journal
 *
 * A record holds all that is needed for the other journal to say the same as
 * the first: who by a random name, on which computer by another, every sitting
 * with its shares, turns, marks, measures and notes, and the routines by their
 * texts.  Nothing in it tells of a machine: no device, no rate, no path.  The
 * file is described in evenhand-record(5).
 *
 * Whatever the way it came, a record that was read without a fault keeps the
 * bounds below, and its names refer to what is there.
 *
 * Lives in its own arena.  Pure; any thread may read.
 */
#ifndef EVENHAND_RECORD_RECORD_H
#define EVENHAND_RECORD_RECORD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "evenhand/base/arena.h"
#include "evenhand/base/date.h"
#include "evenhand/coach/history.h"

enum {
	RECORD_VERSION = 2, /* 1 where the student has one id alone */
	RECORD_ID_MAX = 33, /* 128 bits in hexadecimal, and a zero */
	RECORD_INITIALS_MAX = 24,
	RECORD_NAME_MAX = 33, /* bytes of the name of a measure */
	STUDENT_IDS_MAX = 16, /* of one student, see record/join.h */

	/* Of a file. */
	RECORD_BYTES_MAX = 48 * 1024 * 1024,
	RECORD_DEPTH_MAX = 8,
	RECORD_COMPUTERS_MAX = 1000,
	RECORD_ROUTINES_MAX = 5000,
	RECORD_SITTINGS_MAX = 50000,
	RECORD_TURNS_MAX = 600000,
	RECORD_NOTES_MAX = 50000,

	/* Of a sitting, and of a turn in it. */
	RECORD_SITTING_TURNS_MAX = 2000,
	RECORD_SHARES_MAX = 64,
	RECORD_VALUES_MAX = 64,

	/* Bytes of texts, with their zeros. */
	RECORD_WORDS_MAX = 512,
	RECORD_TITLE_MAX = 1024,
	RECORD_ROUTINE_MAX = 600 * 1024,
};

/* Ids of one student: in order, none twice. */
struct student_ids {
	int count;
	char id[STUDENT_IDS_MAX][RECORD_ID_MAX];
};

/* No journal of ours comes near so many rows. */
#define RECORD_ROW_MOST INT64_C(1000000000000000)

/* A computer the student practised on; its name is random. */
struct record_computer {
	char id[RECORD_ID_MAX];
	int64_t rows; /* the highest number of a row it has given away */
};

/* A routine that was practised; the text of its files, with the homework. */
struct record_routine {
	struct record_routine *next;
	uint64_t fingerprint; /* of the text, see base/fingerprint.h */
	const char *name;
	int edition;
	const char *text;
};

/* Turns planned and dropped of one unit in the work of a sitting. */
struct record_share {
	const char *stage, *unit;
	int planned, dropped;
};

struct record_turn {
	int number; /* in the sitting */
	int64_t row;
	enum block_kind kind;
	const char *stage;
	const char *unit; /* "" in the air */
	int round, pulses;
	int bows_asked, bows_done;
	bool first_go;
	int resets, dropouts;
	int start_ms;	     /* from the first sound */
	int64_t slide_um;    /* micrometres along the string */
	struct moment ended; /* when it was over */
	enum mark mark;
	int64_t mark_row; /* 0: never marked; mark is none then */
	int mark_ms;
};

struct record_value {
	char name[RECORD_NAME_MAX];
	double value;
};

/* What was heard of one turn by one method. */
struct record_measure {
	int turn; /* its number; there is such a turn */
	int method;
	int64_t row;
	int values;
	struct record_value *value;
};

struct record_note {
	struct record_note *next;
	int computer; /* index */
	int64_t row;
	struct moment at;
	int day;
	enum note_kind kind;
	int finger; /* 1..4 for the skin of one finger, else 0 */
	const char *words;
};

struct record_sitting {
	struct record_sitting *next;
	int computer; /* index */
	int64_t row;
	struct moment began;
	int day; /* practice day */
	const struct record_routine *routine;
	const char *work_stage, *asked_stage; /* "" when unknown */
	const char *instrument;		      /* "" when unknown */
	int marking;			      /* enum marking of the plan */
	int cap_ms, planned_ms;
	int length_ms;
	enum ended how; /* ENDED_UNDER_WAY: never said to end */
	struct moment ended;
	int64_t ended_row; /* 0: never said to end */
	int shares;
	struct record_share *share;
	int turns; /* numbers rise */
	struct record_turn *turn;
	int measures;
	struct record_measure *measure;
	struct record_note *note; /* of this sitting */
};

struct record {
	char student[RECORD_ID_MAX];	    /* random, made once */
	struct student_ids also;	    /* who was said to be the same */
	char initials[RECORD_INITIALS_MAX]; /* "" when not told */
	struct moment given;		    /* when it was written */
	int since; /* first practice day in it, -1: from the beginning */
	int computers;
	struct record_computer *computer;
	int routines;
	struct record_routine *routine;
	int sittings;
	struct record_sitting *sitting;
	int64_t turns;
	int notes;		  /* all, those of sittings too */
	struct record_note *note; /* outside of any sitting */
	struct arena arena;
};

/* What did not go into a record, because no record can hold it. */
struct record_left {
	int sittings; /* with dates or numbers that cannot be */
	int notes;
};

/* The words of a record, and of tables, for a block and the end of a session. */
const char *record_block_word(enum block_kind kind);
const char *record_how_word(enum ended how);

/* Whether a text is a random name: 32 digits 0-9, a-f. */
bool record_id_good(const char *id);

/*
 * Whether a sitting, a note and a routine keep the bounds of a record, so that
 * what is written of them is read again.
 */
bool record_sitting_good(
    const struct record *r, const struct record_sitting *s);
bool record_note_good(const struct record *r, const struct record_note *n);
bool record_routine_good(const struct record_routine *m);

/*
 * Leaves out the sittings and notes whose number of a row, or of one of their
 * turns, came before: a damaged journal may tell the same twice.  They are added
 * to what is left out.  False when there is no memory.
 */
bool record_leave_twice(struct record *r, struct record_left *left);

/* Whether there is a computer with this id. */
bool record_has_computer(const struct record *r, const char *id);

/* The routine with this fingerprint, or NULL. */
const struct record_routine *record_routine_of(
    const struct record *r, uint64_t fingerprint);

/* Frees what it holds; the struct itself is the caller's. */
void record_done(struct record *r);

#endif
