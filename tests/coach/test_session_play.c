/* test_session_play.c - five minutes to the frame: turns, marks and the rung */
#include "sitting.h"

static struct sitting d;
static const struct history nothing;

static const int rates[] = { 48000, 44100, 88200, 96000 };

enum { RATES = sizeof(rates) / sizeof(rates[0]) };

static int64_t minutes(int m, int s)
{
	return (m * 60 + s) * INT64_C(1000);
}

/* Marks every turn clean in its change, up to a time. */
static void all_clean_until(int64_t from, int64_t to)
{
	for (int64_t ms = from; ms < to; ms += 1000) {
		sitting_until(&d, ms);
		if (d.s.page == PAGE_PLAY && d.s.phase == PHASE_CHANGE &&
		    d.s.turn_played[d.s.played - 1].mark == MARK_NONE)
			sitting_key(&d, ms + 500, KEY_CLEAN);
	}
	sitting_until(&d, to);
}

/* Stage tone with pedals: air 0:00, wide 0:28, thirds 1:24, tone 2:20. */
static void test_times_with_pedals(void **state)
{
	static const int start[] = { 8, 36, 48, 60, 72, 92, 104, 116, 128, 148,
		160, 172, 184, 196, 208, 220, 232, 244, 256, 268, 280 };
	static const int passage[] = { 0, 28, 84, 140, 196, 244 };
	struct routine r = programme_cello(TONE);

	(void)state;
	for (int i = 0; i < RATES; i++) {
		sitting_begin(&d, &r, &nothing, MARKING_TURN, rates[i]);
		sitting_start(&d);
		all_clean_until(0, minutes(5, 0));
		assert_int_equal(d.turns, 21);
		for (int t = 0; t < d.turns; t++) {
			assert_int_equal(d.turn[t].start_ms, start[t] * 1000);
			assert_int_equal(
			    d.turn[t].unit, (t + 3) % 4 - (t ? 0 : 4));
			assert_int_equal(d.mark[t], MARK_CLEAN);
		}
		assert_int_equal(d.passages, 6);
		for (int p = 0; p < d.passages; p++)
			assert_int_equal(d.frame[p] - d.frame[0],
			    (int64_t)passage[p] * rates[i]);
		assert_int_equal(d.how, ENDED_WHOLE);
		assert_int_equal(d.length_ms, minutes(4, 52));
		for (int u = 0; u < 4; u++)
			assert_int_equal(session_bows(&d.s, u), 10);
		assert_true(d.s.page == PAGE_END);
	}
}

/* A round is marked at its end: turns at 0, 11, 22 and 33 s, 48 s as before. */
static void test_times_without_pedals(void **state)
{
	static const int turn[] = { 0, 11, 22, 33 };
	struct routine r = programme_cello(TONE);

	(void)state;
	for (int i = 0; i < RATES; i++) {
		sitting_begin(&d, &r, &nothing, MARKING_ROUND, rates[i]);
		sitting_start(&d);
		/* A sign of life, or three minutes would end it. */
		sitting_key(&d, minutes(2, 0), KEY_OTHER);
		sitting_until(&d, minutes(5, 0));
		assert_int_equal(d.turns, 21);
		for (int t = 0; t < 12; t++)
			assert_int_equal(d.turn[9 + t].start_ms,
			    minutes(2, 28) + t / 4 * 48000 +
				turn[t % 4] * 1000);
		assert_int_equal(d.passage[3].change_ms, 3000);
		assert_int_equal(d.passage[3].last_change_ms, 7000);
		assert_int_equal(d.length_ms, minutes(4, 52));
		assert_int_equal(d.how, ENDED_WHOLE);
	}
}

/* Day 3 on tone: rounds 1 and 2 at 6, round 3 at 8 from 4:04, done 4:52. */
static void test_rung_rises(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_start(&d);
	all_clean_until(0, minutes(5, 0));
	for (int t = 9; t < 17; t++)
		assert_int_equal(d.turn[t].pulses, 6);
	assert_int_equal(d.turn[17].start_ms, minutes(4, 4));
	for (int t = 17; t < 21; t++)
		assert_int_equal(d.turn[t].pulses, 8);
	assert_int_equal(d.passage[5].pulses, 8);
	assert_true(sitting_said(&d, "Next: 8 pulses.\n"));
	for (int t = 0; t < d.turns; t++)
		assert_int_equal(d.turn[t].first_go, d.turn[t].round == 0);
}

