/*
 * test_refine.c - the pitch of a bow heard whole, in rooms, dry and in noise
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../../src/listen/match.h"
#include "../../src/listen/smooth.h"
#include "listening.h"

#define C2 65.4064
#define E3 164.8138
#define A3 220.0
#define A5 880.0

static struct bowed dry(double hz)
{
	return (struct bowed) { .rate = 48000,
		.seconds = 3,
		.hz = hz,
		.jitter_cents = 2,
		.noise_db = -20 };
}

static struct listening refined(
    const struct bowed *b, const struct bowed_sound *s)
{
	struct asked asked = { b->hz, b->hz * exp2(b->travel_cents / 1200) };
	struct listening l = listening_live(s, b->rate, asked, 512);

	listening_refine(&l);
	return l;
}

/* Within 1.5 cents in the median, from C2 to A5; most of it is the jitter. */
static void test_dry(void **state)
{
	(void)state;
	for (double hz = C2; hz < A5 + 1; hz *= exp2(45.0 / 5 / 12)) {
		struct bowed b = dry(hz);
		struct bowed_sound s = bowed_make(&b);
		struct listening l = refined(&b, &s);
		struct nearness near = listening_near(&l, &b, &s);

		if (near.cents > 1.5 || near.within < 0.99 || near.gross > 0)
			fail_msg("%g Hz: median %.2f cents, %.1f %% within 10",
			    hz, near.cents, 100 * near.within);
		listening_done(&l);
		free(s.x);
	}
}

/*
 * How wide a swing is read: the part of the pitch that goes with it, against
 * the truth.
 */
static double swing_share(const struct bowed *b, const struct listening *l)
{
	double sine = 0, cosine = 0, n = 0;

	for (size_t k = 0; k < l->n; k++) {
		double t = (double)k * HEARD_STEP_S, x, turn;

		if (t < 0.5 || t > b->seconds - 0.5 ||
		    l->m[k].what != HEARD_NOTE)
			continue;
		x = 1200 * log2((double)l->m[k].hz / b->hz);
		turn = BOWED_TWO_PI * b->swing_hz * t;
		sine += x * sin(turn);
		cosine += x * cos(turn);
		n++;
	}
	return n < 1 ? 0 : hypot(sine, cosine) * 2 / n / b->swing_cents;
}

/*
 * Dry, a swing is as wide as it is; in a room it all but is.  Rooms differ, some
 * leave 0.8 of a swing only, so these are always the same ones.
 */
static void test_swings(void **state)
{
	static const struct {
		double room_s, room_db, least, most;
	} rooms[] = { { 0, 0, 0.97, 1.03 }, { 0.35, 6, 0.9, 1.06 },
		{ 0.5, 3, 0.85, 1.1 } };

	(void)state;
	for (size_t i = 0; i < sizeof(rooms) / sizeof(*rooms); i++) {
		struct bowed b = dry(E3);
		struct bowed_sound s;
		struct listening l;
		double live, fine;

		seeded_state = 1 + i;
		b.seconds = 4;
		b.noise_db = -30;
		b.swing_cents = 20;
		b.swing_hz = 5.5;
		b.room_s = rooms[i].room_s;
		b.room_db = rooms[i].room_db;
		s = bowed_make(&b);
		l = listening_live(&s, b.rate, (struct asked) { E3, E3 }, 512);
		live = swing_share(&b, &l);
		listening_refine(&l);
		fine = swing_share(&b, &l);
		if (fine < rooms[i].least || fine > rooms[i].most)
			fail_msg("room %g s: live %.3f, refined %.3f", b.room_s,
			    live, fine);
		if (b.room_s > 0)
			assert_true(fabs(1 - fine) < fabs(1 - live));
		listening_done(&l);
		free(s.x);
	}
}

/* What a mean over so many seconds leaves of a swing. */
static double sinc(double hz, double seconds)
{
	double x = BOWED_TWO_PI / 2 * hz * seconds;

	return sin(x) / x;
}

/*
 * A mean over T seconds leaves sin(pi f T) / (pi f T) of a swing of f Hz
 * (Bracewell, "The Fourier Transform and Its Applications", from memory: the
 * transform of a rectangle).  The live pitch is a mean over a period, of pieces
 * as long as the lowest note's, so both count; refined, the swing is itself
 * again, but for what smoothing takes.
 */
