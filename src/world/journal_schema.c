/*
 * journal_schema.c - the tables of the journal, and how they came to be
 *
 * The version stands in the file (PRAGMA user_version), and so does a mark
 * that it is a journal of ours at all (application_id).  A step leads from
 * each version to the next and is never changed once it is out; an older
 * journal walks up all of them, after a copy was made.
 *
 * about.student is the id of the student; where several were said to be one,
 * all of them in order, with + between (record/join.h).
 *
 * days holds the roll-up of one practice day as a JSON list with an entry for
 * each stage, unit, kind of block and, from version 2 on, instrument.  Behind
 * it stand the bows that a microphone listened to, and those of them in which
 * every top was heard.  Older lists end before these.  One row a day is what
 * lets ten years load in milliseconds; in SQL its entries come apart with
 * json_each.
 * sittings.seen is such a list too: the stages of the sitting in their order,
 * with 1 for a recap.
 */
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "journal_database.h"

/* "EvHd" */
#define APPLICATION_ID 1165379684

static const char *const steps[] = {
	/* 0 to 1 */
	"CREATE TABLE about ("
	"  one INTEGER PRIMARY KEY CHECK (one = 1),"
	"  student TEXT NOT NULL,"
	"  origin TEXT NOT NULL"
	") STRICT;"
	"CREATE TABLE origins ("
	"  key INTEGER PRIMARY KEY,"
	"  id TEXT NOT NULL UNIQUE,"
	"  last INTEGER NOT NULL" /* highest of its sequence */
	") STRICT;"
	"CREATE TABLE routines ("
	"  key INTEGER PRIMARY KEY,"
	"  fingerprint TEXT NOT NULL UNIQUE,"
	"  name TEXT NOT NULL,"
	"  edition INTEGER NOT NULL,"
	"  text TEXT NOT NULL"
	") STRICT;"
	"CREATE TABLE sittings ("
	"  key INTEGER PRIMARY KEY,"
	"  origin INTEGER NOT NULL REFERENCES origins(key),"
	"  sequence INTEGER NOT NULL,"
	"  began_utc INTEGER NOT NULL,"
	"  utc_offset INTEGER NOT NULL," /* seconds east */
	"  day INTEGER NOT NULL,"	 /* practice day, from 1970-01-01 */
	"  routine INTEGER NOT NULL REFERENCES routines(key),"
	"  work_stage TEXT NOT NULL,"
	"  marking INTEGER NOT NULL," /* 0 turn, 1 round */
	"  cap_ms INTEGER NOT NULL,"
	"  planned_ms INTEGER NOT NULL,"
	"  rate INTEGER NOT NULL,"
	"  device TEXT NOT NULL,"
	"  ended INTEGER NOT NULL DEFAULT 0," /* 0: cut off */
	"  length_ms INTEGER NOT NULL DEFAULT 0,"
	"  ended_utc INTEGER,"
	"  ended_offset INTEGER,"
	"  ended_sequence INTEGER NOT NULL DEFAULT 0,"
	"  seen TEXT NOT NULL DEFAULT '[]',"
	"  UNIQUE (origin, sequence)"
	") STRICT;"
	"CREATE INDEX sittings_of_day ON sittings (day);"
	"CREATE TABLE turns ("
	"  key INTEGER PRIMARY KEY,"
	"  origin INTEGER NOT NULL REFERENCES origins(key),"
	"  sequence INTEGER NOT NULL,"
	"  sitting INTEGER NOT NULL REFERENCES sittings(key),"
	"  number INTEGER NOT NULL," /* in the sitting, from 0 */
	"  utc INTEGER NOT NULL,"
	"  utc_offset INTEGER NOT NULL,"
	"  day INTEGER NOT NULL,"
	"  kind INTEGER NOT NULL," /* 0 air, 1 recap, 2 work */
	"  stage TEXT NOT NULL,"
	"  unit TEXT NOT NULL,"
	"  round INTEGER NOT NULL,"
	"  pulses INTEGER NOT NULL,"
	"  bows_asked INTEGER NOT NULL,"
	"  bows_done INTEGER NOT NULL,"
	"  first_go INTEGER NOT NULL,"
	"  resets INTEGER NOT NULL,"
	"  dropouts INTEGER NOT NULL,"
	"  start_ms INTEGER NOT NULL,"
	"  slide_um INTEGER NOT NULL,"
	"  mark INTEGER NOT NULL DEFAULT 0," /* 0 none, 1 clean, 2 shaky */
	"  mark_ms INTEGER,"
	"  mark_sequence INTEGER NOT NULL DEFAULT 0,"
	"  UNIQUE (sitting, number),"
	"  UNIQUE (origin, sequence)"
	") STRICT;"
	"CREATE INDEX turns_of_day ON turns (day);"
	/*
	 * What the microphone heard of a turn, by name; among it "sequence",
	 * the number its row has in that of its origin.
	 */
	"CREATE TABLE measures ("
	"  turn INTEGER NOT NULL REFERENCES turns(key),"
	"  method INTEGER NOT NULL," /* version of the method */
	"  name TEXT NOT NULL,"
	"  value REAL NOT NULL,"
	"  PRIMARY KEY (turn, method, name)"
	") STRICT, WITHOUT ROWID;"
	"CREATE TABLE shares ("
	"  sitting INTEGER NOT NULL REFERENCES sittings(key),"
	"  stage TEXT NOT NULL,"
	"  unit TEXT NOT NULL,"
	"  planned INTEGER NOT NULL,"
	"  dropped INTEGER NOT NULL,"
	"  played INTEGER NOT NULL DEFAULT 0,"
	"  PRIMARY KEY (sitting, stage, unit)"
	") STRICT, WITHOUT ROWID;"
	"CREATE TABLE notes ("
	"  key INTEGER PRIMARY KEY,"
	"  origin INTEGER NOT NULL REFERENCES origins(key),"
	"  sequence INTEGER NOT NULL,"
	"  sitting INTEGER REFERENCES sittings(key),"
	"  utc INTEGER NOT NULL,"
	"  utc_offset INTEGER NOT NULL,"
	"  day INTEGER NOT NULL,"
	"  kind INTEGER NOT NULL," /* 1 pain, 2 skin, 3 sore, 4 question */
	"  finger INTEGER NOT NULL,"
	"  words TEXT NOT NULL,"
	"  UNIQUE (origin, sequence)"
	") STRICT;"
	"CREATE TABLE days ("
	"  day INTEGER PRIMARY KEY,"
	"  entries INTEGER NOT NULL," /* of the list */
	"  tallies TEXT NOT NULL"
	") STRICT;",
	/* 1 to 2: an id is of an instrument; "" is not known, and any */
	"ALTER TABLE sittings ADD COLUMN instrument TEXT NOT NULL DEFAULT '';"
	"ALTER TABLE sittings ADD COLUMN asked_stage TEXT NOT NULL DEFAULT '';",
};

