/*
 * test_tape.c - whole recordings of which nothing is known
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

#include "bowed.h"
#include "evenhand/listen/outline.h"
#include "evenhand/listen/sum.h"
#include "evenhand/listen/tape.h"

enum { STRETCHES_MAX = 8 };

/* Everything of a recording; the lists of a stretch are gone, their sum is not. */
struct whole {
	struct sum sum;
	struct stretch at[STRETCHES_MAX];
	int stretches;
	size_t instants, notes, octaves;
	double seconds;
};

static void add(struct whole *w, const struct stretch *s, double hz)
{
	assert_true(w->stretches < STRETCHES_MAX);
	assert_true(fabs(s->from_s - w->seconds) < 1e-6);
	w->at[w->stretches++] = *s;
	sum_add(&w->sum, s);
	w->seconds = s->to_s;
	w->instants += s->n;
	for (size_t k = 0; k < s->n; k++) {
		double cents = s->m[k].what == HEARD_NOTE
		    ? 1200 * log2((double)s->m[k].hz / hz)
		    : 0;

		assert_true(isfinite(s->m[k].hz) && isfinite(s->m[k].level_db));
		w->notes += s->m[k].what == HEARD_NOTE;
		w->octaves += fabs(cents) > 900;
	}
}

static struct whole heard(int rate, const float *x, size_t n, double hz,
    const struct stretch_asked *asked)
{
	static struct stretch s;
	struct stretch_asked nothing = { .known = false };
	struct tape *t = tape_new(rate, asked ? asked : &nothing);
	struct whole w = { .stretches = 0 };

	assert_non_null(t);
	for (size_t at = 0; at < n; at += TAPE_MAX) {
		size_t part = n - at < TAPE_MAX ? n - at : TAPE_MAX;

		tape_samples(t, x + at, part);
		while (tape_next(t, &s))
			add(&w, &s, hz);
	}
	tape_end(t);
	while (tape_next(t, &s))
		add(&w, &s, hz);
	assert_false(tape_failed(t));
	tape_free(t);
	return w;
}

/* From the lowest string of a double bass to high on a violin. */
static void test_no_octave(void **state)
{
	static const double notes[] = { 41.2034, 65.4064, 82.4069, 97.9989,
		146.8324, 195.9977, 293.6648, 440, 659.2551, 880, 1318.51 };

	(void)state;
	for (size_t i = 0; i < sizeof(notes) / sizeof(*notes); i++)
		for (int weak = 0; weak < 2; weak++) {
			struct bowed b = { .rate = 48000,
				.seconds = 2,
				.hz = notes[i],
				.jitter_cents = 2,
				.noise_db = -20,
				.fundamental = weak ? 0.05 : 1 };
			struct bowed_sound s;
			struct whole w;

			if (seeded_quick() && (i + (size_t)weak) % 2 == 1)
				continue;
			seeded_state = 1 + i;
			s = bowed_make(&b);
			w = heard(b.rate, s.x, s.n, b.hz, NULL);
			free(s.x);
			assert_true(w.notes > 300);
			assert_int_equal(w.octaves, 0);
			assert_int_equal(w.at[0].kind, STRETCH_HELD);
			assert_true(fabs(1200 * log2(w.at[0].hz / b.hz)) < 3);
		}
}

static void test_vibrato(void **state)
{
	struct bowed b = { .rate = 44100,
		.seconds = 6,
		.hz = 195.9977,
		.swing_hz = 5.5,
		.swing_cents = 20,
		.jitter_cents = 2,
		.noise_db = -20 };
	struct bowed_sound s;
	struct whole w;

	(void)state;
	seeded_state = 1;
	s = bowed_make(&b);
	w = heard(b.rate, s.x, s.n, b.hz, NULL);
	free(s.x);
	assert_int_equal(w.stretches, 1);
	assert_int_equal(w.at[0].kind, STRETCH_VIBRATO);
	assert_true(fabs(w.at[0].sway.rate_hz - 5.5) < 0.02);
	assert_true(fabs(w.at[0].sway.width_cents - 20) < 1);
	assert_true(fabs(w.at[0].hz - b.hz) < 0.2);
	assert_true(fabs(w.seconds - 6) < 0.021);
}

/* Three swings a second: a vibrato is not as wide as glides are. */
static void test_wide(void **state)
{
	static const double cents[] = { 60, 140 };

	(void)state;
	for (int i = 0; i < 2; i++) {
		struct bowed b = { .rate = 48000,
			.seconds = 5,
			.hz = 195.9977,
			.swing_hz = 3,
			.swing_cents = cents[i],
			.jitter_cents = 2,
			.noise_db = -20 };
		struct bowed_sound s;
		struct whole w;

		seeded_state = 3;
		s = bowed_make(&b);
		w = heard(b.rate, s.x, s.n, b.hz, NULL);
		free(s.x);
		assert_int_equal(w.stretches, 1);
		assert_int_equal(
		    w.at[0].kind, i == 0 ? STRETCH_VIBRATO : STRETCH_GLIDES);
	}
}

