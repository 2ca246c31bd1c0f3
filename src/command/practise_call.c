/*
 * practise_call.c - what the command line of a practice says
 */
#include "practise_call.h"

#include <string.h>

#include "options.h"

static bool clock_good(const char *clock)
{
	struct message m;

	if (!clock || strcmp(clock, "fast") == 0)
		return true;
	m = message_with(M_COMMAND_BAD_CLOCK, TEXT(clock));
	command_say(&m);
	return false;
}

/* Both at once cannot be meant. */
static bool listening_good(const struct call *c)
{
	struct message m = message_of(M_COMMAND_LISTEN_BOTH);

	if (!c->no_listen || (!c->listen && !c->microphone))
		return true;
	command_say(&m);
	return false;
}

bool call_read(struct call *c, int argc, char **argv, int *status)
{
	const struct option_wish wishes[] = {
		OPTION_MARKING(&c->marking),
		OPTION_PLAYER(&c->player),
		{ "stage", M_COMMAND_OPTION_STAGE, "ID", NULL, &c->stage },
		{ "silent", M_COMMAND_OPTION_SILENT, NULL, &c->silent, NULL },
		{ "card", M_COMMAND_OPTION_CARD, "NAME", NULL, &c->card },
		{ "through", M_COMMAND_OPTION_THROUGH, "NAME", NULL,
		    &c->through },
		{ "loudness", M_COMMAND_OPTION_LOUDNESS, "PERCENT", NULL,
		    &c->loudness },
		{ "listen", M_COMMAND_OPTION_LISTEN, NULL, &c->listen, NULL },
		{ "no-listen", M_COMMAND_OPTION_NO_LISTEN, NULL, &c->no_listen,
		    NULL },
		{ "microphone", M_COMMAND_OPTION_MICROPHONE, "NAME", NULL,
		    &c->microphone },
		{ "lines", M_COMMAND_OPTION_LINES, NULL, &c->lines, NULL },
		{ "ascii", M_COMMAND_OPTION_ASCII, NULL, &c->ascii, NULL },
		{ "mirrored", M_COMMAND_OPTION_MIRRORED, NULL, &c->mirrored,
		    NULL },
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
	    listening_good(c) && options_loudness(c->loudness, &c->percent) &&
	    options_now(c->at, &c->now);
}
