/*
 * bowed.h - the sound of a bowed string whose pitch is known exactly
 *
 * Partials as a bow makes them (1/n, with the comb of the bow's place), shaped
 * by the modes of a body, their periods jittered, under a loudness that swells
 * and dips where the bow turns; then, when asked for, a room, ticks, hum and
 * noise.  The truth is the pitch without the jitter.
 *
 * The tests' own model, no recording.  One thread.
 */
#ifndef BOWED_H
#define BOWED_H

#include <complex.h>
#include <math.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include "../score/seeded.h"

#define BOWED_TWO_PI 6.283185307179586

struct bowed {
	int rate;
	double seconds;
	double hz;	    /* of the lower or the middle note */
	double fundamental; /* of the first partial's amplitude; 0 is 1 */
	double dark_db;	    /* an octave that partials fall more; 0: none */

	double swing_hz, swing_cents; /* a swing about hz */

	double pulses_a_second; /* or glides up and down again */
	double travel_cents, glide_s;
	double unsteady_s; /* SD of the arrivals */

	double jitter_cents; /* of each period */
	double turn_s;	     /* the bow turns so often, 0: never */
	double ripple_db, ripple_hz;
	double stop_s, stop_long_s; /* where the bow stands still, 0: nowhere */

	double noise_db; /* under the tone, pink; 0: none */
	double tick_db;	 /* ticks with the pulses, against the tone; 0: none */
	double hum_db;	 /* of 50 Hz against the tone; 0: none */
	double ring_db;	 /* of open strings that ring with it; 0: none */
	double room_s;	 /* its RT60, 0: none */
	double room_db;	 /* direct sound against it */
};

enum { BOWED_GLIDES_MAX = 256 };

struct bowed_sound {
	float *x;
	size_t n;
	int glides;
	double half[BOWED_GLIDES_MAX];	/* when a glide up is half way */
	double nine[BOWED_GLIDES_MAX];	/* and nine tenths */
	double begin[BOWED_GLIDES_MAX]; /* the glide up */
	double fall[BOWED_GLIDES_MAX];	/* the glide down */
};

static inline double bowed_random(void)
{
	return (double)(seeded_bits() >> 11) / 9007199254740992.0;
}

static inline double bowed_normal(void)
{
	double radius = sqrt(-2 * log(1 - bowed_random()));

	return radius * cos(BOWED_TWO_PI * bowed_random());
}

static inline double bowed_ramp(double u)
{
	return u <= 0 ? 0 : u >= 1 ? 1 : 0.5 - 0.5 * cos(BOWED_TWO_PI / 2 * u);
}

/* Cents above hz at an instant: the truth. */
static inline double bowed_cents(
    const struct bowed *b, const struct bowed_sound *s, double t)
{
	double cents = b->swing_cents * sin(BOWED_TWO_PI * b->swing_hz * t);

	for (int i = 0; i < s->glides; i++)
		cents += b->travel_cents *
		    (bowed_ramp((t - s->begin[i]) / b->glide_s) -
			bowed_ramp((t - s->fall[i]) / b->glide_s));
	return cents;
}

static inline void bowed_plan(const struct bowed *b, struct bowed_sound *s)
{
	double period = b->pulses_a_second > 0 ? 1 / b->pulses_a_second : 0;

	for (int i = 0; period > 0 && i < BOWED_GLIDES_MAX; i++) {
		double at = (i + 0.3) * period +
		    fmin(fmax(b->unsteady_s * bowed_normal(), -period / 5),
			period / 5);

		if (at + period > b->seconds)
			break;
		s->begin[i] = at;
		s->half[i] = at + b->glide_s / 2;
		s->nine[i] = at + b->glide_s * acos(-0.8) / (BOWED_TWO_PI / 2);
		s->fall[i] = at + period / 2;
		s->glides++;
	}
}

/* How strongly a body answers: modes over a direct path. */
static inline double bowed_body(double hz)
{
	static const double mode[] = { 98, 185, 225, 300, 405, 520, 690, 900,
		1250, 1600, 2100, 2900 };
	double sum = 0.55;

	for (size_t i = 0; i < sizeof(mode) / sizeof(*mode); i++) {
		double off = 20 * (hz - mode[i]) / mode[i];

		sum += 1 / (1 + off * off);
	}
	return sum * hz * hz / (hz * hz + 85 * 85) / (1 + hz / 4200);
}

static inline double bowed_loudness(const struct bowed *b, double t)
{
	double turn = b->turn_s > 0
	    ? fmod(t + b->turn_s / 2, b->turn_s) - b->turn_s / 2
	    : 1;
	double db = b->ripple_db * sin(BOWED_TWO_PI * b->ripple_hz * t);
	double edge = fmin(fmin(t / 0.07, (b->seconds - t) / 0.06), 1);
	double in_stop = fabs(t - b->stop_s - b->stop_long_s / 2) -
	    b->stop_long_s / 2;

	if (t > b->turn_s / 2)
		db -= 14 * exp(-0.5 * turn * turn / (0.045 * 0.045));
	if (b->stop_s > 0)
		db -= 50 * fmin(fmax(0.5 - in_stop / 0.02, 0), 1);
	return fmax(edge, 0) * pow(10, db / 20);
}

