/*
 * test_sound_count.c - one line of frames, whatever becomes of the card
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "../../src/world/sound_count.h"
#include "../score/seeded.h"

enum { RATE = 48000, MS = RATE / 1000 };

static struct count count;
static struct count_now now;

/* Time passes, with or without the card. */
static int64_t pass(int wall_ms, int card_ms)
{
	now.wall += (int64_t)wall_ms * MS;
	now.card += (int64_t)card_ms * count.card_rate / 1000;
	count_look(&count, &now);
	return count.frame;
}

static void begin_at(int ms, int card_rate)
{
	count_begin(&count, RATE, true);
	now = (struct count_now) { 0 };
	pass(ms, 0);
	if (card_rate > 0) {
		/* It filled its buffer at once. */
		now.card = card_rate / 20;
		count_join(&count, card_rate, &now);
	}
}

static void test_by_the_clock(void **state)
{
	(void)state;
	begin_at(1000, 0);
	assert_int_equal(count.frame, 1000 * MS);
	assert_int_equal(pass(50, 0), 1050 * MS);
	/* What the wall lost is lost here, and in no frame. */
	now.wall_lost_ms = 3000;
	assert_int_equal(pass(0, 0), 1050 * MS);
	assert_int_equal(count.lost_ms, 3000);
}

static void test_by_the_card(void **state)
{
	(void)state;
	begin_at(1000, RATE);
	assert_int_equal(count.frame, 1000 * MS);
	/* The card's word counts, not the clock's. */
	assert_int_equal(pass(50, 49), 1049 * MS);
	assert_int_equal(pass(50, 0), 1049 * MS);
	assert_int_equal(count_still_ms(&count, &now), 50);
	assert_int_equal(pass(200, 0), 1049 * MS);
	assert_int_equal(count_still_ms(&count, &now), 250);
	assert_int_equal(pass(10, 240), 1289 * MS);
	assert_int_equal(count_still_ms(&count, &now), 0);
	assert_int_equal(count.lost_ms, 0);
}

/* Lost, the clock goes on as if nothing had been; another card joins. */
static void test_lost_and_back(void **state)
{
	(void)state;
	begin_at(1000, RATE);
	pass(500, 500);
	pass(260, 0);
	assert_int_equal(count.frame, 1500 * MS);
	count_leave(&count);
	assert_int_equal(pass(0, 0), 1760 * MS);
	assert_int_equal(pass(1000, 0), 2760 * MS);
	now.card = 77;
	count_join(&count, 44100, &now);
	assert_int_equal(count.frame, 2760 * MS);
	assert_int_equal(pass(1000, 1000), 3760 * MS);
	assert_int_equal(count.lost_ms, 0);
}

/* Stopped together with the card: lost, and in place to the frame. */
static void test_both_stopped(void **state)
{
	int64_t origin;

	(void)state;
	begin_at(1000, RATE);
	pass(50, 50);
	origin = count.origin;
	now.wall_lost_ms = 2000;
	assert_int_equal(pass(0, 5), 1055 * MS);
	assert_int_equal(count.lost_ms, 2000);
	assert_int_equal(count.origin, origin);
	assert_int_equal(count_still_ms(&count, &now), 0);
}

/* Stopped while the card sounded on to somebody: nothing was lost. */
static void test_stopped_a_little(void **state)
{
	(void)state;
	begin_at(1000, RATE);
	now.wall_lost_ms = 700;
	assert_int_equal(pass(0, 700), 1700 * MS);
	assert_int_equal(count.lost_ms, 0);
	assert_false(count.raced);
	/* It need not have filled all of it before somebody looked. */
	now.wall_lost_ms += 1000;
	assert_int_equal(pass(0, 800), 2500 * MS);
	assert_int_equal(count.lost_ms, 0);
}

