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
#include "evenhand/world/beside.h"
#include "evenhand/world/paths.h"
#include "options.h"
#include "practise.h"
#include "practise_call.h"
#include "practise_stage.h"

enum { RATE = 48000 };

/* A script, if one is wished.  False: said. */
static bool script_read(struct practice *p, const char *path, int *status)
{
	struct faults *faults;

	if (!path)
		return true;
	faults = calloc(1, sizeof *faults);
	*status = EXIT_OS;
	if (!faults) {
		struct message m = message_of(M_COMMAND_NO_MEMORY);

		command_say(&m);
		return false;
	}
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

	if (!command_journal(c->player, path, sizeof path, status))
		return false;
	p->journal = journal_open(path, &f);
	if (!p->journal) {
		command_fault(&f);
		*status = command_status(&f);
		return false;
	}
	for (; journal_trouble(p->journal, &m); sound = false)
		practice_trouble(p, &m);
	if (!journal_history(p->journal, &p->history,
		moment_practice_day(c->now), p->routine, &f)) {
		command_fault(&f);
		history_done(&p->history);
		memset(&p->history, 0, sizeof p->history);
		sound = false;
		/* A plan as for a beginner would ask too much, or too little. */
		if (journal_lacked(&f)) {
			*status = command_status(&f);
			return false;
		}
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

/* Without a process for the sound it is practised by sight, and said. */
static void keeper_open(struct practice *p, const struct call *c)
{
	char program[PATH_BYTES_MAX];
	struct fault f;

	if (c->silent || !p->chosen.now.sound || (c->clock && !c->card))
		return;
	/* Where there is none, the device says so. */
	beside_find(SOUND_PROGRAM, program, sizeof program);
	p->keeper = sound_keeper_open(program, &f);
	if (!p->keeper)
		command_fault(&f);
}

static struct device *device_of(
    const struct practice *p, bool paced, struct fault *f)
{
	struct sound_wish w;

	if (!p->keeper)
		return device_null_open(RATE, paced, f);
	choices_card(&p->chosen.now, &w);
	return device_sound_open(p->keeper, &w, RATE, paced, f);
}

/* The device, the keys and the screen.  False: said. */
static bool instruments_open(struct practice *p, const struct call *c)
{
	const struct settings *chosen = &p->chosen.now;
	bool lines = c->lines || chosen->lines || !terminal_able();
	struct fault f;

	p->device = device_of(p, !c->clock, &f);
	if (p->device)
		fault_set(&f, message_of(M_COMMAND_NO_MEMORY));
	if (p->device)
		p->keys = keys_of(p, lines);
	if (p->device)
		listen_open(p);
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
	lines_out_close(p->out);
	lines_out_close(p->err);
	if (p->journal) {
		journal_flush(p->journal);
		while (journal_trouble(p->journal, &m))
			command_say(&m);
	}
	keys_close(p->keys);
	listen_close(p);
	device_close(p->device);
	sound_keeper_close(p->keeper);
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

/* Whether somebody who has never practised here sits before it. */
static bool is_first(const struct practice *p, const struct call *c)
{
	return !c->script && !c->clock && isatty(STDIN_FILENO) &&
	    first_due(&p->history, p->chosen.now.first_seen);
}

static int practise(struct practice *p, const struct call *c)
{
	int status = EXIT_OS;
	bool listened; /* the last time */
	struct plan_wish wish = { .history = &p->history, .now = c->now };

	choices_read(&p->chosen);
	listened = p->chosen.now.listen;
	choices_take(&p->chosen, c);
	p->listen.first = p->chosen.now.listen && !listened;
	wish.marking = choices_marking(&p->chosen.now);
	if (!script_read(p, c->script, &status))
		return status;
	p->routine = command_load(c->routine, &p->paths, &status);
	if (!p->routine)
		return status;
	/* Where no time passes whoever reads may take all he needs. */
	if (!c->clock) {
		p->out = lines_out_open(STDOUT_FILENO);
		p->err = lines_out_open(STDERR_FILENO);
	}
	/* Its process is made before the journal has a thread and a lock. */
	keeper_open(p, c);
	if (!journal_read(p, c, &status) ||
	    !practice_stage(p, c, &wish, &status))
		return status;
	if (!instruments_open(p, c))
		return EXIT_OS;
	wish.routine = p->routine;
	p->taught = is_first(p, c);
	first_begin(
	    &p->first, &p->session, &wish, RATE, p->taught, &p->effects);
	practice_run(p);
	screen_close(p);
	if (p->loudness_changed)
		practice_keep(p, SETTING_LOUDNESS);
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
