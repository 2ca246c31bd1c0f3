/*
 * command.c - the verbs of evenhand, and what stands before one
 *
 *	evenhand check wren.yaml     a verb and its own arguments
 *	evenhand wren.yaml           no verb: practise
 *	evenhand chekc wren.yaml     neither: the nearest verb is named
 */
#include "evenhand/command/command.h"

#include <string.h>
#include <unistd.h>

#include "evenhand/screen/lines.h"
#include "options.h"

enum { HELP_BYTES = 4096, NEAR = 2 };

/* All verbs, ended by a NULL name. */
static const struct command commands[] = {
	{ "practise", M_COMMAND_PRACTISE, command_practise },
	{ "today", M_COMMAND_TODAY, command_today },
	{ "check", M_COMMAND_CHECK, command_check },
	{ "new", M_COMMAND_NEW, command_new },
	{ "history", M_COMMAND_HISTORY, command_history },
	{ "measure", M_MEASURE_ABOUT, command_measure },
	{ "print", M_PAPER_ABOUT, command_sheet },
	{ "track", M_TRACK_ABOUT, command_track },
	{ "give", M_GIVE_ABOUT, command_give },
	{ "gather", M_GATHER_ABOUT, command_gather },
	{ "class", M_CLASS_ABOUT, command_class },
	{ "sound", M_SOUND_ABOUT, command_sound },
	{ NULL, M_NONE, NULL },
};

static const struct command *command_of(const char *name)
{
	for (const struct command *c = commands; c->name; c++)
		if (strcmp(c->name, name) == 0)
			return c;
	return NULL;
}

static void add_paragraph(struct text *t, enum message_id id)
{
	struct message m = message_of(id);

	lines_say(t, &m);
	text_add(t, "\n");
}

static int help(void)
{
	char bytes[HELP_BYTES];
	struct text t = text_in(bytes, sizeof bytes);

	add_paragraph(&t, M_COMMAND_ABOUT);
	text_format(&t,
	    "%s\n  evenhand [options] [ROUTINE]\n"
	    "  evenhand COMMAND [options] ...\n\n%s\n",
	    message_sentence(M_COMMAND_USAGE),
	    message_sentence(M_COMMAND_COMMANDS));
	for (const struct command *c = commands; c->name; c++)
		text_format(
		    &t, "  %-10s %s\n", c->name, message_sentence(c->summary));
	text_format(&t, "\n%s\n  %-10s %s\n  %-10s %s\n\n",
	    message_sentence(M_COMMAND_OPTIONS), "--help",
	    message_sentence(M_COMMAND_OPTION_HELP), "--version",
	    message_sentence(M_COMMAND_OPTION_VERSION));
	add_paragraph(&t, M_COMMAND_MORE);
	add_paragraph(&t, M_COMMAND_AID);
	add_paragraph(&t, M_COMMAND_GROWN_UP);
	return command_print_bytes(bytes, t.length - 1) ? EXIT_GOOD : EXIT_IO;
}

static int version(void)
{
	static const char line[] = "evenhand " EVENHAND_VERSION "\n";

	return command_print_bytes(line, sizeof line - 1) ? EXIT_GOOD : EXIT_IO;
}

/* Whether a word can only be meant as a name: no path, no file, not ours. */
static bool names_nothing(const char *word)
{
	if (word[strcspn(word, "/.")] || access(word, F_OK) == 0)
		return false;
	for (int i = 0; i < builtin_count(); i++)
		if (strcmp(word, builtin_name(i)) == 0)
			return false;
	return true;
}

bool command_unknown(const char *word)
{
	const char *near = NULL;
	int best = NEAR + 1;
	struct message m = message_with(M_COMMAND_UNKNOWN_VERB, TEXT(word));

	if (!names_nothing(word))
		return false;
	for (const struct command *c = commands; c->name; c++) {
		int far = text_distance(word, c->name, NEAR);

		if (far < best) {
			best = far;
			near = c->name;
		}
	}
	if (best == 0)
		m = message_with(M_COMMAND_VERB_FIRST, TEXT(word));
	else if (near)
		m = message_with(
		    M_COMMAND_UNKNOWN_VERB_NEAR, TEXT(word), TEXT(near));
	command_say(&m);
	return true;
}

/* Whether a word is a flag or an abbreviation of it, as long as "--h". */
static bool is_flag(const char *word, const char *flag)
{
	size_t length = strlen(word);

	return length > 2 && strncmp(word, flag, length) == 0;
}

int command_run(int argc, char **argv)
{
	const char *first = argc > 1 ? argv[1] : "--";
	const struct command *c = command_of(first);

	if (c)
		return c->run(argc - 1, argv + 1);
	if (is_flag(first, "--help") || strcmp(first, "-h") == 0 ||
	    strcmp(first, "help") == 0)
		return help();
	if (is_flag(first, "--version") || strcmp(first, "-V") == 0)
		return version();
	if (first[0] != '-' && command_unknown(first))
		return EXIT_USAGE;
	return command_practise(argc, argv);
}