const struct schema journal_schema = {
	.versions = sizeof(steps) / sizeof(steps[0]),
	.step = steps,
};

enum trouble schema_check(struct database *d, const struct schema *s)
{
	int64_t version = database_number(d, "PRAGMA user_version", -1);
	int64_t id = database_number(d, "PRAGMA application_id", -1);
	int64_t tables = database_number(
	    d, "SELECT count(*) FROM sqlite_schema", -1);

	if (version < 0 || id < 0 || tables < 0)
		return database_trouble(d);
	if (id != APPLICATION_ID && (tables > 0 || id != 0 || version != 0))
		return TROUBLE_OTHER_FILE;
	return version > s->versions ? TROUBLE_NEWER : TROUBLE_NONE;
}

/* Makes a whole copy of the journal at to, readable by its owner only. */
static bool copy_to(struct database *d, const char *to)
{
	struct database copy = { 0 };
	sqlite3_backup *backup = NULL;
	int file = open(to, O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
	bool good = file >= 0;

	if (file >= 0)
		close(file);
	good = good && sqlite3_open(to, &copy.handle) == SQLITE_OK;
	if (good)
		backup = sqlite3_backup_init(
		    copy.handle, "main", d->handle, "main");
	good = backup != NULL && sqlite3_backup_step(backup, -1) == SQLITE_DONE;
	good = sqlite3_backup_finish(backup) == SQLITE_OK && good;
	good = sqlite3_close(copy.handle) == SQLITE_OK && good;
	return good;
}

/*
 * The copy gets its name only when it is whole; an earlier whole copy of the
 * same version stays, because it is the older one.
 */
static bool keep_copy(struct database *d, const char *path, int version)
{
	char name[4200], part[4216];

	snprintf(name, sizeof(name), "%s.version-%d", path, version);
	snprintf(part, sizeof(part), "%s.part", name);
	if (access(name, F_OK) == 0)
		return true;
	return copy_to(d, part) && rename(part, name) == 0;
}

static bool take_step(struct database *d, const char *sql, int version)
{
	char stamp[80];

	snprintf(stamp, sizeof(stamp),
	    "PRAGMA application_id = %d; PRAGMA user_version = %d",
	    APPLICATION_ID, version);
	return database_run(d, sql) && database_run(d, stamp);
}

enum trouble schema_bring(
    struct database *d, const char *path, const struct schema *s)
{
	int version = (int)database_number(d, "PRAGMA user_version", -1);
	enum trouble trouble;

	if (version < 0)
		return database_trouble(d);
	if (version == s->versions)
		return TROUBLE_NONE;
	if (version > 0 && path != NULL && !keep_copy(d, path, version))
		return TROUBLE_FULL;
	if (!database_begin(d))
		return database_trouble(d);
	/* Somebody else may have been here before the lock was ours. */
	version = (int)database_number(d, "PRAGMA user_version", 0);
	for (; version < s->versions; version++)
		if (!take_step(d, s->step[version], version + 1)) {
			trouble = database_trouble(d);
			database_rollback(d);
			return trouble;
		}
	if (database_commit(d))
		return TROUBLE_NONE;
	trouble = database_trouble(d);
	database_rollback(d);
	return trouble;
}
