/*
 * journal_look.c - the journal read without practising
 *
 * No lock is taken and nothing is made, not even the two helper files of WAL.
 * When no such file lies there, nobody has the journal open and it is whole
 * as it stands, so it is read as a file that does not change.
 *
 * Rows that wait in a spool belong to the history too: a pain stop counts
 * today even if the disk was full.  Where there are any, the journal is
 * copied into memory and they are brought in there.  A journal of an older
 * schema is brought up to date in such a copy, too.
 */
#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "journal_database.h"
#include "journal_spool.h"
#include "shortage.h"

enum { PATH_BYTES = SPOOL_PATH_BYTES, URI_BYTES = 3 * PATH_BYTES };

enum trouble database_memory(struct database *d, struct database *from)
{
	sqlite3_backup *backup;

	if (!database_handle(
		d, ":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE))
		return database_give_up(d, database_trouble(d));
	if (from == NULL)
		return schema_bring(d, NULL, &journal_schema);
	backup = sqlite3_backup_init(d->handle, "main", from->handle, "main");
	if (backup == NULL)
		return database_give_up(d, database_trouble(d));
	sqlite3_backup_step(backup, -1);
	if (sqlite3_backup_finish(backup) != SQLITE_OK)
		return database_give_up(d, database_trouble(d));
	return TROUBLE_NONE;
}

/* Puts an up to date copy in the place of what an older evenhand made. */
static enum trouble walk_up(struct database *d)
{
	struct database copy = { 0 };
	enum trouble trouble = database_memory(&copy, d);

	if (trouble == TROUBLE_NONE)
		trouble = schema_bring(&copy, NULL, &journal_schema);
	if (trouble != TROUBLE_NONE) {
		database_close(&copy);
		return database_give_up(d, trouble);
	}
	database_close(d);
	*d = copy;
	return TROUBLE_NONE;
}

/* Opens the file as one that nobody changes. */
static bool open_still(struct database *d, const char *path)
{
	static const char digits[] = "0123456789abcdef";
	char uri[URI_BYTES + 32] = "file:";
	size_t length = strlen(uri);

	for (; *path && length < URI_BYTES; path++) {
		unsigned char c = (unsigned char)*path;

		if (c == '%' || c == '?' || c == '#') {
			uri[length++] = '%';
			uri[length++] = digits[c >> 4];
			uri[length++] = digits[c & 15];
		} else {
			uri[length++] = (char)c;
		}
	}
	snprintf(uri + length, sizeof(uri) - length, "?immutable=1");
	return database_handle(d, uri, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI);
}

/* Whether the file is in WAL mode; byte 18 of an SQLite file says so. */
static bool in_wal_mode(struct database *d)
{
	sqlite3_file *file = NULL;
	unsigned char mode = 0;

	return sqlite3_file_control(d->handle, "main",
		   SQLITE_FCNTL_FILE_POINTER, &file) == SQLITE_OK &&
	    file != NULL && file->pMethods != NULL &&
	    file->pMethods->xRead(file, &mode, 1, 18) == SQLITE_OK && mode == 2;
}

static bool has_wal(const char *path)
{
	char name[PATH_BYTES];
	struct stat s;

	snprintf(name, sizeof(name), "%s-wal", path);
	/* An empty one, too: whoever has the journal open may fill it. */
	return stat(name, &s) == 0;
}

bool database_still(struct database *d, const char *path)
{
	if (!open_still(d, path)) {
		if (database_starved(d))
			errno = shortage_error();
		return false;
	}
	if (!in_wal_mode(d) || has_wal(path)) {
		struct database live;

		/* Others may be at work, or were cut off. */
		if (database_handle(&live, path, SQLITE_OPEN_READONLY) &&
		    database_number(&live, "PRAGMA user_version", -1) >= 0) {
			database_close(d);
			*d = live;
		} else {
			database_close(&live);
		}
	}
	/* The file alone may be older than what others have written. */
	if (database_starved(d))
		errno = shortage_error();
	return !database_starved(d);
}

/* The journal as it lies there; with nothing there an empty one. */
static enum trouble look_at_file(struct database *d, const char *path)
{
	struct stat s;
	enum trouble trouble;
	int64_t version;

	if (stat(path, &s) != 0 && errno == ENOENT)
		return database_memory(d, NULL);
	trouble = database_still(d, path) ? schema_check(d, &journal_schema)
					  : trouble_of_errno(errno);
	if (trouble != TROUBLE_NONE && trouble != TROUBLE_NEWER)
		return database_give_up(d, trouble);
	version = database_number(d, "PRAGMA user_version", -1);
	/* What does not say is no empty one. */
	if (version < 0)
		return database_give_up(d, database_trouble(d));
	if (version == 0) {
		database_close(d);
		return database_memory(d, NULL);
	}
	return version < journal_schema.versions ? walk_up(d) : trouble;
}

static bool bring_in(struct database *d, const struct spooled *all)
{
	if (!database_begin(d))
		return false;
	for (int i = 0; i < all->rows; i++)
		if (database_apply(d, all->row[i]) == FAILED) {
			database_rollback(d);
			return false;
		}
	return database_commit(d);
}

/* Puts a copy with the spool's rows in the place of the database. */
static void add_spool(struct database *d, const struct spooled *all)
{
	struct database copy = { 0 };

	if (database_memory(&copy, d->handle != NULL ? d : NULL) !=
		TROUBLE_NONE ||
	    !bring_in(&copy, all)) {
		database_close(&copy);
		return;
	}
	database_close(d);
	*d = copy;
}

enum trouble database_look_at_spool(struct database *d, const char *path)
{
	unsigned long before = shortage_count();
	struct spool spool = { 0 };
	struct spooled all = { 0 };

	spool_init(&spool, path);
	if (!spool_waits(&spool))
		return TROUBLE_NONE;
	spool_read(&spool, &all);
	if (all.rows > 0)
		add_spool(d, &all);
	spooled_free(&all);
	if (shortage_count() == before)
		return TROUBLE_NONE;
	return database_give_up(d, trouble_of_errno(shortage_error()));
}

enum trouble database_look(struct database *d, const char *path)
{
	enum trouble trouble, spooled;

	*d = (struct database) { 0 };
	trouble = look_at_file(d, path);
	if (trouble_short(trouble))
		return trouble;
	spooled = database_look_at_spool(d, path);
	return spooled == TROUBLE_NONE ? trouble : spooled;
}

bool look_failed(struct fault *f, enum trouble t, const char *path)
{
	enum message_id id = M_WORLD_JOURNAL_UNREAD;

	if (trouble_short(t))
		return short_failed(f, t);
	if (t == TROUBLE_BROKEN)
		id = M_WORLD_JOURNAL_LOOK_BROKEN;
	else if (t == TROUBLE_OTHER_FILE)
		id = M_WORLD_JOURNAL_LOOK_OTHER;
	return fault_set(f, message_with(id, TEXT(path)));
}
