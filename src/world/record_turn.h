/*
 * record_turn.h - a turn as a journal keeps it, read as one of a record
 */
#ifndef EVENHAND_WORLD_RECORD_TURN_H
#define EVENHAND_WORLD_RECORD_TURN_H

#include "evenhand/record/record.h"
#include "record_query.h"

/* The columns that turn_read reads; what follows them is at TURN_BEHIND. */
#define TURN_COLUMNS \
	"number, sequence, utc, utc_offset, kind, stage, unit, round, " \
	"pulses, bows_asked, bows_done, first_go, resets, dropouts, " \
	"start_ms, slide_um, mark, coalesce(mark_ms, 0), mark_sequence"
enum { TURN_BEHIND = 19 };

/*
 * The turn of a row into an all-zero one.  Its texts are kept in an arena;
 * false when there is no memory for them.
 */
bool turn_read(
    const struct query *q, struct record_turn *t, struct arena *arena);

#endif
