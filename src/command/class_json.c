/*
 * class_json.c - a class as JSON, a student on a line
 *
 *	{
 *	"version": 1,
 *	"day": "2026-03-09",
 *	"students": [
 *	{"state": "pain", "name": "W. P.", "why": [...], ...}
 *	]
 *	}
 *
 * It goes out student by student, so that a class of any size is whole.
 */
#include "class.h"
#include "evenhand/base/json.h"
#include "history_page.h"

enum { ROW_BYTES = 4000, WORDS_BYTES = 400 };

static void add_day(struct json *j, const char *key, int day)
{
	char date[DATE_TEXT_MAX];

	if (day < 0)
		return;
	date_text(day, date);
	json_text(j, key, date);
}

static void add_why(struct json *j, const struct student_state *st)
{
	char words[WORDS_BYTES];

	json_open(j, "why", '[');
	for (int i = 0; i < st->reasons; i++) {
		const struct student_reason *r = &st->reason[i];

		message_text(&r->message, words, sizeof(words));
		json_open(j, NULL, '{');
		json_text(j, "state", message_sentence(student_word(r->order)));
		json_text(j, "words", words);
		json_close(j, '}');
	}
	json_close(j, ']');
}

static void add_practice(struct json *j, const struct class_row *row)
{
	const struct student_state *st = &row->state;

	add_day(j, "first_day", row->student->first);
	add_day(j, "last_day", row->student->last);
	json_whole(j, "days_7", st->week_days);
	json_whole(j, "ms_7", st->week_ms);
	json_whole(j, "days_28", st->month_days);
	json_whole(j, "ms_28", st->month_ms);
}

static void add_stage(struct json *j, const struct student *s)
{
	struct message hold = student_hold(s);
	char words[WORDS_BYTES];

	message_text(&hold, words, sizeof(words));
	json_whole(j, "stage", s->stage + 1);
	json_whole(j, "stages", s->stages);
	json_text(j, "title", s->title);
	json_truth(j, "back", s->back);
	json_whole(j, "stage_days", s->on_days);
	json_whole(j, "usual_days", s->usual_days);
	json_truth(j, "ready", s->missing == MISSING_NOTHING && !s->back);
	json_text(j, "stands", words);
}

static void print_row(
    struct history_page *p, const struct class_row *row, int today, bool first)
{
	const struct student *s = row->student;
	char bytes[ROW_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));
	struct json j = json_in(&t);

	page_line(p, first ? "" : ",\n");
	json_open(&j, NULL, '{');
	json_text(
	    &j, "state", message_sentence(student_word(row->state.order)));
	json_text(&j, "id", s->id);
	json_text(&j, "name", row->name);
	json_text(&j, "initials", s->initials);
	add_why(&j, &row->state);
	add_day(&j, "record_day", s->given);
	if (!s->unread) {
		add_practice(&j, row);
		if (s->known)
			add_stage(&j, s);
		if (student_asks(s, today))
			json_text(&j, "question", s->question);
	}
	json_close(&j, '}');
	page_line(p, bytes);
}

bool class_print_json(const struct class_seen *s)
{
	struct history_page page;
	char date[DATE_TEXT_MAX], head[DATE_TEXT_MAX + 80];
	struct text t = text_in(head, sizeof(head));

	date_text(s->today, date);
	text_format(&t,
	    "{\n\"version\": 1,\n\"day\": \"%s\",\n\"students\": [\n", date);
	page_begin(&page);
	page_line(&page, head);
	for (int i = 0; i < s->list.count && page.good; i++)
		print_row(&page, s->order[i], s->today, i == 0);
	page_line(&page, s->list.count > 0 ? "\n]\n}\n" : "]\n}\n");
	return page_end(&page);
}
