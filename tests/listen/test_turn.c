/*
 * test_turn.c - what is told of a turn, by players who do as they are asked
 *
 * Turns drawn as instants, so that every player of every stage is there: who
 * begins on the upper or on the lower note, or goes up between the pulses, is
 * early or late, leaves out a top, plays another string, or does not play.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "evenhand/listen/turn.h"
#include "listening.h"

#define E3 164.8138
#define BOW_S 4.0

enum { MOST = 2000, BEFORE = 100 /* instants before the first bow */ };

enum begins { HIGH, LOW, BETWEEN };

struct player {
	double cents;
	int pulses;
	enum begins begins;
	double late_s;
	int without; /* the top that is left out, counted from 0; -1 none */
	double jitter_s;
};

struct drawing {
	struct instant m[MOST];
	size_t n;
	struct turn_asked asked;
};

/* Cents at t from the beginning of the bows: up by glides before each top. */
static double drawn_cents(
    const struct player *p, const double *jitter, double t)
{
	double pulse = BOW_S / p->pulses, glide = fmin(0.15, pulse / 4);
	double part = 0;

	for (int i = -1; i <= 2 * p->pulses; i++) {
		double top = i * pulse + p->late_s + jitter[i + 1] +
		    (p->begins == BETWEEN ? pulse / 2 : 0);

		if (i == p->without || (i <= 0 && p->begins == LOW) ||
		    (i < 0 && p->begins == BETWEEN))
			continue;
		part += bowed_ramp((t - top + 0.8 * glide) / glide) -
		    bowed_ramp((t - top - pulse / 2 + glide) / glide);
	}
	return p->cents * part;
}

static struct drawing draw(const struct player *p)
{
	struct drawing d = { .n = BEFORE + (size_t)(2 * BOW_S / HEARD_STEP_S) +
		    BEFORE };
	double jitter[2 * TURN_PULSES_MAX + 2] = { 0 };

	for (size_t i = 0; i < sizeof(jitter) / sizeof(*jitter); i++)
		jitter[i] = p->jitter_s * bowed_normal();
	for (size_t k = 0; k < d.n; k++) {
		double t = ((double)k - BEFORE) * HEARD_STEP_S;
		double turn = (t - p->late_s - BOW_S) / 0.05;
		bool plays = t > p->late_s && t < 2 * BOW_S + p->late_s;

		d.m[k] = (struct instant) { .level_db = plays
			    ? (float)(-20 - 14 * exp(-0.5 * turn * turn))
			    : -90 };
		if (!plays)
			continue;
		d.m[k].what = HEARD_NOTE;
		d.m[k].sure = 1;
		d.m[k].hz = (float)(E3 *
		    exp2((drawn_cents(p, jitter, t) + bowed_normal()) / 1200));
	}
	d.asked = (struct turn_asked) {
		.asked = { E3, E3 * exp2(p->cents / 1200) },
		.lower_hz = E3,
		.travel_cents = p->cents,
		.pulses = p->pulses,
		.bows = 2,
		.edge_s = { 0.5, 0.5 + BOW_S, 0.5 + 2 * BOW_S },
		.distance = DISTANCE_NEAR,
	};
	return d;
}

static struct turn_heard hear(const struct drawing *d)
{
	struct arena a = { NULL, 0 };
	struct turn_heard h;

	assert_true(turn_measure(&a, &d->asked, d->m, d->n, &h));
	arena_done(&a);
	return h;
}

/* Nearly a whole pulse late is as good as a little early. */
static bool whole_pulse_late(const struct player *p)
{
	return p->begins == BETWEEN && p->late_s + 0.2 > BOW_S / p->pulses / 2;
}

static const double travels[] = { 500, 300, 200, 100, 50 };
static const double lates[] = { -0.1, 0, 0.1, 0.2 };

/* Every way of playing what was asked is full. */
static void test_full(void **state)
{
	(void)state;
	for (int i = 0; i < 5 * 3 * 3 * 4; i++) {
		struct player p = { travels[i % 5], 4 + 2 * (i / 5 % 3),
			(enum begins)(i / 15 % 3), lates[i / 45], -1, 0.02 };
		struct drawing d = draw(&p);
		struct turn_heard h = hear(&d);

		if (whole_pulse_late(&p))
			continue;
		if (h.answer != TURN_HEARD || h.bows_listened != 2 ||
		    h.bows_full != 2 || h.arrivals.asked < 2 * p.pulses - 1 ||
		    h.arrivals.heard != h.arrivals.asked)
			fail_msg("%g cents, %d pulses, begins %d, late %g: "
				 "%d, %d listened, %d full, %d of %d",
			    p.cents, p.pulses, (int)p.begins, p.late_s,
			    (int)h.answer, h.bows_listened, h.bows_full,
			    h.arrivals.heard, h.arrivals.asked);
		assert_true(fabs(h.arrivals.travel_cents - p.cents) < 2);
		assert_true(h.arrivals.unevenness < 0.12);
		assert_true(h.calm_known && h.stops == 0);
	}
}

