/*
 * tape_hear.c - the instants of a stretch, from its samples
 */
#include "tape_hear.h"

#include <math.h>
#include <string.h>

#include "evenhand/listen/live.h"
#include "evenhand/listen/refine.h"
#include "evenhand/listen/thin.h"
#include "evenhand/music/pitch.h"

/* 550 and 300 beyond on both sides are less than an octave. */
#define TOGETHER_CENTS 550.0
#define OTHER_CENTS 400.0  /* beyond what was asked: another note */
#define STEADY_CENTS 150.0 /* from look to look: no leap */

enum {
	PIECE_LOOKS = 600, /* 12 s */
	STEADY = 4,	   /* looks in a row that make a note */
	EDGE =
	    96, /* instants on both sides of a piece, heard and thrown away */
};

/* A piece: looks from..to - 1, and what is looked for. */
struct piece_of {
	size_t from, to;
	struct asked asked;
	bool notes; /* there are any */
};

static bool leaps(float a, float b)
{
	return a <= 0 || b <= 0 ||
	    fabs(pitch_cents((double)a, (double)b)) > STEADY_CENTS;
}

/* Looks in a row from k on without a leap. */
static size_t row(const struct tape_sound *s, size_t k)
{
	size_t end = k + 1;

	if (s->look[k].note_hz <= 0)
		return 1;
	while (end < s->looks &&
	    !leaps(s->look[end - 1].note_hz, s->look[end].note_hz))
		end++;
	return end - k;
}

static bool widen(struct piece_of *p, double hz)
{
	double low = p->notes ? fmin(p->asked.low_hz, hz) : hz;
	double high = p->notes ? fmax(p->asked.high_hz, hz) : hz;

	if (pitch_cents(low, high) > TOGETHER_CENTS)
		return false;
	p->asked = (struct asked) { low, high };
	p->notes = true;
	return true;
}

/* As many looks from p->from on as go together. */
static void find_piece(const struct tape_sound *s, struct piece_of *p)
{
	size_t most = p->from + PIECE_LOOKS;
	size_t steady_to = p->from; /* up to here k is in a row */
	bool steady = false;

	if (most > s->looks)
		most = s->looks;
	p->notes = false;
	for (p->to = p->from; p->to < most; p->to++) {
		if (p->to >= steady_to) {
			size_t n = row(s, p->to);

			steady_to = p->to + n;
			steady = n >= STEADY;
		}
		if (steady && s->look[p->to].note_hz > 0 &&
		    !widen(p, (double)s->look[p->to].note_hz))
			break;
	}
}

/* Sample of the recording at which an instant lies. */
static int64_t sample_at(const struct tape_sound *s, int64_t instant)
{
	return (int64_t)floor((double)instant * HEARD_STEP_S * s->rate + 0.5);
}

/* Samples of a piece, made fewer. */
struct heard_piece {
	struct arena arena;
	struct live *live;
	double rate;
	float *x;
	size_t samples;
	struct instant *m;
	size_t n, most;
};

static void listen(struct heard_piece *h, const float *x, size_t n)
{
	for (size_t at = 0; at < n; at += LIVE_TAKE_MAX) {
		size_t part = n - at < LIVE_TAKE_MAX ? n - at : LIVE_TAKE_MAX;

		live_take(h->live, x + at, part);
		while (h->n < h->most && live_next(h->live, &h->m[h->n]))
			h->n++;
	}
}

