/*
 * terminal_out.c - bytes on their way to a terminal that may not take them now
 */
#include "terminal_out.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <stdlib.h>
#include <string.h>
#include <termios.h>
#include <unistd.h>

enum { NAME_BYTES = 256, LAST_MS = 300, PIECE_MS = 10 };

bool out_open(struct terminal_out *o)
{
	int fd = dup(STDOUT_FILENO);

	*o = (struct terminal_out) { .terminal = -1 };
	if (fd < 0)
		return false;
	fcntl(fd, F_SETFD, FD_CLOEXEC);
	o->stream = fdopen(fd, "w");
	if (!o->stream)
		close(fd);
	return o->stream != NULL;
}

/* The terminal once more: others share the first one, and may want to wait. */
static int open_again(void)
{
	char name[NAME_BYTES];

	if (ttyname_r(STDOUT_FILENO, name, sizeof name) != 0)
		return -1;
	return open(name, O_WRONLY | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
}

void out_aside(struct terminal_out *o)
{
	FILE *file = tmpfile();

	o->terminal = open_again();
	fflush(o->stream);
	if (file && o->terminal >= 0 &&
	    dup2(fileno(file), fileno(o->stream)) >= 0) {
		fcntl(fileno(file), F_SETFD, FD_CLOEXEC);
		fcntl(fileno(o->stream), F_SETFD, FD_CLOEXEC);
		o->file = file;
		return;
	}
	if (file)
		fclose(file);
}

static bool make_room(struct terminal_out *o, size_t more)
{
	char *bytes;

	if (o->sent > 0)
		memmove(o->bytes, o->bytes + o->sent, o->length - o->sent);
	o->length -= o->sent;
	o->sent = 0;
	if (o->length + more <= o->size)
		return true;
	bytes = realloc(o->bytes, o->length + more);
	if (!bytes)
		return false;
	o->bytes = bytes;
	o->size = o->length + more;
	return true;
}

/* Takes in what was written to the file since then; it begins anew. */
static void take_in(struct terminal_out *o)
{
	int fd = fileno(o->file);
	off_t written = lseek(fd, 0, SEEK_CUR);
	ssize_t got;

	if (written <= 0 || !make_room(o, (size_t)written))
		return;
	got = pread(fd, o->bytes + o->length, (size_t)written, 0);
	o->length += got > 0 ? (size_t)got : 0;
	lseek(fd, 0, SEEK_SET);
}

bool out_send(struct terminal_out *o)
{
	if (!o->file)
		return true;
	take_in(o);
	while (o->sent < o->length) {
		ssize_t n = write(
		    o->terminal, o->bytes + o->sent, o->length - o->sent);

		if (n > 0)
			o->sent += (size_t)n;
		else if (n < 0 && (errno == EAGAIN || errno == EWOULDBLOCK))
			return false;
		else if (n == 0 || errno != EINTR)
			o->sent = o->length; /* it is gone */
	}
	return true;
}

void out_back(struct terminal_out *o)
{
	if (!o->file)
		return;
	for (int ms = 0; ms < LAST_MS && !out_send(o); ms += PIECE_MS)
		poll(NULL, 0, PIECE_MS);
	if (!out_send(o))
		tcflush(o->terminal, TCOFLUSH);
	dup2(STDOUT_FILENO, fileno(o->stream));
	fclose(o->file);
	o->file = NULL;
}

void out_close(struct terminal_out *o)
{
	fclose(o->stream);
	if (o->terminal >= 0)
		close(o->terminal);
	free(o->bytes);
}
