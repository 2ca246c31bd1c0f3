/*
 * list_in.c - lines of a list as they come from a descriptor
 */
#include "list_in.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum {
	READ_BYTES = 65536,
	LINE_MOST = 1024 * 1024,
	KEPT_MOST = 64 * 1024 * 1024
};

static bool more_room(struct list_in *in)
{
	size_t size = 2 * in->size + READ_BYTES;
	char *more = size <= (in->keep ? KEPT_MOST : LINE_MOST)
	    ? realloc(in->bytes, size)
	    : NULL;

	if (!more)
		return false;
	in->bytes = more;
	in->size = size;
	return true;
}

/* What was read goes, when nobody reads it again. */
static void forget(struct list_in *in)
{
	if (in->keep || in->at == 0)
		return;
	memmove(in->bytes, in->bytes + in->at, in->filled - in->at);
	in->filled -= in->at;
	in->next -= in->at;
	in->at = 0;
}

static enum list_came fill(struct list_in *in)
{
	ssize_t got;

	forget(in);
	if (in->filled == in->size && !more_room(in))
		return CAME_NO_ROOM;
	do {
		got = read(
		    in->fd, in->bytes + in->filled, in->size - in->filled);
	} while (got < 0 && errno == EINTR);
	if (got > 0) {
		in->filled += (size_t)got;
		return CAME_LINE;
	}
	return got == 0 && in->filled == in->at ? CAME_END : CAME_BROKEN;
}

/* The line before this one gets its end back. */
static void put_back(struct list_in *in)
{
	if (in->next > in->at)
		in->bytes[in->next - 1] = '\n';
}

enum list_came list_in_next(
    struct list_in *in, const char **line, size_t *length)
{
	char *end;

	put_back(in);
	in->at = in->next;
	while (in->filled == in->at ||
	    !(end = memchr(in->bytes + in->at, '\n', in->filled - in->at))) {
		enum list_came came = fill(in);

		if (came != CAME_LINE)
			return came;
	}
	*end = '\0';
	in->next = (size_t)(end - in->bytes) + 1;
	*line = in->bytes + in->at;
	*length = in->next - 1 - in->at;
	return CAME_LINE;
}

void list_in_again(struct list_in *in)
{
	put_back(in);
	in->at = in->next = 0;
}

void list_in_done(struct list_in *in)
{
	free(in->bytes);
	in->bytes = NULL;
}
