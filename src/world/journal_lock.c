/*
 * journal_lock.c - one evenhand for each player at a time
 *
 * The lock belongs to an open file, so the system lets it go when the program
 * ends, however it ends.  The file itself stays: removing it would let two in
 * at once.
 */
#include "journal_lock.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <sys/file.h>
#include <unistd.h>

#include "journal_spool.h"

bool lock_take(const char *journal, int *lock)
{
	char path[SPOOL_PATH_BYTES];

	snprintf(path, sizeof(path), "%s.lock", journal);
	*lock = open(path, O_RDONLY | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
	if (*lock < 0)
		return true;
	if (flock(*lock, LOCK_EX | LOCK_NB) == 0)
		return true;
	if (errno == EWOULDBLOCK) {
		lock_free(*lock);
		*lock = -1;
		return false;
	}
	return true;
}

void lock_free(int lock)
{
	if (lock >= 0)
		close(lock);
}
