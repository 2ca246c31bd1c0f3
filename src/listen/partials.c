/*
 * partials.c - how far each partial is from where the pitch says it is
 *
 * Sums over half an instant come first: 2.5 ms, 40 samples.  The window then has
 * a weight for each of those, and stands once half an instant early and once half
 * an instant late.
 */
#include "partials.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/listen/heard.h"

#define TWO_PI 6.283185307179586
#define CENTS_A_NEPER 1731.2340490667562 /* 1200 / ln 2 */
#define PERIODS 6.0			 /* in a window */

enum {
	HALF_MIN = 4,  /* half instants on each side of a window's middle */
	HALF_MAX = 48, /* six periods of 25.3 Hz */
	LANES = 8,
	EDGE = HALF_MAX + 1, /* empty half instants on both sides of the sums */
	SUMS = 2 * PIECE_MAX + 2 * EDGE,
};

struct partials {
	double rate;
	float *x;		/* the piece */
	float *one_re, *one_im; /* the first partial, turning back */
	float *re, *im;		/* the one at hand */
	float *rising; /* the piece, times 0 to 1 in each half instant */
	float sum_re[SUMS], sum_im[SUMS];
	float window[HALF_MAX + 1][2 * HALF_MAX];
	size_t begin[2 * PIECE_MAX + 1];      /* of each half instant */
	unsigned char half[PIECE_MAX];	      /* of each instant's window */
	float cents[PARTIALS_MAX][PIECE_MAX]; /* or bins, when looked at */
	float weight[PARTIALS_MAX][PIECE_MAX];
};

/* Sample at which half instant b begins. */
static size_t begin(const struct partials *p, size_t b)
{
	return (size_t)floor((double)b * (HEARD_STEP_S / 2) * p->rate + 0.5);
}

static void make_windows(struct partials *p)
{
	for (int half = HALF_MIN; half <= HALF_MAX; half++)
		for (int i = 0; i < 2 * half; i++)
			p->window[half][i] = (float)(0.5 -
			    0.5 * cos(TWO_PI / 2 * (i + 0.5) / half));
}

struct partials *partials_new(struct arena *a, double rate, double lowest_hz)
{
	struct partials *p = arena_take(a, sizeof(*p));
	size_t samples;

	assert(PERIODS / lowest_hz / HEARD_STEP_S < HALF_MAX);
	if (p == NULL)
		return NULL;
	p->rate = rate;
	samples = begin(p, (size_t)2 * PIECE_MAX) / LANES * LANES + LANES;
	p->x = arena_take(a, 6 * samples * sizeof(float));
	if (p->x == NULL)
		return NULL;
	p->one_re = p->x + samples;
	p->one_im = p->one_re + samples;
	p->re = p->one_im + samples;
	p->im = p->re + samples;
	p->rising = p->im + samples;
	for (size_t b = 0; b <= (size_t)2 * PIECE_MAX; b++)
		p->begin[b] = begin(p, b);
	make_windows(p);
	return p;
}

/* The first partial's phase, turning the other way, at each sample. */
static void make_carrier(struct partials *p, const struct piece *piece)
{
	size_t samples = p->begin[2 * piece->instants];
	size_t last = piece->instants - 1;
	double a_sample = 1 / (p->rate * HEARD_STEP_S), cycles = 0;

	for (size_t i = 0; i < samples; i++) {
		double at = fmin((double)i * a_sample, (double)last);
		size_t k = at < (double)last ? (size_t)at : last - 1;
		double hz = piece->hz[k] +
		    (at - (double)k) * (piece->hz[k + 1] - piece->hz[k]);

		p->one_re[i] = (float)cos(TWO_PI * cycles);
		p->one_im[i] = (float)-sin(TWO_PI * cycles);
		cycles += hz / p->rate;
		cycles -= floor(cycles);
	}
	memcpy(p->re, p->one_re, samples * sizeof(float));
	memcpy(p->im, p->one_im, samples * sizeof(float));
}

/* Eight samples side by side, as a compiler can do them at once. */
static void next_eight(float *restrict re, float *restrict im,
    const float *restrict one_re, const float *restrict one_im)
{
	for (int i = 0; i < LANES; i++) {
		float on = re[i] * one_re[i] - im[i] * one_im[i];

		im[i] = re[i] * one_im[i] + im[i] * one_re[i];
		re[i] = on;
	}
}

