/*
 * options.c - options of the command line, told in our own words
 *
 * getopt_long finds them; it is kept quiet, and what it stumbled over is
 * looked up again in the verb's own table:
 *
 *	--markign turn     I do not know --markign. Did you mean --marking?
 *	--ma               --ma could be --marking or --map. Write more of it
 */
#include "options.h"

#include <getopt.h>
#include <string.h>

#include "evenhand/world/clock.h"

enum {
	OPTION_HELP = 1,
	OPTION_FIRST = 256,
	FLAG_BYTES = 80,
	NEAR = 2,
	PERCENT_MAX = 100
};

/* Letters of "--name" as it was written, without "=value". */
static void flag_written(const char *word, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	text_add_bytes(&t, word, strcspn(word, "="));
}

static void flag_of(const char *name, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	text_add(&t, "--");
	text_add(&t, name);
}

/* How the verb is written, for those who wrote it otherwise. */
static void usage_line(const struct verb *v, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	text_format(&t, "evenhand %s", v->name);
	if (v->wishes[0].name)
		text_add(&t, " [options]");
	if (v->operands[0])
		text_format(&t, " %s", v->operands);
}

static void say_unknown(const struct verb *v, const char *flag)
{
	const char *near = NULL;
	int best = NEAR + 1;
	char meant[FLAG_BYTES];
	struct message m = message_with(
	    M_COMMAND_UNKNOWN_OPTION, TEXT(flag), TEXT(v->name));

	for (const struct option_wish *w = v->wishes; w->name; w++) {
		int far = text_distance(
		    flag + strspn(flag, "-"), w->name, NEAR);

		if (far < best) {
			best = far;
			near = w->name;
		}
	}
	if (near) {
		flag_of(near, meant, sizeof meant);
		m = message_with(
		    M_COMMAND_UNKNOWN_OPTION_NEAR, TEXT(flag), TEXT(meant));
	}
	command_say(&m);
}

/* Options that have a letter of their own, too. */
static const struct {
	int letter;
	const char *name;
} letters[] = { { 'o', "output" } };

enum { LETTERS = sizeof letters / sizeof *letters };

/* The option that getopt found, or its letter's: OPTION_FIRST and on. */
static int option_of(const struct verb *v, int got)
{
	for (int i = 0; i < LETTERS; i++)
		for (int n = 0; got == letters[i].letter && v->wishes[n].name;
		     n++)
			if (strcmp(v->wishes[n].name, letters[i].name) == 0)
				return OPTION_FIRST + n;
	return got;
}

/* ":h" and the letters of a verb, each wants a value. */
static void letters_of(const struct verb *v, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	text_add(&t, ":h");
	for (int i = 0; i < LETTERS; i++)
		if (option_of(v, letters[i].letter) != letters[i].letter)
			text_format(&t, "%c:", letters[i].letter);
}

/* Says that a start of a name fits two options, if it does. */
static bool say_ambiguous(const struct verb *v, const char *flag)
{
	const char *first = NULL;
	size_t length = strlen(flag) - 2;
	char one[FLAG_BYTES], two[FLAG_BYTES];

	if (length == 0)
		return false;
	for (const struct option_wish *w = v->wishes; w->name; w++) {
		if (strncmp(w->name, flag + 2, length) != 0)
			continue;
		if (!first) {
			first = w->name;
			continue;
		}
		flag_of(first, one, sizeof one);
		flag_of(w->name, two, sizeof two);
		struct message m = message_with(M_COMMAND_OPTION_AMBIGUOUS,
		    TEXT(flag), TEXT(one), TEXT(two));
		command_say(&m);
		return true;
	}
	return false;
}

static bool say_twice(const struct option_wish *w)
{
	char flag[FLAG_BYTES];
	struct message m;

	flag_of(w->name, flag, sizeof flag);
	m = message_with(M_COMMAND_OPTION_TWICE, TEXT(flag));
	command_say(&m);
	return false;
}

static void say_slip(const struct verb *v, int got, const char *word)
{
	char flag[FLAG_BYTES];
	struct message m;

	if (got == ':') {
		const struct option_wish *w = v->wishes + option_of(v, optopt) -
		    OPTION_FIRST;

		flag_of(w->name, flag, sizeof flag);
		m = message_with(
		    M_COMMAND_OPTION_WANTS, TEXT(flag), TEXT(w->value_name));
		command_say(&m);
		return;
	}
	flag_written(word, flag, sizeof flag);
	if (optopt > OPTION_HELP && optopt < OPTION_FIRST) {
		/* One letter; word may be another one by now. */
		flag[0] = '-';
		flag[1] = (char)optopt;
		flag[2] = '\0';
		say_unknown(v, flag);
	} else if (optopt != 0) {
		m = message_with(M_COMMAND_OPTION_BARE, TEXT(flag));
		command_say(&m);
	} else if (!say_ambiguous(v, flag)) {
		say_unknown(v, flag);
	}
}

