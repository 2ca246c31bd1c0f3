/*
 * runs.c - notes that follow each other as a hand and a bow can play them
 */
#include "runs.h"

#include <math.h>

#include "evenhand/music/pitch.h"

#define LEAP_CENTS 40.0 /* from instant to instant, and no less than */
#define LEAP_PART 0.16	/* of all that was asked: a glide takes 60 ms */
#define SOFTER_DB 5.0
#define SPEAKS_SHARE 0.9
#define SPEAKS_S 0.4 /* bows last a second at least */

enum {
	SHORT = 24,    /* instants: no stay of a hand is shorter */
	BESIDE = 16,   /* the next run begins so soon */
	LEAP_OVER = 3, /* instants that a leap may be spread over */
	GAP = 4,       /* instants that do not end a run */
	LONGEST = 200, /* instants that runs are told apart by */
};

struct run {
	size_t from, to;
};

struct notes {
	const struct instant *m;
	size_t n;
	double leap; /* cents */
};

static bool leaps(const struct notes *s, size_t a, size_t b)
{
	size_t far = b - a < LEAP_OVER ? b - a : LEAP_OVER;

	return fabs(pitch_cents((double)s->m[a].hz, (double)s->m[b].hz)) >
	    s->leap * (double)far;
}

/* The next run from instant k on; false when there is none. */
static bool next_run(
    const struct notes *s, size_t k, size_t gap, struct run *out)
{
	size_t last;

	while (k < s->n && s->m[k].what != HEARD_NOTE)
		k++;
	out->from = last = k;
	for (; k < s->n && k - last <= gap; k++) {
		if (s->m[k].what != HEARD_NOTE)
			continue;
		if (leaps(s, last, k))
			break;
		last = k;
	}
	out->to = last + 1;
	return out->from < s->n;
}

static size_t length(const struct run *r)
{
	return r->to - r->from;
}

static void take(struct instant *m, const struct run *r)
{
	for (size_t k = r->from; k < r->to; k++) {
		m[k].what = HEARD_NOISE;
		m[k].hz = 0;
	}
}

/* Whether a run is followed soon by another. */
static bool beside(const struct run *a, const struct run *b)
{
	return a->to > 0 && b->from < a->to + BESIDE;
}

static double level(const struct notes *s, const struct run *r)
{
	double sum = 0;

	for (size_t k = r->from; k < r->to; k++)
		sum += (double)s->m[k].level_db;
	return sum / (double)length(r);
}

/* A short run beside long ones, softer, and a leap away from each of them. */
static bool is_other(const struct notes *s, const struct run *before,
    const struct run *now, const struct run *after)
{
	bool follows = beside(before, now) && length(before) >= SHORT;
	bool leads = beside(now, after) && length(after) >= SHORT;
	double most = INFINITY;

	if (length(now) >= SHORT || (!follows && !leads) ||
	    (follows && !leaps(s, before->to - 1, now->from)) ||
	    (leads && !leaps(s, now->to - 1, after->from)))
		return false;
	if (follows)
		most = level(s, before);
	if (leads)
		most = fmin(most, level(s, after));
	return level(s, now) < most - SOFTER_DB;
}

void runs_clean(struct instant *m, size_t n, const struct asked *asked)
{
	double span = pitch_cents(asked->low_hz, asked->high_hz);
	struct notes s = { m, n, fmax(LEAP_CENTS, LEAP_PART * span) };
	struct run before = { 0, 0 }, now, after;
	bool more = next_run(&s, 0, 1, &now);

	while (more) {
		more = next_run(&s, now.to, 1, &after);
		if (is_other(&s, &before, &now, &after))
			take(m, &now);
		else
			before = now;
		now = after;
	}
}

/* Half of the notes lie in runs of this many seconds or longer. */
static double usual_s(const struct instant *m, size_t n)
{
	struct notes s = { m, n, INFINITY };
	size_t in[LONGEST + 1] = { 0 }, notes = 0, longer = 0, i = LONGEST;
	struct run r = { 0, 0 };

	while (next_run(&s, r.to, GAP, &r)) {
		size_t at = length(&r) < LONGEST ? length(&r) : LONGEST;

		in[at] += length(&r);
		notes += length(&r);
	}
	for (; i > 0; i--) {
		longer += in[i];
		if (2 * longer >= notes)
			break;
	}
	return (double)i * HEARD_STEP_S;
}

bool runs_speak(const struct instant *m, size_t n, double share)
{
	return share < SPEAKS_SHARE && usual_s(m, n) < SPEAKS_S;
}
