/*
 * history.c - `evenhand history`: what was practised, day by day
 *
 *	2026-03-02: 4:52 in 1 session.
 *	Stages: air, wide (recap), thirds (recap), tone.
 *	Bows: finger 1: 10, finger 2: 10, finger 3: 10, finger 4: 10.
 *	First go of tone, 6 pulses: finger 1 clean, finger 2 shaky, ...
 *
 * Only looks: nothing is made, nothing locked.  With --json everything that
 * was kept is written out instead.
 */
#include <limits.h>
#include <unistd.h>

#include "evenhand/screen/lines.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/journal.h"
#include "evenhand/world/paths.h"
#include "history_days.h"
#include "options.h"

enum { PAGE_BYTES = 8192 };

/* The first day after this one on which anything is kept, or INT_MAX. */
static int next_day(const struct history *h, int after)
{
	int next = INT_MAX;

	for (int i = 0; i < h->sittings; i++)
		if (h->sitting[i].day > after && h->sitting[i].day < next)
			next = h->sitting[i].day;
	for (int i = 0; i < h->notes; i++)
		if (h->note[i].kind != NOTE_LATER && h->note[i].day > after &&
		    h->note[i].day < next)
			next = h->note[i].day;
	return next;
}

static bool print_days(const struct history *h)
{
	char bytes[PAGE_BYTES];
	struct message none = message_of(M_HISTORY_NONE);
	int day = next_day(h, INT_MIN);

	if (day == INT_MAX) {
		struct text page = text_in(bytes, sizeof(bytes));

		lines_say(&page, &none);
		return command_print(&page);
	}
	for (; day != INT_MAX; day = next_day(h, day)) {
		struct text page = text_in(bytes, sizeof(bytes));

		history_add_day(&page, h, day);
		if (!command_print(&page))
			return false;
	}
	return true;
}

static int show_days(const char *path)
{
	struct history h = { 0 };
	struct fault f;
	struct journal *j = journal_look(path, &f);
	int status = EXIT_GOOD;

	if (j == NULL ||
	    !journal_history(
		j, &h, moment_practice_day(clock_now()), NULL, &f)) {
		command_fault(&f);
		status = EXIT_DATA;
	} else if (!print_days(&h)) {
		status = EXIT_IO;
	}
	history_done(&h);
	journal_close(j);
	return status;
}

static int show_json(const char *path)
{
	struct fault f;

	if (journal_dump_json(path, STDOUT_FILENO, &f))
		return EXIT_GOOD;
	command_fault(&f);
	return f.message.id == M_WORLD_JOURNAL_NOT_WRITTEN ? EXIT_IO
							   : EXIT_DATA;
}

int command_history(int argc, char **argv)
{
	const char *player = NULL;
	char path[PATH_BYTES_MAX];
	bool json = false;
	int status = EXIT_GOOD;
	struct fault f;
	const struct option_wish wishes[] = {
		{ "json", M_COMMAND_OPTION_JSON, NULL, &json, NULL },
		OPTION_PLAYER(&player),
		OPTIONS_END,
	};
	const struct verb verb = { "history", "", M_COMMAND_HISTORY, 0, 0,
		wishes };

	if (!options_read(&verb, &argc, &argv, &status))
		return status;
	if (!path_journal(player, path, sizeof(path), &f)) {
		command_fault(&f);
		return command_status(&f);
	}
	return json ? show_json(path) : show_days(path);
}
