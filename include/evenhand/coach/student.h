/*
 * student.h - what one student's history says to the teacher, in one line
 *
 *	history ─▶ student (facts, kept) ─▶ looked at on any later day
 *	                                        │
 *	   pain · stuck · hurried · absent · ready · fine, and why
 *
 * The facts are taken once, when a record was gathered, and kept; what a later
 * day makes of them needs no history any more.  So absence grows by itself, and
 * pain of long ago is over by itself.
 *
 *	pain	 on two days within a fortnight and nobody was asked yet; pain in
 *		 the last 14 days; skin or soreness in the last 7
 *	stuck	 one stage back after bad days; twice as many practice days on a
 *		 stage as are usual; held by the same thing for three weeks and
 *		 six practice days
 *	hurried	 as many signs of hurry in seven days as make a day slower
 *	absent	 four clear days without practice, or as many as the file's own
 *		 days a week leave; fewer than half of the file's days in two
 *		 weeks; no record for more than a week; never practised
 *	unread	 nothing is known, because the journal cannot be read
 *	ready	 the stage can be shown
 *	gone	 no record for eight weeks
 *
 * This is the order in which a teacher is needed, with fine before gone at the
 * end.  It says nothing of how well somebody plays, and nobody is measured with
 * others: inside an order the more urgent comes first, then the name.
 *
 * All of it is our own choice.  Twice the usual days (forecast.h: 6, 9 or 12)
 * is what nine of ten courses of the forecast stay below: exp(1.2816 x
 * sqrt(0.35^2 + 0.40^2)) is 1.98.
 *
 * Plain values.  Pure; any thread.
 */
#ifndef EVENHAND_COACH_STUDENT_H
#define EVENHAND_COACH_STUDENT_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/message.h"
#include "evenhand/coach/guard.h"
#include "evenhand/coach/history.h"
#include "evenhand/coach/standing.h"

enum {
	STUDENT_RULES =
	    2, /* raise it when the same history gives other facts */
	STUDENT_DAYS = 28, /* of which is kept what was practised */
	STUDENT_NOTES_MAX = 12,
	STUDENT_ID_BYTES = 33,
	STUDENT_INITIALS_BYTES = 32,
	STUDENT_TITLE_BYTES = 100,
	STUDENT_WORDS_BYTES = 201,
	STUDENT_PLACE_BYTES = 40,
	STUDENT_REASONS_MAX = 8,
	STUDENT_PAIN_DAYS = 14, /* in which pain concerns the teacher */
	STUDENT_SORE_DAYS = 7,	/* and skin or soreness */
	STUDENT_USUAL_TIMES = 2,
	STUDENT_HELD_DAYS = 21,
	STUDENT_HELD_PRACTICE = 6,
	STUDENT_FORTNIGHT = 14,
	STUDENT_RECORD_DAYS = 8, /* from which a record is missed */
	STUDENT_GONE_DAYS = 56,
	STUDENT_EAST = 1, /* days ahead of the teacher's that may be true */
};

/* A day on which was practised. */
struct student_day {
	int day;
	int ms;
};

/* Something that hurt or was sore. */
struct student_note {
	int day;
	enum note_kind kind;
	int finger; /* 1..4 for the skin of one finger, else 0 */
	char words[STUDENT_PLACE_BYTES]; /* where, "" not told */
};

/* The facts. */
struct student {
	/* Who; set by whoever keeps the class. */
	char id[STUDENT_ID_BYTES];
	char initials[STUDENT_INITIALS_BYTES];
	int given;   /* day of the newest record, -1 not known */
	bool unread; /* the journal cannot be read: no facts */

	/* What was practised. */
	int first, last; /* practice days, -1 none */
	int days;
	struct student_day day[STUDENT_DAYS]; /* rising */
	int notes;
	struct student_note note[STUDENT_NOTES_MAX]; /* rising, the newest */
	int asked; /* day of the last question, -1 none */
	char question[STUDENT_WORDS_BYTES];
	bool ask_first; /* pain came back, and nobody was asked */
	bool ahead;	/* there are days after the one it was made on */
	int made;	/* the practice day it was made on */

	/* Signs of hurry on the day of the last row kept, and on later ones. */
	int guard_day;
	int signs[GUARD_DAYS];
	int signs_needed;

	/* The stage; all of it 0 and "" when the routine is not known. */
	bool known;
	int days_a_week;
	int stages;
	int stage; /* of the next session, 0-based */
	char title[STUDENT_TITLE_BYTES];
	bool back; /* and the file asks for a later one */
	char asked_title[STUDENT_TITLE_BYTES];
	int on_days, usual_days;
	bool own_choice;      /* the student decides when to go on */
	enum missing missing; /* but for what hurts */
	enum take take;
	bool in_the_air;
	char unit[UNIT_NAME_MAX]; /* whom it hangs on, "" nobody */
	int have, wanted; /* days, pulses, clean days, bows; or percent */
	int held_since;	  /* day since which the same is missing, -1 */
	int held_days;	  /* practice days of those */
};

/* In the order in which the teacher is needed. */
enum student_order {
	STUDENT_PAIN,
	STUDENT_STUCK,
	STUDENT_HURRIED,
	STUDENT_ABSENT,
	STUDENT_UNREAD, /* nothing is known: the journal is damaged */
	STUDENT_READY,
	STUDENT_FINE,
	STUDENT_GONE,
	STUDENT_ORDERS
};

/* Why, with the number it stands on. */
struct student_reason {
	enum student_order order;
	struct message message;
};

/* What a day makes of the facts. */
struct student_state {
	enum student_order order;
	int64_t urgency; /* inside the order; for sorting alone */
	int reasons;
	struct student_reason
	    reason[STUDENT_REASONS_MAX]; /* first: the order's */
	int week_days, month_days;	 /* of the last 7 and 28 days */
	int64_t week_ms, month_ms; /* more than an int, if a record says */
	int away;		   /* days since the last practice, -1 none */
};

/*
 * Takes the facts out of a history as of a practice day; the history is set
 * apart for the routine, NULL when that is not known.  Fills all but who it is.
 */
void student_of(struct student *out, const struct routine *r,
    const struct history *h, int today);

/* What a day makes of them; one before the last practice counts as that. */
void student_look(
    struct student_state *out, const struct student *s, int today);

/*
 * The day up to which it is known what was practised: that of the newest
 * record, unless it is still to come, and of the last row kept at least; never
 * behind today.  -1: nothing is known.
 */
int student_known_until(const struct student *s, int today);

/* Whether the newest record is of a day to come: its clock was wrong. */
bool student_given_ahead(const struct student *s, int today);

/* How the stage stands in a few words: what is missing, or ready. */
struct message student_hold(const struct student *s);

/* Whether there is a question worth showing: of the last 28 days. */
bool student_asks(const struct student *s, int today);

/* Below, at or above 0, as a comes before, with or behind b. */
int student_compare(const struct student *a, const struct student_state *as,
    const struct student *b, const struct student_state *bs);

/* The one word of an order. */
enum message_id student_word(enum student_order order);

/* Initials, or the first digits of the id where there are none. */
const char *student_name(const struct student *s, char *buffer, int size);

#endif
