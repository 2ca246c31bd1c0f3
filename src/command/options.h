/*
 * options.h - what the verbs share: options, print-outs, faults
 *
 * A verb states its options as a table; options_read takes them from the
 * command line in the GNU way (any order, "--", unique abbreviations, --help)
 * and says what is wrong in our own words:
 *
 *	static int json_run(int argc, char **argv)
 *	{
 *		const char *player = NULL;
 *		bool json = false;
 *		const struct option_wish wishes[] = {
 *			{ "json", M_COMMAND_OPTION_JSON, .given = &json },
 *			OPTION_PLAYER(&player),
 *			OPTIONS_END,
 *		};
 *		const struct verb verb = { "history", "", M_COMMAND_HISTORY,
 *			0, 0, wishes };
 *		int status;
 *
 *		if (!options_read(&verb, &argc, &argv, &status))
 *			return status;
 *		... argv[0..argc-1] are the operands ...
 *	}
 *
 * Only the main thread.
 */
#ifndef EVENHAND_COMMAND_OPTIONS_H
#define EVENHAND_COMMAND_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/date.h"
#include "evenhand/base/message.h"
#include "evenhand/base/text.h"
#include "evenhand/coach/plan.h"
#include "evenhand/command/command.h"
#include "evenhand/routine/routine.h"
#include "evenhand/world/load.h"

enum { OPTIONS_MAX = 16 };

/* One option of a verb. */
struct option_wish {
	const char *name;	/* without its dashes; NULL ends the table */
	enum message_id help;	/* its line of --help */
	const char *value_name; /* "NAME" when it takes a value, else NULL */
	bool *given;		/* set to true when it is there; may be NULL */
	const char **value;	/* where the value goes, with a value_name */
};

#define OPTION_PLAYER(where) \
	{ \
		"player", M_COMMAND_OPTION_PLAYER, "NAME", NULL, (where) \
	}
#define OPTION_AT(where) \
	{ \
		"at", M_COMMAND_OPTION_AT, "TIME", NULL, (where) \
	}
#define OPTION_MARKING(where) \
	{ \
		"marking", M_COMMAND_OPTION_MARKING, "turn|round", NULL, \
		    (where) \
	}
#define OPTIONS_END \
	{ \
		NULL, M_NONE, NULL, NULL, NULL \
	}

/* A verb as --help shows it and its command line is checked. */
struct verb {
	const char *name;
	const char *operands;  /* "[ROUTINE]", "ROUTINE...", "" */
	enum message_id about; /* what it does, one line */
	int least, most;       /* operands it takes; most -1: any number */
	const struct option_wish *wishes;
};

/*
 * Takes the options out; *argc and *argv become the operands.  False when
 * there is nothing more to do: --help was printed or a slip was said, and
 * *status is the exit status.  argv[0] is the verb.
 */
bool options_read(const struct verb *v, int *argc, char ***argv, int *status);

/* Says that a verb wants more operands than were given, and how it is called. */
void options_too_few(const struct verb *v);

/* The value of --at, or the clock's now for NULL.  False: said, EXIT_USAGE. */
bool options_now(const char *value, struct moment *now);

/*
 * The value of --loudness, a whole number of percent, with or without its
 * sign; NULL changes nothing.  False: said, EXIT_USAGE.
 */
bool options_loudness(const char *value, int *percent);

/* The value of --marking, "round" for NULL.  False: said, EXIT_USAGE. */
bool options_marking(const char *value, enum marking *marking);

/*
 * The routine at a path or of a name (NULL: the built-in one), every fault
 * printed when it is not good: NULL then.  *status is the exit status so far.
 */
struct routine *command_load(
    const char *path, struct load_paths *paths, int *status);

/*
 * The history of a player (NULL: the only one) for a routine, up to now.  When
 * it cannot be read, that is said, *status is set, and it stays empty.  False:
 * a name was asked for that no player can have, or there is no memory for it.
 */
bool command_look_back(struct history *h, const char *player, struct moment now,
    const struct routine *r, int *status);

/*
 * Writes text to standard output at once.  False when it cannot be written;
 * that is said, unless the reader of a pipe has gone.  The verb's exit status
 * is then EXIT_IO.
 */
bool command_print(const struct text *t);
bool command_print_bytes(const char *bytes, size_t length);

/* Says why it could not be, as errno has it; false. */
bool command_unprinted(void);

/* Says a sentence that has no place on standard error: "evenhand: ...". */
void command_say(const struct message *m);

/*
 * Whether a word is neither a path, a file nor a routine that ships: said
 * then, with the nearest verb.  The exit status is EXIT_USAGE.
 */
bool command_unknown(const char *word);

/* The path of a player's journal.  False: said, and the status is set. */
bool command_journal(const char *player, char *path, size_t size, int *status);

/* The exit status that goes with a fault of the world room. */
int command_status(const struct fault *f);

#endif
