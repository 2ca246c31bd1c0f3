/*
 * session.h - one sitting, as a state machine
 *
 *	session_step(state, input) -> state, effects
 *
 * Time inside is frames only; a key carries the frame at which it was pressed.
 * The shell gives wall time once, in the plan, and after that only notices.
 * The same inputs give the same effects in every shell: full screen, lines,
 * muted, mirrored, paced or not.
 *
 *	SORE ─▶ TODAY ─▶ PLAY ⇄ SILENT ─▶ PAIN?
 *	  └▶ WHERE ▲        └──────▶ END ─▶ QUESTION ─▶ OVER
 *
 * The shell's duty: before it lets the engine's clock pass session_wake(),
 * step with INPUT_FRAME at that very frame.  The session decides the next
 * passage DECIDE_MS before it must sound.
 *
 * Plain values; routine and history are borrowed and must outlive it.  One thread.
 */
#ifndef EVENHAND_COACH_SESSION_H
#define EVENHAND_COACH_SESSION_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/message.h"
#include "evenhand/coach/plan.h"
#include "evenhand/score/score.h"

enum {
	SESSION_EFFECTS_MAX = 24,
	SESSION_WORDS_MAX = 200, /* bytes of a question */
	DECIDE_MS = 250, /* a passage is decided so long before it sounds */
	REPEAT_MS = 250, /* a held or bouncing key */
	LATE_MARK_MS =
	    500, /* a mark in the next bow, still for the turn before */
	NO_KEY_MS = 180000, /* three minutes without a key end the session */
};

enum key {
	KEY_FORWARD, /* Page Down, Right, Down, Enter; the right pedal */
	KEY_BACK,    /* Page Up, Left, Up, Backspace; the left pedal */
	KEY_SILENCE, /* Space */
	KEY_CLEAN,   /* c */
	KEY_SHAKY,   /* s */
	KEY_HURT,    /* h */
	KEY_LEAVE,   /* q */
	KEY_HELP,    /* ? */
	KEY_DIGIT,   /* 0-9, in input.digit */
	KEY_OTHER,   /* counts as a sign of life, does nothing */
};

enum input_kind {
	INPUT_FRAME, /* the engine reached this frame */
	INPUT_KEY,
	INPUT_WORDS, /* a line of text, answering PAGE_QUESTION */
	INPUT_SOUND_LOST,
	INPUT_SOUND_BACK,
	INPUT_DROPOUT, /* sound was interrupted; counted with the turn */
	INPUT_GAP,     /* the wall clock jumped: suspended or stopped */
	INPUT_END,     /* no more keys will come */
};

struct input {
	enum input_kind kind;
	int64_t frame; /* engine frame, never falls */
	enum key key;
	int digit;
	const char *words; /* INPUT_WORDS, borrowed for the call */
};

/* What is to be seen; line mode says it in words. */
enum page {
	PAGE_SORE,  /* warm hands, short nails, nothing sore? */
	PAGE_WHERE, /* where is it sore? one choice at a time */
	PAGE_REST,  /* nothing is played today, and why */
	PAGE_TODAY, /* today's plan */
	PAGE_PLAY,
	PAGE_SILENT,	 /* stopped: go on, or does something hurt? */
	PAGE_PAIN,	 /* does something hurt? */
	PAGE_PAIN_WHERE, /* where does it hurt? */
	PAGE_LEAVE,	 /* nothing hurts: go on, or end here? */
	PAGE_END,	 /* what was done, what to keep, when next */
	PAGE_QUESTION,	 /* room for a question to the teacher */
	PAGE_OVER,
};

enum effect_kind {
	EFFECT_PAGE,	/* show or read out effect.page */
	EFFECT_SAY,	/* one event in words: effect.message */
	EFFECT_PASSAGE, /* play effect.passage from effect.frame on */
	EFFECT_SILENCE, /* stop sounding now */
	EFFECT_BEGIN,	/* the first sound: keep the sitting */
	EFFECT_TURN,	/* keep effect.turn */
	EFFECT_MARK,	/* keep the mark of turn effect.number */
	EFFECT_NOTE,	/* keep effect.note */
	EFFECT_END,	/* keep how it ended: effect.ended, effect.length_ms */
	EFFECT_OVER,	/* nothing more will happen */
};

