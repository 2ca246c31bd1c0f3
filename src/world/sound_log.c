/*
 * sound_log.c - what sound libraries print, in a file of bounded size
 */
#include "sound_log.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { PIECE = 4096, PIECES = 16, FOLDER_MAX = 4096 };

void sound_log_begin(struct sound_log *l, const char *path)
{
	*l = (struct sound_log) { .path = path, .file = -1 };
	if (*path)
		unlink(path);
}

/* Makes the folders above a file. */
static void make_folders(const char *path)
{
	char folder[FOLDER_MAX];

	for (const char *s = strchr(path + 1, '/'); s; s = strchr(s + 1, '/')) {
		size_t length = (size_t)(s - path);

		if (length >= sizeof folder)
			return;
		memcpy(folder, path, length);
		folder[length] = '\0';
		mkdir(folder, 0700);
	}
}

static void keep(struct sound_log *l, const char *bytes, size_t count)
{
	size_t room = SOUND_LOG_MAX - l->size;

	if (l->size == 0 && l->file < 0 && *l->path) {
		make_folders(l->path);
		l->file = open(l->path,
		    O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0600);
	}
	count = count < room ? count : room;
	l->size += count;
	/* A log that cannot be written is no trouble for anybody. */
	if (l->file >= 0 && count > 0 && write(l->file, bytes, count) < 0)
		l->size = SOUND_LOG_MAX;
}

int sound_log_drain(struct sound_log *l, int pipe)
{
	char bytes[PIECE];

	for (int i = 0; i < PIECES; i++) {
		ssize_t got = read(pipe, bytes, sizeof bytes);

		if (got == 0)
			return 0;
		if (got < 0)
			return errno == EAGAIN || errno == EWOULDBLOCK ||
			    errno == EINTR;
		keep(l, bytes, (size_t)got);
	}
	return 1;
}
