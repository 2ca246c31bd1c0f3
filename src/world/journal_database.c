/*
 * journal_database.c - opening the journal's database, in every weather
 *
 * To write: WAL with full synchronisation, so that each commit is on the disk
 * and readers never wait.  WAL needs memory shared by all who have the file
 * open, which a network folder cannot give; there the older mode with a
 * rollback file does it.
 *
 * A new journal has nothing to lose yet: it is made without waiting for the
 * disk, and then its file is brought there at once.
 */
#include "journal_database.h"

#include <errno.h>
#include <fcntl.h>
#include <libgen.h>
#include <pthread.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#ifdef __linux__
#include <sys/vfs.h>
#endif

#include "random.h"
#include "shortage.h"

enum { BUSY_MS = 250, PATH_BYTES = 4200 };

enum trouble trouble_of_errno(int error)
{
	switch (error) {
	case ENOSPC:
	case EDQUOT:
	case EFBIG:
		return TROUBLE_FULL;
	case EACCES:
	case EPERM:
	case EROFS:
		return TROUBLE_READ_ONLY;
	case ENOMEM:
		return TROUBLE_STARVED;
	case EMFILE:
	case ENFILE:
		return TROUBLE_NO_FILES;
	default:
		return TROUBLE_UNREACHABLE;
	}
}

enum trouble database_trouble(const struct database *d)
{
	int code = sqlite3_extended_errcode(d->handle);

	if (database_starved(d))
		return trouble_of_errno(shortage_error());
	if (code == SQLITE_READONLY_DBMOVED)
		return TROUBLE_UNREACHABLE;
	if (code == SQLITE_IOERR_SHORT_READ)
		return TROUBLE_BROKEN;
	if (code == SQLITE_IOERR_WRITE) /* a quota or a limit says it so */
		return TROUBLE_FULL;
	switch (code & 0xff) {
	case SQLITE_NOMEM:
		return TROUBLE_STARVED;
	case SQLITE_BUSY:
	case SQLITE_LOCKED:
		return TROUBLE_BUSY;
	case SQLITE_FULL:
		return TROUBLE_FULL;
	case SQLITE_READONLY:
	case SQLITE_PERM:
		return TROUBLE_READ_ONLY;
	case SQLITE_CORRUPT:
	case SQLITE_NOTADB:
	case SQLITE_ERROR: /* a table is missing or not as we made it */
	case SQLITE_MISMATCH:
		return TROUBLE_BROKEN;
	default:
		return trouble_of_errno(sqlite3_system_errno(d->handle));
	}
}

bool database_starved(const struct database *d)
{
	return shortage_count() != d->shortages;
}

void database_fed(struct database *d)
{
	d->shortages = shortage_count();
}

bool database_run(struct database *d, const char *sql)
{
	return sqlite3_exec(d->handle, sql, NULL, NULL, NULL) == SQLITE_OK;
}

int64_t database_number(struct database *d, const char *sql, int64_t otherwise)
{
	sqlite3_stmt *st = NULL;
	int64_t number = otherwise;

	sqlite3_prepare_v2(d->handle, sql, -1, &st, NULL);
	if (st != NULL && sqlite3_step(st) == SQLITE_ROW)
		number = sqlite3_column_int64(st, 0);
	sqlite3_finalize(st);
	return number;
}

void database_text(struct database *d, const char *sql, char *buffer, int size)
{
	sqlite3_stmt *st = NULL;
	const char *text = NULL;

	sqlite3_prepare_v2(d->handle, sql, -1, &st, NULL);
	if (st != NULL && sqlite3_step(st) == SQLITE_ROW)
		text = (const char *)sqlite3_column_text(st, 0);
	snprintf(buffer, (size_t)size, "%s", text ? text : "");
	sqlite3_finalize(st);
}

bool database_moved(struct database *d)
{
	int moved = 0;

	return sqlite3_file_control(d->handle, "main", SQLITE_FCNTL_HAS_MOVED,
		   &moved) == SQLITE_OK &&
	    moved != 0;
}

void database_close(struct database *d)
{
	for (int s = 0; s < STATEMENTS; s++)
		sqlite3_finalize(d->statement[s]);
	sqlite3_close(d->handle);
	*d = (struct database) { 0 };
}

enum trouble database_give_up(struct database *d, enum trouble trouble)
{
	database_close(d);
	return trouble;
}

bool trouble_short(enum trouble t)
{
	return t == TROUBLE_STARVED || t == TROUBLE_NO_FILES;
}

bool short_failed(struct fault *f, enum trouble t)
{
	return fault_set(f,
	    message_of(t == TROUBLE_NO_FILES ? M_WORLD_FILE_NO_MORE
					     : M_WORLD_JOURNAL_NO_MEMORY));
}

/* SQLite tells its log of every piece of memory that it does not get. */
static void hear(void *context, int code, const char *words)
{
	(void)context;
	(void)words;
	if ((code & 0xff) == SQLITE_NOMEM)
		shortage_note(ENOMEM);
}

/* As SQLite itself opens a file; it tries once more in another way. */
static int open_file(const char *path, int flags, int rights)
{
	int file = open(path, flags, rights);

	if (file < 0)
		shortage_note(errno);
	return file;
}

static void listen_for_shortages(void)
{
	sqlite3_vfs *files;

	sqlite3_config(SQLITE_CONFIG_LOG, hear, NULL);
	files = sqlite3_vfs_find(NULL);
	if (files != NULL && files->iVersion >= 3)
		files->xSetSystemCall(
		    files, "open", (sqlite3_syscall_ptr)open_file);
}

