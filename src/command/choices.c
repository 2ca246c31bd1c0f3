/*
 * choices.c - what was chosen: the settings file, and the command line over it
 */
#include "choices.h"

#include "options.h"

void choices_read(struct settings_file *f)
{
	struct faults faults = { 0 };

	settings_open(f, &faults);
	command_faults(&faults);
}

enum marking choices_marking(const struct settings *s)
{
	return s->mark_turns ? MARKING_TURN : MARKING_ROUND;
}

void choices_keep(struct settings_file *f, enum setting what)
{
	struct fault fault;

	if (!settings_keep(f, what, &fault))
		command_fault(&fault);
}

enum terminal_colours choices_colours(const struct settings *s)
{
	switch (s->colours) {
	case COLOURS_NONE:
		return TERMINAL_COLOURLESS;
	case COLOURS_8:
		return TERMINAL_8;
	case COLOURS_256:
		return TERMINAL_256;
	case COLOURS_AUTO:
		break;
	}
	return TERMINAL_AUTO;
}
