/*
 * session.h - one sitting, as a state machine
 *
 *	session_step(state, input) -> state, effects
 *
 * Time inside is frames only; a key carries the frame at which it was pressed.
 * The shell gives wall time once, in the plan, and after that only notices.
 * The same inputs give the same effects in every shell: full screen, lines,
 * muted, mirrored, paced or not.  What a microphone heard changes words and
 * nothing else: no mark, no turn, no time.
 *
 *	SORE ─▶ TODAY ─▶ PLAY ⇄ SILENT ─▶ PAIN ─▶ LEAVE ─▶ END ─▶ QUESTION
 *	  └▶ WHERE ▲  h anywhere ─▶ PAIN_WHERE ─▶ END       └──▶ OVER ◀──┘
 *
 * The shell's duty: before it lets the engine's clock pass session_wake(),
 * step with INPUT_FRAME at that very frame.  The session decides the next
 * passage DECIDE_MS before it must sound.  Frames count from about when
 * session_begin is called.
 *
 * What a mark key does.  c is forward and s is back, everywhere.
 *
 *	turn marking, in the change after each turn
 *		forward clean, back shaky; another key changes the mind, the
 *		same key again takes the mark back
 *	round marking, in the change after the last turn of a round
 *		forward all clean, back all shaky, the same again: no marks
 *		a digit (finger, or place in the order): that one shaky, the
 *		others clean; further digits add fingers or take them out
 *		again, and with none left there are no marks
 *
 * A mark key still counts in the first LATE_MARK_MS after such a change, in a
 * bow or a lead-in.  In any other moment of PLAY forward, back and Space are
 * silence; Space is silence in the changes too.  Digits never are.
 *
 * A press less than REPEAT_MS after the press before it, taken or not, is
 * ignored; only h always counts.
 *
 * Plain values; routine and history are borrowed and must outlive it.  One
 * thread.
 */
#ifndef EVENHAND_COACH_SESSION_H
#define EVENHAND_COACH_SESSION_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/message.h"
#include "evenhand/coach/listened.h"
#include "evenhand/coach/plan.h"
#include "evenhand/score/score.h"

enum {
	SESSION_EFFECTS_MAX = 24,
	SESSION_PLAYED_MAX = PLAN_TURNS_MAX + 64, /* with broken-off turns */
	SESSION_WORDS_MAX = 200,		  /* bytes of a question */
	DECIDE_MS = 250,    /* a passage is decided so long before it sounds */
	REPEAT_MS = 250,    /* a held or bouncing key */
	LATE_MARK_MS = 500, /* after a change a mark is still for before */
	STILL_MS = 120000,  /* after two, a change asks for a sign of life */
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
	/* What the shell does by itself; here as KEY_OTHER. */
	KEY_LEAF,   /* Tab: the next leaf of a long page */
	KEY_LOUDER, /* + */
	KEY_SOFTER, /* - */
	KEY_ESCAPE, /* Esc alone */
	KEY_OTHER,  /* counts as a sign of life, does nothing */
};

enum input_kind {
	INPUT_FRAME, /* the engine reached this frame */
	INPUT_KEY,
	INPUT_WORDS, /* a line of text, answering PAGE_QUESTION */
	INPUT_SOUND_LOST,
	INPUT_SOUND_BACK,
	INPUT_DROPOUT, /* sound was interrupted; counted with the turn */
	INPUT_HEARD,   /* what a microphone heard of a turn, some time later */
	INPUT_GAP,     /* the wall clock jumped: suspended or stopped */
	INPUT_END,     /* no more keys will come */
};

struct input {
	enum input_kind kind;
	int64_t frame; /* engine frame, never falls */
	enum key key;
	int digit;
	const char *words; /* INPUT_WORDS, borrowed for the call */
	int64_t lost_ms;   /* INPUT_GAP: for how long nothing went on */
	int number;	   /* INPUT_HEARD: the turn, as in EFFECT_TURN */
	const struct listened *heard; /* INPUT_HEARD, borrowed */
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
	EFFECT_BEGIN,	/* first sound, at effect.frame: keep the sitting */
	EFFECT_TURN,	/* keep effect.turn */
	EFFECT_MARK,	/* keep the mark of turn effect.number */
	EFFECT_NOTE,	/* keep effect.note */
	EFFECT_END,	/* once after a BEGIN: effect.ended, .length_ms */
	EFFECT_OVER,	/* nothing more will happen */
};

/*
 * The journal row of one turn, as the session knows it.  Turns that were
 * silenced have none; a turn that a sleeping computer broke off has one with
 * fewer bows than asked, when it came to a whole bow.  In the air are no bows.
 */
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
	/*
	 * The step came so late that there is more to do than fits: the input
	 * was not taken yet.  Carry out these effects, then step with the same
	 * input again.  Never set when session_wake is kept to.
	 */
	bool more;
	struct effect at[SESSION_EFFECTS_MAX];
};

/* What can be chosen on PAGE_WHERE; the first four are the skin of a finger. */
enum sore_choice {
	SORE_SLIP = FINGERS_MAX, /* nothing is sore: the key was a slip */
	SORE_ELSEWHERE,		 /* the air stage only */
	SORE_NOT_TODAY,
	SORE_CHOICES
};

