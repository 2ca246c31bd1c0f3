/*
 * record_query.h - a question to a journal, asked for many keys
 *
 *	struct query q = query_of(d, "SELECT ... WHERE sitting = ?1");
 *	query_bind(&q, key);
 *	while (query_next(&q))
 *		... query_whole(&q, 0) ...
 *	good = query_done(&q);
 *
 * What went wrong on the way is told by query_done.
 */
#ifndef EVENHAND_WORLD_RECORD_QUERY_H
#define EVENHAND_WORLD_RECORD_QUERY_H

#include "evenhand/record/record.h"
#include "journal_database.h"

struct query {
	sqlite3_stmt *st; /* NULL: it could not be prepared */
	bool bad;
};

struct query query_of(struct database *d, const char *sql);

/* Begins anew, with a number for ?1. */
void query_bind(struct query *q, int64_t key);

/* The next row; false behind the last or on an error. */
bool query_next(struct query *q);

/* Values for ?1, ?2 and so on of one that is to begin anew. */
void query_again(struct query *q);
void query_put(struct query *q, int at, int64_t number);
void query_put_text(struct query *q, int at, const char *text); /* borrowed */
void query_put_real(struct query *q, int at, double number);

enum query_end { QUERY_GOOD, QUERY_CLASH, QUERY_BAD };

/* Runs one that gives no rows; QUERY_CLASH: what must be alone is there. */
enum query_end query_run(struct query *q);

int64_t query_whole(const struct query *q, int column);
/* Beyond an int: its nearest end, which no record holds. */
int query_int(const struct query *q, int column);
/* Outside of bounds: the upper one plus 1. */
int64_t query_within(
    const struct query *q, int column, int64_t least, int64_t most);
double query_real(const struct query *q, int column);
const char *query_text(const struct query *q, int column); /* "" for NULL */

/* Frees it; false when anything went wrong. */
bool query_done(struct query *q);

/* The ids of the student whose journal it is; none when it is damaged. */
void query_ids(struct database *d, struct student_ids *ids);

/* The one number a question gives, as an int; -1 on an error. */
int query_count(struct database *d, const char *sql);

#endif
