/*
 * forecast.h - how many weeks the rest of the programme may take (rule F6)
 *
 * Practice days on a stage: ln D = ln m + a + e.  m is what is usual: 6 days
 * for the first stage and for one in the air, 12 for the last, 9 for all
 * others.  a ~ N(0, 0.35^2) is the student's own pace, e ~ N(0, 0.40^2) each
 * stage's whim, and D is at least the routine's days to move on.  What is
 * known of a comes from the stages before, in closed form:
 *
 *	a | n stages ~ N(m1, 1 / w)   w = 1/0.35^2 + n/0.40^2
 *	                              m1 = (sum of ln D/m) / 0.40^2 / w
 *
 * 20 000 courses are drawn, always the same ones.  The stage under way takes
 * more days than it has had.  Weeks come from the student's own practice days
 * in the last weeks; where the teacher decides, each stage waits for the next
 * weekly lesson.  Shown are the weeks between which eight of ten courses end.
 *
 *	from the first stage on		5 days a week	3 days a week
 *	student decides			 8 to 19 weeks	13 to 32
 *	teacher decides			10 to 22	15 to 35
 *
 * All of it is our own choice [O], tuned to no more than "some weeks to some
 * months".  It is only an estimate: it names no date, and rather says nothing
 * than what would push somebody.
 *
 * Plain values; the same input gives the same bytes.  Any thread.
 */
#ifndef EVENHAND_COACH_FORECAST_H
#define EVENHAND_COACH_FORECAST_H

#include <stdbool.h>

#include "evenhand/base/message.h"
#include "evenhand/coach/history.h"
#include "evenhand/routine/routine.h"

enum {
	FORECAST_DRAWS = 20000,
	FORECAST_WEEKS_MAX = 1040,  /* no course is longer */
	FORECAST_HABIT_WEEKS = 4,   /* whole weeks looked back on, at most */
	FORECAST_HABIT_LEAST = 2,   /* fewer say nothing of a habit */
	FORECAST_DAYS_A_WEEK = 3,   /* with fewer it says nothing */
	FORECAST_PAIN_DAYS = 28,    /* and for so long after pain */
	FORECAST_MESSAGES_MAX = 10, /* that say why */
};

/* Why nothing is said. */
enum forecast_silence {
	FORECAST_SPEAKS,
	FORECAST_OVER,	 /* no stage is left */
	FORECAST_PAIN,	 /* pain in the last four weeks */
	FORECAST_EARLY,	 /* less than two weeks since the first session */
	FORECAST_SELDOM, /* under three days a week */
};

struct forecast {
	enum forecast_silence silence;
	int low_weeks, high_weeks; /* 10th and 90th percentile, 1 or more */

	/* The numbers used. */
	int stage, stages;	    /* left are stage..stages - 1 */
	int usual_days[STAGES_MAX]; /* m of each stage */
	int least_days;		    /* no stage takes fewer */
	int days_so_far;	    /* on the stage under way */
	bool lessons;		    /* each stage waits for a lesson */
	int finished;		    /* stages before it that were worked on */
	int finished_days, finished_usual;
	double pace, pace_sd;	     /* mean and deviation of a */
	int practised, practised_of; /* days, of so many before today */
	int pain_day;		     /* the last one, -1 none */
};

/* Practice days that are usual for a stage: m. */
int forecast_usual_days(const struct routine *r, int stage);

/*
 * The forecast on a practice day for who works on a stage now; stage
 * r->stages means that the last one is done too.
 */
void forecast_make(struct forecast *f, const struct routine *r,
    const struct history *h, int stage, int day);

/* The one sentence for today's page; M_NONE when it says nothing. */
struct message forecast_line(const struct forecast *f);

/*
 * All numbers used, or why it says nothing, in this order; returns how many
 * messages, at most FORECAST_MESSAGES_MAX.  The routine is that of the
 * forecast.
 */
int forecast_why(
    const struct forecast *f, const struct routine *r, struct message *out);

#endif
