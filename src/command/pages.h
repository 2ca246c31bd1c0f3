/*
 * pages.h - pages on a full screen that stand still until a key comes
 *
 *	while a key has not left:  pages_due ─▶ drawn into canvas ─▶ pages_show
 *
 * A page is drawn when it is stale or the window has another size; a terminal
 * that stands still gets the newest page when it goes on.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_PAGES_H
#define EVENHAND_COMMAND_PAGES_H

#include <stdbool.h>

#include "evenhand/screen/canvas.h"
#include "evenhand/world/keys.h"
#include "evenhand/world/terminal.h"

enum { PAGES_LOOK_MS = 100 }; /* as long as a key is waited for */

/* All zero is closed; too large for a stack. */
struct pages {
	struct terminal *terminal;
	struct keys *keys;
	struct canvas canvas;
	bool stale;
};

/* Takes keys and screen.  False: they are not to be had; close it all the same. */
bool pages_open(struct pages *p, enum terminal_colours colours);

/* Whether a page is to be drawn now, into an empty canvas of its size. */
bool pages_due(struct pages *p);

/* Shows what was drawn. */
void pages_show(struct pages *p);

/* The exit status: Ctrl-C is a way to leave, too. */
int pages_ended(void);

void pages_close(struct pages *p);

#endif
