/*
 * file.h - files and folders, whole or not at all
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_FILE_H
#define EVENHAND_WORLD_FILE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <sys/stat.h>
#include <sys/types.h>

#include "evenhand/base/fault.h"

enum { FILE_PATH_MAX = 4096, FILE_RIGHTS = 0644 };

/*
 * Reads a regular file of at most limit bytes.  The caller frees *bytes, which
 * has a zero behind its last byte.  "-" is no name for standard input here.
 * path is kept by pointer in the fault.
 */
bool file_read(const char *path, size_t limit, char **bytes, size_t *length,
    struct fault *f);

/*
 * Opens a regular file for reading: its descriptor, which the caller closes, or
 * -1.  Nothing waits, not even for a pipe that nobody writes to.
 */
int file_open(const char *path, struct fault *f);

/* When it was last changed, in nanoseconds since 1970-01-01 00:00 UTC. */
int64_t file_time_ns(const struct stat *s);

/*
 * A new file on its way, which takes its place whole or not at all.  Killed in
 * between, a program leaves nothing; where the system knows no nameless files,
 * or in the moment of a replacement, FILE.XXXXXX beside the place.
 */
struct file_new {
	int fd; /* to be written and read, -1 when over */
	const char *path;
	bool force;
	char beside[FILE_PATH_MAX]; /* its name so far, "" for none */
};

/*
 * Begins a file of these rights, less umask; path is kept by pointer.  False
 * when it cannot come there, or is there already and force is false: nothing is
 * open then.
 */
bool file_new_open(struct file_new *n, const char *path, mode_t rights,
    bool force, struct fault *f);

/* Puts it in its place, or drops it; closes it in any case. */
bool file_new_put(struct file_new *n, struct fault *f);

/* Forgets it; no harm when it is over. */
void file_new_drop(struct file_new *n);

/*
 * Writes a new file (FILE_RIGHTS less umask), whole or not at all.  Fails when
 * it exists and force is false.
 */
bool file_write(const char *path, const char *bytes, size_t length, bool force,
    struct fault *f);

/* The same for its owner alone (0600). */
bool file_write_own(const char *path, const char *bytes, size_t length,
    bool force, struct fault *f);

/*
 * Puts a file for its owner alone (0600) in the place of another, or of none,
 * whole like file_write.
 */
bool file_replace(
    const char *path, const char *bytes, size_t length, struct fault *f);

/* Makes a folder and its parents, the new ones 0700. */
bool folder_make(const char *path, struct fault *f);

/* The folder that a file is to lie in; a fault is about the file. */
bool folder_make_for(const char *path, struct fault *f);

/*
 * Brings the names in the folder of a file to the disk: a new one is there only
 * then.  Where folders cannot be brought there, they come by themselves.
 */
void folder_to_disk(const char *path);

#endif
