/*
 * test_session_rounds.c - a round whose last mark is late, or a turn of which
 * was broken off
 */
#include "sitting.h"

static struct sitting d;
static struct routine r;
static const struct history nothing;

static int64_t minutes(int m, int s)
{
	return (m * 60 + s) * INT64_C(1000);
}

/* The work of tone begins at 2:20; its first turn is over at 2:36. */
static void begin(int pulses, int carried)
{
	r = programme_cello(TONE);
	r.stage[TONE].start_pulses = pulses;
	sitting_begin(&d, &r, &nothing, MARKING_TURN, 48000);
	d.s.plan.clean_rounds = carried;
	sitting_start(&d);
	sitting_key(&d, minutes(2, 0), KEY_OTHER);
}

/* A key in the change after each turn of the work: c, s, or nothing. */
static void mark(const char *marks, int64_t ms)
{
	for (int t = 0; marks[t]; t++)
		sitting_key(&d, ms + t * 12000 + 2000,
		    marks[t] == 'c'	  ? KEY_CLEAN
			: marks[t] == 's' ? KEY_SHAKY
					  : KEY_OTHER);
}

/* Pulses of a whole turn of the work, by its place among them. */
static int pulses_of(int wanted)
{
	int place = 0;

	for (int i = 0; i < d.turns; i++)
		if (d.turn[i].kind == BLOCK_WORK &&
		    d.turn[i].bows_done == d.turn[i].bows_asked &&
		    place++ == wanted)
			return d.turn[i].pulses;
	return 0;
}

/* Down for a round that was half shaky, and not once more for the same. */
static void test_falls_once(void **state)
{
	(void)state;
	begin(8, 0);
	mark("sscccccc", minutes(2, 36));
	sitting_until(&d, minutes(5, 0));
	assert_int_equal(pulses_of(0), 8);
	assert_int_equal(pulses_of(4), 6);
	assert_int_equal(pulses_of(8), 6);
}

/* Its last mark came too late for the next round: the one after is lower. */
static void test_falls_late_once(void **state)
{
	(void)state;
	begin(8, 0);
	mark("cscc", minutes(2, 36));
	/* The change of finger 4 ends at 3:16; within half a second after. */
	sitting_key(&d, minutes(3, 16) + 300, KEY_SHAKY);
	mark("cccc", minutes(3, 24));
	sitting_until(&d, minutes(5, 0));
	assert_int_equal(d.silences, 0);
	assert_int_equal(pulses_of(4), 8);
	assert_int_equal(pulses_of(8), 6);
}

/*
 * The computer slept in the second bow of finger 2, which is then begun again:
 * the half of a turn has no mark, and takes nothing from a round that is all
 * clean.
 */
static void test_broken_off(void **state)
{
	(void)state;
	begin(6, 1);
	mark("c", minutes(2, 36));
	sitting_input(&d, sitting_at(&d, minutes(2, 45)),
	    (struct input) { .kind = INPUT_GAP, .lost_ms = 60000 });
	assert_int_equal(d.s.page, PAGE_SILENT);
	sitting_key(&d, minutes(2, 46), KEY_FORWARD);
	/* 250 ms, a bow to count in, two bows: its change is at 2:58.25. */
	mark("ccc", minutes(2, 58) + 250);
	sitting_until(&d, minutes(4, 20));
	assert_int_equal(pulses_of(3), 6);
	assert_int_equal(pulses_of(4), 8);
	for (int i = 0; i < d.turns; i++)
		if (d.turn[i].kind == BLOCK_WORK && d.turn[i].bows_done == 1)
			return;
	fail_msg("no turn was kept half played");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_falls_once),
		cmocka_unit_test(test_falls_late_once),
		cmocka_unit_test(test_broken_off),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