/* One top left out, any one: its bow is not full, and the count says so. */
static void test_left_out(void **state)
{
	(void)state;
	for (int i = 0; i < 3 * 3 * 4; i++) {
		struct player p = { 200, 4 + 2 * (i % 3),
			(enum begins)(i / 3 % 3), lates[i / 9], 0, 0.02 };

		if (whole_pulse_late(&p))
			continue;
		for (p.without = 1; p.without < 2 * p.pulses; p.without++) {
			struct drawing d = draw(&p);
			struct turn_heard h = hear(&d);

			if (h.bows_full != 1 || h.bows_listened != 2 ||
			    h.arrivals.heard != h.arrivals.asked - 1 ||
			    h.bow[p.without >= p.pulses].full)
				fail_msg("%d pulses, begins %d, late %g, "
					 "without %d: %d full, %d of %d",
				    p.pulses, (int)p.begins, p.late_s,
				    p.without, h.bows_full, h.arrivals.heard,
				    h.arrivals.asked);
		}
	}
}

/* Half as many tops as were asked are no full bow, twice as many are. */
static void test_other_counts(void **state)
{
	struct player p = { 200, 4, LOW, 0, -1, 0.02 };
	struct drawing d = draw(&p);
	struct turn_heard h;

	(void)state;
	d.asked.pulses = 8;
	h = hear(&d);
	assert_int_equal(h.bows_full, 0);
	assert_true(h.arrivals.heard <= 8 && h.arrivals.asked >= 15);
	p.pulses = 8;
	d = draw(&p);
	d.asked.pulses = 4;
	h = hear(&d);
	assert_int_equal(h.bows_full, 2);
	assert_true(h.arrivals.heard > h.arrivals.asked);
}

/* Late and early are told only when the latency is known. */
static void test_late(void **state)
{
	struct player p = { 200, 6, HIGH, 0.06, -1, 0.01 };
	struct drawing d = draw(&p);
	struct turn_heard h = hear(&d);

	(void)state;
	assert_true(!h.arrivals.timed);
	d.asked.latency_known = true;
	h = hear(&d);
	/* Nine tenths of the way are done 0.005 s before the top. */
	assert_true(h.arrivals.timed && fabs(h.arrivals.late_s - 0.06) < 0.015);
	assert_true(h.arrivals.late_spread_s < 0.02);
}

static struct turn_heard heard_as(
    const struct drawing *drawn, enum heard what, float db, size_t from)
{
	struct drawing d = *drawn;

	for (size_t k = from; k < d.n; k++)
		d.m[k] = (struct instant) { .what = what,
			.level_db = db,
			.hz = what == HEARD_OTHER ? 82.4F : 0 };
	return hear(&d);
}

/* Where it could not hear it says why, and nothing else. */
static void test_not_heard(void **state)
{
	struct player p = { 200, 6, LOW, 0, -1, 0 };
	struct drawing d = draw(&p);
	struct turn_heard h = heard_as(&d, HEARD_NOTHING, -90, 0);
	struct turn_value v[TURN_VALUES_MAX];

	(void)state;
	assert_int_equal(h.answer, TURN_SILENT);
	assert_int_equal(turn_values(&h, v), 3);
	assert_int_equal(heard_as(&d, HEARD_NOISE, -40, 0).answer, TURN_NOISE);
	assert_int_equal(heard_as(&d, HEARD_NOISE, -75, 0).answer, TURN_SILENT);
	assert_int_equal(
	    heard_as(&d, HEARD_OTHER, -20, 0).answer, TURN_ELSEWHERE);
	/* 3.5 of 8 seconds, then another string: that is the most of it. */
	assert_int_equal(heard_as(&d, HEARD_OTHER, -20, BEFORE + 700).answer,
	    TURN_ELSEWHERE);
	/* 1.5 of 8 seconds, then nothing. */
	assert_int_equal(
	    heard_as(&d, HEARD_NOTHING, -90, BEFORE + 300).answer, TURN_LITTLE);
	/* One bow of two. */
	h = heard_as(&d, HEARD_NOTHING, -90, BEFORE + 800);
	assert_int_equal(h.answer, TURN_HEARD);
	assert_int_equal(h.bows_listened, 1);
	assert_int_equal(h.bows_full, 1);
	assert_true(h.arrivals.asked == 5 && h.arrivals.heard == 5);
	/* A top may hide where a sound was none that fits. */
	for (size_t k = BEFORE + 400; k < BEFORE + 500; k++)
		d.m[k].what = HEARD_OTHER;
	h = hear(&d);
	assert_true(!h.bow[0].listened && h.bow[1].listened);
	d.n = 10;
	assert_int_equal(hear(&d).answer, TURN_SILENT);
	d.n = 0;
	assert_int_equal(hear(&d).answer, TURN_SILENT);
}

