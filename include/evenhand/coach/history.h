/*
 * history.h - all that was practised, as the planner reads it
 *
 * One immutable value, loaded once from the journal at the start.  Whole-life
 * roll-ups (tallies) stay small however long the student practises; single
 * turns are kept only for the last HISTORY_TURN_DAYS days, and always for the
 * last sitting.  Everything is in the order it happened.
 *
 * Stages and units are named by their text here, because a journal outlives
 * editions of a routine; history_stage finds a routine's stage by id or was.
 * An id means the same exercise wherever it stands on the same instrument.  In
 * a history that was loaded for a routine, names of what was practised on
 * another instrument begin with ELSEWHERE, as no id and no unit does: they match
 * nothing of the routine, and what they stand for still counts as practised.
 *
 * Lives in its own arena.  Any thread may read.
 */
#ifndef EVENHAND_COACH_HISTORY_H
#define EVENHAND_COACH_HISTORY_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/arena.h"
#include "evenhand/base/date.h"
#include "evenhand/routine/routine.h"

enum {
	HISTORY_TURN_DAYS = 28,
	HISTORY_TALLY_DAYS = 400, /* for a plan; more changes none */
	SEEN_MAX = 8,		  /* stages kept of one sitting */
	ELSEWHERE = '/',
	PAST_STAGE_MAX = ID_MAX + 1, /* bytes of a name with that sign */
	PAST_UNIT_MAX = UNIT_NAME_MAX + 1,
	PAST_INSTRUMENT_MAX = 16,
};

enum mark { MARK_NONE, MARK_CLEAN, MARK_SHAKY };

enum block_kind { BLOCK_AIR, BLOCK_RECAP, BLOCK_WORK };

/* How a sitting ended.  The numbers stand in journals: never reuse one. */
enum ended {
	ENDED_UNDER_WAY = 0, /* never said to end: a cut-off */
	ENDED_WHOLE = 1,     /* all that was planned */
	ENDED_CAP = 2,	     /* time was up first (after silences) */
	ENDED_EARLY = 3,     /* the student ended it */
	ENDED_PAIN = 4,
	ENDED_NO_KEY = 5,    /* three minutes without a key */
	ENDED_INPUT = 6,     /* the input went away */
	ENDED_NOT_TODAY = 7, /* left before the first sound */
};

/* The numbers stand in journals, too. */
enum note_kind {
	NOTE_PAIN = 1,
	NOTE_SKIN = 2,
	NOTE_SORE = 3,
	NOTE_QUESTION = 4,
	NOTE_LATER = 5 /* asked for a stage that is not opened yet */
};

/* One turn as it was played: what a journal row holds for the planner. */
struct past_turn {
	int64_t sitting; /* which sitting, as in past_sitting.key */
	int day;	 /* practice day */
	enum block_kind kind;
	char stage[PAST_STAGE_MAX];
	char unit[PAST_UNIT_MAX]; /* "" in the air */
	int round;		  /* 0-based in its block */
	int pulses;		  /* the rung */
	int bows_asked, bows_done;
	enum mark mark;
	bool first_go;
	int resets; /* stops and restarts of this turn */
	/* What was heard of it; 0 where it was not, or not surely. */
	int bows_listened, bows_full; /* full: every top asked was heard */
	float travel_share;	      /* of the travel that was asked */
	float rate_hz, width_cents;   /* of a vibrato */
};

/* Roll-up of one stage, practice day, unit, kind of block and instrument. */
struct tally {
	char stage[PAST_STAGE_MAX];
	char unit[PAST_UNIT_MAX];
	int day;
	enum block_kind kind;
	int turns; /* whole turns */
	int bows, pulses;
	int64_t slide_um;    /* micrometres along the string */
	int clean, shaky;    /* marks of all rounds */
	enum mark first_go;  /* mark of the first go, if one was made */
	int first_go_pulses; /* its rung, 0 when there was no first go */
	int resets;
	char instrument[PAST_INSTRUMENT_MAX]; /* "" unknown: any */
	int bows_listened, bows_full;	      /* as of a turn, in all turns */
};

/* One sitting. */
struct past_sitting {
	int64_t key; /* rises in the order of the journal */
	int day;
	struct moment began;
	int64_t ended_utc; /* when it was said to end, 0 when unknown */
	int length_ms;	   /* first sound to last mark */
	int cap_ms;
	enum ended ended;
	char work_stage[PAST_STAGE_MAX];
	char instrument[PAST_INSTRUMENT_MAX]; /* "" unknown: any */
	char asked_stage[ID_MAX]; /* of the file that day, "" when unknown */
	int blocks; /* stages seen in it, 0 before the first sound */
	char seen[SEEN_MAX][PAST_STAGE_MAX]; /* the first of them */
	bool recap[SEEN_MAX];		     /* seen as a recap */
};

/* Turns planned and played of one unit in the work blocks of a sitting. */
struct past_share {
	int64_t sitting;
	char stage[PAST_STAGE_MAX];
	char unit[PAST_UNIT_MAX];
	int planned; /* before a hurt finger's turns were dropped */
	int dropped; /* left out because the finger was hurt */
	int played;  /* whole turns */
};

struct past_note {
	int64_t sitting;
	int day;
	enum note_kind kind;
	int finger;	   /* 1..4 for the skin of one finger, else 0 */
	const char *words; /* "" when none */
};

struct history {
	int sittings;
	struct past_sitting *sitting;
	int turns;
	struct past_turn *turn;
	int tallies;
	struct tally *tally;
	int shares;
	struct past_share *share;
	int notes;
	struct past_note *note;
	struct arena arena;
};

/* Whether a note is of something that hurt or was sore. */
bool history_hurts(const struct past_note *n);

/*
 * The words of a note as pages show them: a place that was chosen is kept in
 * English, all else as the student wrote it.  Borrowed.
 */
const char *history_place(const char *words);

/*
 * Puts the sign before every name of stage and unit that was practised on
 * another instrument than this one.  What has no instrument counts as of any.
 */
void history_set_apart(struct history *h, const char *instrument);

/* Whether a name has the sign: practised on another instrument. */
bool history_elsewhere(const char *name);

/* Whether a stage name of the journal means this stage (its id or was). */
bool history_is_stage(const struct routine *r, int stage, const char *name);

/* The stage of a routine that a journal's name means, or -1. */
int history_stage(const struct routine *r, const char *name);

/* Whether there was a sitting, played or not; NULL is a history of none. */
bool history_begun(const struct history *h);

/* Whether anything was played in a sitting. */
bool history_sat(const struct past_sitting *s);

/* The same, on this instrument: what counts as a session of a routine. */
bool history_sat_here(const struct past_sitting *s);

/* UTC seconds at which it ended, as far as is known. */
int64_t history_end(const struct past_sitting *s);

/* Whether a sitting came to its work, and this stage was it. */
bool history_worked(
    const struct routine *r, const struct past_sitting *s, int stage);

/* Whether a sitting of this practice day worked on a stage. */
bool history_worked_on(
    const struct history *h, const struct routine *r, int stage, int day);

/* Practice days on which a stage was worked on (not recapped). */
int history_days_on(
    const struct history *h, const struct routine *r, int stage);

/* The first such day, or -1. */
int history_first_day_on(
    const struct history *h, const struct routine *r, int stage);

/* Whether a first go of this stage was already made on a practice day. */
bool history_gone_on(
    const struct history *h, const struct routine *r, int stage, int day);

/* Frees what it holds; the struct itself is the caller's. */
void history_done(struct history *h);

#endif
