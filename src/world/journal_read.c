/*
 * journal_read.c - the history out of the database
 *
 * Each part is counted, given its memory in one piece, and filled.  What only
 * the last weeks need (turns, shares, questions) is read from a day on, and
 * the last sitting with turns always.
 */
#include "journal_read.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "shortage.h"

/*
 * ?1 is the last practice day that is too old.  An order by +key is sorted
 * afterwards: by key alone SQLite would walk through all turns there are.
 */
#define RECENT_TURNS \
	"FROM turns WHERE day > ?1 " \
	"OR sitting = (SELECT max(sitting) FROM turns)"
/*
 * Of so many days up to the last one before now; ?2 less than 0: of all.  One
 * comparison alone, so that SQLite begins at that day.
 */
#define RECENT_DAYS \
	"FROM days WHERE day > CASE WHEN ?2 < 0 THEN -1e19 ELSE " \
	"(SELECT coalesce(max(day), ?1) FROM days WHERE day <= ?1) - ?2 END"
#define RECENT_SHARES \
	"FROM shares WHERE sitting IN (SELECT key FROM sittings WHERE " \
	"day > ?1 OR key = (SELECT max(sitting) FROM turns))"

#define BOWS(name) SQL_HEARD_BOWS("turns.key", name)
#define VALUE(name) SQL_HEARD("turns.key", name)
#define HEARD_OF_TURN \
	BOWS("bows_listened") \
	", " BOWS("bows_full") ", " VALUE("travel_share") ", " VALUE( \
	    "rate_hz") ", " VALUE("width_cents")

enum { HEARD_BOWS_MAX = 1000, MEASURE_MOST = 1000000 };

static sqlite3_stmt *prepare(struct database *d, const char *sql, int too_old)
{
	sqlite3_stmt *st = NULL;
	int code = sqlite3_prepare_v2(d->handle, sql, -1, &st, NULL);

	if (code != SQLITE_OK)
		return NULL;
	if (sqlite3_bind_parameter_count(st) > 0)
		sqlite3_bind_int(st, 1, too_old);
	return st;
}

/* Ends a query; whether all that it gave was good. */
static bool ended(sqlite3_stmt *st)
{
	return sqlite3_finalize(st) == SQLITE_OK;
}

/* The number a query gives, which ends with it; -1 when it gives none. */
static int number_of(sqlite3_stmt *st)
{
	int number = -1;

	if (st != NULL && sqlite3_step(st) == SQLITE_ROW)
		number = sqlite3_column_int(st, 0);
	return ended(st) ? number : -1;
}

/* How many of a kind there are; -1 when they cannot be counted. */
static int count(struct database *d, const char *sql, int too_old)
{
	return number_of(prepare(d, sql, too_old));
}

/* Memory for so many; one more than none, so that it is never NULL. */
static void *room(
    struct database *d, struct history *h, int number, size_t size)
{
	void *taken = NULL;

	if (number >= 0) {
		taken = arena_take(&h->arena, ((size_t)number + 1) * size);
		d->no_memory |= taken == NULL;
	}
	return taken;
}

static void text_of(sqlite3_stmt *st, int column, char *to, size_t size)
{
	const char *text = (const char *)sqlite3_column_text(st, column);
	size_t length;

	if (text == NULL)
		text = "";
	length = strlen(text);
	if (length >= size)
		length = size - 1;
	memcpy(to, text, length);
	to[length] = '\0';
}

/* A whole number of the file in low to high; others count as low. */
static int within(sqlite3_stmt *st, int column, int low, int high)
{
	int64_t number = sqlite3_column_int64(st, column);

	return number < low || number > high ? low : (int)number;
}

/* Seconds of a time, which may be any number: some 30 000 years are enough. */
static int64_t time_of(sqlite3_stmt *st, int column)
{
	static const int64_t most = INT64_C(1000000000000);
	int64_t utc = sqlite3_column_int64(st, column); /* NULL is 0 */

	if (utc < -most)
		return -most;
	return utc < most ? utc : most;
}

