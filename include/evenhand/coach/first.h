/*
 * first.h - the first minutes: the program taught by doing
 *
 *	WELCOME ─▶ FORWARD ─▶ BACK ─▶ LISTEN ─▶ HEAR ─▶ MARK ─▶ TRY ─▶ LAST
 *	   │                            └────(left out)──▲└──(left out)──▲ │
 *	   └─ skipped ───────────────────────────────────────────────────┴─┴▶ OVER
 *
 * Who never practised here learns the two keys, hears one turn and marks
 * another, and then comes to the session's own first page.  HEAR and TRY are a
 * session on a plan of one finger and two bows, so the page that is seen and
 * the sounds that are heard are those of any practice.  Nothing of it is kept:
 * no row for a journal comes from here.
 *
 * It stands before a session and in its place:
 *
 *	first_begin(&f, &session, &wish, rate, first_due(history, seen), &out)
 *	first_step(&f, &input, &out)	instead of session_step
 *	first_wake(&f)			instead of session_wake
 *	first_waits(&f)			instead of session_waits
 *
 * While first_shows(), an EFFECT_PAGE means the page of f.part, and the playing
 * is drawn from the session as always.  Once OVER, all goes to the session, and
 * when the first minutes were not due it is so from the beginning.
 *
 * Two keys are enough everywhere; back on the first page and q on any of them
 * skip what is left.  When something hurts, the session begins with its own
 * question where.  Three minutes without a key end it all.
 *
 * Holds pointers into itself: do not copy.  The session, the routine and the
 * history are borrowed and must outlive it.  One thread.
 */
#ifndef EVENHAND_COACH_FIRST_H
#define EVENHAND_COACH_FIRST_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/coach/session.h"

enum first_part {
	FIRST_WELCOME, /* what this is, and the cautions */
	FIRST_FORWARD, /* press forward */
	FIRST_BACK,    /* press back */
	FIRST_LISTEN,  /* what will be heard */
	FIRST_HEAR,    /* it sounds: PAGE_PLAY of the session */
	FIRST_MARK,    /* when and how to mark */
	FIRST_TRY,     /* it sounds, and can be marked: PAGE_PLAY */
	FIRST_LAST,    /* what else there is */
	FIRST_SILENT,  /* HEAR or TRY was silenced */
	FIRST_PAIN,    /* does something hurt? */
	FIRST_OVER,    /* the session goes on */
};

enum { FIRST_WORDS_MAX = 40 };

/* Read it to draw a page, change it only by stepping. */
struct first {
	struct session *session;
	struct plan_wish wish; /* of the session that follows */
	int rate;
	enum first_part part;
	enum first_part silenced; /* FIRST_SILENT: HEAR or TRY */
	enum first_part slip_to;  /* FIRST_PAIN: where nothing hurts leads */
	int64_t now;		  /* frame of the last input */
	int64_t last_key, last_press;
	int64_t open_at;    /* the page came by itself: no key before this */
	int64_t lost_ms;    /* in gaps */
	bool silent_device; /* sound was lost and is not back yet */
	bool tried;	    /* a turn was there to be marked */
	enum mark mark;	    /* and this mark it got */

	struct routine routine; /* one stage, one finger */
	char title[FIRST_WORDS_MAX], cue[FIRST_WORDS_MAX];
	struct effects inner; /* of the session, on their way out */
};

/* Whether they should be shown: nobody sat here, and they were not seen. */
bool first_due(const struct history *h, bool seen);

/*
 * Begins the first minutes, or with teach false the session itself; the first
 * page is an effect.  The wish is that of the session.
 */
void first_begin(struct first *f, struct session *s, const struct plan_wish *w,
    int rate, bool teach, struct effects *out);

/* One step, with the contract of session_step. */
void first_step(struct first *f, const struct input *in, struct effects *out);

/* The next frame at which it must be stepped; INT64_MAX if none. */
int64_t first_wake(const struct first *f);

/* Whether it waits for a key, with no clock of music running. */
bool first_waits(const struct first *f);

/* Whether pages are its own and not the session's. */
bool first_shows(const struct first *f);

/* Whether HEAR or TRY sounds: the session's PAGE_PLAY is to be drawn. */
bool first_plays(const struct first *f);

/* The keys of its page, in one sentence. */
struct message first_help(const struct first *f);

#endif
