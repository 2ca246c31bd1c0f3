/*
 * test_room.c - how far the microphone is, and what is not told from far away
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "evenhand/listen/ear.h"
#include "listening.h"

#define E3 164.8138

enum { RATE = 48000 };

static struct bowed gliding(double cents, int pulses)
{
	double pulse = 4.0 / pulses;

	return (struct bowed) { .rate = RATE,
		.seconds = 8,
		.hz = E3,
		.jitter_cents = 2,
		.noise_db = -30,
		.turn_s = 4,
		.pulses_a_second = 1 / pulse,
		.travel_cents = cents,
		.unsteady_s = 0.02,
		.glide_s = fmin(0.15, pulse / 4) };
}

static struct bowed swinging(void)
{
	struct bowed b = gliding(0, 4);

	b.pulses_a_second = 0;
	b.swing_hz = 5.5;
	b.swing_cents = 25;
	return b;
}

static struct turn_heard hear_sound(
    const struct bowed *b, const struct bowed_sound *s, int rate, bool sways)
{
	struct turn_asked asked = {
		.asked = { b->hz, b->hz * exp2(b->travel_cents / 1200) },
		.lower_hz = b->hz,
		.travel_cents = b->travel_cents,
		.sways = sways,
		.bows = 2,
		.edge_s = { 0, 4, 8 },
	};
	struct ear *e = ear_new(rate);
	struct turn_heard h;

	assert_true(ear_begin(e, &asked));
	ear_take(e, s->x, s->n);
	assert_true(ear_end(e, &asked, &h));
	assert_int_equal(h.answer, TURN_HEARD);
	ear_free(e);
	return h;
}

static struct turn_heard hear(const struct bowed *b, bool sways)
{
	struct bowed_sound s = bowed_make(b);
	struct turn_heard h = hear_sound(b, &s, b->rate, sways);

	free(s.x);
	return h;
}

/* A room's RT60, and direct sound over it in dB. */
static const struct {
	double s, db;
	enum turn_distance is;
} rooms[] = {
	{ 0, 0, DISTANCE_NEAR },
	{ 0.2, 9, DISTANCE_NEAR },
	{ 0.35, 9, DISTANCE_NEAR },
	{ 0.5, 9, DISTANCE_NEAR },
	{ 0.5, 0, DISTANCE_FAR },
	{ 0.8, -1, DISTANCE_FAR },
};

static void test_distance(void **state)
{
	static const double cents[] = { 500, 200, 50, 0 };
	int heard = 0, unsure = 0;

	(void)state;
	for (size_t i = 0; i < sizeof(rooms) / sizeof(*rooms); i++)
		for (size_t j = seeded_quick() ? i % 2 : 0; j < 4;
		     j += seeded_quick() ? 2 : 1) {
			bool sways = cents[j] <= 0;
			struct bowed b = sways
			    ? swinging()
			    : gliding(cents[j], 4 + 2 * (int)j);
			struct turn_heard h;

			b.room_s = rooms[i].s;
			b.room_db = rooms[i].db;
			h = hear(&b, sways);
			/* Some are in doubt, none is taken for the other. */
			heard++;
			if (h.distance == DISTANCE_UNKNOWN)
				unsure++;
			else if (h.distance != rooms[i].is)
				fail_msg("%g s, %g dB, %g cents: %g",
				    rooms[i].s, rooms[i].db, cents[j], h.room);
			assert_int_equal(
			    h.width_known, sways && h.distance != DISTANCE_FAR);
			assert_true(h.width_known || h.sway.width_cents <= 0);
		}
	assert_true(6 * unsure <= heard);
}

/* Partials that hardly stand out of the noise tell nothing of a room. */
static void test_dark_strings(void **state)
{
	static const double falls[] = { 3, 6, 9 };

	(void)state;
	for (int i = 0; i < 3; i++)
		for (int sways = 0; sways <= 1; sways++) {
			struct bowed b = sways ? swinging() : gliding(200, 6);
			struct turn_heard h;

			b.dark_db = falls[i];
			h = hear(&b, sways);
			if (h.distance != DISTANCE_NEAR)
				fail_msg("%g dB an octave, sways %d: %g",
				    falls[i], sways, h.room);
		}
}

