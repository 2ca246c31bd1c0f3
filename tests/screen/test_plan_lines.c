/*
 * test_plan_lines.c - today's plan as it is read out
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../coach/made.h"
#include "evenhand/screen/lines.h"

static char page[LINES_BYTES_MAX];
static struct plan plan;

/* Not the first meeting: the cautions of that one are left out. */
static struct past *met(const struct routine *r)
{
	struct past *past = past_new();

	made_plan(&plan, r, past, made_moment(FIRST_DAY - 1, 17));
	past_play(past, r, &plan, all_clean, NULL, PLAY_ALL, ENDED_WHOLE);
	return past;
}

static void tell(const struct routine *r, const struct plan_wish *w, bool why)
{
	struct text t = text_in(page, sizeof(page));

	plan_make(&plan, w);
	lines_plan(&t, r, &plan, why ? TELL_WHY : TELL_ROUNDS);
	assert_false(t.cut);
}

static void expect_short_lines(void)
{
	for (const char *line = page; *line;) {
		const char *end = strchr(line, '\n');

		assert_non_null(end);
		assert_in_range(end - line, 1, LINE_COLUMNS);
		line = end + 1;
	}
}

static void test_tone(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = met(&r);
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17),
		.marking = MARKING_TURN };

	(void)state;
	r.note = "Finger 4: keep 1, 2 and 3 down beside it.";
	tell(&r, &w, false);
	assert_string_equal(page,
	    "Today: A tone apart, day 2. It ends at 4:52.\n"
	    "0:00 in the air: Forearm swing, no instrument, 1 swing.\n"
	    "0:28 again: First to fourth position. Each finger once, 1, 2, 3, "
	    "4, at 4\npulses.\n"
	    "1:24 again: First to third position. Each finger once, 1, 2, 3, "
	    "4, "
	    "at 6 pulses.\n"
	    "2:20 the work: A tone apart. 3 rounds, beginning at 6 pulses.\n"
	    "Round 1, the first go: finger 1 at 2:28, 2 at 2:40, 3 at 2:52, 4 "
	    "at 3:04.\n"
	    "Round 2 at 3:16: 1, 2, 3, 4.\n"
	    "Round 3 at 4:04: 1, 2, 3, 4.\n"
	    "4:52 the end: 40 bows, 10 for each finger.\n"
	    "Stay with \"A tone apart\": 1 of 5 practice days so far.\n"
	    "The work begins at 6 pulses: your last round was all clean.\n"
	    "One more round all clean and it goes up to 8.\n"
	    "From your teacher: Finger 4: keep 1, 2 and 3 down beside it.\n");
	free(past);
}

static void test_air(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = met(&r);
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17) };

	(void)state;
	r.work_on = AIR;
	tell(&r, &w, false);
	assert_string_equal(page,
	    "Today: Forearm swing, no instrument, day 1. It ends at 2:48.\n"
	    "0:00 in the air: Forearm swing, no instrument, 8 swings.\n"
	    "2:48 the end.\n");
	free(past);
}

static void test_hurt(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = met(&r);
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17),
		.hurt = 1 << 3 };

	(void)state;
	tell(&r, &w, false);
	assert_non_null(strstr(page,
	    "3:52 the end: 30 bows; finger 1 has 10, 2 has 10, 3 has 0, 4 has "
	    "10.\n"));
	assert_non_null(strstr(page, "is sore: finger 3. The session gets "));
	expect_short_lines();
	free(past);
}

static void test_rest(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = met(&r);
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17) };

	(void)state;
	past_note(past, FIRST_DAY, NOTE_PAIN, 0);
	tell(&r, &w, false);
	assert_ptr_equal(page, strstr(page, "Nothing is played today.\n"));
	assert_non_null(strstr(page, "Pain was noted today."));
	expect_short_lines();
	free(past);
}

/* Each reason stands there with its rule and its mark, details too. */
static void test_why(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = met(&r);
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17),
		.marking = MARKING_TURN };
	int said = 0;

	(void)state;
	r.stage[TONE].title = "A very long title with an accent \xc3\xa9 that "
			      "goes on and on until nobody reads it any more";
	tell(&r, &w, true);
	expect_short_lines();
	for (const char *c = page; (c = strchr(c, '\n')); c++)
		said += strncmp(c, "\nF", 2) == 0 ||
		    strncmp(c, "\n[C] You", 8) == 0;
	assert_true(said >= plan.reasons - 1);
	assert_non_null(strstr(page, "\nF1 [C] Each finger gets the same"));
	assert_non_null(strstr(page,
	    "\nF2 [O] 5:00 less 2:20 for what comes "
	    "first and 0:08"));
	assert_non_null(strstr(page, "\nF3 [O] The work begins at 6 pulses: "));
	assert_non_null(strstr(page, "\n[C] is common practice"));
	free(past);
}

static void test_pairs(void **state)
{
	struct routine r = programme_cello(TONE);
	struct past *past = met(&r);
	struct plan_wish w = { .routine = &r,
		.history = &past->h,
		.now = made_moment(FIRST_DAY, 17) };

	(void)state;
	r.take = TAKE_STRINGS;
	r.units = 2;
	r.unit[0] = (struct unit) { "D-A", 1, 0 };
	r.unit[1] = (struct unit) { "G-D", 2, 1 };
	tell(&r, &w, false);
	assert_non_null(
	    strstr(page, "first go: pair of strings D-A at 1:40, "));
	assert_non_null(strstr(page, " for each pair of strings.\n"));
	expect_short_lines();
	free(past);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_tone),
		cmocka_unit_test(test_air),
		cmocka_unit_test(test_hurt),
		cmocka_unit_test(test_rest),
		cmocka_unit_test(test_why),
		cmocka_unit_test(test_pairs),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
