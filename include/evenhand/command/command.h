/*
 * command.h - the verbs of evenhand, one file each
 *
 * A verb gets the arguments behind its name and returns an exit status of
 * sysexits.  Only the main thread.
 */
#ifndef EVENHAND_COMMAND_COMMAND_H
#define EVENHAND_COMMAND_COMMAND_H

#include <stdbool.h>

#include "evenhand/base/fault.h"

/* Exit statuses (sysexits.h). */
enum {
	EXIT_GOOD = 0,
	EXIT_USAGE = 64,
	EXIT_DATA = 65,
	EXIT_NO_INPUT = 66,
	EXIT_UNAVAILABLE = 69,
	EXIT_SOFTWARE = 70,
	EXIT_OS = 71,
	EXIT_CANNOT_CREATE = 73,
	EXIT_IO = 74,
	EXIT_TRY_LATER = 75,
	EXIT_NO_PERMISSION = 77,
};

struct command {
	const char *name;
	enum message_id summary;	   /* one line of --help */
	int (*run)(int argc, char **argv); /* argv[0] is the verb */
};

/* Takes the verb from a program's arguments and runs it: the exit status. */
int command_run(int argc, char **argv);

int command_practise(int argc, char **argv);
int command_today(int argc, char **argv);
int command_check(int argc, char **argv);
int command_new(int argc, char **argv);
int command_history(int argc, char **argv);
int command_sheet(int argc, char **argv);
int command_track(int argc, char **argv);
int command_give(int argc, char **argv);
int command_gather(int argc, char **argv);
int command_class(int argc, char **argv);
int command_sound(int argc, char **argv);
int command_measure(int argc, char **argv);

/* Prints a fault, or all of a list, to standard error. */
void command_fault(const struct fault *f);
void command_faults(const struct faults *list);

#endif
