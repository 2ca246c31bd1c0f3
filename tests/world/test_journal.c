/*
 * test_journal.c - what is kept comes back: rows, history, JSON, lock
 */
#include <limits.h>

#include "journal_fixture.h"

static void test_new_journal(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct history h;
	struct fault f;
	struct stat s;

	assert_true(journal_history(j, &h, DAY_ONE, NULL, &f));
	assert_int_equal(
	    h.sittings + h.turns + h.tallies + h.shares + h.notes, 0);
	history_done(&h);
	assert_int_equal(stat(x->path, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0600);
	journal_close(j);

	char folder[100];

	snprintf(folder, sizeof(folder), "%s/data", x->folder);
	assert_int_equal(stat(folder, &s), 0);
	assert_int_equal(s.st_mode & 0777, 0700);
	assert_int_equal(ask(x->path, "PRAGMA user_version"), 2);
	assert_int_equal(ask(x->path,
			     "SELECT length(student) + length(origin) "
			     "FROM about"),
	    64);
	assert_int_equal(
	    ask(x->path, "SELECT student <> origin FROM about"), 1);
	assert_false(exists(x->path, "-wal"));
}

static void check_sitting(const struct history *h)
{
	const struct past_sitting *s = &h->sitting[0];

	assert_int_equal(h->sittings, 1);
	assert_int_equal(s->day, DAY_ONE);
	assert_int_equal(s->began.utc, UTC_ONE);
	assert_int_equal(s->began.offset, 3600);
	assert_int_equal(s->ended_utc, UTC_ONE + 292);
	assert_int_equal(s->cap_ms, 300000);
	assert_int_equal(s->length_ms, 292000);
	assert_int_equal(s->ended, ENDED_EARLY);
	assert_string_equal(s->work_stage, "tone");
	assert_string_equal(s->asked_stage, "tone");
	assert_int_equal(s->blocks, 3);
	assert_string_equal(s->seen[0], "air");
	assert_string_equal(s->seen[1], "wide");
	assert_string_equal(s->seen[2], "tone");
	assert_false(s->recap[0]);
	assert_true(s->recap[1]);
	assert_false(s->recap[2]);
}

static void check_turns(const struct history *h)
{
	const struct past_turn *t = h->turn;

	assert_int_equal(h->turns, 4);
	assert_int_equal(t[0].kind, BLOCK_AIR);
	assert_string_equal(t[0].unit, "");
	assert_int_equal(t[1].kind, BLOCK_RECAP);
	assert_string_equal(t[1].stage, "wide");
	assert_string_equal(t[1].unit, "3");
	assert_int_equal(t[2].mark, MARK_CLEAN);
	assert_true(t[2].first_go);
	assert_int_equal(t[2].pulses, 8);
	assert_int_equal(t[2].resets, 2);
	assert_int_equal(t[2].sitting, h->sitting[0].key);
	assert_int_equal(t[2].day, DAY_ONE);
	assert_int_equal(t[3].round, 1);
	assert_int_equal(t[3].mark, MARK_NONE);
	assert_int_equal(t[3].bows_done, 1);
	assert_int_equal(t[3].bows_asked, 2);
}

static void check_rest(const struct history *h)
{
	assert_int_equal(h->tallies, 3);
	assert_string_equal(h->tally[2].stage, "tone");
	assert_int_equal(h->tally[2].turns, 1);
	assert_int_equal(h->tally[2].bows, 3);
	assert_int_equal(h->tally[2].pulses, 24);
	assert_int_equal(h->tally[2].slide_um, 2000005);
	assert_int_equal(h->tally[2].clean, 1);
	assert_int_equal(h->tally[2].first_go, MARK_CLEAN);
	assert_int_equal(h->tally[2].first_go_pulses, 8);
	assert_int_equal(h->tally[2].resets, 2);
	assert_int_equal(h->tally[1].first_go_pulses, 0);
	assert_int_equal(h->shares, 4);
	assert_string_equal(h->share[0].unit, "1");
	assert_int_equal(h->share[0].planned, 3);
	assert_int_equal(h->share[0].played, 1);
	assert_int_equal(h->share[1].played, 0);
	assert_int_equal(h->share[3].dropped, 3);
	assert_int_equal(h->notes, 2);
	assert_int_equal(h->note[0].kind, NOTE_SKIN);
	assert_int_equal(h->note[0].finger, 4);
	assert_int_equal(h->note[0].sitting, 0);
	assert_string_equal(h->note[1].words, "Warum \"so\"?\t\\ é");
	assert_int_equal(h->note[1].sitting, h->sitting[0].key);
}

/* A sitting with a bit of everything. */
static void put_all(struct fixture *x, struct journal *j)
{
	struct note_row skin = { .kind = NOTE_SKIN, .finger = 4 };
	struct note_row question = { .kind = NOTE_QUESTION,
		.words = "Warum \"so\"?\t\\ é" };
	struct turn_row t[] = {
		turn_of(0, BLOCK_AIR, AIR, -1, 0),
		turn_of(1, BLOCK_RECAP, WIDE, 2, 4),
		turn_of(2, BLOCK_WORK, TONE, 0, 8),
		turn_of(3, BLOCK_WORK, TONE, 0, 8),
	};

	x->plan.dropped[3] = 3;
	t[2].first_go = true;
	t[2].resets = 2;
	t[3].round = 1;
	t[3].bows_done = 1;
	journal_note(j, &skin, moment_on(DAY_ONE, -60));
	begin(x, j, DAY_ONE);
	for (int i = 0; i < 4; i++)
		put_turn(x, j, &t[i]);
	journal_mark(j, 2, MARK_SHAKY, 40000);
	journal_mark(j, 2, MARK_NONE, 40500);
	journal_mark(j, 2, MARK_CLEAN, 41000);
	journal_end(j, ENDED_EARLY, 292000, moment_on(DAY_ONE, 292));
	journal_note(j, &question, moment_on(DAY_ONE, 300));
}

static void test_round_trip(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct history h;
	struct fault f;

	put_all(x, j);
	assert_true(journal_history(j, &h, DAY_ONE, NULL, &f));
	check_sitting(&h);
	check_turns(&h);
	check_rest(&h);
	history_done(&h);
	journal_close(j);

	/* And the same after it was closed, read without a lock. */
	look(x, DAY_ONE, &h);
	check_sitting(&h);
	check_turns(&h);
	check_rest(&h);
	history_done(&h);
	assert_false(exists(x->path, "-wal"));
	assert_false(exists(x->path, "-shm"));
	assert_false(exists(x->path, ".spool"));
}

/* A sitting that never ended was cut off, and is as long as it got. */
static void test_cut_off(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(0, BLOCK_WORK, TONE, 0, 6);
	struct history h;

	begin(x, j, DAY_ONE);
	put_turn(x, j, &t);
	journal_mark(j, 0, MARK_CLEAN, 17000);
	journal_close(j);
	j = open_good(x);
	sit(x, j, DAY_ONE, 4);
	journal_end(
	    j, ENDED_PAIN, 1, moment_on(DAY_ONE, 1)); /* under way? no */
	journal_close(j);
	look(x, DAY_ONE, &h);
	assert_int_equal(h.sittings, 2);
	assert_int_equal(h.sitting[0].ended, ENDED_UNDER_WAY);
	assert_int_equal(h.sitting[0].length_ms, 17000);
	assert_int_equal(h.sitting[0].ended_utc, 0);
	assert_int_equal(h.sitting[1].ended, ENDED_WHOLE);
	assert_true(h.sitting[0].key < h.sitting[1].key);
	history_done(&h);
}

/* 04:00 turns the practice day, but not in the middle of a sitting. */
static void test_past_four(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct turn_row t = turn_of(0, BLOCK_WORK, TONE, 0, 6);
	struct history h;

	begin(x, j, DAY_ONE);
	journal_turn(j, &t, &x->routine, moment_on(DAY_ONE + 1, 0));
	journal_close(j);
	look(x, DAY_ONE + 1, &h);
	assert_int_equal(h.turn[0].day, DAY_ONE);
	assert_int_equal(h.tally[0].day, DAY_ONE);
	history_done(&h);
}

/* Pain counts for the day on which it hurt, if that is the later one. */
static void test_note_past_four(void **state)
{
	/* 03:58 and 04:00:31, an hour east: 2026-03-03 is day 20515. */
	const struct moment began = { .utc = INT64_C(1772506680),
		.offset = 3600 };
	const struct moment hurt = { .utc = INT64_C(1772506831),
		.offset = 3600 };
	/* A clock that was set back two days meanwhile. */
	const struct moment back = { .utc = INT64_C(1772334031),
		.offset = 3600 };
	struct fixture *x = *state;
	struct note_row pain = { .kind = NOTE_PAIN };
	struct journal *j = open_good(x);
	struct history h;

	assert_int_equal(moment_practice_day(began), DAY_ONE);
	x->plan.day = DAY_ONE;
	journal_begin(j,
	    &(struct sitting_row) { .routine = &x->routine,
		.plan = &x->plan,
		.began = began,
		.rate = 48000,
		.device = "fast" });
	journal_note(j, &pain, began);
	journal_note(j, &pain, hurt);
	journal_note(j, &pain, back);
	journal_close(j);
	look(x, DAY_ONE + 1, &h);
	assert_int_equal(h.notes, 3);
	assert_int_equal(h.note[0].day, DAY_ONE);
	assert_int_equal(h.note[1].day, DAY_ONE + 1);
	assert_int_equal(h.note[2].day, DAY_ONE);
	assert_int_equal(h.note[1].sitting, h.sitting[0].key);
	history_done(&h);
}

static int turns_seen(const struct fixture *x, int today)
{
	struct history h;
	int turns;

	look(x, today, &h);
	turns = h.turns;
	assert_int_equal(h.sittings, 3);
	assert_int_equal(h.tallies, 12);
	/* Shares are of the same sittings. */
	assert_int_equal(h.shares, turns == 24 ? 12 : turns == 20 ? 8 : 4);
	for (int i = 0; i < 4; i++)
		assert_int_equal(h.share[h.shares - 4 + i].played, 3);
	history_done(&h);
	return turns;
}

/* Turns of 28 days and of the last sitting; roll-ups for good. */
static void test_window(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);

	sit(x, j, DAY_ONE, 4);
	sit(x, j, DAY_ONE + 10, 8);
	sit(x, j, DAY_ONE + 20, 12);
	journal_close(j);
	assert_int_equal(turns_seen(x, DAY_ONE + 27), 24);
	assert_int_equal(turns_seen(x, DAY_ONE + 28), 20);
	assert_int_equal(turns_seen(x, DAY_ONE + 38), 12);
	assert_int_equal(turns_seen(x, DAY_ONE + 4000), 12);
}

