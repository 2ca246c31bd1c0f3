/*
 * file.h - files and folders, whole or not at all
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_FILE_H
#define EVENHAND_WORLD_FILE_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/fault.h"

/*
 * Reads a regular file of at most limit bytes.  The caller frees *bytes, which
 * has a zero behind its last byte.  "-" is no name for standard input here.
 * path is kept by pointer in the fault.
 */
bool file_read(const char *path, size_t limit, char **bytes, size_t *length,
    struct fault *f);

/*
 * Writes a new file (0644 less umask): beside it first, then renamed, so that
 * it is there whole or not at all.  Fails when it exists and force is false.
 */
bool file_write(const char *path, const char *bytes, size_t length, bool force,
    struct fault *f);

/*
 * Puts a file for its owner alone (0600) in the place of another, or of none,
 * whole like file_write.
 */
bool file_replace(
    const char *path, const char *bytes, size_t length, struct fault *f);

/* Makes a folder and its parents, the new ones 0700. */
bool folder_make(const char *path, struct fault *f);

#endif
