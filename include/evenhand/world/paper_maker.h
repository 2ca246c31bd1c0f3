/*
 * paper_maker.h - a list of strokes and words, made a document in a file
 *
 * Starts evenhand-paper, gives it the list and takes what it draws.  What its
 * libraries print is nobody's business and goes nowhere.
 *
 * Only the main thread; SIGPIPE is ignored.
 */
#ifndef EVENHAND_WORLD_PAPER_MAKER_H
#define EVENHAND_WORLD_PAPER_MAKER_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/fault.h"
#include "evenhand/world/paper_draw.h"

#define PAPER_PROGRAM "evenhand-paper"

/*
 * The format of a file by the end of its name (.pdf, .svg, .png, in any
 * letters); false: none of these.
 */
bool paper_format_of(const char *path, enum paper_format *format);

/* Where a document goes, and as what. */
struct paper_target {
	const char *path;
	enum paper_format format;
	bool force; /* also in the place of another file */
};

/* Makes the document in its file, whole or not at all. */
bool paper_file(const struct paper_target *to, const char *list, size_t length,
    struct fault *f);

#endif
