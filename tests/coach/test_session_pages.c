/* test_session_pages.c - what is asked before and after, with two keys */
#include "sitting.h"

static struct sitting d;
static const struct history nothing;

static struct routine r;

static void begin_on(int stage)
{
	r = programme_cello(stage);
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
}

static void soon_digit(int digit)
{
	sitting_input(&d, d.s.now + 48000,
	    (struct input) {
		.kind = INPUT_KEY, .key = KEY_DIGIT, .digit = digit });
}

/* The skin of finger 2: its turns are out and go to nobody. */
static void test_hurt_finger(void **state)
{
	(void)state;
	for (int way = 0; way < 2; way++) {
		begin_on(TONE);
		sitting_soon(&d, KEY_BACK);
		assert_int_equal(d.s.page, PAGE_WHERE);
		if (way == 0) {
			sitting_soon(&d, KEY_BACK);
			assert_int_equal(d.s.choice, 1);
			assert_true(sitting_said(&d, "The skin of finger 2?"));
			sitting_soon(&d, KEY_FORWARD);
		} else {
			soon_digit(2);
		}
		assert_int_equal(d.s.page, PAGE_TODAY);
		assert_int_equal(d.notes, 1);
		assert_int_equal(d.note[0].kind, NOTE_SKIN);
		assert_int_equal(d.note[0].finger, 2);
		sitting_soon(&d, KEY_FORWARD);
		sitting_key(&d, 120000, KEY_OTHER);
		sitting_until(&d, 300000);
		assert_int_equal(session_bows(&d.s, 0), 10);
		assert_int_equal(session_bows(&d.s, 1), 0);
		assert_int_equal(session_bows(&d.s, 2), 10);
		assert_int_equal(session_bows(&d.s, 3), 10);
		/* 12 s less in each of five rounds. */
		assert_int_equal(d.length_ms, 292000 - 60000);
		assert_int_equal(d.how, ENDED_WHOLE);
	}
}

/* One more sore finger can be named on today's page. */
static void test_two_fingers(void **state)
{
	(void)state;
	begin_on(TONE);
	sitting_soon(&d, KEY_BACK);
	soon_digit(1);
	soon_digit(4);
	assert_int_equal(d.notes, 2);
	assert_int_equal(d.s.plan.hurt, 1 << 1 | 1 << 4);
	sitting_soon(&d, KEY_FORWARD);
	sitting_until(&d, 60000);
	assert_int_equal(d.turn[1].unit, 1);
	assert_int_equal(d.turn[2].unit, 2);
}

static void test_air_only(void **state)
{
	(void)state;
	begin_on(TONE);
	sitting_soon(&d, KEY_BACK);
	for (int i = 0; i < SORE_ELSEWHERE; i++)
		sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.note[0].kind, NOTE_SORE);
	assert_int_equal(d.s.page, PAGE_TODAY);
	sitting_soon(&d, KEY_FORWARD);
	sitting_until(&d, 120000);
	for (int t = 0; t < d.turns; t++)
		assert_int_equal(d.turn[t].kind, BLOCK_AIR);
	assert_true(d.turns > 0);
	assert_int_equal(d.how, ENDED_WHOLE);
}

/* A slip of the key leads back to the question. */
static void test_not_sore(void **state)
{
	(void)state;
	begin_on(TONE);
	sitting_soon(&d, KEY_BACK);
	for (int i = 0; i < SORE_SLIP; i++)
		sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_SORE);
	assert_int_equal(d.notes, 0);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_TODAY);
	assert_false(d.s.wish.air_only);
}

static void test_not_today(void **state)
{
	(void)state;
	begin_on(TONE);
	sitting_soon(&d, KEY_BACK);
	for (int i = 0; i < SORE_NOT_TODAY; i++)
		sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.over, 1);
	assert_int_equal(d.note[0].kind, NOTE_SORE);
	assert_int_equal(d.begun + d.ended, 0);
	assert_int_equal(d.s.ended, ENDED_NOT_TODAY);

	begin_on(TONE);
	sitting_soon(&d, KEY_FORWARD);
	sitting_soon(&d, KEY_BACK);
	assert_int_equal(d.over, 1);
	assert_int_equal(d.notes, 0);

	begin_on(TONE);
	sitting_soon(&d, KEY_LEAVE);
	assert_int_equal(d.over, 1);
}