static void test_lock(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x), *second;
	struct fault f;
	struct history h;

	second = journal_open(x->path, &f);
	assert_null(second);
	assert_int_equal(f.message.id, M_WORLD_JOURNAL_LOCKED);
	/* Looking on is allowed. */
	sit(x, j, DAY_ONE, 4);
	journal_flush(j);
	look(x, DAY_ONE, &h);
	assert_int_equal(h.turns, 4);
	history_done(&h);
	/* And did no harm to the lock, nor to the journal. */
	assert_null(journal_open(x->path, &f));
	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	j = open_good(x);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 8);
}

/* The file that WAL writes to is there and empty, and then it is not. */
static void test_look_then_written(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x), *eye;
	struct history h;
	struct fault f;
	struct stat s;
	char wal[200];

	sit(x, j, DAY_ONE, 4);
	journal_flush(j);
	ask(x->path, "PRAGMA wal_checkpoint(TRUNCATE)");
	snprintf(wal, sizeof(wal), "%s-wal", x->path);
	assert_int_equal(stat(wal, &s), 0);
	assert_int_equal(s.st_size, 0);
	eye = journal_look(x->path, &f);
	assert_non_null(eye);
	sit(x, j, DAY_ONE, 4);
	journal_flush(j);
	assert_true(journal_history(eye, &h, DAY_ONE, NULL, &f));
	assert_int_equal(h.turns, 8);
	history_done(&h);
	journal_close(eye);
	journal_close(j);
}

