/*
 * terminal.h - a canvas on a full-screen terminal
 *
 *	page ─▶ canvas ─▶ changed cells ─▶ one write
 *
 * Draws only: keys come from keys.h, which must have been opened first, and
 * its signal handlers give the screen back as well.  One terminal a program.
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_TERMINAL_H
#define EVENHAND_WORLD_TERMINAL_H

#include <stdbool.h>

#include "evenhand/screen/canvas.h"

struct terminal;

/* What colours may be used; fewer are taken when the terminal has fewer. */
enum terminal_colours {
	TERMINAL_AUTO, /* what it has; none when NO_COLOR is set */
	TERMINAL_COLOURLESS,
	TERMINAL_8,
	TERMINAL_256,
};

/*
 * Whether a full screen can be shown: input and output are a terminal that
 * can move its cursor.
 */
bool terminal_able(void);

/* Takes the screen.  NULL: it cannot be done; then lines are the way. */
struct terminal *terminal_open(enum terminal_colours colours);

/* Whether signs beyond ASCII will be seen: the locale's codeset is UTF-8. */
bool terminal_signs(const struct terminal *t);

/* Looks at the window's size; true when all must be drawn anew. */
bool terminal_size(struct terminal *t, int *columns, int *rows);

/* Forgets what stands there: the next canvas is written whole. */
void terminal_forget(struct terminal *t);

/*
 * Shows a canvas: writes the cells that changed since the last one.  It never
 * waits for a terminal that takes nothing; the rest goes out by terminal_ready.
 */
void terminal_show(struct terminal *t, const struct canvas *c);

/*
 * Whether the terminal has taken all that was shown.  Ask now and then, and
 * before anything else is shown.
 */
bool terminal_ready(struct terminal *t);

/* Gives the screen back; NULL allowed. */
void terminal_close(struct terminal *t);

#endif
