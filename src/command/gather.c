/*
 * gather.c - `evenhand gather`: records merged into a journal or a class
 *
 *	FILE... ─▶ record ─▶ journal of a player
 *			└──▶ journal of its student in a class folder
 *
 * One file's faults never hide another's.  What each brought is said in a
 * line; where there are many, only what all of them brought.
 */
#include <string.h>
#include <unistd.h>

#include "evenhand/screen/lines.h"
#include "evenhand/world/class_folder.h"
#include "evenhand/world/gather.h"
#include "evenhand/world/paths.h"
#include "evenhand/world/record_file.h"
#include "options.h"
#include "so_far.h"

enum { MANY = 20, PAGE_BYTES = 4096 };

/* One run over all files. */
struct run {
	const char *player, *folder, *join;
	struct join_asked asked;    /* what --join says */
	struct class_folder *class; /* NULL: into a player's journal */
	char journal[PATH_BYTES_MAX];
	int files, done, failed;
	bool joined; /* students of the class, by themselves */
	struct gathered all;
	struct so_far so_far;
};

static void add(struct gathered *to, const struct gathered *more)
{
	to->sittings_new += more->sittings_new;
	to->sittings_more += more->sittings_more;
	to->sittings_known += more->sittings_known;
	to->turns_new += more->turns_new;
	to->notes_new += more->notes_new;
	to->notes_known += more->notes_known;
	to->joined += more->joined;
	to->apart += more->apart;
	to->different += more->different;
}

/* What came that was not here, what was here, and what did not agree. */
static void say_news(
    struct text *page, const char *what, const struct gathered *g)
{
	struct message m = message_with(M_GATHER_NEWS, TEXT(what),
	    WHOLE(g->sittings_new), WHOLE(g->sittings_known),
	    WHOLE(g->notes_new));

	lines_say(page, &m);
	if (g->sittings_more > 0) {
		m = message_with(M_GATHER_MORE, WHOLE(g->sittings_more));
		lines_say(page, &m);
	}
	if (g->joined > 0) {
		m = message_with(M_GATHER_JOINED, WHOLE(g->joined));
		lines_say(page, &m);
	}
	if (g->apart > 0) {
		m = message_with(M_GATHER_APART, WHOLE(g->apart));
		lines_say(page, &m);
	}
	if (g->different > 0) {
		m = message_with(M_GATHER_DIFFERENT, WHOLE(g->different));
		lines_say(page, &m);
	}
}

static bool say_file(struct run *r, const char *path, const struct gathered *g)
{
	char bytes[PAGE_BYTES];
	struct text page = text_in(bytes, sizeof(bytes));

	if (r->files > MANY && g->apart + g->different + g->joined == 0)
		return true;
	so_far_end(&r->so_far);
	say_news(&page, path, g);
	return command_print(&page);
}

static bool say_all(struct run *r)
{
	char bytes[PAGE_BYTES], what[64];
	struct text page = text_in(bytes, sizeof(bytes));
	struct message m;

	so_far_end(&r->so_far);
	if (r->files < 2)
		return true;
	m = message_with(M_GATHER_FILES, WHOLE(r->files - r->failed));
	message_text(&m, what, sizeof(what));
	say_news(&page, what, &r->all);
	return command_print(&page);
}

/* A class is opened, and perhaps made, for a record that is good. */
static bool open_class(struct run *r, struct fault *f)
{
	if (r->class != NULL)
		return true;
	r->class = class_open(r->folder, f);
	return r->class != NULL;
}

/* Merges one record where it belongs. */
static bool merge(struct run *run, const struct record *r, struct gathered *g,
    struct fault *f)
{
	if (run->folder == NULL)
		return gather_into(run->journal,
		    &(struct gather_what) { r, GATHER_OWN, run->asked }, g, f);
	return open_class(run, f) &&
	    class_merge(run->class, r, &run->asked, g, f);
}

static int gather_record(
    struct run *run, const char *path, const struct record *r)
{
	struct gathered g = { 0 };
	struct fault f;

