/*
 * entry.h - a name and its items, in lines
 *
 * The name stands in a column of its own, then come the items with commas
 * between them.  An item is never broken; the next line begins under the first
 * item:
 *
 *	  tone  air 0:00, wide 0:28, thirds 1:24, tone 2:20,
 *	        end 4:52
 */
#ifndef EVENHAND_SCREEN_ENTRY_H
#define EVENHAND_SCREEN_ENTRY_H

#include <stdbool.h>

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"

/* out and label are set by the caller, the rest by entry_begin. */
struct entry {
	struct text *out;
	int label;  /* columns of the longest name */
	int column; /* where the line has got to */
	bool first; /* no item yet */
};

void entry_begin(struct entry *e, const char *name);
void entry_item(struct entry *e, const struct message *m);
void entry_end(struct entry *e);

#endif
