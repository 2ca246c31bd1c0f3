/*
 * gather_order.c - after a merge: keys in the order of time, roll-ups anew
 *
 * Whoever reads a journal takes its keys for the order in which things
 * happened.  So they are given out again where a record brought something that
 * lies between.  On one computer the order is that of its numbers, whatever its
 * clock did; between computers it is that of time, where a clock that was set
 * back counts as one that stood still.  It depends on nothing but what is
 * there, so it is the same whatever came first.
 *
 * Keys go through negative numbers, so that no two are ever the same.  Foreign
 * keys are not looked after meanwhile (gather.c).
 */
#include <stdlib.h>

#include "gather_parts.h"

/* Old and new keys of a table where they differ. */
#define NEW_KEYS(ranked) \
	"CREATE TEMP TABLE IF NOT EXISTS moved " \
	"  (old INTEGER PRIMARY KEY, new INTEGER NOT NULL);" \
	"DELETE FROM moved;" \
	"INSERT INTO moved SELECT key, rank FROM (" ranked \
	") WHERE key <> rank;"

#define SITTINGS_RANKED \
	"SELECT s.key, row_number() OVER (ORDER BY time, sequence, " \
	"work_stage, planned_ms, cap_ms, id) AS rank FROM (SELECT *, " \
	"max(began_utc) OVER (PARTITION BY origin ORDER BY sequence) AS time " \
	"FROM sittings) s JOIN origins o ON o.key = s.origin"

#define TURNS_RANKED \
	"SELECT key, row_number() OVER (ORDER BY sitting, number) AS rank " \
	"FROM turns"

#define NOTES_RANKED \
	"SELECT n.key, row_number() OVER (ORDER BY time, sequence, kind, " \
	"words, id) AS rank FROM (SELECT *, max(utc) OVER (PARTITION BY " \
	"origin ORDER BY sequence) AS time FROM notes) n " \
	"JOIN origins o ON o.key = n.origin"

/* Routines come in the order in which they were first practised. */
#define ROUTINES_RANKED \
	"SELECT r.key, row_number() OVER (ORDER BY first, r.key) AS rank " \
	"FROM " \
	"routines r LEFT JOIN (SELECT routine, min(key) AS first FROM " \
	"sittings GROUP BY routine) f ON f.routine = r.key"

/* Moves a column that holds keys. */
#define MOVE(table, column) \
	"UPDATE " table " SET " column " = -(SELECT new FROM moved " \
	"WHERE old = " column ") WHERE " column " IN (SELECT old FROM moved);" \
	"UPDATE " table " SET " column " = -" column " WHERE " column " < 0;"

static const char move_sittings[] = MOVE("sittings", "key")
    MOVE("turns", "sitting") MOVE("shares", "sitting") MOVE("notes", "sitting");
static const char move_turns[] = MOVE("turns", "key") MOVE("measures", "turn");
static const char move_routines[] = MOVE("routines", "key")
    MOVE("sittings", "routine");
static const char move_notes[] = MOVE("notes", "key");

static const char find_sittings[] = NEW_KEYS(SITTINGS_RANKED);
static const char find_turns[] = NEW_KEYS(TURNS_RANKED);
static const char find_routines[] = NEW_KEYS(ROUTINES_RANKED);
static const char find_notes[] = NEW_KEYS(NOTES_RANKED);

static bool in_order(
    struct gathering *g, const char *find, const char *move, bool *moved)
{
	int64_t count;

	if (!database_run(g->d, find))
		return false;
	count = database_number(g->d, "SELECT count(*) FROM moved", -1);
	*moved = count > 0;
	return count == 0 || (count > 0 && database_run(g->d, move));
}

bool gather_day(struct gathering *g, int day)
{
	if (g->days > 0 && g->day[g->days - 1] == day)
		return true;
	if (g->days == g->day_room) {
		int room = g->day_room * 2 + 64;
		int *more = realloc(g->day, (size_t)room * sizeof(*g->day));

		g->no_memory |= more == NULL;
		if (more == NULL)
			return false;
		g->day = more;
		g->day_room = room;
	}
	g->day[g->days++] = day;
	return true;
}

/* Days on which several computers played: what was first may have changed. */
static bool add_mixed_days(struct gathering *g)
{
	struct query q = query_of(g->d,
	    "SELECT day FROM turns GROUP BY day "
	    "HAVING count(DISTINCT origin) > 1");
	bool good = true;

	while (good && query_next(&q))
		good = gather_day(g, query_int(&q, 0));
	return query_done(&q) && good;
}

static int by_number(const void *a, const void *b)
{
	const int *x = a, *y = b;

	return (*x > *y) - (*x < *y);
}

static bool renew_days(struct gathering *g)
{
	if (g->days > 1)
		qsort(g->day, (size_t)g->days, sizeof(*g->day), by_number);
	for (int i = 0; i < g->days; i++)
		if ((i == 0 || g->day[i] != g->day[i - 1]) &&
		    !database_renew(g->d, RENEW_DAY, g->day[i]))
			return false;
	return true;
}

bool gather_order(struct gathering *g)
{
	bool sittings, turns, other;

	return in_order(g, find_sittings, move_sittings, &sittings) &&
	    in_order(g, find_turns, move_turns, &turns) &&
	    in_order(g, find_routines, move_routines, &other) &&
	    in_order(g, find_notes, move_notes, &other) &&
	    ((!sittings && !turns) || add_mixed_days(g)) && renew_days(g);
}
