/*
 * lesson.c - the teacher's sheet: one look before the lesson
 *
 *	Before the lesson: Wren				2026-03-02 to 2026-03-08
 *	READY TO SHOW					ready, hold or step back
 *	Ready to show: play "A tone apart" ...		and why
 *	Look at one thing: finger 4 was shaky in 2 of 5 first rounds.
 *	[minutes]  [bows]  [first rounds]		small pictures
 *	Stage: ...					twelve lines
 */
#include "lesson.h"
#include "evenhand/base/message.h"
#include "evenhand/coach/lesson.h"
#include "homework.h"

enum { WORDS_BYTES = 1024 };

/* Of the usual size. */
#define USUAL 1.25
#define SMALL 0.8
#define LARGE 1.7

/* --- the sheet --- */

static struct message title_of(const struct lesson_wish *w)
{
	return *w->name ? message_with(M_LESSON_TITLE_OF, TEXT(w->name))
			: message_of(M_LESSON_TITLE);
}

static void draw_head(struct pen *pen, const struct lesson *l)
{
	struct message week = message_with(M_LESSON_WEEK,
	    DATE(l->facts.week.first),
	    DATE(l->facts.week.first + WEEK_DAYS - 1));

	homework_say(pen, PEN_TITLE, true, title_of(l->w));
	homework_say(pen, PEN_SMALL, false, week);
	homework_say(pen, PEN_SMALL, false,
	    message_with(M_PAPER_ROUTINE, TEXT(l->w->routine->name),
		WHOLE(l->w->routine->edition)));
	pen_air(pen, 1);
	paper_line(pen->paper, pen->left, pen->y, pen->left + pen->room, pen->y,
	    pen_mm(pen, 0.5), INK_FULL);
}

static void draw_words(struct pen *pen, const struct lesson_words *words)
{
	pen_air(pen, 2);
	homework_say(pen, PEN_CUE, true, words->answer);
	for (int i = 0; i < words->whys; i++)
		homework_say(pen, PEN_HEADING, false, words->why[i]);
	pen_air(pen, 2);
	homework_say(pen, PEN_HEADING, true, words->look);
}

static void draw_lines(struct pen *pen, const struct lesson_words *words)
{
	pen_air(pen, 2);
	for (int i = 0; i < words->lines; i++)
		homework_say(pen, PEN_BODY, false, words->line[i]);
}

static int attempt(
    struct paper *p, const struct lesson *l, double scale, int pages)
{
	struct message title = title_of(l->w);
	char words[WORDS_BYTES];
	struct pen pen;

	message_text(&title, words, sizeof(words));
	paper_init(p, words, l->w->routine->written_by, l->w->plan->day);
	pen_init(&pen, p, l->w->size, scale, (struct pen_pages) { 0, pages });
	draw_head(&pen, l);
	draw_words(&pen, &l->words);
	lesson_pictures(&pen, l);
	draw_lines(&pen, &l->words);
	return p->pages;
}

void sheet_lesson(struct paper *p, const struct lesson_wish *w)
{
	struct lesson l = { .w = w };
	int pages;

	lesson_facts_of(&l.facts, w->routine, w->history, w->plan);
	lesson_words_of(&l.words, &l.facts);
	pages = attempt(p, &l, w->large ? LARGE : USUAL, 0);
	if (!w->large && pages > 1)
		pages = attempt(p, &l, SMALL, 0);
	if (pages > 1)
		attempt(p, &l, w->large ? LARGE : SMALL, pages);
}