/* It hurts before anything was played: nothing is played. */
static void test_hurt_before(void **state)
{
	(void)state;
	begin_on(TONE);
	sitting_soon(&d, KEY_HURT);
	assert_int_equal(d.s.page, PAGE_PAIN_WHERE);
	for (int i = 0; i < PAIN_NUMB; i++)
		sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.note[0].kind, NOTE_PAIN);
	assert_string_equal(d.note[0].words, "numb, tingling, weak or swollen");
	assert_true(sitting_said(&d, "emergency number"));
	assert_int_equal(d.s.page, PAGE_REST);
	assert_int_equal(d.begun + d.ended, 0);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.over, 1);
}

/* h was a slip: back to where it was pressed, with the first choice. */
static void test_slip(void **state)
{
	(void)state;
	begin_on(TONE);
	sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_HURT);
	for (int i = 0; i < PAIN_SLIP; i++)
		sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_WHERE);
	assert_int_equal(d.s.choice, 0);
	assert_int_equal(d.notes, 0);
}

/* Pain earlier today: no start. */
static void test_rest(void **state)
{
	struct past_note note = { .kind = NOTE_PAIN, .words = "" };
	struct history h = { .notes = 1, .note = &note };

	(void)state;
	note.day = moment_practice_day(sitting_now());
	r = programme_cello(TONE);
	sitting_begin(&d, &r, &h, MARKING_TURN, 48000);
	assert_int_equal(d.s.page, PAGE_REST);
	assert_true(session_waits(&d.s));
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.over, 1);
	assert_int_equal(d.begun, 0);
}

static void test_asks_why(void **state)
{
	struct past_sitting last = { .ended = ENDED_NO_KEY };
	struct history h = { .sittings = 1, .sitting = &last };

	(void)state;
	r = programme_cello(TONE);
	sitting_begin(&d, &r, &h, MARKING_TURN, 48000);
	assert_true(sitting_said(&d, "Last time no key came"));
	last.ended = ENDED_WHOLE;
	sitting_begin(&d, &r, &h, MARKING_TURN, 48000);
	assert_false(sitting_said(&d, "Last time no key came"));
}

/*
 * ? tells the keys and changes nothing; over pulses, or with little time left
 * before them, it waits for a change in which marks are given.
 */
static void test_help(void **state)
{
	(void)state;
	begin_on(TONE);
	sitting_soon(&d, KEY_HELP);
	assert_true(sitting_said(&d, "Forward: nothing is sore."));
	assert_int_equal(d.s.page, PAGE_SORE);
	sitting_start(&d);
	sitting_key(&d, 40000, KEY_HELP);
	assert_false(sitting_said(&d, "Forward: clean."));
	sitting_until(&d, 43999);
	assert_false(sitting_said(&d, "Forward: clean."));
	sitting_until(&d, 44000);
	assert_true(sitting_said(&d, "Forward: clean. Back: shaky."));
	assert_int_equal(d.silences, 0);
}