/* The journal row of one turn, as the session knows it. */
struct turn_row {
	int number; /* of the sitting, 0.. */
	enum block_kind kind;
	int stage;
	int unit; /* -1 in the air */
	int round;
	int pulses; /* the rung */
	int bows_asked, bows_done;
	bool first_go;
	int resets; /* stops and restarts of this turn */
	int dropouts;
	int64_t start_ms; /* from the first sound */
	int64_t slide_um;
};

struct note_row {
	enum note_kind kind;
	int finger; /* 0: not the skin of one finger */
	char words[SESSION_WORDS_MAX];
};

struct effect {
	enum effect_kind kind;
	enum page page;
	struct message message;
	struct passage passage;
	int64_t frame;
	struct turn_row turn;
	int number;	 /* EFFECT_MARK */
	enum mark mark;	 /* EFFECT_MARK */
	int64_t mark_ms; /* EFFECT_MARK, from the first sound */
	struct note_row note;
	enum ended ended;
	int64_t length_ms; /* EFFECT_END, first sound to last mark */
};

struct effects {
	int count;
	struct effect at[SESSION_EFFECTS_MAX];
};

/* A turn that was played or is being played, for marks and the end page. */
struct played_turn {
	int block; /* of the plan */
	int unit, round, pulses;
	int bows_done;
	enum mark mark;
	bool first_go;
};

/* Open and copyable; read it to draw a page, change it only by stepping. */
struct session {
	struct plan_wish wish; /* routine and history are borrowed */
	struct plan plan;
	int rate;
	enum page page;
	int choice;	    /* on PAGE_WHERE, PAGE_PAIN_WHERE */
	bool silent_device; /* sound was lost and is not back yet */

	int64_t now;	     /* frame of the last input */
	int64_t first_sound; /* frame, -1 before */
	int64_t last_key;    /* frame of the last press that counted */
	int64_t last_press;  /* frame of the last press of any kind */

	/* The passage that sounds or is about to. */
	int block, round; /* of the plan; block = plan.blocks when done */
	int first_turn;	  /* first turn of the round in this passage */
	struct passage passage;
	int64_t passage_frame; /* its start */
	int turn;	       /* turn of the passage under way, -1 lead-in */
	bool next_decided;     /* the following passage has been issued */
	int pulses;	       /* rung of the round under way */
	int resets;	       /* of the turn under way */
	int dropouts;	       /* of the turn under way */
	int bows_kept;	       /* bows of the block so far, for fading */
	int cut_turns;	       /* turns of the round the cap left out */

	/* Rule F3 as it goes. */
	int clean_rounds;
	bool climbed;

	int played; /* turns in turn[] */
	struct played_turn turn_played[PLAN_TURNS_MAX];
	int64_t last_mark; /* frame of the last mark or end of change */
	enum ended ended;
	bool ended_kept;
};

/*
 * Begins a sitting on a plan at a rate; the first page is an effect.  The
 * wish is kept by value so that a sore finger can make the plan anew: routine
 * and history must outlive the session.
 */
void session_begin(struct session *s, const struct plan_wish *w, int rate,
    struct effects *out);

/* One step.  Inputs after the session is over do nothing. */
void session_step(
    struct session *s, const struct input *in, struct effects *out);

/* The next frame at which the session must be stepped; INT64_MAX if none. */
int64_t session_wake(const struct session *s);

/* Whether it waits for a key, with no clock of music running. */
bool session_waits(const struct session *s);

/* Bows of each unit and slide metres played so far, work and recap. */
int session_bows(const struct session *s, int unit);
double session_metres(const struct session *s);

#endif