/* A swing of 5.5 Hz in the last stage, near and from far. */
static void test_sway(void **state)
{
	struct player p = { 50, 8, LOW, 0, -1, 0 };
	struct drawing d = draw(&p);
	struct turn_heard h;

	(void)state;
	for (size_t k = 0; k < d.n; k++)
		if (d.m[k].what == HEARD_NOTE)
			d.m[k].hz = (float)(E3 *
			    exp2((25 *
					 sin(BOWED_TWO_PI * 5.5 * HEARD_STEP_S *
					     (double)k) +
				     10) /
				1200));
	h = hear(&d);
	assert_true(!h.sway.heard && !h.width_known);
	d.asked.sways = true;
	h = hear(&d);
	assert_true(h.sway.heard && h.width_known);
	assert_true(fabs(h.sway.rate_hz - 5.5) < 0.02);
	/* Drawn, it was never smoothed: so much is given back too much. */
	assert_true(fabs(h.sway.width_cents - 25) < 1);
	assert_true(fabs(h.sway.middle_cents - 10) < 1);
	assert_true(h.sway.from_s > 0.5 && h.sway.to_s < 8.6);
	assert_int_equal(h.bows_full, 2);
	d.asked.distance = DISTANCE_FAR;
	h = hear(&d);
	assert_true(h.sway.heard && !h.width_known);
	assert_true(h.sway.width_cents == 0 && h.sway.width_spread == 0);
}

/* The bow stops for 0.2 s, and grows louder by 6 dB in its other half. */
static void test_calm(void **state)
{
	struct player p = { 200, 4, LOW, 0, -1, 0 };
	struct drawing d = draw(&p);
	struct turn_heard h;

	(void)state;
	for (size_t k = BEFORE + 300; k < BEFORE + 340; k++)
		d.m[k].level_db = -60;
	h = hear(&d);
	assert_true(h.calm_known && h.stops == 1);
	assert_int_equal(h.bow[0].bow.stops, 1);
	d = draw(&p);
	for (size_t k = BEFORE + 800; k < BEFORE + 1600; k++)
		d.m[k].level_db += (float)(k - BEFORE - 800) * 9.0F / 800;
	h = hear(&d);
	/* Between the middles of the thirds lie two thirds of the bow. */
	assert_true(h.stops == 0 && fabs(h.drift_db - 5.3) < 0.5);
	assert_true(h.calm_sure > 0.95);
}

static bool same(double a, double b)
{
	return fabs(a - b) <= 1e-12;
}

/* What is kept under a name; NAN when it is not there. */
static double value_of(const struct turn_heard *h, const char *name)
{
	struct turn_value v[TURN_VALUES_MAX];
	int n = turn_values(h, v);

	for (int i = 0; i < n; i++)
		if (strcmp(v[i].name, name) == 0)
			return v[i].value;
	return NAN;
}

/* Whole numbers and others by their names; what was not told is not there. */
static void test_values(void **state)
{
	struct player p = { 50, 8, LOW, 0.05, -1, 0.02 };
	struct drawing d = draw(&p);
	struct turn_heard h;
	struct turn_value v[TURN_VALUES_MAX];

	(void)state;
	d.asked.latency_known = d.asked.sways = true;
	h = hear(&d);
	h.sway.heard = h.width_known = true;
	h.sway.width_cents = 12.5;
	h.sway.cycles = 21;
	assert_int_equal(turn_values(&h, v), 28);
	assert_true(same(value_of(&h, "answer"), TURN_HEARD));
	assert_true(same(value_of(&h, "share"), h.share));
	assert_true(same(value_of(&h, "tops_heard"), h.arrivals.heard));
	assert_true(same(value_of(&h, "late_s"), h.arrivals.late_s));
	assert_true(same(value_of(&h, "width_cents"), 12.5));
	assert_true(same(value_of(&h, "cycles"), 21));
	assert_true(same(value_of(&h, "stops"), h.stops));
	h.arrivals.timed = h.width_known = h.calm_known = false;
	assert_int_equal(turn_values(&h, v), 28 - 2 - 2 - 4);
	assert_true(isnan(value_of(&h, "late_s")));
	assert_true(isnan(value_of(&h, "width_cents")));
	assert_true(isnan(value_of(&h, "stops")));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_full),
		cmocka_unit_test(test_left_out),
		cmocka_unit_test(test_other_counts),
		cmocka_unit_test(test_late),
		cmocka_unit_test(test_not_heard),
		cmocka_unit_test(test_sway),
		cmocka_unit_test(test_calm),
		cmocka_unit_test(test_values),
	};

	seeded_begin("test_turn");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
