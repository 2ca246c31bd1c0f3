/*
 * listening.h - a sound from its samples to its instants, for tests
 */
#ifndef LISTENING_H
#define LISTENING_H

#include <math.h>
#include <stdlib.h>

#include "bowed.h"
#include "evenhand/listen/live.h"
#include "evenhand/listen/refine.h"
#include "evenhand/listen/thin.h"

struct listening {
	struct arena arena;
	struct asked asked;
	double rate; /* of x */
	float *x;    /* thinned */
	size_t samples;
	struct instant *m;
	size_t n;
};

static inline void listening_moments(struct listening *l, struct live *live)
{
	while (live_next(live, &l->m[l->n]))
		l->n++;
}

/* Heard live in blocks of so many samples. */
static inline struct listening listening_live(
    const struct bowed_sound *s, int rate, struct asked asked, size_t block)
{
	struct listening l = { .asked = asked };
	struct thin *thin = thin_new(&l.arena, rate, asked.high_hz);
	double step = HEARD_STEP_S * rate;
	struct live *live;
	size_t whole = (size_t)((double)s->n / step), got;
	float silence[LIVE_TAKE_MAX] = { 0 };

	l.rate = thin_rate(thin);
	live = live_new(&l.arena, &asked, l.rate);
	l.x = arena_take(&l.arena, (s->n + THIN_END_MAX) * sizeof(*l.x));
	l.m = arena_take(&l.arena, (whole + 64) * sizeof(*l.m));
	for (size_t at = 0; at < s->n; at += block) {
		size_t n = s->n - at < block ? s->n - at : block;

		got = thin_take(thin, s->x + at, n, l.x + l.samples);
		live_take(live, l.x + l.samples, got);
		l.samples += got;
		listening_moments(&l, live);
	}
	got = thin_end(thin, l.x + l.samples);
	live_take(live, l.x + l.samples, got);
	l.samples += got;
	listening_moments(&l, live);
	live_take(live, silence, (size_t)live_behind(live));
	listening_moments(&l, live);
	if (l.n > whole)
		l.n = whole;
	return l;
}

static inline void listening_refine(struct listening *l)
{
	struct arena a = { NULL, 0 };

	if (!refine(&a, &l->asked, l->rate, l->x, l->samples, l->m, l->n))
		abort();
	arena_done(&a);
}

static inline void listening_done(struct listening *l)
{
	arena_done(&l->arena);
}

/* How near the instants are to the truth, the first and last 0.15 s aside. */
struct nearness {
	double within; /* share of instants within 10 cents */
	double cents;  /* median of |error| */
	double gross;  /* share of notes more than 20 % off */
};

static inline int nearness_order(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;

	return (x > y) - (x < y);
}

static inline struct nearness listening_near(const struct listening *l,
    const struct bowed *b, const struct bowed_sound *s)
{
	double *error = malloc(l->n * sizeof(*error));
	size_t notes = 0, all = 0, within = 0, gross = 0;
	struct nearness near = { 0, 0, 0 };

	for (size_t k = 0; k < l->n; k++) {
		double t = (double)k * HEARD_STEP_S;

		if (t < 0.15 || t > b->seconds - 0.15)
			continue;
		all++;
		if (l->m[k].what != HEARD_NOTE)
			continue;
		error[notes] = fabs(1200 * log2((double)l->m[k].hz / b->hz) -
		    bowed_cents(b, s, t));
		within += error[notes] < 10;
		gross += error[notes] > 316;
		notes++;
	}
	if (notes > 0) {
		qsort(error, notes, sizeof(*error), nearness_order);
		near.within = (double)within / (double)all;
		near.cents = error[notes / 2];
		near.gross = (double)gross / (double)notes;
	}
	free(error);
	return near;
}

/* Share of the instants that were heard as that. */
static inline double listening_share(const struct listening *l, enum heard what)
{
	size_t n = 0;

	for (size_t k = 0; k < l->n; k++)
		n += l->m[k].what == what;
	return (double)n / (double)l->n;
}

#endif
