/*
 * record_file.h - records on the disk: written whole, read with distrust
 *
 * Only the main thread.
 */
#ifndef EVENHAND_WORLD_RECORD_FILE_H
#define EVENHAND_WORLD_RECORD_FILE_H

#include <stdbool.h>
#include <stddef.h>

#include "evenhand/base/fault.h"
#include "evenhand/record/record.h"

/*
 * Reads a record.  False with faults when the file cannot be read or is not
 * exactly what evenhand-record(5) describes; *unreadable says that it was not
 * even a file that could be read.  path is kept by pointer in the faults.
 * record_done in any case.
 */
bool record_load(const char *path, struct record *r, struct faults *faults,
    bool *unreadable);

/* The same of bytes that were read already. */
bool record_parse(const char *path, const char *bytes, size_t length,
    struct record *r, struct faults *faults);

/*
 * Takes the record out of a journal that is only looked at: from a practice
 * day on, or all with since -1.  given and initials are the caller's to set
 * afterwards.  False with a fault; record_done in any case.
 */
bool record_take(const char *journal, int since, struct record *r,
    struct record_left *left, struct fault *f);

/*
 * Writes a record to a new file for its owner alone (0600), whole or not at
 * all.  Fails when there is one and force is false.
 */
bool record_save(
    const char *path, const struct record *r, bool force, struct fault *f);

#endif
