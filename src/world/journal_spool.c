/*
 * journal_spool.c - rows that could not be written, as lines of text
 *
 * The first place is beside the journal.  Where that folder takes nothing,
 * the next are the user's own folders for what a program leaves behind (XDG
 * base directories 0.8), and the last one outlives a restart, too.  Other
 * users may write there, so a file in it counts only when it is ours alone.
 *
 * All places are read, whichever was written to: the environment may be
 * another one each time.  Where two are the same, their rows come twice and
 * change nothing.
 */
#include "journal_spool.h"

#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "evenhand/base/fingerprint.h"
#include "evenhand/world/file.h"
#include "shortage.h"

enum { BYTES_MAX = 256 * 1024 * 1024, ASIDE_MAX = 999 };

enum { BESIDE, STATE, STATE_OF_HOME, LAST_RESORT };

/* The place of a journal in a folder that a variable leads to. */
static void place_in(
    char *path, const char *variable, const char *below, uint64_t journal)
{
	const char *folder = getenv(variable);
	int length = -1;

	if (folder != NULL && *folder == '/')
		length = snprintf(path, SPOOL_PATH_BYTES,
		    "%s%s/evenhand/%016" PRIx64 ".spool", folder, below,
		    journal);
	if (length < 0 || length >= SPOOL_PATH_BYTES)
		*path = '\0';
}

void spool_init(struct spool *s, const char *journal)
{
	uint64_t id = fingerprint_add(
	    FINGERPRINT_START, journal, strlen(journal));

	snprintf(s->path[BESIDE], SPOOL_PATH_BYTES, "%s.spool", journal);
	place_in(s->path[STATE], "XDG_STATE_HOME", "", id);
	place_in(s->path[STATE_OF_HOME], "HOME", "/.local/state", id);
	snprintf(s->path[LAST_RESORT], SPOOL_PATH_BYTES,
	    "/var/tmp/evenhand-%ld-%016" PRIx64 ".spool", (long)geteuid(), id);
}

bool spool_waits(const struct spool *s)
{
	struct stat st;

	for (int i = 0; i < SPOOL_PLACES; i++)
		if (lstat(s->path[i], &st) == 0 && st.st_size > 0)
			return true;
	return false;
}

/* Opens a file that is a plain one and ours; -1 when there is none. */
static int open_ours(const char *path, int flags)
{
	int file = open(path, flags | O_NOFOLLOW | O_CLOEXEC, 0600);
	struct stat st;

	if (file < 0)
		return -1;
	if (fstat(file, &st) == 0 && S_ISREG(st.st_mode) &&
	    st.st_uid == geteuid() && st.st_nlink == 1 &&
	    st.st_size <= BYTES_MAX)
		return file;
	close(file);
	return -1;
}

/* A torn line at the end must not run into what is added. */
static bool ends_within_line(int file)
{
	struct stat st;
	char last = '\n';

	return fstat(file, &st) == 0 && st.st_size > 0 &&
	    pread(file, &last, 1, st.st_size - 1) == 1 && last != '\n';
}

static bool write_all(int file, const char *bytes, size_t length)
{
	while (length > 0) {
		ssize_t done = write(file, bytes, length);

		if (done < 0 && errno == EINTR)
			continue;
		if (done <= 0)
			return false;
		bytes += done;
		length -= (size_t)done;
	}
	return true;
}

/* Folders of state are made when they are needed. */
static int open_to_add(const struct spool *s, int place)
{
	if (*s->path[place] == '\0')
		return -1;
	if (place == STATE || place == STATE_OF_HOME) {
		struct fault ignored;

		if (!folder_make_for(s->path[place], &ignored))
			return -1;
	}
	return open_ours(s->path[place], O_RDWR | O_CREAT | O_APPEND);
}

/* Half of it is no use: the next place gets all of it. */
static void cut_back(int file, off_t length)
{
	/* Where it stays, whole rows come twice, and a torn one is skipped. */
	if (ftruncate(file, length) != 0)
		return;
}

static bool add_to(
    const struct spool *s, int place, const char *bytes, size_t length)
{
	int file = open_to_add(s, place);
	bool good;
	off_t before;

	if (file < 0)
		return false;
	before = lseek(file, 0, SEEK_END);
	good = !ends_within_line(file) || write_all(file, "\n", 1);
	good = good && write_all(file, bytes, length) && fsync(file) == 0;
	if (!good && before >= 0)
		cut_back(file, before);
	close(file);
	if (good && before == 0)
		folder_to_disk(s->path[place]);
	return good;
}

