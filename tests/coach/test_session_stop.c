/* test_session_stop.c - silence, going on, pain, the cap, and nobody there */
#include "sitting.h"

#include "evenhand/base/tongue.h"

static struct sitting d;
static const struct history nothing;

static int64_t minutes(int m, int s)
{
	return (m * 60 + s) * INT64_C(1000);
}

static void begin(enum marking marking, int rate)
{
	static struct routine r;

	r = programme_cello(TONE);
	sitting_begin(&d, &r, &nothing, marking, rate);
	sitting_start(&d);
}

/* It hurts at 3:20: silence at once, and every whole turn so far is kept. */
static void test_hurt(void **state)
{
	(void)state;
	for (int m = MARKING_TURN; m <= MARKING_ROUND; m++) {
		begin((enum marking)m, 48000);
		sitting_key(&d, minutes(2, 0), KEY_OTHER);
		sitting_key(&d, minutes(3, 12) + 2000, KEY_SHAKY);
		sitting_key(&d, minutes(3, 20), KEY_HURT);
		assert_int_equal(d.silences, 1);
		assert_int_equal(
		    d.silence_frame, sitting_at(&d, minutes(3, 20)));
		assert_int_equal(d.e.at[0].kind, EFFECT_SILENCE);
		assert_int_equal(sitting_turns_of(&d, WIDE), 4);
		assert_int_equal(sitting_turns_of(&d, THIRDS), 4);
		assert_int_equal(sitting_turns_of(&d, TONE), 4);
		assert_int_equal(d.s.page, PAGE_PAIN_WHERE);
		assert_false(d.ended);
		for (int back = 0; back < PAIN_WRIST; back++)
			sitting_soon(&d, KEY_BACK);
		sitting_soon(&d, KEY_FORWARD);
		assert_int_equal(d.how, ENDED_PAIN);
		assert_int_equal(d.length_ms, minutes(3, 20));
		assert_int_equal(d.notes, 1);
		assert_int_equal(d.note[0].kind, NOTE_PAIN);
		assert_int_equal(d.note[0].finger, 0);
		assert_string_equal(d.note[0].words, "wrist");
		assert_int_equal(
		    session_next_start(&d.s).id, M_SESSION_NEXT_PAIN);
		assert_true(sitting_said(&d, "Playing through pain"));
		/* Nothing to keep but rest, though finger 1 was shaky. */
		assert_int_equal(session_keep(&d.s).id, M_NONE);
		/* At one at night four o'clock is this morning. */
		d.s.plan.now.utc += 8 * INT64_C(3600);
		assert_int_equal(
		    session_next_start(&d.s).id, M_SESSION_NEXT_PAIN_NIGHT);
	}
}

/* What is kept is the same in every language, and shown in one's own. */
static void test_hurt_in_german(void **state)
{
	static const struct tongue german = {
		.sentence[M_SESSION_WORD_WRIST] = "Handgelenk",
	};

	(void)state;
	tongue_set(&german);
	begin(MARKING_TURN, 48000);
	sitting_key(&d, minutes(2, 0), KEY_HURT);
	for (int back = 0; back < PAIN_WRIST; back++)
		sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_string_equal(d.note[0].words, "wrist");
	assert_string_equal(history_place("wrist"), "Handgelenk");
	assert_string_equal(history_place("Warum?"), "Warum?");
	tongue_set(NULL);
	assert_string_equal(history_place("wrist"), "wrist");
}

/* h counts even within a bounce of another key, and in the lead-in. */
static void test_hurt_at_any_time(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 44500, KEY_CLEAN);
	sitting_key(&d, 44520, KEY_HURT);
	assert_int_equal(d.s.page, PAGE_PAIN_WHERE);
	sitting_digit(&d, 45000, 3);
	assert_int_equal(d.note[0].kind, NOTE_PAIN);
	assert_int_equal(d.note[0].finger, 3);
	assert_true(sitting_said(&d, "do not burst it"));

	begin(MARKING_TURN, 48000);
	sitting_key(&d, 2000, KEY_HURT);
	assert_int_equal(d.s.page, PAGE_PAIN_WHERE);
	/* It was a slip: silence, as after any other stop. */
	for (int back = 0; back < PAIN_SLIP; back++)
		sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_SILENT);
	assert_int_equal(d.notes, 0);
}

