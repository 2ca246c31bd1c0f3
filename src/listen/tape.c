/*
 * tape.c - a whole recording, heard from its first sample to its last
 *
 * What was taken waits until its stretch is whole and a little more: a pause is
 * seen when it is over, and a piece is read with some sound on both sides.
 *
 *	      past   stretch under way          after
 *	x: |.......|==============================|....|
 *	        first look of the stretch      cut
 */
#include "evenhand/listen/tape.h"

#include <assert.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/listen/thin.h"
#include "evenhand/music/pitch.h"
#include "survey.h"
#include "tape_hear.h"
#include "widen.h"

#define ALL_LOW_HZ 30.0
#define ALL_HIGH_HZ 1800.0 /* violins are bowed higher, and studied lower */
#define BESIDE_S 0.6	   /* of sound kept on both sides of a stretch */

enum {
	LOOKS_MOST = 3000, /* TAPE_STRETCH_S */
	LOOKS_PAUSE = 35,  /* TAPE_PAUSE_S */
	LOOKS_BESIDE = 30, /* BESIDE_S */
	LOOKS_ROOM = LOOKS_MOST + LOOKS_BESIDE + 2 * SURVEY_LOOKS_MAX,
	CUT_WITHIN = 200, /* looks before the longest: its quietest place */
};

struct tape {
	struct arena arena; /* for as long as it listens */
	struct arena work;  /* for one stretch */
	struct stretch_asked asked;
	bool slow; /* looked at twice as fast */
	bool high; /* the partials that tell of a room are there */
	struct widen widen;
	struct thin *thin;
	double rate; /* of x */
	float *x;
	int64_t first; /* x[0] is this sample */
	size_t samples, room;
	struct survey *survey;
	struct look *look; /* from the stretch's first on */
	size_t looks;
	int64_t first_look;
	size_t sounds_at; /* looks up to here were asked whether they sound */
	size_t quiet;	  /* looks in a row that do not */
	bool sounded;	  /* something did, in this stretch */
	double loudest_db;
	bool ended, failed;
};

/* The highest note that may come, for which samples are kept. */
static double high_hz(const struct stretch_asked *a)
{
	return a->known ? pitch_above(a->asked.high_hz, HEARD_BEYOND_CENTS)
			: ALL_HIGH_HZ;
}

static bool begin(struct tape *t, int rate)
{
	t->thin = thin_new(&t->arena, rate, high_hz(&t->asked));
	if (!t->thin)
		return false;
	t->rate = thin_rate(t->thin);
	t->room = (size_t)(t->rate *
	    ((LOOKS_ROOM + LOOKS_BESIDE) * SURVEY_STEP_S));
	t->x = arena_take(&t->arena, t->room * sizeof(*t->x));
	/* All notes, since others may come than those that were asked. */
	t->survey = survey_new(&t->arena, t->rate, ALL_LOW_HZ,
	    fmax(ALL_HIGH_HZ, high_hz(&t->asked)));
	t->look = arena_take(&t->arena, LOOKS_ROOM * sizeof(*t->look));
	return t->x && t->survey && t->look;
}

struct tape *tape_new(int rate, const struct stretch_asked *asked)
{
	struct tape *t = calloc(1, sizeof(*t));

	assert(rate >= TAPE_RATE_MIN && rate <= TAPE_RATE_MAX);
	assert(!asked->known || asked_valid(&asked->asked));
	if (!t)
		return NULL;
	t->asked = *asked;
	t->slow = rate < HEARD_RATE_MIN;
	t->high = rate >= TAPE_ROOM_RATE;
	t->loudest_db = -INFINITY;
	widen_begin(&t->widen);
	if (begin(t, t->slow ? 2 * rate : rate))
		return t;
	tape_free(t);
	return NULL;
}

void tape_free(struct tape *t)
{
	if (!t)
		return;
	arena_done(&t->work);
	arena_done(&t->arena);
	free(t);
}

bool tape_failed(const struct tape *t)
{
	return t->failed;
}