static void test_smear(void **state)
{
	(void)state;
	for (double hz = 3; hz < 10; hz += 2) {
		struct bowed b = dry(C2);
		struct bowed_sound s;
		struct listening l;
		double live, fine, piece, left;

		b.seconds = 4;
		b.noise_db = -40;
		b.jitter_cents = 0;
		b.swing_cents = 20;
		b.swing_hz = hz;
		s = bowed_make(&b);
		l = listening_live(&s, b.rate, (struct asked) { C2, C2 }, 512);
		piece = match_width(l.rate / C2 * exp2(0.25)) / l.rate;
		left = sinc(hz, 1 / C2) * sinc(hz, piece);
		live = swing_share(&b, &l);
		listening_refine(&l);
		fine = swing_share(&b, &l) / smooth_share(hz);
		if (fabs(live - left) > 0.01 || fabs(fine - 1) > 0.025)
			fail_msg("%g Hz: live %.4f, not %.4f, refined %.4f", hz,
			    live, left, fine);
		listening_done(&l);
		free(s.x);
	}
}

/* Glides of a hand in any rate of a card. */
static void test_glides(void **state)
{
	static const int rates[] = { 16000, 44100, 192000 };

	(void)state;
	for (size_t i = 0; i < sizeof(rates) / sizeof(*rates); i++) {
		struct bowed b = dry(E3);
		struct bowed_sound s;
		struct listening l;
		struct nearness near;

		b.rate = rates[i];
		b.travel_cents = 500;
		b.glide_s = 0.15;
		b.pulses_a_second = 2;
		b.noise_db = -30;
		s = bowed_make(&b);
		l = refined(&b, &s);
		near = listening_near(&l, &b, &s);
		if (near.cents > 1.5 || near.within < 0.98)
			fail_msg("%d: median %.2f cents, %.1f %% within 10",
			    b.rate, near.cents, 100 * near.within);
		listening_done(&l);
		free(s.x);
	}
}

/* Moments that are no notes stay so, and pieces join without a seam. */
static void test_gaps(void **state)
{
	struct bowed b = dry(A3);
	struct bowed_sound s;
	struct listening l;
	struct nearness near;
	size_t gap = 0;

	(void)state;
	b.seconds = 8;
	b.stop_s = 2;
	b.stop_long_s = 0.3;
	s = bowed_make(&b);
	l = listening_live(&s, b.rate, (struct asked) { A3, A3 }, 512);
	for (size_t k = 410; k < 450; k++) {
		l.m[k].what = HEARD_NOTHING;
		l.m[k].hz = 0;
	}
	listening_refine(&l);
	for (size_t k = 410; k < 450; k++)
		gap += l.m[k].what == HEARD_NOTHING && l.m[k].hz == 0;
	assert_int_equal(gap, 40);
	near = listening_near(&l, &b, &s);
	assert_true(near.within > 0.94 && near.cents < 1.5);
	for (size_t k = 500; k < l.n - 40; k++)
		assert_true(fabs(1200 * log2((double)l.m[k].hz / A3)) < 8);
	listening_done(&l);
	free(s.x);
}

/* The lowest and the highest notes that may be asked, at their rates. */
static void test_outermost(void **state)
{
	static const double notes[] = { HEARD_LOW_HZ, 30.868, HEARD_HIGH_HZ };

	(void)state;
	for (size_t i = 0; i < sizeof(notes) / sizeof(*notes); i++) {
		struct bowed b = { .rate = 48000,
			.seconds = 2,
			.hz = notes[i],
			.noise_db = -30 };
		struct bowed_sound s = bowed_make(&b);
		struct listening l = listening_live(
		    &s, b.rate, (struct asked) { notes[i], notes[i] }, 512);
		struct nearness near;

		listening_refine(&l);
		near = listening_near(&l, &b, &s);
		if (near.within < 0.95 || near.cents > 2)
			fail_msg("%g Hz: %.1f %% within, %.2f cents", notes[i],
			    100 * near.within, near.cents);
		listening_done(&l);
		free(s.x);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_outermost),
		cmocka_unit_test(test_dry),
		cmocka_unit_test(test_swings),
		cmocka_unit_test(test_smear),
		cmocka_unit_test(test_glides),
		cmocka_unit_test(test_gaps),
	};

	seeded_begin("test_refine");
	return cmocka_run_group_tests(tests, NULL, NULL);
}
