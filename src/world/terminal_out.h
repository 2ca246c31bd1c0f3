/*
 * terminal_out.h - bytes on their way to a terminal that may not take them now
 *
 *	curses ─▶ stream ─▶ file ─▶ bytes ─▶ terminal, as it takes them
 *
 * A terminal can stand still: a word is being marked with the mouse, a line is
 * slow.  Who writes to it then waits, and a session must not.  So a picture
 * goes into a file without a name first, and from there to the terminal piece
 * by piece, by a descriptor of its own that does not block.
 *
 * Where the terminal cannot be opened a second time, or there is no room for
 * the file, the stream leads to the terminal itself.  Only the main thread.
 */
#ifndef EVENHAND_WORLD_TERMINAL_OUT_H
#define EVENHAND_WORLD_TERMINAL_OUT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

struct terminal_out {
	FILE *stream; /* leads to the terminal, until out_aside */
	FILE *file;   /* NULL: the stream still does */
	int terminal; /* does not block */
	char *bytes;  /* of which so many were sent */
	size_t size, length, sent;
};

/* A stream to standard output.  False: no memory or no descriptor. */
bool out_open(struct terminal_out *o);

/* From now on the stream leads into the file. */
void out_aside(struct terminal_out *o);

/* Sends what the terminal takes; true when nothing is left. */
bool out_send(struct terminal_out *o);

/*
 * The stream leads to the terminal again.  What it has not taken after
 * a moment is thrown away.
 */
void out_back(struct terminal_out *o);

void out_close(struct terminal_out *o);

#endif
