/*
 * file.c - files and folders, whole or not at all
 *
 * A new file is written beside its place under a name of its own, brought to
 * the disk and then moved there: whoever looks finds the old file, the new one
 * or none, never half of one.
 */
#include "evenhand/world/file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { PATH_MAX_BYTES = 4096, KB = 1024, FOLDER_RIGHTS = 0700 };

static bool fail(struct fault *f, const char *path, struct message m)
{
	fault_set(f, m);
	return fault_at(f, path, 0, 0);
}

static bool fail_of(struct fault *f, const char *path, enum message_id id)
{
	return fail(f, path, message_of(id));
}

/* Why a file cannot be opened. */
static enum message_id why_unread(int error)
{
	switch (error) {
	case ENOENT:
	case ENOTDIR:
		return M_WORLD_FILE_MISSING;
	case EACCES:
	case EPERM:
		return M_WORLD_FILE_DENIED;
	case ENAMETOOLONG:
		return M_WORLD_PATH_LONG;
	default:
		return M_WORLD_FILE_UNREAD;
	}
}

static enum message_id why_unwritten(int error)
{
	switch (error) {
	case EEXIST:
		return M_WORLD_FILE_THERE;
	case ENOENT:
	case ENOTDIR:
		return M_WORLD_FILE_NO_FOLDER;
	case EACCES:
	case EPERM:
	case EROFS:
		return M_WORLD_FILE_NO_RIGHT;
	case ENOSPC:
	case EDQUOT:
		return M_WORLD_FILE_FULL;
	case EISDIR:
		return M_WORLD_FILE_FOLDER;
	case ENAMETOOLONG:
		return M_WORLD_PATH_LONG;
	default:
		return M_WORLD_FILE_UNWRITTEN;
	}
}

/* Reads to the end, at most size bytes; how many, or -1. */
static ssize_t read_all(int file, char *bytes, size_t size)
{
	size_t got = 0;

	while (got < size) {
		ssize_t more = read(file, bytes + got, size - got);

		if (more < 0 && errno != EINTR)
			return -1;
		if (more == 0)
			break;
		got += more > 0 ? (size_t)more : 0;
	}
	return (ssize_t)got;
}

static bool ordinary(const char *path, int file, struct fault *f)
{
	struct stat s;

	if (fstat(file, &s) != 0)
		return fail_of(f, path, M_WORLD_FILE_UNREAD);
	if (S_ISDIR(s.st_mode))
		return fail_of(f, path, M_WORLD_FILE_FOLDER);
	if (!S_ISREG(s.st_mode))
		return fail_of(f, path, M_WORLD_FILE_ODD);
	return true;
}

/* The size may change while it is read, so the limit is held on the way. */
static bool read_open(const char *path, int file, size_t limit, char **bytes,
    size_t *length, struct fault *f)
{
	char *all = NULL;
	ssize_t got = -1;
	bool good = false;

	if (!ordinary(path, file, f))
		goto done;
	all = malloc(limit + 2);
	if (all == NULL) {
		fail_of(f, path, M_WORLD_FILE_NO_MEMORY);
		goto done;
	}
	got = read_all(file, all, limit + 1);
	if (got < 0) {
		fail_of(f, path, M_WORLD_FILE_UNREAD);
		goto done;
	}
	if ((size_t)got > limit) {
		fail(f, path,
		    message_with(
			M_WORLD_FILE_BIG, WHOLE((int64_t)(limit / KB))));
		goto done;
	}
	all[got] = '\0';
	*bytes = all;
	*length = (size_t)got;
	all = NULL;
	good = true;
done:
	free(all);
	return good;
}

bool file_read(const char *path, size_t limit, char **bytes, size_t *length,
    struct fault *f)
{
	/* Without O_NONBLOCK a pipe that nobody writes to would hang us. */
	int file = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
	bool good;

	if (file < 0)
		return fail_of(f, path, why_unread(errno));
	good = read_open(path, file, limit, bytes, length, f);
	close(file);
	return good;
}

static bool write_all(int file, const char *bytes, size_t length)
{
	while (length > 0) {
		ssize_t done = write(file, bytes, length);

		if (done < 0 && errno != EINTR)
			return false;
		bytes += done > 0 ? done : 0;
		length -= done > 0 ? (size_t)done : 0;
	}
	return true;
}

/* Brings the text to the disk; closes the file in any case. */
static bool write_and_close(int file, const char *bytes, size_t length)
{
	bool good = write_all(file, bytes, length) && fsync(file) == 0;
	int error = errno;

	if (close(file) != 0 && good) {
		error = errno;
		good = false;
	}
	errno = error;
	return good;
}

/* Into its place: a link never replaces what is there, a rename does. */
static bool put(const char *beside, const char *path, bool force)
{
	if (force)
		return rename(beside, path) == 0;
	if (link(beside, path) == 0) {
		unlink(beside);
		return true;
	}
	/* A file system without links: look, then move. */
	if (errno != EEXIST && access(path, F_OK) != 0)
		return rename(beside, path) == 0;
	errno = EEXIST;
	return false;
}

static int open_beside(
    const char *path, mode_t rights, char *beside, size_t size)
{
	int length = snprintf(beside, size, "%s.XXXXXX", path);
	int file;
	mode_t mask;

	if (length < 0 || (size_t)length >= size) {
		errno = ENAMETOOLONG;
		return -1;
	}
	file = mkstemp(beside);
	if (file < 0)
		return -1;
	mask = umask(0);
	umask(mask);
	if (fchmod(file, rights & ~mask) != 0) {
		/* Some file systems keep no rights; the text counts. */
		errno = 0;
	}
	return file;
}

static bool write_file(const char *path, const char *bytes, size_t length,
    mode_t rights, bool force, struct fault *f)
{
	char beside[PATH_MAX_BYTES];
	int file = open_beside(path, rights, beside, sizeof(beside));
	int error;

	if (file < 0)
		return fail_of(f, path, why_unwritten(errno));
	if (write_and_close(file, bytes, length) && put(beside, path, force))
		return true;
	error = errno;
	unlink(beside);
	return fail_of(f, path, why_unwritten(error));
}

bool file_write(const char *path, const char *bytes, size_t length, bool force,
    struct fault *f)
{
	/* Said before anything is made; put() holds it against a race. */
	if (!force && access(path, F_OK) == 0)
		return fail_of(f, path, M_WORLD_FILE_THERE);
	return write_file(path, bytes, length, 0644, force, f);
}

bool file_replace(
    const char *path, const char *bytes, size_t length, struct fault *f)
{
	return write_file(path, bytes, length, 0600, true, f);
}

static bool is_folder(const char *path)
{
	struct stat s;

	return stat(path, &s) == 0 && S_ISDIR(s.st_mode);
}

bool folder_make(const char *path, struct fault *f)
{
	char part[PATH_MAX_BYTES];
	size_t length = strlen(path);

	if (length == 0 || length >= sizeof(part))
		return fail_of(f, path,
		    length ? M_WORLD_PATH_LONG : M_WORLD_FOLDER_UNMADE);
	for (size_t i = 1; i <= length; i++) {
		if (path[i] != '/' && path[i] != '\0')
			continue;
		memcpy(part, path, i);
		part[i] = '\0';
		if (mkdir(part, FOLDER_RIGHTS) != 0 && !is_folder(part))
			return fail_of(f, path, M_WORLD_FOLDER_UNMADE);
	}
	return true;
}