/* One of so many samples, as a slower card has them: a sinc, cut at 0.46. */
static void make_fewer(struct bowed_sound *s, int factor)
{
	int reach = 48 * factor;
	double cut = 0.46 / factor;
	float *tap = malloc((size_t)(2 * reach + 1) * sizeof(*tap));
	size_t n = s->n / (size_t)factor;
	float *x = calloc(n, sizeof(*x));

	for (int i = -reach; i <= reach; i++) {
		double turn = BOWED_TWO_PI / 2 * i / reach;
		double at = BOWED_TWO_PI * cut * i;

		tap[i + reach] = (float)(2 * cut * (i == 0 ? 1 : sin(at) / at) *
		    (0.42 + 0.5 * cos(turn) + 0.08 * cos(2 * turn)));
	}
	for (size_t k = (size_t)48; k + 48 < n; k++)
		for (int i = 0; i <= 2 * reach; i++)
			x[k] += tap[i] *
			    s->x[k * (size_t)factor + (size_t)i -
				(size_t)reach];
	free(tap);
	free(s->x);
	*s = (struct bowed_sound) { .x = x, .n = n };
}

/* Cards of 16000 and 22050 samples a second hear the same room. */
static void test_slow_cards(void **state)
{
	static const struct {
		int rate, factor;
	} cards[] = { { 48000, 3 }, { 44100, 2 } };

	(void)state;
	for (int i = seeded_quick() ? 1 : 0; i < 8;
	     i += seeded_quick() ? 3 : 1) {
		int rate = cards[i / 4].rate, factor = cards[i / 4].factor;
		bool sways = i % 2;
		struct bowed b = sways ? swinging() : gliding(200, 6);
		struct turn_heard all, few;
		struct bowed_sound s;

		seeded_state = 5 + (uint64_t)i;
		b.rate = rate;
		b.room_s = 0.5;
		b.room_db = i % 4 < 2 ? 9 : 0;
		s = bowed_make(&b);
		all = hear_sound(&b, &s, rate, sways);
		make_fewer(&s, factor);
		few = hear_sound(&b, &s, rate / factor, sways);
		free(s.x);
		assert_int_equal(
		    few.distance, i % 4 < 2 ? DISTANCE_NEAR : DISTANCE_FAR);
		if (fabs(few.room / all.room - 1) > 0.15)
			fail_msg("%d: %g, and %g of %d", rate / factor,
			    few.room, all.room, rate);
		assert_int_equal(few.width_known, sways && i % 4 < 2);
	}
}

/* Noise, hum and ticks are no room. */
static void test_no_room(void **state)
{
	struct bowed b = gliding(200, 6), v = swinging();

	(void)state;
	b.noise_db = v.noise_db = -10;
	b.hum_db = v.hum_db = -25;
	b.tick_db = -6;
	assert_int_equal(hear(&b, false).distance, DISTANCE_NEAR);
	assert_int_equal(hear(&v, true).distance, DISTANCE_NEAR);
}

/* A held note tells nothing of the room, and the answer is that. */
static void test_unknown(void **state)
{
	struct bowed b = gliding(0, 4);
	struct turn_heard h;

	(void)state;
	b.pulses_a_second = 0;
	h = hear(&b, false);
	assert_true(h.room <= 0);
	assert_int_equal(h.distance, DISTANCE_UNKNOWN);
	assert_int_equal(turn_distance_of(0.5), DISTANCE_NEAR);
	assert_int_equal(turn_distance_of(1), DISTANCE_UNKNOWN);
	assert_int_equal(turn_distance_of(1.2), DISTANCE_FAR);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_distance),
		cmocka_unit_test(test_dark_strings),
		cmocka_unit_test(test_slow_cards),
		cmocka_unit_test(test_no_room),
		cmocka_unit_test(test_unknown),
	};

	seeded_begin("test_room");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
