/*
 * class_sheet.c - the list of a class, before the lesson sheets, page by page
 *
 *	Class on 2026-03-09
 *	25 students. 2 pain, 3 stuck, 1 hurried, 4 absent, 15 fine.
 *	pain     W. P.   pain on 2026-03-08: wrist
 *	                 5 days, 22 minutes in 7 days; 21 in 28
 *	stuck    K. O.   ...
 *
 * A row for each, with a line below it and room for a note of the teacher.
 */
#include <math.h>
#include <string.h>

#include "evenhand/base/message.h"
#include "evenhand/paper/words.h"
#include "homework.h"

enum { WORDS_BYTES = 2048, MINUTE_MS = 60000 };

#define USUAL 1.0
#define LARGE 1.6

/* Of the room there is, what the word and the name take. */
#define WORD_PART 0.12
#define NAME_PART 0.18
#define WORD_AIR 1.5 /* before the name, usual mm */
#define ROW_AIR 1.6

struct row_to_draw {
	const struct class_row *row;
	int today;
};

/* Words in a column from a height on, in mm; the height below them. */
static double column(struct pen *pen, double y, double from, double to,
    double size, bool bold, const char *words)
{
	pen->y = y;
	pen_words(pen, pen->left + from, to - from,
	    pen_letters(pen, size, bold), words);
	return pen->y;
}

/* Where names begin: no word of an order is ever cut. */
static double names_at(const struct pen *pen)
{
	struct lettering how = pen_letters(pen, PEN_BODY, true);
	double widest = pen->room * WORD_PART - pen_mm(pen, WORD_AIR);

	for (int i = 0; i < STUDENT_ORDERS; i++)
		widest = fmax(widest,
		    words_mm(
			message_sentence(student_word((enum student_order)i)),
			how.size, how.bold));
	return widest + pen_mm(pen, WORD_AIR);
}

static void practised(struct text *t, const struct class_row *row)
{
	const struct student_state *st = &row->state;
	struct message m = message_with(M_CLASS_SHEET_WEEK,
	    WHOLE(st->week_days),
	    WHOLE((st->week_ms + MINUTE_MS / 2) / MINUTE_MS),
	    WHOLE(st->month_days));
	char words[WORDS_BYTES];

	message_text(&m, words, sizeof(words));
	text_add(t, words);
}

static void asks(struct text *t, const struct student *s)
{
	struct message m = message_with(
	    M_CLASS_ASKS_ON, DATE(s->asked), TEXT(s->question));
	char words[WORDS_BYTES];

	message_text(&m, words, sizeof(words));
	text_format(t, ". %s", words);
}

static void draw_row(struct pen *pen, const void *what)
{
	const struct row_to_draw *d = what;
	const struct class_row *row = d->row;
	bool needed = row->state.order < STUDENT_READY;
	double names = names_at(pen), why = names + NAME_PART * pen->room;
	double y, low;
	char words[WORDS_BYTES];
	struct text t = text_in(words, sizeof(words));

	class_why(&t, row);
	pen_need(pen, pen_mm(pen, PEN_BODY) * 2 * PEN_LEADING);
	y = pen->y;
	column(pen, y, 0, names, PEN_BODY, needed,
	    message_sentence(student_word(row->state.order)));
	low = column(pen, y, names, why, PEN_BODY, true, row->name);
	column(pen, y, why, pen->room, PEN_BODY, false, words);
	if (!row->student->unread) {
		t = text_in(words, sizeof(words));
		practised(&t, row);
		if (student_asks(row->student, d->today))
			asks(&t, row->student);
		column(pen, pen->y, why, pen->room, PEN_SMALL, false, words);
	}
	pen->y = pen->y > low ? pen->y : low;
	pen_need(pen, pen_mm(pen, ROW_AIR));
	pen->y += pen_mm(pen, ROW_AIR);
	paper_line(pen->paper, pen->left, pen->y, pen->left + pen->room, pen->y,
	    pen_mm(pen, 0.15), INK_FULL);
	pen->y += pen_mm(pen, ROW_AIR);
}

static void draw_head(struct pen *pen, const struct class_wish *w)
{
	struct message title = message_with(M_CLASS_SHEET, DATE(w->today));
	struct message all = message_with(M_CLASS_STUDENTS, WHOLE(w->count));
	char words[WORDS_BYTES], bytes[WORDS_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	homework_say(pen, PEN_TITLE, true, title);
	message_text(&all, words, sizeof(words));
	text_format(&t, "%s. ", words);
	class_counts(&t, w->order, w->count);
	pen_words(pen, pen->left, pen->room, pen_letters(pen, PEN_BODY, false),
	    bytes);
	pen_air(pen, 1);
	paper_line(pen->paper, pen->left, pen->y, pen->left + pen->room, pen->y,
	    pen_mm(pen, 0.5), INK_FULL);
	pen->y += pen_mm(pen, 2 * ROW_AIR);
}

int sheet_class(
    struct paper *p, const struct class_wish *w, struct sheet_page page)
{
	struct message title = message_with(M_CLASS_SHEET, DATE(w->today));
	char words[WORDS_BYTES];
	struct pen pen;
	int row = page.row;

	message_text(&title, words, sizeof(words));
	paper_init(p, words, "", w->today);
	pen_init(&pen, p, w->size, w->large ? LARGE : USUAL,
	    (struct pen_pages) { page.number - 1, page.pages });
	if (page.number == 1)
		draw_head(&pen, w);
	for (; row < w->count; row++) {
		struct row_to_draw d = { w->order[row], w->today };

		if (pen_try(&pen, draw_row, &d))
			continue;
		if (row > page.row)
			break;
		/* Too long for any page. */
		draw_row(&pen, &d);
	}
	return row;
}

int sheet_class_pages(struct paper *p, const struct class_wish *w)
{
	struct sheet_page page = { .number = 0, .row = 0 };

	while (page.row < w->count) {
		page.number++;
		page.row = sheet_class(p, w, page);
	}
	return page.number;
}
