/*
 * homework_checks.c - what a student asks, with a box for each day of the week
 *
 *	Ask yourself, and tick    Mo Tu We Th Fr Sa Su
 *	Forearm and hand in one line  [] [] [] [] [] [] []
 *
 * A list that goes on over the page has its days there, too.
 */
#include <math.h>

#include "evenhand/base/message.h"
#include "homework.h"

enum { WEEK = 7 };

/* In usual mm. */
#define TICK_BOX 4.4
#define TICK_STEP 8.6
#define TICKS_MOST 0.4	   /* of the width for all boxes */
#define DAY_MOST 0.48	   /* of a step, the em of a day's name */
#define TICK_BOX_MOST 0.72 /* of a step */
#define CHECKS_AIR 2.0
#define WHOLE_MOST 0.35 /* of a page, what a list may leave empty before it */

/* From one box to the next; large print leaves room for the words, too. */
static double tick_step(const struct pen *pen)
{
	return fmin(pen_mm(pen, TICK_STEP), pen->room * TICKS_MOST / WEEK);
}

static double tick_box(const struct pen *pen)
{
	return fmin(pen_mm(pen, TICK_BOX), tick_step(pen) * TICK_BOX_MOST);
}

static double tick_x(const struct pen *pen, int day)
{
	return pen->left + pen->room - tick_step(pen) * (WEEK - 1 - day) -
	    tick_box(pen);
}

/* The room for words beside the boxes. */
static double tick_words(const struct pen *pen)
{
	return tick_x(pen, 0) - pen->left - pen_mm(pen, 3);
}

static double days_high(const struct pen *pen)
{
	return pen_words_high(pen, tick_words(pen),
	    pen_letters(pen, PEN_BODY, true), message_sentence(M_PAPER_TICK));
}

/* The days from the one on which the week begins. */
static void draw_days(struct pen *pen, int first)
{
	struct lettering how = pen_letters(pen, PEN_SMALL, false);
	double y;

	how.side = SIDE_MIDDLE;
	how.size = fmin(how.size, tick_step(pen) * DAY_MOST);
	pen_words(pen, pen->left, tick_words(pen),
	    pen_letters(pen, PEN_BODY, true), message_sentence(M_PAPER_TICK));
	y = pen->y - pen_mm(pen, PEN_BODY) * (PEN_LEADING - 1);
	for (int i = 0; i < WEEK; i++)
		paper_words(pen->paper, tick_x(pen, i) + tick_box(pen) / 2, y,
		    how, message_sentence(pen_weekday(first + i)));
}

/* The least height of a line with boxes. */
static double tick_row(const struct pen *pen)
{
	return pen_mm(pen, TICK_BOX + 2);
}

/* The self-checks, and behind them how it feels; the number'th of them. */
static const char *check_of(const struct stage *s, int number)
{
	return number < s->checks ? s->check[number]
				  : s->feel[number - s->checks];
}

/* What stands over the first line of words, so that its box is beside it. */
static double check_air(const struct pen *pen)
{
	return (tick_row(pen) - pen_mm(pen, PEN_BODY) * PEN_LEADING) / 2;
}

static double check_high(const struct pen *pen, const char *words)
{
	double high = pen_words_high(
	    pen, tick_words(pen), pen_letters(pen, PEN_BODY, false), words);

	return fmax(tick_row(pen), check_air(pen) + high);
}

static void draw_check(struct pen *pen, const char *words)
{
	double y = pen->y, box = tick_box(pen);

	pen->y += check_air(pen);
	pen_words(pen, pen->left, tick_words(pen),
	    pen_letters(pen, PEN_BODY, false), words);
	pen->y = y + check_high(pen, words);
	for (int i = 0; i < WEEK; i++)
		paper_box(pen->paper, tick_x(pen, i),
		    y + (tick_row(pen) - box) / 2, box, box, pen_mm(pen, 0.35),
		    INK_FULL);
}

void homework_checks(struct pen *pen, const struct sheet_wish *w)
{
	const struct stage *s = &w->routine->stage[w->routine->work_on];
	int count = s->checks + s->feels;
	double days = days_high(pen), all = pen_mm(pen, CHECKS_AIR) + days;

	if (count == 0)
		return;
	for (int i = 0; i < count; i++)
		all += check_high(pen, check_of(s, i));
	if (all <= (pen->bottom - pen->top) * WHOLE_MOST)
		pen_need(pen, all);
	pen_air(pen, CHECKS_AIR);
	for (int i = 0; i < count; i++) {
		double high = check_high(pen, check_of(s, i));

		pen_need(pen, high + (i == 0 ? days : 0));
		if (i == 0 || pen->y <= pen->top)
			draw_days(pen, w->day);
		draw_check(pen, check_of(s, i));
	}
}
