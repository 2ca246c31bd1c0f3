/*
 * live.c - the pitch of a string while it is being bowed
 *
 * The newest samples lie in one row, with as much silence before the first as a
 * search reaches back.
 */
#include "evenhand/listen/live.h"

#include <assert.h>
#include <math.h>
#include <stdint.h>

#include "elsewhere.h"
#include "match.h"

#define CENTS_AN_OCTAVE 1200.0
#define SILENCE_DB (-80.0) /* below this nothing is looked for */
#define ALIKE_BEGIN 0.6	   /* one period and the next where a note begins */
#define ALIKE_STAY 0.4	   /* and while it goes on */

enum {
	PEAK_ROOM = 2,	/* lags beyond the range, so that an edge can peak */
	LOOK_EVERY = 8, /* instants from one look elsewhere to the next */
	LOOKS = 3,	/* in a row that must say so */
};

struct live {
	double rate;
	struct match_range range;
	struct match_few few;
	int reach;
	struct row row;
	int64_t next;	 /* instant that comes next */
	double before;	 /* the lag found last, 0: none */
	int looks;	 /* in a row that said it is another sound */
	double other_hz; /* what the last of them said */
	struct elsewhere *elsewhere;
};

static void set_range(struct live *l, const struct asked *asked)
{
	double beyond = exp2(HEARD_BEYOND_CENTS / CENTS_AN_OCTAVE);
	double longest = l->rate / asked->low_hz * beyond;
	double shortest = l->rate / asked->high_hz / beyond;

	l->range.from = (int)fmax(floor(shortest) - PEAK_ROOM, 2);
	l->range.to = (int)ceil(longest) + PEAK_ROOM;
	l->range.width = match_width(longest);
	l->reach = match_reach(&l->range);
}

struct live *live_new(struct arena *a, const struct asked *asked, double rate)
{
	struct live *l = arena_take(a, sizeof(*l));
	size_t reach, step = (size_t)(rate * HEARD_STEP_S) + 2;

	assert(asked_valid(asked));
	if (l == NULL)
		return NULL;
	l->rate = rate;
	set_range(l, asked);
	if (!match_few_take(a, &l->range, LIVE_TAKE_MAX + step, &l->few))
		return NULL;
	if (l->reach < match_few_reach(&l->few))
		l->reach = match_few_reach(&l->few);
	reach = (size_t)l->reach;
	l->elsewhere = elsewhere_new(a, asked, rate);
	if (l->elsewhere == NULL ||
	    !row_take(a, &l->row, reach, 2 * reach + step + LIVE_TAKE_MAX))
		return NULL;
	return l;
}

int live_behind(const struct live *l)
{
	return l->reach;
}

static int64_t centre(const struct live *l)
{
	return (int64_t)floor((double)l->next * HEARD_STEP_S * l->rate + 0.5);
}

void live_take(struct live *l, const float *x, size_t n)
{
	int64_t next = centre(l);

	assert(n <= LIVE_TAKE_MAX);
	row_forget(&l->row, next - l->reach, n);
	for (size_t i = 0; i < n; i++)
		row_add(&l->row, x[i]);
	match_few_hear(&l->few, next, x, n);
	elsewhere_take(l->elsewhere, x, n);
}

static double level_db(const struct live *l, struct row_at at)
{
	int half = l->reach;
	double sum = 1e-20 + row_energy(at, -half, half);

	return 10 * log10(sum / (2 * half));
}

static void search(struct live *l, int64_t at, struct instant *m)
{
	double least = l->before > 0 ? ALIKE_STAY : ALIKE_BEGIN;
	struct match found;

	found = match_search(&l->row, at, &l->range, &l->few, l->before);
	m->sure = (float)fmin(fmax(found.likeness, 0), 1);
	m->what = found.likeness >= least ? HEARD_NOTE : HEARD_NOISE;
	l->before = m->what == HEARD_NOTE ? found.lag : 0;
	if (m->what == HEARD_NOTE)
		m->hz = (float)(l->rate / found.lag);
}

/* Now and then whether it is another sound altogether. */
static void look(struct live *l, struct row_at at, struct instant *m)
{
	if (l->next % LOOK_EVERY == 0) {
		double hz = elsewhere_look(
		    l->elsewhere, at, (double)m->hz, (double)m->sure);

		l->looks = hz > 0 ? l->looks + 1 : 0;
		l->other_hz = hz;
	}
	if (l->looks < LOOKS)
		return;
	m->what = HEARD_OTHER;
	m->hz = (float)l->other_hz;
}

bool live_next(struct live *l, struct instant *m)
{
	int64_t next = centre(l);
	struct row_at at;

	if (next + l->reach >= row_end(&l->row))
		return false;
	at = row_at(&l->row, next);
	*m = (struct instant) { .what = HEARD_NOTHING };
	m->level_db = (float)level_db(l, at);
	if (m->level_db > SILENCE_DB) {
		search(l, next, m);
		look(l, at, m);
	} else {
		l->before = 0;
		l->looks = 0;
	}
	l->next++;
	return true;
}
