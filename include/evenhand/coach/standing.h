/*
 * standing.h - whether a stage is the student's own (rule F4)
 *
 * The evidence is the first go: the marks of the first round of a stage on a
 * practice day, taken cold.  Later rounds of the day count for nothing here.
 * What the teacher marked in a lesson of that day counts over the student's
 * own marks.
 *
 *	day	1	2	3	4	5	6
 *	rung	6	6	8	8	8	8
 *	shaky	2,4	4	3	-	4	-
 *				after 5: hold, finger 4	after 6: ready to show
 *
 * A stage is ready to show when all of these hold: enough practice days on it;
 * the first go all clean at the top rung on 2 of the last 3 of them, the latest
 * included; whoever had the fewest bows of the stage had at least 0.8 of an
 * even share, days with a sore finger left out of the count; nothing hurt in
 * the last days; and where a microphone listened to the work of the last of
 * them, it heard every top in four bows of five.  It can be wrong and never
 * says that a mark was: then the teacher looks at it.  What is missing is named
 * one thing at a time, in the order in which it is to be mended.
 *
 * In the air there is no rung and nothing takes turns: the first swing of the
 * day is the evidence, as unit 0.
 *
 * Pure; any thread.
 */
#ifndef EVENHAND_COACH_STANDING_H
#define EVENHAND_COACH_STANDING_H

#include "evenhand/base/message.h"
#include "evenhand/coach/history.h"

enum {
	STANDING_DAYS_MAX =
	    14, /* of the last practice days that are looked at */
	SHARE_LEAST_TENTHS = 8, /* of an even share of the bows */
	HURT_DAYS = 3,		/* clear days until a note is over */
	HEARD_PERCENT = 80,	/* of the bows listened to have every top */
	HEARD_LEAST = 8,	/* fewer bows listened to say nothing */
};

/* The first go of a stage on one practice day. */
struct first_go {
	int day;
	int pulses;	/* the lowest rung of its marks, 0 in the air */
	uint32_t clean; /* bit u: unit u */
	uint32_t shaky;
	bool teacher; /* marks of a lesson count over the student's */
};

/* What a sitting that is not in the history yet adds to it. */
struct fresh {
	struct first_go first_go; /* of the stage worked on */
	bool worked;		  /* it came to that stage */
	bool marked;		  /* first_go is today's first */
	bool hurt;		  /* pain, skin or soreness was noted */
	int bows[UNITS_MAX];	  /* of that stage */
	/* And of these, as in a tally. */
	int bows_listened, bows_full;
};

/* The one condition that is missing. */
enum missing {
	MISSING_NOTHING,    /* ready to show */
	MISSING_WELL,	    /* something hurt in the last days */
	MISSING_DAYS,	    /* too few practice days */
	MISSING_RUNG,	    /* the latest first go was below the top rung */
	MISSING_CLEAN,	    /* a unit was shaky in the latest first go */
	MISSING_MARK,	    /* or was not marked */
	MISSING_CLEAN_DAYS, /* the latest was clean, too few before it were */
	MISSING_SHARE,	    /* a unit had too few bows */
	MISSING_HEARD,	    /* too few bows in which every top was heard */
};

struct standing {
	int stage;
	enum missing missing;
	int days, days_needed;
	int clean_days, clean_needed, clean_of;
	int more_days; /* practice days, all clean, until it can be shown */
	int rung, top; /* of the latest first go; 0: none was made */
	int day;       /* of the latest first go, or of what hurt */
	bool teacher;  /* it was marked in a lesson */
	int unit;      /* whom it hangs on, -1 none */
	int64_t bows, bows_all; /* of that unit and of all */
	/* Work bows listened to on the last clean_of days, and with every top. */
	int64_t bows_listened, bows_full;
};

/* The units of a stage: one swing in the air, else those of the routine. */
int standing_units(const struct routine *r, int stage);

/*
 * The first go of a stage as the work of a practice day, the teacher's marks
 * over it.  False: none was made.
 */
bool first_go_on(const struct history *h, const struct routine *r, int stage,
    int day, struct first_go *out);

/* Every unit clean. */
bool first_go_clean(
    const struct routine *r, int stage, const struct first_go *g);

/* Half of the units shaky, or more, on the lowest rung. */
bool first_go_bad(const struct routine *r, int stage, const struct first_go *g);

/*
 * How a stage stands on a practice day, after all that is in the history and,
 * unless NULL, after the sitting that is being played.
 */
void standing_of(struct standing *out, const struct routine *r,
    const struct history *h, int stage, int today, const struct fresh *fresh);

/* The answer in one sentence: ready to show, or what is missing. */
struct message standing_message(
    const struct routine *r, const struct standing *s);

#endif