static bool fill_sitting(struct past_sitting *s, sqlite3_stmt *st)
{
	const char *seen = (const char *)sqlite3_column_text(st, 11);

	s->key = sqlite3_column_int64(st, 0);
	s->day = sqlite3_column_int(st, 1);
	s->began.utc = time_of(st, 2);
	s->began.offset = sqlite3_column_int(st, 3);
	s->ended_utc = time_of(st, 4);
	s->length_ms = sqlite3_column_int(st, 5);
	s->cap_ms = sqlite3_column_int(st, 6);
	s->ended = (enum ended)within(st, 7, ENDED_UNDER_WAY, ENDED_NOT_TODAY);
	text_of(st, 8, s->work_stage, sizeof(s->work_stage));
	text_of(st, 9, s->instrument, sizeof(s->instrument));
	text_of(st, 10, s->asked_stage, sizeof(s->asked_stage));
	return seen != NULL && seen_read(seen, s);
}

static bool load_sittings(struct database *d, struct history *h, int too_old)
{
	int number = count(d, "SELECT count(*) FROM sittings", too_old);
	sqlite3_stmt *st = prepare(d,
	    "SELECT key, day, began_utc, utc_offset, ended_utc, "
	    "length_ms, cap_ms, ended, work_stage, instrument, asked_stage, "
	    "seen "
	    "FROM sittings ORDER BY key",
	    too_old);
	bool good = true;

	h->sitting = room(d, h, number, sizeof(*h->sitting));
	good = h->sitting != NULL && st != NULL;
	while (good && h->sittings < number && sqlite3_step(st) == SQLITE_ROW)
		good = fill_sitting(&h->sitting[h->sittings++], st);
	return ended(st) && good;
}

/* A measure, which is never less than 0; NULL is 0, and so is nonsense. */
static float measure_of(sqlite3_stmt *st, int column)
{
	double value = sqlite3_column_double(st, column);

	return value > 0 && value < MEASURE_MOST ? (float)value : 0;
}

static void fill_turn(struct past_turn *t, sqlite3_stmt *st)
{
	t->sitting = sqlite3_column_int64(st, 0);
	t->day = sqlite3_column_int(st, 1);
	t->kind = (enum block_kind)within(st, 2, BLOCK_AIR, BLOCK_WORK);
	text_of(st, 3, t->stage, sizeof(t->stage));
	text_of(st, 4, t->unit, sizeof(t->unit));
	t->round = sqlite3_column_int(st, 5);
	t->pulses = sqlite3_column_int(st, 6);
	t->bows_asked = sqlite3_column_int(st, 7);
	t->bows_done = sqlite3_column_int(st, 8);
	t->mark = (enum mark)within(st, 9, MARK_NONE, MARK_SHAKY);
	t->first_go = sqlite3_column_int(st, 10) != 0;
	t->resets = sqlite3_column_int(st, 11);
	t->bows_listened = within(st, 12, 0, HEARD_BOWS_MAX);
	t->bows_full = within(st, 13, 0, HEARD_BOWS_MAX);
	t->travel_share = measure_of(st, 14);
	t->rate_hz = measure_of(st, 15);
	t->width_cents = measure_of(st, 16);
}

static bool load_turns(struct database *d, struct history *h, int too_old)
{
	int number = count(d, "SELECT count(*) " RECENT_TURNS, too_old);
	sqlite3_stmt *st = prepare(d,
	    "SELECT sitting, day, kind, stage, unit, round, pulses, "
	    "bows_asked, bows_done, mark, first_go, resets, " HEARD_OF_TURN
	    " " RECENT_TURNS " ORDER BY +key",
	    too_old);
	bool good;

	h->turn = room(d, h, number, sizeof(*h->turn));
	good = h->turn != NULL && st != NULL;
	while (good && h->turns < number && sqlite3_step(st) == SQLITE_ROW)
		fill_turn(&h->turn[h->turns++], st);
	return ended(st) && good;
}

static sqlite3_stmt *prepare_days(
    struct database *d, const char *sql, int today, int days)
{
	sqlite3_stmt *st = prepare(d, sql, today);

	if (st != NULL)
		sqlite3_bind_int(st, 2, days);
	return st;
}

