/*
 * spoken.h - somebody who speaks, made of pulses, formants, noise and pauses
 *
 * Glottal pulses (Rosenberg, Journal of the Acoustical Society of America 49,
 * 1971) go through four resonators in a row (Klatt, the same journal 67, 1980)
 * that move from vowel to vowel (Peterson and Barney, the same journal 24, 1952:
 * means of men); between them consonants hiss or are silent, and after some
 * syllables there is a pause.  The tune of the voice falls over a phrase and
 * rises where it stresses a syllable.
 *
 * The tests' own model, no recording.  One thread.
 */
#ifndef SPOKEN_H
#define SPOKEN_H

#include "bowed.h"

struct spoken {
	int rate;
	double seconds;
	double hz;	/* the middle of the voice */
	double lively;	/* semitones that stress and phrase move it by */
	double tract;	/* formants against a man's: 1.16 for a woman */
	double pause_s; /* the mean one between phrases */
};

enum { SPOKEN_FORMANTS = 4, SPOKEN_VOWELS = 10 };

static const double spoken_vowels[SPOKEN_VOWELS][SPOKEN_FORMANTS] = {
	{ 270, 2290, 3010, 3700 },
	{ 390, 1990, 2550, 3600 },
	{ 530, 1840, 2480, 3500 },
	{ 660, 1720, 2410, 3500 },
	{ 730, 1090, 2440, 3500 },
	{ 570, 840, 2410, 3400 },
	{ 440, 1020, 2240, 3400 },
	{ 300, 870, 2240, 3400 },
	{ 640, 1190, 2390, 3500 },
	{ 490, 1350, 1690, 3300 },
};

struct spoken_resonator {
	double a, b, c, y[2];
};

static inline void spoken_tune(
    struct spoken_resonator *r, double hz, double wide, int rate)
{
	r->c = -exp(-BOWED_TWO_PI * wide / rate);
	r->b = 2 * exp(-BOWED_TWO_PI / 2 * wide / rate) *
	    cos(BOWED_TWO_PI * hz / rate);
	r->a = 1 - r->b - r->c;
}

static inline double spoken_ring(struct spoken_resonator *r, double x)
{
	double y = r->a * x + r->b * r->y[0] + r->c * r->y[1];

	r->y[1] = r->y[0];
	r->y[0] = y;
	return y;
}

/* The flow through the glottis at this part of a period. */
static inline double spoken_flow(double u)
{
	if (u < 0.4)
		return 0.5 - 0.5 * cos(BOWED_TWO_PI / 2 * u / 0.4);
	return u < 0.56 ? cos(BOWED_TWO_PI / 4 * (u - 0.4) / 0.16) : 0;
}

/* One syllable: a consonant, then a vowel. */
struct spoken_syllable {
	double begin_s, vowel_s, end_s;
	double hiss_hz; /* of the consonant; 0: it is silent */
	int vowel;
	double semitones; /* of its stress */
	double fall;	  /* how much of the phrase is over */
};

static inline struct spoken_syllable spoken_next(
    const struct spoken *v, double from_s, int left, int all)
{
	struct spoken_syllable y = { .begin_s = from_s };
	double pause = left == all ? v->pause_s * (0.5 + bowed_random()) : 0;

	y.begin_s += pause;
	y.vowel_s = y.begin_s + 0.04 + 0.08 * bowed_random();
	y.end_s = y.vowel_s + 0.09 + 0.16 * bowed_random();
	y.hiss_hz = bowed_random() < 0.6 ? 2500 + 3500 * bowed_random() : 0;
	y.vowel = seeded(0, SPOKEN_VOWELS - 1);
	y.semitones = bowed_random() < 0.4 ? v->lively * bowed_random() : 0;
	y.fall = 1 - (double)left / all;
	return y;
}

struct spoken_mouth {
	struct spoken_resonator at[SPOKEN_FORMANTS], hiss;
	double hz[SPOKEN_FORMANTS];
	double phase, flow, pitch; /* semitones of the voice, as it moves */
	double wobble;		   /* of this period */
};

/* Once a ms: what moves goes a part of its way. */
static inline void spoken_move(const struct spoken *v, struct spoken_mouth *m,
    const struct spoken_syllable *y, bool first)
{
	static const double wide[SPOKEN_FORMANTS] = { 60, 90, 120, 180 };
	double to = y->semitones + v->lively * (0.4 - 0.8 * y->fall);

	for (int i = 0; i < SPOKEN_FORMANTS; i++) {
		double hz = spoken_vowels[y->vowel][i] * v->tract;

		m->hz[i] += (hz - m->hz[i]) * (first ? 1 : 1 / 25.0);
		spoken_tune(&m->at[i], m->hz[i], wide[i], v->rate);
	}
	m->pitch += (to - m->pitch) * (first ? 1 : 1 / 50.0);
	if (y->hiss_hz > 0)
		spoken_tune(&m->hiss, y->hiss_hz, 1500, v->rate);
}

static inline double spoken_sample(const struct spoken *v,
    struct spoken_mouth *m, const struct spoken_syllable *y, double t)
{
	double on = fmin((t - y->vowel_s) / 0.02, (y->end_s - t) / 0.03);
	double flow = spoken_flow(m->phase), x = flow - m->flow, hiss = 0;

	x *= fmin(fmax(on, 0), 1);
	m->flow = flow;
	m->phase += v->hz * exp2((m->pitch + m->wobble) / 12) / v->rate;
	if (m->phase >= 1) {
		m->phase -= 1;
		m->wobble = 0.1 * bowed_normal();
	}
	for (int i = 0; i < SPOKEN_FORMANTS; i++)
		x = spoken_ring(&m->at[i], x);
	if (t > y->begin_s && t < y->vowel_s && y->hiss_hz > 0)
		hiss = 0.02 * bowed_normal();
	return x + spoken_ring(&m->hiss, hiss);
}

/* Made with seeded numbers, a half of full scale at its loudest. */
static inline struct bowed_sound spoken_make(const struct spoken *v)
{
	struct bowed_sound s = { .n = (size_t)(v->seconds * v->rate) };
	struct spoken_mouth m = { .phase = 0 };
	struct spoken_syllable y = { .end_s = -1 };
	size_t a_ms = (size_t)v->rate / 1000;
	int left = 0, all = 1;
	float peak = 1e-9F;

	s.x = calloc(s.n, sizeof(*s.x));
	for (size_t i = 0; i < s.n; i++) {
		double t = (double)i / v->rate;

		if (t > y.end_s) {
			if (left == 0)
				left = all = seeded(4, 9);
			y = spoken_next(v, t, left--, all);
		}
		if (i % a_ms == 0)
			spoken_move(v, &m, &y, i == 0);
		s.x[i] = (float)spoken_sample(v, &m, &y, t);
		peak = fmaxf(peak, fabsf(s.x[i]));
	}
	for (size_t i = 0; i < s.n; i++)
		s.x[i] *= 0.5F / peak;
	return s;
}

#endif
