/*
 * view_play.h - the page of the playing, and the parts it is made of
 *
 *	view_play.c		where each part of the page is drawn
 *	view_play_now.c		what is going on at the frame that is heard
 *	view_play_layout.c	how much room each part has at a size
 *	view_play_large.c	finger, bow, count, question, cue: large letters
 *	view_play_line.c	the bow and the hand on it
 *	view_play_drain.c	what is left of a change or lead-in, its keys
 *	view_play_above.c	stage, time, words over the large letters
 *	view_play_below.c	marks, what is next, sound, keys
 *	view_play_news.c	what was said and is not seen anyway
 *	view_play_panels.c	bows, the week
 *	view_play_board.c	the fingerboard
 *	view_play_put.c		words put left, right or in the middle
 *
 * The page from two metres, and what is small round it:
 *
 *	stage                                         time
 *	finger  |  bow or question         |  count        large
 *	        the bow, or the change draining away
 *	                     cue                           large
 *	bows · week · fingerboard, where there is room
 *	last mark                              what is next
 *	news                                          sound
 *	keys
 */
#ifndef EVENHAND_SCREEN_VIEW_PLAY_H
#define EVENHAND_SCREEN_VIEW_PLAY_H

#include "evenhand/screen/letters.h"
#include "evenhand/screen/view.h"

/* The canvas is empty and at least VIEW_COLUMNS_MIN x VIEW_ROWS_MIN. */
void view_page_play(struct canvas *c, const struct view *v);

/* As view_change, for PAGE_PLAY. */
int64_t view_change_play(const struct view *v, int columns, int rows);

/* --- now --- */

enum going {
	GOING_SETTLE, /* stillness before a count-in */
	GOING_COUNT,  /* count-in */
	GOING_BOW,    /* a bow; in the air a quarter of a swing */
	GOING_CHANGE,
};

enum coming { COMING_END, COMING_TURN, COMING_BLOCK };

/* Marks of what was played last, as the session would take a mark for it. */
struct marked {
	int from, to; /* in turn_played; equal when there is nothing */
	int whole, clean, shaky;
};

struct now {
	enum going going;
	bool air;
	int block;	     /* of the plan */
	int unit;	     /* who plays, played, or will after the lead-in */
	int64_t from, until; /* of the bow, change or whole lead-in */
	int bow, bows;	     /* of the turn, or of the count-in; bow from 0 */
	int pulse, pulses;   /* pulse from 1; pulses 0: none are counted */
	bool still;	     /* pulses too quick to be shown one by one */
	bool asks;	     /* a mark may be given: this is its change */
	bool late;	     /* a mark would still be for the turn before */
	struct marked marked;
	enum coming coming;
	int next_block, next_unit; /* of what comes, -1 in the air */
};

/* Shown pulses change at most so often: see test_flash.c. */
enum { PULSE_SHOWN_MS = 200 };

void now_of(const struct view *v, struct now *n);

/* The next frame at which any field of it changes, marks left out. */
int64_t now_change(const struct view *v, const struct now *n);

/*
 * Steps of something that moves evenly over the time of n: at most so many,
 * at most twenty a second, whole steps to each pulse.
 */
int now_steps(const struct view *v, const struct now *n, int most);
int now_step(const struct view *v, const struct now *n, int steps);
int64_t now_step_change(const struct view *v, const struct now *n, int steps);

/* --- layout --- */

struct layout {
	struct face face;	/* finger, bow, count */
	struct face cue_face;	/* scale 0: the cue is small */
	int left, right;	/* first column, and one behind the last */
	int label;		/* row of small words over the large, -1 none */
	int large;		/* first row of the large letters */
	int unit_end;		/* one behind the finger's lane */
	int word;		/* column where the bow's lane begins */
	int word_end;		/* one behind it */
	int count;		/* where the count's lane begins; -1 small */
	bool signs;		/* bows as signs: there is no room for words */
	int line, line_rows;	/* the bow: 3 rows, more to stand out */
	int cue;		/* first row */
	int counted;		/* row of a small count */
	int panels, panel_rows; /* below the cue; 0 rows: none */
	int side;		/* column of panels at the side, 0: none */
	int info, status, keys; /* rows; status -1: no row of its own */
};

void layout_of(const struct view *v, int columns, int rows, struct layout *l);

/* --- parts; each draws nothing where the layout has no room --- */

void play_large(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l);
void play_line(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l);
void play_drain(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l);
void play_above(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l);
void play_below(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l);
void play_panels(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l);

/* What the large name is of: "finger", "next strings". */
enum message_id play_unit_label(const struct view *v, const struct now *n);

/* How what was played last was marked: "finger 1: clean". */
const char *play_mark_words(
    const struct view *v, const struct now *n, char *buffer);

/* What a mark is asked for: "how was finger 1?" */
const char *play_asked_words(
    const struct view *v, const struct now *n, char *buffer);

/*
 * What else was said, into WORDS_MAX bytes, in about so many columns; false:
 * nothing.
 */
bool play_news(
    const struct view *v, const struct now *n, int columns, char *buffer);

/* Whether the question stands below the finger, in place of all else there. */
bool play_question_below(const struct layout *l, const struct now *n);

/* The next frame at which the hand moves, or the bar grows shorter. */
int64_t play_line_change(
    const struct view *v, const struct now *n, const struct layout *l);
int64_t play_drain_change(
    const struct view *v, const struct now *n, const struct layout *l);
/* The next frame at which the time shown changes. */
int64_t play_time_change(const struct view *v);

/* --- words --- */

enum { WORDS_MAX = 640 };

/* A message as text; the buffer holds WORDS_MAX bytes. */
const char *words_of(struct message m, char *buffer);

/* Within columns from..to (one behind), cut with dots; the columns taken. */
int put_left(struct canvas *c, int row, int from, int to, unsigned attributes,
    const char *s);
int put_right(struct canvas *c, int row, int from, int to, unsigned attributes,
    const char *s);
int put_middle(struct canvas *c, int row, int from, int to, unsigned attributes,
    const char *s);

#endif
