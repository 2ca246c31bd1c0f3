/*
 * session_parts.h - what the files of the session share
 *
 *	session.c	a step: what is due, then the input
 *	session_pages.c	keys on pages, before, between and after the playing
 *	session_play.c	from passage to passage, frame by frame
 *	session_pass.c	one passage from a place in the plan, under the cap
 *	session_stop.c	silence, going on, and the ends
 *	session_marks.c	turns that were played, and their marks
 *	session_rung.c	the rung of the next round (rule F3)
 *	session_say.c	what is said in the lead-ins and changes
 *	session_heard.c	what was heard, said after the marks
 *	session_end.c	the sums and sentences of the end page
 */
#ifndef EVENHAND_COACH_SESSION_PARTS_H
#define EVENHAND_COACH_SESSION_PARTS_H

#include "evenhand/coach/session.h"

/* How a passage begins. */
enum lead {
	LEAD_NONE,  /* with a bow: a further round of a block */
	LEAD_COUNT, /* with a count-in: after a silence */
	LEAD_FULL,  /* settling and count-in: a block */
};

/* --- session.c --- */
struct effect *effect_add(struct effects *out, enum effect_kind kind);
void effect_say(struct effects *out, struct message m);
void session_show(struct session *s, enum page page, struct effects *out);
int64_t session_frames(const struct session *s, int64_t ms);

/* Said aloud at about 180 words a minute, a usual pace. */
enum { LETTERS_A_SECOND = 17 };
/* Letters of a line, and a breath. */
int talk_letters(const struct message *m);

/* --- session_pages.c --- */
void page_key(struct session *s, const struct input *in, struct effects *out);
void page_words(struct session *s, const char *words, struct effects *out);
/* Three minutes went by on a page. */
void page_alone(struct session *s, struct effects *out);
void page_input_over(struct session *s, struct effects *out);
void page_hurt(struct session *s, struct effects *out);

/* --- session_play.c --- */
void play_begin(struct session *s, struct effects *out);
void play_key(struct session *s, const struct input *in, struct effects *out);
/* The next frame at which something happens by itself, and that. */
int64_t play_due(const struct session *s);
void play_event(struct session *s, struct effects *out);
/* What would be played next. */
struct place play_place(const struct session *s);
/* A passage begins; lead says how. */
void play_enter(struct session *s, const struct passing *p);
void play_issue(const struct passing *p, struct effects *out);

/* --- session_pass.c --- */
/* The place itself, or the first one behind it that has a turn. */
struct place pass_settle(const struct plan *p, struct place at);
/* False when not even one turn from there fits under the cap. */
bool pass_make(const struct session *s, struct place from, enum lead lead,
    int64_t start_ms, int pulses, struct passing *out);
const struct plan_turn *pass_turn(const struct plan *p, struct place at);

/* --- session_stop.c --- */
void stop_sound(struct session *s, struct effects *out);
void stop_go_on(struct session *s, struct effects *out);
void stop_gap(struct session *s, struct effects *out);
void stop_finish(struct session *s, enum ended ended, struct effects *out);
void stop_over(struct session *s, struct effects *out);

/* --- session_marks.c --- */
/* Whether the key was a mark, and is taken. */
bool marks_key(struct session *s, const struct input *in, struct effects *out);
/* Keeps the turn under way with the bows it came to. */
void marks_keep(struct session *s, int bows_done, struct effects *out);

/* --- session_rung.c --- */
/* Pulses of the next round of the block, as marked so far. */
int rung_next(const struct session *s);

/* --- session_say.c --- */
enum { UNIT_TEXT_MAX = 40 };
void say_unit(const struct session *s, int unit, char *buffer);
/* The same of a place in the plan, and "the swing" in the air. */
void say_place(const struct session *s, struct place at, char *buffer);
void say_lead(const struct session *s, struct effects *out);
void say_change(struct session *s, struct effects *out);
void say_next_pulses(struct session *s, struct effects *out);
/* Tells the keys now, or owes it until it can be said without haste. */
void say_help(struct session *s, struct effects *out);
/* In a change: what is owed. */
void say_owed(struct session *s, struct effects *out);
enum message_id say_pain_place(int choice);

/* --- session_heard.c --- */
/* Tells of the block before, once it can be told. */
void heard_say(struct session *s, struct effects *out);
/*
 * Whether there will be something to tell of it that has room in the lead-in
 * when a line is so brief, and not when it is full; both with their breath.
 */
bool heard_needs(const struct session *s, int full, int brief);
void heard_take(struct session *s, const struct input *in, struct effects *out);

#endif
