/*
 * load.h - a routine from the disk, with its homework file
 *
 *	evenhand wren.yaml ── names ──▶ from-wide-to-still.yaml (same folder)
 *
 * Reads the file; when it is a homework file, the routine it names in its own
 * folder too; runs slips_find, yaml_parse and routine_read over them.  A name
 * that is no file is looked up among the routines that ship in the program.
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_LOAD_H
#define EVENHAND_WORLD_LOAD_H

#include "evenhand/base/fault.h"
#include "evenhand/routine/routine.h"

/* The files a routine came from; must outlive the faults that point here. */
struct load_paths {
	char routine[4096];
	char homework[4096]; /* "" when there was none */
};

/*
 * path NULL: the built-in cello routine.  NULL with faults when anything is
 * wrong; faults of files that cannot be opened are in the list too, and
 * *unreadable says that there was one.  The caller frees it: routine_free.
 */
struct routine *load_routine(const char *path, struct load_paths *paths,
    struct faults *faults, bool *unreadable);

/*
 * A routine from its text as a journal keeps it: that of one file, or of a
 * routine and the homework behind it.  NULL when it is none that this evenhand
 * can read; errno is ENOMEM when there was no memory to read it.  The caller
 * frees it.
 */
struct routine *load_kept(const char *text, size_t length);

/* Number of routines in the program, their names and texts. */
int builtin_count(void);
const char *builtin_name(int i); /* "cello", "cello-homework", ... */
const char *builtin_text(int i, size_t *length);

#endif
