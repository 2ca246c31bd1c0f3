/*
 * load.c - a routine for a verb, and exit statuses of what went wrong
 */
#include <stdlib.h>

#include "evenhand/world/paths.h"
#include "options.h"

struct routine *command_load(
    const char *path, struct load_paths *paths, int *status)
{
	struct faults *faults = calloc(1, sizeof *faults);
	struct routine *r = NULL;
	bool unreadable = false;

	*status = EXIT_OS;
	if (!faults) {
		struct message m = message_of(M_COMMAND_NO_MEMORY);

		command_say(&m);
		return NULL;
	}
	r = load_routine(path, paths, faults, &unreadable);
	command_faults(faults);
	*status = r ? EXIT_GOOD : unreadable ? EXIT_NO_INPUT : EXIT_DATA;
	free(faults);
	return r;
}

/* What is not told here is the system's fault. */
static const struct {
	enum message_id id;
	int status;
} statuses[] = {
	{ M_WORLD_PLAYER_NAME, EXIT_USAGE },
	{ M_PAPER_LARGE, EXIT_USAGE },
	{ M_AUDIO_NO_CHANNEL, EXIT_USAGE },
	{ M_CLASS_NO_NAME, EXIT_USAGE },
	{ M_AUDIO_UNKNOWN, EXIT_DATA },
	{ M_AUDIO_DAMAGED, EXIT_DATA },
	{ M_AUDIO_BROKE, EXIT_DATA },
	{ M_MEASURE_RATE, EXIT_DATA },
	{ M_MEASURE_EMPTY, EXIT_DATA },
	{ M_WORLD_FILE_MISSING, EXIT_NO_INPUT },
	{ M_WORLD_FILE_NO_ROUTINE, EXIT_NO_INPUT },
	{ M_WORLD_FILE_DENIED, EXIT_NO_INPUT },
	{ M_WORLD_FILE_FOLDER, EXIT_NO_INPUT },
	{ M_WORLD_FILE_ODD, EXIT_NO_INPUT },
	{ M_WORLD_FILE_BIG, EXIT_NO_INPUT },
	{ M_WORLD_PATH_LONG, EXIT_NO_INPUT },
	{ M_WORLD_JOURNAL_UNREAD, EXIT_NO_INPUT },
	{ M_WORLD_JOURNAL_LOOK_BROKEN, EXIT_NO_INPUT },
	{ M_WORLD_JOURNAL_LOOK_OTHER, EXIT_NO_INPUT },
	{ M_CLASS_NO_FOLDER, EXIT_NO_INPUT },
	{ M_CLASS_NOT_A_FOLDER, EXIT_NO_INPUT },
	{ M_CLASS_UNREACHED, EXIT_NO_INPUT },
	{ M_CLASS_IN_THE_WAY, EXIT_NO_INPUT },
	{ M_CLASS_CLOSED, EXIT_NO_INPUT },
	{ M_CLASS_DAMAGED, EXIT_DATA },
	{ M_CLASS_OTHER_FILE, EXIT_DATA },
	{ M_CLASS_NEWER, EXIT_DATA },
	{ M_GATHER_OTHER_STUDENT, EXIT_DATA },
	{ M_GATHER_MORE_IDS, EXIT_DATA },
	{ M_GATHER_MANY_IDS, EXIT_DATA },
	{ M_GATHER_SEVERAL, EXIT_DATA },
	{ M_GATHER_NOBODY, EXIT_DATA },
	{ M_GATHER_JOIN_LEFT, EXIT_DATA },
	{ M_GATHER_NEWER, EXIT_DATA },
	{ M_GATHER_BROKEN, EXIT_DATA },
	{ M_GATHER_OTHER_FILE, EXIT_DATA },
	{ M_WORLD_FILE_THERE, EXIT_CANNOT_CREATE },
	{ M_WORLD_FILE_NO_FOLDER, EXIT_CANNOT_CREATE },
	{ M_WORLD_FILE_NO_RIGHT, EXIT_CANNOT_CREATE },
	{ M_WORLD_FOLDER_UNMADE, EXIT_CANNOT_CREATE },
	{ M_GATHER_READ_ONLY, EXIT_CANNOT_CREATE },
	{ M_GATHER_UNREACHABLE, EXIT_CANNOT_CREATE },
	{ M_WORLD_NO_HOME, EXIT_CANNOT_CREATE },
	{ M_WORLD_FILE_UNREAD, EXIT_IO },
	{ M_WORLD_FILE_FULL, EXIT_IO },
	{ M_WORLD_FILE_UNWRITTEN, EXIT_IO },
	{ M_WORLD_JOURNAL_NOT_WRITTEN, EXIT_IO },
	{ M_CLASS_UNKEPT, EXIT_IO },
	{ M_GATHER_FULL, EXIT_IO },
	{ M_PAPER_NO_PROGRAM, EXIT_UNAVAILABLE },
	{ M_PAPER_OTHER_PROGRAM, EXIT_UNAVAILABLE },
	{ M_PAPER_NO_LETTERS, EXIT_UNAVAILABLE },
	{ M_AUDIO_NO_PROGRAM, EXIT_UNAVAILABLE },
	{ M_AUDIO_OTHER_PROGRAM, EXIT_UNAVAILABLE },
	{ M_WORLD_JOURNAL_LOCKED, EXIT_TRY_LATER },
	{ M_CLASS_BUSY, EXIT_TRY_LATER },
	{ M_GATHER_BUSY, EXIT_TRY_LATER },
};

int command_status(const struct fault *f)
{
	for (size_t i = 0; i < sizeof(statuses) / sizeof(*statuses); i++)
		if (statuses[i].id == f->message.id)
			return statuses[i].status;
	return EXIT_OS;
}

bool command_journal(const char *player, char *path, size_t size, int *status)
{
	struct fault f;

	if (path_journal(player, path, size, &f))
		return true;
	command_fault(&f);
	*status = command_status(&f);
	return false;
}