struct round_marks {
	const char *marks; /* of the rounds' turns: c, s or - */
	int pulses[3];	   /* of rounds 1 to 3 */
	int carried;
};

/* Rule F3 by marks alone; the work block has three rounds of four. */
static void test_rung_by_marks(void **state)
{
	static const struct round_marks cases[] = {
		{ "cccccccccccc", { 6, 6, 8 }, 0 },
		{ "cccccccccccc", { 6, 8, 8 }, 1 },
		{ "ccccccc-cccc", { 6, 6, 6 }, 0 },
		{ "ccss--------", { 6, 4, 4 }, 0 },
		{ "cccs--------", { 6, 6, 6 }, 0 },
		{ "--ss--ss----", { 6, 4, 4 }, 0 },
		{ "ssss-sss----", { 6, 4, 4 }, 1 },
		{ "------------", { 6, 6, 6 }, 1 },
		{ "ccccsscc----", { 6, 8, 6 }, 1 },
		{ "cccccccc----", { 6, 8, 8 }, 1 },
		{ "ccccscss----", { 6, 8, 6 }, 1 },
	};
	struct routine r = programme_cello(TONE);

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		sitting_begin(&d, &r, &nothing, MARKING_TURN, 44100);
		d.s.plan.clean_rounds = cases[i].carried;
		sitting_start(&d);
		sitting_key(&d, minutes(2, 0), KEY_OTHER);
		for (int t = 0; t < 12; t++) {
			int64_t change = minutes(2, 36) + t * 12000;
			char mark = cases[i].marks[t];

			sitting_key(&d, change + 2000,
			    mark == 'c'	      ? KEY_FORWARD
				: mark == 's' ? KEY_BACK
					      : KEY_OTHER);
		}
		sitting_until(&d, minutes(4, 52));
		for (int t = 0; t < 12; t++)
			if (d.turn[9 + t].pulses != cases[i].pulses[t / 4])
				fail_msg("case %zu, turn %d: %d pulses", i, t,
				    d.turn[9 + t].pulses);
	}
}

/* A round's last mark that comes with the next bow lowers the one after. */
static void test_rung_falls_late(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_start(&d);
	sitting_key(&d, minutes(2, 0), KEY_OTHER);
	sitting_key(&d, minutes(3, 2), KEY_BACK);
	sitting_key(&d, minutes(3, 16) + 400, KEY_BACK);
	sitting_until(&d, minutes(5, 0));
	assert_int_equal(d.mark[12], MARK_SHAKY);
	assert_int_equal(d.mark_ms[12], minutes(3, 16) + 400);
	assert_int_equal(d.turn[13].pulses, 6);
	assert_int_equal(d.turn[17].pulses, 4);
	assert_int_equal(d.silences, 0);
}

/* Up to the half second a key marks the turn before; then it is silence. */
static void test_late_marks(void **state)
{
	static const struct {
		int after_ms;
		enum mark mark;
		int silences;
	} cases[] = { { 0, MARK_CLEAN, 0 }, { 1, MARK_CLEAN, 0 },
		{ 499, MARK_CLEAN, 0 }, { 501, MARK_NONE, 1 } };
	struct routine r = programme_cello(TONE);

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		/* Into the next bow, and into a lead-in. */
		static const int64_t change_ends[] = { 48000, 84000 };

		for (int c = 0; c < 2; c++) {
			sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
			sitting_start(&d);
			sitting_key(
			    &d, change_ends[c] + cases[i].after_ms, KEY_CLEAN);
			assert_int_equal(d.mark[d.turns - 1], cases[i].mark);
			assert_int_equal(d.silences, cases[i].silences);
		}
	}
}

static void test_repeats(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_start(&d);
	/* 249 ms later: a bounce.  251 ms after the bounce: it counts. */
	sitting_key(&d, 44500, KEY_CLEAN);
	sitting_key(&d, 44749, KEY_CLEAN);
	assert_int_equal(d.mark[1], MARK_CLEAN);
	sitting_key(&d, 45000, KEY_CLEAN);
	assert_int_equal(d.mark[1], MARK_NONE);
	/* A key that is held down stays one press. */
	for (int ms = 45500; ms < 47500; ms += 30)
		sitting_key(&d, ms, KEY_SHAKY);
	assert_int_equal(d.mark[1], MARK_SHAKY);
	/* Ignored presses count for the next: 200 ms after the last of them. */
	sitting_key(&d, 47690, KEY_CLEAN);
	assert_int_equal(d.mark[1], MARK_SHAKY);
}