/* Silenced in the second bow of finger 2, and on again with its first bow. */
static void test_restart(void **state)
{
	static const int rates[] = { 48000, 44100 };

	(void)state;
	for (int i = 0; i < 2; i++) {
		int rate = rates[i];

		begin(MARKING_TURN, rate);
		sitting_key(&d, 53000, KEY_SILENCE);
		assert_int_equal(d.silences, 1);
		assert_int_equal(d.s.page, PAGE_SILENT);
		sitting_key(&d, 60000, KEY_FORWARD);
		/* 250 ms to decide, a bow to count in, then finger 2 to 4. */
		assert_int_equal(d.frame[d.passages - 1],
		    sitting_at(&d, 60000) + frames_of_ms(250, rate));
		assert_int_equal(d.passage[d.passages - 1].settle_ms, 0);
		assert_int_equal(d.passage[d.passages - 1].count_in_bows, 1);
		assert_int_equal(d.passage[d.passages - 1].turns, 3);
		assert_int_equal(d.passage[d.passages - 1].unit[0], 2);
		assert_true(sitting_said(&d, "Again: finger 2.\n"));
		sitting_key(&d, 61000, KEY_OTHER);
		sitting_until(&d, minutes(2, 10));
		assert_int_equal(d.turn[2].unit, 1);
		assert_int_equal(d.turn[2].resets, 1);
		assert_int_equal(d.turn[2].bows_done, 2);
		assert_int_equal(d.turn[2].start_ms, 64250);
		assert_int_equal(d.turn[3].resets, 0);
		assert_int_equal(d.turn[3].start_ms, 76250);
		/* The next block: three turns after 64.25 s, with its lead. */
		assert_int_equal(d.turn[5].start_ms, 64250 + 36000 + 8000);
		assert_int_equal(
		    d.frame[3], d.frame[2] + frames_of_ms(4000 + 36000, rate));
	}
}

/* A silence in a lead-in is no reset: no bow had begun. */
static void test_stop_in_lead_in(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 30000, KEY_BACK);
	assert_int_equal(d.silences, 1);
	sitting_key(&d, 31000, KEY_FORWARD);
	sitting_until(&d, 44000);
	assert_int_equal(d.turn[1].unit, 0);
	assert_int_equal(d.turn[1].resets, 0);
	assert_int_equal(d.turn[1].start_ms, 31250 + 4000);
}

/* Space in the change before a block: then the whole lead-in comes. */
static void test_stop_before_block(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 26000, KEY_SILENCE);
	sitting_key(&d, 40000, KEY_FORWARD);
	assert_int_equal(d.passage[1].settle_ms, 4000);
	assert_int_equal(d.passage[1].count_in_bows, 1);
	sitting_until(&d, 59000);
	assert_int_equal(d.turns, 2);
	assert_int_equal(d.turn[1].start_ms, 40250 + 8000);

	/* The same when the block was decided already. */
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 27900, KEY_SILENCE);
	assert_int_equal(d.passages, 2);
	sitting_key(&d, 40000, KEY_FORWARD);
	assert_int_equal(d.passages, 3);
	assert_int_equal(d.passage[2].settle_ms, 4000);
}

/* Silence uses the cap's time: what cannot finish does not start. */
static void test_cap_cuts(void **state)
{
	static const struct {
		int pause_ms, work_turns, cut_unit;
		enum marking marking;
	} cases[] = {
		/* 292 s were planned; 8 s are free. */
		{ 0, 12, 0, MARKING_TURN },
		{ 10000, 11, 0, MARKING_TURN },
		{ 22000, 10, 0, MARKING_TURN },
		{ 46000, 8, 0, MARKING_TURN },
		{ 10000, 11, 0, MARKING_ROUND },
		{ 22000, 10, 0, MARKING_ROUND },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		begin(cases[i].marking, 48000);
		/* In the lead-in of wide, 4 s before its first bow. */
		if (cases[i].pause_ms > 0) {
			sitting_key(&d, 32000, KEY_SILENCE);
			sitting_key(&d, 31750 + cases[i].pause_ms, KEY_FORWARD);
		}
		sitting_key(&d, minutes(2, 0), KEY_OTHER);
		sitting_key(&d, minutes(3, 3), KEY_OTHER);
		sitting_until(&d, minutes(5, 0));
		assert_int_equal(
		    sitting_turns_of(&d, TONE), cases[i].work_turns);
		assert_int_equal(
		    d.how, cases[i].pause_ms ? ENDED_CAP : ENDED_WHOLE);
		assert_true(d.length_ms <= 300000);
		assert_int_equal(d.s.page, PAGE_END);
		/* The mark still had its time. */
		if (cases[i].marking == MARKING_TURN) {
			int64_t last = d.turn[d.turns - 1].start_ms;

			assert_int_equal(d.length_ms, last + 12000);
		}
	}
}