bool database_handle(struct database *d, const char *path, int flags)
{
	static pthread_once_t listening = PTHREAD_ONCE_INIT;

	*d = (struct database) { 0 };
	pthread_once(&listening, listen_for_shortages);
	database_fed(d);
	if (sqlite3_open_v2(path, &d->handle, flags | SQLITE_OPEN_NOMUTEX,
		NULL) != SQLITE_OK)
		return false;
	sqlite3_extended_result_codes(d->handle, 1);
	sqlite3_busy_timeout(d->handle, BUSY_MS);
	/* Nothing that a file brings along is run. */
	sqlite3_db_config(d->handle, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
	sqlite3_db_config(d->handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
	return true;
}

/* Makes the file with its owner's rights only; 0, or why not. */
static int make_file(const char *path, bool *made)
{
	int file = open(path, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);

	*made = file >= 0;
	if (file >= 0)
		close(file);
	return file >= 0 || errno == EEXIST ? 0 : errno;
}

bool database_on_network(const char *path)
{
#ifdef __linux__
	static const unsigned long kinds[] = {
		0x6969,	    /* NFS */
		0x517b,	    /* SMB */
		0xfe534d42, /* SMB 2 */
		0xff534d42, /* CIFS */
		0x5346414f, /* AFS */
		0x00c36400, /* Ceph */
		0x01021997, /* 9P */
		0x65735546, /* FUSE: sshfs and others */
	};
	struct statfs s;

	if (statfs(path, &s) != 0)
		return false;
	for (size_t i = 0; i < sizeof(kinds) / sizeof(kinds[0]); i++)
		if (((unsigned long)s.f_type & 0xffffffffUL) == kinds[i])
			return true;
#else
	(void)path;
#endif
	return false;
}

/* From now on every commit waits until it is on the disk. */
static bool commit_safely(struct database *d, bool slow)
{
	return database_run(d,
	    slow ? "PRAGMA synchronous = EXTRA" : "PRAGMA synchronous = FULL");
}

/*
 * Brings the file itself to the disk.  What stands in its WAL goes there with
 * the first commit, the names in the folder too.
 */
static bool bring_to_disk(struct database *d)
{
	sqlite3_file *file = NULL;

	/* SQLite's own descriptor: to close another would lose its locks. */
	return sqlite3_file_control(d->handle, "main",
		   SQLITE_FCNTL_FILE_POINTER, (void *)&file) == SQLITE_OK &&
	    file != NULL && file->pMethods != NULL &&
	    file->pMethods->xSync(file, SQLITE_SYNC_FULL) == SQLITE_OK;
}

/* Chooses how a commit gets to the disk; false on an error. */
static bool set_modes(struct database *d, const char *path, bool *slow)
{
	char mode[16];

	database_text(d,
	    database_on_network(path) ? "PRAGMA journal_mode = DELETE"
				      : "PRAGMA journal_mode = WAL",
	    mode, sizeof(mode));
	if (*mode == '\0')
		return false;
	*slow = strcmp(mode, "wal") != 0;
	return database_run(d, "PRAGMA foreign_keys = ON");
}

bool database_name(struct database *d)
{
	char student[ORIGIN_BYTES], origin[ORIGIN_BYTES], sql[200];

	if (database_number(d, "SELECT count(*) FROM about", 0) == 1)
		return true;
	random_id(student);
	random_id(origin);
	snprintf(sql, sizeof(sql),
	    "INSERT INTO about VALUES (1, '%s', '%s') ON CONFLICT DO NOTHING",
	    student, origin);
	return database_run(d, sql);
}

static enum trouble set_up(
    struct database *d, const char *path, bool made, bool *slow)
{
	enum trouble trouble = schema_check(d, &journal_schema);

	if (trouble != TROUBLE_NONE)
		return trouble;
	if (sqlite3_db_readonly(d->handle, "main") == 1)
		return database_starved(d) ? database_trouble(d)
					   : TROUBLE_READ_ONLY;
	if (made && !database_run(d, "PRAGMA synchronous = OFF"))
		return database_trouble(d);
	if (!set_modes(d, path, slow) || (!made && !commit_safely(d, *slow)))
		return database_trouble(d);
	trouble = schema_bring(d, path, &journal_schema);
	if (trouble != TROUBLE_NONE)
		return trouble;
	if (!database_name(d) ||
	    (made && !(commit_safely(d, *slow) && bring_to_disk(d))))
		return database_trouble(d);
	return TROUBLE_NONE;
}

/*
 * Whether file and folder may be written, helper files of WAL and all.  SQLite
 * is not asked: it would make helper files as closed as the journal is.
 */
static bool closed(const char *path)
{
	char copy[PATH_BYTES];

	snprintf(copy, sizeof(copy), "%s", path);
	return access(path, R_OK | W_OK) != 0 ||
	    access(dirname(copy), W_OK) != 0;
}

enum trouble database_open(struct database *d, const char *path, bool *slow)
{
	bool made;
	int error = make_file(path, &made);
	enum trouble trouble;

	*d = (struct database) { 0 };
	*slow = false;
	if (error != 0)
		return trouble_of_errno(error);
	if (closed(path))
		return trouble_of_errno(errno);
	if (database_handle(d, path, SQLITE_OPEN_READWRITE))
		trouble = set_up(d, path, made, slow);
	else
		trouble = database_trouble(d);
	return trouble == TROUBLE_NONE ? trouble : database_give_up(d, trouble);
}