static void test_changes_of_mind(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_start(&d);
	sitting_key(&d, 44500, KEY_FORWARD);
	assert_int_equal(d.mark[1], MARK_CLEAN);
	assert_int_equal(d.mark_ms[1], 44500);
	sitting_key(&d, 45000, KEY_SHAKY);
	assert_int_equal(d.mark[1], MARK_SHAKY);
	sitting_key(&d, 45500, KEY_BACK);
	assert_int_equal(d.mark[1], MARK_NONE);
	assert_true(
	    sitting_said(&d, "Marked: clean.\nMarked: shaky.\nNo mark now.\n"));
	sitting_digit(&d, 46000, 1);
	assert_int_equal(d.mark[1], MARK_NONE);
	assert_int_equal(d.silences, 0);
}

struct press {
	char key; /* c, s, a digit */
	const char *marks;
};

static void check_marks(int from, const char *marks)
{
	static const char letter[] = { '-', 'c', 's' };

	for (int i = 0; marks[i]; i++)
		if (letter[d.mark[from + i]] != marks[i])
			fail_msg("turn %d is '%c', not as in %s", i,
			    letter[d.mark[from + i]], marks);
}

/* The last change of a round: all, all, this one, and the same undoes. */
static void test_marks_of_a_round(void **state)
{
	static const struct press cases[][6] = {
		{ { 'c', "cccc" }, { 'c', "----" }, { 'c', "cccc" } },
		{ { 's', "ssss" }, { 's', "----" }, { 's', "ssss" } },
		{ { 'c', "cccc" }, { 's', "ssss" }, { 'c', "cccc" } },
		{ { '2', "cscc" }, { '2', "----" }, { '2', "cscc" } },
		{ { '2', "cscc" }, { '4', "cscs" }, { '2', "cccs" } },
		{ { '4', "cccs" }, { 'c', "cccc" }, { '1', "sccc" } },
		{ { 's', "ssss" }, { '3', "ccsc" }, { 's', "ssss" } },
		{ { '7', "----" }, { '1', "sccc" }, { '9', "sccc" } },
		{ { '1', "sccc" }, { '2', "sscc" }, { '3', "sssc" },
		    { '4', "ssss" }, { 's', "ssss" } },
	};
	struct routine r = programme_cello(TONE);

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		sitting_begin(&d, &r, &nothing, MARKING_ROUND, 48000);
		sitting_start(&d);
		/* The round of wide: its last bow ends at 77 s. */
		for (int k = 0; cases[i][k].key; k++) {
			char key = cases[i][k].key;
			int64_t ms = 77500 + k * 500;

			if (key == 'c' || key == 's')
				sitting_key(&d, ms,
				    key == 'c' ? KEY_FORWARD : KEY_BACK);
			else
				sitting_digit(&d, ms, key - '0');
			check_marks(1, cases[i][k].marks);
		}
	}
	assert_true(sitting_said(
	    &d, "Marked shaky: finger 1, finger 2. The others clean."));
}

/* Inside a round of round marking a pedal is silence, a digit is nothing. */
static void test_inside_a_round(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_ROUND, 48000);
	sitting_start(&d);
	sitting_digit(&d, 45000, 1);
	assert_int_equal(d.silences, 0);
	assert_int_equal(d.s.page, PAGE_PLAY);
	sitting_key(&d, 46000, KEY_FORWARD);
	assert_int_equal(d.silences, 1);
	assert_int_equal(d.s.page, PAGE_SILENT);
	assert_int_equal(d.mark[1], MARK_NONE);
}

/* The late half second is only behind a change that had time for marks. */
static void test_late_inside_a_round(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_ROUND, 48000);
	sitting_start(&d);
	/* Finger 2 begins at 47 s. */
	sitting_key(&d, 47300, KEY_FORWARD);
	assert_int_equal(d.silences, 1);
	assert_int_equal(d.mark[1], MARK_NONE);

	sitting_begin(&d, &r, &nothing, MARKING_ROUND, 48000);
	sitting_start(&d);
	sitting_key(&d, 84300, KEY_FORWARD);
	assert_int_equal(d.silences, 0);
	check_marks(1, "cccc");
}

