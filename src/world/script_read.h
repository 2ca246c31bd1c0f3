/*
 * script_read.h - the lines of a script as steps
 *
 * Any thread.
 */
#ifndef EVENHAND_WORLD_SCRIPT_READ_H
#define EVENHAND_WORLD_SCRIPT_READ_H

#include <stddef.h>

#include "evenhand/base/fault.h"
#include "evenhand/coach/session.h"

enum { SCRIPT_BYTES_MAX = 256 * 1024 };

/* One key of a script. */
struct script_step {
	bool soon;  /* as soon as a key is waited for */
	int64_t ms; /* else: from the first sound */
	enum key key;
	int digit;
	const char *words; /* NULL unless it is a line of text */
};

/* Lines of a text, at least 1. */
size_t script_lines(const char *bytes, size_t length);

/*
 * Reads the bytes, which it cuts up, into steps (as many as lines).  Returns
 * how many there are; adds every fault.  path is kept by pointer in them.
 */
int script_read(const char *path, char *bytes, size_t length,
    struct script_step *step, struct faults *faults);

#endif
