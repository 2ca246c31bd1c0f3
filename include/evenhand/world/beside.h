/*
 * beside.h - where the programs are that evenhand starts, and its languages
 *
 *	build/evenhand                   build/evenhand-sound
 *	/usr/local/bin/evenhand          /usr/local/libexec/evenhand/evenhand-sound
 *
 * They stand beside the running program, or where an installation keeps what
 * nobody starts by hand.  Both are found from the running program's own file, so
 * an installation may be moved as a whole.
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_BESIDE_H
#define EVENHAND_WORLD_BESIDE_H

#include <stdbool.h>
#include <stddef.h>

/*
 * What the program was started as, argv[0]: where the system does not tell which
 * file runs, that and PATH do.  Borrowed, for good.
 */
void beside_started_as(const char *word);

/* The file that a shell would start for a word, without links; false: none. */
bool beside_named(const char *word, char *path, size_t size);

/* The path of a program of ours; false and "" when there is none. */
bool beside_find(const char *name, char *path, size_t size);

/* The folder of other languages, build/locale or ../share/locale. */
bool beside_locale(char *path, size_t size);

#endif
