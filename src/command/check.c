/*
 * check.c - `evenhand check`: every fault of routine files, then the dry run
 *
 * Faults go to standard error as path:line:column: sentence, what the good
 * files come to goes to standard output.  One file's faults never hide
 * another's.
 *
 * With a journal, a stage that has history and is gone from the file is told
 * too, since a renamed id would silently begin from nothing; but it may be
 * meant, so the file is good all the same.
 */
#include <stdlib.h>
#include <unistd.h>

#include "evenhand/coach/history.h"
#include "evenhand/screen/dry_run.h"
#include "evenhand/screen/lines.h"
#include "evenhand/world/journal_past.h"
#include "evenhand/world/paths.h"
#include "options.h"

enum { PAGE_BYTES = 128 * 1024 };

/* One run over all files. */
struct check {
	char journal[PATH_BYTES_MAX]; /* "" when there is none to look at */
	int files;		      /* shown so far */
	char *page;
};

/* What the history of one routine is held against. */
struct past {
	const struct routine *routine;
	const char *path; /* where its stages stand */
	struct faults faults;
};

static void note_gone(void *context, const char *id, int turns)
{
	struct past *p = context;
	const struct routine *r = p->routine;

	if (history_stage(r, id) >= 0)
		return;
	/* It stands nowhere, so the place is where the stages begin. */
	faults_add(&p->faults,
	    message_with(M_CHECK_GONE, TEXT(id), WHOLE(turns)), p->path,
	    r->stage[0].line, r->stage[0].column);
}

/* A stage with history that is gone is said. */
static void look_for_gone(
    const struct check *c, const struct routine *r, const char *path)
{
	struct past past = { .routine = r, .path = path };
	struct fault f;

	if (!*c->journal)
		return;
	if (!journal_past_stages(c->journal, r->name, note_gone, &past, &f)) {
		struct message m = message_of(M_CHECK_NO_HISTORY);

		command_fault(&f);
		command_say(&m);
	}
	command_faults(&past.faults);
}

static bool show(struct check *c, const char *path, const struct routine *r)
{
	struct text out = text_in(c->page, PAGE_BYTES);
	struct message m = message_with(M_CHECK_GOOD, TEXT(path), TEXT(r->name),
	    WHOLE(r->edition), WHOLE(r->stages));

	if (c->files++ > 0)
		text_add(&out, "\n");
	lines_say(&out, &m);
	dry_run_write(&out, r);
	return command_print(&out);
}

static int check_file(struct check *c, const char *path)
{
	struct load_paths paths;
	int status;
	struct routine *r = command_load(path, &paths, &status);

	if (!r)
		return status;
	look_for_gone(c, r, paths.routine);
	status = show(c, path, r) ? EXIT_GOOD : EXIT_IO;
	routine_free(r);
	return status;
}

/*
 * Finds the journal to look at: a named player must have one, while the only
 * player of a computer need not have begun.
 */
static bool find_journal(struct check *c, const char *player, int *status)
{
	struct fault fault;

	if (!path_journal(player, c->journal, sizeof(c->journal), &fault)) {
		c->journal[0] = '\0';
		if (!player)
			return true; /* no home folder, no journal */
		command_fault(&fault);
		*status = EXIT_USAGE;
		return false;
	}
	if (access(c->journal, F_OK) == 0)
		return true;
	c->journal[0] = '\0';
	if (!player)
		return true;
	struct message m = message_with(M_CHECK_NO_PLAYER, TEXT(player));
	command_say(&m);
	*status = EXIT_NO_INPUT;
	return false;
}

/* Faults in a file outweigh a file that is not there, and both a good one. */
static int worse(int a, int b)
{
	static const int order[] = { EXIT_OS, EXIT_IO, EXIT_DATA,
		EXIT_NO_INPUT };

	for (size_t i = 0; i < sizeof(order) / sizeof(order[0]); i++)
		if (a == order[i] || b == order[i])
			return order[i];
	return a > b ? a : b;
}

int command_check(int argc, char **argv)
{
	const char *player = NULL;
	const struct option_wish wishes[] = {
		OPTION_PLAYER(&player),
		OPTIONS_END,
	};
	const struct verb verb = { "check", "FILE...", M_COMMAND_CHECK, 1, -1,
		wishes };
	struct check c = { .files = 0 };
	int status = EXIT_GOOD;

	if (!options_read(&verb, &argc, &argv, &status))
		return status;
	if (!find_journal(&c, player, &status))
		return status;
	c.page = malloc(PAGE_BYTES);
	if (!c.page) {
		struct message m = message_of(M_COMMAND_NO_MEMORY);

		command_say(&m);
		return EXIT_OS;
	}
	status = EXIT_GOOD;
	for (int i = 0; i < argc; i++)
		status = worse(status, check_file(&c, argv[i]));
	free(c.page);
	return status;
}
