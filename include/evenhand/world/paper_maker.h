/*
 * paper_maker.h - a list of strokes and words, made a document in a file
 *
 * Starts evenhand-paper, which looks for its letters while the list is made, and
 * gives it the list as it comes; it draws into a new file.  What its libraries
 * print is nobody's business and goes nowhere.
 *
 * Only the main thread; SIGPIPE is ignored.
 */
#ifndef EVENHAND_WORLD_PAPER_MAKER_H
#define EVENHAND_WORLD_PAPER_MAKER_H

#include <stdbool.h>
#include <stddef.h>

#include <sys/types.h>

#include "evenhand/base/fault.h"
#include "evenhand/world/file.h"
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

/* A document on its way into its file; large, keep it off the stack. */
struct paper_maker {
	pid_t program; /* 0: none */
	int list;      /* where it is written to, -1: nowhere */
	struct file_new file;
};

/*
 * Begins a document; the target's path is kept by pointer.  False when it cannot
 * come there or cannot be drawn: nothing is left to be ended.
 */
bool paper_begin(
    struct paper_maker *m, const struct paper_target *to, struct fault *f);

/*
 * Gives the next part of the list, and waits until it is taken.  False: nobody
 * takes it, and paper_end tells why.
 */
bool paper_give(struct paper_maker *m, const char *list, size_t length);

/* Puts the document in its place, whole or not at all. */
bool paper_end(struct paper_maker *m, struct fault *f);

/* Nothing comes of it; no harm when it is over, or was never begun (zeros). */
void paper_drop(struct paper_maker *m);

#endif
