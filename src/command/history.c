/*
 * history.c - `evenhand history`: what was practised
 *
 *	journal ─▶ history ─▶ days ─┬▶ charts on a full screen
 *	       │		    ├▶ lines, where there is no terminal
 *	       │		    └▶ tables (CSV)
 *	       └▶ JSON
 *
 * Only looks: nothing is made, nothing locked.  Facts alone are shown: no
 * streaks, no scores, no aims.
 */
#include <limits.h>
#include <unistd.h>

#include "choices.h"
#include "evenhand/screen/lines.h"
#include "evenhand/world/journal.h"
#include "evenhand/world/paths.h"
#include "history_csv.h"
#include "history_days.h"
#include "history_screen.h"
#include "options.h"

/* What the command line asks. */
struct ask {
	const char *player;
	bool csv, sessions, json, lines, ascii;
	struct day_range range;
};

/* Reads the value of --from or --to, if there is one. */
static bool read_day(const char *option, const char *value, int *day)
{
	struct message m;

	if (!value || date_parse(value, day))
		return true;
	m = message_with(M_HISTORY_BAD_DAY, TEXT(option), TEXT(value));
	command_say(&m);
	return false;
}

static bool fits(const struct ask *a)
{
	struct message m;

	if (a->csv + a->sessions + a->json > 1)
		m = message_of(M_HISTORY_TWO_FORMS);
	else if (a->range.from > a->range.to)
		m = message_with(
		    M_HISTORY_BACKWARDS, DAY(a->range.from), DAY(a->range.to));
	else
		return true;
	command_say(&m);
	return false;
}

static bool ask_read(struct ask *a, int argc, char **argv, int *status)
{
	const char *from = NULL, *to = NULL;
	const struct option_wish wishes[] = {
		{ "from", M_HISTORY_OPTION_FROM, "DATE", NULL, &from },
		{ "to", M_HISTORY_OPTION_TO, "DATE", NULL, &to },
		{ "csv", M_HISTORY_OPTION_CSV, NULL, &a->csv, NULL },
		{ "sessions", M_HISTORY_OPTION_SESSIONS, NULL, &a->sessions,
		    NULL },
		{ "json", M_COMMAND_OPTION_JSON, NULL, &a->json, NULL },
		{ "lines", M_HISTORY_OPTION_LINES, NULL, &a->lines, NULL },
		{ "ascii", M_COMMAND_OPTION_ASCII, NULL, &a->ascii, NULL },
		OPTION_PLAYER(&a->player),
		OPTIONS_END,
	};
	const struct verb verb = { "history", "", M_COMMAND_HISTORY, 0, 0,
		wishes };

	if (!options_read(&verb, &argc, &argv, status))
		return false;
	*status = EXIT_USAGE;
	a->range = (struct day_range) { INT_MIN, INT_MAX };
	return read_day("--from", from, &a->range.from) &&
	    read_day("--to", to, &a->range.to) && fits(a);
}

static bool say_none(const struct ask *a)
{
	bool always = a->range.from == INT_MIN && a->range.to == INT_MAX;
	char bytes[LINE_COLUMNS + 2];
	struct text page = text_in(bytes, sizeof(bytes));
	struct message m = message_of(
	    always ? M_HISTORY_NONE : M_HISTORY_NONE_THEN);

	lines_say(&page, &m);
	return command_print(&page);
}

static int show_days(const struct ask *a, const struct days *d)
{
	struct settings_file chosen = { 0 };
	int status = EXIT_GOOD;
	bool good;

	if (a->csv)
		good = history_print_csv(d);
	else if (a->sessions)
		good = history_print_sessions(d, &a->range);
	else if (d->count == 0)
		good = say_none(a);
	else {
		choices_read(&chosen);
		if (!a->lines && !chosen.now.lines &&
		    history_show_charts(d, choices_colours(&chosen.now),
			a->ascii || chosen.now.ascii, &status))
			return status;
		good = history_print_days(d);
	}
	return good ? EXIT_GOOD : EXIT_IO;
}

static int show(const struct ask *a, const char *path)
{
	struct history h = { 0 };
	struct days d = { 0 };
	struct fault f;
	struct journal *j = journal_look(path, &f);
	int status = EXIT_DATA;

	/* Single turns are not looked at: none but the last need be loaded. */
	if (!j || !journal_history(j, &h, INT_MAX, NULL, &f)) {
		command_fault(&f);
	} else if (!days_make(&d, &h, &a->range)) {
		struct message m = message_of(M_HISTORY_NO_MEMORY);

		command_say(&m);
		status = EXIT_OS;
	} else {
		status = show_days(a, &d);
	}
	days_done(&d);
	history_done(&h);
	journal_close(j);
	return status;
}

static int show_json(const struct ask *a, const char *path)
{
	struct fault f;

	if (journal_dump_json(
		path, a->range.from, a->range.to, STDOUT_FILENO, &f))
		return EXIT_GOOD;
	command_fault(&f);
	return f.message.id == M_WORLD_JOURNAL_NOT_WRITTEN ? EXIT_IO
							   : EXIT_DATA;
}

int command_history(int argc, char **argv)
{
	struct ask a = { 0 };
	char path[PATH_BYTES_MAX];
	int status = EXIT_GOOD;

	if (!ask_read(&a, argc, argv, &status) ||
	    !command_journal(a.player, path, sizeof(path), &status))
		return status;
	return a.json ? show_json(&a, path) : show(&a, path);
}