/* Thinned samples that were just written behind x. */
static void keep(struct tape *t, size_t made)
{
	assert(t->samples + made <= t->room);
	t->looks += survey_take(
	    t->survey, t->x + t->samples, made, t->look + t->looks);
	t->samples += made;
}

void tape_samples(struct tape *t, const float *x, size_t n)
{
	float twice[2 * TAPE_MAX];

	assert(n <= TAPE_MAX);
	if (t->failed || t->ended)
		return;
	if (t->slow) {
		n = widen_take(&t->widen, x, n, twice);
		x = twice;
	}
	keep(t, thin_take(t->thin, x, n, t->x + t->samples));
}

void tape_end(struct tape *t)
{
	float last[2 * WIDEN_REACH];
	size_t looks;

	if (t->ended)
		return;
	if (t->slow)
		keep(t,
		    thin_take(t->thin, last, widen_end(&t->widen, last),
			t->x + t->samples));
	keep(t, thin_end(t->thin, t->x + t->samples));
	looks = (size_t)ceil(
	    (double)(t->first + (int64_t)t->samples) / t->rate / SURVEY_STEP_S);
	t->looks += survey_end(t->survey, t->look + t->looks, looks);
	if ((size_t)t->first_look + t->looks > looks)
		t->looks = looks - (size_t)t->first_look;
	t->ended = true;
}

/* The quietest look before the longest stretch is over. */
static size_t quietest(const struct tape *t)
{
	size_t best = LOOKS_MOST;

	for (size_t k = LOOKS_MOST - CUT_WITHIN; k <= LOOKS_MOST; k++)
		if (t->look[k].level_db <= t->look[best].level_db)
			best = k;
	return best;
}

/* Where the stretch is over, in looks; 0: not yet. */
static size_t cut(struct tape *t)
{
	for (; t->sounds_at < t->looks; t->sounds_at++) {
		const struct look *l = &t->look[t->sounds_at];

		t->loudest_db = fmax(t->loudest_db, (double)l->level_db);
		if (survey_sounds(l, t->loudest_db)) {
			/* A pause before it, and sound before that. */
			if (t->sounded && t->quiet >= LOOKS_PAUSE)
				return t->sounds_at - LOOKS_PAUSE / 2;
			t->sounded = true;
			t->quiet = 0;
		} else {
			t->quiet++;
		}
	}
	if (t->looks > LOOKS_MOST + LOOKS_BESIDE)
		return quietest(t);
	return t->ended ? t->looks : 0;
}

/* Drops what lies before a look, but for a little sound. */
static void forget(struct tape *t, size_t looks)
{
	int64_t keep_from, drop;

	t->looks -= looks;
	memmove(t->look, t->look + looks, t->looks * sizeof(*t->look));
	t->first_look += (int64_t)looks;
	t->sounds_at = t->quiet = 0;
	t->sounded = false;
	t->loudest_db = -INFINITY;
	keep_from = (int64_t)(((double)t->first_look * SURVEY_STEP_S -
				  BESIDE_S) *
	    t->rate);
	drop = keep_from - t->first;
	if (drop <= 0)
		return;
	t->samples -= (size_t)drop;
	memmove(t->x, t->x + drop, t->samples * sizeof(*t->x));
	t->first += drop;
}

static bool hear(struct tape *t, size_t looks, struct stretch *out)
{
	struct tape_sound s = { t->x, t->samples, t->first, t->rate, &t->asked,
		t->look, looks, t->first_look * SURVEY_STEP };
	size_t n = looks * SURVEY_STEP;
	struct instant *m = arena_take(&t->work, n * sizeof(*m));

	if (!m || !survey_path(&t->work, t->look, looks) || !tape_hear(&s, m) ||
	    !stretch_measure(&t->work, &t->asked, m, n,
		(double)t->first_look * SURVEY_STEP_S, out))
		return false;
	if (!t->high)
		out->room = 0;
	return true;
}

bool tape_next(struct tape *t, struct stretch *out)
{
	size_t looks = t->failed ? 0 : cut(t);

	arena_done(&t->work);
	if (looks == 0)
		return false;
	t->failed = !hear(t, looks, out);
	forget(t, looks);
	return !t->failed;
}
