/*
 * print.c - words for people: results on standard output, faults on standard
 * error
 *
 * Everything is written at once, without a stream's buffer, so that a line is
 * out when it has been said.  A reader of a pipe that went away is no fault
 * worth a sentence; a full disk is.
 */
#include <errno.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

#include "options.h"

enum { SAY_BYTES = 2048 };

/* Writes all of it; false with errno set. */
static bool write_all(int descriptor, const char *bytes, size_t length)
{
	while (length > 0) {
		ssize_t n = write(descriptor, bytes, length);

		if (n > 0) {
			bytes += n;
			length -= (size_t)n;
		} else if (n < 0 && (errno == EAGAIN || errno == EWOULDBLOCK)) {
			/* Somebody made it non-blocking; we wait ourselves. */
			poll(
			    &(struct pollfd) { descriptor, POLLOUT, 0 }, 1, -1);
		} else if (n == 0 || errno != EINTR) {
			return false;
		}
	}
	return true;
}

static void say_bytes(const char *sentence)
{
	char bytes[SAY_BYTES];
	struct text t = text_in(bytes, sizeof bytes - 1);

	text_add(&t, sentence);
	bytes[t.length] = '\n';
	/* With standard error gone there is nobody left to tell. */
	(void)write_all(STDERR_FILENO, bytes, t.length + 1);
}

void command_say(const struct message *m)
{
	char sentence[SAY_BYTES], bytes[SAY_BYTES];
	struct text t = text_in(bytes, sizeof bytes);

	message_text(m, sentence, sizeof sentence);
	text_format(&t, "evenhand: %s", sentence);
	say_bytes(bytes);
}

void command_fault(const struct fault *f)
{
	char bytes[SAY_BYTES];

	if (!f->path) {
		command_say(&f->message);
		return;
	}
	fault_text(f, bytes, sizeof bytes);
	say_bytes(bytes);
}

void command_faults(const struct faults *list)
{
	for (int i = 0; i < list->count; i++)
		command_fault(&list->at[i]);
	if (list->left_out > 0) {
		struct message m = message_with(
		    M_COMMAND_LEFT_OUT, WHOLE(list->left_out));
		command_say(&m);
	}
}

bool command_unprinted(void)
{
	if (errno != EPIPE) {
		struct message m = message_with(
		    M_COMMAND_CANNOT_PRINT, TEXT(strerror(errno)));
		command_say(&m);
	}
	return false;
}

bool command_print_bytes(const char *bytes, size_t length)
{
	return write_all(STDOUT_FILENO, bytes, length) || command_unprinted();
}

bool command_print(const struct text *t)
{
	return command_print_bytes(t->bytes, t->length);
}