/* To the ms: what ends with the cap is played, and nothing is announced in
 * vain. */
static void test_cap_to_the_ms(void **state)
{
	static const struct {
		int cap_ms, work_turns, length_ms, coming;
	} cases[] = {
		{ 292000, 12, 292000, 1 },
		{ 291990, 11, 280000, 1 },
		{ 256000, 9, 256000, 1 },
		{ 255990, 8, 244000, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		begin(MARKING_TURN, 44100);
		d.s.plan.cap_ms = cases[i].cap_ms;
		sitting_key(&d, minutes(2, 0), KEY_OTHER);
		sitting_until(&d, minutes(5, 0));
		assert_int_equal(
		    sitting_turns_of(&d, TONE), cases[i].work_turns);
		assert_int_equal(d.length_ms, cases[i].length_ms);
		assert_int_equal(d.how, i == 0 ? ENDED_WHOLE : ENDED_CAP);
		/* Of round 2: whether round 3 will come. */
		assert_int_equal(d.passage[4].coming, cases[i].coming);
	}
}

/* A routine without a count-in still tells when to begin again. */
static void test_restart_without_count_in(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	r.count_in_bows = 0;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_start(&d);
	assert_int_equal(d.passage[0].count_in_bows, 0);
	sitting_key(&d, 40000, KEY_SILENCE);
	sitting_key(&d, 45000, KEY_FORWARD);
	assert_int_equal(d.passage[d.passages - 1].count_in_bows, 1);
}

/* Help that was owed is not said after a silence: its page told the keys. */
static void test_help_and_silence(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 40000, KEY_HELP);
	sitting_key(&d, 41000, KEY_SILENCE);
	sitting_key(&d, 42000, KEY_FORWARD);
	sitting_until(&d, 60000);
	assert_int_equal(d.turns, 2);
	assert_false(sitting_said(&d, "Space: silence."));
}

/* A silence that outlasts the cap: forward ends it, honestly. */
static void test_cap_gone(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 50000, KEY_SILENCE);
	sitting_key(&d, minutes(3, 0), KEY_OTHER);
	sitting_key(&d, minutes(5, 30), KEY_FORWARD);
	assert_int_equal(d.how, ENDED_CAP);
	assert_int_equal(d.s.page, PAGE_END);
	assert_int_equal(d.length_ms, 50000);
	assert_int_equal(d.turns, 2);
}

/* Nobody there: the turn's bows end, then all ends. */
static void test_no_key(void **state)
{
	(void)state;
	/* The last key came just before the first sound: 2:59.75 is in a bow. */
	begin(MARKING_TURN, 48000);
	sitting_until(&d, minutes(3, 0) - 1);
	assert_int_equal(d.silences, 0);
	sitting_until(&d, minutes(3, 0));
	assert_int_equal(d.ended, 1);
	assert_int_equal(d.how, ENDED_NO_KEY);
	assert_int_equal(d.turns, 12);
	assert_int_equal(d.length_ms, minutes(3, 0));
	/* The end page waits as long, then it is over. */
	sitting_until(&d, minutes(5, 59));
	assert_int_equal(d.s.page, PAGE_END);
	sitting_until(&d, minutes(6, 0));
	assert_int_equal(d.over, 1);

	/* In a change it is at once: 3:37.5 is between 3:36 and 3:40. */
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 37500, KEY_OTHER);
	sitting_until(&d, minutes(4, 0));
	assert_int_equal(d.how, ENDED_NO_KEY);
	assert_int_equal(d.length_ms, minutes(3, 37) + 500);

	begin(MARKING_TURN, 48000);
	sitting_key(&d, 5000, KEY_OTHER);
	/* Three minutes later is 3:05, in the bows of 3:04 to 3:12. */
	sitting_until(&d, minutes(3, 12) - 1);
	assert_int_equal(d.ended, 0);
	sitting_until(&d, minutes(3, 12));
	assert_int_equal(d.how, ENDED_NO_KEY);
	assert_int_equal(d.turns, 13);
	assert_int_equal(d.length_ms, minutes(3, 12));
	assert_int_equal(d.silences, 1);
}

