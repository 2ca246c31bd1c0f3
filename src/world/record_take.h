/*
 * record_take.h - what the parts of taking a record out of a journal share
 */
#ifndef EVENHAND_WORLD_RECORD_TAKE_H
#define EVENHAND_WORLD_RECORD_TAKE_H

#include "evenhand/world/record_file.h"
#include "record_query.h"

/* One taking. */
struct taking {
	struct database *d;
	struct record *r;
	struct record_left *left;
	int since;
	int64_t *computer; /* keys of origins, as r->computer */
	int64_t *routine;  /* keys of routines, in their order */
	struct query turns, shares, measures, notes;
	bool no_memory;
};

/* Memory for so many and one more, all zero; NULL is remembered. */
void *take_room(struct taking *k, int number, size_t size);

/* A text of the journal, kept. */
const char *take_text(struct taking *k, const struct query *q, int column);

/* The questions about one sitting are made ready, and forgotten. */
void take_prepare(struct taking *k);
bool take_prepared_done(struct taking *k);

/* The columns of a sitting, for a query that names sittings s. */
#define TAKE_SITTING \
	"s.key, origin, sequence, began_utc, utc_offset, day, routine, " \
	"work_stage, asked_stage, instrument, marking, cap_ms, planned_ms, " \
	"ended, length_ms, coalesce(ended_utc, 0), coalesce(ended_offset, " \
	"0), " \
	"ended_sequence, " \
	"(SELECT count(*) FROM shares WHERE sitting = s.key), " \
	"(SELECT count(*) FROM turns WHERE sitting = s.key), " \
	"(SELECT count(*) FROM (SELECT DISTINCT turn, method FROM measures " \
	"WHERE turn IN (SELECT key FROM turns WHERE sitting = s.key)))"

/* The columns of a note. */
#define TAKE_NOTE "origin, sequence, utc, utc_offset, day, kind, finger, words"

/*
 * The sitting of a row, hung at the end with all that belongs to it; one that
 * no record can hold is counted instead.
 */
void take_sitting(
    struct taking *k, const struct query *q, struct record_sitting ***end);

/* The notes of a query, bound to a number. */
void take_notes(
    struct taking *k, struct query *q, int64_t key, struct record_note **end);

#endif
