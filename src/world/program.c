/*
 * program.c - what the programs that evenhand starts have in common
 */
#include "evenhand/world/program.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "evenhand/base/text.h"

enum { SAID_BYTES = 256 };

bool program_write(int descriptor, const void *bytes, size_t length)
{
	const char *at = bytes;

	while (length > 0) {
		ssize_t n = write(descriptor, at, length);

		if (n < 0 && errno != EINTR)
			return false;
		at += n > 0 ? n : 0;
		length -= n > 0 ? (size_t)n : 0;
	}
	return true;
}

int program_say(
    int descriptor, const char *before, const char *words, int good, int lost)
{
	char bytes[SAID_BYTES];
	struct text t = text_in(bytes, sizeof(bytes));

	text_format(&t, "%s%s\n", before, words);
	return program_write(descriptor, t.bytes, t.length) ? good : lost;
}

bool program_pipe(int ends[2])
{
	ends[0] = ends[1] = -1;
	if (pipe(ends) != 0)
		return false;
	fcntl(ends[0], F_SETFD, FD_CLOEXEC);
	fcntl(ends[1], F_SETFD, FD_CLOEXEC);
	return true;
}

void program_become(const char *path, char *const *words, int in, int out)
{
	int none = open("/dev/null", O_WRONLY);

	dup2(in, STDIN_FILENO);
	dup2(out, STDOUT_FILENO);
	dup2(none, STDERR_FILENO);
	/* evenhand ignores it, and exec would leave it so. */
	signal(SIGPIPE, SIG_DFL);
	execv(path, words);
	_exit(PROGRAM_MISSING);
}

int program_wait(pid_t program)
{
	int status;

	while (waitpid(program, &status, 0) < 0)
		if (errno != EINTR)
			return -1;
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}