/* The rows have room for whole eights. */
static void next_partial(const struct partials *p, size_t samples)
{
	float *re = p->re, *im = p->im;
	const float *one_re = p->one_re, *one_im = p->one_im;

	for (size_t i = 0; i < samples; i += LANES)
		next_eight(re + i, im + i, one_re + i, one_im + i);
}

static float product(const float *a, const float *b, size_t n)
{
	float s[LANES] = { 0 };
	size_t i = 0;

	for (; i + LANES <= n; i += LANES)
		for (int j = 0; j < LANES; j++)
			s[j] += a[i + (size_t)j] * b[i + (size_t)j];
	for (; i < n; i++)
		s[0] += a[i] * b[i];
	return (s[0] + s[1] + s[2] + s[3]) + (s[4] + s[5] + s[6] + s[7]);
}

static void make_sums(struct partials *p, size_t instants)
{
	for (size_t b = 0; b < 2 * instants; b++) {
		size_t at = p->begin[b], n = p->begin[b + 1] - at;

		p->sum_re[EDGE + b] = product(p->re + at, p->x + at, n);
		p->sum_im[EDGE + b] = product(p->im + at, p->x + at, n);
	}
}

/* The partial as it stands about the beginning of half instant b. */
static void windowed(
    const struct partials *p, long b, int half, float *re, float *im)
{
	long from = EDGE + b - half;

	*re = product(p->window[half], p->sum_re + from, 2 * (size_t)half);
	*im = product(p->window[half], p->sum_im + from, 2 * (size_t)half);
}

/* What is left of partial `number`'s motion, and how much it counts. */
static void read_one(struct partials *p, const struct piece *piece, int number,
    float *cents, float *weight)
{
	float re, im, late_re = 0, late_im = 0;

	for (size_t k = 0; k < piece->instants; k++) {
		float on, across;
		long b = 2 * (long)k;
		double hz = number * piece->hz[k];

		re = late_re;
		im = late_im;
		if (k == 0 || p->half[k] != p->half[k - 1])
			windowed(p, b - 1, p->half[k], &re, &im);
		windowed(p, b + 1, p->half[k], &late_re, &late_im);
		on = re * late_re + im * late_im;
		across = re * late_im - im * late_re;
		cents[k] = (float)(CENTS_A_NEPER * atan2f(across, on) /
		    (TWO_PI * HEARD_STEP_S * hz));
		weight[k] = cbrtf(sqrtf(hypotf(on, across)) * (float)number);
	}
}

static int by_cents(const void *a, const void *b)
{
	float x = ((const struct reading *)a)->cents;
	float y = ((const struct reading *)b)->cents;

	return (x > y) - (x < y);
}

double readings_median(struct reading *r, int n)
{
	double half = 0, behind = 0, before = 0;

	for (int i = 0; i < n; i++)
		half += (double)r[i].weight / 2;
	qsort(r, (size_t)n, sizeof(*r), by_cents);
	for (int i = 0; i < n; i++) {
		double at = behind + (double)r[i].weight / 2;

		if (at >= half && i == 0)
			return (double)r[0].cents;
		if (at >= half && at > before)
			return (double)r[i - 1].cents +
			    (double)(r[i].cents - r[i - 1].cents) *
			    (half - before) / (at - before);
		before = at;
		behind += (double)r[i].weight;
	}
	return (double)r[n - 1].cents;
}

static void medians(
    const struct partials *p, size_t instants, int n, double *cents)
{
	struct reading r[PARTIALS_MAX];

	for (size_t k = 0; k < instants; k++) {
		for (int i = 0; i < n; i++)
			r[i] = (struct reading) { p->cents[i][k],
				p->weight[i][k] };
		cents[k] = readings_median(r, n);
	}
}

/* The piece with silence behind its end, and how wide each window is. */
static void begin_piece(struct partials *p, const struct piece *piece)
{
	size_t samples = p->begin[2 * piece->instants];
	size_t there = piece->samples < samples ? piece->samples : samples;

	memcpy(p->x, piece->x, there * sizeof(float));
	memset(p->x + there, 0, (samples - there) * sizeof(float));
	memset(p->sum_re, 0, sizeof(p->sum_re));
	memset(p->sum_im, 0, sizeof(p->sum_im));
	for (size_t k = 0; k < piece->instants; k++) {
		double half = PERIODS / piece->hz[k] / HEARD_STEP_S + 0.5;

		p->half[k] = (unsigned char)fmin(
		    fmax(half, HALF_MIN), HALF_MAX);
	}
	make_carrier(p, piece);
}

