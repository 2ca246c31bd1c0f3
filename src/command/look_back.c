/*
 * look_back.c - the history so far, for verbs that only look
 */
#include "evenhand/world/journal.h"
#include "evenhand/world/paths.h"
#include "options.h"

bool command_look_back(struct history *h, const char *player, struct moment now,
    const struct routine *r, int *status)
{
	char path[PATH_BYTES_MAX];
	struct journal *j = NULL;
	struct message m;
	struct fault f;
	bool good, named = path_journal(player, path, sizeof(path), &f);

	if (named)
		j = journal_look(path, &f);
	good = j != NULL &&
	    journal_history(j, h, moment_practice_day(now), r, &f);
	while (j && journal_trouble(j, &m))
		command_say(&m);
	if (!good) {
		command_fault(&f);
		*status = command_status(&f);
	}
	journal_close(j);
	return good || (!journal_lacked(&f) && (named || player == NULL));
}
