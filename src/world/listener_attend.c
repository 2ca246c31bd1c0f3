/*
 * listener_attend.c - samples and turns brought together, in the ear
 *
 * Samples come some time after they were in the air, turns are told as they are
 * played: so a turn waits for its samples, or finds them among the recent ones.
 * Where samples are missing, silence of that length stands in for them.
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "evenhand/base/frames.h"
#include "listener_parts.h"

enum {
	RECENT_MS = 1500,
	JUMP_MS = 20, /* frames that do not follow each other so nearly */
};

void attention_begin(struct attention *a, answer_taker *answer,
    bool (*stopped)(void *context), void *context)
{
	*a = (struct attention) {
		.answer = answer, .stopped = stopped, .context = context
	};
	a->recent = calloc(RECENT_MAX, sizeof(*a->recent));
}

void attention_end(struct attention *a)
{
	ear_free(a->ear);
	free(a->recent);
}

static void tell(struct attention *a, const struct turn_heard *heard)
{
	a->answer(a->context, a->number, heard,
	    a->rate > 0 ? judge_tell(&a->judge) : (struct judged) { 0 });
}

/* --- the turn --- */

/* Its edges in seconds of the ear. */
static struct turn_asked asked_here(const struct attention *a)
{
	const struct listener_turn *t = &a->turn;
	struct turn_asked asked = t->asked;

	for (int i = 0; i <= asked.bows; i++) {
		double frame = (double)t->frame + t->asked.edge_s[i] * t->rate;

		asked.edge_s[i] = (frame - a->first_frame) / a->frames_each /
		    a->rate;
	}
	if (asked.distance == DISTANCE_UNKNOWN)
		asked.distance = judge_distance(&a->judge);
	return asked;
}

/* Measures the turn that is over, and tells; some was heard of it or not. */
static void measure(struct attention *a)
{
	struct turn_asked asked;
	struct turn_heard heard;
	bool good = a->begun;

	if (good) {
		asked = asked_here(a);
		while (ear_work(a->ear))
			if (a->stopped(a->context))
				return;
		good = ear_end(a->ear, &asked, &heard);
	}
	if (good)
		judge_turn(&a->judge, &heard);
	tell(a, good ? &heard : NULL);
	a->wanted = a->begun = a->ended = false;
}

static bool has_all(const struct attention *a)
{
	struct turn_asked asked = asked_here(a);

	return ear_taken_s(a->ear) >= asked.edge_s[asked.bows] + EAR_AFTER_S;
}

/* No more comes of a turn that is over. */
static void measure_what_is_there(struct attention *a)
{
	if (a->wanted && a->ended)
		measure(a);
}

static void measure_when_over(struct attention *a)
{
	if (a->wanted && a->ended && a->begun && has_all(a))
		measure(a);
}

/* Begins the turn with what is there of it among the recent samples. */
static void try_begin(struct attention *a)
{
	struct turn_asked asked;
	double from, first;

	if (!a->wanted || a->begun || a->ear == NULL || a->recents == 0)
		return;
	from = (double)(a->turn.frame -
	    frames_of_ms(LISTENER_BEFORE_MS, a->turn.rate));
	first = fmax(ceil((from - a->recent_frame) / a->frames_each), 0);
	if (first >= (double)a->recents)
		return;
	a->first_frame = a->recent_frame + first * a->frames_each;
	asked = asked_here(a);
	a->begun = ear_begin(a->ear, &asked);
	if (a->begun)
		ear_take(a->ear, a->recent + (size_t)first,
		    a->recents - (size_t)first);
}

/* --- samples --- */

/* A microphone of another rate is another one. */
static void set_rate(struct attention *a, int rate)
{
	if (rate == a->rate)
		return;
	ear_free(a->ear);
	a->ear = rate >= HEARD_RATE_MIN && rate <= HEARD_RATE_MAX
	    ? ear_new(rate)
	    : NULL;
	a->begun = false;
	a->recents = 0;
	a->rate = a->ear ? rate : 0;
	if (a->ear)
		judge_begin(&a->judge, rate);
}

/* What is missing before these samples is silence. */
static void fill_gap(struct attention *a, const struct heard_samples *h)
{
	double expected = a->recent_frame + (double)a->recents * a->frames_each;
	double missing = (h->frame - expected) / h->frames_each;

	if (a->recents == 0 || fabs(missing) * 1000 < JUMP_MS * (double)a->rate)
		return;
	if (a->begun && missing > 0)
		ear_lost(a->ear, (size_t)fmin(missing, EAR_S_MAX * a->rate));
	a->recents = 0;
}

static void keep_recent(
    struct attention *a, const struct heard_samples *h, const float *x)
{
	size_t most = (size_t)a->rate * RECENT_MS / 1000, count = h->count;
	size_t drop;

	if (a->recent == NULL)
		return;
	most = most < RECENT_MAX ? most : RECENT_MAX;
	if (count > most) {
		x += count - most;
		count = most;
	}
	drop = a->recents + count > most ? a->recents + count - most : 0;
	memmove(a->recent, a->recent + drop,
	    (a->recents - drop) * sizeof(*a->recent));
	a->recents -= drop;
	memcpy(a->recent + a->recents, x, count * sizeof(*x));
	a->recents += count;
	/* Told anew each time, so that nothing adds up. */
	a->frames_each = h->frames_each;
	a->recent_frame = h->frame +
	    ((double)h->count - (double)a->recents) * h->frames_each;
}

static void take_samples(
    struct attention *a, const struct heard_samples *h, const float *x)
{
	bool begun;

	if (h->count == 0 || !(h->frames_each > 0))
		return;
	set_rate(a, h->rate);
	if (a->ear == NULL)
		return;
	fill_gap(a, h);
	begun = a->begun;
	judge_take(&a->judge, x, h->count, begun);
	keep_recent(a, h, x);
	if (begun)
		ear_take(a->ear, x, h->count);
	else
		try_begin(a);
	measure_when_over(a);
}

/* --- orders --- */

static void begin_turn(struct attention *a, const struct listener_turn *t)
{
	measure_what_is_there(a);
	a->turn = *t;
	a->wanted = true;
	a->begun = a->ended = false;
	try_begin(a);
}

static void end_turn(struct attention *a, int number, int bows)
{
	a->number = number;
	if (!a->wanted || a->ended || bows < 1) {
		tell(a, NULL);
		a->wanted = a->begun = a->ended = false;
		return;
	}
	a->ended = true;
	if (bows < a->turn.asked.bows)
		a->turn.asked.bows = bows;
	measure_when_over(a);
}

void attention_take(struct attention *a, const struct order *o)
{
	switch (o->kind) {
	case ORDER_SAMPLES:
		take_samples(a, &o->samples, o->x);
		break;
	case ORDER_BEGIN:
		begin_turn(a, &o->turn);
		break;
	case ORDER_END:
		end_turn(a, o->number, o->bows);
		break;
	case ORDER_DROP:
		measure_what_is_there(a);
		a->wanted = a->begun = false;
		break;
	case ORDER_FINISH:
		measure_what_is_there(a);
		break;
	}
}