/* Makes the samples fewer and hears them; n samples from x on. */
static bool hear_all(struct heard_piece *h, const struct asked *asked,
    double rate, const float *x, size_t n)
{
	static const float silence[LIVE_TAKE_MAX];
	struct thin *thin = thin_new(
	    &h->arena, (int)(rate + 0.5), asked->high_hz);

	if (thin == NULL)
		return false;
	h->rate = rate / thin_factor(thin);
	h->live = live_new(&h->arena, asked, h->rate);
	h->m = arena_take(&h->arena, h->most * sizeof(*h->m));
	h->x = arena_take(&h->arena,
	    (n / (size_t)thin_factor(thin) + 1 + THIN_END_MAX) * sizeof(*h->x));
	if (h->live == NULL || h->m == NULL || h->x == NULL)
		return false;
	h->samples = thin_take(thin, x, n, h->x);
	h->samples += thin_end(thin, h->x + h->samples);
	listen(h, h->x, h->samples);
	/* What needs samples behind the end gets silence. */
	for (int left = live_behind(h->live); left > 0; left -= LIVE_TAKE_MAX)
		listen(h, silence,
		    left < LIVE_TAKE_MAX ? (size_t)left : LIVE_TAKE_MAX);
	return true;
}

static bool hear_piece(
    const struct tape_sound *s, const struct piece_of *p, struct instant *m)
{
	struct heard_piece h = { .arena = { NULL, 0 } };
	int64_t from = s->instant + (int64_t)p->from * SURVEY_STEP;
	int64_t to = s->instant + (int64_t)p->to * SURVEY_STEP;
	int64_t begin = from > EDGE ? from - EDGE : 0, at, end;
	struct arena work = { NULL, 0 };
	bool good;

	/* Some of what lies before may be forgotten by now. */
	while (begin < from && sample_at(s, begin) < s->first)
		begin++;
	at = sample_at(s, begin) - s->first;
	end = sample_at(s, to + EDGE) - s->first;
	end = end < (int64_t)s->samples ? end : (int64_t)s->samples;
	h.most = (size_t)(to + EDGE - begin);
	good = end > at &&
	    hear_all(&h, &p->asked, s->rate, s->x + at, (size_t)(end - at));
	while (h.n > 1 &&
	    (double)(h.n - 1) * HEARD_STEP_S * h.rate >= (double)h.samples)
		h.n--;
	good = good &&
	    refine(&work, &p->asked, h.rate, h.x, h.samples, h.m, h.n);
	for (int64_t k = from; good && k < to; k++)
		if ((size_t)(k - begin) < h.n)
			m[k - s->instant] = h.m[k - begin];
	arena_done(&work);
	arena_done(&h.arena);
	return good;
}

/* Where no note is there is no more than a level. */
static void fill(
    const struct tape_sound *s, const struct piece_of *p, struct instant *m)
{
	for (size_t k = p->from * SURVEY_STEP; k < p->to * SURVEY_STEP; k++) {
		const struct look *l = &s->look[k / SURVEY_STEP];

		m[k] = (struct instant) { .level_db = l->level_db,
			.what = l->found > 0 ? HEARD_NOISE : HEARD_NOTHING };
	}
}

/*
 * Five periods of a high note look like one of a low one that was asked; who
 * looked at all notes knows better.
 */
static void tell_others(
    const struct tape_sound *s, const struct piece_of *p, struct instant *m)
{
	for (size_t k = p->from * SURVEY_STEP; k < p->to * SURVEY_STEP; k++) {
		double hz = (double)s->look[k / SURVEY_STEP].note_hz;

		if (hz <= 0 || m[k].what != HEARD_NOTE ||
		    (pitch_cents(p->asked.low_hz, hz) > -OTHER_CENTS &&
			pitch_cents(hz, p->asked.high_hz) > -OTHER_CENTS))
			continue;
		m[k].what = HEARD_OTHER;
		m[k].hz = (float)hz;
	}
}

bool tape_hear(const struct tape_sound *s, struct instant *m)
{
	struct piece_of p = { .from = 0 };

	for (; p.from < s->looks; p.from = p.to) {
		find_piece(s, &p);
		fill(s, &p, m);
		if (s->asked->known)
			p.asked = s->asked->asked;
		p.notes |= s->asked->known;
		if (p.notes && !hear_piece(s, &p, m))
			return false;
		if (s->asked->known)
			tell_others(s, &p, m);
	}
	return true;
}
