/*
 * plan.h - today's session before it is played, and why it is so
 *
 * plan = f(routine, history, now, marking): immutable, and the same input
 * gives the same bytes.  Times are ms from the first sound.
 *
 *	air 0:00 │ recap 0:28 │ recap 1:24 │ work 2:20 round 1, 2, 3 │ 4:52
 *
 * A block begins with a lead-in (settling and count-in), the air block too.
 * Its rounds follow; each turn of a round is one unit.  The rung of a work
 * block may change between rounds while it is played (rule F3), which moves
 * nothing: the bow is the clock.
 *
 * The air has one turn a round, a swing of four bow lengths without a unit or a
 * rung; it is BLOCK_AIR too when it is the stage worked on.
 *
 * What a hurt finger would have played is taken out after all else is worked
 * out, so the session gets shorter and nobody else gets more.  Later rounds
 * then hold as many turns as there are units left, the last one perhaps fewer.
 *
 * Pure values without pointers into anything but the routine's text.
 */
#ifndef EVENHAND_COACH_PLAN_H
#define EVENHAND_COACH_PLAN_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/date.h"
#include "evenhand/base/message.h"
#include "evenhand/coach/forecast.h"
#include "evenhand/coach/guard.h"
#include "evenhand/coach/history.h"
#include "evenhand/coach/standing.h"
#include "evenhand/coach/where.h"
#include "evenhand/routine/routine.h"

enum {
	PLAN_DRY_MAX = 8, /* sessions of a dry run */
	PLAN_BLOCKS_MAX = 16,
	PLAN_TURNS_MAX = 512,
	PLAN_REASONS_MAX = 90,
	PLAN_CAUTIONS_MAX = 10,
	NEW_STAGE_DAYS = 14,	   /* a stage is new for so long */
	NEW_STAGE_CAP_MS = 300000, /* and then a session takes no longer */
};

/* When the student marks: in the change after each turn, or each round. */
enum marking { MARKING_TURN, MARKING_ROUND };

struct plan_turn {
	int16_t unit;	  /* index into the routine's units, -1 air */
	int16_t round;	  /* 0-based in the block */
	int32_t start_ms; /* first bow, from the first sound */
};

struct plan_block {
	enum block_kind kind;
	int stage;
	int pulses;   /* the rung it begins at */
	int start_ms; /* its lead-in begins */
	int end_ms;
	int rounds;
	int first_turn, turns; /* in plan.turn */
};

/* [C] common practice, [P] published, [O] our own choice. */
enum ground { GROUND_COMMON = 'C', GROUND_PUBLISHED = 'P', GROUND_OWN = 'O' };

struct reason {
	struct message message;
	enum ground ground;
	int rule;    /* 1..7 for F1..F7, 0 none */
	bool detail; /* shown only when asked why */
};

/* Whether anything is played today. */
enum verdict {
	VERDICT_PRACTISE,
	VERDICT_REST_TODAY, /* pain today, or nothing left that may be played */
	VERDICT_ASK_FIRST,  /* second pain day in 14: until seen: yes */
};

struct plan {
	enum verdict verdict;
	enum marking marking;
	struct moment now;
	int day; /* practice day */
	int cap_ms;
	int length_ms; /* end of the last change */
	int blocks;
	struct plan_block block[PLAN_BLOCKS_MAX];
	int turns;
	struct plan_turn turn[PLAN_TURNS_MAX];
	int bows; /* whole plan, the air not counted */

	int work_stage;
	struct where where;	  /* why it is that stage */
	struct standing standing; /* how it stands, before today */
	struct guard guard;	  /* signs of hurry, for the lesson too */
	int day_on_stage;	  /* 1 on the first practice day on it */
	int share[UNITS_MAX];	  /* work turns planned, before dropping */
	int dropped[UNITS_MAX];	  /* of those, left out for a hurt finger */
	uint32_t first_go;	  /* bit s: stage s has no first go yet today */
	int clean_rounds; /* 1: the last round was all clean at this rung (F3) */
	bool climbed;	  /* no rung is gained in this session */
	bool slower;	  /* one rung lower after the first round (F7) */
	uint32_t hurt;	  /* bit f: finger f (1..4) is left out */
	bool air_only;	  /* sore elsewhere: nothing but the air */

	int reasons;
	struct reason reason[PLAN_REASONS_MAX];
	int cautions;
	struct message caution[PLAN_CAUTIONS_MAX];
};

/* What a plan is made from; borrowed for the call. */
struct plan_wish {
	const struct routine *routine;
	const struct history *history;
	struct moment now;
	enum marking marking;
	uint32_t hurt; /* fingers left out today, bit 1..4 */
	bool air_only;
	int stage; /* 1 + one to work on instead, within the limit; 0 none */
};

/* Never fails: with nothing possible the plan has no block and says why. */
void plan_make(struct plan *p, const struct plan_wish *w);

/*
 * One stage of today alone: that of the wish, or else the one worked on, at so
 * many pulses (on the ladder; 0: as today) and for so many rounds or swings
 * (0: as today).  False when today holds no work on that stage (*most is then
 * 0; the plan tells why) or no more than *most rounds go under its cap.
 */
bool plan_alone(struct plan *p, const struct plan_wish *w, int pulses,
    int rounds, int *most);

/* What is asked before every start, and on the first day before the first. */
struct message plan_before_start(const struct history *h);

/* Puts a forecast among the reasons of a plan for the same routine. */
void plan_add_forecast(
    struct plan *p, const struct forecast *f, const struct routine *r);

/*
 * The plan of a stage without any history but this many earlier sessions of
 * it (0..PLAN_DRY_MAX), one a day, whole, nothing shaky and no rung gained:
 * what `evenhand check` shows as its dry run.
 */
void plan_dry(struct plan *p, const struct routine *r, int stage, int earlier);

/* What takes a turn, as a word: finger, pair of fingers, pair of strings. */
enum message_id plan_unit_word(enum take take);

/* ms of the change after a turn of a round, for a way of marking. */
int plan_change_ms(
    const struct routine *r, enum marking m, int turn, int turns);

#endif