/* And on PAGE_PAIN_WHERE; again the first four are the skin of a finger. */
enum pain_choice {
	PAIN_SLIP = FINGERS_MAX, /* nothing hurts: the key was a slip */
	PAIN_THUMB,
	PAIN_HAND,
	PAIN_WRIST,
	PAIN_ARM,
	PAIN_SHOULDER,
	PAIN_NECK,
	PAIN_NUMB, /* numb, tingling, weak or swollen */
	PAIN_ELSEWHERE,
	PAIN_CHOICES
};

/* Where a passage stands. */
enum phase { PHASE_LEAD, PHASE_BOWS, PHASE_CHANGE };

/* A turn as a place in the plan: turn of the round, round of the block. */
struct place {
	int block; /* plan.blocks: behind the last one */
	int round, turn;
};

/* A passage with what it plays and when. */
struct passing {
	struct passage passage;
	struct place from; /* its first turn */
	int pulses;	   /* the rung; 0 in the air */
	int64_t start_ms;  /* from session.origin */
	int64_t frame;	   /* its start */
	int cut_turns;	   /* turns of its round the cap left out */
};

/* A turn that was played, for marks and the end page. */
struct played_turn {
	int block; /* of the plan */
	int unit, round, pulses;
	int bows_done;
	bool whole;
	enum mark mark;
	bool first_go;
	int64_t slide_um;
	struct listened heard;
};

/* Open and copyable; read it to draw a page, change it only by stepping. */
struct session {
	struct plan_wish wish; /* routine and history are borrowed */
	struct plan plan;
	int rate;
	enum page page;
	enum page slip_to;  /* where PAIN_SLIP leads back to */
	int choice;	    /* on PAGE_WHERE, PAGE_PAIN_WHERE */
	bool silent_device; /* sound was lost and is not back yet */
	bool taught;	    /* the first minutes have just told the keys */
	bool help_owed;	    /* asked for over pulses, said in a change */
	bool back_owed;	    /* the same of sound that came back in a bow */

	int64_t now;	     /* frame of the last input */
	int64_t first_sound; /* frame, -1 before */
	int64_t last_key;    /* last press that counted, turn heard, or page */
	bool asked;	     /* since then, whether anybody is there */
	int64_t last_press;  /* frame of the last press of any kind */

	/* The passage that sounds or is about to, and the one behind it. */
	int64_t origin; /* frame: the first sound, or a restart's */
	struct passing at, next;
	bool next_decided; /* what follows is settled ... */
	bool next_none;	   /* ... and that is the end */
	enum phase phase;
	int turn;	   /* turn of the passage, -1 in the lead-in */
	int resets;	   /* of the turn under way */
	int dropouts;	   /* of the turn under way */
	struct place stay; /* while silent: what is played next */
	bool again;	   /* its bows had begun: going on is a reset */

	/*
	 * What was heard of the block before, to be told from a frame on when
	 * no mark for it can come any more; -1: nothing.
	 */
	int tell_block;
	int64_t tell_at;
	int told_block;	       /* told in this lead-in; -1: none was */
	uint32_t unheard_said; /* bit per finding that is said once */
	int64_t talk_until;    /* frame: all that was said is read aloud */

	/* Marks, and rule F3 as it goes. */
	int64_t late_until; /* a mark before this frame is for before */
	enum key marked_by; /* forward, back or digit; other: nothing yet */
	int told_pulses;    /* rung of the next round, as last said */
	bool climbed;

	int played; /* turns in turn_played[] */
	struct played_turn turn_played[SESSION_PLAYED_MAX];
	int64_t practised_to; /* frame: end of a change, or of the sound */
	int64_t lost_ms;      /* in gaps, which no frame counts */
	bool pain;	      /* something hurt; nothing more today */
	bool end_kept;	      /* EFFECT_END was given */
	enum ended ended;
};

/*
 * Begins a sitting on a plan at a rate; the first page is an effect.  The
 * wish is kept by value so that a sore finger can make the plan anew: routine
 * and history must outlive the session.
 */
void session_begin(struct session *s, const struct plan_wish *w, int rate,
    struct effects *out);

/* The same on a plan that is made already. */
void session_begin_on(struct session *s, const struct plan_wish *w,
    const struct plan *p, int rate, struct effects *out);

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

/* Frames from the first sound to the end of the last change or the silence. */
int64_t session_length(const struct session *s);

/* While silent: what forward would go on with, in one sentence. */
struct message session_staying(const struct session *s);

/* "finger 2", "fingers 0-1", "strings D-A"; M_NONE in the air. */
struct message session_unit(const struct session *s, int unit);

/*
 * Where not fingers take turns, whom each digit means in a mark: "1 for 0-1,
 * 2 for 1-2", as {0} of a message.  M_NONE where a digit is the finger's own.
 */
struct message session_digits(const struct session *s, enum message_id id);

/* What is chosen at present on PAGE_WHERE or PAGE_PAIN_WHERE. */
struct message session_choice(const struct session *s);

/* The keys of the page, in one sentence. */
struct message session_help(const struct session *s);

/* For the end page: one thing to keep, and when the next session may be. */
struct message session_keep(const struct session *s);
struct message session_next_start(const struct session *s);

/* And how the stage stands after it: ready to show, or what is missing. */
struct message session_standing(const struct session *s);

#endif
