/*
 * test_voices.c - what the voices hold, measured from their samples
 *
 * Energy at a frequency is measured with Goertzel's filter (G. Goertzel,
 * Amer. Math. Monthly 65, 1958; from memory).
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../../src/sound/voices.h"
#include "../score/seeded.h"
#include "evenhand/base/frames.h"

enum { LONGEST = 192000 };

static float samples[LONGEST];

/* The usual sound of each kind, as a passage would ask for it. */
static struct sound usual_sound(enum voice v, int rate)
{
	static const int ms[VOICE_KINDS] = { 70, 70, 15, 15, 225, 600, 60 };
	static const int millihertz[VOICE_KINDS] = { 0, 0, 0, 0, 220000, 146832,
		0 };

	return (struct sound) {
		.length = (int32_t)frames_of_ms(ms[v], rate),
		.voice = (int16_t)v,
		.level = 1000,
		.millihertz = millihertz[v],
	};
}

static int32_t make(enum voice v, int rate)
{
	struct sound s = usual_sound(v, rate);
	struct shape shape;

	shape_make(&shape, &s, rate);
	shape_fill(&shape, 0, s.length, samples);
	return s.length;
}

/* Power at a frequency, as a part of the whole energy of the sound. */
static double power_at(double hz, int rate, int32_t n)
{
	double w = 2 * acos(-1.0) * hz / rate;
	double c = 2 * cos(w), s1 = 0, s2 = 0, energy = 0;

	for (int32_t i = 0; i < n; i++) {
		double s0 = (double)samples[i] + c * s1 - s2;

		s2 = s1;
		s1 = s0;
		energy += (double)samples[i] * (double)samples[i];
	}
	return (s1 * s1 + s2 * s2 - c * s1 * s2) / (energy * n / 2);
}

/* Of the frequencies from low to high, the one of the most power. */
static double loudest_of(
    double low, double high, double step, int rate, int32_t n)
{
	double best = 0, hz = 0;

	for (double f = low; f <= high; f += step) {
		double p = power_at(f, rate, n);

		if (p > best) {
			best = p;
			hz = f;
		}
	}
	return hz;
}

/* The frequency of the most power, to 1 Hz. */
static double loudest_hz(int rate, int32_t n)
{
	double near = loudest_of(50, 2500, 10, rate, n);

	return loudest_of(near - 10, near + 10, 1, rate, n);
}

/* The down bow lies an octave below the up bow, at every rate. */
static void test_knocks_differ(void **state)
{
	static const int rates[] = { 8000, 44100, 48000, 96000, 192000 };

	(void)state;
	for (size_t r = 0; r < 5; r++) {
		int32_t n = make(VOICE_DOWN, rates[r]);
		double down = loudest_hz(rates[r], n);
		double down_low = power_at(196, rates[r], n);
		double down_high = power_at(392, rates[r], n);

		n = make(VOICE_UP, rates[r]);
		double up = loudest_hz(rates[r], n);

		assert_true(fabs(down - 196) < 12);
		assert_true(fabs(up - 392) < 12);
		/* 10 dB and more between the two, each in its own place. */
		assert_true(down_low > 10 * down_high);
		assert_true(power_at(392, rates[r], n) >
		    10 * power_at(196, rates[r], n));
	}
}

/* Ticks are light: between 1 and 2 kHz, and no knock hides there. */
static void test_ticks(void **state)
{
	(void)state;
	int32_t n = make(VOICE_TICK, 48000);
	assert_int_equal(n, 720);
	double tick = loudest_hz(48000, n);
	n = make(VOICE_COUNT, 48000);
	double count = loudest_hz(48000, n);

	assert_true(tick > 1000 && tick < 2000);
	assert_true(count > 1000 && count < 2000);
	assert_true(tick - count > 200);
	for (int v = VOICE_DOWN; v <= VOICE_UP; v++) {
		n = make((enum voice)v, 48000);
		assert_true(power_at(tick, 48000, n) < 0.01);
		assert_true(power_at(count, 48000, n) < 0.02);
	}
}

static void test_own_pitch(void **state)
{
	static const double hz[] = { 65.41, 146.83, 220, 440, 987.77 };

	(void)state;
	for (size_t i = 0; i < 5; i++) {
		struct sound s = usual_sound(VOICE_TONE, 48000);
		struct shape shape;

		s.millihertz = (int32_t)(hz[i] * 1000);
		shape_make(&shape, &s, 48000);
		shape_fill(&shape, 0, s.length, samples);
		double found = loudest_of(50, 1200, 1, 48000, s.length);
		assert_true(fabs(found - hz[i]) <= 1);
	}
}

