/*
 * class_folder.h - a teacher's class: a folder with a journal for each student
 *
 *	DIR/students/0123456789abcdef0123456789abcdef.sqlite	a journal each
 *	DIR/students/ID.joined		whose journal an id was joined with
 *	DIR/class.sqlite	a row each: what one line of the class is made of
 *
 * The rows are made from the journals, so that a class of a thousand is listed
 * without opening one of them.  A row remembers the size and the time of its
 * journal; one whose journal is another now, or that an older evenhand made,
 * is made anew when the class is looked at.  So class.sqlite can be lost and
 * costs no more than initials and what was gathered, which the next record
 * brings back.
 *
 * Files are for their owner alone (0600, folders 0700).  A student's id is the
 * random one of the journal, 32 hexadecimal digits, and nothing else from a
 * record is ever part of a path.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_CLASS_FOLDER_H
#define EVENHAND_WORLD_CLASS_FOLDER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "evenhand/base/fault.h"
#include "evenhand/coach/student.h"
#include "evenhand/record/record.h"
#include "evenhand/world/gather.h"

struct class_folder;

enum {
	CLASS_PATH_BYTES = 4200,
	CLASS_STUDENTS_MAX = 10000, /* of one folder; more are not listed */
};

/*
 * Whether a class can be there: false with a fault for no name, for a file, and
 * for what cannot be looked at.
 */
bool class_may_be(const char *folder, struct fault *f);

/*
 * Opens a class to gather into it: the folder, students/ and class.sqlite are
 * made when they are missing.  NULL with a fault.
 */
struct class_folder *class_open(const char *folder, struct fault *f);

/*
 * Opens a class to be looked at: nothing is made where there is no class yet
 * (then it has no students), and what cannot be written is kept in memory
 * alone.  NULL with a fault when there is no such folder.
 */
struct class_folder *class_look(const char *folder, struct fault *f);

void class_close(struct class_folder *c); /* NULL allowed */

/*
 * The path of a student's journal, there or not; false when that is no id
 * (record_id_good) or the path is too long.
 */
bool class_journal(
    const struct class_folder *c, const char *id, char *path, size_t size);

/*
 * What a student practised, and in which routine last: as a plan needs it.  The
 * routine is NULL when its text is none that this evenhand can read.  False with
 * a fault when the journal cannot be read.  Both are the caller's to free.
 */
bool class_past(const struct class_folder *c, const char *id, int today,
    struct routine **r, struct history *h, struct fault *f);

/*
 * Makes the row of a student from the journal.  To be called whenever
 * something was merged into that, when it is closed again.  Of the record, NULL
 * for none, counts when it was given and the initials (cleaned and cut): the
 * newest says up to which day is known what was practised, and the newest with
 * initials who it is, whatever the order in which they come; of two of the same
 * second the greater initials.  One of a day that is still to come gives way to
 * any other.  False with a fault when the row cannot be kept; the journal is
 * whole all the same, and the class makes its row later.
 */
bool class_keep(struct class_folder *c, const char *id, const struct record *r,
    struct fault *f);

/*
 * Merges a record into the journal of its student, or of one who was said to be
 * the same, and makes the row anew, as gather_into and class_keep do.
 */
bool class_merge(struct class_folder *c, const struct record *r,
    const struct join_asked *asked, struct gathered *news, struct fault *f);

/*
 * Makes one of the students of the class whose ids begin as was said, if they
 * are two or more: one journal, one line, under the least of their ids.  *joined
 * says how many ids came together that were not.  False with a fault: one of the
 * beginnings is that of several, or, where all must be there, of none.
 */
bool class_join(struct class_folder *c, const struct join_asked *asked,
    bool all, int *joined, struct fault *f);

/* A record file that was gathered. */
struct class_file {
	const char *name; /* as found in the folder, without any path */
	int64_t size;
	int64_t time_ns; /* when it was last changed */
	uint64_t hash;	 /* fingerprint_add over all its bytes; 0 not known */
};

/*
 * Whether such a file was gathered into this class already: the same name,
 * size and time, or, when the hash is known, any file with that size and hash.
 */
bool class_file_known(
    const struct class_folder *c, const struct class_file *file);

/* Remembers a file as gathered.  What cannot be kept is gathered again. */
void class_file_keep(struct class_folder *c, const struct class_file *file);

/* All students of a class, by id. */
struct class_list {
	int count;
	struct student *student;
	int broken;   /* whose journal cannot be read: student.unread */
	int left_out; /* beyond CLASS_STUDENTS_MAX */
};

/*
 * Reads all rows, after those that are no longer true were made anew; today is
 * the practice day.  Where there is much to be made, progress (may be NULL) is
 * told how far it is.  False with a fault; class_list_done in any case.
 */
bool class_students(struct class_folder *c, struct class_list *list, int today,
    void (*progress)(void *context, int done, int all), void *context,
    struct fault *f);

void class_list_done(struct class_list *list);

#endif