/* Glides of every width, at rates a telephone and a studio have. */
static void test_glides(void **state)
{
	static const double travels[] = { 500, 200, 50 };
	static const int rates[] = { 8000, 48000, 96000 };

	(void)state;
	for (int i = 0; i < 9; i++) {
		struct bowed b = { .rate = rates[i / 3],
			.seconds = 8,
			.hz = 164.8138,
			.jitter_cents = 2,
			.noise_db = -25,
			.travel_cents = travels[i % 3],
			.pulses_a_second = 1.5,
			.glide_s = 0.15,
			.turn_s = 4 };
		struct bowed_sound s;
		struct whole w;

		/* Each rate and each travel once. */
		if (seeded_quick() && i % 3 != i / 3)
			continue;
		seeded_state = 7;
		s = bowed_make(&b);
		w = heard(b.rate, s.x, s.n, b.hz, NULL);
		assert_int_equal(w.stretches, 1);
		assert_int_equal(w.at[0].kind, STRETCH_GLIDES);
		assert_int_equal(w.at[0].arrivals, s.glides);
		assert_true(fabs(w.at[0].sum.travel_cents - travels[i % 3]) <
		    0.03 * travels[i % 3] + 2);
		assert_true(w.at[0].sum.unevenness < 0.02);
		assert_int_equal(w.at[0].bows, 2);
		free(s.x);
	}
}

/* Two notes further apart than an octave, and silence between and about. */
static void test_pauses(void **state)
{
	enum { RATE = 22050, PAUSE = RATE * 3 / 2 };
	struct bowed low = { .rate = RATE, .seconds = 2, .hz = 97.9989 };
	struct bowed high = { .rate = RATE, .seconds = 2, .hz = 440 };
	struct bowed_sound a, b;
	size_t n;
	float *x;
	struct whole w;

	(void)state;
	seeded_state = 3;
	a = bowed_make(&low);
	b = bowed_make(&high);
	n = a.n + b.n + (size_t)3 * PAUSE;
	x = calloc(n, sizeof(*x));
	memcpy(x + PAUSE, a.x, a.n * sizeof(*x));
	memcpy(x + 2 * (size_t)PAUSE + a.n, b.x, b.n * sizeof(*x));
	w = heard(RATE, x, n, 200, NULL);
	assert_int_equal(w.stretches, 2);
	assert_true(fabs(1200 * log2(w.at[0].hz / low.hz)) < 3);
	assert_true(fabs(1200 * log2(w.at[1].hz / high.hz)) < 3);
	assert_true(w.at[1].from_s > 3.5 && w.at[1].from_s < 5);
	free(x);
	free(a.x);
	free(b.x);
}

/* A long recording is cut, and its pitch goes on as if it were not. */
static void test_long(void **state)
{
	struct bowed b = { .rate = 16000,
		.seconds = 130,
		.hz = 146.8324,
		.swing_hz = 5,
		.swing_cents = 15,
		.jitter_cents = 1,
		.turn_s = 4 };
	struct bowed_sound s;
	struct whole w;

	(void)state;
	seeded_state = 5;
	s = bowed_make(&b);
	w = heard(b.rate, s.x, s.n, b.hz, NULL);
	free(s.x);
	assert_int_equal(w.stretches, 3);
	for (int i = 0; i < w.stretches; i++)
		assert_true(w.at[i].to_s - w.at[i].from_s <= TAPE_STRETCH_S);
	assert_true(fabs(sum_mean(&w.sum.rate_hz) - 5) < 0.01);
	assert_true(fabs(sum_mean(&w.sum.width_cents) - 15) < 0.7);
	assert_true(w.notes + 60 > w.instants);
	assert_int_equal(w.octaves, 0);
}

/* What all stretches of a sound come to. */
static struct sum all_of(const struct bowed *b, uint64_t seed)
{
	struct bowed_sound s;
	struct whole w;

	seeded_state = seed;
	s = bowed_make(b);
	w = heard(b->rate, s.x, s.n, b->hz, NULL);
	free(s.x);
	return w.sum;
}