enum { BOWED_PARTIALS = 160 };

struct bowed_partials {
	double phase; /* cycles */
	double eps;   /* jitter of this period, in cents */
	double amplitude[BOWED_PARTIALS + 1];
	int n;
};

/* Once a ms: how strong each partial is at this pitch. */
static inline void bowed_amplitudes(
    const struct bowed *b, struct bowed_partials *p, double hz)
{
	double top = fmin(11000, 0.45 * b->rate);

	p->n = (int)fmin(floor(top / hz), BOWED_PARTIALS);
	for (int i = 1; i <= p->n; i++)
		p->amplitude[i] = bowed_body(i * hz) / i *
		    pow(10, -b->dark_db * log2(i) / 20) *
		    (0.35 + 0.65 * fabs(sin(BOWED_TWO_PI / 2 * i * 0.11))) *
		    fmin((top - i * hz) / (0.1 * top), 1);
	if (b->fundamental > 0)
		p->amplitude[1] *= b->fundamental;
}

static inline double bowed_sum(const struct bowed_partials *p)
{
	double c = cos(BOWED_TWO_PI * p->phase), before = 0, sum = 0;
	double now = sin(BOWED_TWO_PI * p->phase);

	/* sin((i + 1) x) = 2 cos x sin(i x) - sin((i - 1) x) */
	for (int i = 1; i <= p->n; i++) {
		double next = 2 * c * now - before;

		sum += p->amplitude[i] * now;
		before = now;
		now = next;
	}
	return sum;
}

static inline void bowed_string(const struct bowed *b, struct bowed_sound *s)
{
	struct bowed_partials p = { .phase = 0 };
	size_t a_ms = (size_t)b->rate / 1000;

	for (size_t i = 0; i < s->n; i++) {
		double t = (double)i / b->rate;
		double hz = b->hz * exp2(bowed_cents(b, s, t) / 1200);

		if (i % a_ms == 0)
			bowed_amplitudes(b, &p, hz);
		s->x[i] = (float)(bowed_sum(&p) * bowed_loudness(b, t));
		p.phase += hz * exp2(p.eps / 1200) / b->rate;
		if (p.phase >= 1) {
			p.phase -= 1;
			p.eps = b->jitter_cents * bowed_normal();
		}
	}
}

static inline double bowed_rms(const struct bowed_sound *s)
{
	double sum = 0;

	for (size_t i = 0; i < s->n; i++)
		sum += (double)s->x[i] * (double)s->x[i];
	return sqrt(sum / (double)s->n);
}

/*
 * Open strings of a cello that nobody bows: eight partials of each ring where
 * the tone has something near them, and 1.2 s later are still 30 dB down only.
 */
static inline void bowed_ringing(
    const struct bowed *b, struct bowed_sound *s, double rms)
{
	static const double open[] = { 65.4064, 97.9989, 146.8324, 220 };
	float *rung = calloc(s->n, sizeof(*rung));
	double keep = exp(-log(1000) / 2 / (1.2 * b->rate)), sum = 0, amount;

	for (int i = 0; i < 4 * 8; i++) {
		int number = i % 8 + 1;
		double y = 0, before = 0,
		       turn = 2 * keep *
		    cos(BOWED_TWO_PI * open[i / 8] * number / b->rate);

		for (size_t j = 0; j < s->n; j++) {
			double next = (double)s->x[j] / number + turn * y -
			    keep * keep * before;

			before = y;
			y = next;
			rung[j] += (float)(y - before);
		}
	}
	for (size_t j = 0; j < s->n; j++)
		sum += (double)rung[j] * (double)rung[j];
	amount = rms * pow(10, b->ring_db / 20) / sqrt(sum / (double)s->n);
	for (size_t j = 0; j < s->n; j++)
		s->x[j] += (float)amount * rung[j];
	free(rung);
}

/* Fourier's sums of n numbers, a power of two; -1 forth, 1 back and n times. */
static inline void bowed_fourier(double complex *z, size_t n, int way)
{
	for (size_t i = 1, j = 0; i < n; i++) {
		size_t bit = n / 2;

		for (; j & bit; bit /= 2)
			j ^= bit;
		j ^= bit;
		if (i < j) {
			double complex other = z[i];

			z[i] = z[j];
			z[j] = other;
		}
	}
	for (size_t half = 1; half < n; half *= 2) {
		double complex step = cexp(
		    way * BOWED_TWO_PI / 2 / (double)half * I);

		for (size_t at = 0; at < n; at += 2 * half) {
			double complex turn = 1;

			for (size_t k = at; k < at + half; k++) {
				double complex odd = turn * z[k + half];

				z[k + half] = z[k] - odd;
				z[k] += odd;
				turn *= step;
			}
		}
	}
}

