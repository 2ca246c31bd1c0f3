/*
 * load.c - a routine for a verb, and exit statuses of what went wrong
 */
#include <stdlib.h>

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

int command_status(const struct fault *f)
{
	switch (f->message.id) {
	case M_WORLD_PLAYER_NAME:
	case M_PAPER_LARGE:
	case M_AUDIO_NO_CHANNEL:
		return EXIT_USAGE;
	case M_AUDIO_UNKNOWN:
	case M_AUDIO_DAMAGED:
	case M_AUDIO_BROKE:
	case M_MEASURE_RATE:
	case M_MEASURE_EMPTY:
		return EXIT_DATA;
	case M_WORLD_FILE_MISSING:
	case M_WORLD_FILE_NO_ROUTINE:
	case M_WORLD_FILE_DENIED:
	case M_WORLD_FILE_FOLDER:
	case M_WORLD_FILE_ODD:
	case M_WORLD_FILE_BIG:
	case M_WORLD_PATH_LONG:
	case M_WORLD_JOURNAL_UNREAD:
	case M_WORLD_JOURNAL_LOOK_BROKEN:
	case M_WORLD_JOURNAL_LOOK_OTHER:
	case M_CLASS_NO_FOLDER:
	case M_CLASS_NOT_A_FOLDER:
	case M_CLASS_UNREACHED:
		return EXIT_NO_INPUT;
	case M_CLASS_DAMAGED:
	case M_CLASS_OTHER_FILE:
	case M_CLASS_NEWER:
		return EXIT_DATA;
	case M_WORLD_FILE_THERE:
	case M_WORLD_FILE_NO_FOLDER:
	case M_WORLD_FILE_NO_RIGHT:
	case M_WORLD_FOLDER_UNMADE:
	case M_WORLD_NO_HOME:
		return EXIT_CANNOT_CREATE;
	case M_WORLD_FILE_UNREAD:
	case M_WORLD_FILE_FULL:
	case M_WORLD_FILE_UNWRITTEN:
	case M_WORLD_JOURNAL_NOT_WRITTEN:
	case M_CLASS_UNKEPT:
		return EXIT_IO;
	case M_PAPER_NO_PROGRAM:
	case M_PAPER_OTHER_PROGRAM:
	case M_PAPER_NO_LETTERS:
	case M_AUDIO_NO_PROGRAM:
	case M_AUDIO_OTHER_PROGRAM:
		return EXIT_UNAVAILABLE;
	case M_WORLD_JOURNAL_LOCKED:
	case M_CLASS_BUSY:
		return EXIT_TRY_LATER;
	default:
		return EXIT_OS;
	}
}