/* When ? is pressed, and when the keys are told; all at 4, 8 and 48 s. */
static void test_help_has_its_time(void **state)
{
	static const struct {
		enum marking marking;
		int pressed_ms, told_ms;
	} cases[] = {
		{ MARKING_TURN, 28000, 28000 }, /* in the lead-in of wide */
		{ MARKING_TURN, 28500, 28500 },
		{ MARKING_TURN, 28501, 44000 },
		{ MARKING_TURN, 33000, 44000 }, /* in its count-in */
		{ MARKING_TURN, 44500, 44500 }, /* in the change */
		{ MARKING_TURN, 44501, 56000 },
		{ MARKING_ROUND, 40000, 77000 }, /* a bow of finger 1 */
		{ MARKING_ROUND, 44100, 77000 }, /* the change after it */
		{ MARKING_ROUND, 80500, 80500 }, /* the round's last change */
		{ MARKING_ROUND, 80501, 133000 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		int told = cases[i].told_ms;

		r = programme_cello(TONE);
		sitting_begin(&d, &r, &nothing, cases[i].marking, 48000);
		sitting_start(&d);
		sitting_key(&d, cases[i].pressed_ms, KEY_HELP);
		if (told > cases[i].pressed_ms) {
			sitting_until(&d, told - 1);
			assert_false(sitting_said(&d, "Space: silence."));
			sitting_until(&d, told);
		}
		if (!sitting_said(&d, "Space: silence."))
			fail_msg("case %zu: not told at %d", i, told);
		assert_int_equal(d.silences, 0);
	}
}

static void finish(const char *marks)
{
	sitting_start(&d);
	sitting_key(&d, 120000, KEY_OTHER);
	for (int t = 0; marks[t]; t++) {
		int64_t change = 156000 + t * 12000;

		sitting_key(&d, change + 1000,
		    marks[t] == 'c'	  ? KEY_FORWARD
			: marks[t] == 's' ? KEY_BACK
					  : KEY_OTHER);
	}
	sitting_until(&d, 300000);
	assert_int_equal(d.s.page, PAGE_END);
}

static void assert_keep(const char *words)
{
	struct message m = session_keep(&d.s);
	char line[512];

	message_text(&m, line, sizeof(line));
	if (!strstr(line, words))
		fail_msg("\"%s\" is not in: %s", words, line);
}

/* One thing to keep, from the marks as they are. */
static void test_keep(void **state)
{
	(void)state;
	begin_on(TONE);
	finish("ccccccssccss");
	assert_keep("finger 3, shaky at \"A tone apart\"");
	begin_on(TONE);
	finish("cccs--ssss--");
	assert_keep("One thing to keep: Forearm and hand in one line. It is "
		    "for finger 4, shaky first go at \"A tone apart\".");
	begin_on(TONE);
	finish("cccccccccccc");
	assert_keep("Nothing was marked shaky.");
	begin_on(TONE);
	finish("------------");
	assert_keep("One thing to keep: Forearm");
}

static void assert_next(enum message_id id, int minute)
{
	struct message m = session_next_start(&d.s);

	assert_int_equal(m.id, id);
	if (id == M_SESSION_NEXT_TODAY)
		assert_int_equal(m.value[0].whole, minute);
}

/* 17:00, 4:52 long, three hours apart: 20:05 when rounded up. */
static void test_next_start(void **state)
{
	struct past_sitting before[2] = { { .blocks = 1 }, { .blocks = 1 } };
	struct history h = { .sittings = 1, .sitting = before };

	(void)state;
	begin_on(TONE);
	finish("");
	assert_next(M_SESSION_NEXT_TODAY, 20 * 60 + 5);
	/* The second one of two a day. */
	before[0].day = moment_practice_day(sitting_now());
	d.s.wish.history = &h;
	assert_next(M_SESSION_NEXT_TOMORROW, 0);
	before[0].day--;
	assert_next(M_SESSION_NEXT_TODAY, 20 * 60 + 5);
	/* Past midnight is tomorrow, and after midnight there is a night. */
	r.hours_apart = 8;
	assert_next(M_SESSION_NEXT_TOMORROW, 0);
	r.hours_apart = 3;
	d.s.plan.now.utc += 8 * 3600;
	d.s.plan.day = moment_practice_day(d.s.plan.now);
	assert_next(M_SESSION_NEXT_AFTER_SLEEP, 0);
}

/* What left no turn behind keeps nobody waiting: it is no session. */
static void test_next_start_unplayed(void **state)
{
	struct past_sitting before = { .blocks = 1 };
	struct history h = { .sittings = 1, .sitting = &before };

	(void)state;
	begin_on(TONE);
	sitting_soon(&d, KEY_FORWARD);
	sitting_soon(&d, KEY_FORWARD);
	sitting_key(&d, 1000, KEY_LEAVE);
	assert_int_equal(d.s.played, 0);
	assert_next(M_SESSION_NEXT_ANY, 0);
	/* The session before it, over half an hour ago, counts on. */
	before.day = moment_practice_day(sitting_now());
	before.began = sitting_now();
	before.began.utc -= 1800;
	d.s.wish.history = &h;
	assert_next(M_SESSION_NEXT_TODAY, 19 * 60 + 30);
	h.sittings = 0;
	d.s.plan.now.utc += 8 * 3600;
	assert_next(M_SESSION_NEXT_AFTER_SLEEP, 0);
}

/* Three rounds at 4, 6 and 6 pulses on a full-size cello, to the metre. */
static void test_metres(void **state)
{
	double metres = 0;

	(void)state;
	begin_on(TONE);
	finish("");
	for (int u = 0; u < 4; u++)
		metres += routine_turn_m(&r, WIDE, u, 4) +
		    routine_turn_m(&r, THIRDS, u, 6) +
		    3 * routine_turn_m(&r, TONE, u, 6);
	assert_true(metres > 10);
	assert_true(session_metres(&d.s) > metres - 0.001);
	assert_true(session_metres(&d.s) < metres + 0.001);
}

static void ask(const char *words)
{
	begin_on(TONE);
	sitting_start(&d);
	sitting_soon(&d, KEY_LEAVE);
	sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_QUESTION);
	sitting_input(&d, d.s.now + 48000,
	    (struct input) { .kind = INPUT_WORDS, .words = words });
	assert_int_equal(d.over, 1);
}