/*
 * Four echoes a ms at random instants, dying away as in a room, and duller than
 * what they answer; room_db is that of the echoes as they are heard, the same at
 * every rate.
 */
static inline void bowed_room(const struct bowed *b, struct bowed_sound *s)
{
	int echoes = (int)(4000 * b->room_s);
	float dull = 0;
	double complex *z;
	size_t size = 1;
	double *gain = malloc((size_t)echoes * sizeof(*gain)), energy = 0;
	size_t *late = malloc((size_t)echoes * sizeof(*late));
	float keep = (float)exp(-BOWED_TWO_PI * 4000 / b->rate);
	/* What dulling leaves of the energy at 48000, at any rate. */
	double most = exp(-BOWED_TWO_PI * 4000 / 48000);
	double left = (1 - most) / (1 + most);

	/* Echoes of its end must not come round to its beginning. */
	while (size < s->n + (size_t)((0.004 + b->room_s) * b->rate) + 1)
		size *= 2;
	z = calloc(size, sizeof(*z));
	for (size_t j = 0; j < s->n; j++)
		z[j] = (double)s->x[j];
	for (int i = 0; i < echoes; i++) {
		double t = 0.004 + b->room_s * bowed_random();

		late[i] = (size_t)(t * b->rate);
		gain[i] = bowed_normal() * exp(-6.91 * t / b->room_s);
		energy += gain[i] * gain[i];
	}
	for (int i = 0; i < echoes; i++)
		z[late[i]] += gain[i] / sqrt(energy * left) *
		    pow(10, -b->room_db / 20) * I;
	/* (sound + i echoes)^2 has twice the two, folded, beside the i. */
	bowed_fourier(z, size, -1);
	for (size_t j = 0; j < size; j++)
		z[j] *= z[j];
	bowed_fourier(z, size, 1);
	for (size_t j = 0; j < s->n; j++) {
		float wet = (float)(cimag(z[j]) / 2 / (double)size);

		dull = wet + keep * (dull - wet);
		s->x[j] += dull;
	}
	free(z);
	free(gain);
	free(late);
}

static inline void bowed_ticks(
    const struct bowed *b, struct bowed_sound *s, double rms)
{
	double peak = rms * 3 * pow(10, b->tick_db / 20);

	for (int i = 0; i < s->glides; i++) {
		size_t at = (size_t)((s->begin[i] + b->glide_s) * b->rate);

		for (size_t j = at; j < s->n && j < at + (size_t)b->rate / 16;
		     j++) {
			double t = (double)(j - at) / b->rate;

			s->x[j] += (float)(peak * exp(-t / 0.008) *
			    sin(BOWED_TWO_PI * 1000 * t));
		}
	}
}

/* Pink enough: white noise through three leaky sums (Kellet's filter). */
static inline void bowed_noise(
    const struct bowed *b, struct bowed_sound *s, double rms)
{
	double a = 0, c = 0, d = 0, amount = rms * pow(10, b->noise_db / 20);

	for (size_t i = 0; i < s->n; i++) {
		double white = bowed_normal();

		a = 0.99765 * a + white * 0.0990460;
		c = 0.96300 * c + white * 0.2965164;
		d = 0.57000 * d + white * 1.0526913;
		/* 2.98 is the SD of the sum, from its variances. */
		s->x[i] += (float)(amount / 2.98 *
		    (a + c + d + white * 0.1848));
	}
}

static inline void bowed_hum(
    const struct bowed *b, struct bowed_sound *s, double rms)
{
	double amount = rms * sqrt(2) * pow(10, b->hum_db / 20);

	for (size_t i = 0; i < s->n; i++) {
		double x = BOWED_TWO_PI * 50 * (double)i / b->rate;

		s->x[i] += (float)(amount *
		    (sin(x) + 0.6 * sin(2 * x) + 0.4 * sin(3 * x)));
	}
}

/* Made with seeded numbers, a half of full scale at its loudest. */
static inline struct bowed_sound bowed_make(const struct bowed *b)
{
	struct bowed_sound s = { .n = (size_t)(b->seconds * b->rate) };
	float peak = 1e-9F;
	double rms;

	s.x = calloc(s.n, sizeof(*s.x));
	bowed_plan(b, &s);
	bowed_string(b, &s);
	rms = bowed_rms(&s);
	if (b->ring_db < 0)
		bowed_ringing(b, &s, rms);
	if (b->room_s > 0)
		bowed_room(b, &s);
	if (b->tick_db < 0)
		bowed_ticks(b, &s, rms);
	if (b->hum_db < 0)
		bowed_hum(b, &s, rms);
	if (b->noise_db < 0)
		bowed_noise(b, &s, rms);
	for (size_t i = 0; i < s.n; i++)
		peak = fmaxf(peak, fabsf(s.x[i]));
	for (size_t i = 0; i < s.n; i++)
		s.x[i] *= 0.5F / peak;
	return s;
}

#endif
