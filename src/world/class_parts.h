/*
 * class_parts.h - the open folder of a class, as its own files see it
 *
 *	class_folder.c	opening
 *	class_files.c	gathered files
 *	class_rows.c	rows of students in the database
 *	class_names.c	who they are
 *	class_columns.c	the facts of a student as columns of it
 *	class_list.c	which journals there are, and which rows are no longer true
 *	class_join.c	one line under several ids
 *	class_past.c	a row's facts out of a journal
 */
#ifndef EVENHAND_WORLD_CLASS_PARTS_H
#define EVENHAND_WORLD_CLASS_PARTS_H

#include "evenhand/base/text.h"
#include "evenhand/world/class_folder.h"
#include "journal_database.h"

#define CLASS_JOURNALS "students"
#define CLASS_ENDING ".sqlite"

struct class_folder {
	char folder[CLASS_PATH_BYTES];
	char path[CLASS_PATH_BYTES]; /* of class.sqlite */
	struct database base;
	bool under_way; /* a transaction of class_begin */
	bool made;	/* journals whose names are to be brought to the disk */
};

/* How a journal lay there when its row was made. */
struct class_stamp {
	int64_t size, time_ns;
};

/* Sets the fault that an error of class.sqlite is; false. */
bool class_failed(const struct class_folder *c, struct fault *f);

/*
 * Whether all that was looked up since class.sqlite was opened, or fed, was
 * found; false with the fault when the computer lacked something for it.
 */
bool class_sure(const struct class_folder *c, struct fault *f);

/*
 * What is kept between these two is one transaction.  Others who keep something
 * wait for it, so nothing that takes long may be done in it.
 */
void class_begin(struct class_folder *c);
void class_end(struct class_folder *c);

/* --- class_columns.c --- */

int columns_count(void);

/* Adds their names and kinds to the SQL that makes a table. */
void columns_declare(struct text *sql);

/* Binds them all to parameters from a number on. */
void columns_bind(sqlite3_stmt *st, int from, const struct student *s);

/* A number over what they hold, as it is once they were kept and read. */
uint64_t columns_seal(const struct student *s);

/* Reads them all from a row; s is all zero before. */
void columns_read(sqlite3_stmt *st, int from, struct student *s);

/* --- class_rows.c --- */

/* The version of tables and rules, as it stands in the file. */
int rows_version(void);

/* The tables, made when they are missing or of an older evenhand. */
bool rows_make(struct database *d);

/* Keeps all of a student but the initials and the day it was given. */
bool rows_keep(struct database *d, const struct student *s,
    const struct class_stamp *stamp);

/*
 * A statement, NULL when it cannot be made; a text copied into it (nothing
 * without a statement), the text of a column ("" for none, until the next step),
 * and a statement run to its end.
 */
sqlite3_stmt *rows_prepare(struct database *d, const char *sql);
void rows_bind_text(sqlite3_stmt *st, int at, const char *text);
const char *rows_text(sqlite3_stmt *st, int at);
bool rows_run(sqlite3_stmt *st);

/*
 * Calls back with every row in the order of ids; one that is not as it was kept
 * has a stamp that no journal has.  False when they cannot be read.
 */
bool rows_each(struct database *d,
    void (*each)(void *context, const struct student *s,
	const struct class_stamp *stamp),
    void *context);

/* --- class_names.c --- */

/* Who a record says it is. */
struct class_name {
	char initials[STUDENT_INITIALS_BYTES]; /* "": nothing of it */
	int64_t named; /* seconds, UTC: the record the initials are of */
	int given;     /* practice day of the newest record, -1 not known */
};

/*
 * Keeps who it is: whatever the order in which records come, the newest names
 * the student, and one of a day to come gives way to any other.
 */
bool rows_name(
    struct database *d, const char *id, const struct class_name *n, int today);

/* What is kept of who one id is becomes that of another, as rows_name does. */
bool rows_fold(struct database *d, const char *from, const char *to, int today);

/* --- class_join.c --- */

/* The id whose journal holds what is of an id: itself, where none was joined. */
void class_home(
    const struct class_folder *c, const char *id, char home[RECORD_ID_MAX]);

/*
 * The id whose journal a record belongs into, as class_home; ids that come
 * along with it are led there.  False with a fault when it is of two students
 * of the class.
 */
bool class_place(const struct class_folder *c, const struct record *r,
    const struct join_asked *asked, char home[RECORD_ID_MAX], struct fault *f);

/* --- class_list.c --- */

/*
 * How a journal lies there now.  False when it does not, or when it may be
 * changed just now: then the stamp is none that any journal has.
 */
bool class_stamp_of(const char *path, struct class_stamp *stamp);

/* --- class_past.c --- */

/*
 * Takes the facts out of a student's journal: unread when it cannot be read.
 * False with a fault: the computer lacked memory or files for it.
 */
bool class_take(const struct class_folder *c, const char *id, int today,
    struct student *s, struct fault *f);

#endif
