/*
 * test_session_words.c - nothing is said over the pulses
 *
 * What is said while the clock of the music runs is read aloud, line after
 * line, at 17 letters a second: about 180 words a minute, a usual pace of
 * reading aloud [O].  It must be over before the next count-in or bow.
 */
#include "../base/catalogue.h"
#include "sitting.h"

enum { LETTERS_A_SECOND = 17, STAGES = 6 };

static struct sitting d;
static struct routine r;
static const struct history nothing;
static int64_t talk_until; /* frame */
static int lines;

/* The next count-in or bow. */
static int64_t next_pulse(void)
{
	const struct passage *p = &d.s.at.passage;
	int64_t ms = passage_ms(p);

	if (d.s.phase == PHASE_LEAD)
		ms = p->settle_ms;
	else if (d.s.turn < p->turns - 1)
		ms = passage_turn_ms(p, d.s.turn + 1);
	return d.s.at.frame + frames_of_ms(ms, d.s.rate);
}

static void listen(size_t from)
{
	size_t letters = d.said_length - from;

	if (letters == 0 || d.s.page != PAGE_PLAY)
		return;
	if (talk_until < d.s.now)
		talk_until = d.s.now;
	talk_until += (int64_t)letters * d.s.rate / LETTERS_A_SECOND;
	lines++;
	if (talk_until > next_pulse())
		fail_msg("%lld ms too long at %lld ms: %s",
		    (long long)frames_to_ms(
			talk_until - next_pulse(), d.s.rate),
		    (long long)frames_to_ms(
			d.s.now - d.s.first_sound, d.s.rate),
		    d.said + from);
}

static void step(int64_t frame, enum input_kind kind, enum key key)
{
	size_t from = d.said_length;

	sitting_step(
	    &d, &(struct input) { .kind = kind, .frame = frame, .key = key });
	listen(from);
}

/* What was heard of a turn comes some time after it; kinds take turns. */
static void hear(int number, int kind)
{
	struct listened l = { .told = true,
		.answer = kind == 4 ? TURN_ELSEWHERE : TURN_HEARD,
		.bows = 2,
		.tops = 11 - 2 * (kind == 1),
		.tops_asked = 12,
		.travel_share = kind == 2 ? 0.7F : 1,
		.stops = kind == 3,
		.timed = kind == 5,
		.late_s = 0.2F,
		.rate_hz = kind == 6 ? 5.4F : 0 };
	size_t from;
	struct input in = { .kind = INPUT_HEARD,
		.frame = d.s.now + d.s.rate / 2,
		.number = number,
		.heard = &l };

	if (kind < 0)
		return;
	/* What was due by then is said first. */
	step(in.frame, INPUT_FRAME, KEY_OTHER);
	from = d.said_length;
	sitting_step(&d, &in);
	listen(from);
}

/*
 * One session, marked a second after each turn or round, with what a microphone
 * heard, or without one (-1).
 */
static void listen_to(int stage, enum marking marking, enum key mark, int kind)
{
	int marked = 0;
	int heard = 0;

	r = programme_cello(stage);
	sitting_begin(&d, &r, &nothing, marking, 48000);
	sitting_start(&d);
	talk_until = 0;
	while (d.s.page == PAGE_PLAY) {
		step(session_wake(&d.s), INPUT_FRAME, KEY_OTHER);
		if (d.s.page == PAGE_PLAY && d.s.phase == PHASE_CHANGE &&
		    d.turns > marked &&
		    (marking == MARKING_TURN ||
			d.s.turn == d.s.at.passage.turns - 1)) {
			step(d.s.now + d.s.rate, INPUT_KEY, mark);
			marked = d.turns;
		}
		for (; heard < d.turns; heard++)
			hear(heard, kind);
	}
	assert_int_equal(d.how, ENDED_WHOLE);
}

