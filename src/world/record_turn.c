/*
 * record_turn.c - a turn as a journal keeps it, read as one of a record
 */
#include "record_turn.h"

#include <string.h>

static const char *keep(const struct query *q, int column, struct arena *arena)
{
	const char *s = query_text(q, column);

	return arena_text(arena, s, strlen(s));
}

static void read_mark(const struct query *q, struct record_turn *t)
{
	int64_t row = query_whole(q, 18);

	/* What was marked before a turn took its place is no mark of it. */
	if (row <= t->row)
		return;
	t->mark = (enum mark)query_within(q, 16, MARK_NONE, MARK_SHAKY);
	t->mark_ms = query_int(q, 17);
	t->mark_row = row;
}

bool turn_read(
    const struct query *q, struct record_turn *t, struct arena *arena)
{
	t->number = query_int(q, 0);
	t->row = query_whole(q, 1);
	t->ended.utc = query_whole(q, 2);
	t->ended.offset = query_int(q, 3);
	t->kind = (enum block_kind)query_within(q, 4, BLOCK_AIR, BLOCK_WORK);
	t->stage = keep(q, 5, arena);
	t->unit = keep(q, 6, arena);
	t->round = query_int(q, 7);
	t->pulses = query_int(q, 8);
	t->bows_asked = query_int(q, 9);
	t->bows_done = query_int(q, 10);
	t->first_go = query_int(q, 11) != 0;
	t->resets = query_int(q, 12);
	t->dropouts = query_int(q, 13);
	t->start_ms = query_int(q, 14);
	t->slide_um = query_whole(q, 15);
	read_mark(q, t);
	return t->stage != NULL && t->unit != NULL;
}