/* Near and far; not where nothing moves, nor at a telephone's rate. */
static void test_distance(void **state)
{
	(void)state;
	for (uint64_t seed = seeded_quick() ? 2 : 1; seed < 3; seed++) {
		struct bowed b = { .rate = 44100,
			.seconds = 5,
			.hz = 146.8324,
			.jitter_cents = 2,
			.noise_db = -30,
			.swing_hz = 5.5,
			.swing_cents = 20,
			.room_s = 0.4,
			.room_db = 9 };
		struct sum all = all_of(&b, seed);

		assert_int_equal(sum_distance(&all), DISTANCE_NEAR);
		b.room_db = -1;
		all = all_of(&b, seed);
		assert_int_equal(sum_distance(&all), DISTANCE_FAR);
		assert_true(all.of_kind[STRETCH_VIBRATO] == 1);
		b.swing_cents = 0;
		b.pulses_a_second = 1.5;
		b.travel_cents = 200;
		b.glide_s = 0.15;
		all = all_of(&b, seed);
		assert_int_equal(sum_distance(&all), DISTANCE_FAR);
		assert_true(all.arrivals > 4);
		b.rate = 16000;
		all = all_of(&b, seed);
		assert_int_equal(sum_distance(&all), DISTANCE_FAR);
		b.rate = 8000;
		all = all_of(&b, seed);
		assert_int_equal(sum_distance(&all), DISTANCE_UNKNOWN);
		b.rate = 44100;
		b.pulses_a_second = 0;
		all = all_of(&b, seed);
		assert_int_equal(sum_distance(&all), DISTANCE_UNKNOWN);
	}
}

/* The middle one counts; what tells nothing of a room does not. */
static void test_room_median(void **state)
{
	static const double rooms[] = { 0, 0.305, 50, 0.605, 0, 1.205 };
	static const double medians[] = { 0, 0.305, (0.305 + 3.995) / 2, 0.605,
		0.605, (0.605 + 1.205) / 2 };
	struct sum all = { .stretches = 0 };

	(void)state;
	for (int i = 0; i < 6; i++) {
		struct stretch s = { .kind = STRETCH_HELD, .room = rooms[i] };

		sum_add(&all, &s);
		assert_true(fabs(sum_room(&all) - medians[i]) < 0.0051);
	}
	assert_int_equal(all.rooms, 4);
	assert_int_equal(sum_distance(&all), DISTANCE_NEAR);
}

/* What was to come did not: said, and not measured. */
static void test_elsewhere(void **state)
{
	struct bowed b = { .rate = 48000, .seconds = 3, .hz = 440 };
	struct stretch_asked asked = { .known = true,
		.asked = { 97.9989, 130.8128 } };
	struct bowed_sound s;
	struct whole w;

	(void)state;
	seeded_state = 2;
	s = bowed_make(&b);
	w = heard(b.rate, s.x, s.n, b.hz, &asked);
	free(s.x);
	assert_int_equal(w.at[0].kind, STRETCH_ELSEWHERE);
	assert_int_equal(w.at[0].arrivals, 0);
	assert_int_equal(w.at[0].bows, 0);
}

/* Silence, noise, nothing, and what is no number. */
static void test_nothing(void **state)
{
	enum { N = 48000 };
	static float x[N];
	struct whole w = heard(48000, x, N, 100, NULL);

	(void)state;
	assert_int_equal(w.at[0].kind, STRETCH_QUIET);
	assert_int_equal(heard(48000, x, 0, 100, NULL).stretches, 0);
	assert_int_equal(heard(8000, x, 1, 100, NULL).stretches, 1);
	seeded_state = 9;
	for (int i = 0; i < N; i++)
		x[i] = (float)(0.1 * bowed_normal());
	w = heard(48000, x, N, 100, NULL);
	assert_int_equal(w.at[0].kind, STRETCH_UNCLEAR);
	for (int i = 0; i < N; i++)
		x[i] = i % 3 == 0 ? NAN : i % 3 == 1 ? INFINITY : -1e30F;
	w = heard(8000, x, N, 100, NULL);
	assert_true(w.stretches > 0);
}

static void test_outline(void **state)
{
	static struct outline o;
	double low, high;

	(void)state;
	assert_false(outline_range(&o, &low, &high));
	for (int i = 0; i < 100000; i++) {
		struct instant m = { .hz = i == 77777 ? 700.0F
						      : 200.0F + (float)(i % 7),
			.level_db = -20,
			.what = i < 50000 ? HEARD_NOTE : HEARD_NOTHING };

		if (i == 77777)
			m.what = HEARD_NOTE;
		outline_add(&o, &m);
	}
	assert_true(o.places <= OUTLINE_PLACES);
	assert_true(fabs(outline_s(&o) - 500) < 1e-6);
	assert_true(outline_range(&o, &low, &high));
	assert_true(low == 200 && high == 206);
	assert_true(outline_join(&o, 0, o.places).high_hz == 700);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_no_octave),
		cmocka_unit_test(test_vibrato),
		cmocka_unit_test(test_wide),
		cmocka_unit_test(test_glides),
		cmocka_unit_test(test_pauses),
		cmocka_unit_test(test_long),
		cmocka_unit_test(test_distance),
		cmocka_unit_test(test_room_median),
		cmocka_unit_test(test_elsewhere),
		cmocka_unit_test(test_nothing),
		cmocka_unit_test(test_outline),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
