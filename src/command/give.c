/*
 * give.c - `evenhand give`: the practice as a file for the teacher
 *
 *	journal ─▶ record ─▶ FILE, for its owner alone
 *
 * The initials come from --initials, else from the homework that was practised
 * last, else from the player's name.  The text of the homework goes in as it is,
 * with the name in it.
 */
#include <string.h>

#include "evenhand/screen/lines.h"
#include "evenhand/world/paths.h"
#include "evenhand/world/record_file.h"
#include "options.h"

enum { PAGE_BYTES = 4096 };

/* What the command line asks. */
struct ask {
	const char *player, *output, *since_value, *initials, *at;
	bool force;
	int since;
	struct moment now;
};

static bool say(struct message m)
{
	command_say(&m);
	return false;
}

static bool fits(const struct ask *a)
{
	char clean[RECORD_INITIALS_MAX];

	if (a->output == NULL)
		return say(message_of(M_GIVE_NO_FILE));
	if (a->initials == NULL)
		return true;
	text_clean(clean, sizeof(clean), a->initials);
	return strcmp(clean, a->initials) == 0 ||
	    say(message_with(M_GIVE_BAD_INITIALS, TEXT(a->initials),
		WHOLE(RECORD_INITIALS_MAX - 1)));
}

static bool ask_read(struct ask *a, int argc, char **argv, int *status)
{
	const struct option_wish wishes[] = {
		{ "output", M_GIVE_OPTION_OUTPUT, "FILE", NULL, &a->output },
		{ "since", M_GIVE_OPTION_SINCE, "DATE", NULL, &a->since_value },
		{ "initials", M_GIVE_OPTION_INITIALS, "W.", NULL,
		    &a->initials },
		{ "force", M_COMMAND_OPTION_FORCE, NULL, &a->force, NULL },
		OPTION_PLAYER(&a->player),
		OPTION_AT(&a->at),
		OPTIONS_END,
	};
	const struct verb verb = { "give", "-o FILE", M_GIVE_HELP, 0, 0,
		wishes };

	if (!options_read(&verb, &argc, &argv, status))
		return false;
	*status = EXIT_USAGE;
	a->since = -1;
	if (a->since_value && !date_parse(a->since_value, &a->since))
		return say(message_with(
		    M_HISTORY_BAD_DAY, TEXT("--since"), TEXT(a->since_value)));
	return options_now(a->at, &a->now) && fits(a);
}

/* "W. P." of "Wren Penhallow", of "wren penhallow" and of "W. P." */
static void add_initials(struct text *t, const char *name, size_t length)
{
	size_t at = 0;

	while (at < length) {
		size_t word = strcspn(name + at, " \t-_.");

		if (word > 0 && at < length && name[at] != '"' &&
		    name[at] != '\'') {
			text_add(t, t->length > 0 ? " " : "");
			text_add_capital(t, name + at);
			text_add(t, ".");
		}
		at += word + (word == 0);
	}
}

/* The initials of the one a routine's homework is for; none: nothing. */
static void initials_of_homework(struct text *t, const char *routine)
{
	static const char key[] = "homework_for:";
	const char *line = routine;

	while (line != NULL && strncmp(line, key, strlen(key)) != 0) {
		line = strchr(line, '\n');
		line += line != NULL;
	}
	if (line == NULL)
		return;
	line += strlen(key);
	line += strspn(line, " \t\"'");
	add_initials(t, line, strcspn(line, "\"'#\r\n"));
}

static void set_initials(const struct ask *a, struct record *r)
{
	const struct record_sitting *s = r->sitting;
	struct text t = text_in(r->initials, sizeof(r->initials));

	if (a->initials) {
		text_add(&t, a->initials);
		return;
	}
	while (s != NULL && s->next != NULL)
		s = s->next;
	if (s != NULL)
		initials_of_homework(&t, s->routine->text);
	if (t.length == 0 && a->player)
		add_initials(&t, a->player, strlen(a->player));
}

/* The first and last practice day that is in it. */
static void days_of(const struct record *r, int *first, int *last)
{
	*first = *last = r->sitting ? r->sitting->day : r->note->day;
	for (const struct record_sitting *s = r->sitting; s; s = s->next) {
		*first = s->day < *first ? s->day : *first;
		*last = s->day > *last ? s->day : *last;
	}
}

static bool say_given(
    const struct ask *a, const struct record *r, const struct record_left *left)
{
	char bytes[PAGE_BYTES];
	struct text page = text_in(bytes, sizeof(bytes));
	struct message m;
	int first, last;

	days_of(r, &first, &last);
	m = message_with(M_GIVE_WRITTEN, TEXT(a->output), WHOLE(r->sittings),
	    DATE(first), DATE(last), WHOLE(r->notes));
	lines_say(&page, &m);
	if (left->sittings + left->notes > 0) {
		m = message_with(
		    M_GIVE_LEFT, WHOLE(left->sittings), WHOLE(left->notes));
		lines_say(&page, &m);
	}
	m = message_of(*r->initials ? M_GIVE_READ : M_GIVE_READ_NAMELESS);
	lines_say(&page, &m);
	return command_print(&page);
}

static bool any(const struct ask *a, const struct record *r)
{
	if (r->sittings + r->notes > 0)
		return true;
	return say(a->since < 0
		? message_of(M_GIVE_NOTHING)
		: message_with(M_GIVE_NOTHING_SINCE, DAY(a->since)));
}

static int give(const struct ask *a, const char *path)
{
	struct record r;
	struct record_left left;
	struct fault f;
	int status = EXIT_DATA;

	if (!record_take(path, a->since, &r, &left, &f)) {
		command_fault(&f);
	} else if (!any(a, &r)) {
		status = EXIT_NO_INPUT;
	} else {
		r.given = a->now;
		set_initials(a, &r);
		if (record_save(a->output, &r, a->force, &f)) {
			status = say_given(a, &r, &left) ? EXIT_GOOD : EXIT_IO;
		} else {
			command_fault(&f);
			status = command_status(&f);
			/* A folder that is not there is no input here. */
			if (status == EXIT_NO_INPUT)
				status = EXIT_CANNOT_CREATE;
		}
	}
	record_done(&r);
	return status;
}

int command_give(int argc, char **argv)
{
	struct ask a = { 0 };
	char path[PATH_BYTES_MAX];
	int status = EXIT_GOOD;

	if (!ask_read(&a, argc, argv, &status) ||
	    !command_journal(a.player, path, sizeof(path), &status))
		return status;
	return give(&a, path);
}
