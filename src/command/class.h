/*
 * class.h - parts of `evenhand class`
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_CLASS_H
#define EVENHAND_COMMAND_CLASS_H

#include "evenhand/base/date.h"
#include "evenhand/screen/class_page.h"
#include "evenhand/world/class_folder.h"
#include "evenhand/world/terminal.h"

enum { CLASS_FILE_BYTES = 256 };

/* What else lies in the folder of a class. */
struct class_lies {
	int records;  /* that were not gathered before */
	int journals; /* of students, where they do not belong */
	int others;   /* no records */
	char other[CLASS_FILE_BYTES]; /* the first of these, cleaned */
};

/* A class that was read, in the order in which the teacher is needed. */
struct class_seen {
	struct class_folder *folder;
	struct moment now;
	int today; /* practice day */
	struct class_lies lies;
	struct class_list list;
	struct class_row *row;
	struct class_row **order;
};

/*
 * Reads a class as of a moment: new record files in the folder are gathered
 * first.  False when there is nothing to be shown: said, *status is set.
 * class_seen_done in any case.
 */
bool class_see(
    struct class_seen *s, const char *folder, struct moment now, int *status);

void class_seen_done(struct class_seen *s);

/* Why a class has no students, and what to do. */
struct message class_empty(const struct class_seen *s, const char *folder);

/*
 * Gathers the record files that lie in the folder itself and were not yet; what
 * is wrong with one is said.
 */
void class_gather(const char *folder, struct class_lies *lies);

/* --- class_csv.c, class_json.c: false when it could not be written; said --- */

bool class_print_csv(const struct class_seen *s);
bool class_print_json(const struct class_seen *s);

/* --- class_screen.c --- */

/* The class on a full screen.  False: there is none; lines are the way. */
bool class_show(const struct class_seen *s, enum terminal_colours colours,
    bool ascii, int *status);

/* --- class_lesson.c --- */

/* What a lesson page or sheet of one student is made from. */
struct class_lesson {
	struct routine *routine; /* NULL: not to be had */
	struct history history;
	struct plan plan;
};

/* False: the journal or its routine cannot be read; *f says which, or M_NONE. */
bool class_lesson_of(struct class_lesson *l, const struct class_seen *s,
    const char *id, struct fault *f);
void class_lesson_done(struct class_lesson *l);

#endif
