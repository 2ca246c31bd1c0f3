/*
 * test_session_standing.c - how a stage stands when a session is over
 *
 * Each time the days before were all that is wanted, so what is said hangs on
 * the session itself.
 */
#include "fresh_past.h"
#include "sitting.h"

enum { DAYS = 6 };

static struct sitting d;
static struct routine r;

/* Six days up to yesterday, every first go clean at the top. */
static void before(int stage)
{
	r = programme_cello(stage);
	for (int day = FIRST_DAY - DAYS; day < FIRST_DAY; day++) {
		past_sit(
		    past, made_moment(day, 17), r.stage[stage].id, ENDED_WHOLE);
		if (stage == AIR)
			past_turn(
			    past, BLOCK_AIR, "air", "", 0, 0, MARK_CLEAN, true);
		for (int u = 0; stage != AIR && u < r.units; u++)
			past_turn(past, BLOCK_WORK, r.stage[stage].id,
			    r.unit[u].name, 0, 8, MARK_CLEAN, true);
	}
	sitting_begin(&d, &r, &past->h, MARKING_TURN, 48000);
}

/* Plays all of it: turn number t is marked c, s or not; the rest is clean. */
static void play(const char *marks)
{
	int last = (int)strlen(marks), marked = 0;

	for (int64_t ms = 0; ms < 300000 && d.s.page == PAGE_PLAY; ms += 500) {
		sitting_until(&d, ms);
		if (d.s.page != PAGE_PLAY || d.s.phase != PHASE_CHANGE ||
		    d.turns == marked)
			continue;
		marked = d.turns;
		char mark = marked <= last ? marks[marked - 1] : 'c';

		sitting_key(&d, ms + 100,
		    mark == 'c'	      ? KEY_CLEAN
			: mark == 's' ? KEY_SHAKY
				      : KEY_OTHER);
	}
}

static const char *stands(void)
{
	static char words[400];
	struct message m = session_standing(&d.s);

	words[0] = '\0';
	if (m.id != M_NONE)
		message_text(&m, words, sizeof(words));
	return words;
}

/* In the air there is one swing, and it is the one that counts. */
static void test_air(void **state)
{
	(void)state;
	before(AIR);
	sitting_start(&d);
	assert_string_equal(stands(), "");
	play("c");
	assert_int_equal(d.s.page, PAGE_END);
	assert_string_equal(stands(),
	    "Ready to show: play \"Forearm swing, no instrument\" to your "
	    "teacher at the next lesson.");
}

static void test_air_shaky(void **state)
{
	(void)state;
	before(AIR);
	sitting_start(&d);
	play("s");
	assert_string_equal(stands(),
	    "Stay with \"Forearm swing, no instrument\": the first swing on "
	    "2026-03-02 was shaky.");
}

/* The swing before the work is no finger's first go. */
static void test_air_is_no_finger(void **state)
{
	(void)state;
	before(TONE);
	sitting_start(&d);
	/* The air, two recaps, and finger 1 without a mark. */
	play("ccccccccc-");
	assert_string_equal(stands(),
	    "Stay with \"A tone apart\": finger 1 has no mark from the last "
	    "first round.");
}

static void test_ready(void **state)
{
	(void)state;
	before(TONE);
	sitting_start(&d);
	play("");
	assert_string_equal(stands(),
	    "Ready to show: play \"A tone apart\" to your teacher at the next "
	    "lesson.");
}

/* Sore elsewhere: the arm swings, and that day shows nothing secure. */
static void test_air_only(void **state)
{
	(void)state;
	before(AIR);
	sitting_soon(&d, KEY_BACK);
	for (int back = 0; back < SORE_ELSEWHERE; back++)
		sitting_soon(&d, KEY_BACK);
	sitting_soon(&d, KEY_FORWARD);
	assert_true(d.s.plan.air_only);
	sitting_soon(&d, KEY_FORWARD);
	play("");
	assert_string_equal(stands(),
	    "Stay with \"Forearm swing, no instrument\": something hurt on "
	    "2026-03-02. It counts again after 3 clear days.");
}

/* A sore finger, left out: the same. */
static void test_sore_finger(void **state)
{
	(void)state;
	before(TONE);
	sitting_soon(&d, KEY_BACK);
	sitting_input(&d, d.s.now + 48000,
	    (struct input) { .kind = INPUT_KEY, .key = KEY_DIGIT, .digit = 2 });
	sitting_soon(&d, KEY_FORWARD);
	play("");
	assert_string_equal(stands(),
	    "Stay with \"A tone apart\": something hurt on 2026-03-02. It "
	    "counts again after 3 clear days.");
}

/* Pain ends it: how the stage stands is nothing to think of now. */
static void test_pain(void **state)
{
	(void)state;
	before(TONE);
	sitting_start(&d);
	sitting_key(&d, 120000, KEY_OTHER);
	sitting_key(&d, 200000, KEY_HURT);
	sitting_soon(&d, KEY_FORWARD);
	assert_int_equal(d.how, ENDED_PAIN);
	assert_string_equal(stands(), "");
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, past_begin, past_end)
	const struct CMUnitTest tests[] = {
		T(test_air),
		T(test_air_shaky),
		T(test_air_is_no_finger),
		T(test_ready),
		T(test_air_only),
		T(test_sore_finger),
		T(test_pain),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
