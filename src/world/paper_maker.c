/*
 * paper_maker.c - a list of strokes and words, made a document in a file
 */
#include "evenhand/world/paper_maker.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>

#include "evenhand/world/beside.h"
#include "evenhand/world/file.h"
#include "evenhand/world/paths.h"
#include "evenhand/world/program.h"

enum { READ_BYTES = 65536, NOT_STARTED = 127 };

static const char *const formats[PAPER_FORMATS] = { "pdf", "svg", "png" };

/* The two pipes: what it reads, and what it writes. */
struct pipes {
	int in[2], out[2];
};

bool paper_format_of(const char *path, enum paper_format *format)
{
	const char *end = strrchr(path, '.');

	for (int i = 0; end && i < PAPER_FORMATS; i++)
		if (strcasecmp(end + 1, formats[i]) == 0) {
			*format = (enum paper_format)i;
			return true;
		}
	return false;
}

static void close_pipe(int *pipe)
{
	for (int i = 0; i < 2; i++)
		if (pipe[i] >= 0)
			close(pipe[i]);
}

/* In the child. */
static _Noreturn void become(
    const char *program, enum paper_format format, const struct pipes *p)
{
	char name[] = PAPER_PROGRAM, how[4];
	char *const words[] = { name, how, NULL };
	int none = open("/dev/null", O_WRONLY);

	memcpy(how, formats[format], sizeof how);
	/* The ends are above 2: those are taken from the start. */
	dup2(p->in[0], STDIN_FILENO);
	dup2(p->out[1], STDOUT_FILENO);
	dup2(none, STDERR_FILENO);
	signal(SIGPIPE, SIG_DFL);
	execv(program, words);
	_exit(NOT_STARTED);
}

static bool take(int fd, struct paper_bytes *out)
{
	for (;;) {
		ssize_t got;

		if (out->size - out->length < READ_BYTES) {
			size_t size = 2 * out->size + READ_BYTES;
			unsigned char *more = realloc(out->bytes, size);

			if (!more)
				return false;
			out->bytes = more;
			out->size = size;
		}
		got = read(
		    fd, out->bytes + out->length, out->size - out->length);
		if (got == 0)
			return true;
		if (got < 0 && errno != EINTR)
			return false;
		out->length += got > 0 ? (size_t)got : 0;
	}
}

static bool tell(int status, struct fault *f)
{
	switch (status) {
	case DRAWN_GOOD:
		return true;
	case DRAWN_USAGE:
	case DRAWN_BAD:
		return fault_set(f, message_of(M_PAPER_OTHER_PROGRAM));
	case DRAWN_NO_LETTERS:
		return fault_set(f, message_of(M_PAPER_NO_LETTERS));
	case DRAWN_LARGE:
		return fault_set(f, message_of(M_PAPER_LARGE));
	case DRAWN_NO_ROOM:
		return fault_set(f, message_of(M_PAPER_NO_ROOM));
	case NOT_STARTED:
		return fault_set(f, message_of(M_PAPER_NO_PROGRAM));
	default:
		return fault_set(f, message_of(M_PAPER_BROKE));
	}
}

/* Gives, takes and waits; how it ended, or DRAWN_NO_ROOM. */
static int run(const char *program, const char *list, size_t length,
    enum paper_format format, struct paper_bytes *out)
{
	struct pipes p = { { -1, -1 }, { -1, -1 } };
	int status = DRAWN_NO_ROOM;
	bool whole;
	pid_t child;

	if (!program_pipe(p.in) || !program_pipe(p.out) || (child = fork()) < 0)
		goto done;
	if (child == 0)
		become(program, format, &p);
	close(p.in[0]);
	close(p.out[1]);
	p.in[0] = p.out[1] = -1;
	/*
   * It reads all before it writes, so neither waits for the other.  When
   * it has ended before, its status tells why.
   */
	program_write(p.in[1], list, length);
	close(p.in[1]);
	p.in[1] = -1;
	whole = take(p.out[0], out);
	close(p.out[0]);
	p.out[0] = -1;
	status = program_wait(child);
	if (status == DRAWN_GOOD && !whole)
		status = DRAWN_NO_ROOM;
done:
	close_pipe(p.in);
	close_pipe(p.out);
	return status;
}

bool paper_file(const struct paper_target *to, const char *list, size_t length,
    struct fault *f)
{
	char program[PATH_BYTES_MAX];
	struct paper_bytes made = { 0 };
	bool good;

	if (!beside_find(PAPER_PROGRAM, program, sizeof program))
		return fault_set(f, message_of(M_PAPER_NO_PROGRAM));
	good = tell(run(program, list, length, to->format, &made), f) &&
	    file_write(
		to->path, (const char *)made.bytes, made.length, to->force, f);
	free(made.bytes);
	return good;
}
