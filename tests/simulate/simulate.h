/*
 * simulate.h - a world of invented students, and what is measured in it
 *
 *	student ── hidden skill ─▶ sitting ── keys ─▶ the real session
 *	   ▲                          │                   │
 *	   └── learns, forgets        └─▶ past ◀── rows ──┘
 *	                                   │
 *	course: days, weeks, lessons ◀─ the real planner, standing, forecast
 *	   │
 *	   └─▶ result ─▶ table, and what must never happen
 *
 * Everything about the coach is the program's own; everything about people is
 * made up here and says nothing of real ones.  A student depends on the seed
 * and on nothing else, so any number of workers gives the same table.
 */
#ifndef EVENHAND_TESTS_SIMULATE_H
#define EVENHAND_TESTS_SIMULATE_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

#include "evenhand/coach/history.h"
#include "evenhand/coach/plan.h"
#include "evenhand/coach/session.h"
#include "evenhand/routine/routine.h"

enum {
	WEEKS_MAX = 104, /* then a course is given up */
	WEEK = 7,
	DAYS_MAX = WEEKS_MAX * WEEK,
	BEGIN_DAY = 20514, /* 2026-03-02, a Monday */
	FINGERS = 4,
	METRES_BIN = 10,
	METRES_BINS = 60,
	TELL_MAX = 200,
	MISSING_KINDS = MISSING_HEARD + 1,
};

/* --- chance.c: random numbers of one student --- */

struct chance {
	uint64_t state;
};

struct chance chance_of(uint64_t seed, uint64_t number);
uint64_t chance_next(struct chance *c);
double chance_share(struct chance *c); /* 0 to below 1 */
bool chance_is(struct chance *c, double probability);
int chance_whole(struct chance *c, int low, int high);
double chance_bell(struct chance *c); /* mean 0, deviation 1 */

/* --- past.c: a history that grows as a journal would --- */

struct past {
	struct history h;
	int room[5];	/* of the five lists */
	int first_turn; /* of the last sitting */
};

void past_init(struct past *p);
void past_done(struct past *p);
void past_note(struct past *p, int day, enum note_kind kind, int finger);
void past_sit(struct past *p, const struct plan *plan, const struct routine *r);
void past_turn(
    struct past *p, const struct turn_row *row, const struct routine *r);
void past_mark(struct past *p, int number, enum mark mark);
void past_end(struct past *p, enum ended ended, int64_t length_ms);
/* What a journal would not load on this day any more. */
void past_forget(struct past *p, int day);

/* --- student.c: what nobody sees --- */

enum habit {
	HABIT_EVEN,
	HABIT_FIRST, /* loves the first finger */
	HABIT_HURRY,
	HABIT_WEEKEND,
	HABIT_ILL,
	HABIT_SORE,
	HABITS
};

enum teacher { TEACHER_STRICT, TEACHER_TRUSTING, TEACHER_NONE, TEACHERS };

struct student {
	struct chance chance;
	enum habit habit;
	bool fixed; /* never learns nor forgets, and marks what was */
	bool flat;  /* and no turn is easier than another */
	double learn[STAGES_MAX], forget;
	double start[STAGES_MAX][UNITS_MAX];
	double skill[STAGES_MAX][UNITS_MAX];
	int played[STAGES_MAX][UNITS_MAX]; /* the day of the last turn */
	int sore_finger, sore_until;	   /* left out up to this day */
	int ill_from;			   /* for ten days */
};

extern const char *const habit_name[HABITS];
extern const char *const teacher_name[TEACHERS];

void student_init(struct student *s, const struct routine *r, enum habit h,
    uint64_t seed, uint64_t number);

/* Clean so often at the top rung when cold, for ever. */
void student_fix(struct student *s, const struct routine *r, double clean);

/* How likely a turn is clean; cold is the first go of a day. */
double student_clean(const struct student *s, const struct routine *r,
    int stage, int unit, int pulses, bool cold);

/* One whole turn was played. */
void student_learn(struct student *s, int stage, int unit, int day);

/* A night: what was not played today fades. */
void student_sleep(struct student *s, const struct routine *r, int day);

/* Sessions on a day, and the minute of the day at which each begins. */
int student_sessions(struct student *s, int day, int *minute);

/* The mark that is given for a turn that was clean or not. */
enum mark student_marks(struct student *s, bool clean);

/* Whether no mark is given where one could be. */
bool student_forgets(struct student *s);

/* Whether the playing is silenced in this turn, or something hurts. */
bool student_stops(struct student *s);
bool student_hurts(struct student *s);

/* Work turns after which the student leaves; none: INT32_MAX. */
int student_leaves(struct student *s);

/* A finger left out today, 0 none; metres is what each did in seven days. */
int student_sore(struct student *s, int day, const double *metres);

/* The pulses of the highest rung. */
int top_pulses(const struct routine *r);

/* --- sitting.c: one sitting of the real session --- */

struct watch; /* what is looked at while it is played */

/* False: the plan held nothing for today. */
bool sitting_play(struct student *s, const struct routine *r, struct past *p,
    struct moment now, enum marking marking, int sore, struct watch *w);

