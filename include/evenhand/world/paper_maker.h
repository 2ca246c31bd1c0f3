/*
 * paper_maker.h - a list of strokes and words, made a document
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

/* Makes the document; the caller frees out->bytes, also when it fails. */
bool paper_make(const char *list, size_t length, enum paper_format format,
    struct paper_bytes *out, struct fault *f);

#endif
