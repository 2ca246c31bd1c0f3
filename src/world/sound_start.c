/*
 * sound_start.c - how evenhand-sound is started, and what it is given
 *
 *	0, 1, 2   nothing to read; what it prints goes into the keeper's pipe
 *	3         the memory it shares with evenhand
 *
 * And what of signals and descriptors the keeper itself has.  The keeper holds nothing
 * else either: whatever others gave to evenhand, they may wait for its end.
 */
#include <dirent.h>
#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <unistd.h>

#ifdef __linux__
#include <sys/prctl.h>
#endif

#include "evenhand/base/text.h"
#include "evenhand/world/sound_child.h"
#include "sound_link.h"

enum { FDS_KEPT = SOUND_CHILD_MEMORY + 1 };

/* Closes what evenhand was given by others: they wait for its end. */
static void close_others(int kept)
{
	DIR *folder = opendir("/dev/fd");
	struct dirent *entry;

	while (folder && (entry = readdir(folder)) != NULL) {
		int fd = atoi(entry->d_name); /* NOLINT(cert-err34-c) */

		if (fd >= FDS_KEPT && fd != kept && fd != dirfd(folder))
			close(fd);
	}
	if (folder)
		closedir(folder);
}

static void quiet(int fd_out)
{
	int none = open("/dev/null", O_RDWR);

	dup2(none, STDIN_FILENO);
	dup2(fd_out >= 0 ? fd_out : none, STDOUT_FILENO);
	dup2(fd_out >= 0 ? fd_out : none, STDERR_FILENO);
	if (none > STDERR_FILENO)
		close(none);
}

/* The memory takes its own descriptor; all others but the socket go. */
int sound_descriptors(const struct sound_keep *given)
{
	int socket = fcntl(given->socket, F_DUPFD_CLOEXEC, FDS_KEPT);
	int memory = fcntl(given->memory, F_DUPFD, FDS_KEPT);

	quiet(-1);
	dup2(memory, SOUND_CHILD_MEMORY);
	close_others(socket);
	return socket;
}

/* It is there to interrupt a wait. */
static void nothing(int number)
{
	(void)number;
}

void sound_signals(void)
{
	static const int numbers[] = { SIGINT, SIGHUP, SIGTERM, SIGQUIT,
		SIGTSTP, SIGTTIN, SIGTTOU, SIGPIPE, SIGWINCH, SIGUSR1, SIGUSR2,
		SIGALRM, SIGXFSZ }; /* a log larger than files may be here */
	struct sigaction a = { .sa_handler = SIG_IGN };

	sigemptyset(&a.sa_mask);
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++)
		sigaction(numbers[i], &a, NULL);
	a.sa_handler = SIG_DFL;
	sigaction(SIGSEGV, &a, NULL);
	sigaction(SIGBUS, &a, NULL);
	sigaction(SIGABRT, &a, NULL);
	a.sa_handler = nothing;
	sigaction(SIGCHLD, &a, NULL);
}

_Noreturn void sound_start(const struct sound_started *s)
{
	struct sigaction a = { .sa_handler = SIG_DFL };
	char name[] = SOUND_PROGRAM, sound[] = "--for", hear[] = "--hear";
	char how[SOUND_LAYOUT_BYTES];
	struct text t = text_in(how, sizeof how);
	char *const words[] = { name, s->task == SOUND_HEAR ? hear : sound, how,
		NULL };
	sigset_t none;

#ifdef __linux__
	prctl(PR_SET_PDEATHSIG, SIGKILL);
#endif
	text_add(&t, s->layout);
	/* It may have died before that. */
	if (getppid() != s->keeper)
		_exit(EXIT_FAILURE);
	sigemptyset(&a.sa_mask);
	sigaction(SIGCHLD, &a, NULL);
	quiet(s->out);
	close_others(-1);
	setenv("JACK_NO_START_SERVER", "1", 0);
	sigemptyset(&none);
	sigprocmask(SIG_SETMASK, &none, NULL);
	execv(s->program, words);
	_exit(SOUND_EXIT_MISSING);
}