/* How often a line was said so far. */
static int times_said(const char *line)
{
	int times = 0;

	for (const char *s = d.said; (s = strstr(s, line)) != NULL; s++)
		times++;
	return times;
}

/* Lets time go on until a line is said, or it ends. */
static void to_line(const char *line)
{
	while (times_said(line) == 0 && d.s.page == PAGE_PLAY)
		sitting_step(&d,
		    &(struct input) {
			.kind = INPUT_FRAME, .frame = session_wake(&d.s) });
}

/* Two minutes without a key: the next change asks, and then no other one. */
static void test_still_there(void **state)
{
	const char *ask = "Still there? Mark now, or it ends soon.\n";
	int64_t asked;

	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 1000, KEY_OTHER);
	sitting_until(&d, minutes(2, 0));
	assert_int_equal(times_said("Still there?"), 0);
	to_line(ask);
	assert_int_equal(d.s.phase, PHASE_CHANGE);
	asked = frames_to_ms(d.s.now - d.s.first_sound, 48000);
	assert_in_range(asked, 121000, 121000 + 12000);
	sitting_until(&d, minutes(3, 0));
	assert_int_equal(times_said("Still there?"), 1);
	/* A key counts from anew, and so does the question. */
	sitting_key(&d, minutes(3, 0) + 500, KEY_OTHER);
	assert_int_equal(d.ended, 0);
	sitting_until(&d, minutes(4, 51));
	assert_int_equal(times_said("Still there?"), 1);
	assert_int_equal(d.ended, 0);
}

/* A round of three minutes has no change for marks: a digit is asked for. */
static void test_still_there_long_round(void **state)
{
	struct routine r = programme_cello(TONE);
	int64_t at;

	(void)state;
	r.bows_each = 12;
	r.cap_ms = 900000;
	sitting_begin(&d, &r, &nothing, MARKING_ROUND, 48000);
	sitting_start(&d);
	/* The swing is over, a round of 4 x 48 s has begun. */
	sitting_until(&d, 33000);
	sitting_key(&d, 34000, KEY_OTHER);
	to_line("Still there?");
	assert_int_equal(times_said("Still there? A digit says yes.\n"), 1);
	assert_int_equal(d.s.phase, PHASE_CHANGE);
	assert_true(d.s.turn < d.s.at.passage.turns - 1);
	at = frames_to_ms(d.s.now - d.s.first_sound, 48000);
	assert_in_range(at, 34000 + STILL_MS, 34000 + NO_KEY_MS);
	/* It does nothing else. */
	sitting_digit(&d, at + 1000, 1);
	assert_int_equal(d.silences, 0);
	sitting_until(&d, 34000 + NO_KEY_MS + 10000);
	assert_int_equal(d.ended, 0);
	assert_int_equal(d.s.page, PAGE_PLAY);
}

static void test_no_key_on_pages(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	sitting_reach(&d, frames_of_ms(179999, 48000));
	assert_int_equal(d.over, 0);
	sitting_reach(&d, frames_of_ms(180000, 48000));
	assert_int_equal(d.over, 1);
	assert_int_equal(d.ended, 0);
	assert_int_equal(d.s.ended, ENDED_NOT_TODAY);
	assert_true(sitting_said(
	    &d, "No key came for three minutes, so this ended by itself."));

	begin(MARKING_TURN, 48000);
	sitting_key(&d, 50000, KEY_SILENCE);
	sitting_until(&d, 230000);
	assert_int_equal(d.how, ENDED_NO_KEY);
	assert_int_equal(d.length_ms, 50000);

	/* It hurt, and nobody said where: it is still kept. */
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 50000, KEY_HURT);
	sitting_until(&d, 230000);
	assert_int_equal(d.how, ENDED_PAIN);
	assert_int_equal(d.note[0].kind, NOTE_PAIN);
}

