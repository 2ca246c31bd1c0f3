/*
 * so_far.h - how many of many are done, on one line that is written over
 *
 * It is told on a terminal alone, where standard error is one, and only when
 * there are so many that somebody waits.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_SO_FAR_H
#define EVENHAND_COMMAND_SO_FAR_H

#include <stdbool.h>

#include "evenhand/base/message.h"

struct so_far {
	enum message_id sentence; /* {0} of {1} */
	int many;		  /* fewer are done in silence */
	int each;		  /* after so many it is told again */
	bool told;		  /* it stands on the terminal */
};

void so_far_tell(struct so_far *s, int done, int all);

/* To be called before anything else is said: that begins on a line of its own. */
void so_far_end(struct so_far *s);

#endif