static void help_line(struct text *t, const char *name, const char *value_name,
    enum message_id help)
{
	char left[FLAG_BYTES];
	struct text l = text_in(left, sizeof left);

	text_format(&l, "--%s", name);
	if (value_name)
		text_format(&l, " %s", value_name);
	text_format(t, "  %-24s %s\n", left, message_sentence(help));
}

static bool print_help(const struct verb *v)
{
	char bytes[2048], usage[FLAG_BYTES];
	struct text t = text_in(bytes, sizeof bytes);

	usage_line(v, usage, sizeof usage);
	text_format(&t, "%s %s\n\n%s: %s\n\n%s\n",
	    message_sentence(M_COMMAND_USAGE), usage, v->name,
	    message_sentence(v->about), message_sentence(M_COMMAND_OPTIONS));
	for (const struct option_wish *w = v->wishes; w->name; w++)
		help_line(&t, w->name, w->value_name, w->help);
	help_line(&t, "help", NULL, M_COMMAND_OPTION_HELP);
	return command_print(&t);
}

/* The verb's table as getopt_long wants it, with --help. */
static void options_table(const struct verb *v, struct option *table)
{
	int n = 0;

	for (const struct option_wish *w = v->wishes; w->name; w++, n++)
		table[n] = (struct option) { w->name,
			w->value_name ? required_argument : no_argument, NULL,
			OPTION_FIRST + n };
	table[n++] = (struct option) { "help", no_argument, NULL, OPTION_HELP };
	table[n] = (struct option) { NULL, 0, NULL, 0 };
}

void options_too_few(const struct verb *v)
{
	char usage[FLAG_BYTES];
	struct message m;

	usage_line(v, usage, sizeof usage);
	m = message_with(M_COMMAND_TOO_FEW, TEXT(usage));
	command_say(&m);
}

static bool operands_fit(const struct verb *v, int count, char **operands)
{
	char usage[FLAG_BYTES];
	struct message m;

	if (count < v->least) {
		options_too_few(v);
		return false;
	}
	if (v->most < 0 || count <= v->most)
		return true;
	usage_line(v, usage, sizeof usage);
	m = message_with(
	    M_COMMAND_TOO_MANY, TEXT(operands[v->most]), TEXT(usage));
	command_say(&m);
	return false;
}

bool options_read(const struct verb *v, int *argc, char ***argv, int *status)
{
	struct option table[OPTIONS_MAX + 2];
	bool there[OPTIONS_MAX] = { false };
	char brief[sizeof ":h" + 2 * (size_t)LETTERS];
	int got;

	options_table(v, table);
	letters_of(v, brief, sizeof brief);
	opterr = 0;
	optind = 0; /* begins anew, with what it permuted before forgotten */
	*status = EXIT_USAGE;
	while ((got = getopt_long(*argc, *argv, brief, table, NULL)) != -1) {
		if (got == OPTION_HELP || got == 'h') {
			*status = print_help(v) ? EXIT_GOOD : EXIT_IO;
			return false;
		}
		got = option_of(v, got);
		if (got < OPTION_FIRST) {
			say_slip(v, got, (*argv)[optind - 1]);
			return false;
		}
		const struct option_wish *w = v->wishes + got - OPTION_FIRST;
		/* Of two values one would be lost, and nobody would know. */
		if (w->value && there[w - v->wishes])
			return say_twice(w);
		there[w - v->wishes] = true;
		if (w->given)
			*w->given = true;
		if (w->value)
			*w->value = optarg;
	}
	*argc -= optind;
	*argv += optind;
	return operands_fit(v, *argc, *argv);
}

bool options_now(const char *value, struct moment *now)
{
	if (!value) {
		*now = clock_now();
		return true;
	}
	if (clock_at(value, now))
		return true;
	struct message m = message_with(M_COMMAND_BAD_TIME, TEXT(value));
	command_say(&m);
	return false;
}

bool options_marking(const char *value, enum marking *marking)
{
	*marking = MARKING_ROUND;
	if (!value || strcmp(value, "round") == 0)
		return true;
	if (strcmp(value, "turn") == 0) {
		*marking = MARKING_TURN;
		return true;
	}
	struct message m = message_with(M_COMMAND_BAD_MARKING, TEXT(value));
	command_say(&m);
	return false;
}

bool options_loudness(const char *value, int *percent)
{
	size_t digits = value ? strspn(value, "0123456789") : 0;
	struct message m;
	int n = 0;

	if (!value)
		return true;
	for (size_t i = 0; i < digits && n <= PERCENT_MAX; i++)
		n = n * 10 + (value[i] - '0');
	if (digits > 0 && n <= PERCENT_MAX &&
	    value[digits + (value[digits] == '%')] == '\0') {
		*percent = n;
		return true;
	}
	m = message_with(M_COMMAND_BAD_LOUDNESS, TEXT(value));
	command_say(&m);
	return false;
}
