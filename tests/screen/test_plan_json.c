/*
 * test_plan_json.c - a swing in the air has no finger, for programs either
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../coach/made.h"
#include "evenhand/screen/plan_json.h"

static char json[PLAN_JSON_BYTES_MAX];
static struct plan plan;

static void write_plan(const struct routine *r, const struct past *past)
{
	static const struct forecast silent = { .silence = FORECAST_EARLY };
	struct text t = text_in(json, sizeof(json));

	made_plan(&plan, r, past, made_moment(FIRST_DAY, 17));
	plan_json(&t, r, &plan, &silent);
	assert_false(t.cut);
}

/* How often words stand in a part of it, from one place up to another. */
static int times(const char *words, const char *from, const char *to)
{
	const char *at = strstr(json, from), *end;
	int found = 0;

	assert_non_null(at);
	end = strstr(at, to);
	assert_non_null(end);
	while ((at = strstr(at, words)) && at < end) {
		found++;
		at += strlen(words);
	}
	return found;
}

/* Each swing of a block in the air, and no finger of another stage. */
static void test_swings(void **state)
{
	struct routine r = programme_cello(AIR);

	(void)state;
	write_plan(&r, NULL);
	assert_int_equal(plan.blocks, 1);
	assert_true(plan.block[0].turns > 1);
	assert_int_equal(times("\"unit\": \"\"", "\"blocks\"", "\"shares\""),
	    plan.block[0].turns);
	assert_int_equal(
	    times("\"unit\"", "\"blocks\"", "\"shares\""), plan.block[0].turns);
}

/* Before work on a string the swing is one of many turns. */
static void test_swing_before_work(void **state)
{
	struct routine r = programme_cello(TONE);

	(void)state;
	write_plan(&r, NULL);
	assert_int_equal(
	    times("\"unit\": \"\"", "\"blocks\"", "\"shares\""), 1);
	assert_int_equal(
	    times("\"unit\": \"1\"", "\"blocks\"", "\"shares\""), 5);
}

/* What is missing in the air hangs on nobody, though a swing was shaky. */
static void test_standing(void **state)
{
	struct routine r = programme_cello(AIR);
	struct past *past = past_new();

	(void)state;
	for (int day = FIRST_DAY - 6; day < FIRST_DAY; day++) {
		past_sit(past, made_moment(day, 17), "air", ENDED_WHOLE);
		past_turn(past, BLOCK_AIR, "air", "", 0, 0,
		    day == FIRST_DAY - 1 ? MARK_SHAKY : MARK_CLEAN, true);
	}
	write_plan(&r, past);
	assert_int_equal(plan.standing.missing, MISSING_CLEAN);
	assert_int_equal(
	    times("\"unit\": \"\"", "\"standing\"", "\"forecast\""), 1);
	free(past);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_swings),
		cmocka_unit_test(test_swing_before_work),
		cmocka_unit_test(test_standing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
