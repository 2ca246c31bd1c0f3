/*
 * journal_sql.c - the statements that bring rows into the journal
 *
 * A row that comes twice finds its own number there and changes nothing; a
 * mark, an end or what was heard counts only when its number is higher than
 * that of the one before it.
 */
#include "journal_database.h"

/* Of all turns t of a group, as a whole number. */
#define BOWS_LISTENED \
	"CAST(total(" SQL_HEARD_BOWS("t.key", "bows_listened") ") AS INTEGER)"
#define BOWS_FULL \
	"CAST(total(" SQL_HEARD_BOWS("t.key", "bows_full") ") AS INTEGER)"

const char *const journal_sql[STATEMENTS] = {
	[WRITE_BEGIN] = "BEGIN IMMEDIATE",
	[WRITE_COMMIT] = "COMMIT",
	[WRITE_ROLLBACK] = "ROLLBACK",
	[WRITE_ORIGIN] =
	    "INSERT INTO origins (id, last) VALUES (:origin_id, 0) "
	    "ON CONFLICT (id) DO NOTHING",
	[FIND_ORIGIN] = "SELECT key FROM origins WHERE id = :origin_id",
	[FIND_SITTING] = "SELECT key FROM sittings "
			 "WHERE origin = :origin AND sequence = :sitting_of",
	[WRITE_LAST] = "UPDATE origins SET last = max(last, :sequence) "
		       "WHERE key = :origin",
	[WRITE_ROUTINE] =
	    "INSERT INTO routines (fingerprint, name, edition, text) "
	    "VALUES (:fingerprint, :name, :edition, :text) "
	    "ON CONFLICT (fingerprint) DO NOTHING",
	[WRITE_SITTING] =
	    "INSERT INTO sittings (origin, sequence, began_utc, utc_offset, "
	    "  day, routine, work_stage, marking, cap_ms, planned_ms, rate, "
	    "  device, instrument, asked_stage) "
	    "VALUES (:origin, :sequence, :utc, :offset, :day, "
	    "  (SELECT key FROM routines WHERE fingerprint = :fingerprint), "
	    "  :stage, :marking, :cap_ms, :planned_ms, :rate, :device, "
	    ":instrument, :asked_stage)"
	    " ON CONFLICT (origin, sequence) DO NOTHING",
	[WRITE_SHARE] =
	    "INSERT INTO shares (sitting, stage, unit, planned, dropped) "
	    "VALUES (:sitting, :stage, :unit, :planned, :dropped) "
	    "ON CONFLICT (sitting, stage, unit) DO NOTHING",
	[WRITE_TURN] =
	    "INSERT INTO turns (origin, sequence, sitting, number, utc, "
	    "  utc_offset, day, kind, stage, unit, round, pulses, bows_asked, "
	    "  bows_done, first_go, resets, dropouts, start_ms, slide_um) "
	    "VALUES (:origin, :sequence, :sitting, :number, :utc, :offset, "
	    "  :day, :kind, :stage, :unit, :round, :pulses, :asked, :done, "
	    "  :first_go, :resets, :dropouts, :start_ms, :slide_um) "
	    "ON CONFLICT (sitting, number) DO UPDATE SET "
	    "  sequence = excluded.sequence, utc = excluded.utc, "
	    "  utc_offset = excluded.utc_offset, kind = excluded.kind, "
	    "  stage = excluded.stage, unit = excluded.unit, "
	    "  round = excluded.round, pulses = excluded.pulses, "
	    "  bows_asked = excluded.bows_asked, "
	    "  bows_done = excluded.bows_done, "
	    "  first_go = excluded.first_go, resets = excluded.resets, "
	    "  dropouts = excluded.dropouts, start_ms = excluded.start_ms, "
	    "  slide_um = excluded.slide_um, "
	    /* A mark that was put before was the mark of another turn. */
	    "  mark = CASE WHEN mark_sequence > excluded.sequence "
	    "    THEN mark ELSE 0 END, "
	    "  mark_ms = CASE WHEN mark_sequence > excluded.sequence "
	    "    THEN mark_ms END, "
	    "  mark_sequence = max(mark_sequence, excluded.sequence) "
	    "WHERE excluded.sequence > sequence",
	[WRITE_LENGTH] = "UPDATE sittings SET "
			 "  length_ms = max(length_ms, :length) "
			 "WHERE key = :sitting AND ended_sequence = 0",
	[WRITE_MARK] = "UPDATE turns SET mark = :mark, mark_ms = :mark_ms, "
		       "  mark_sequence = :sequence "
		       "WHERE sitting = :sitting AND number = :number "
		       "  AND mark_sequence < :sequence",
	/*
	 * What was heard of a turn comes whole, and its number in the sequence
	 * stands among it: a row that comes once more, or behind a later one,
	 * finds a number that is no lower and changes nothing.
	 */
	[CLEAR_MEASURES] =
	    "DELETE FROM measures WHERE method = :method AND turn = "
	    "  (SELECT key FROM turns WHERE sitting = :sitting "
	    "   AND number = :number) "
	    "AND NOT EXISTS (SELECT 1 FROM measures m "
	    "  WHERE m.turn = measures.turn AND m.method = :method "
	    "  AND m.name = 'sequence' AND m.value >= :sequence)",
	[WRITE_MEASURES] =
	    "INSERT INTO measures (turn, method, name, value) "
	    "SELECT t.key, :method, v.key, CAST(v.value AS REAL) "
	    "FROM turns t, json_each(:values) v "
	    "WHERE t.sitting = :sitting AND t.number = :number "
	    "  AND t.sequence < :sequence "
	    "  AND v.type IN ('integer', 'real') AND NOT EXISTS "
	    "  (SELECT 1 FROM measures m "
	    "   WHERE m.turn = t.key AND m.method = :method) "
	    "UNION ALL SELECT key, :method, 'sequence', :sequence FROM turns t "
	    "WHERE t.sitting = :sitting AND t.number = :number "
	    "  AND t.sequence < :sequence AND NOT EXISTS "
	    "  (SELECT 1 FROM measures m "
	    "   WHERE m.turn = t.key AND m.method = :method)",
	/* What was heard before a turn took this place was of another one. */
	[FORGET_MEASURES] =
	    "DELETE FROM measures WHERE turn = (SELECT key FROM turns "
	    "  WHERE sitting = :sitting AND number = :number "
	    "  AND sequence = :sequence) "
	    "AND EXISTS (SELECT 1 FROM measures m "
	    "  WHERE m.turn = measures.turn AND m.method = measures.method "
	    "  AND m.name = 'sequence' AND m.value < :sequence)",
	[WRITE_NOTE] =
	    "INSERT INTO notes (origin, sequence, sitting, utc, utc_offset, "
	    "  day, kind, finger, words) "
	    "VALUES (:origin, :sequence, :sitting, :utc, :offset, :day, "
	    "  :kind, :finger, :words) "
	    "ON CONFLICT (origin, sequence) DO UPDATE SET "
	    "  sitting = coalesce(sitting, excluded.sitting)",
	[WRITE_END] =
	    "UPDATE sittings SET ended = :ended, length_ms = :length_ms, "
	    "  ended_utc = :utc, ended_offset = :offset, "
	    "  ended_sequence = :sequence "
	    "WHERE key = :sitting AND ended_sequence < :sequence",
	[RENEW_SEEN] =
	    "UPDATE sittings SET seen = "
	    "  (SELECT json_group_array(json_array(stage, recap)) FROM "
	    "    (SELECT stage, kind = 1 AS recap FROM turns "
	    "     WHERE sitting = :sitting "
	    "     GROUP BY stage, recap ORDER BY min(number))) "
	    "WHERE key = :sitting",
	[RENEW_SHARES] =
	    "UPDATE shares SET played = "
	    "  (SELECT count(*) FROM turns t WHERE t.sitting = shares.sitting "
	    "     AND t.stage = shares.stage AND t.unit = shares.unit "
	    "     AND t.kind = 2 AND t.bows_done >= t.bows_asked) "
	    "WHERE sitting = :sitting",
	[RENEW_DAY] =
	    "INSERT INTO days (day, entries, tallies) "
	    "SELECT :day, count(*), "
	    "  json_group_array(json_array(stage, unit, kind, turns, "
	    "  bows, pulses, slide, clean, shaky, mark, rung, resets, "
	    "  instrument, listened, all_tops)) "
	    "FROM (SELECT g.*, coalesce(f.mark, 0) AS mark, "
	    "    coalesce(f.pulses, 0) AS rung FROM "
	    "  (SELECT stage, unit, kind, instrument, "
	    "     sum(bows_done >= bows_asked) AS turns, "
	    "     sum(bows_done) AS bows, sum(bows_done * pulses) AS pulses, "
	    "     sum(slide_um) AS slide, sum(mark = 1) AS clean, "
	    "     sum(mark = 2) AS shaky, sum(resets) AS resets, "
	    "     " BOWS_LISTENED " AS listened, "
	    "     " BOWS_FULL " AS all_tops, "
	    "     min(t.key) AS born, min(t.key) FILTER "
	    "       (WHERE first_go AND bows_done >= bows_asked) AS first "
	    "   FROM turns t JOIN sittings s ON s.key = t.sitting "
	    "   WHERE t.day = :day GROUP BY stage, unit, kind, instrument) g "
	    "  LEFT JOIN turns f ON f.key = g.first ORDER BY g.born) "
	    "WHERE true "
	    "ON CONFLICT (day) DO UPDATE SET "
	    "  entries = excluded.entries, tallies = excluded.tallies",
};