/* Silent, something? nothing hurts, end here. */
static void test_end_early(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 50000, KEY_BACK);
	sitting_soon(&d, KEY_BACK);
	assert_int_equal(d.s.page, PAGE_PAIN);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_LEAVE);
	sitting_soon(&d, KEY_BACK);
	assert_int_equal(d.s.page, PAGE_END);
	assert_int_equal(d.how, ENDED_EARLY);
	assert_int_equal(d.length_ms, 50000);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_QUESTION);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.over, 1);

	/* And going on from there, or saying that it hurts after all. */
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 50000, KEY_LEAVE);
	assert_int_equal(d.s.page, PAGE_LEAVE);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_PLAY);
	sitting_soon(&d, KEY_SILENCE);
	sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_BACK);
	assert_int_equal(d.s.page, PAGE_PAIN_WHERE);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.how, ENDED_PAIN);
	assert_int_equal(d.note[0].finger, 1);
}

/* Cut off after work turn 6: fingers 1 and 2 twice, 3 and 4 once. */
static void test_cut_off(void **state)
{
	int work[4] = { 0 };

	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, minutes(2, 0), KEY_OTHER);
	/* Turn 6 has its bows from 3:28 to 3:36. */
	sitting_input(&d, sitting_at(&d, minutes(3, 38)),
	    (struct input) { .kind = INPUT_END });
	assert_int_equal(d.how, ENDED_INPUT);
	assert_int_equal(d.over, 1);
	assert_int_equal(d.silences, 1);
	for (int t = 0; t < d.turns; t++)
		if (d.turn[t].kind == BLOCK_WORK)
			work[d.turn[t].unit]++;
	assert_int_equal(work[0], 2);
	assert_int_equal(work[1], 2);
	assert_int_equal(work[2], 1);
	assert_int_equal(work[3], 1);
	/* Nothing happens any more. */
	sitting_until(&d, minutes(30, 0));
	sitting_key(&d, minutes(30, 1), KEY_FORWARD);
	assert_int_equal(d.over, 1);
	assert_int_equal(session_wake(&d.s), INT64_MAX);
}

/* Time asleep passes on the wall: the next session is that much later. */
static void test_gap_moves_the_next_start(void **state)
{
	char words[256];
	struct message m;

	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_input(&d, sitting_at(&d, 53000),
	    (struct input) { .kind = INPUT_GAP, .lost_ms = 2 * 3600 * 1000 });
	m = session_next_start(&d.s);
	message_text(&m, words, sizeof(words));
	/* 17:00:53, two hours asleep, three apart. */
	assert_non_null(strstr(words, "22:01"));
}

/* A press a quarter of a second after the one before counts, none sooner. */
static void test_apart(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 38000, KEY_SILENCE);
	sitting_key(&d, 38249, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_SILENT);
	begin(MARKING_TURN, 48000);
	sitting_key(&d, 38000, KEY_SILENCE);
	sitting_key(&d, 38250, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_PLAY);
}

/* A dropout of a turn that was silenced is not one of its replay. */
static void test_dropout_forgotten(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_input(&d, sitting_at(&d, 41000),
	    (struct input) { .kind = INPUT_DROPOUT });
	sitting_key(&d, 42000, KEY_SILENCE);
	sitting_key(&d, 50000, KEY_FORWARD);
	sitting_until(&d, minutes(1, 10));
	assert_int_equal(d.turn[1].resets, 1);
	assert_int_equal(d.turn[1].dropouts, 0);
}

/* A computer that slept: the turn is kept as broken off, then played anew. */
static void test_gap(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_input(
	    &d, sitting_at(&d, 53000), (struct input) { .kind = INPUT_GAP });
	assert_int_equal(d.turns, 3);
	assert_int_equal(d.turn[2].bows_asked, 2);
	assert_int_equal(d.turn[2].bows_done, 1);
	assert_int_equal(d.s.page, PAGE_SILENT);
	assert_int_equal(d.silences, 1);
	sitting_key(&d, 60000, KEY_FORWARD);
	sitting_key(&d, 74000, KEY_CLEAN);
	assert_int_equal(d.turns, 4);
	assert_int_equal(d.turn[3].unit, 1);
	assert_int_equal(d.turn[3].bows_done, 2);
	assert_int_equal(d.turn[3].resets, 0);
	assert_int_equal(d.mark[2], MARK_NONE);
	assert_int_equal(d.mark[3], MARK_CLEAN);
	/* The end of the round: one press and another, the second undoes. */
	begin(MARKING_ROUND, 48000);
	sitting_input(
	    &d, sitting_at(&d, 53000), (struct input) { .kind = INPUT_GAP });
	sitting_key(&d, 60000, KEY_FORWARD);
	sitting_until(&d, 95000);
	assert_int_equal(d.turns, 6);
	sitting_digit(&d, 95500, 2);
	assert_int_equal(d.mark[2], MARK_NONE);
	assert_int_equal(d.mark[3], MARK_SHAKY);
	assert_int_equal(d.mark[5], MARK_CLEAN);
	sitting_digit(&d, 96000, 2);
	for (int t = 1; t < 6; t++)
		assert_int_equal(d.mark[t], MARK_NONE);
}

