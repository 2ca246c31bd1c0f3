/*
 * class_folder.c - the folder of a class: opened, and rows kept in it
 *
 * class.sqlite holds nothing that cannot be made again, so it need not wait for
 * the disk at every commit.
 */
#include "evenhand/world/class_folder.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "class_parts.h"
#include "evenhand/base/text.h"
#include "evenhand/record/record.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/file.h"

/* "EvCl" */
enum { APPLICATION = 1165378412, BUSY_MS = 5000 };

#define CLASS_FILE "class.sqlite"

bool class_failed(const struct class_folder *c, struct fault *f)
{
	enum message_id id = M_CLASS_UNKEPT;

	switch (database_trouble(&c->base)) {
	case TROUBLE_BROKEN:
		id = M_CLASS_DAMAGED;
		break;
	case TROUBLE_BUSY:
		id = M_CLASS_BUSY;
		break;
	case TROUBLE_STARVED:
		return fault_set(f, message_of(M_CLASS_NO_MEMORY));
	case TROUBLE_NO_FILES:
		return fault_set(f, message_of(M_WORLD_FILE_NO_MORE));
	case TROUBLE_READ_ONLY:
	case TROUBLE_UNREACHABLE:
		return fault_set(
		    f, message_with(M_CLASS_UNREACHED, TEXT(c->folder)));
	default:
		break;
	}
	return fault_set(f, message_with(id, TEXT(c->path)));
}

bool class_sure(const struct class_folder *c, struct fault *f)
{
	return !database_starved(&c->base) || class_failed(c, f);
}

/* --- opening --- */

static bool is_folder(const char *path, struct fault *f)
{
	struct stat s;

	if (stat(path, &s) != 0)
		return fault_set(f,
		    message_with(
			errno == ENOENT ? M_CLASS_NO_FOLDER : M_CLASS_UNREACHED,
			TEXT(path)));
	return S_ISDIR(s.st_mode) ||
	    fault_set(f, message_with(M_CLASS_NOT_A_FOLDER, TEXT(path)));
}

bool class_may_be(const char *folder, struct fault *f)
{
	struct stat s;

	if (*folder == '\0')
		return fault_set(f, message_of(M_CLASS_NO_NAME));
	return (stat(folder, &s) != 0 && errno == ENOENT) ||
	    is_folder(folder, f);
}

/* Whether class.sqlite can be what its name says, or is not there yet. */
static bool base_may_be(const struct class_folder *c, struct fault *f)
{
	struct stat s;

	if (stat(c->path, &s) != 0)
		return true;
	if (!S_ISREG(s.st_mode))
		return fault_set(
		    f, message_with(M_CLASS_IN_THE_WAY, TEXT(c->path)));
	return access(c->path, R_OK) == 0 ||
	    fault_set(f, message_with(M_CLASS_CLOSED, TEXT(c->path)));
}

static struct class_folder *class_new(const char *folder, struct fault *f)
{
	struct class_folder *c;
	struct text name, path;

	if (!class_may_be(folder, f))
		return NULL;
	c = calloc(1, sizeof(*c));
	if (!c) {
		fault_set(f, message_of(M_CLASS_NO_MEMORY));
		return NULL;
	}
	name = text_in(c->folder, sizeof(c->folder));
	path = text_in(c->path, sizeof(c->path));
	text_add(&name, folder);
	text_format(&path, "%s/%s", folder, CLASS_FILE);
	if (path.cut)
		fault_set(f, message_of(M_WORLD_PATH_LONG));
	else if (base_may_be(c, f))
		return c;
	free(c);
	return NULL;
}

/* Whether it may be ours: empty, or marked so. */
static bool is_ours(struct class_folder *c, struct fault *f)
{
	struct database *d = &c->base;
	int64_t id = database_number(d, "PRAGMA application_id", -1);
	int64_t tables = database_number(
	    d, "SELECT count(*) FROM sqlite_schema", -1);

	if (id < 0 || tables < 0)
		return class_failed(c, f);
	if (id != APPLICATION && (id != 0 || tables > 0))
		return fault_set(
		    f, message_with(M_CLASS_OTHER_FILE, TEXT(c->path)));
	if (database_number(d, "PRAGMA user_version", 0) > rows_version())
		return fault_set(f, message_with(M_CLASS_NEWER, TEXT(c->path)));
	return true;
}

static bool set_up(struct class_folder *c, struct fault *f)
{
	char stamp[80];

	snprintf(
	    stamp, sizeof(stamp), "PRAGMA application_id = %d", APPLICATION);
	/* Who only looks again writes nothing. */
	if (database_number(&c->base, "PRAGMA application_id", APPLICATION) !=
		APPLICATION &&
	    !database_run(&c->base, stamp))
		return class_failed(c, f);
	return rows_make(&c->base) || class_failed(c, f);
}

/* Opens class.sqlite, which is made for its owner alone. */
static bool open_to_write(struct class_folder *c, struct fault *f)
{
	const int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
	mode_t before = umask(077);
	bool open = database_handle(&c->base, c->path, flags);

	if (open)
		sqlite3_busy_timeout(c->base.handle, BUSY_MS);
	open = open && !database_starved(&c->base) && is_ours(c, f) &&
	    database_run(&c->base, "PRAGMA journal_mode = WAL") &&
	    database_run(&c->base, "PRAGMA synchronous = NORMAL");
	umask(before);
	return open && set_up(c, f);
}