static bool load_tallies(
    struct database *d, struct history *h, int today, int days)
{
	/*
	 * No list has more entries than bytes, whatever its row says; letters
	 * would have to be counted.
	 */
	int number = number_of(prepare_days(d,
	    "SELECT total(min(entries, length(CAST(tallies AS "
	    "BLOB)))) " RECENT_DAYS,
	    today, days));
	sqlite3_stmt *st = prepare_days(d,
	    "SELECT day, entries, tallies " RECENT_DAYS " ORDER BY day", today,
	    days);
	bool good;

	h->tally = room(d, h, number, sizeof(*h->tally));
	good = h->tally != NULL && st != NULL;
	while (good && sqlite3_step(st) == SQLITE_ROW) {
		int entries = sqlite3_column_int(st, 1);
		const char *list = (const char *)sqlite3_column_text(st, 2);

		good = entries >= 0 && entries <= number - h->tallies &&
		    list != NULL &&
		    tallies_read(list, sqlite3_column_int(st, 0),
			&h->tally[h->tallies], entries);
		if (good)
			h->tallies += entries;
	}
	return ended(st) && good;
}

static bool load_shares(struct database *d, struct history *h, int too_old)
{
	int number = count(d, "SELECT count(*) " RECENT_SHARES, too_old);
	sqlite3_stmt *st = prepare(d,
	    "SELECT sitting, stage, unit, planned, dropped, "
	    "played " RECENT_SHARES " ORDER BY sitting, stage, unit",
	    too_old);
	bool good;

	h->share = room(d, h, number, sizeof(*h->share));
	good = h->share != NULL && st != NULL;
	while (good && h->shares < number && sqlite3_step(st) == SQLITE_ROW) {
		struct past_share *s = &h->share[h->shares++];

		s->sitting = sqlite3_column_int64(st, 0);
		text_of(st, 1, s->stage, sizeof(s->stage));
		text_of(st, 2, s->unit, sizeof(s->unit));
		s->planned = sqlite3_column_int(st, 3);
		s->dropped = sqlite3_column_int(st, 4);
		s->played = sqlite3_column_int(st, 5);
	}
	return ended(st) && good;
}

/* What a later evenhand noted is nothing that hurts. */
static enum note_kind note_kind_of(int64_t number)
{
	return number < NOTE_PAIN || number > NOTE_LATER
	    ? NOTE_QUESTION
	    : (enum note_kind)number;
}

static bool fill_note(struct database *d, struct history *h,
    struct past_note *n, sqlite3_stmt *st)
{
	const char *words = (const char *)sqlite3_column_text(st, 4);

	n->sitting = sqlite3_column_int64(st, 0);
	n->day = sqlite3_column_int(st, 1);
	n->kind = note_kind_of(sqlite3_column_int64(st, 2));
	n->finger = within(st, 3, 0, 4);
	n->words = words ? arena_text(&h->arena, words, strlen(words)) : NULL;
	d->no_memory |= words && !n->words;
	return n->words != NULL;
}

static bool load_notes(struct database *d, struct history *h, int too_old)
{
	int number = count(d, "SELECT count(*) FROM notes", too_old);
	sqlite3_stmt *st = prepare(d,
	    "SELECT sitting, day, kind, finger, words FROM notes "
	    "ORDER BY key",
	    too_old);
	bool good;

	h->note = room(d, h, number, sizeof(*h->note));
	good = h->note != NULL && st != NULL;
	while (good && h->notes < number && sqlite3_step(st) == SQLITE_ROW)
		good = fill_note(d, h, &h->note[h->notes++], st);
	return ended(st) && good;
}

static bool load_all(struct database *d, struct history *h, int today, int days)
{
	int too_old = today - HISTORY_TURN_DAYS;

	return load_sittings(d, h, too_old) && load_turns(d, h, too_old) &&
	    load_tallies(d, h, today, days) && load_shares(d, h, too_old) &&
	    load_notes(d, h, too_old);
}

bool history_load(struct database *d, struct history *h, int today, int days)
{
	bool good;

	d->no_memory = false;
	database_fed(d);
	/* In one transaction, so that all parts are of one moment. */
	good = database_run(d, "BEGIN") && load_all(d, h, today, days);
	good = database_run(d, "COMMIT") && good;
	if (d->no_memory)
		shortage_note(ENOMEM);
	d->no_memory |= !good && database_starved(d);
	return good;
}
