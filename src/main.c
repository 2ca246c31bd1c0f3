/*
 * main.c - takes the verb and hands over
 *
 * Before that it sees to it that descriptors 0, 1 and 2 are taken: a program
 * started without them would get a journal as its standard output.  What was
 * closed is opened the wrong way round, so that its use fails as it should.
 */
#include <fcntl.h>
#include <signal.h>
#include <unistd.h>

#include "evenhand/command/command.h"
#include "evenhand/world/beside.h"
#include "evenhand/world/gettext.h"

static bool descriptors_taken(void)
{
	for (int d = STDIN_FILENO; d <= STDERR_FILENO; d++) {
		if (fcntl(d, F_GETFD) >= 0)
			continue;
		/* The lowest free one is given, which is d. */
		if (open("/dev/null",
			d == STDIN_FILENO ? O_WRONLY : O_RDONLY) != d)
			return false;
	}
	return true;
}

int main(int argc, char **argv)
{
	if (!descriptors_taken())
		return EXIT_OS;
	/* A reader that went away is told by write, not by a signal. */
	signal(SIGPIPE, SIG_IGN);
	/* And so is a file that may not grow any more. */
	signal(SIGXFSZ, SIG_IGN);
	beside_started_as(argv[0]);
	gettext_begin();
	return command_run(argc, argv);
}
