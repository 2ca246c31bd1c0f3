/*
 * test_dry_run.c - the figures of `evenhand check`, on the worked programme
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../coach/programme.h"
#include "evenhand/base/text.h"
#include "evenhand/screen/dry_run.h"

static char page[32768];

static void write_page(const struct routine *r)
{
	struct text out = text_in(page, sizeof(page));

	dry_run_write(&out, r);
	assert_false(out.cut);
}

static void assert_says(const char *words)
{
	if (!strstr(page, words))
		fail_msg("\"%s\" is not in:\n%s", words, page);
}

static void assert_silent_on(const char *words)
{
	if (strstr(page, words))
		fail_msg("\"%s\" should not be in:\n%s", words, page);
}

/*
 * 28 s of air, then 8 s of lead-in and n rounds of 48 s: stage 2 ends after
 * 28 + 8 + 5 x 48 = 276 s, stage 3 after 28 + 56 + 8 + 4 x 48 = 284 s, the
 * others after 28 + 2 x 56 + 8 + 3 x 48 = 292 s.  The air alone: 8 s and 8
 * swings of 20 s.
 */
static void test_minutes(void **state)
{
	struct routine r = programme_cello(WIDE);

	(void)state;
	write_page(&r);
	assert_says("  air         air 0:00, end 2:48\n");
	assert_says("  wide        air 0:00, wide 0:28, end 4:36\n");
	assert_says(
	    "  thirds      air 0:00, wide 0:28, thirds 1:24, end 4:44\n");
	assert_says(
	    "  tone        air 0:00, wide 0:28, thirds 1:24, tone 2:20, "
	    "end 4:52\n");
	assert_says(
	    "  letting-go  air 0:00, wide 0:28, thirds 1:24, letting-go "
	    "2:20, end 4:52\n");
}

static void test_bows(void **state)
{
	struct routine r = programme_cello(WIDE);

	(void)state;
	write_page(&r);
	assert_says("  air         8 swings, no bow\n");
	assert_says("  tone        10 each, 40 in all\n");
}

/*
 * S 690 mm, finger 1 from 2 to 7 semitones: 690 (2^(-2/12) - 2^(-7/12)) =
 * 154.2 mm; 10 bows of 8 pulses up and down: 24.7 m.  The distances follow
 * the rule of fret positions (d = L (1 - 2^(-n/12)), as in the documentation
 * of the stringcalc package, citing R. M. Mottola).
 */
static void test_slide(void **state)
{
	struct routine r = programme_cello(WIDE);

	(void)state;
	write_page(&r);
	assert_says("  wide        finger 1: 12.3 to 24.7, "
		    "finger 2: 11.6 to 23.3,\n"
		    "              finger 3: 11 to 22, "
		    "finger 4: 10.4 to 20.7\n");
	assert_silent_on("  air         finger");
}

/* 0.1542 m, up and down, 8 times in 4 s: 0.617 m/s. */
static void test_speed(void **state)
{
	struct routine r = programme_cello(WIDE);

	(void)state;
	write_page(&r);
	assert_says("  wide        0.31 with 4 pulses, 0.46 with 6 pulses, "
		    "0.62 with 8 pulses\n");
}

/* 28 + 5 x 56 = 308 s; with changes of 3 s 27 + 5 x 52 = 287 s. */
static void test_one_pass(void **state)
{
	struct routine r = programme_cello(WIDE);

	(void)state;
	write_page(&r);
	assert_says("One pass through all stages takes 5:08, 8 s over 5:00.");
	r.change_ms = 3000;
	write_page(&r);
	assert_says(
	    "One pass through all stages takes 4:47 and fits into 5:00.\n");
}

/* A longer session waits until a stage is no longer new. */
static void test_new_stage(void **state)
{
	struct routine r = programme_cello(WIDE);

	(void)state;
	write_page(&r);
	assert_silent_on("In the first 14 days");
	r.cap_ms = 600000;
	write_page(&r);
	assert_says("A session has 10:00 at most.");
	assert_says("In the first 14 days of a stage a session has 5:00 at "
		    "most, and so has each");
}

/* Which earlier stages come back, until each has been seen once. */
static void test_cycle(void **state)
{
	struct routine r = programme_cello(WIDE);

	(void)state;
	write_page(&r);
	assert_says("  semitone    wide, thirds\n"
		    "              wide, tone\n"
		    "  letting-go  wide, thirds\n"
		    "              tone, semitone\n");
	r.recap_num = 0;
	write_page(&r);
	assert_silent_on("Earlier stages that");
	r.recap_num = r.recap_den = 1;
	r.change_ms = 3000;
	write_page(&r);
	assert_silent_on("Earlier stages that");
}

static void test_pairs_that_drop(void **state)
{
	struct routine r = programme_cello(WIDE);

	(void)state;
	r.take = TAKE_PAIRS;
	r.units = 3;
	strcpy(r.unit[0].name, "0-1");
	strcpy(r.unit[1].name, "1-2");
	strcpy(r.unit[2].name, "2-3");
	for (int i = 1; i < r.stages; i++) {
		r.stage[i].motion = MOTION_DROP;
		r.stage[i].travel_cents = 0;
	}
	write_page(&r);
	assert_says("Bows of each pair in that session\n");
	assert_says("Nothing slides along the string in this routine.\n");
	assert_silent_on("Metres");
	assert_silent_on("Mean speed");
}

/* Many long ids: no line is wider than a screen, none ends in a space. */
static void test_narrow_lines(void **state)
{
	struct routine r = programme_cello(WIDE);
	const char *line;

	(void)state;
	for (int i = 1; i < r.stages; i++)
		memset(r.stage[i].id, 'a' + i, ID_MAX - 1);
	write_page(&r);
	for (line = page; *line; line = strchr(line, '\n') + 1) {
		size_t length = strcspn(line, "\n");

		assert_in_range(length, 0, 79);
		assert_true(length == 0 || line[length - 1] != ' ');
	}
}

/* A buffer that is too small is cut, and nothing beyond it is touched. */
static void test_small_buffer(void **state)
{
	struct routine r = programme_cello(WIDE);
	char small[64];
	struct text out = text_in(small, 32);

	(void)state;
	memset(small + 32, 'x', 32);
	dry_run_write(&out, &r);
	assert_true(out.cut);
	for (int i = 32; i < 64; i++)
		assert_int_equal(small[i], 'x');
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_minutes),
		cmocka_unit_test(test_bows),
		cmocka_unit_test(test_slide),
		cmocka_unit_test(test_speed),
		cmocka_unit_test(test_one_pass),
		cmocka_unit_test(test_new_stage),
		cmocka_unit_test(test_cycle),
		cmocka_unit_test(test_pairs_that_drop),
		cmocka_unit_test(test_narrow_lines),
		cmocka_unit_test(test_small_buffer),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
