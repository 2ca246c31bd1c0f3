/*
 * settings_file.h - the settings on the disk
 *
 *	struct settings_file f;
 *
 *	settings_open(&f, faults);       faults are to be said; practice goes on
 *	...
 *	f.now.mark_turns = true;
 *	if (!settings_keep(&f, SETTING_MARKING, &fault))
 *		... say the fault, once; practice goes on ...
 *
 * Keeping reads the file again, changes one value in it and puts it back whole
 * (0600 in a folder of 0700), while other programs wait: two at once lose
 * nothing but the last value of one and the same word.  A file that is a link
 * stays one.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_SETTINGS_FILE_H
#define EVENHAND_WORLD_SETTINGS_FILE_H

#include <stdbool.h>

#include "evenhand/base/fault.h"
#include "evenhand/routine/settings.h"
#include "evenhand/world/paths.h"

struct settings_file {
	struct settings now;	   /* as read, and as the program changed it */
	char path[PATH_BYTES_MAX]; /* "" when there is no home folder */
	char folder[PATH_BYTES_MAX];
	bool told; /* that something could not be kept */
};

/*
 * Reads the file; it need not be there.  What is wrong is added to the list,
 * where places point into *f, and what is right counts.
 */
void settings_open(struct settings_file *f, struct faults *faults);

/*
 * Keeps one setting as it is in f->now.  False the first time that this is not
 * possible, with what to say; true when all is well or it was said before.
 * A value that the file says already is not written again.
 */
bool settings_keep(
    struct settings_file *f, enum setting what, struct fault *fault);

#endif
