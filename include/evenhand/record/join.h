/*
 * join.h - one student under several ids
 *
 * A journal gets its id when it is made, so who began on two computers has two.
 * Nobody but a person knows that they are one: so a record is taken by itself
 * where all its ids are known already, or where nothing was practised yet, and
 * else only when it was said whose ids are one.
 *
 *	known here ∪ those of the record, if they may come together
 *
 * Ids are a set: twice is once, and neither order nor grouping matters.
 * Pure.  Any thread.
 */
#ifndef EVENHAND_RECORD_JOIN_H
#define EVENHAND_RECORD_JOIN_H

#include <stdbool.h>

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"
#include "evenhand/record/record.h"

enum {
	JOIN_DIGITS_LEAST = 4, /* of an id that is named by its beginning */
	JOIN_DIGITS_SHOWN = 8,
	IDS_TEXT = STUDENT_IDS_MAX * RECORD_ID_MAX,
};

/* What was said to be one student: beginnings of ids. */
struct join_asked {
	int count; /* 0: nothing */
	char start[STUDENT_IDS_MAX][RECORD_ID_MAX];
};

/* "4f2a77e0+91bc0d12", two or more; false when that is nothing of the kind. */
bool join_read(const char *words, struct join_asked *a);

/* Whether an id begins as one of those that were said. */
bool join_names(const struct join_asked *a, const char *id);

/* The digits of an id, cut where words are longer than one. */
void id_copy(char to[RECORD_ID_MAX], const char *words);

/* Adds an id in its place; false when there are too many. */
bool ids_add(struct student_ids *ids, const char *id);
bool ids_have(const struct student_ids *ids, const char *id);

/* All ids that a record is of. */
void ids_of_record(struct student_ids *ids, const struct record *r);

/* Whole ids with + between, and back; false, and none, when it is not that. */
void ids_tell(struct text *t, const struct student_ids *ids);
bool ids_told(const char *words, struct student_ids *ids);

enum join_answer {
	JOIN_KNOWN,    /* all ids are known here */
	JOIN_TOGETHER, /* new here, and may come: both holds all of them */
	JOIN_STRANGER, /* none is known here */
	JOIN_MORE,     /* some are, and one more would come along */
	JOIN_MANY,     /* more than one student can have */
};

/*
 * Whether a record of these ids may come where those are known; none are where
 * nothing was practised yet.
 */
enum join_answer join_answer(const struct student_ids *known,
    const struct student_ids *theirs, const struct join_asked *asked,
    struct student_ids *both);

/*
 * Why a record may not come: the sentence of an answer that is no, with what to
 * add where both are the same person.
 */
struct message join_refusal(enum join_answer why, const struct record *r,
    const struct student_ids *known, const struct student_ids *theirs);

#endif