static void test_gap_in_change(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	/* In a change no turn is broken off. */
	sitting_input(
	    &d, sitting_at(&d, 75000), (struct input) { .kind = INPUT_GAP });
	assert_int_equal(d.turns, 4);
	assert_int_equal(d.s.page, PAGE_SILENT);
}

static void test_sound_lost(void **state)
{
	(void)state;
	begin(MARKING_TURN, 48000);
	sitting_input(&d, sitting_at(&d, 40000),
	    (struct input) { .kind = INPUT_SOUND_LOST });
	assert_true(d.s.silent_device);
	assert_int_equal(d.s.page, PAGE_PLAY);
	sitting_input(&d, sitting_at(&d, 41000),
	    (struct input) { .kind = INPUT_DROPOUT });
	sitting_input(&d, sitting_at(&d, 45000),
	    (struct input) { .kind = INPUT_DROPOUT });
	sitting_input(&d, sitting_at(&d, 62000),
	    (struct input) { .kind = INPUT_SOUND_BACK });
	assert_false(d.s.silent_device);
	/* Over bows nothing is said, but in the change behind them, once. */
	sitting_until(&d, 68000 - 1);
	assert_int_equal(d.s.phase, PHASE_BOWS);
	assert_false(sitting_said(&d, "ound is back."));
	sitting_until(&d, 68000);
	assert_int_equal(d.s.phase, PHASE_CHANGE);
	assert_true(sitting_said(&d, "finger 4.\nSound is back.\n"));
	sitting_until(&d, minutes(1, 30));
	assert_null(
	    strstr(strstr(d.said, "Sound is back.") + 1, "Sound is back."));
	assert_int_equal(d.turn[1].dropouts, 1);
	/* Two turns more begin without any sound. */
	assert_int_equal(d.turn[2].dropouts, 1);
	assert_int_equal(d.turn[3].dropouts, 1);
	assert_int_equal(d.turn[4].dropouts, 0);
	assert_int_equal(d.passages, 3);
	assert_true(sitting_said(&d, "The sound is gone."));
	assert_false(sitting_said(&d, "The sound is back."));
	sitting_input(&d, d.s.now, (struct input) { .kind = INPUT_SOUND_LOST });
	assert_int_equal(d.s.phase, PHASE_LEAD);
	sitting_input(&d, d.s.now, (struct input) { .kind = INPUT_SOUND_BACK });
	assert_true(sitting_said(&d, "The sound is back."));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_hurt),
		cmocka_unit_test(test_hurt_in_german),
		cmocka_unit_test(test_hurt_at_any_time),
		cmocka_unit_test(test_restart),
		cmocka_unit_test(test_stop_in_lead_in),
		cmocka_unit_test(test_stop_before_block),
		cmocka_unit_test(test_cap_cuts),
		cmocka_unit_test(test_cap_to_the_ms),
		cmocka_unit_test(test_restart_without_count_in),
		cmocka_unit_test(test_help_and_silence),
		cmocka_unit_test(test_cap_gone),
		cmocka_unit_test(test_no_key),
		cmocka_unit_test(test_still_there),
		cmocka_unit_test(test_still_there_long_round),
		cmocka_unit_test(test_no_key_on_pages),
		cmocka_unit_test(test_end_early),
		cmocka_unit_test(test_cut_off),
		cmocka_unit_test(test_gap_moves_the_next_start),
		cmocka_unit_test(test_apart),
		cmocka_unit_test(test_dropout_forgotten),
		cmocka_unit_test(test_gap),
		cmocka_unit_test(test_gap_in_change),
		cmocka_unit_test(test_sound_lost),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
