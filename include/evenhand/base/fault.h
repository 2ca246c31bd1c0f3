/*
 * fault.h - what went wrong, where, and what to do about it
 *
 * A function that can fail returns bool (or a pointer) and fills a fault.
 * The layer that knows the meaning names the message; the layer that knows
 * the place adds it; the edge prints it once:
 *
 *	wren.yaml:12:9: I do not know "bows_eech". Did you mean "bows_each"?
 *
 * Plain values.  Any thread.
 */
#ifndef EVENHAND_BASE_FAULT_H
#define EVENHAND_BASE_FAULT_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/message.h"

enum { FAULTS_MAX = 40 };

struct fault {
	struct message message;
	const char *path; /* borrowed, NULL when there is no file */
	int line, column; /* 1-based, 0 when unknown */
};

/* Every fault of one pass, in the order found; more than fit are counted. */
struct faults {
	int count;    /* 0..FAULTS_MAX, those kept in at[] */
	int left_out; /* found beyond FAULTS_MAX */
	struct fault at[FAULTS_MAX];
};

/* Sets the message and clears the place.  Always false. */
bool fault_set(struct fault *f, struct message m);

/* Adds the place to a fault that has a message.  Always false. */
bool fault_at(struct fault *f, const char *path, int line, int column);

/* Adds one fault to the list.  Always false. */
bool faults_add(struct faults *list, struct message m, const char *path,
    int line, int column);

/* Puts the faults in the order of their places.  Stable. */
void faults_sort(struct faults *list);

/*
 * Writes "path:line:column: sentence", leaving out what is unknown.
 * Returns the length in bytes, like message_text.
 */
size_t fault_text(const struct fault *f, char *buffer, size_t size);

#endif
