/*
 * reader.h - what the parts of reading a record share
 *
 * Each value is read by a function that names its key, holds it against its
 * bounds and adds a fault with its place when it does not keep them; *out is
 * then left as it was.  All return false with a fault.
 */
#ifndef EVENHAND_RECORD_READER_H
#define EVENHAND_RECORD_READER_H

#include "evenhand/record/read.h"

/* Micrometres; no turn of ours comes near so many. */
#define SLIDE_MOST INT64_C(1000000000000)
#define RECORD_REAL_MOST 1e12 /* a measure is less, with or without a minus */

enum {
	MS_MOST = 1000000000,
	NUMBER_MOST = 100000,
	SECONDS_MOST = 10000000, /* between a sitting and its turns */
	DAYS_APART_MOST = 31,	 /* between a time and its practice day */
	OFFSET_MOST = 18 * 3600, /* of a clock from UTC */
	RECORD_BOWS_MOST = 1000, /* of a turn */
	RECORD_EDITION_MOST = 1000000,
	RECORD_FINGERPRINT = 16, /* digits */
};

/* A row as it must be told from all others of its computer. */
struct row_place {
	int computer;
	int kind; /* sittings, turns and notes are counted apart */
	int64_t row;
	int line;
};

enum { ROWS_OF_SITTINGS, ROWS_OF_TURNS, ROWS_OF_NOTES };

/* --- faults --- */

bool record_fault(
    struct record_reader *rd, const struct node *n, struct message m);
bool record_no_memory(struct record_reader *rd);
int record_faults(const struct record_reader *rd);

/* --- record_keys.c: what stands in a map --- */

/*
 * Whether a node is a map that holds only these keys, each once, and all of
 * those that must be there: the first ones.  name is what it stands under.
 */
struct map_keys {
	const char *name;
	int needed;
	const char *const *key; /* ended by NULL */
};
bool record_map(struct record_reader *rd, const struct node *n,
    const struct map_keys *keys);

/* Whether a node is a list; its length, at most most. */
bool record_list(struct record_reader *rd, const struct node *n,
    const char *name, int most, int *length);

/* --- record_values.c --- */

struct whole {
	const char *key;
	int64_t least, most;
};
bool record_whole(struct record_reader *rd, const struct node *n,
    struct whole w, int64_t *out);
bool record_int(
    struct record_reader *rd, const struct node *n, struct whole w, int *out);
bool record_row(struct record_reader *rd, const struct node *n, int64_t *out);
bool record_real(struct record_reader *rd, const struct node *n, double *out);
bool record_yes(
    struct record_reader *rd, const struct node *n, const char *key, bool *out);

/* One of some words, ended by NULL: its index. */
bool record_choice(struct record_reader *rd, const struct node *n,
    const char *key, const char *const *words, int *out);

/* Hexadecimal digits, so many and no other sign; borrowed. */
bool record_hex(struct record_reader *rd, const struct node *n, const char *key,
    int digits, const char **out);

bool record_day(
    struct record_reader *rd, const struct node *n, const char *key, int *out);
bool record_moment(struct record_reader *rd, const struct node *n,
    const char *key, struct moment *out);

/* A practice day that can be that of a moment. */
bool record_day_of(
    struct record_reader *rd, const struct node *n, struct moment at, int *out);

/* --- record_texts.c: kept in the record --- */

/* Text of at most most bytes without control characters. */
bool record_text(struct record_reader *rd, const struct node *n,
    const char *key, int most, const char **out);

/* The same, of many lines. */
bool record_lines(struct record_reader *rd, const struct node *n,
    const char *key, int most, const char **out);

/* The name of a stage, of a unit; "" where none is allowed. */
bool record_stage(struct record_reader *rd, const struct node *n, bool none,
    const char **out);
bool record_unit(struct record_reader *rd, const struct node *n, bool none,
    const char **out);

/* Whether they may be names; whether nothing of it must not be shown. */
bool record_stage_good(const char *s, bool none);
bool record_unit_good(const char *s, bool none);
bool record_measure_name_good(const char *s);
bool record_text_clean(const char *s, bool lines);

/* --- entries --- */

/* The number of a digest of 16 hexadecimal digits. */
uint64_t record_fingerprint(const char *digits);

/* Which computer, counted from 1, that the record has. */
bool record_computer_index(
    struct record_reader *rd, const struct node *n, int *out);

bool record_read_sitting(struct record_reader *rd, const struct node *n);

/* A note of a sitting, or of none. */
struct record_note *record_read_note(struct record_reader *rd,
    const struct node *n, const struct record_sitting *of);

/* The turns and measures of a sitting. */
bool record_read_turns(struct record_reader *rd, const struct node *list,
    struct record_sitting *s);
bool record_read_measures(struct record_reader *rd, const struct node *list,
    struct record_sitting *s);

/* Whether a row is within those its computer has. */
bool record_row_within(
    struct record_reader *rd, const struct node *n, int computer, int64_t row);

/* The same; and remembers it, to be told apart at the end. */
bool record_count_row(struct record_reader *rd, const struct node *n, int kind,
    int computer, int64_t row);

/* No two rows of a kind on one computer have one number. */
bool record_rows_apart(struct record_reader *rd);

/* --- record_good.c: what reading and taking hold a sitting to --- */

/* Whether the stage and the unit of a share came before it. */
bool record_share_before(const struct record_sitting *s, int at);

/* The turn with this number, or NULL. */
const struct record_turn *record_turn_numbered(
    const struct record_sitting *s, int number);

/* Whether a measure's turn and method are behind those of the one before. */
bool record_measure_behind(
    const struct record_sitting *s, const struct record_measure *m);

#endif
