/*
 * program.h - what the programs that evenhand starts have in common
 *
 * Their words are one line, and what they make goes out whole or is lost.  Any
 * thread.
 */
#ifndef EVENHAND_WORLD_PROGRAM_H
#define EVENHAND_WORLD_PROGRAM_H

#include <stdbool.h>
#include <stddef.h>
#include <sys/types.h>

/* Writes all of it, however long that takes; false: it cannot. */
bool program_write(int descriptor, const void *bytes, size_t length);

/*
 * Says words, and others before them, on a line of their own.  The status to
 * end with: good, or lost when nobody can be told.
 */
int program_say(
    int descriptor, const char *before, const char *words, int good, int lost);

/*
 * A pipe to one of them or from it; what is started takes over neither end by
 * itself.  False, with both ends -1: there is none.
 */
bool program_pipe(int ends[2]);

/*
 * In a child: becomes the program of that path, with in and out, which are above
 * 2, as its input and output, and with nobody to hear what its libraries say.
 * words, ended by NULL, begin with its name.  Where there is no such program the
 * child ends with PROGRAM_MISSING.
 */
enum { PROGRAM_MISSING = 127 };
_Noreturn void program_become(
    const char *path, char *const *words, int in, int out);

/* Waits for its end: the status, or -1 when it did not come to one. */
int program_wait(pid_t program);

#endif
