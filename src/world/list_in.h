/*
 * list_in.h - lines of a list as they come from a descriptor
 *
 * Memory grows with the longest line, and with the whole list only where it is
 * to be read again.  Only for evenhand-paper; one thread.
 */
#ifndef EVENHAND_WORLD_LIST_IN_H
#define EVENHAND_WORLD_LIST_IN_H

#include <stdbool.h>
#include <stddef.h>

/* Zeros, but for fd and keep. */
struct list_in {
	int fd;
	bool keep; /* all of it, to be read again */
	char *bytes;
	size_t size, filled; /* of bytes */
	size_t at, next;     /* this line, the next one */
};

enum list_came {
	CAME_LINE,
	CAME_END,     /* no line any more */
	CAME_BROKEN,  /* a last line without its end, or what cannot be read */
	CAME_NO_ROOM, /* too long, or no memory */
};

/*
 * The next line, a string of so many bytes until the next call; the line feed
 * is not one of them.
 */
enum list_came list_in_next(
    struct list_in *in, const char **line, size_t *length);

/* Back to the first line of a list that was kept. */
void list_in_again(struct list_in *in);

void list_in_done(struct list_in *in);

#endif
