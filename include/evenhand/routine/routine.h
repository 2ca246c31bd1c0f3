/*
 * routine.h - the teacher's routine as the program holds it
 *
 * Everything the YAML file may say, with defaults filled in and values
 * checked: stages in order, and the rules of practice.  Times are whole
 * milliseconds (multiples of 10), travel is in cents.  A homework file laid
 * over a routine gives another routine.
 *
 * A routine is immutable once read and lives in its own arena; text is UTF-8
 * without control characters, NULL only where said.  Any thread may read.
 */
#ifndef EVENHAND_ROUTINE_ROUTINE_H
#define EVENHAND_ROUTINE_ROUTINE_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/arena.h"
#include "evenhand/music/instrument.h"

enum {
	STAGES_MAX = 24,
	UNITS_MAX = 8,	/* fingers, pairs or strings of a round */
	LADDER_MAX = 6, /* rungs */
	CHECKS_MAX = 8, /* self-checks of a stage, and feel lines */
	LESSON_MARKS_MAX = 60,
	CUE_COLUMNS = 10,
	ID_MAX = 32,	    /* bytes of a stage id with its zero */
	UNIT_NAME_MAX = 12, /* "1", "0-1", "D-A" with its zero */
	BOWS_EACH_MAX = 8,
	PULSES_MAX = 16,    /* in one bow */
	AIR_SWING_BOWS = 4, /* one swing of the air stage, in bow lengths */
	SETTLE_MS = 4000,   /* stillness before a count-in */
};

enum take { TAKE_FINGERS, TAKE_PAIRS, TAKE_STRINGS };
enum motion { MOTION_SLIDE, MOTION_DROP, MOTION_CROSSING };
enum make_up { MAKE_UP_INTERRUPTED, MAKE_UP_CATCH_UP, MAKE_UP_NONE };
enum decided_by { DECIDED_BY_TEACHER, DECIDED_BY_STUDENT };

/* What takes a turn. */
struct unit {
	char name[UNIT_NAME_MAX]; /* as written: "1", "0-1", "D-A" */
	int from, to; /* finger, or pair of fingers (0 = open), or strings */
};

struct stage {
	char id[ID_MAX];
	char was[ID_MAX]; /* "" when it never had another id */
	const char *title;
	const char *cue; /* "" when none */
	const char *say; /* "" when none */
	bool in_the_air;
	int string; /* index into the setup's strings, -1 none */
	enum motion motion;
	int from;	  /* semitones of finger 1 above the open string */
	int travel_cents; /* 0 in the air and where motion has none */
	int start_pulses; /* 0: one below the top rung */
	int minutes_ms;	  /* own cap, 0: the session's */
	bool upper_near;  /* upper_note: near */
	bool patience;
	int fade_after; /* pulses go quiet after so many bows, 0 never */
	bool because;	/* the teacher gave a reason for an odd value */
	int checks, feels;
	const char *check[CHECKS_MAX];
	const char *feel[CHECKS_MAX];
	int line, column; /* where the stage's id stands */
};

/* What the teacher saw in a lesson; counts over the student's own marks. */
struct lesson_mark {
	int day; /* day number, see date.h */
	int stage;
	uint32_t clean; /* bit u: unit u of the order */
	uint32_t shaky;
};

struct routine {
	const char *name;
	const char *written_by;	  /* "" when not given */
	const char *homework_for; /* "" without a homework file */
	int edition;
	struct setup setup;
	bool left_handed; /* bow_hand: left */

	int bow_ms; /* T, 1000..20000 */
	int ladder_count;
	int ladder[LADDER_MAX]; /* pulses, rising */
	int count_in_bows;	/* 0..4 */

	enum take take;
	int units;		     /* F, 1..UNITS_MAX */
	struct unit unit[UNITS_MAX]; /* in the teacher's order */
	int bows_each;		     /* b */
	int change_ms;		     /* r, at least 2000 */

	int cap_ms; /* C */
	int per_day, hours_apart, days_a_week;
	int recap_num, recap_den; /* most of the cap recap may take */

	int move_days, move_clean, move_of;
	enum decided_by decided_by;
	enum make_up make_up;
	bool so_far_given;
	int so_far[UNITS_MAX]; /* turns before the journal began */

	int stages;
	struct stage stage[STAGES_MAX];

	int work_on;	     /* stage index */
	int no_further_than; /* stage index */
	const char *note;    /* "" when none */
	bool seen;
	int lesson_marks;
	struct lesson_mark lesson_mark[LESSON_MARKS_MAX];

	uint64_t fingerprint; /* of the text of routine and homework */
	const char *text;     /* that text, for the journal */
	struct arena arena;
};

/* The stage with this id, or -1. */
int routine_stage(const struct routine *r, const char *id);

/* The unit with this name, or -1. */
int routine_unit(const struct routine *r, const char *name);

/* Index of a pulse count on the ladder, or -1. */
int routine_rung(const struct routine *r, int pulses);

/* The pulse count a new stage starts at: start_pulses, else one below top. */
int routine_start_pulses(const struct routine *r, int stage);

/* Semitones above the open string where a unit's slide begins and ends. */
void routine_slide(
    const struct routine *r, int stage, int unit, double *from, double *to);

/*
 * Metres of one whole turn of a unit at a pulse count; 0 in the air and for
 * motions that do not slide.
 */
double routine_turn_m(const struct routine *r, int stage, int unit, int pulses);

/* Mean fingertip speed in m/s of a unit at a pulse count. */
double routine_speed(const struct routine *r, int stage, int unit, int pulses);

/* T b + r of a turn, and a whole round F(bT + r), in ms. */
int routine_turn_ms(const struct routine *r);
int routine_round_ms(const struct routine *r);

/* L: settling and count-in, in ms. */
int routine_lead_ms(const struct routine *r);

/* L + 4T + r: the air stage inside a later stage's session, in ms. */
int routine_air_ms(const struct routine *r);

/* Frees a routine and all it holds; NULL is allowed. */
void routine_free(struct routine *r);

#endif
