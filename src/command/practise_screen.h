/*
 * practise_screen.h - the sitting on a full screen
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_PRACTISE_SCREEN_H
#define EVENHAND_COMMAND_PRACTISE_SCREEN_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/base/fault.h"
#include "evenhand/base/text.h"
#include "evenhand/screen/view.h"
#include "evenhand/world/terminal.h"

struct practice;

enum { SCREEN_LATER_BYTES = 4096 };

/* Part of a practice; all zero is line mode. */
struct practice_screen {
	struct terminal *terminal; /* NULL: line mode */
	struct view view;
	struct canvas canvas;
	bool stale;	   /* something besides the time has changed */
	int64_t said_at;   /* frame of the last thing said */
	bool fresh;	   /* nothing was said in this step yet */
	int64_t drawn_ns;  /* steady clock, when last drawn */
	int64_t change;	   /* frame at which the drawing may differ */
	struct text later; /* for standard error, when it is free again */
	char later_bytes[SCREEN_LATER_BYTES];
};

/* How it is to look. */
struct screen_wish {
	enum terminal_colours colours;
	bool ascii, mirror;
};

/* Takes the screen.  False: there is none, and lines are the way. */
bool screen_open(struct practice *p, const struct screen_wish *w);

/* A page of the session begins. */
void screen_page(struct practice *p);

/* Something is said. */
void screen_say(struct practice *p, const struct message *m);

/* A trouble that must still be read when the screen is gone. */
void screen_trouble(struct practice *p, const struct message *m);

/* The same for a fault; its place is told afterwards, where it has room. */
void screen_fault(struct practice *p, const struct fault *f);

/* A step begins: what it says takes the place of what was said before. */
void screen_step(struct practice *p);

/*
 * A key as the screen itself takes it: help, leaves.  True: it is for nobody
 * else, since it only turned a leaf of the first minutes.
 */
bool screen_key(struct practice *p, enum key key);

/* ms for which nothing need be drawn, at most limit. */
int screen_wait_ms(const struct practice *p, int limit);

/* Draws what there is to draw for the frame that is heard now. */
void screen_draw(struct practice *p);

/* Gives the screen back and says what has waited for it. */
void screen_close(struct practice *p);

#endif
