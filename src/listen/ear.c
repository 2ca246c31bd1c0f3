/*
 * ear.c - listens to one turn after the other, as samples come
 *
 * A turn has an arena of its own: its filter, its search, its samples and its
 * instants.  Refining goes through the turn in pieces, each with edges that are
 * read and thrown away, and gives back its memory after each.
 */
#include "evenhand/listen/ear.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/listen/live.h"
#include "evenhand/listen/refine.h"
#include "evenhand/listen/thin.h"

enum {
	BLOCK = 1024, /* samples of the card at a time */
	EDGE = 64,    /* instants beside a piece that are thrown away */
	PIECE = 800,  /* instants: EAR_WORK_S */
};

struct ear {
	int rate;
	struct arena turn;
	struct asked asked;
	struct thin *thin; /* NULL: no turn */
	struct live *live;
	double thin_rate;
	float *x; /* thinned */
	size_t samples, samples_max;
	struct instant *m;
	size_t n, n_max;
	size_t taken; /* samples of the card */
	bool full, closed;
	size_t refined; /* instants */
};

struct ear *ear_new(int rate)
{
	struct ear *e = calloc(1, sizeof(*e));

	assert(rate >= HEARD_RATE_MIN && rate <= HEARD_RATE_MAX);
	if (e != NULL)
		e->rate = rate;
	return e;
}

static void forget(struct ear *e)
{
	int rate = e->rate;

	arena_done(&e->turn);
	*e = (struct ear) { .rate = rate };
}

void ear_free(struct ear *e)
{
	if (e == NULL)
		return;
	forget(e);
	free(e);
}

bool ear_begin(struct ear *e, const struct turn_asked *asked)
{
	double seconds = asked->edge_s[asked->bows] + EAR_AFTER_S;
	double extra; /* what the filter and the search give at the end */

	assert(asked_valid(&asked->asked));
	assert(asked->bows >= 1 && asked->bows <= TURN_BOWS_MAX);
	forget(e);
	seconds = fmin(fmax(seconds, 0), EAR_S_MAX);
	e->asked = asked->asked;
	e->thin = thin_new(&e->turn, e->rate, asked->asked.high_hz);
	if (e->thin == NULL)
		return false;
	e->thin_rate = thin_rate(e->thin);
	e->live = live_new(&e->turn, &e->asked, e->thin_rate);
	e->n_max = (size_t)(seconds / HEARD_STEP_S);
	extra = THIN_END_MAX + BLOCK;
	e->samples_max = (size_t)(seconds * e->thin_rate + extra);
	e->x = arena_take(&e->turn, e->samples_max * sizeof(*e->x));
	e->m = arena_take(&e->turn, (e->n_max + 1) * sizeof(*e->m));
	if (e->live != NULL && e->x != NULL && e->m != NULL)
		return true;
	forget(e);
	return false;
}

static void hear_thinned(struct ear *e, const float *x, size_t n)
{
	struct instant m;

	live_take(e->live, x, n);
	while (live_next(e->live, &m))
		if (e->n < e->n_max)
			e->m[e->n++] = m;
	e->full |= e->n == e->n_max;
}

static void hear_block(struct ear *e, const float *x, size_t n)
{
	float *at = e->x + e->samples;
	size_t made, most = n / (size_t)thin_factor(e->thin) + 1;

	/* Room is left for what the end brings. */
	if (e->samples + most + THIN_END_MAX > e->samples_max) {
		e->full = true;
		return;
	}
	made = thin_take(e->thin, x, n, at);
	e->samples += made;
	hear_thinned(e, at, made);
}

void ear_take(struct ear *e, const float *x, size_t n)
{
	if (e->thin == NULL || e->closed)
		return;
	e->taken += n;
	for (size_t i = 0; i < n && !e->full; i += BLOCK)
		hear_block(e, x + i, n - i < BLOCK ? n - i : BLOCK);
}

void ear_lost(struct ear *e, size_t n)
{
	static const float silence[BLOCK];
	size_t most = (size_t)(EAR_S_MAX * e->rate);

	n = n < most ? n : most;
	for (size_t i = 0; i < n; i += BLOCK)
		ear_take(e, silence, n - i < BLOCK ? n - i : BLOCK);
}

double ear_taken_s(const struct ear *e)
{
	return (double)e->taken / e->rate;
}

/* The last instants come with silence behind them. */
static void hear_end(struct ear *e)
{
	static const float silence[LIVE_TAKE_MAX];
	float *at = e->x + e->samples;
	size_t made = thin_end(e->thin, at), behind;

	e->samples += made;
	hear_thinned(e, at, made);
	behind = (size_t)live_behind(e->live) + 1;
	while (behind > 0) {
		size_t n = behind < LIVE_TAKE_MAX ? behind : LIVE_TAKE_MAX;

		hear_thinned(e, silence, n);
		behind -= n;
	}
	while (e->n > 0 &&
	    (double)(e->n - 1) * HEARD_STEP_S * e->thin_rate >=
		(double)e->samples - 1)
		e->n--;
}

/* Instants from..to, refined with what lies beside them, back in their place. */
static bool refine_piece(struct ear *e, size_t from, size_t to)
{
	struct arena a = { NULL, 0 };
	size_t begin = from > EDGE ? from - EDGE : 0;
	size_t end = to + EDGE < e->n ? to + EDGE : e->n, n = end - begin;
	size_t at = (size_t)((double)begin * HEARD_STEP_S * e->thin_rate + 0.5);
	struct instant *m = arena_take(&a, n * sizeof(*m));
	bool good = m != NULL;

	if (good) {
		memcpy(m, e->m + begin, n * sizeof(*m));
		good = refine(&a, &e->asked, e->thin_rate, e->x + at,
		    e->samples - at, m, n);
	}
	if (good)
		memcpy(
		    e->m + from, m + (from - begin), (to - from) * sizeof(*m));
	arena_done(&a);
	return good;
}

bool ear_work(struct ear *e)
{
	size_t to = e->refined + PIECE;

	if (e->thin == NULL)
		return false;
	if (!e->closed)
		hear_end(e);
	e->closed = true;
	if (e->refined >= e->n)
		return false;
	to = to < e->n ? to : e->n;
	/* What cannot be refined stays as it was heard live. */
	refine_piece(e, e->refined, to);
	e->refined = to;
	return e->refined < e->n;
}

bool ear_end(
    struct ear *e, const struct turn_asked *asked, struct turn_heard *out)
{
	struct arena a = { NULL, 0 };
	bool good = e->thin != NULL;

	while (ear_work(e))
		;
	good = good && turn_measure(&a, asked, e->m, e->n, out);
	arena_done(&a);
	forget(e);
	return good;
}

const struct instant *ear_instants(const struct ear *e, size_t *n)
{
	*n = e->n;
	return e->m;
}
