/*
 * lines_out.c - lines on their way to a reader who may not take them now
 *
 * A terminal is opened a second time, so that not to wait is our wish alone.  A
 * pipe is shared with those who may want to wait, so it is asked before each
 * piece: POSIX writes no more than PIPE_BUF, at least 512 bytes, in one go.
 */
#include "evenhand/world/lines_out.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"

enum { PIECE_BYTES = 512, NAME_BYTES = 256, LAST_MS = 300, WAIT_MS = 10 };

struct lines_out {
	int descriptor;
	bool ours; /* the terminal, opened once more */
	int left_out;
	size_t length, sent;
	char bytes[LINES_OUT_BYTES];
};

struct lines_out *lines_out_open(int descriptor)
{
	struct lines_out *o = calloc(1, sizeof *o);
	char name[NAME_BYTES];
	int again = -1;

	if (!o)
		return NULL;
	if (isatty(descriptor) && ttyname_r(descriptor, name, sizeof name) == 0)
		again = open(
		    name, O_WRONLY | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
	o->ours = again >= 0;
	o->descriptor = o->ours ? again : descriptor;
	return o;
}

/* Sends what is in the store; false with errno when nothing can be. */
static bool send_store(struct lines_out *o)
{
	while (o->sent < o->length) {
		struct pollfd p = { .fd = o->descriptor, .events = POLLOUT };
		size_t left = o->length - o->sent;
		ssize_t n;

		if (poll(&p, 1, 0) != 1)
			return true;
		n = write(o->descriptor, o->bytes + o->sent,
		    left < PIECE_BYTES ? left : PIECE_BYTES);
		if (n >= 0)
			o->sent += (size_t)n;
		else if (errno == EAGAIN || errno == EWOULDBLOCK)
			return true;
		else if (errno != EINTR)
			return false;
	}
	o->sent = o->length = 0;
	return true;
}

static bool add(struct lines_out *o, const char *bytes, size_t length)
{
	if (o->sent > 0)
		memmove(o->bytes, o->bytes + o->sent, o->length - o->sent);
	o->length -= o->sent;
	o->sent = 0;
	if (length > sizeof o->bytes - o->length)
		return false;
	memcpy(o->bytes + o->length, bytes, length);
	o->length += length;
	return true;
}

/* The reader is back: how much it has missed. */
static void tell_left_out(struct lines_out *o)
{
	struct message m = message_with(
	    M_WORLD_LINES_LEFT_OUT, WHOLE(o->left_out));
	char sentence[MESSAGE_TEXT_MAX];
	struct text t = text_in(sentence, sizeof sentence);
	char line[MESSAGE_TEXT_MAX];

	message_text(&m, line, sizeof line);
	text_format(&t, "%s\n", line);
	add(o, t.bytes, t.length);
	o->left_out = 0;
}

bool lines_out_send(struct lines_out *o)
{
	if (!send_store(o))
		return false;
	if (o->left_out == 0 || o->length > 0)
		return true;
	tell_left_out(o);
	return send_store(o);
}

bool lines_out_say(struct lines_out *o, const char *bytes, size_t length)
{
	if (!lines_out_send(o))
		return false;
	if (o->left_out == 0 && add(o, bytes, length))
		return send_store(o);
	for (size_t i = 0; i < length; i++)
		o->left_out += bytes[i] == '\n';
	return true;
}

void lines_out_close(struct lines_out *o)
{
	if (!o)
		return;
	for (int ms = 0; ms < LAST_MS && lines_out_send(o) && o->length > 0;
	     ms += WAIT_MS)
		poll(NULL, 0, WAIT_MS);
	if (o->ours)
		close(o->descriptor);
	free(o);
}

int lines_out_columns(int descriptor)
{
	struct winsize w = { 0 };

	return ioctl(descriptor, TIOCGWINSZ, &w) == 0 ? w.ws_col : 0;
}
