/*
 * read.h - from the words of a YAML file to a routine, with every fault
 *
 *	bytes ──▶ slips_find ──▶ (YAML reader) ──▶ node tree ──▶ routine_read
 *	              │                                               │
 *	              └───────────── faults with their places ◀───────┘
 *
 * slips_find looks at the raw lines for what a YAML reader misreads or
 * reports in the wrong place.  routine_read collects all it can find in one
 * pass.  Pure.  Any thread.
 */
#ifndef EVENHAND_ROUTINE_READ_H
#define EVENHAND_ROUTINE_READ_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/fault.h"
#include "evenhand/base/node.h"
#include "evenhand/routine/routine.h"

enum { ROUTINE_BYTES_MAX = 256 * 1024, ROUTINE_DEPTH_MAX = 8 };

/* One file as it was read; borrowed for the call. */
struct source {
	const char *path; /* for the places of faults; kept by pointer */
	const char *bytes;
	size_t length;
	const struct node *root; /* NULL until parsed */
};

/*
 * Looks for slips in the raw text.  True when the text may be given to the
 * YAML reader; false when a fault of syntax was found (added to the list).
 * Faults that do not break the syntax are added and true is returned.
 */
bool slips_find(const struct source *s, struct faults *faults);

/*
 * Makes a routine of one file, with a homework file laid over it unless
 * homework is NULL.  Returns NULL when there was a fault (all are added to
 * the list) or no memory.  The caller frees the result with routine_free.
 */
struct routine *routine_read(const struct source *routine,
    const struct source *homework, struct faults *faults);

/*
 * Whether a parsed file is a homework file, and which routine it names (a
 * bare file name in its own folder).  NULL when it is a routine, "" when it is
 * homework and names none that can be followed; the name lives as long as the
 * node.
 */
const char *homework_routine_name(const struct node *root);

/*
 * The faults of a homework file that show without its routine; routine_read
 * finds them too.
 */
void homework_check(const struct source *homework, struct faults *faults);

#endif
