/*
 * where.h - the stage the student stands at today (rules F4 and F5)
 *
 * The teacher's file says which stage is worked on.  Three things move the
 * student from there:
 *
 *	two practice days running, half or more shaky cold, at the lowest rung
 *		one stage back; the first day all clean there leads on again
 *	days without practice (clear days, on which nothing was played)
 *		4 to 7    one rung lower, but for whose habit they are
 *		8 to 14   earlier stages only, 60 % of the time, until all is
 *		          clean; then the stage itself, on the lowest rung;
 *		          that at once where the file wants no earlier ones
 *		15 to 28  one stage back, with 60, 80 and 100 % of the time
 *		over 28   from the first stage, a stage on for each clean day
 *	the student decides, and a stage is secure
 *		the next one, as far as the file lets
 *
 * A journal keeps with each sitting the stage it worked on and the stage the
 * file asked for.  When the two differ, the student was moved; when the file
 * asks for another stage than it did, the teacher has spoken, and that counts.
 *
 * Pure; any thread.
 */
#ifndef EVENHAND_COACH_WHERE_H
#define EVENHAND_COACH_WHERE_H

#include "evenhand/coach/history.h"
#include "evenhand/coach/standing.h"

enum {
	AWAY_SHORT = 4,	 /* clear days from which a rung is given up */
	AWAY_LONG = 8,	 /* from which earlier stages come first */
	AWAY_BACK = 15,	 /* from which it is one stage back */
	AWAY_START = 29, /* from which it is the first stage */
	AWAY_PERCENT = 60,
	AWAY_SECOND_PERCENT = 80,
	HABIT_DAYS = 28, /* that show what is usual: */
	HABIT_GAPS = 2,	 /* so many times as long away, or more */
};

/* Why the student stands there. */
enum where_why {
	WHERE_FILE,	 /* the file says so */
	WHERE_SECURE,	 /* moved on: the stage before is secure */
	WHERE_BACK,	 /* two bad days: one stage back from today on */
	WHERE_STAYS,	 /* back, and not all clean yet */
	WHERE_ON,	 /* all clean there: one stage on */
	WHERE_AWAY_BACK, /* one stage back after many days */
	WHERE_AWAY_START,
};

struct where {
	int asked; /* what the file asks for, or the student has reached */
	int at;	   /* where today's work is; never past asked */
	enum where_why why;
	int from; /* the stage left today, for WHERE_SECURE, BACK and ON */
	int bad_day[2]; /* of WHERE_BACK, in their order */
	int away;	/* clear days before today, 0 when played today */
	int percent;	/* of the cap that today may take */
	bool recap_only;
	bool recap_again; /* not for the first time since those days */
	bool lower;	  /* one rung lower than it would be */
	bool lowest;	  /* the work begins on the lowest rung */
};

/* Where the student stands on a practice day. */
void where_on(struct where *out, const struct routine *r,
    const struct history *h, int today);

#endif
