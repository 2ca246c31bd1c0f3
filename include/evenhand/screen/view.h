/*
 * view.h - what a full-screen page is drawn from, and the drawing
 *
 *	session, frame at the ear, settings ─▶ view ─▶ canvas of cells
 *
 * A view is drawn for the frame that is heard now, so that eye and ear agree;
 * nothing else moves a page.  Drawing decides nothing and remembers nothing:
 * the same view and size give the same cells.
 *
 * What must be read in play from two metres stands in letters of five or seven
 * rows; all else may be small.  Sizes from VIEW_COLUMNS_MIN x VIEW_ROWS_MIN to
 * the canvas's own maxima; anything smaller is one plain sentence.
 *
 * Pure.  Any thread.
 */
#ifndef EVENHAND_SCREEN_VIEW_H
#define EVENHAND_SCREEN_VIEW_H

#include <stdbool.h>
#include <stdint.h>

#include "evenhand/coach/first.h"
#include "evenhand/coach/session.h"
#include "evenhand/screen/canvas.h"

enum {
	VIEW_COLUMNS_MIN = 40,
	VIEW_ROWS_MIN = 12,
	VIEW_DEVICE_MAX = 64,
	VIEW_NEWS_MAX = 6
};

/* What is to be said of the sound. */
enum sounding {
	SOUNDING_ON,
	SOUNDING_OPENING, /* the device is being opened */
	SOUNDING_LOST,	  /* it was there; it is being looked for */
	SOUNDING_NONE,	  /* no device, or none wanted */
};

struct view {
	const struct session *session; /* borrowed */
	const struct first *first;     /* borrowed; NULL: there is none */
	int64_t heard;		       /* the frame at the ear now */
	bool mirror;		       /* bow in the left hand */
	bool ascii;		       /* no sign beyond ASCII */
	bool help;		       /* the keys of this page lie over it */
	int leaf;		       /* of a page too long for the screen */
	enum sounding sounding;
	char device[VIEW_DEVICE_MAX]; /* its name, "" none */
	uint64_t dropped;	      /* sounds that could not be played */
	const char *typed;	      /* PAGE_QUESTION: so far; borrowed */
	/* What was said in the last step that said anything on this page. */
	int said;
	struct message news[VIEW_NEWS_MAX];
};

/* Draws the page of the session into a canvas of its size. */
void view_draw(struct canvas *c, const struct view *v);

/* Leaves of the page at this size, at least 1. */
int view_leaves(const struct view *v, int columns, int rows);

/*
 * The next frame after v->heard at which the drawing may differ with nothing
 * else changed, INT64_MAX for never: until then nobody need draw.
 */
int64_t view_change(const struct view *v, int columns, int rows);

#endif
