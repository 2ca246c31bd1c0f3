/*
 * practise_call.h - what the command line of a practice says
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_PRACTISE_CALL_H
#define EVENHAND_COMMAND_PRACTISE_CALL_H

#include <stdbool.h>

#include "evenhand/base/date.h"
#include "evenhand/coach/plan.h"

struct call {
	const char *routine, *player, *at, *marking, *clock, *script;
	const char *card, *through, *loudness, *stage, *microphone;
	bool lines, ascii, mirrored, silent, listen, no_listen;
	struct moment now;
	enum marking way; /* with marking */
	int percent;	  /* with loudness */
};

/* False: help was printed or a slip was said, and *status is the end. */
bool call_read(struct call *c, int argc, char **argv, int *status);

#endif
