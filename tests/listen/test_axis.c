/*
 * test_axis.c - times and notes beside the picture of a recording
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/listen/axis.h"

#define A4 440.0

static struct outline outline;

static void add(double hz)
{
	struct instant m = { .what = HEARD_NOTE, .hz = (float)hz };

	outline_add(&outline, &m);
}

static void is_time(double s, const char *words)
{
	char name[AXIS_TIME_BYTES];

	axis_time(s, name);
	assert_string_equal(name, words);
}

static void test_time(void **context)
{
	(void)context;
	is_time(0, "0:00");
	is_time(4, "0:04");
	is_time(59.999, "0:59");
	is_time(3599, "59:59");
	is_time(3600, "1:00:00");
	is_time(36061, "10:01:01");
}

/* No more fit than there is room for, and a smaller step is not nice. */
static void test_step(void **context)
{
	(void)context;
	assert_true(axis_step(4, 4) == 1);
	assert_true(axis_step(4.1, 4) == 2);
	assert_true(axis_step(60, 4) == 20);
	assert_true(axis_step(3600, 10) == 600);
	assert_true(axis_step(144000, 10) == 14400);
	assert_true(axis_step(144001, 10) == 14401);
}

/* Semitones as MIDI counts them: A4 is 69. */
static void test_notes(void **context)
{
	double low, high;

	(void)context;
	outline = (struct outline) { 0 };
	assert_false(axis_notes(&outline, A4, 0.1, &low, &high));
	assert_true(fabs(low - 68.5) < 1e-9 && fabs(high - 69.5) < 1e-9);
	add(A4);
	add(2 * A4);
	assert_true(axis_notes(&outline, A4, 0.1, &low, &high));
	assert_true(fabs(low - 67.8) < 1e-6 && fabs(high - 82.2) < 1e-6);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_time),
		cmocka_unit_test(test_step),
		cmocka_unit_test(test_notes),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