void partials_read(struct partials *p, const struct piece *piece,
    double bottom_hz, double top_hz, double *cents)
{
	size_t samples = p->begin[2 * piece->instants];
	double low = piece->hz[0], high = piece->hz[0];
	int first, last;

	assert(piece->instants >= 2 && piece->instants <= PIECE_MAX);
	for (size_t k = 1; k < piece->instants; k++) {
		low = fmin(low, piece->hz[k]);
		high = fmax(high, piece->hz[k]);
	}
	first = (int)fmax(1, floor(bottom_hz / high));
	last = (int)fmax(first, floor(top_hz / low));
	if (last >= first + PARTIALS_MAX)
		last = first + PARTIALS_MAX - 1;
	begin_piece(p, piece);
	for (int i = 1; i <= last; i++) {
		if (i > 1)
			next_partial(p, samples);
		if (i < first)
			continue;
		make_sums(p, piece->instants);
		read_one(
		    p, piece, i, p->cents[i - first], p->weight[i - first]);
	}
	medians(p, piece->instants, last - first + 1, cents);
}

static void make_rising(struct partials *p, size_t instants)
{
	for (size_t b = 0; b < 2 * instants; b++) {
		size_t at = p->begin[b], n = p->begin[b + 1] - at;

		for (size_t i = 0; i < n; i++)
			p->rising[at + i] = p->x[at + i] *
			    (float)(((double)i + 0.5) / (double)n);
	}
}

/* Triangles, each from the half instant before to the end of its own. */
static void make_triangles(struct partials *p, size_t instants)
{
	float rose_re = 0, rose_im = 0;

	make_sums(p, instants);
	for (size_t b = 0; b < 2 * instants; b++) {
		size_t at = p->begin[b], n = p->begin[b + 1] - at;
		float re = product(p->re + at, p->rising + at, n);
		float im = product(p->im + at, p->rising + at, n);

		p->sum_re[EDGE + b] += rose_re - re;
		p->sum_im[EDGE + b] += rose_im - im;
		rose_re = re;
		rose_im = im;
	}
}

static void look_at(struct partials *p, const struct piece *piece, float *bins,
    float *amplitude)
{
	for (size_t k = 0; k < piece->instants; k += LOOK_EVERY) {
		float re, im, late_re, late_im, on, across;
		long b = 2 * (long)k;

		windowed(p, b - 1, p->half[k], &re, &im);
		windowed(p, b + 1, p->half[k], &late_re, &late_im);
		on = re * late_re + im * late_im;
		across = re * late_im - im * late_re;
		/* Two half instants apart, in a window of twice p->half. */
		bins[k] = (float)(atan2f(across, on) / TWO_PI * p->half[k]);
		amplitude[k] = sqrtf(hypotf(on, across));
	}
}

void partials_look(struct partials *p, const struct piece *piece,
    double bottom_hz, double top_hz, struct looks *out)
{
	size_t samples = p->begin[2 * piece->instants];
	double hz = piece->hz[piece->instants / 2];
	int first = (int)fmax(1, floor(bottom_hz / hz));
	int last = (int)fmax(first, floor(top_hz / hz));

	last = last < first + PARTIALS_MAX ? last : first + PARTIALS_MAX - 1;
	memcpy(p->re, p->one_re, samples * sizeof(float));
	memcpy(p->im, p->one_im, samples * sizeof(float));
	make_rising(p, piece->instants);
	*out = (struct looks) { .first = first, .n = last - first + 1 };
	for (int i = 1; i <= last; i++) {
		if (i > 1)
			next_partial(p, samples);
		if (i < first)
			continue;
		make_triangles(p, piece->instants);
		look_at(p, piece, p->cents[i - first], p->weight[i - first]);
		out->bins[i - first] = p->cents[i - first];
		out->amplitude[i - first] = p->weight[i - first];
	}
	out->half = p->half;
}