/* The card gave up: it goes on where it stood, its frames moved. */
static void test_stopped_long(void **state)
{
	int64_t card;

	(void)state;
	begin_at(1000, RATE);
	pass(50, 50);
	card = count_to_card(&count, 1100 * MS);
	now.wall_lost_ms = 5000;
	now.shuts = 1;
	now.card += 5000 * MS;
	assert_true(count_look(&count, &now));
	assert_int_equal(count.frame, 1050 * MS);
	assert_int_equal(count.lost_ms, 5000);
	assert_int_equal(count_to_card(&count, 1100 * MS), card + 5000 * MS);
	assert_int_equal(pass(10, 10), 1060 * MS);
	/* It gave up, but the program did not stand still: no loss. */
	now.shuts = 2;
	assert_int_equal(pass(3000, 3000), 4060 * MS);
	assert_int_equal(count.lost_ms, 5000);
}

/* How often a card gave up before it was joined is no matter. */
static void test_shut_before(void **state)
{
	(void)state;
	count_begin(&count, RATE, true);
	now = (struct count_now) { .shuts = 3 };
	count_join(&count, RATE, &now);
	now.wall_lost_ms = 700;
	assert_int_equal(pass(0, 700), 700 * MS);
	assert_int_equal(count.lost_ms, 0);
}

/* A card that takes all it gets at once keeps no time. */
static void test_races(void **state)
{
	(void)state;
	begin_at(1000, RATE);
	assert_int_equal(pass(50, 549), 1549 * MS);
	assert_false(count.raced);
	assert_int_equal(pass(50, 551), 1549 * MS);
	assert_true(count.raced);
	/* Another one is judged anew. */
	count_leave(&count);
	now.card = 0;
	count_join(&count, RATE, &now);
	assert_false(count.raced);
	pass(50, 50);
	assert_false(count.raced);
	/* Unpaced it need not. */
	count_begin(&count, RATE, false);
	now = (struct count_now) { 0 };
	count_join(&count, RATE, &now);
	assert_int_equal(pass(1, 100000), 100000 * MS);
	assert_false(count.raced);
}

/* The nearest frame of the card, worked out here in another way. */
static int64_t nearest(int64_t frames, int64_t card_rate)
{
	__extension__ typedef __int128 wide;
	wide twice = (wide)frames * card_rate * 2 + RATE;
	wide by = (wide)RATE * 2;

	return (int64_t)((twice - ((twice % by + by) % by)) / by);
}

static void test_rates(void **state)
{
	static const int rates[] = { 8000, 44100, 48000, 96000, 192000 };

	(void)state;
	seeded_begin("rates");
	for (size_t r = 0; r < sizeof rates / sizeof *rates; r++) {
		begin_at(seeded(0, 100000), rates[r]);
		for (int i = 0; i < 2000; i++) {
			int64_t frame = (int64_t)seeded(-1000000, 1000000) *
			    seeded(0, 4000);
			int64_t card = count_to_card(
			    &count, count.origin + frame);

			assert_int_equal(card, nearest(frame, rates[r]));
			/* And back again, as far as the rates allow. */
			int64_t back = count_from_card(&count, card) -
			    count.origin;
			int64_t off = RATE / rates[r] + 1;

			assert_in_range(back - frame + off, 0, 2 * off);
		}
	}
}

/* Whatever happens, frames never fall. */
static void test_never_falls(void **state)
{
	int64_t last = 0;

	(void)state;
	seeded_begin("never falls");
	begin_at(100, 0);
	for (int i = 0; i < 20000; i++) {
		switch (seeded(0, 9)) {
		case 0:
			now.card = seeded(0, 2000);
			count_join(&count, seeded(0, 1) ? 44100 : 48000, &now);
			break;
		case 1:
			count_leave(&count);
			break;
		case 2:
			now.wall_lost_ms += seeded(251, 9000);
			now.shuts += (uint32_t)seeded(0, 1);
			break;
		default:
			break;
		}
		assert_true(pass(seeded(0, 60), seeded(0, 60)) >= last);
		last = count.frame;
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_by_the_clock),
		cmocka_unit_test(test_by_the_card),
		cmocka_unit_test(test_lost_and_back),
		cmocka_unit_test(test_both_stopped),
		cmocka_unit_test(test_stopped_a_little),
		cmocka_unit_test(test_stopped_long),
		cmocka_unit_test(test_shut_before),
		cmocka_unit_test(test_races),
		cmocka_unit_test(test_rates),
		cmocka_unit_test(test_never_falls),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