static void test_every_stage(void **state)
{
	(void)state;
	for (int stage = 0; stage < STAGES; stage++) {
		listen_to(stage, MARKING_TURN, KEY_CLEAN, -1);
		listen_to(stage, MARKING_TURN, KEY_SHAKY, -1);
		listen_to(stage, MARKING_ROUND, KEY_CLEAN, -1);
		listen_to(stage, MARKING_ROUND, KEY_SHAKY, -1);
	}
	assert_true(lines > 200);
}

/* Nor is what was heard, whatever it was. */
static void test_every_stage_heard(void **state)
{
	int without = 0, with = 0;

	(void)state;
	for (int stage = 1; stage < STAGES; stage++)
		for (int kind = -1; kind <= 6; kind++) {
			lines = 0;
			listen_to(stage, MARKING_TURN, KEY_CLEAN, kind);
			listen_to(stage, MARKING_ROUND, KEY_SHAKY, kind);
			if (kind < 0)
				without += lines * 7;
			else
				with += lines;
		}
	/* And something was said of it. */
	assert_true(with > without + 10);
}

/* --- nobody there -------------------------------------------------------- */

static bool says(size_t from, const char *line)
{
	return strstr(d.said + from, line) != NULL;
}

/*
 * Nobody presses a key.  Every 170 s somebody does after all, so that it never
 * ends by itself, and a mark comes as soon as the question for it is over.
 */
static int ask_alone(const struct routine *routine, enum marking marking)
{
	size_t from;
	int asked = 0;

	sitting_begin(&d, routine, &nothing, marking, 48000);
	sitting_start(&d);
	talk_until = 0;
	while (d.s.page == PAGE_PLAY) {
		int64_t since;

		from = d.said_length;
		step(session_wake(&d.s), INPUT_FRAME, KEY_OTHER);
		since = d.s.now - d.s.last_key;
		if (says(from, "Still there?")) {
			assert_true(since >= frames_of_ms(STILL_MS, d.s.rate));
			assert_true(since < frames_of_ms(NO_KEY_MS, d.s.rate));
			assert_int_equal(d.s.phase, PHASE_CHANGE);
			/* It takes the place of the question. */
			assert_false(says(from, "How was"));
			assert_false(says(from, "Clean or"));
			asked++;
		}
		if (since >= frames_of_ms(165000, d.s.rate) &&
		    d.s.page == PAGE_PLAY)
			step(d.s.now, INPUT_KEY, KEY_OTHER);
	}
	assert_int_equal(d.how, ENDED_WHOLE);
	return asked;
}

static void test_nobody_there(void **state)
{
	(void)state;
	for (int stage = 0; stage < STAGES; stage++) {
		struct routine tones = programme_cello(stage);

		assert_true(ask_alone(&tones, MARKING_TURN) > 0);
		assert_true(ask_alone(&tones, MARKING_ROUND) > 0);
		/* Pairs have the longest names. */
		tones.take = TAKE_PAIRS;
		for (int u = 0; u < tones.units; u++)
			memcpy(tones.unit[u].name, "0-1", 4);
		assert_true(ask_alone(&tones, MARKING_TURN) > 0);
		assert_true(ask_alone(&tones, MARKING_ROUND) > 0);
	}
}

/*
 * Nor in German.  Its words are longer, so less of what was heard is said: what
 * has no time is left out.
 */
static void test_german(void **state)
{
	struct catalogue *c = catalogue_read("src/po/de.po");

	assert_non_null(c);
	tongue_set(&c->tongue);
	test_every_stage(state);
	for (int stage = 1; stage < STAGES; stage++)
		for (int kind = 0; kind <= 6; kind++) {
			listen_to(stage, MARKING_TURN, KEY_CLEAN, kind);
			listen_to(stage, MARKING_ROUND, KEY_SHAKY, kind);
		}
	tongue_set(NULL);
	free(c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_stage),
		cmocka_unit_test(test_every_stage_heard),
		cmocka_unit_test(test_nobody_there),
		cmocka_unit_test(test_german),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
