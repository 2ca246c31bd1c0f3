/*
 * test_listener.c - turns and samples brought together, whatever their order
 *
 * The string is that of bowed.h, so that each turn's tops are known.  Samples
 * come with the frames of a session of another rate than theirs.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <unistd.h>

#include <cmocka.h>

#include "../listen/bowed.h"
#include "evenhand/world/clock.h"
#include "evenhand/world/listener.h"

enum {
	SESSION_RATE = 48000,
	MICROPHONE_RATE = 44100,
	BEGIN_S = 2, /* of the bow, from the first sample */
	BOW_S = 2,
	PULSES = 3,
	AFTER_S = 2,
	PIECE = 1024,
	WAIT_MS = 30000,
};

static struct bowed_sound bow; /* two bows between two silences */
static struct listener *l;

static int make(void **state)
{
	const struct bowed b = { .rate = MICROPHONE_RATE,
		.seconds = 2 * BOW_S,
		.hz = 165,
		.travel_cents = 200,
		.glide_s = 0.15,
		.jitter_cents = 2,
		.turn_s = BOW_S };
	const double pulse_s = (double)BOW_S / PULSES;
	size_t before = (size_t)BEGIN_S * MICROPHONE_RATE;
	size_t after = (size_t)AFTER_S * MICROPHONE_RATE;
	struct bowed_sound s = { .n = (size_t)(b.seconds * b.rate) };

	(void)state;
	seeded_begin("test_listener");
	/* A top with each pulse, the first after its way. */
	for (int i = 0; i < 2 * PULSES; i++) {
		s.begin[i] = (i + 0.3) * pulse_s;
		s.fall[i] = s.begin[i] + pulse_s / 2;
		s.glides++;
	}
	s.x = calloc(s.n, sizeof(*s.x));
	bowed_string(&b, &s);
	bow.n = before + s.n + after;
	bow.x = calloc(bow.n, sizeof(*bow.x));
	for (size_t i = 0; i < s.n; i++)
		bow.x[before + i] = 0.1F * s.x[i];
	free(s.x);
	return 0;
}

static int unmake(void **state)
{
	(void)state;
	free(bow.x);
	return 0;
}

static int begin(void **state)
{
	(void)state;
	l = listener_open();
	return l ? 0 : -1;
}

static int end(void **state)
{
	(void)state;
	listener_close(l);
	return 0;
}

/* The turn of the string, when sample 0 was at this frame. */
static struct listener_turn turn_at(double frame)
{
	struct listener_turn t = { .rate = SESSION_RATE,
		.frame = (int64_t)(frame + BEGIN_S * SESSION_RATE),
		.asked = { .asked = { 165, 185.2 },
		    .lower_hz = 165,
		    .travel_cents = 200,
		    .pulses = PULSES,
		    .bows = 2,
		    .edge_s = { 0, BOW_S, 2 * BOW_S } } };

	return t;
}

/* Samples from..to of the string, whose sample 0 was at this frame. */
static void take(double frame, size_t from, size_t to, bool gap)
{
	double each = (double)SESSION_RATE / MICROPHONE_RATE;

	for (size_t at = from; at < to; at += PIECE) {
		struct heard_samples h = { .rate = MICROPHONE_RATE,
			.count = to - at < PIECE ? to - at : PIECE,
			.gap = gap && at == from,
			.frame = frame + (double)at * each,
			.frames_each = each };

		listener_take(l, &h, bow.x + at);
	}
}

static bool answer(int *number, struct turn_heard *heard)
{
	int64_t until = clock_steady_ns() + WAIT_MS * INT64_C(1000000);

	while (listener_waits(l) > 0 && clock_steady_ns() < until)
		usleep(1000);
	assert_int_equal(listener_waits(l), 0);
	return listener_next(l, number, heard);
}

static void whole_turn_is_heard(int number)
{
	struct turn_heard heard;
	int of;

	assert_true(answer(&of, &heard));
	assert_int_equal(of, number);
	assert_int_equal(heard.answer, TURN_HEARD);
	assert_int_equal(heard.bows_listened, 2);
	assert_int_equal(heard.bows_full, 2);
	assert_int_equal(heard.arrivals.heard, 2 * PULSES);
	assert_float_equal(heard.arrivals.travel_cents, 200, 5);
	assert_false(listener_next(l, &of, &heard));
}

/* Samples come as they are played. */
static void test_in_order(void **state)
{
	size_t second = MICROPHONE_RATE;
	struct listener_turn t = turn_at(1e6);

	(void)state;
	take(1e6, 0, 2 * second, false);
	listener_begin(l, &t);
	take(1e6, 2 * second, 6 * second, false);
	listener_end(l, 5, 2);
	take(1e6, 6 * second, bow.n, false);
	whole_turn_is_heard(5);
	assert_int_equal(listener_judged(l).what, JUDGE_FINE);
}

