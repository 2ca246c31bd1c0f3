/*
 * file.c - files that are read, and folders
 */
#include "evenhand/world/file.h"

#include <errno.h>
#include <fcntl.h>
#include <libgen.h>
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
	case EMFILE:
	case ENFILE:
		return M_WORLD_FILE_NO_MORE;
	default:
		return M_WORLD_FILE_UNREAD;
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

int file_open(const char *path, struct fault *f)
{
	/* Without O_NONBLOCK a pipe that nobody writes to would hang us. */
	int file = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);

	if (file < 0) {
		fail_of(f, path, why_unread(errno));
	} else if (!ordinary(path, file, f)) {
		close(file);
		file = -1;
	}
	return file;
}

/* The size may change while it is read, so the limit is held on the way. */
static bool read_open(const char *path, int file, size_t limit, char **bytes,
    size_t *length, struct fault *f)
{
	char *all = malloc(limit + 2);
	ssize_t got = -1;
	bool good = false;

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
	int file = file_open(path, f);
	bool good;

	if (file < 0)
		return false;
	good = read_open(path, file, limit, bytes, length, f);
	close(file);
	return good;
}

int64_t file_time_ns(const struct stat *s)
{
#ifdef __APPLE__
	const struct timespec *t = &s->st_mtimespec;
#else
	const struct timespec *t = &s->st_mtim;
#endif
	return (int64_t)t->tv_sec * 1000000000 + t->tv_nsec;
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

bool folder_make_for(const char *path, struct fault *f)
{
	char folder[PATH_MAX_BYTES];
	const char *slash = strrchr(path, '/');
	size_t length = slash != NULL ? (size_t)(slash - path) : 0;

	/* The root and the folder one is in are there. */
	if (length == 0)
		return true;
	if (length >= sizeof(folder))
		return fail_of(f, path, M_WORLD_PATH_LONG);
	memcpy(folder, path, length);
	folder[length] = '\0';
	return folder_make(folder, f) ||
	    fail_of(f, path, M_WORLD_FOLDER_OF_UNMADE);
}

void folder_to_disk(const char *path)
{
	char copy[PATH_MAX_BYTES];
	int folder;

	snprintf(copy, sizeof(copy), "%s", path);
	folder = open(dirname(copy), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	if (folder >= 0) {
		fsync(folder);
		close(folder);
	}
}
