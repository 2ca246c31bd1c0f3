/*
 * class_columns.c - the facts of a student as columns of a table
 *
 * One table here says which column is which field; the SQL and what goes there
 * and back is made from it.  Lists of numbers are text with spaces between them.
 */
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include "class_parts.h"
#include "evenhand/base/fingerprint.h"
#include "evenhand/base/text.h"

enum { LIST_BYTES = 1024 };

enum kind { NUMBER, TRUTH, WORDS, DAYS, SIGNS };

struct column {
	const char *name;
	enum kind kind;
	size_t offset, size;
};

#define FIELD(kind, field) \
	{ \
#field, kind, offsetof(struct student, field), \
		    sizeof(((struct student *)0)->field) \
	}

static const struct column columns[] = {
	FIELD(DAYS, day),
	FIELD(SIGNS, signs),
	FIELD(TRUTH, unread),
	FIELD(NUMBER, first),
	FIELD(NUMBER, last),
	FIELD(NUMBER, asked),
	FIELD(WORDS, question),
	FIELD(TRUTH, ask_first),
	FIELD(TRUTH, ahead),
	FIELD(NUMBER, made),
	FIELD(NUMBER, guard_day),
	FIELD(NUMBER, signs_needed),
	FIELD(TRUTH, known),
	FIELD(NUMBER, days_a_week),
	FIELD(NUMBER, stages),
	FIELD(NUMBER, stage),
	FIELD(WORDS, title),
	FIELD(TRUTH, back),
	FIELD(WORDS, asked_title),
	FIELD(NUMBER, on_days),
	FIELD(NUMBER, usual_days),
	FIELD(TRUTH, own_choice),
	FIELD(TRUTH, in_the_air),
	FIELD(NUMBER, missing),
	FIELD(NUMBER, take),
	FIELD(WORDS, unit),
	FIELD(NUMBER, have),
	FIELD(NUMBER, wanted),
	FIELD(NUMBER, held_since),
	FIELD(NUMBER, held_days),
};

enum { COLUMNS = sizeof(columns) / sizeof(columns[0]) };

_Static_assert(sizeof(enum missing) == sizeof(int), "an enum as a number");
_Static_assert(sizeof(enum take) == sizeof(int), "an enum as a number");

int columns_count(void)
{
	return COLUMNS;
}

void columns_declare(struct text *sql)
{
	for (int i = 0; i < COLUMNS; i++)
		text_format(sql, ", %s %s NOT NULL", columns[i].name,
		    columns[i].kind == NUMBER || columns[i].kind == TRUTH
			? "INTEGER"
			: "TEXT");
}

/* --- lists of numbers --- */

static void days_text(struct text *t, const struct student *s)
{
	for (int i = 0; i < s->days; i++)
		text_format(t, "%s%d %d", i > 0 ? " " : "", s->day[i].day,
		    s->day[i].ms);
}

static void signs_text(struct text *t, const struct student *s)
{
	for (int i = 0; i < GUARD_DAYS; i++)
		text_format(t, "%s%d", i > 0 ? " " : "", s->signs[i]);
}

/* The next number of a list; false at its end. */
static bool next_number(const char **list, int *number)
{
	char *end;
	long value = strtol(*list, &end, 10);

	if (end == *list || value < INT32_MIN || value > INT32_MAX)
		return false;
	*list = end;
	*number = (int)value;
	return true;
}

static void days_read(const char *list, struct student *s)
{
	struct student_day d;

	while (s->days < STUDENT_DAYS && next_number(&list, &d.day) &&
	    next_number(&list, &d.ms))
		s->day[s->days++] = d;
}

static void signs_read(const char *list, struct student *s)
{
	for (int i = 0; i < GUARD_DAYS && next_number(&list, &s->signs[i]); i++)
		;
}

/* --- to the table --- */

static void bind_list(
    sqlite3_stmt *st, int at, enum kind kind, const struct student *s)
{
	char list[LIST_BYTES];
	struct text t = text_in(list, sizeof(list));

	if (kind == DAYS)
		days_text(&t, s);
	else
		signs_text(&t, s);
	rows_bind_text(st, at, list);
}

static void bind_column(
    sqlite3_stmt *st, int at, const struct column *c, const struct student *s)
{
	const char *field = (const char *)s + c->offset;

	switch (c->kind) {
	case NUMBER:
		sqlite3_bind_int(st, at, *(const int *)field);
		break;
	case TRUTH:
		sqlite3_bind_int(st, at, *(const bool *)field);
		break;
	case WORDS:
		rows_bind_text(st, at, field);
		break;
	case DAYS:
	case SIGNS:
		bind_list(st, at, c->kind, s);
		break;
	}
}

void columns_bind(sqlite3_stmt *st, int from, const struct student *s)
{
	for (int i = 0; i < COLUMNS; i++)
		bind_column(st, from + i, &columns[i], s);
}

/* --- what they hold in one number --- */

/* Words as they will be read, not as they may stand in the student. */
static uint64_t seal_words(uint64_t seal, const struct column *c, const char *s)
{
	char clean[STUDENT_WORDS_BYTES];

	_Static_assert((int)STUDENT_WORDS_BYTES >= STUDENT_TITLE_BYTES &&
		(int)STUDENT_WORDS_BYTES >= (int)UNIT_NAME_MAX,
	    "no words are longer");
	text_clean(clean, c->size, s);
	return fingerprint_add(seal, clean, strlen(clean) + 1);
}

uint64_t columns_seal(const struct student *s)
{
	uint64_t seal = FINGERPRINT_START;

	for (int i = 0; i < COLUMNS; i++) {
		const struct column *c = &columns[i];
		const char *field = (const char *)s + c->offset;

		if (c->kind == WORDS)
			seal = seal_words(seal, c, field);
		else if (c->kind == DAYS)
			seal = fingerprint_add(
			    seal, field, (size_t)s->days * sizeof(s->day[0]));
		else
			seal = fingerprint_add(seal, field, c->size);
	}
	return seal;
}

/* --- and back --- */

static void read_column(
    sqlite3_stmt *st, int at, const struct column *c, struct student *s)
{
	char *field = (char *)s + c->offset;
	const char *text;

	if (c->kind == NUMBER) {
		*(int *)field = sqlite3_column_int(st, at);
		return;
	}
	if (c->kind == TRUTH) {
		*(bool *)field = sqlite3_column_int(st, at) != 0;
		return;
	}
	text = (const char *)sqlite3_column_text(st, at);
	if (!text)
		return;
	if (c->kind == WORDS)
		text_clean(field, c->size, text);
	else if (c->kind == DAYS)
		days_read(text, s);
	else
		signs_read(text, s);
}

void columns_read(sqlite3_stmt *st, int from, struct student *s)
{
	for (int i = 0; i < COLUMNS; i++)
		read_column(st, from + i, &columns[i], s);
}