/* The loudest that is left of a sound at its edge: no step, no click. */
static void test_ends(void **state)
{
	static const int rates[] = { 8000, 44100, 48000, 192000 };

	(void)state;
	for (size_t r = 0; r < 4; r++)
		for (int v = 0; v < VOICE_KINDS; v++) {
			int32_t n = make((enum voice)v, rates[r]);
			float edge = rates[r] < 44100 ? 0.13F : 0.006F;

			assert_true(fabsf(samples[0]) < edge);
			assert_true(fabsf(samples[n - 1]) < 0.001F);
			/* Its first frame can be found: it is not nothing. */
			assert_true(fabsf(samples[0]) > 0);
			assert_true(
			    v >= VOICE_FINGER || fabsf(samples[0]) > 1e-5F);
		}
}

/* Nothing passes its level, whatever the pitch, length and rate. */
static void test_bounded(void **state)
{
	(void)state;
	seeded_begin("voices");
	for (int i = 0; i < 2000; i++) {
		int rate = seeded(RATE_MIN, RATE_MAX);
		struct sound s = {
			.length = seeded(1, 20000),
			.millihertz = seeded(0, 20000000),
			.voice = (int16_t)seeded(0, VOICE_KINDS - 1),
			.level = (int16_t)seeded(0, 1000),
		};
		struct shape shape;

		shape_make(&shape, &s, rate);
		shape_fill(&shape, 0, s.length, samples);
		for (int32_t k = 0; k < s.length; k++)
			assert_true(fabsf(samples[k]) <=
			    (float)s.level / 1000 * 1.00001F);
	}
}

/* Any piece of a sound is the same as that piece of the whole. */
static void test_pieces(void **state)
{
	static float piece[LONGEST];

	(void)state;
	seeded_begin("pieces");
	for (int i = 0; i < 300; i++) {
		enum voice v = (enum voice)seeded(0, VOICE_KINDS - 1);
		int rate = seeded(RATE_MIN, 96000);
		struct sound s = usual_sound(v, rate);
		struct shape shape;
		int32_t n = make(v, rate);
		int from = seeded(0, n - 1), count = seeded(1, n - from);

		shape_make(&shape, &s, rate);
		shape_fill(&shape, from, count, piece);
		assert_memory_equal(
		    piece, samples + from, (size_t)count * sizeof *piece);
	}
}

/*
 * A sweep goes evenly from 600 to 6000 Hz, or as far as the rate lets it: its
 * phase at a time is that of any linear chirp, (f + (g - f) t / 2T) t.
 */
static void test_sweep(void **state)
{
	static const int rates[] = { 8000, 16000, 44100, 48000, 192000 };
	const double turn = 2 * acos(-1.0);

	(void)state;
	for (size_t r = 0; r < 5; r++) {
		int rate = rates[r];
		int32_t n = make(VOICE_SWEEP, rate);
		double top = fmin(6000, 0.4 * rate), worst = 0;

		/* Between its soft ends it has its whole level. */
		for (int32_t i = rate / 100; i < n - rate / 100; i++) {
			double t = (i + 1.0) / rate, u = (double)i / rate;
			double phase = 600 * t +
			    (top - 600) * u * t / 2 / (n / (double)rate);

			worst = fmax(worst,
			    fabs(sin(turn * phase) - (double)samples[i]));
		}
		assert_true(worst < 0.01);
	}
}

/* What a rate cannot carry is left out; it would come back as a wrong note. */
static void test_too_high(void **state)
{
	struct sound s = usual_sound(VOICE_TONE, 8000);
	struct shape shape;

	(void)state;
	/* Its upper partial, 6 kHz, would fold down to 2 kHz. */
	s.millihertz = 3000000;
	shape_make(&shape, &s, 8000);
	shape_fill(&shape, 0, s.length, samples);
	assert_true(power_at(3000, 8000, s.length) > 0.5);
	assert_true(power_at(2000, 8000, s.length) < 1e-6);
	/* Nothing of it fits. */
	s.millihertz = 5000000;
	shape_make(&shape, &s, 8000);
	shape_fill(&shape, 0, s.length, samples);
	for (int32_t i = 0; i < s.length; i++)
		assert_true(samples[i] == 0);
}

/* A voice nobody knows, or one of no length, is silence. */
static void test_unknown(void **state)
{
	static const struct sound odd[] = {
		{ .length = 100, .voice = VOICE_KINDS, .level = 1000 },
		{ .length = 100, .voice = -1, .level = 1000 },
		{ .length = 0, .voice = VOICE_DOWN, .level = 1000 },
		{ .length = -5, .voice = VOICE_DOWN, .level = 1000 },
	};

	(void)state;
	for (size_t i = 0; i < 4; i++) {
		struct shape shape;

		shape_make(&shape, &odd[i], 48000);
		shape_fill(&shape, 0, shape.length, samples);
		for (int32_t k = 0; k < shape.length; k++)
			assert_true(samples[k] == 0);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_knocks_differ),
		cmocka_unit_test(test_ticks),
		cmocka_unit_test(test_own_pitch),
		cmocka_unit_test(test_ends),
		cmocka_unit_test(test_bounded),
		cmocka_unit_test(test_pieces),
		cmocka_unit_test(test_sweep),
		cmocka_unit_test(test_too_high),
		cmocka_unit_test(test_unknown),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
