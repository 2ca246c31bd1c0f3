/*
 * record_query.c - a question to a journal, asked for many keys
 */
#include "record_query.h"

#include <limits.h>

#include "evenhand/record/join.h"

struct query query_of(struct database *d, const char *sql)
{
	struct query q = { 0 };

	q.bad = sqlite3_prepare_v3(d->handle, sql, -1,
		    SQLITE_PREPARE_PERSISTENT, &q.st, NULL) != SQLITE_OK;
	return q;
}

void query_again(struct query *q)
{
	if (q->st != NULL)
		sqlite3_reset(q->st);
}

void query_put(struct query *q, int at, int64_t number)
{
	if (q->st != NULL)
		q->bad = sqlite3_bind_int64(q->st, at, number) != SQLITE_OK ||
		    q->bad;
}

void query_put_text(struct query *q, int at, const char *text)
{
	if (q->st != NULL)
		q->bad = sqlite3_bind_text(
			     q->st, at, text, -1, SQLITE_STATIC) != SQLITE_OK ||
		    q->bad;
}

void query_put_real(struct query *q, int at, double number)
{
	if (q->st != NULL)
		q->bad = sqlite3_bind_double(q->st, at, number) != SQLITE_OK ||
		    q->bad;
}

void query_bind(struct query *q, int64_t key)
{
	query_again(q);
	query_put(q, 1, key);
}

bool query_next(struct query *q)
{
	int rc = q->st != NULL ? sqlite3_step(q->st) : SQLITE_ERROR;

	if (rc == SQLITE_ROW)
		return true;
	q->bad = q->bad || rc != SQLITE_DONE;
	return false;
}

enum query_end query_run(struct query *q)
{
	int rc = q->st != NULL ? sqlite3_step(q->st) : SQLITE_ERROR;

	query_again(q);
	if (rc == SQLITE_DONE)
		return QUERY_GOOD;
	if ((rc & 0xff) == SQLITE_CONSTRAINT)
		return QUERY_CLASH;
	q->bad = true;
	return QUERY_BAD;
}

int64_t query_whole(const struct query *q, int column)
{
	return sqlite3_column_int64(q->st, column);
}

int query_int(const struct query *q, int column)
{
	int64_t number = query_whole(q, column);

	if (number > INT_MAX)
		return INT_MAX;
	return number < INT_MIN ? INT_MIN : (int)number;
}

int64_t query_within(
    const struct query *q, int column, int64_t least, int64_t most)
{
	int64_t number = query_whole(q, column);

	return number < least || number > most ? most + (most < INT_MAX)
					       : number;
}

double query_real(const struct query *q, int column)
{
	return sqlite3_column_double(q->st, column);
}

const char *query_text(const struct query *q, int column)
{
	const char *text = (const char *)sqlite3_column_text(q->st, column);

	return text != NULL ? text : "";
}

bool query_done(struct query *q)
{
	bool good = !q->bad;

	sqlite3_finalize(q->st);
	q->st = NULL;
	return good;
}

void query_ids(struct database *d, struct student_ids *ids)
{
	char words[IDS_TEXT];

	database_text(d, "SELECT student FROM about", words, sizeof(words));
	ids_told(words, ids);
}

int query_count(struct database *d, const char *sql)
{
	struct query q = query_of(d, sql);
	int number = query_next(&q) ? query_int(&q, 0) : -1;

	return query_done(&q) ? number : -1;
}
