/*
 * test_ear.c - turns heard as samples come, against the same heard at once
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

static struct bowed player(double cents, int pulses)
{
	double pulse = 4.0 / pulses;

	return (struct bowed) { .rate = RATE,
		.seconds = 8.5,
		.hz = E3,
		.jitter_cents = 2,
		.noise_db = -25,
		.turn_s = 4,
		.pulses_a_second = 1 / pulse,
		.travel_cents = cents,
		.glide_s = fmin(0.15, pulse / 4) };
}

static struct turn_asked wish(const struct bowed *b, int pulses)
{
	return (struct turn_asked) {
		.asked = { b->hz, b->hz * exp2(b->travel_cents / 1200) },
		.lower_hz = b->hz,
		.travel_cents = b->travel_cents,
		.pulses = pulses,
		.bows = 2,
		.edge_s = { 0, 4, 8 },
		.distance = DISTANCE_NEAR,
	};
}

/* In blocks of a size; the samples may end a little after the turn. */
static struct turn_heard hear(struct ear *e, const struct turn_asked *asked,
    const struct bowed_sound *s, size_t block)
{
	struct turn_heard h;

	assert_true(ear_begin(e, asked));
	for (size_t at = 0; at < s->n; at += block)
		ear_take(e, s->x + at, s->n - at < block ? s->n - at : block);
	assert_true(ear_end(e, asked, &h));
	return h;
}

/* Whole turns in every stage, and what their hands did. */
static void test_turns(void **state)
{
	static const double cents[] = { 500, 200, 50 };
	struct ear *e = ear_new(RATE);

	(void)state;
	/* All of these, or each travel and each count of pulses once. */
	for (int i = 0; i < 9; i += seeded_quick() ? 4 : 1) {
		int pulses = 4 + 2 * (i % 3);
		struct bowed b = player(cents[i / 3], pulses);
		struct turn_asked asked = wish(&b, pulses);
		struct bowed_sound s = bowed_make(&b);
		struct turn_heard h = hear(e, &asked, &s, 480);

		if (h.answer != TURN_HEARD || h.bows_full != 2 ||
		    h.arrivals.heard != 2 * pulses ||
		    fabs(h.arrivals.travel_cents - cents[i / 3]) > 2 ||
		    h.arrivals.unevenness > 0.02 || !h.calm_known ||
		    h.stops != 0)
			fail_msg("%g cents, %d pulses: answer %d, %d full, %d "
				 "tops, %g cents, %g uneven, %d stops",
			    cents[i / 3], pulses, (int)h.answer, h.bows_full,
			    h.arrivals.heard, h.arrivals.travel_cents,
			    h.arrivals.unevenness, h.stops);
		free(s.x);
	}
	ear_free(e);
}

static struct turn_heard heard_at_once(
    const struct turn_asked *asked, const struct bowed_sound *s)
{
	struct listening l = listening_live(s, RATE, asked->asked, 512);
	struct turn_heard h;

	listening_refine(&l);
	assert_true(turn_measure(&l.arena, asked, l.m, l.n, &h));
	listening_done(&l);
	return h;
}

/* The same whatever the blocks, and as if all had been there at once. */
static void test_any_block(void **state)
{
	static const size_t blocks[] = { 1, 97, 480, 5000, 100000 };
	struct bowed b = player(200, 6);
	struct turn_asked asked = wish(&b, 6);
	struct bowed_sound s = bowed_make(&b);
	struct turn_heard once = heard_at_once(&asked, &s), first;
	struct ear *e = ear_new(RATE);

	(void)state;
	first = hear(e, &asked, &s, 64);
	assert_int_equal(first.arrivals.heard, once.arrivals.heard);
	assert_true(fabs(first.arrivals.travel_cents -
			once.arrivals.travel_cents) < 0.2);
	assert_true(
	    fabs(first.arrivals.unevenness - once.arrivals.unevenness) < 0.001);
	assert_true(fabs(first.unsteady_db - once.unsteady_db) < 0.05);
	for (size_t i = 0; i < sizeof(blocks) / sizeof(*blocks); i++) {
		struct turn_heard h = hear(e, &asked, &s, blocks[i]);
		struct turn_value v[TURN_VALUES_MAX], w[TURN_VALUES_MAX];
		int n = turn_values(&first, v);

		assert_int_equal(turn_values(&h, w), n);
		for (int j = 0; j < n; j++)
			assert_true(fabs(v[j].value - w[j].value) < 1e-12);
	}
	ear_free(e);
	free(s.x);
}

/* The newest instant and when it was; false when there is none yet. */
static bool newest(const struct ear *e, struct instant *m, double *at_s)
{
	size_t n;
	const struct instant *all = ear_instants(e, &n);

	if (n == 0)
		return false;
	*m = all[n - 1];
	*at_s = (double)(n - 1) * HEARD_STEP_S;
	return true;
}

/* The newest instant comes along with the samples and is near the truth. */
static void test_newest(void **state)
{
	struct bowed b = player(200, 4);
	struct turn_asked asked = wish(&b, 4);
	struct bowed_sound s = bowed_make(&b);
	struct ear *e = ear_new(RATE);
	struct instant m = { 0 };
	double at = 0;

	(void)state;
	assert_false(newest(e, &m, &at));
	assert_true(ear_begin(e, &asked));
	assert_false(newest(e, &m, &at));
	for (size_t i = 0; i + 480 <= s.n; i += 480) {
		ear_take(e, s.x + i, 480);
		if (i < RATE / 4 || i > 3 * RATE)
			continue;
		assert_true(newest(e, &m, &at));
		assert_true(ear_taken_s(e) - at < 0.020);
		assert_true(m.what == HEARD_NOTE);
		assert_true(fabs(1200 * log2((double)m.hz / b.hz) -
				bowed_cents(&b, &s, at)) < 40);
	}
	ear_free(e);
	free(s.x);
}

