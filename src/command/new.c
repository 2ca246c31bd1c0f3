/*
 * new.c - `evenhand new`: a routine to edit, from those that ship
 *
 * A sample homework file names its routine, so the one without the other is of
 * no use: when that routine is not in the same folder, it is said how to get
 * it.
 */
#include <string.h>
#include <unistd.h>

#include "evenhand/screen/lines.h"
#include "evenhand/world/file.h"
#include "options.h"

enum { NAMES_BYTES = 200, PAGE_BYTES = 4096, PATH_BYTES = 4096 };

/* Index of a routine that ships, or -1. */
static int find(const char *name)
{
	for (int i = 0; i < builtin_count(); i++)
		if (strcmp(builtin_name(i), name) == 0)
			return i;
	return -1;
}

static void say_unknown(const char *name)
{
	char names[NAMES_BYTES];
	struct text t = text_in(names, sizeof names);

	for (int i = 0; i < builtin_count(); i++) {
		text_add(&t, i > 0 ? ", " : "");
		text_add(&t, builtin_name(i));
	}
	struct message m = message_with(M_NEW_UNKNOWN, TEXT(name), TEXT(names));
	command_say(&m);
}

/* "cello" of "cello-homework"; false when it is no homework file. */
static bool routine_of(const char *name, char *buffer, size_t size)
{
	const char *end = strstr(name, "-homework");
	struct text t = text_in(buffer, size);

	if (!end)
		return false;
	text_add_bytes(&t, name, (size_t)(end - name));
	return true;
}

/* Says how to get the routine that a homework file goes with. */
static void add_needs(struct text *page, const char *file, const char *name)
{
	char routine[64], path[PATH_BYTES];
	const char *slash = strrchr(file, '/');
	struct text t = text_in(path, sizeof path);

	if (!routine_of(name, routine, sizeof routine))
		return;
	if (slash)
		text_add_bytes(&t, file, (size_t)(slash - file) + 1);
	text_format(&t, "%s.yaml", routine);
	if (t.cut || access(path, F_OK) == 0)
		return;
	struct message m = message_with(M_NEW_NEEDS,
	    TEXT(path + (slash ? slash - file + 1 : 0)), TEXT(path),
	    TEXT(routine));
	lines_say(page, &m);
}

static bool say_written(const char *file, const char *name)
{
	char bytes[PAGE_BYTES];
	struct text page = text_in(bytes, sizeof bytes);
	struct message m = message_with(M_NEW_WRITTEN, TEXT(file), TEXT(name));

	lines_say(&page, &m);
	add_needs(&page, file, name);
	m = message_with(M_NEW_NEXT, TEXT(file));
	lines_say(&page, &m);
	return command_print(&page);
}

int command_new(int argc, char **argv)
{
	const char *name = "cello";
	bool force = false;
	const struct option_wish wishes[] = {
		{ "from", M_COMMAND_OPTION_FROM, "NAME", NULL, &name },
		{ "force", M_COMMAND_OPTION_FORCE, NULL, &force, NULL },
		OPTIONS_END,
	};
	const struct verb verb = { "new", "FILE", M_COMMAND_NEW, 1, 1, wishes };
	struct fault fault;
	size_t length;
	int status;

	if (!options_read(&verb, &argc, &argv, &status))
		return status;
	int from = find(name);
	if (from < 0) {
		say_unknown(name);
		return EXIT_USAGE;
	}
	const char *text = builtin_text(from, &length);
	if (!file_write(argv[0], text, length, force, &fault)) {
		command_fault(&fault);
		status = command_status(&fault);
		/* A folder that is not there is no input here. */
		return status == EXIT_NO_INPUT ? EXIT_CANNOT_CREATE : status;
	}
	return say_written(argv[0], name) ? EXIT_GOOD : EXIT_IO;
}
