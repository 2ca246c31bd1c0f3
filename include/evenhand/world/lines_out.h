/*
 * lines_out.h - lines on their way to a reader who may not take them now
 *
 *	line ─▶ store ─▶ terminal or pipe, as it takes them
 *
 * A terminal can be stopped and a pipe be full.  Who writes to one then waits,
 * and a session must not: so a line goes into a store, and from there piece by
 * piece.  Once the store is full whole lines are left out until the reader has
 * taken all that is in it; then one line tells how many there were.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_LINES_OUT_H
#define EVENHAND_WORLD_LINES_OUT_H

#include <stdbool.h>
#include <stddef.h>

struct lines_out;

enum { LINES_OUT_BYTES = 65536 };

/* For an open descriptor, which stays the caller's.  NULL: no memory. */
struct lines_out *lines_out_open(int descriptor);

/*
 * Takes lines, each ended by '\n', and sends what is taken now; all of them or
 * none.  False with errno set: the reader is gone, or the disk is full.
 */
bool lines_out_say(struct lines_out *o, const char *bytes, size_t length);

/* Sends what is taken now; call it every now and then.  False: as above. */
bool lines_out_send(struct lines_out *o);

/*
 * Gives the reader a moment, then drops what it has not taken.  NULL allowed.
 */
void lines_out_close(struct lines_out *o);

/* Columns of the terminal behind a descriptor, 0 when it is none. */
int lines_out_columns(int descriptor);

#endif