/* Fingers change, bounds change; a turn that is broken off leaves nothing. */
static void test_turn_after_turn(void **state)
{
	static const double notes[] = { 65.4, 164.8, 440, 880 };
	struct ear *e = ear_new(RATE);
	struct turn_asked asked[4];
	struct bowed_sound s[4];

	(void)state;
	for (int i = 0; i < 4; i++) {
		struct bowed b = player(200, 6);

		b.hz = notes[i];
		asked[i] = wish(&b, 6);
		s[i] = bowed_make(&b);
	}
	for (int i = 0; i < 12; i++) {
		int note = i % 4;
		struct turn_heard h;

		if (i % 3 == 2) {
			assert_true(ear_begin(e, &asked[note]));
			ear_take(e, s[note].x, s[note].n / 3);
			continue;
		}
		h = hear(e, &asked[note], &s[note], 512);
		if (h.answer != TURN_HEARD || h.bows_full != 2)
			fail_msg("%g Hz: answer %d, %d full", notes[note],
			    (int)h.answer, h.bows_full);
	}
	for (int i = 0; i < 4; i++)
		free(s[i].x);
	ear_free(e);
	ear_free(NULL);
}

/* What did not arrive is a gap, and time goes on through it. */
static void test_lost(void **state)
{
	struct bowed b = player(200, 4);
	struct turn_asked asked = wish(&b, 4);
	struct bowed_sound s = bowed_make(&b);
	struct ear *e = ear_new(RATE);
	const struct instant *m;
	struct turn_heard h;
	size_t n;

	(void)state;
	assert_true(ear_begin(e, &asked));
	ear_take(e, s.x, 2 * RATE);
	ear_lost(e, RATE / 2);
	ear_take(e, s.x + RATE * 5 / 2, s.n - RATE * 5 / 2);
	while (ear_work(e))
		;
	m = ear_instants(e, &n);
	assert_int_equal(n, 1700);
	/* An instant is heard in what stands 50 to 60 ms about it. */
	for (size_t k = 415; k < 485; k++)
		assert_true(m[k].what == HEARD_NOTHING);
	for (size_t k = 515; k < 700; k++)
		assert_true(
		    fabs(1200 * log2((double)m[k].hz / b.hz) -
			bowed_cents(&b, &s, (double)k * HEARD_STEP_S)) < 15);
	assert_true(ear_end(e, &asked, &h));
	assert_int_equal(h.answer, TURN_HEARD);
	assert_true(h.bow[1].full && !h.bow[0].full);
	ear_free(e);
	free(s.x);
}

/* However much comes, no more is kept than the turn, and it is still good. */
static void test_bounded(void **state)
{
	struct bowed b = player(200, 4);
	struct turn_asked asked = wish(&b, 4);
	struct bowed_sound s = bowed_make(&b);
	struct ear *e = ear_new(RATE);
	struct turn_heard h;
	size_t n;

	(void)state;
	assert_true(ear_begin(e, &asked));
	for (int i = 0; i < 100; i++)
		ear_take(e, s.x, s.n);
	ear_lost(e, SIZE_MAX / 2);
	ear_instants(e, &n);
	assert_int_equal(n, 1700);
	assert_true(ear_end(e, &asked, &h));
	assert_int_equal(h.bows_full, 2);
	/* Nothing after the end, and nothing without a beginning. */
	ear_take(e, s.x, s.n);
	assert_false(ear_work(e));
	assert_false(ear_end(e, &asked, &h));
	/* A turn that is longer than any: its end is not listened to. */
	asked.bows = 8;
	for (int i = 0; i <= 8; i++)
		asked.edge_s[i] = 20 * i;
	assert_true(ear_begin(e, &asked));
	for (int i = 0; i < 20; i++)
		ear_take(e, s.x, s.n);
	ear_instants(e, &n);
	assert_true((double)n * HEARD_STEP_S <= EAR_S_MAX);
	assert_true((double)n * HEARD_STEP_S > EAR_S_MAX - 0.1);
	assert_true(ear_end(e, &asked, &h));
	assert_int_equal(h.answer, TURN_HEARD);
	assert_int_equal(h.bows_listened, 3);
	ear_free(e);
	free(s.x);
}

/* Turns of nothing at all. */
static void test_nothing(void **state)
{
	struct bowed b = player(200, 4);
	struct turn_asked asked = wish(&b, 4);
	struct ear *e = ear_new(RATE);
	struct turn_heard h;

	(void)state;
	assert_true(ear_begin(e, &asked));
	assert_true(ear_end(e, &asked, &h));
	assert_int_equal(h.answer, TURN_SILENT);
	assert_true(ear_begin(e, &asked));
	ear_take(e, (const float[]) { 0.1F, NAN, 0.2F }, 3);
	assert_true(ear_end(e, &asked, &h));
	assert_int_equal(h.answer, TURN_SILENT);
	assert_true(ear_begin(e, &asked));
	ear_lost(e, 10 * RATE);
	assert_true(ear_end(e, &asked, &h));
	assert_int_equal(h.answer, TURN_SILENT);
	ear_free(e);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_turns),
		cmocka_unit_test(test_any_block),
		cmocka_unit_test(test_newest),
		cmocka_unit_test(test_turn_after_turn),
		cmocka_unit_test(test_lost),
		cmocka_unit_test(test_bounded),
		cmocka_unit_test(test_nothing),
	};

	seeded_begin("test_ear");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
