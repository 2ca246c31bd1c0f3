/*
 * audio_program.c - evenhand-file at work
 */
#include "evenhand/world/audio_program.h"

#include <signal.h>
#include <string.h>
#include <unistd.h>

#include "evenhand/world/beside.h"
#include "evenhand/world/paths.h"
#include "evenhand/world/program.h"

enum { WORDS_MAX = 8 };

static _Noreturn void become(
    const char *program, const char *const *words, int in, int out)
{
	char name[] = AUDIO_PROGRAM;
	char *all[WORDS_MAX + 2] = { name };

	/* exec changes none of them; its type is older than const. */
	for (int i = 0; i < WORDS_MAX && words[i]; i++)
		memcpy(&all[i + 1], &words[i], sizeof(all[0]));
	program_become(program, all, in, out);
}

bool audio_start(
    struct audio_program *p, const char *const *words, int in, int out)
{
	char program[PATH_BYTES_MAX];
	int ends[2], theirs;

	*p = (struct audio_program) { 0, -1 };
	if (!beside_find(AUDIO_PROGRAM, program, sizeof(program)))
		return false;
	p->pid = -1;
	if (!program_pipe(ends))
		return false;
	theirs = in < 0 ? ends[0] : ends[1];
	p->fd = in < 0 ? ends[1] : ends[0];
	p->pid = fork();
	if (p->pid == 0)
		become(program, words, in < 0 ? theirs : in,
		    in < 0 ? out : theirs);
	close(theirs);
	return p->pid > 0;
}

enum audio_how audio_end(struct audio_program *p)
{
	pid_t pid = p->pid;
	int status;

	if (p->fd >= 0)
		close(p->fd);
	*p = (struct audio_program) { 0, -1 };
	if (pid <= 0)
		return pid < 0 ? AUDIO_NO_ROOM : AUDIO_NOT_STARTED;
	status = program_wait(pid);
	return status >= 0 ? (enum audio_how)status : AUDIO_BROKE;
}

void audio_kill(struct audio_program *p)
{
	if (p->pid > 0)
		kill(p->pid, SIGKILL);
}

bool audio_tell(enum audio_how how, struct fault *f)
{
	switch (how) {
	case AUDIO_GOOD:
		return true;
	case AUDIO_UNKNOWN:
		return fault_set(f, message_of(M_AUDIO_UNKNOWN));
	case AUDIO_DAMAGED:
		return fault_set(f, message_of(M_AUDIO_DAMAGED));
	case AUDIO_NO_CHANNEL:
		return fault_set(f, message_of(M_AUDIO_NO_CHANNEL));
	case AUDIO_NO_ROOM:
		return fault_set(f, message_of(M_WORLD_FILE_NO_MEMORY));
	case AUDIO_UNWRITTEN:
		return fault_set(f, message_of(M_WORLD_FILE_FULL));
	case AUDIO_NOT_STARTED:
		return fault_set(f, message_of(M_AUDIO_NO_PROGRAM));
	case AUDIO_USAGE:
		return fault_set(f, message_of(M_AUDIO_OTHER_PROGRAM));
	default:
		return fault_set(f, message_of(M_AUDIO_BROKE));
	}
}
