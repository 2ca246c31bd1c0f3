/*
 * practise.c - today's practice: from the command line to the end page
 *
 *	routine ─┐
 *	journal ─┼─▶ wish ─▶ session ⇄ keys, frames, lines
 *	clock   ─┘
 */
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "choices.h"
#include "evenhand/world/paths.h"
#include "options.h"
#include "practise.h"

enum { RATE = 48000 };

/* What the command line says. */
struct call {
	const char *routine, *player, *at, *marking, *clock, *script;
	bool lines, ascii, mirrored;
	struct moment now;
	enum marking way;
};

static bool clock_good(const char *clock)
{
	struct message m;

	if (!clock || strcmp(clock, "fast") == 0)
		return true;
	m = message_with(M_COMMAND_BAD_CLOCK, TEXT(clock));
	command_say(&m);
	return false;
}

static bool call_read(struct call *c, int argc, char **argv, int *status)
{
	const struct option_wish wishes[] = {
		{ "lines", M_COMMAND_OPTION_LINES, NULL, &c->lines, NULL },
		{ "ascii", M_COMMAND_OPTION_ASCII, NULL, &c->ascii, NULL },
		{ "mirrored", M_COMMAND_OPTION_MIRRORED, NULL, &c->mirrored,
		    NULL },
		OPTION_MARKING(&c->marking),
		OPTION_PLAYER(&c->player),
		OPTION_AT(&c->at),
		{ "clock", M_COMMAND_OPTION_CLOCK, "fast", NULL, &c->clock },
		{ "script", M_COMMAND_OPTION_SCRIPT, "FILE", NULL, &c->script },
		OPTIONS_END,
	};
	const struct verb verb = { "practise", "[ROUTINE]", M_COMMAND_PRACTISE,
		0, 1, wishes };

	if (!options_read(&verb, &argc, &argv, status))
		return false;
	*status = EXIT_USAGE;
	if (argc > 0 && command_unknown(argv[0]))
		return false;
	c->routine = argc > 0 ? argv[0] : NULL;
	return options_marking(c->marking, &c->way) && clock_good(c->clock) &&
	    options_now(c->at, &c->now);
}

/* A script, if one is wished.  False: said. */
static bool script_read(struct practice *p, const char *path, int *status)
{
	struct faults *faults;

	if (!path)
		return true;
	faults = calloc(1, sizeof *faults);
	*status = EXIT_OS;
	if (!faults)
		return false;
	p->script = script_open(path, faults);
	if (!p->script) {
		command_faults(faults);
		*status = faults->at[0].line > 0 ||
			faults->at[0].message.id == M_SCRIPT_NOT_TEXT
		    ? EXIT_DATA
		    : command_status(&faults->at[0]);
	}
	free(faults);
	return p->script != NULL;
}

/* Opens the journal and loads what is in it.  False: said. */
static bool journal_read(struct practice *p, const struct call *c, int *status)
{
	char path[PATH_BYTES_MAX];
	struct fault f;
	struct message m;
	bool sound = true;

	if (!path_journal(c->player, path, sizeof path, &f)) {
		command_fault(&f);
		*status = command_status(&f);
		return false;
	}
	p->journal = journal_open(path, &f);
	if (!p->journal) {
		command_fault(&f);
		*status = command_status(&f);
		return false;
	}
	for (; journal_trouble(p->journal, &m); sound = false)
		command_say(&m);
	if (!journal_history(
		p->journal, &p->history, moment_practice_day(c->now), &f)) {
		command_fault(&f);
		history_done(&p->history);
		memset(&p->history, 0, sizeof p->history);
		sound = false;
	}
	/* A name that was mistyped would begin a journal unseen. */
	if (c->player && sound && p->history.sittings == 0)
		practice_say(
		    p, message_with(M_COMMAND_NEW_PLAYER, TEXT(c->player)));
	return true;
}

/* Keys from the script or from the input; a full screen takes both. */
static struct keys *keys_of(const struct practice *p, bool lines)
{
	if (!p->script)
		return keys_open(STDIN_FILENO);
	return lines ? keys_open(-1) : keys_open_deaf(STDIN_FILENO);
}

/* Whether the bow is in the left hand: as chosen here, else as taught. */
static bool mirrored(const struct practice *p)
{
	if (settings_given(&p->chosen.now, SETTING_MIRRORED))
		return p->chosen.now.mirrored;
	return p->routine->left_handed;
}

/* The device, the keys and the screen.  False: said. */
static bool instruments_open(struct practice *p, const struct call *c)
{
	const struct settings *chosen = &p->chosen.now;
	bool lines = c->lines || chosen->lines || !terminal_able();
	struct fault f;

	p->device = device_null_open(RATE, !c->clock, &f);
	if (p->device)
		fault_set(&f, message_of(M_COMMAND_NO_MEMORY));
	if (p->device)
		p->keys = keys_of(p, lines);
	if (!p->keys) {
		command_fault(&f);
		return false;
	}
	if (!lines)
		screen_open(p,
		    &(struct screen_wish) { .colours = choices_colours(chosen),
			.ascii = c->ascii || chosen->ascii,
			.mirror = c->mirrored || mirrored(p) });
	return true;
}

static void practice_free(struct practice *p)
{
	struct message m;

	if (!p)
		return;
	screen_close(p);
	if (p->journal) {
		journal_flush(p->journal);
		while (journal_trouble(p->journal, &m))
			command_say(&m);
	}
	keys_close(p->keys);
	device_close(p->device);
	journal_close(p->journal);
	script_close(p->script);
	history_done(&p->history);
	routine_free(p->routine);
	free(p);
}

/* How it ended, for the shell that started it. */
static int ending(const struct practice *p)
{
	int number = keys_signal();

	if (p->mute)
		return EXIT_IO;
	/* Ctrl-C is a student's way to leave; others were stopped. */
	if (number == 0 || number == SIGINT)
		return EXIT_GOOD;
	return 128 + number;
}

/* When marks are given; what a player says once counts from then on. */
static enum marking way_of(struct practice *p, const struct call *c)
{
	if (!c->marking)
		return choices_marking(&p->chosen.now);
	/* A script is a rehearsal and chooses nothing for others. */
	if (!c->script) {
		p->chosen.now.mark_turns = c->way == MARKING_TURN;
		choices_keep(&p->chosen, SETTING_MARKING);
	}
	return c->way;
}

static int practise(struct practice *p, const struct call *c)
{
	int status = EXIT_OS;
	struct plan_wish wish = { .history = &p->history, .now = c->now };

	choices_read(&p->chosen);
	wish.marking = way_of(p, c);
	if (!script_read(p, c->script, &status))
		return status;
	p->routine = command_load(c->routine, &p->paths, &status);
	if (!p->routine || !journal_read(p, c, &status))
		return status;
	if (!instruments_open(p, c))
		return EXIT_OS;
	wish.routine = p->routine;
	session_begin(&p->session, &wish, RATE, &p->effects);
	practice_run(p);
	return ending(p);
}

int command_practise(int argc, char **argv)
{
	struct call c = { 0 };
	struct practice *p;
	int status;

	if (!call_read(&c, argc, argv, &status))
		return status;
	p = calloc(1, sizeof *p);
	if (!p) {
		struct message m = message_of(M_COMMAND_NO_MEMORY);

		command_say(&m);
		return EXIT_OS;
	}
	status = practise(p, &c);
	practice_free(p);
	return status;
}
