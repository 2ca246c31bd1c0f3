/*
 * gather_sql.c - the questions and orders of a merge
 */
#include "gather_parts.h"
#include "record_turn.h"

#define SITTING \
	"s.key, s.origin, s.day, s.ended_sequence, s.ended, s.length_ms, " \
	"coalesce(s.ended_utc, 0), coalesce(s.ended_offset, 0), s.began_utc, " \
	"s.utc_offset, r.fingerprint, s.work_stage, s.asked_stage, " \
	"s.instrument, s.marking, s.cap_ms, s.planned_ms, o.id " \
	"FROM sittings s JOIN routines r ON r.key = s.routine " \
	"JOIN origins o ON o.key = s.origin WHERE "

#define NOTE \
	"n.key, n.sitting, n.utc, n.utc_offset, n.day, n.kind, n.finger, " \
	"n.words, o.id FROM notes n JOIN origins o ON o.key = n.origin WHERE "

const char *const gather_sql[GATHER_QUERIES] = {
	[ADD_ROUTINE] =
	    "INSERT INTO routines (fingerprint, name, edition, text) "
	    "VALUES (?1, ?2, ?3, ?4) ON CONFLICT (fingerprint) DO NOTHING",
	[FIND_ROUTINE] = "SELECT key FROM routines WHERE fingerprint = ?1",
	[FIND_ORIGIN_KEY] = "SELECT key FROM origins WHERE id = ?1",
	[ADD_ORIGIN] = "INSERT INTO origins (id, last) VALUES (?1, ?2) "
		       "ON CONFLICT (id) DO UPDATE SET "
		       "  last = max(last, excluded.last)",
	[SITTING_AT] = "SELECT " SITTING "o.id = ?1 AND s.sequence = ?2",
	[SITTINGS_NUMBERED] = "SELECT " SITTING "s.sequence = ?1",
	[ADD_SITTING] =
	    "INSERT INTO sittings (origin, sequence, began_utc, utc_offset, "
	    "  day, routine, work_stage, asked_stage, instrument, marking, "
	    "  cap_ms, planned_ms, length_ms, ended, ended_utc, ended_offset, "
	    "  ended_sequence, rate, device) "
	    "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, "
	    "  ?14, CASE ?17 WHEN 0 THEN NULL ELSE ?15 END, "
	    "  CASE ?17 WHEN 0 THEN NULL ELSE ?16 END, ?17, 0, '')",
	[SET_END] = "UPDATE sittings SET ended = ?2, length_ms = ?3, "
		    "  ended_utc = ?4, ended_offset = ?5, ended_sequence = ?6 "
		    "WHERE key = ?1",
	[SET_LENGTH] = "UPDATE sittings SET length_ms = ?2 WHERE key = ?1",
	[SET_ORIGIN_OF_SITTING] =
	    "UPDATE sittings SET origin = ?2 WHERE key = ?1",
	[SET_ORIGIN_OF_TURNS] =
	    "UPDATE turns SET origin = ?2 WHERE sitting = ?1",
	[SHARE_AT] = "SELECT planned, dropped FROM shares "
		     "WHERE sitting = ?1 AND stage = ?2 AND unit = ?3",
	[ADD_SHARE] = "INSERT INTO shares (sitting, stage, unit, planned, "
		      "  dropped) VALUES (?1, ?2, ?3, ?4, ?5)",
	[SET_SHARE] = "UPDATE shares SET planned = ?4, dropped = ?5 "
		      "WHERE sitting = ?1 AND stage = ?2 AND unit = ?3",
	[TURNS_OF] = "SELECT " TURN_COLUMNS
		     ", key FROM turns WHERE sitting = ?1 ORDER BY number",
	[ADD_TURN] =
	    "INSERT INTO turns (origin, sitting, day, number, sequence, utc, "
	    "  utc_offset, kind, stage, unit, round, pulses, bows_asked, "
	    "  bows_done, first_go, resets, dropouts, start_ms, slide_um, "
	    "  mark, mark_ms, mark_sequence) "
	    "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, "
	    "  ?14, ?15, ?16, ?17, ?18, ?19, ?20, "
	    "  CASE ?22 WHEN 0 THEN NULL ELSE ?21 END, ?22)",
	[SET_TURN] =
	    "UPDATE turns SET sequence = ?5, utc = ?6, utc_offset = ?7, "
	    "  kind = ?8, stage = ?9, unit = ?10, round = ?11, pulses = ?12, "
	    "  bows_asked = ?13, bows_done = ?14, first_go = ?15, "
	    "  resets = ?16, dropouts = ?17, start_ms = ?18, slide_um = ?19 "
	    "WHERE sitting = ?2 AND number = ?4",
	[SET_TURN_MARK] = "UPDATE turns SET mark = ?2, "
			  "  mark_ms = CASE ?4 WHEN 0 THEN NULL ELSE ?3 END, "
			  "  mark_sequence = ?4 WHERE key = ?1",
	[MEASURES_OF] = "SELECT name, value FROM measures "
			"WHERE turn = ?1 AND method = ?2 ORDER BY name",
	[DROP_MEASURES] =
	    "DELETE FROM measures WHERE turn = ?1 AND method = ?2",
	[DROP_OLD_MEASURES] =
	    "DELETE FROM measures WHERE turn = ?1 AND method IN "
	    "  (SELECT method FROM measures WHERE turn = ?1 "
	    "   AND name = 'sequence' AND value <= ?2)",
	[ADD_MEASURE] = "INSERT INTO measures (turn, method, name, value) "
			"VALUES (?1, ?2, ?3, ?4)",
	[NOTE_AT] = "SELECT " NOTE "o.id = ?1 AND n.sequence = ?2",
	[NOTES_NUMBERED] = "SELECT " NOTE "n.sequence = ?1",
	[ADD_NOTE] =
	    "INSERT INTO notes (origin, sequence, sitting, utc, utc_offset, "
	    "  day, kind, finger, words) "
	    "VALUES (?1, ?2, CASE ?3 WHEN 0 THEN NULL ELSE ?3 END, ?4, ?5, "
	    "  ?6, ?7, ?8, ?9)",
	[SET_NOTE_SITTING] = "UPDATE notes SET sitting = ?2 WHERE key = ?1",
};
