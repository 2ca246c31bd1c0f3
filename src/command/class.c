/*
 * class.c - `evenhand class`: all students of a teacher, who needs help first
 *
 *	folder ─▶ new records gathered ─▶ rows ─┬▶ a list on a full screen
 *						├▶ lines
 *						└▶ CSV, JSON
 */
#include "class.h"

#include <stdlib.h>

#include "choices.h"
#include "evenhand/base/tongue.h"
#include "evenhand/screen/lines.h"
#include "history_page.h"
#include "options.h"
#include "so_far.h"

enum { LINE_BYTES = 3500 };

/* What the command line asks. */
struct ask {
	const char *folder;
	struct moment now;
	bool csv, json, lines, ascii;
};

static bool ask_read(struct ask *a, int argc, char **argv, int *status)
{
	const char *at = NULL;
	const struct option_wish wishes[] = {
		{ "lines", M_CLASS_OPTION_LINES, NULL, &a->lines, NULL },
		{ "csv", M_CLASS_OPTION_CSV, NULL, &a->csv, NULL },
		{ "json", M_CLASS_OPTION_JSON, NULL, &a->json, NULL },
		{ "ascii", M_COMMAND_OPTION_ASCII, NULL, &a->ascii, NULL },
		OPTION_AT(&at),
		OPTIONS_END,
	};
	const struct verb verb = { "class", "FOLDER", M_CLASS_ABOUT, 1, 1,
		wishes };

	if (!options_read(&verb, &argc, &argv, status))
		return false;
	*status = EXIT_USAGE;
	a->folder = argv[0];
	if (a->csv && a->json) {
		struct message m = message_of(M_CLASS_TWO_FORMS);

		command_say(&m);
		return false;
	}
	/* What programs read is the same everywhere. */
	if (a->csv || a->json)
		tongue_set(NULL);
	return options_now(at, &a->now);
}

/* --- reading it --- */

static void tell(void *context, int done, int all)
{
	so_far_tell(context, done, all);
}

static bool no_class(const struct fault *f, int *status)
{
	command_fault(f);
	*status = command_status(f);
	return false;
}

static void say_left(const struct class_list *list)
{
	struct message m = message_with(
	    M_CLASS_LEFT_OUT, WHOLE(list->left_out));

	if (list->left_out > 0)
		command_say(&m);
	m = message_with(M_CLASS_SOME_UNREAD, WHOLE(list->broken));
	if (list->broken > 0)
		command_say(&m);
}

bool class_see(
    struct class_seen *s, const char *folder, struct moment now, int *status)
{
	struct so_far so_far = { M_CLASS_MAKING, 50, 25, false };
	size_t room;
	struct fault f;

	s->now = now;
	s->today = moment_practice_day(now);
	class_gather(folder, &s->lies);
	s->folder = class_look(folder, &f);
	if (!s->folder ||
	    !class_students(s->folder, &s->list, s->today, tell, &so_far, &f))
		return no_class(&f, status);
	say_left(&s->list);
	room = (size_t)s->list.count + 1;
	s->row = calloc(room, sizeof(*s->row));
	s->order = calloc(room, sizeof(struct class_row *));
	if (!s->row || !s->order) {
		fault_set(&f, message_of(M_CLASS_NO_MEMORY));
		return no_class(&f, status);
	}
	class_rows(s->row, s->order, s->list.student, s->list.count, s->today);
	return true;
}

void class_seen_done(struct class_seen *s)
{
	free(s->row);
	free(s->order);
	class_list_done(&s->list);
	class_close(s->folder);
}

/* --- showing it --- */

static bool print_lines(const struct class_seen *s)
{
	char lines[LINE_BYTES];
	struct text line = text_in(lines, sizeof(lines));
	struct history_page page;

	page_begin(&page);
	class_head(&line, s->order, s->list.count, s->today);
	page_line(&page, lines);
	for (int i = 0; i < s->list.count && page.good; i++) {
		line = text_in(lines, sizeof(lines));
		class_line(&line, s->order[i], s->today);
		page_line(&page, lines);
	}
	return page_end(&page);
}

struct message class_empty(const struct class_seen *s, const char *folder)
{
	const struct class_lies *l = &s->lies;

	if (l->records > 0)
		return message_with(
		    M_CLASS_EMPTY_BAD, TEXT(folder), WHOLE(l->records));
	if (l->journals > 0)
		return message_with(M_CLASS_EMPTY_INSIDE, TEXT(folder));
	if (l->others > 0)
		return message_with(M_CLASS_EMPTY_OTHERS, TEXT(folder),
		    WHOLE(l->others), TEXT(l->other));
	return message_with(M_CLASS_EMPTY, TEXT(folder));
}

static bool print_empty(const struct ask *a, const struct class_seen *s)
{
	char bytes[LINE_BYTES];
	struct text page = text_in(bytes, sizeof(bytes));
	struct message m = class_empty(s, a->folder);

	lines_say(&page, &m);
	return command_print(&page);
}

static int show(const struct ask *a, const struct class_seen *s)
{
	struct settings_file chosen = { 0 };
	int status = EXIT_GOOD;
	bool good;

	if (a->csv)
		good = class_print_csv(s);
	else if (a->json)
		good = class_print_json(s);
	else if (s->list.count == 0)
		good = print_empty(a, s);
	else {
		choices_read(&chosen);
		if (!a->lines && !chosen.now.lines &&
		    class_show(s, choices_colours(&chosen.now),
			a->ascii || chosen.now.ascii, &status))
			return status;
		good = print_lines(s);
	}
	return good ? EXIT_GOOD : EXIT_IO;
}

int command_class(int argc, char **argv)
{
	struct class_seen seen = { 0 };
	struct ask ask = { 0 };
	int status;

	if (!ask_read(&ask, argc, argv, &status))
		return status;
	if (class_see(&seen, ask.folder, ask.now, &status))
		status = show(&ask, &seen);
	class_seen_done(&seen);
	return status;
}