static void test_question(void **state)
{
	char longest[1000];

	(void)state;
	ask("How loose is loose?\n");
	assert_int_equal(d.notes, 1);
	assert_int_equal(d.note[0].kind, NOTE_QUESTION);
	assert_string_equal(d.note[0].words, "How loose is loose?");
	ask("  \n");
	assert_int_equal(d.notes, 0);
	ask(NULL);
	assert_int_equal(d.notes, 0);
	ask("\033[2Jred\n");
	assert_string_equal(d.note[0].words, "?[2Jred");
	memset(longest, 'x', sizeof(longest));
	longest[sizeof(longest) - 1] = '\0';
	ask(longest);
	assert_int_equal(strlen(d.note[0].words), SESSION_WORDS_MAX - 1);
}

/* Back on the last pages reads them again; h there is still heard. */
static void test_last_pages(void **state)
{
	(void)state;
	begin_on(TONE);
	finish("cccccccccccc");
	sitting_soon(&d, KEY_BACK);
	assert_int_equal(d.s.page, PAGE_END);
	sitting_soon(&d, KEY_FORWARD);
	sitting_soon(&d, KEY_BACK);
	assert_int_equal(d.s.page, PAGE_END);
	sitting_soon(&d, KEY_HURT);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.s.page, PAGE_END);
	assert_int_equal(d.how, ENDED_WHOLE);
	assert_int_equal(d.note[0].kind, NOTE_PAIN);
	assert_int_equal(session_next_start(&d.s).id, M_SESSION_NEXT_PAIN);
	sitting_soon(&d, KEY_LEAVE);
	assert_int_equal(d.over, 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_hurt_finger),
		cmocka_unit_test(test_two_fingers),
		cmocka_unit_test(test_air_only),
		cmocka_unit_test(test_not_sore),
		cmocka_unit_test(test_not_today),
		cmocka_unit_test(test_hurt_before),
		cmocka_unit_test(test_slip),
		cmocka_unit_test(test_rest),
		cmocka_unit_test(test_asks_why),
		cmocka_unit_test(test_help),
		cmocka_unit_test(test_help_has_its_time),
		cmocka_unit_test(test_keep),
		cmocka_unit_test(test_next_start),
		cmocka_unit_test(test_next_start_unplayed),
		cmocka_unit_test(test_metres),
		cmocka_unit_test(test_question),
		cmocka_unit_test(test_last_pages),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
