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