/* --- watch.c: what must hold, and what is counted --- */

/* What went wrong in one student's course, by kind. */
enum broken {
	BROKEN_CAP,	/* a session went past its cap */
	BROKEN_TWICE,	/* a finger twice running, with more than one */
	BROKEN_REVISIT, /* an earlier stage was kept waiting too long */
	BROKEN_REST,	/* played on a day on which nothing may be played */
	BROKEN_PAST,	/* worked on a stage the file did not open */
	BROKENS
};

extern const char *const broken_name[BROKENS];

enum { LOADS = 6 };

extern const char *const load_name[LOADS];

struct stage_seen {
	int sightings; /* as a recap */
	int gap_sum;   /* plans with a recap between two of them */
	int gap_max;
	int waiting; /* plans with a recap since it was last seen */
	int days_on; /* practice days of work */
};

struct result {
	enum habit habit;
	enum teacher teacher;
	bool done;
	int days; /* from the first day to the end */
	int practised, sessions, rests, cut_off;
	int backs, on_again, aways; /* as where_on tells */
	int recap_only;
	int good_waits; /* most practice days a stage waited though good */
	int held_days;	/* most practice days on one stage */
	int missing[MISSING_KINDS]; /* practice days by what was missing ... */
	int missing_good[MISSING_KINDS];   /* ... though truly good */
	int let_on;			   /* stages gone on from */
	double let_on_weakest[STAGES_MAX]; /* true share of clean, cold */
	struct stage_seen seen[STAGES_MAX];
	int weeks;		   /* with at least a session */
	double share_sum[FINGERS]; /* of each finger's part of a week's work */
	double least_sum, least;   /* of the weakest finger's part */
	int metres[FINGERS][METRES_BINS]; /* days by metres in seven days */
	double metres_max[FINGERS];
	int forecasts, forecasts_held;
	int plans, load[LOADS]; /* plans, and those that were eased */
	int broken[BROKENS];
	char tell[TELL_MAX]; /* the first thing that broke, in words */
	uint64_t digest;
};

struct watch {
	const struct routine *routine;
	struct result *result;
	int work_turns[FINGERS]; /* of the week */
	double day_metres[DAYS_MAX + 1][FINGERS];
	int day; /* since the beginning */
	int last_unit, last_block;
};

/* Which of the ways a week is kept from being too much, of all plans. */
void watch_load(struct watch *w, const struct plan *p);
void watch_plan(struct watch *w, const struct plan *p);
void watch_turn(
    struct watch *w, const struct session *s, const struct turn_row *row);
void watch_end(struct watch *w, const struct session *s);
void watch_day(struct watch *w);
void watch_week(struct watch *w);
/* Metres of each finger in the seven days up to today. */
void watch_metres(const struct watch *w, double *metres);
void watch_break(struct watch *w, enum broken b, const char *what, int number);

/* --- course.c: a whole programme --- */

void course_run(struct result *out, const struct routine *r, enum habit h,
    enum teacher t, uint64_t seed, uint64_t number);

/* --- trial.c: one rule at a time --- */

enum { TRIAL_LONG = 121 }; /* days: it did not come to an end */

/* Days until who is clean so often is ready, 13: more than 12. */
int gate_run(const struct routine *r, double clean, bool ladder, uint64_t seed,
    uint64_t number);

/* A routine in which earlier stages might be forgotten. */
struct revisit {
	int stages, cap_ms;
	int clean_percent;
	int longest, allowed; /* sessions that a stage waited */
	int backs, ons;	      /* how often one stage back, and on again */
};

void revisit_run(
    struct revisit *v, const struct routine *r, uint64_t seed, uint64_t number);

/* Practice days after so many days away until the stage is worked on again. */
int away_run(const struct routine *r, double clean, int away, uint64_t seed,
    uint64_t number);

/*
 * Practice days, each turn clean, until a stage is ready after a finger was
 * left out for so many.
 */
int healed_run(
    const struct routine *r, int sore_days, uint64_t seed, uint64_t number);

/* --- table.c --- */

enum { GATES = 5 };

extern const double gate_clean[GATES], gate_6[GATES], gate_12[GATES];

/* How many were let through by day 6 and 12, without and with the ladder. */
struct gate {
	int students;
	int by_6[2], by_12[2];
};

enum {
	REVISITS = 12,
	AWAYS = 4,
	AWAY_STUDENTS = 25,
	HEALED = 4,
};

extern const int away_days[AWAYS], healed_days[HEALED];

/* The trials: what each of them came to. */
struct trials {
	struct gate gate[GATES];
	struct revisit revisit[REVISITS];
	int away[GATES][AWAYS][AWAY_STUDENTS];
	int healed[HEALED];
};

void table_print(const struct routine *r, const struct result *result,
    int students, const struct trials *trials);

/* Metres of a finger in a week of six sessions at the widest stage. */
double base_metres(const struct routine *r, int finger);

/* --- check.c --- */

/* One line for each thing that must hold; how many do not. */
int check_all(const struct routine *r, const struct result *result,
    int students, const struct trials *trials);

#endif