/* A journal without WAL, written to between two looks of one reader. */
static void test_look_without_wal(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x), *eye;
	struct fault f;

	sit(x, j, DAY_ONE, 4);
	journal_close(j);
	ask(x->path, "PRAGMA journal_mode = DELETE");
	assert_false(exists(x->path, "-wal"));
	eye = journal_look(x->path, &f);
	assert_non_null(eye);
	for (int pulses = 6; pulses <= 8; pulses++) {
		struct history h;

		assert_true(journal_history(eye, &h, DAY_ONE, NULL, &f));
		assert_int_equal(h.turns, 4);
		for (int i = 0; i < 4; i++)
			assert_int_equal(h.turn[i].pulses, pulses);
		history_done(&h);
		ask(x->path, "UPDATE turns SET pulses = pulses + 1");
	}
	journal_close(eye);
}

/* A lock that leads elsewhere is left alone, and so is what it leads to. */
static void test_lock_elsewhere(void **state)
{
	struct fixture *x = *state;
	char lock[200], victim[200];

	journal_close(open_good(x));
	snprintf(lock, sizeof(lock), "%s.lock", x->path);
	snprintf(victim, sizeof(victim), "%s/victim", x->folder);
	assert_int_equal(unlink(lock), 0);
	assert_int_equal(symlink(victim, lock), 0);
	journal_close(open_good(x));
	assert_false(exists(victim, ""));
}