	if (!merge(run, r, &g, &f)) {
		so_far_end(&run->so_far);
		if (f.path == NULL)
			fault_at(&f, path, 0, 0);
		command_fault(&f);
		return command_status(&f);
	}
	add(&run->all, &g);
	return say_file(run, path, &g) ? EXIT_GOOD : EXIT_IO;
}

static int gather_file(struct run *run, const char *path)
{
	struct faults faults = { 0 };
	struct record r;
	bool unreadable;
	int status;

	if (record_load(path, &r, &faults, &unreadable)) {
		status = gather_record(run, path, &r);
	} else {
		so_far_end(&run->so_far);
		command_faults(&faults);
		status = unreadable ? EXIT_NO_INPUT : EXIT_DATA;
	}
	record_done(&r);
	run->done++;
	run->failed += status != EXIT_GOOD;
	so_far_tell(&run->so_far, run->done, run->files);
	return status;
}

/*
 * Students of the class that --join names become one: before the files, so that
 * a record of both is taken, and behind them, when all are there.
 */
static int join_class(struct run *r, bool all)
{
	char bytes[PAGE_BYTES];
	struct text page = text_in(bytes, sizeof(bytes));
	struct message m = message_of(M_GATHER_ONE_ALREADY);
	struct fault f;
	int joined;

	if (!r->join || !r->folder || (!all && access(r->folder, F_OK) != 0))
		return EXIT_GOOD;
	if (!open_class(r, &f) ||
	    !class_join(r->class, &r->asked, all, &joined, &f)) {
		so_far_end(&r->so_far);
		command_fault(&f);
		return command_status(&f);
	}
	if (joined == 0 && (!all || r->files > 0 || r->joined))
		return EXIT_GOOD;
	r->joined = true;
	if (joined > 0)
		m = message_with(M_GATHER_JOINED, WHOLE(joined));
	lines_say(&page, &m);
	return command_print(&page) ? EXIT_GOOD : EXIT_IO;
}

static bool open_target(struct run *r, int *status)
{
	struct fault f;

	if (r->folder && r->player) {
		struct message m = message_of(M_GATHER_TWO_TARGETS);

		command_say(&m);
		*status = EXIT_USAGE;
		return false;
	}
	if (r->join && !join_read(r->join, &r->asked)) {
		struct message m = message_with(
		    M_GATHER_BAD_JOIN, TEXT(r->join));

		command_say(&m);
		*status = EXIT_USAGE;
		return false;
	}
	if (!r->folder)
		return command_journal(
		    r->player, r->journal, sizeof(r->journal), status);
	if (class_may_be(r->folder, &f))
		return true;
	command_fault(&f);
	*status = command_status(&f);
	return false;
}

/* Two statuses as one: the first that is not good. */
static int worse(int a, int b)
{
	return a != EXIT_GOOD ? a : b;
}

int command_gather(int argc, char **argv)
{
	struct run r = { .so_far = { M_GATHER_PROGRESS, MANY + 1, 16, false } };
	const struct option_wish wishes[] = {
		{ "class", M_GATHER_OPTION_CLASS, "FOLDER", NULL, &r.folder },
		{ "join", M_GATHER_OPTION_JOIN, "ID+ID", NULL, &r.join },
		OPTION_PLAYER(&r.player),
		OPTIONS_END,
	};
	const struct verb verb = { "gather", "FILE...", M_GATHER_HELP, 0, -1,
		wishes };
	int status = EXIT_GOOD;

	if (!options_read(&verb, &argc, &argv, &status) ||
	    !open_target(&r, &status))
		return status;
	r.files = argc;
	if (argc == 0 && !(r.folder && r.join)) {
		options_too_few(&verb);
		return EXIT_USAGE;
	}
	status = join_class(&r, false);
	for (int i = 0; i < argc; i++)
		status = worse(status, gather_file(&r, argv[i]));
	if (status == EXIT_GOOD)
		status = join_class(&r, true);
	class_close(r.class);
	return say_all(&r) ? status : worse(status, EXIT_IO);
}
