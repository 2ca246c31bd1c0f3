/*
 * measure.c - `evenhand measure`: what recordings show
 *
 *	evenhand measure kite.wav		       a page
 *	evenhand measure a.wav b.flac		       a row for each
 *	evenhand measure --lines a.wav b.flac	       sentences for each
 *	evenhand measure kite.wav --track kite.csv     every instant
 *	evenhand measure kite.wav --json	       for programs
 *
 * A recording that cannot be read is told, and the next one is measured.
 */
#include <stdlib.h>
#include <unistd.h>

#include "choices.h"
#include "evenhand/world/lines_out.h"
#include "evenhand/world/paper_maker.h"
#include "measure.h"
#include "options.h"

enum {
	COLUMNS = 80, /* where there is no terminal */
	COLUMNS_MIN = 40,
	COLUMNS_MAX = 160,
	TABLE_BYTES = 1024,
};

static bool refuse(struct message m)
{
	command_say(&m);
	return false;
}

/* Files of one recording. */
static bool fits(const struct measure_ask *a, int files)
{
	enum paper_format format;

	if (files > 1 && (a->track || a->plot))
		return refuse(message_with(
		    M_MEASURE_ONE_FILE, TEXT(a->track ? "--track" : "--plot")));
	if (a->plot && !paper_format_of(a->plot, &format))
		return refuse(
		    message_with(M_MEASURE_PLOT_SUFFIX, TEXT(a->plot)));
	return true;
}

/* Said before an hour is listened to; who writes holds it against a race. */
static bool plot_may_come(const struct measure_ask *a, int *status)
{
	struct fault f;

	if (!a->plot || a->force || access(a->plot, F_OK) != 0)
		return true;
	fault_set(&f, message_of(M_WORLD_FILE_THERE));
	fault_at(&f, a->plot, 0, 0);
	command_fault(&f);
	*status = command_status(&f);
	return false;
}

static bool ask_read(
    struct measure_ask *a, int *argc, char ***argv, int *status)
{
	const struct option_wish wishes[] = {
		{ "routine", M_MEASURE_OPTION_ROUTINE, "NAME", NULL,
		    &a->routine },
		{ "stage", M_MEASURE_OPTION_STAGE, "ID", NULL, &a->stage },
		{ "finger", M_MEASURE_OPTION_FINGER, "N", NULL, &a->finger },
		{ "notes", M_MEASURE_OPTION_NOTES, "LOW-HIGH", NULL,
		    &a->notes },
		{ "channel", M_MEASURE_OPTION_CHANNEL, "N", NULL, &a->channel },
		{ "track", M_MEASURE_OPTION_TRACK, "FILE", NULL, &a->track },
		{ "plot", M_MEASURE_OPTION_PLOT, "FILE", NULL, &a->plot },
		{ "lines", M_HISTORY_OPTION_LINES, NULL, &a->lines, NULL },
		{ "json", M_MEASURE_OPTION_JSON, NULL, &a->json, NULL },
		{ "force", M_COMMAND_OPTION_FORCE, NULL, &a->force, NULL },
		{ "ascii", M_COMMAND_OPTION_ASCII, NULL, &a->ascii, NULL },
		OPTIONS_END,
	};
	const struct verb verb = { "measure", "FILE...", M_MEASURE_ABOUT, 1, -1,
		wishes };

	if (!options_read(&verb, argc, argv, status))
		return false;
	*status = EXIT_USAGE;
	return fits(a, *argc) && plot_may_come(a, status) &&
	    measure_known(a, status);
}

static bool say_written(struct message m)
{
	command_say(&m);
	return true;
}

/* As much of the terminal's width as a picture needs. */
static int columns(void)
{
	int own = isatty(STDOUT_FILENO) ? lines_out_columns(STDOUT_FILENO) : 0;

	if (own <= 0)
		return COLUMNS;
	return own < COLUMNS_MIN ? COLUMNS_MIN
	    : own > COLUMNS_MAX	 ? COLUMNS_MAX
				 : own;
}

static bool show(const struct measured *m, bool alone, int *status)
{
	char bytes[TABLE_BYTES];
	struct text row = text_in(bytes, sizeof(bytes));
	bool good;

	if (!m->ask->json && (alone || m->ask->lines))
		return measure_page(m, columns(), status);
	if (m->ask->json)
		good = measure_json_print(m);
	else {
		measure_table_row(m, columns(), &row);
		good = command_print(&row);
	}
	if (!good)
		*status = EXIT_IO;
	return good;
}

/* The track is there by now, the plot is made when all else went well. */
static bool write_files(const struct measured *m, bool shown, int *status)
{
	const struct measure_ask *a = m->ask;

	if (a->track)
		say_written(message_with(M_MEASURE_TRACK_WRITTEN,
		    TEXT(a->track), WHOLE(m->track.rows)));
	if (!shown)
		return false;
	if (a->plot && !measure_plot(m, status))
		return false;
	return !a->plot ||
	    say_written(message_with(M_MEASURE_PLOT_WRITTEN, TEXT(a->plot)));
}

/* One of them; *first until one was measured. */
static int one(
    const struct measure_ask *a, const char *path, bool alone, bool *first)
{
	struct measured *m = calloc(1, sizeof(*m));
	int status = EXIT_GOOD;
	bool shown;

	if (!m) {
		refuse(message_of(M_COMMAND_NO_MEMORY));
		return EXIT_OS;
	}
	m->path = path;
	m->ask = a;
	if (measure_file(m, &status)) {
		if (a->json && !alone)
			command_print_bytes(*first ? "[\n" : ",\n", 2);
		else if (a->lines && !*first)
			command_print_bytes("\n", 1);
		*first = false;
		shown = show(m, alone, &status);
		write_files(m, shown, &status);
	}
	measured_free(m);
	return status;
}

static bool print_head(void)
{
	char bytes[TABLE_BYTES];
	struct text head = text_in(bytes, sizeof(bytes));

	measure_table_head(columns(), &head);
	return command_print(&head);
}

/* For a person, as the other pages are. */
static void look_as_chosen(struct measure_ask *a)
{
	struct settings_file chosen = { 0 };

	if (a->json || !isatty(STDOUT_FILENO))
		return;
	choices_read(&chosen);
	a->lines |= chosen.now.lines;
	a->ascii |= chosen.now.ascii;
}

int command_measure(int argc, char **argv)
{
	struct measure_ask a = { 0 };
	int status, worst = EXIT_GOOD;
	bool first = true, alone;

	if (!ask_read(&a, &argc, &argv, &status))
		return status;
	look_as_chosen(&a);
	alone = argc == 1;
	if (!alone && !a.json && !a.lines && !print_head())
		return EXIT_IO;
	for (int i = 0; i < argc && worst != EXIT_IO; i++) {
		status = one(&a, argv[i], alone, &first);
		worst = worst == EXIT_GOOD ? status : worst;
	}
	if (a.json && (!alone || !first))
		command_print_bytes(alone ? "\n"
			: first		  ? "[]\n"
					  : "\n]\n",
		    alone ? 1 : 3);
	return worst;
}