static char *dump(const struct fixture *x)
{
	FILE *to = tmpfile();
	struct fault f;
	char *text = calloc(1, 100000);

	assert_true(
	    journal_dump_json(x->path, INT_MIN, INT_MAX, fileno(to), &f));
	rewind(to);
	assert_in_range(fread(text, 1, 99999, to), 1, 99998);
	fclose(to);
	return text;
}

/* SQLite's own reader of JSON is the judge of ours. */
static int64_t json_says(const char *json, const char *question)
{
	sqlite3 *d;
	sqlite3_stmt *st;
	int64_t answer = -1;

	sqlite3_open(":memory:", &d);
	assert_int_equal(
	    sqlite3_prepare_v2(d, question, -1, &st, NULL), SQLITE_OK);
	sqlite3_bind_text(st, 1, json, -1, SQLITE_STATIC);
	if (sqlite3_step(st) == SQLITE_ROW)
		answer = sqlite3_column_int64(st, 0);
	sqlite3_finalize(st);
	sqlite3_close(d);
	return answer;
}

static void test_json(void **state)
{
	struct fixture *x = *state;
	struct journal *j;
	char *json = dump(x);

	/* Without a journal: all lists are there, and empty. */
	assert_int_equal(json_says(json, "SELECT json_valid(?)"), 1);
	assert_int_equal(
	    json_says(json, "SELECT json_array_length(?, '$.turns')"), 0);
	assert_false(exists(x->path, ""));
	free(json);

	j = open_good(x);
	put_all(x, j);
	journal_close(j);
	json = dump(x);
	assert_int_equal(json_says(json, "SELECT json_valid(?)"), 1);
	assert_non_null(strstr(json,
	    "{\"sitting\": 1, \"began\": \"2026-03-02T17:00:00Z\", "
	    "\"offset_s\": 3600, \"day\": \"2026-03-02\", "
	    "\"routine\": \"00c0ffee12345678\", \"marking\": \"round\", "
	    "\"work_stage\": \"tone\", \"asked_stage\": \"tone\", "
	    "\"instrument\": \"violin\", "
	    "\"cap_ms\": 300000, "
	    "\"planned_ms\": 292000, \"ended\": \"early\", "
	    "\"ended_at\": \"2026-03-02T17:04:52Z\", \"length_ms\": 292000, "
	    "\"sequence\": 2, \"stages\": "
	    "[{\"stage\":\"air\",\"recap\":false},"
	    "{\"stage\":\"wide\",\"recap\":true},"
	    "{\"stage\":\"tone\",\"recap\":false}], \"shares\": "
	    "[{\"stage\":\"tone\",\"unit\":\"1\","
	    "\"planned\":3,\"dropped\":0,\"played\":1},"));
	assert_non_null(strstr(json,
	    "{\"sitting\": 1, \"turn\": 2, \"at\": \"2026-03-02T17:00:40Z\", "
	    "\"offset_s\": 3600, \"day\": \"2026-03-02\", \"block\": \"work\", "
	    "\"stage\": \"tone\", \"unit\": \"1\", \"round\": 0, "
	    "\"pulses\": 8, \"bows_asked\": 2, \"bows_done\": 2, "
	    "\"first_go\": true, \"mark\": \"clean\", \"mark_ms\": 41000, "
	    "\"resets\": 2, \"dropouts\": 0, \"start_ms\": 32000, "
	    "\"slide_um\": 1000002, \"measures\": null, "
	    "\"sequence\": 9}"));
	assert_int_equal(json_says(json,
			     "SELECT json_extract(?, '$.notes[1].words') = "
			     "'Warum \"so\"?' || char(9) || '\\ é'"),
	    1);
	assert_int_equal(
	    json_says(json,
		"SELECT json_extract(?, '$.routines[0].text') LIKE "
		"'routine: %' || char(10) || char(9) || 'never \"this\" \\ "
		"é%'"),
	    1);
	assert_int_equal(json_says(json,
			     "SELECT json_extract(?, "
			     "'$.made_on.sittings[0].device') = 'fast'"),
	    1);
	free(json);
}