/* Once a session: with all clean, from the lowest rung, only one step. */
static void test_rung_rises_once(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	r.stage[TONE].start_pulses = 4;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	d.s.plan.clean_rounds = 1;
	sitting_start(&d);
	all_clean_until(0, minutes(5, 0));
	assert_int_equal(d.turn[9].pulses, 4);
	assert_int_equal(d.turn[13].pulses, 6);
	assert_int_equal(d.turn[17].pulses, 6);
	assert_true(sitting_said(&d, "Next: 6 pulses.\n"));
	assert_false(sitting_said(&d, "Next: 8"));
}

/* What stays as it is, is not said. */
static void test_same_rung_is_not_said(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_ROUND, 48000);
	sitting_start(&d);
	sitting_key(&d, minutes(2, 0), KEY_OTHER);
	sitting_until(&d, minutes(5, 0));
	assert_int_equal(d.how, ENDED_WHOLE);
	for (int pulses = 4; pulses <= 8; pulses += 2) {
		char words[] = "Next: 4 pulses";

		words[6] = (char)('0' + pulses);
		assert_false(sitting_said(&d, words));
	}
}

/* The air as the work: eight swings, marked one by one, none has a bow. */
static void test_air(void **state)
{
	struct routine r = programme_cello(AIR);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_start(&d);
	all_clean_until(0, minutes(3, 0));
	assert_int_equal(d.turns, 8);
	for (int t = 0; t < 8; t++) {
		assert_int_equal(d.turn[t].start_ms, 8000 + t * 20000);
		assert_int_equal(d.turn[t].unit, -1);
		assert_int_equal(d.turn[t].bows_asked, 0);
		assert_int_equal(d.turn[t].first_go, t == 0);
		assert_int_equal(d.mark[t], MARK_CLEAN);
	}
	assert_int_equal(d.length_ms, 168000);
	assert_int_equal(d.how, ENDED_WHOLE);
}

/* Who comes next is heard in the change; a lead-in tells by itself. */
static void test_what_is_heard(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	r.stage[TONE].fade_after = 10;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_start(&d);
	sitting_key(&d, minutes(2, 0), KEY_OTHER);
	sitting_until(&d, minutes(5, 0));
	assert_int_equal(d.passage[0].bows_each, 4);
	assert_int_equal(d.passage[0].settle_ms, 4000);
	assert_int_equal(d.passage[1].coming, 0);
	assert_int_equal(d.passage[3].coming, 1);
	assert_int_equal(d.passage[5].coming, 0);
	assert_int_equal(d.passage[4].settle_ms, 0);
	assert_int_equal(d.passage[4].count_in_bows, 0);
	for (int u = 0; u < 4; u++)
		assert_int_equal(d.passage[3].unit[u], u + 1);
	for (int p = 3; p < 6; p++) {
		assert_int_equal(d.passage[p].fade_after, 10);
		assert_int_equal(d.passage[p].bows_before, (p - 3) * 8);
	}
	assert_true(sitting_said(&d,
	    "Work: A tone apart, 6 pulses.\n"
	    "ARM LEADS, finger 1.\n"));
	assert_true(sitting_said(&d, "Clean or shaky? Next: finger 2.\n"));
}

/* Every passage can be made into a score. */
static void test_scores(void **state)
{
	static struct score score;
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_ROUND, 48000);
	sitting_start(&d);
	sitting_until(&d, minutes(2, 50));
	assert_int_equal(d.passages, 4);
	for (int p = 0; p < d.passages; p++)
		assert_true(score_make(&score, &d.passage[p], 48000));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_times_with_pedals),
		cmocka_unit_test(test_times_without_pedals),
		cmocka_unit_test(test_rung_rises),
		cmocka_unit_test(test_rung_by_marks),
		cmocka_unit_test(test_rung_falls_late),
		cmocka_unit_test(test_late_marks),
		cmocka_unit_test(test_repeats),
		cmocka_unit_test(test_changes_of_mind),
		cmocka_unit_test(test_marks_of_a_round),
		cmocka_unit_test(test_inside_a_round),
		cmocka_unit_test(test_late_inside_a_round),
		cmocka_unit_test(test_rung_rises_once),
		cmocka_unit_test(test_same_rung_is_not_said),
		cmocka_unit_test(test_air),
		cmocka_unit_test(test_what_is_heard),
		cmocka_unit_test(test_scores),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