int spool_add(const struct spool *s, const struct row *rows)
{
	char *bytes = NULL;
	size_t length = 0;
	FILE *text = open_memstream(&bytes, &length);
	bool good = text != NULL;
	int place = -1;

	for (; good && rows != NULL; rows = rows->next)
		good = row_write(rows, text);
	if (text != NULL && fclose(text) != 0)
		good = false;
	for (int i = 0; good && place < 0 && i < SPOOL_PLACES; i++)
		if (add_to(s, i, bytes, length))
			place = i;
	free(bytes);
	return place;
}

static bool keep_row(struct spooled *all, struct row *row)
{
	if (all->rows % 64 == 0) {
		struct row **more = realloc(
		    all->row, (size_t)(all->rows + 64) * sizeof(struct row *));

		if (more == NULL) {
			free(row);
			return false;
		}
		all->row = more;
	}
	all->row[all->rows++] = row;
	return true;
}

/* Reads one line; the last one may have been torn by a power cut. */
static bool read_line(
    struct spooled *all, int place, char *line, ssize_t length)
{
	bool whole = line[length - 1] == '\n';
	struct row *row = NULL;

	if (whole)
		line[length - 1] = '\0';
	errno = 0;
	if (whole && strlen(line) == (size_t)length - 1)
		row = row_read(line);
	if (row != NULL) {
		row->place = place;
		return keep_row(all, row);
	}
	if (errno == ENOMEM)
		return false;
	if (whole && length > 1)
		all->damaged[place]++;
	return true;
}

static bool read_place(const char *path, int place, struct spooled *all)
{
	int file = open_ours(path, O_RDONLY);
	FILE *in = file >= 0 ? fdopen(file, "r") : NULL;
	char *line = NULL;
	size_t size = 0;
	ssize_t length;
	bool good = true;

	if (in == NULL) {
		struct stat st;
		bool nothing;

		shortage_note(errno);
		nothing = lstat(path, &st) != 0 && errno == ENOENT;
		if (file >= 0)
			close(file);
		return nothing;
	}
	while (good && (length = getline(&line, &size, in)) > 0)
		good = read_line(all, place, line, length);
	/* Without memory for a line it ends without a word. */
	good = good && !ferror(in) && feof(in);
	if (!good)
		shortage_note(errno);
	free(line);
	fclose(in);
	return good;
}

static int in_sequence(const void *a, const void *b)
{
	const struct row *const *first = a, *const *second = b;
	int64_t x = (*first)->number[ROW_SEQUENCE];
	int64_t y = (*second)->number[ROW_SEQUENCE];
	int origin = strcmp((*first)->origin, (*second)->origin);

	return origin != 0 ? origin : (x > y) - (x < y);
}

bool spool_read(const struct spool *s, struct spooled *all)
{
	bool good = true;

	*all = (struct spooled) { 0 };
	for (int i = 0; i < SPOOL_PLACES; i++) {
		all->read[i] = read_place(s->path[i], i, all);
		good = good && all->read[i];
	}
	if (all->rows > 0)
		qsort(all->row, (size_t)all->rows, sizeof(struct row *),
		    in_sequence);
	return good;
}

void spooled_free(struct spooled *all)
{
	for (int i = 0; i < all->rows; i++)
		free(all->row[i]);
	free(all->row);
	*all = (struct spooled) { 0 };
}

void spool_remove(const struct spool *s, int place)
{
	unlink(s->path[place]);
}

bool spool_put_aside(
    const struct spool *s, int place, char aside[SPOOL_ASIDE_BYTES])
{
	struct stat st;

	/* What was put aside earlier stays: it may be all there is. */
	snprintf(aside, SPOOL_ASIDE_BYTES, "%s.unusable", s->path[place]);
	for (int n = 2; n <= ASIDE_MAX && lstat(aside, &st) == 0; n++)
		snprintf(aside, SPOOL_ASIDE_BYTES, "%s.unusable-%d",
		    s->path[place], n);
	return lstat(aside, &st) != 0 && rename(s->path[place], aside) == 0;
}