/* The document but for its one line about where it was made. */
static void drop_made_on(char *json)
{
	char *line = strstr(json, "\n\"made_on\"");

	assert_non_null(line);
	*line = '\0';
}

static void test_json_identical(void **state)
{
	struct fixture *x = *state, *y;
	struct journal *j = open_good(x);
	char *first, *second;

	put_all(x, j);
	journal_close(j);
	first = dump(x);
	fixture_open((void **)&y);
	j = open_good(y);
	put_all(y, j);
	journal_close(j);
	second = dump(y);
	assert_string_not_equal(first, second); /* two origins */
	drop_made_on(first);
	drop_made_on(second);
	assert_string_equal(first, second);
	free(first);
	free(second);
	fixture_close((void **)&y);
}

/* Bytes that are no text, and bytes a terminal would act upon. */
static void test_json_escapes(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);
	struct note_row n = { .kind = NOTE_QUESTION, .words = "a\x1b[2Jb\x7f" };
	char *json;

	journal_note(j, &n, moment_on(DAY_ONE, 0));
	strcpy(n.words,
	    "c\xff\xfe"
	    "d");
	journal_note(j, &n, moment_on(DAY_ONE, 0));
	strcpy(n.words,
	    "e\xc2\x9b"
	    "f");
	journal_note(j, &n, moment_on(DAY_ONE, 0));
	journal_close(j);
	json = dump(x);
	assert_int_equal(json_says(json, "SELECT json_valid(?)"), 1);
	assert_non_null(strstr(json, "a\\u001b[2Jb\\u007f\""));
	assert_non_null(strstr(json, "c\\ufffd\\ufffdd\""));
	assert_non_null(strstr(json, "e\\u009bf\""));
	free(json);
}

/* The text of a routine is kept once, however often it is played. */
static void test_routine_once(void **state)
{
	struct fixture *x = *state;
	struct journal *j = open_good(x);

	sit(x, j, DAY_ONE, 4);
	sit(x, j, DAY_ONE + 1, 4);
	x->routine.fingerprint++;
	x->routine.text = "another";
	sit(x, j, DAY_ONE + 2, 4);
	journal_close(j);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM routines"), 2);
	assert_int_equal(ask(x->path,
			     "SELECT count(DISTINCT routine) "
			     "FROM sittings"),
	    2);
}

/* Numbers of an origin never come twice, over many openings. */
static void test_sequence(void **state)
{
	struct fixture *x = *state;

	for (int i = 0; i < 5; i++) {
		struct journal *j = open_good(x);

		sit(x, j, DAY_ONE + i, 4);
		journal_close(j);
	}
	assert_int_equal(ask(x->path, "SELECT count(*) FROM turns"), 20);
	assert_int_equal(ask(x->path, "SELECT count(*) FROM origins"), 1);
	assert_int_equal(
	    ask(x->path,
		"SELECT count(*) = count(DISTINCT sequence) FROM "
		"(SELECT sequence FROM sittings UNION ALL SELECT sequence FROM "
		"turns "
		"UNION ALL SELECT mark_sequence FROM turns UNION ALL "
		"SELECT ended_sequence FROM sittings)"),
	    1);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, fixture_open, fixture_close)
	const struct CMUnitTest tests[] = {
		T(test_new_journal),
		T(test_round_trip),
		T(test_cut_off),
		T(test_past_four),
		T(test_note_past_four),
		T(test_window),
		T(test_lock),
		T(test_look_then_written),
		T(test_look_without_wal),
		T(test_lock_elsewhere),
		T(test_json),
		T(test_json_identical),
		T(test_json_escapes),
		T(test_routine_once),
		T(test_sequence),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
