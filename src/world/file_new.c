/*
 * file_new.c - a new file, whole or not at all
 *
 * It is written where nobody sees it, brought to the disk and then put in its
 * place: whoever looks finds the old file, the new one or none, never half of
 * one.
 *
 *	nameless ──▶ linked into its place, or under a name beside it ─┐
 *	beside it, FILE.XXXXXX ──────────────────────────────── renamed ┴▶ FILE
 *
 * A nameless file is gone by itself when the program is killed.  Where the
 * system has none, a name beside the place is taken at once, and a killed
 * program leaves it there.
 */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE
#endif
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "evenhand/base/text.h"
#include "evenhand/world/file.h"
#include "evenhand/world/program.h"
#include "random.h"

enum { OPEN_BYTES = 32 };

static bool fail_of(struct fault *f, const char *path, enum message_id id)
{
	fault_set(f, message_of(id));
	return fault_at(f, path, 0, 0);
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
	case EMFILE:
	case ENFILE:
		return M_WORLD_FILE_NO_MORE;
	default:
		return M_WORLD_FILE_UNWRITTEN;
	}
}

/* --- where it is written -------------------------------------------------- */

#ifdef O_TMPFILE
/* How a nameless file is to be found, to be linked. */
static void open_name(int fd, char *buffer, size_t size)
{
	struct text t = text_in(buffer, size);

	text_format(&t, "/proc/self/fd/%d", fd);
}

/* A file without a name in the folder of a path; -1: there is no such thing. */
static int open_nameless(const char *path, mode_t rights)
{
	char folder[FILE_PATH_MAX], name[OPEN_BYTES];
	struct text t = text_in(folder, sizeof(folder));
	const char *end = strrchr(path, '/');
	int fd;

	text_add_bytes(&t, path, end ? (size_t)(end - path) + 1 : 0);
	text_add(&t, end ? "" : ".");
	fd = open(folder, O_TMPFILE | O_RDWR | O_CLOEXEC, rights);
	if (fd < 0)
		return -1;
	open_name(fd, name, sizeof(name));
	if (access(name, F_OK) == 0)
		return fd;
	close(fd);
	return -1;
}

static bool link_nameless(int fd, const char *to)
{
	char name[OPEN_BYTES];

	open_name(fd, name, sizeof(name));
	return linkat(AT_FDCWD, name, AT_FDCWD, to, AT_SYMLINK_FOLLOW) == 0;
}
#else
static int open_nameless(const char *path, mode_t rights)
{
	(void)path;
	(void)rights;
	return -1;
}

static bool link_nameless(int fd, const char *to)
{
	(void)fd;
	(void)to;
	errno = ENOTSUP;
	return false;
}
#endif

static int open_beside(struct file_new *n)
{
	int length = snprintf(
	    n->beside, sizeof(n->beside), "%s.XXXXXX", n->path);
	int fd;

	if (length < 0 || (size_t)length >= sizeof(n->beside)) {
		n->beside[0] = '\0';
		errno = ENAMETOOLONG;
		return -1;
	}
	fd = mkstemp(n->beside);
	if (fd < 0)
		n->beside[0] = '\0';
	else
		fcntl(fd, F_SETFD, FD_CLOEXEC);
	return fd;
}

static void set_rights(int fd, mode_t rights)
{
	mode_t mask = umask(0);

	umask(mask);
	if (fchmod(fd, rights & ~mask) != 0) {
		/* Some file systems keep no rights; the text counts. */
		errno = 0;
	}
}

/* Whether a file may come here, as far as can be told before it is written. */
static bool may_come(const struct file_new *n, struct fault *f)
{
	struct stat s;

	if (strlen(n->path) + sizeof(".XXXXXX") > FILE_PATH_MAX)
		return fail_of(f, n->path, M_WORLD_PATH_LONG);
	if (stat(n->path, &s) != 0)
		return true;
	/* Said before anything is made; put_nameless holds it in a race. */
	if (!n->force)
		return fail_of(f, n->path, M_WORLD_FILE_THERE);
	/* A device or a pipe must not be replaced by a file. */
	if (S_ISDIR(s.st_mode))
		return fail_of(f, n->path, M_WORLD_FILE_FOLDER);
	return S_ISREG(s.st_mode) || fail_of(f, n->path, M_WORLD_FILE_ODD);
}

bool file_new_open(struct file_new *n, const char *path, mode_t rights,
    bool force, struct fault *f)
{
	*n = (struct file_new) { .fd = -1, .path = path, .force = force };
	if (!may_come(n, f))
		return false;
	n->fd = open_nameless(path, rights);
	if (n->fd < 0)
		n->fd = open_beside(n);
	if (n->fd < 0)
		return fail_of(f, path, why_unwritten(errno));
	set_rights(n->fd, rights);
	return true;
}

/* --- into its place ------------------------------------------------------- */

/* A link never replaces what is there, a rename does. */
static bool put_beside(struct file_new *n)
{
	if (n->force)
		return rename(n->beside, n->path) == 0;
	if (link(n->beside, n->path) == 0) {
		unlink(n->beside);
		return true;
	}
	/* A file system without links: look, then move. */
	if (errno != EEXIST && access(n->path, F_OK) != 0)
		return rename(n->beside, n->path) == 0;
	errno = EEXIST;
	return false;
}

/* What is to replace another gets a name beside it for a moment. */
static bool put_nameless(struct file_new *n)
{
	char id[33];
	struct text t = text_in(n->beside, sizeof(n->beside));

	if (link_nameless(n->fd, n->path))
		return true;
	if (errno != EEXIST || !n->force)
		return false;
	random_id(id);
	id[6] = '\0';
	text_format(&t, "%s.%s", n->path, id);
	if (link_nameless(n->fd, n->beside))
		return rename(n->beside, n->path) == 0;
	n->beside[0] = '\0';
	return false;
}

bool file_new_put(struct file_new *n, struct fault *f)
{
	bool good = fsync(n->fd) == 0 &&
	    (n->beside[0] ? put_beside(n) : put_nameless(n));
	int error = errno;

	if (good)
		n->beside[0] = '\0';
	if (close(n->fd) != 0 && good) {
		error = errno;
		good = false;
	}
	n->fd = -1;
	file_new_drop(n);
	return good || fail_of(f, n->path, why_unwritten(error));
}

void file_new_drop(struct file_new *n)
{
	if (n->fd >= 0)
		close(n->fd);
	if (n->beside[0])
		unlink(n->beside);
	n->fd = -1;
	n->beside[0] = '\0';
}

/* --- all at once ---------------------------------------------------------- */

static bool write_file(const char *path, const char *bytes, size_t length,
    mode_t rights, bool force, struct fault *f)
{
	struct file_new n;

	if (!file_new_open(&n, path, rights, force, f))
		return false;
	if (program_write(n.fd, bytes, length))
		return file_new_put(&n, f);
	fail_of(f, path, why_unwritten(errno));
	file_new_drop(&n);
	return false;
}

bool file_write(const char *path, const char *bytes, size_t length, bool force,
    struct fault *f)
{
	return write_file(path, bytes, length, FILE_RIGHTS, force, f);
}

bool file_write_own(const char *path, const char *bytes, size_t length,
    bool force, struct fault *f)
{
	return write_file(path, bytes, length, 0600, force, f);
}

bool file_replace(
    const char *path, const char *bytes, size_t length, struct fault *f)
{
	return file_write_own(path, bytes, length, true, f);
}
