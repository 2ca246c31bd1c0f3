/*
 * gather_parts.h - what the parts of merging a record share
 *
 * All of it happens in one transaction.  Each function returns false when the
 * database is at fault, or memory is short; the transaction is then taken back.
 */
#ifndef EVENHAND_WORLD_GATHER_PARTS_H
#define EVENHAND_WORLD_GATHER_PARTS_H

#include "evenhand/base/text.h"
#include "evenhand/world/gather.h"
#include "record_query.h"

/* The questions and orders of one merge, made ready once. */
enum gather_query {
	/* gather.c */
	ADD_ROUTINE,
	FIND_ROUTINE,
	/* gather_sitting.c */
	FIND_ORIGIN_KEY,
	ADD_ORIGIN,
	SITTING_AT,
	SITTINGS_NUMBERED,
	ADD_SITTING,
	SET_END,
	SET_LENGTH,
	SET_ORIGIN_OF_SITTING,
	SET_ORIGIN_OF_TURNS,
	SHARE_AT,
	ADD_SHARE,
	SET_SHARE,
	/* gather_turns.c */
	TURNS_OF,
	ADD_TURN,
	SET_TURN,
	SET_TURN_MARK,
	/* gather_measures.c */
	MEASURES_OF,
	DROP_MEASURES,
	DROP_OLD_MEASURES,
	ADD_MEASURE,
	/* gather_notes.c */
	NOTE_AT,
	NOTES_NUMBERED,
	ADD_NOTE,
	SET_NOTE_SITTING,
	GATHER_QUERIES
};

extern const char *const gather_sql[GATHER_QUERIES];

/* One merge. */
struct gathering {
	struct database *d;
	const struct record *r;
	struct gathered *news;
	struct query query[GATHER_QUERIES];
	int64_t *computer; /* keys of origins here, as r->computer */
	int64_t *routine;  /* keys of routines here, in their order */
	int *day;	   /* practice days whose roll-ups are no longer true */
	int days, day_room;
	char own[RECORD_ID_MAX]; /* the name of this computer */
	int64_t own_rows;	 /* its last row before the merge */
	bool own_apart;		 /* somebody else writes under it, too */
	bool changed;
	bool no_memory;	      /* that, and not the database, is at fault */
	struct arena arena;   /* for the merge */
	struct arena scratch; /* for a sitting */
};

/* A query, reset and ready for its values. */
struct query *gather_query_of(struct gathering *g, enum gather_query q);

/* The one key that a question with its values gives; false: it gives none. */
bool gather_key(struct query *q, int64_t *key);

/*
 * To be told of each row that is added: one of this computer's own that it has
 * not and that is no later than its last was written by somebody else.
 */
void gather_added(struct gathering *g, int computer, int64_t row);

/* Remembers that the roll-ups of a day must be counted anew. */
bool gather_day(struct gathering *g, int day);

/* --- gather_sitting.c, with gather_head.c --- */

/* A sitting of the journal. */
struct local {
	int64_t key, origin;
	int day;
	bool new;
	int64_t ended_row; /* the rest is not set in a new one */
	int how, length_ms;
	struct moment ended;
};

bool gather_sitting(struct gathering *g, const struct record_sitting *s);

/*
 * The sitting that is the same as one of a record; l->key is 0 when there is
 * none, and then *taken says that another has its number.
 */
bool gather_find_sitting(struct gathering *g, const struct record_sitting *s,
    struct local *l, bool *taken);

/*
 * Gives a sitting an origin of its own, made of its content, because another
 * has its numbers.
 */
bool gather_set_apart(
    struct gathering *g, const struct record_sitting *s, struct local *l);

/* --- gather_apart.c: names made of content --- */

/* What a sitting, or a note, began with, told in one text. */
enum { APART_TEXT = 1024 };
void apart_sitting_text(struct text *t, const struct record_sitting *s);
void apart_note_text(struct text *t, const struct record_note *n);

/* The name for a row of an origin with this content. */
void apart_id(char id[RECORD_ID_MAX], const char *origin, int64_t row,
    const char *content);

/* Whether it looks like one. */
bool apart_is(const char *id);

/* The key of an origin, made when it is missing. */
bool gather_origin(
    struct gathering *g, const char *id, int64_t rows, int64_t *key);

/* --- gather_find.c: which row of a journal is the one in a record --- */

/* Sittings, or notes. */
struct rows_like {
	enum gather_query at;	    /* the one of origin ?1 with number ?2 */
	enum gather_query numbered; /* all with number ?1 */
	int origin;		    /* column with the name of its origin */
	/* What a row began with, as apart_..._text tells it. */
	void (*content)(struct text *t, const struct query *q);
	/* Reads what is wanted of a row beside its key, which is column 0. */
	void (*take)(void *into, const struct query *q);
};

/* A row of a record: name of its origin, number, what it began with. */
struct row_wanted {
	const char *id;
	int64_t number;
	const char *content;
};

struct row_found {
	void *into;
	int64_t key; /* 0 there is none */
	bool taken;  /* there is one with its number */
};

/*
 * The row that is the same as one of a record: by its number, or told apart
 * before, here or there.  All of *found but into is 0 before.
 */
bool gather_find(struct gathering *g, const struct rows_like *kind,
    const struct row_wanted *row, struct row_found *found);

/* --- the others --- */

/* *more is set when anything came that was not here. */
bool gather_turns(struct gathering *g, const struct record_sitting *s,
    struct local *l, bool *more);
bool gather_measures(struct gathering *g, const struct record_measure *m,
    const struct record_turn *turn, int64_t turn_key, bool new, bool *more);
bool gather_note(
    struct gathering *g, const struct record_note *n, int64_t sitting);

/* Puts all keys in the order of time, and counts the roll-ups anew. */
bool gather_order(struct gathering *g);

#endif
