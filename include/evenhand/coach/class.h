/*
 * class.h - all students of a teacher, in the order in which they need one
 *
 *	W. P.	pain	pain on 2026-03-08: wrist
 *	K. O.	stuck	21 practice days, 9 are usual: "A tone apart"
 *	B. L.	fine	"A tone apart": 3 of 5 practice days
 *
 * Who comes first is in student.h.  Pure; any thread.
 */
#ifndef EVENHAND_COACH_CLASS_H
#define EVENHAND_COACH_CLASS_H

#include "evenhand/base/text.h"
#include "evenhand/coach/student.h"

enum { CLASS_NAME_BYTES = 48, CLASS_TOLD_MAX = 5 };

/* A student as a line of the class. */
struct class_row {
	const struct student *student;
	struct student_state state;
	char name[CLASS_NAME_BYTES]; /* initials; of two that are alike, more */
};

/*
 * Fills a row for each student, and the order in which a teacher is needed:
 * both have room for count.
 */
void class_rows(struct class_row *row, struct class_row **order,
    const struct student *student, int count, int today);

/* All reasons of a row in one sentence without its full stop. */
void class_why(struct text *out, const struct class_row *row);

/*
 * What else there is to say of one: the question, what was practised, the
 * stage, the record.  How many sentences, at most CLASS_TOLD_MAX.
 */
int class_tell(const struct class_row *row, int today, struct message *out);

/* How many there are of each word: "2 pain, 3 stuck.", or "" for nobody. */
void class_counts(struct text *out, struct class_row *const *order, int count);

/* How many there are before these: "Class on ...: 25 students. 2 pain." */
void class_sums(
    struct text *out, struct class_row *const *order, int count, int today);

#endif
