/*
 * test_second_session.c - whether another session of a day is left out
 *
 * It is asked of five minutes, played as easily as the load allows: wide
 * recaps at the lowest rung, and no rung gained.  What that asks leaves the
 * plan itself as it was.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "fresh_past.h"

static struct routine r;
static struct plan plan;

static int setup(void **state)
{
	r = programme_cello(TONE);
	return past_begin(state);
}

/* What finger 1 had elsewhere two days ago, hardly any of it in metres. */
static void had(int pulses)
{
	struct tally *t = &past->tally[past->h.tallies++];

	*t = (struct tally) { .day = FIRST_DAY - 2,
		.kind = BLOCK_WORK,
		.slide_um = 1,
		.pulses = pulses };
	strcpy(t->stage, "/elsewhere");
	strcpy(t->unit, "1");
}

/* This morning: a round of tone at 6, all clean, and no load. */
static void morning(void)
{
	past_sit(past, made_moment(FIRST_DAY, 9), "tone", ENDED_WHOLE)
	    ->length_ms = 292000;
	for (int u = 0; u < r.units; u++)
		past_turn(past, BLOCK_WORK, "tone", r.unit[u].name, 0, 6,
		    MARK_CLEAN, true);
}

static void evening(int pulses)
{
	had(pulses);
	morning();
	made_plan(&plan, &r, past, made_moment(FIRST_DAY, 17));
}

/*
 * Two wide recaps, at 8 by themselves, are 8 + 8 pulses of each finger at 4;
 * three rounds at 6 are 36, so 52.  With the recaps at 8 it would be 68, and
 * with a rung gained behind the first round 60.  480 are allowed.
 */
static void test_played_easily(void **state)
{
	(void)state;
	r.stage[WIDE].start_pulses = r.stage[THIRDS].start_pulses = 8;
	evening(480 - 52);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_false(made_reason(&plan, M_COACH_LOAD_REST));
	assert_true(made_reason(&plan, M_COACH_LOAD_NO_CLIMB));
	assert_int_equal(plan.block[1].pulses, 4);
	assert_int_equal(plan.block[2].pulses, 4);
	assert_int_equal(made_work(&plan)->pulses, 6);
	assert_int_equal(made_work(&plan)->rounds, 3);
}

/* One pulse more is too much, and the reason tells by how much. */
static void test_left_out(void **state)
{
	char words[400] = "";

	(void)state;
	r.stage[WIDE].start_pulses = r.stage[THIRDS].start_pulses = 8;
	evening(480 - 52 + 1);
	assert_int_equal(plan.verdict, VERDICT_REST_TODAY);
	assert_int_equal(plan.blocks, 0);
	assert_true(made_reason(&plan, M_COACH_LOAD_REST));
	for (int i = 0; i < plan.reasons; i++)
		if (plan.reason[i].message.id == M_COACH_LOAD_OVER_PULSES)
			message_text(
			    &plan.reason[i].message, words, sizeof(words));
	assert_string_equal(words,
	    "With all that could be played today, finger 1 would come to 481 "
	    "pulses in seven days. 480 are allowed this week.");
}

/* Where nothing is too much, a rung may still be gained. */
static void test_asking_changes_nothing(void **state)
{
	(void)state;
	evening(0);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_false(plan.climbed);
	assert_int_equal(plan.clean_rounds, 1);
	assert_false(made_reason(&plan, M_COACH_LOAD_NO_CLIMB));
}

/* Five minutes have rounds; a session too short for one carries none on. */
static void test_too_short_for_a_round(void **state)
{
	(void)state;
	r.cap_ms = 60000;
	evening(0);
	assert_int_equal(plan.verdict, VERDICT_PRACTISE);
	assert_null(made_work(&plan));
	assert_int_equal(plan.clean_rounds, 0);
	assert_false(plan.climbed);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, setup, past_end)
	const struct CMUnitTest tests[] = {
		T(test_played_easily),
		T(test_left_out),
		T(test_asking_changes_nothing),
		T(test_too_short_for_a_round),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
