/*
 * class_print.c - `evenhand print class`: the lesson sheets of all students
 *
 *	class ─▶ a list of all ──┐
 *	each student ─▶ sheet ───┴▶ evenhand-paper ─▶ new file ─▶ PDF in its place
 *
 * One sheet is laid out at a time and given away before the next, so that a
 * large class takes no more memory than a small one.  Who has not been heard of
 * for weeks (gone) gets none.
 */
#include "class_print.h"

#include <stdlib.h>
#include <string.h>

#include "class.h"
#include "evenhand/paper/list.h"
#include "options.h"
#include "so_far.h"

/* What is being printed, too large for the stack. */
struct printing {
	const struct class_print *ask;
	struct class_seen seen;
	struct class_lesson lesson;
	struct paper_maker maker;
	struct paper paper;
	int pages;
	struct so_far so_far;
	char one[LIST_BYTES_MAX]; /* of one sheet */
};

static int refuse(struct message m, int status)
{
	command_say(&m);
	return status;
}

/* --- the list of all pages --- */

/* Gives away what one part comes to. */
static int give(struct printing *p, const struct text *part)
{
	if (part->cut || p->paper.cut)
		return refuse(message_of(M_PAPER_FULL), EXIT_DATA);
	/* Nobody takes it: the end tells why. */
	return paper_give(&p->maker, part->bytes, part->length)
	    ? EXIT_GOOD
	    : sheet_end(&p->maker, p->pages);
}

static int add_list(struct printing *p)
{
	struct class_wish wish = { p->seen.order, p->seen.list.count,
		p->seen.today, p->ask->size, p->ask->large };
	struct sheet_page page = { 1, sheet_class_pages(&p->paper, &wish), 0 };
	int status = EXIT_GOOD;

	for (; page.row < wish.count && status == EXIT_GOOD; page.number++) {
		struct text part = text_in(p->one, sizeof(p->one));

		page.row = sheet_class(&p->paper, &wish, page);
		p->pages += p->paper.pages;
		if (page.number == 1)
			list_write_begin(&part, &p->paper);
		list_write_pages(&part, &p->paper);
		status = give(p, &part);
	}
	return status;
}

static int add_sheet(struct printing *p, const struct class_row *row)
{
	struct text part = text_in(p->one, sizeof(p->one));
	struct class_lesson *l = &p->lesson;
	struct fault f;
	int status = EXIT_GOOD;

	if (class_lesson_of(l, &p->seen, row->student->id, &f)) {
		struct lesson_wish wish = { l->routine, &l->history, &l->plan,
			row->name, p->ask->size, p->ask->large };

		sheet_lesson(&p->paper, &wish);
		p->pages += p->paper.pages;
		list_write_pages(&part, &p->paper);
		status = give(p, &part);
	} else if (row->student->unread || row->student->last >= 0) {
		so_far_end(&p->so_far);
		refuse(message_with(M_CLASS_PRINT_NO_SHEET, TEXT(row->name)),
		    EXIT_GOOD);
	}
	class_lesson_done(l);
	return status;
}

static int add_all(struct printing *p)
{
	struct text end;
	int all = p->seen.list.count, status = add_list(p);

	for (int i = 0; i < all && status == EXIT_GOOD; i++) {
		if (p->seen.order[i]->state.order != STUDENT_GONE)
			status = add_sheet(p, p->seen.order[i]);
		so_far_tell(&p->so_far, i + 1, all);
	}
	if (status != EXIT_GOOD)
		return status;
	end = text_in(p->one, sizeof(p->one));
	list_write_end(&end);
	return give(p, &end);
}

static int print(struct printing *p)
{
	const struct class_print *a = p->ask;
	int status;

	if (!sheet_begin(&p->maker, &a->to, &status) ||
	    !class_see(&p->seen, a->folder, a->now, &status))
		return status;
	if (p->seen.list.count == 0)
		return refuse(class_empty(&p->seen, a->folder), EXIT_NO_INPUT);
	status = add_all(p);
	return status == EXIT_GOOD ? sheet_end(&p->maker, p->pages) : status;
}

int class_print(const struct class_print *ask)
{
	struct printing *p;
	int status;

	if (!ask->folder)
		return refuse(message_of(M_CLASS_PRINT_WHICH), EXIT_USAGE);
	if (ask->to.format != PAPER_PDF)
		return refuse(
		    message_with(M_CLASS_PRINT_PDF, TEXT(ask->to.path)),
		    EXIT_USAGE);
	p = calloc(1, sizeof(*p));
	if (!p)
		return refuse(message_of(M_COMMAND_NO_MEMORY), EXIT_OS);
	p->ask = ask;
	p->so_far = (struct so_far) { M_CLASS_PRINTING, 50, 25, false };
	status = print(p);
	class_seen_done(&p->seen);
	paper_drop(&p->maker);
	free(p);
	return status;
}
