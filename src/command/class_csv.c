/*
 * class_csv.c - a class as a table
 *
 *	state,name,why,last_day,days_7,minutes_7,days_28,minutes_28,...
 *
 * What comes from a record and begins like a formula of a spreadsheet gets an
 * apostrophe before it, so that none is run when the table is opened there.
 */
#include <string.h>

#include "class.h"
#include "csv.h"

enum { WHY_BYTES = 1000, MS_THOUSANDTHS = 60 };

static void add_told(struct csv_row *r, const char *s)
{
	char bytes[CSV_FIELD_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	if (*s && strchr("=+-@", *s))
		text_add(&t, "'");
	text_add(&t, s);
	csv_text(r, bytes);
}

static void add_day(struct csv_row *r, int day)
{
	if (day < 0)
		csv_text(r, "");
	else
		csv_day(r, day);
}

/* Milliseconds are thousandths of a second: of a minute they are 60 times. */
static void add_minutes(struct csv_row *r, int64_t ms)
{
	csv_thousandths(r, (ms + MS_THOUSANDTHS / 2) / MS_THOUSANDTHS);
}

static void print_row(
    struct history_page *p, const struct class_row *row, int today)
{
	const struct student *s = row->student;
	const struct student_state *st = &row->state;
	char why[WHY_BYTES];
	struct text t = text_in(why, sizeof(why));
	struct csv_row r;

	class_why(&t, row);
	csv_begin(&r);
	csv_text(&r, message_sentence(student_word(st->order)));
	add_told(&r, row->name);
	add_told(&r, why);
	add_day(&r, s->unread ? -1 : s->last);
	csv_whole(&r, st->week_days);
	add_minutes(&r, st->week_ms);
	csv_whole(&r, st->month_days);
	add_minutes(&r, st->month_ms);
	csv_whole(&r, s->known ? s->stage + 1 : 0);
	add_told(&r, s->title);
	csv_whole(&r, s->on_days);
	csv_whole(&r, s->usual_days);
	add_told(&r, student_asks(s, today) ? s->question : "");
	add_day(&r, s->given);
	csv_text(&r, s->id);
	csv_end(&r, p);
}

bool class_print_csv(const struct class_seen *s)
{
	struct history_page page;

	page_begin(&page);
	page_line(&page,
	    "state,name,why,last_day,days_7,minutes_7,days_28,minutes_28,"
	    "stage,title,stage_days,usual_days,question,record_day,id\r\n");
	for (int i = 0; i < s->list.count && page.good; i++)
		print_row(&page, s->order[i], s->today);
	return page_end(&page);
}
