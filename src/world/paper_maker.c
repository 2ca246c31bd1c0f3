/*
 * paper_maker.c - a list of strokes and words, made a document in a file
 */
#include "evenhand/world/paper_maker.h"

#include <signal.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>

#include "evenhand/world/beside.h"
#include "evenhand/world/paths.h"
#include "evenhand/world/program.h"

static const char *const formats[PAPER_FORMATS] = { "pdf", "svg", "png" };

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

static _Noreturn void become(
    const char *program, enum paper_format format, int in, int out)
{
	char name[] = PAPER_PROGRAM, how[4];
	char *const words[] = { name, how, NULL };

	memcpy(how, formats[format], sizeof how);
	program_become(program, words, in, out);
}

/* A fault of the file has a place. */
static bool unwritten(
    const struct paper_maker *m, enum message_id id, struct fault *f)
{
	fault_set(f, message_of(id));
	return fault_at(f, m->file.path, 0, 0);
}

static bool tell(const struct paper_maker *m, int status, struct fault *f)
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
	case DRAWN_LOST:
		return unwritten(m, M_WORLD_FILE_UNWRITTEN, f);
	case DRAWN_FULL:
		return unwritten(m, M_WORLD_FILE_FULL, f);
	case PROGRAM_MISSING:
		return fault_set(f, message_of(M_PAPER_NO_PROGRAM));
	default:
		return fault_set(f, message_of(M_PAPER_BROKE));
	}
}

bool paper_begin(
    struct paper_maker *m, const struct paper_target *to, struct fault *f)
{
	char program[PATH_BYTES_MAX];
	int ends[2];

	*m = (struct paper_maker) { .list = -1, .file.fd = -1 };
	if (!beside_find(PAPER_PROGRAM, program, sizeof program))
		return fault_set(f, message_of(M_PAPER_NO_PROGRAM));
	if (!file_new_open(&m->file, to->path, FILE_RIGHTS, to->force, f))
		return false;
	if (!program_pipe(ends)) {
		file_new_drop(&m->file);
		return fault_set(f, message_of(M_PAPER_NO_ROOM));
	}
	m->list = ends[1];
	m->program = fork();
	if (m->program == 0)
		become(program, to->format, ends[0], m->file.fd);
	close(ends[0]);
	if (m->program > 0)
		return true;
	paper_drop(m);
	return fault_set(f, message_of(M_PAPER_NO_ROOM));
}

bool paper_give(struct paper_maker *m, const char *list, size_t length)
{
	return program_write(m->list, list, length);
}

/* No more of the list comes; how the program ended. */
static int wait_for_it(struct paper_maker *m)
{
	pid_t program = m->program;

	if (m->list >= 0)
		close(m->list);
	m->list = -1;
	m->program = 0;
	return program > 0 ? program_wait(program) : -1;
}

bool paper_end(struct paper_maker *m, struct fault *f)
{
	if (tell(m, wait_for_it(m), f))
		return file_new_put(&m->file, f);
	file_new_drop(&m->file);
	return false;
}

void paper_drop(struct paper_maker *m)
{
	if (m->program <= 0 && m->list <= 0)
		return;
	if (m->program > 0)
		kill(m->program, SIGKILL);
	wait_for_it(m);
	file_new_drop(&m->file);
}