struct class_folder *class_open(const char *folder, struct fault *f)
{
	struct class_folder *c = class_new(folder, f);
	char journals[CLASS_PATH_BYTES];
	struct text t = text_in(journals, sizeof(journals));

	if (!c)
		return NULL;
	text_format(&t, "%s/%s", folder, CLASS_JOURNALS);
	f->message = message_of(M_NONE);
	if (!folder_make(folder, f)) {
		fault_at(f, folder, 0, 0);
	} else if (!folder_make(journals, f)) {
		fault_set(f, message_with(M_CLASS_UNREACHED, TEXT(c->folder)));
	} else if (open_to_write(c, f)) {
		return c;
	} else if (f->message.id == M_NONE) {
		class_failed(c, f);
	}
	class_close(c);
	return NULL;
}

/* What lies there, in memory: nothing of it can be or is to be written. */
static bool open_in_memory(struct class_folder *c, struct fault *f)
{
	struct database there = { 0 };
	sqlite3_backup *copy;
	bool good = database_handle(
	    &c->base, ":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);

	if (good && access(c->path, F_OK) == 0 &&
	    database_still(&there, c->path)) {
		copy = sqlite3_backup_init(
		    c->base.handle, "main", there.handle, "main");
		if (copy)
			sqlite3_backup_step(copy, -1);
		sqlite3_backup_finish(copy);
	}
	database_close(&there);
	return good && !database_starved(&c->base) && is_ours(c, f) &&
	    set_up(c, f);
}

/* Whether there is a class already, which may be written. */
static bool may_write(const struct class_folder *c)
{
	char journals[CLASS_PATH_BYTES];
	struct text t = text_in(journals, sizeof(journals));

	text_format(&t, "%s/%s", c->folder, CLASS_JOURNALS);
	if (access(c->folder, W_OK) != 0)
		return false;
	if (access(c->path, F_OK) == 0)
		return access(c->path, W_OK) == 0;
	return access(journals, F_OK) == 0;
}

struct class_folder *class_look(const char *folder, struct fault *f)
{
	struct class_folder *c = class_new(folder, f);
	bool open;

	if (!c)
		return NULL;
	f->message = message_of(M_NONE);
	open = is_folder(folder, f) &&
	    (may_write(c) ? open_to_write(c, f) : open_in_memory(c, f));
	if (open)
		return c;
	if (f->message.id == M_NONE)
		class_failed(c, f);
	class_close(c);
	return NULL;
}

void class_close(struct class_folder *c)
{
	if (!c)
		return;
	database_close(&c->base);
	free(c);
}

bool class_journal(
    const struct class_folder *c, const char *id, char *path, size_t size)
{
	struct text t = text_in(path, size);

	if (!record_id_good(id))
		return false;
	text_format(
	    &t, "%s/%s/%s%s", c->folder, CLASS_JOURNALS, id, CLASS_ENDING);
	return !t.cut;
}

/* --- rows --- */

void class_begin(struct class_folder *c)
{
	if (!c->under_way)
		c->under_way = database_run(&c->base, "BEGIN IMMEDIATE");
}

void class_end(struct class_folder *c)
{
	char names[CLASS_PATH_BYTES];
	struct text t = text_in(names, sizeof(names));

	/* Before any file is remembered as gathered; all of them at once. */
	text_format(&t, "%s/%s/.", c->folder, CLASS_JOURNALS);
	if (c->made)
		folder_to_disk(names);
	c->made = false;
	if (c->under_way && !database_run(&c->base, "COMMIT"))
		database_run(&c->base, "ROLLBACK");
	c->under_way = false;
}

/* Who a record says it is; no record says nothing. */
static void name_of(struct class_name *n, const struct record *r)
{
	struct text t;

	*n = (struct class_name) { "", -1, -1 };
	if (!r)
		return;
	t = text_in(n->initials, sizeof(n->initials));
	text_add(&t, r->initials);
	n->named = r->given.utc;
	n->given = moment_practice_day(r->given);
}

bool class_keep(struct class_folder *c, const char *id, const struct record *r,
    struct fault *f)
{
	char path[CLASS_PATH_BYTES];
	struct class_stamp stamp;
	struct class_name name;
	struct student s = { 0 };
	int today = moment_practice_day(clock_now());

	if (!class_journal(c, id, path, sizeof(path)))
		return fault_set(f, message_with(M_CLASS_NO_STUDENT, TEXT(id)));
	class_stamp_of(path, &stamp);
	if (!class_take(c, id, today, &s, f))
		return false;
	name_of(&name, r);
	return (rows_keep(&c->base, &s, &stamp) &&
		   rows_name(&c->base, id, &name, today)) ||
	    class_failed(c, f);
}

bool class_merge(struct class_folder *c, const struct record *r,
    const struct join_asked *asked, struct gathered *news, struct fault *f)
{
	char path[CLASS_PATH_BYTES], home[RECORD_ID_MAX];

	database_fed(&c->base);
	if (!class_place(c, r, asked, home, f))
		return false;
	if (!class_journal(c, home, path, sizeof(path)))
		return fault_set(f, message_of(M_WORLD_PATH_LONG));
	c->made |= access(path, F_OK) != 0;
	return gather_into(path,
		   &(struct gather_what) { r, GATHER_CLASS, *asked }, news,
		   f) &&
	    class_keep(c, home, r, f);
}
