/*
 * sheet.c - `evenhand print`: sheets of paper
 *
 *	evenhand print homework wren.yaml -o wren.pdf
 *	evenhand print lesson wren.yaml -o lesson.pdf
 *	evenhand print class students -o monday.pdf	(class_print.c)
 *
 * The sheet is laid out here, while evenhand-paper looks for its letters; that
 * draws it, and it is put in its place whole or not at all.
 */
#include <stdlib.h>
#include <string.h>

#include "class_print.h"
#include "evenhand/paper/list.h"
#include "evenhand/paper/sheet.h"
#include "evenhand/screen/lines.h"
#include "options.h"

enum { PAGE_BYTES = 8192 };

/* What the command line asks. */
struct ask {
	const char *routine; /* or the folder of a class; NULL: none named */
	const char *player;
	struct paper_target to;
	enum sheet_size size;
	struct moment now;
	bool lesson, class, large;
};

/* What a sheet is made of, too large for the stack. */
struct sheet {
	struct load_paths paths;
	struct routine *routine;
	struct history history;
	struct plan plan;
	struct paper_maker maker;
	struct paper paper;
	char list[LIST_BYTES_MAX];
};

static bool refuse(struct message m)
{
	command_say(&m);
	return false;
}

static bool size_of(const char *word, enum sheet_size *size)
{
	*size = SHEET_A4;
	if (!word || strcmp(word, "a4") == 0)
		return true;
	*size = SHEET_LETTER;
	return strcmp(word, "letter") == 0 ||
	    refuse(message_with(M_PAPER_SIZE, TEXT(word)));
}

static bool which(struct ask *a, const char *word)
{
	a->lesson = strcmp(word, "lesson") == 0;
	a->class = strcmp(word, "class") == 0;
	return a->lesson || a->class || strcmp(word, "homework") == 0 ||
	    refuse(message_with(M_PAPER_WHAT, TEXT(word)));
}

static bool ask_read(struct ask *a, int argc, char **argv, int *status)
{
	const char *at = NULL, *size = NULL;
	const struct option_wish wishes[] = {
		{ "output", M_PAPER_OPTION_OUT, "FILE", NULL, &a->to.path },
		{ "paper", M_PAPER_OPTION_PAPER, "a4|letter", NULL, &size },
		{ "large", M_PAPER_OPTION_LARGE, NULL, &a->large, NULL },
		{ "force", M_COMMAND_OPTION_FORCE, NULL, &a->to.force, NULL },
		OPTION_PLAYER(&a->player),
		OPTION_AT(&at),
		OPTIONS_END,
	};
	const struct verb verb = { "print",
		"homework|lesson|class [ROUTINE|FOLDER] -o FILE", M_PAPER_ABOUT,
		1, 2, wishes };

	if (!options_read(&verb, &argc, &argv, status))
		return false;
	*status = EXIT_USAGE;
	a->routine = argc > 1 ? argv[1] : NULL;
	if (!which(a, argv[0]))
		return false;
	if (!a->to.path)
		return refuse(message_with(M_PAPER_OUT, TEXT(argv[0]),
		    TEXT(a->class ? " FOLDER" : "")));
	if (!paper_format_of(a->to.path, &a->to.format))
		return refuse(message_with(M_PAPER_SUFFIX, TEXT(a->to.path)));
	return size_of(size, &a->size) && options_now(at, &a->now);
}

bool sheet_begin(
    struct paper_maker *m, const struct paper_target *to, int *status)
{
	struct fault f;

	if (paper_begin(m, to, &f))
		return true;
	command_fault(&f);
	*status = command_status(&f);
	return false;
}

/* One sentence as a page; the status to end with. */
static int say(struct message said)
{
	char bytes[PAGE_BYTES];
	struct text page = text_in(bytes, sizeof(bytes));

	lines_say(&page, &said);
	return command_print(&page) ? EXIT_GOOD : EXIT_IO;
}

int sheet_end(struct paper_maker *m, int pages)
{
	struct fault f;

	if (!paper_end(m, &f)) {
		command_fault(&f);
		return command_status(&f);
	}
	return say(
	    message_with(M_PAPER_WRITTEN, TEXT(m->file.path), WHOLE(pages)));
}

static void lay_homework(struct sheet *s, const struct ask *a)
{
	struct sheet_wish wish = { s->routine, moment_day(a->now), a->size,
		a->large };

	sheet_homework(&s->paper, &wish);
}

/* False: no player can have that name; that was said. */
static bool lay_lesson(struct sheet *s, const struct ask *a, int *status)
{
	struct plan_wish today = {
		.routine = s->routine, .history = &s->history, .now = a->now
	};
	struct lesson_wish wish = { s->routine, &s->history, &s->plan,
		s->routine->homework_for, a->size, a->large };

	if (!command_look_back(
		&s->history, a->player, a->now, s->routine, status))
		return false;
	if (!*wish.name && a->player)
		wish.name = a->player;
	plan_make(&s->plan, &today);
	sheet_lesson(&s->paper, &wish);
	return true;
}

static int make(struct sheet *s, const struct ask *a)
{
	struct text list = text_in(s->list, sizeof(s->list));
	int status, written;

	/* It starts while the sheet is laid out. */
	if (!sheet_begin(&s->maker, &a->to, &status))
		return status;
	s->routine = command_load(a->routine, &s->paths, &status);
	if (!s->routine)
		return status;
	if (!a->lesson)
		lay_homework(s, a);
	else if (!lay_lesson(s, a, &status))
		return status;
	list_write(&list, &s->paper);
	if (s->paper.cut || list.cut) {
		refuse(message_of(M_PAPER_FULL));
		return EXIT_DATA;
	}
	/* Where the list is not taken, the end tells why. */
	paper_give(&s->maker, list.bytes, list.length);
	written = sheet_end(&s->maker, s->paper.pages);
	/* A teacher's own journal knows nothing of the students. */
	if (written == EXIT_GOOD && a->lesson && s->history.sittings == 0)
		written = say(message_of(M_PAPER_NOBODY));
	return written == EXIT_GOOD ? status : written;
}

int command_sheet(int argc, char **argv)
{
	struct ask ask = { 0 };
	struct sheet *s;
	int status;

	if (!ask_read(&ask, argc, argv, &status))
		return status;
	if (ask.class)
		return class_print(&(struct class_print) {
		    ask.routine, ask.to, ask.size, ask.now, ask.large });
	s = calloc(1, sizeof(*s));
	if (!s) {
		refuse(message_of(M_COMMAND_NO_MEMORY));
		return EXIT_OS;
	}
	status = make(s, &ask);
	paper_drop(&s->maker);
	history_done(&s->history);
	routine_free(s->routine);
	free(s);
	return status;
}