/* Samples that come late find their turn, though it is over. */
static void test_late_samples(void **state)
{
	struct listener_turn t = turn_at(-500);

	(void)state;
	listener_begin(l, &t);
	listener_end(l, 0, 2);
	take(-500, 0, bow.n, false);
	whole_turn_is_heard(0);
}

/* A turn that is told a second late has what came before it. */
static void test_late_turn(void **state)
{
	size_t second = MICROPHONE_RATE;
	struct listener_turn t = turn_at(77.25);

	(void)state;
	take(77.25, 0, 3 * second, false);
	listener_begin(l, &t);
	take(77.25, 3 * second, bow.n, false);
	listener_end(l, 1, 2);
	whole_turn_is_heard(1);
}

/* With only one bow kept the other is not asked for. */
static void test_one_bow(void **state)
{
	struct listener_turn t = turn_at(0);
	struct turn_heard heard;
	int number;

	(void)state;
	listener_begin(l, &t);
	listener_end(l, 3, 1);
	take(0, 0, bow.n, false);
	assert_true(answer(&number, &heard));
	assert_int_equal(heard.bows, 1);
	assert_int_equal(heard.bows_full, 1);
	assert_int_equal(heard.arrivals.heard, PULSES);
}

/* Samples that were lost are silence: the other bow is where it was. */
static void test_gap(void **state)
{
	size_t second = MICROPHONE_RATE;
	struct listener_turn t = turn_at(0);
	struct turn_heard heard;
	int number;

	(void)state;
	listener_begin(l, &t);
	take(0, 0, second * 5 / 2, false);
	take(0, second * 7 / 2, bow.n, true);
	listener_end(l, 0, 2);
	assert_true(answer(&number, &heard));
	assert_false(heard.bow[0].listened);
	assert_true(heard.bow[1].full);
}

/* Broken off, without samples, or of nothing: no answer, and nobody waits. */
static void test_no_answer(void **state)
{
	struct listener_turn t = turn_at(0);
	struct turn_heard heard;
	int number;

	(void)state;
	listener_begin(l, &t);
	take(0, 0, (size_t)MICROPHONE_RATE * 3, false);
	listener_drop(l);
	listener_end(l, 0, 2);
	assert_false(answer(&number, &heard));
	t = turn_at(1e9);
	listener_begin(l, &t);
	listener_end(l, 1, 2);
	listener_finish(l);
	assert_false(answer(&number, &heard));
	listener_begin(l, &t);
	listener_end(l, 2, 0);
	assert_false(answer(&number, &heard));
}

/* When the next turn begins the one before is measured with what there is. */
static void test_next_begins(void **state)
{
	size_t second = MICROPHONE_RATE;
	struct listener_turn t = turn_at(0), next = turn_at(SESSION_RATE * 6.0);

	(void)state;
	listener_begin(l, &t);
	take(0, 0, second * 6, false);
	listener_end(l, 8, 2);
	listener_begin(l, &next);
	whole_turn_is_heard(8);
	listener_end(l, 9, 2);
	take(SESSION_RATE * 6.0, 0, bow.n, true);
	whole_turn_is_heard(9);
}

/* A microphone of a rate that nobody has is none; another one may come. */
static void test_rates(void **state)
{
	const float quiet[64] = { 0 };
	const struct heard_samples odd = {
		.rate = 1000, .count = 64, .frames_each = 48
	};
	struct listener_turn t = turn_at(0);

	(void)state;
	listener_take(l, &odd, quiet);
	listener_begin(l, &t);
	listener_take(l, &odd, quiet);
	take(0, 0, bow.n, false);
	listener_end(l, 4, 2);
	whole_turn_is_heard(4);
}

/* One of another rate took its place in mid turn: the turn is the new one's. */
static void test_another_microphone(void **state)
{
	const float quiet[64] = { 0 };
	const struct heard_samples other = { .rate = 48000,
		.count = 64,
		.frame = BEGIN_S * SESSION_RATE,
		.frames_each = 1 };
	struct listener_turn t = turn_at(0);

	(void)state;
	listener_begin(l, &t);
	listener_take(l, &other, quiet);
	take(0, 0, bow.n, false);
	listener_end(l, 6, 2);
	whole_turn_is_heard(6);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, begin, end)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(test_in_order),
		TEST(test_late_samples),
		TEST(test_late_turn),
		TEST(test_one_bow),
		TEST(test_gap),
		TEST(test_no_answer),
		TEST(test_next_begins),
		TEST(test_rates),
		TEST(test_another_microphone),
	};

	return cmocka_run_group_tests(tests, make, unmake);
}
