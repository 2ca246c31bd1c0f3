/*
 * lines.h - a sitting told in plain lines
 *
 * Line mode: one event, one line, under 80 columns, no redraw, nothing said
 * over the pulses.  It is the screen reader's interface and a full equal of
 * the full screen, and what `evenhand today` and `check` print.
 *
 * Sentences longer than a line go on in further lines, cut at spaces.
 * Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_LINES_H
#define EVENHAND_SCREEN_LINES_H

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"
#include "evenhand/coach/first.h"
#include "evenhand/coach/plan.h"
#include "evenhand/coach/session.h"

enum { LINE_COLUMNS = 79, LINE_COLUMNS_MIN = 40, LINES_BYTES_MAX = 32768 };

/* Adds a message as one or more lines, each ended by '\n'. */
void lines_say(struct text *out, const struct message *m);

/* The same for a sentence that is one already. */
void lines_text(struct text *out, const char *sentence);

/* Of a screen so many columns wide (0: not known), those that a line takes. */
int lines_columns(int screen);

/* The same as the two above, in lines of so many columns. */
void lines_say_within(struct text *out, int columns, const struct message *m);
void lines_text_within(struct text *out, int columns, const char *sentence);

/* Adds a page in words: what is asked, the choices, the keys. */
void lines_page(
    struct text *out, int columns, const struct session *s, enum page page);

/* Adds the page of the first minutes in words; nothing while they play. */
void lines_first(struct text *out, int columns, const struct first *f);

/* How much of a plan is told. */
enum telling_much {
	TELL_SHORT,  /* the parts, for those who are about to play */
	TELL_ROUNDS, /* every round with its time */
	TELL_WHY, /* and every reason with its rule and its mark [C] [P] [O] */
};

/* Adds the plan: what today holds. */
void lines_plan(struct text *out, const struct routine *r, const struct plan *p,
    enum telling_much much);

#endif
