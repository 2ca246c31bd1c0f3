/*
 * listened.c - what was heard of turns, added up for a block
 */
#include "evenhand/coach/listened.h"

#include <math.h>
#include <string.h>

#include "evenhand/coach/session.h"

static bool sure(double much)
{
	return much * 100 >= FINDING_SURE_PERCENT;
}

static int least(int a, int b)
{
	return a < b ? a : b;
}

static void take_tops(struct listened *out, const struct turn_heard *h)
{
	if (h->arrivals.asked <= 0)
		return;
	out->bows = h->bows_listened;
	out->bows_full = h->bows_full;
	for (int i = 0; i < h->bows; i++) {
		if (!h->bow[i].listened)
			continue;
		out->tops_asked += h->bow[i].asked;
		out->tops += least(h->bow[i].tops, h->bow[i].asked);
	}
}

void listened_of(struct listened *out, const struct turn_heard *h)
{
	const struct arrivals *a = &h->arrivals;

	*out = (struct listened) {
		.told = true, .answer = h->answer, .distance = h->distance
	};
	if (h->answer != TURN_HEARD)
		return;
	take_tops(out, h);
	if (a->heard > 0 && sure(a->sure)) {
		out->travel_share = (float)a->travel_share;
		out->timed = a->timed;
		out->late_s = (float)a->late_s;
	}
	if (h->calm_known && sure(h->calm_sure))
		out->stops = h->stops;
	if (h->sway.heard && sure(h->sway.sure))
		out->rate_hz = (float)h->sway.rate_hz;
}

/* --- a block --- */

/* A mean, one more at a time: how many there were before. */
static void add_mean(float *mean, int before, float value)
{
	*mean += (value - *mean) / (float)(before + 1);
}

/* Sums that only means need. */
struct counts {
	int rates, shares[UNITS_MAX];
};

static void add_unit(
    struct listened_unit *u, int *shares, const struct played_turn *t)
{
	const struct listened *h = &t->heard;

	u->tops += h->tops;
	u->tops_asked += h->tops_asked;
	if (t->mark == MARK_CLEAN)
		u->clean_missing += h->tops_asked - h->tops;
	if (h->travel_share > 0)
		add_mean(&u->travel_share, (*shares)++, h->travel_share);
}

static void add_heard(
    struct listened_sum *out, struct counts *c, const struct played_turn *t)
{
	const struct listened *h = &t->heard;

	out->heard++;
	out->tops += h->tops;
	out->tops_asked += h->tops_asked;
	out->stops += h->stops;
	if (h->timed)
		add_mean(&out->late_s, out->timed++, h->late_s);
	if (h->rate_hz > 0)
		add_mean(&out->rate_hz, c->rates++, h->rate_hz);
	if (t->unit >= 0)
		add_unit(&out->unit[t->unit], &c->shares[t->unit], t);
}

void listened_sum(struct listened_sum *out, const struct session *s, int block)
{
	struct counts c = { 0 };

	memset(out, 0, sizeof(*out));
	for (int i = 0; i < s->played; i++) {
		const struct played_turn *t = &s->turn_played[i];

		if (t->block != block || !t->heard.told)
			continue;
		out->turns++;
		out->answers[t->heard.answer]++;
		out->far |= t->heard.distance == DISTANCE_FAR;
		if (t->heard.answer == TURN_HEARD)
			add_heard(out, &c, t);
	}
}

void listened_tops(const struct session *s, int unit, int *tops, int *asked)
{
	*tops = *asked = 0;
	for (int i = 0; i < s->played; i++) {
		const struct played_turn *t = &s->turn_played[i];

		if (t->unit != unit || !t->heard.told)
			continue;
		*tops += t->heard.tops;
		*asked += t->heard.tops_asked;
	}
}

/* --- the one thing --- */

/* The unit with the most of its tops missing, or -1. */
static int most_missing(const struct listened_sum *sum)
{
	int most = FINDING_TOPS - 1, unit = -1;

	for (int u = 0; u < UNITS_MAX; u++) {
		int missing = sum->unit[u].tops_asked - sum->unit[u].tops;

		if (missing > most) {
			most = missing;
			unit = u;
		}
	}
	return unit;
}

static struct finding missing(const struct listened_sum *sum, int unit)
{
	const struct listened_unit *u = &sum->unit[unit];

	if (u->clean_missing >= FINDING_TOPS)
		return (struct finding) { .kind = FINDING_CLEAN_MISSING,
			.unit = unit,
			.count = u->clean_missing };
	return (struct finding) { .kind = FINDING_MISSING,
		.unit = unit,
		.count = u->tops_asked - u->tops };
}

/* The unit that goes least far, when that is short; or -1. */
static int shortest(const struct listened_sum *sum)
{
	float least_share = (float)FINDING_SHORT_PERCENT / 100;
	int unit = -1;

	for (int u = 0; u < UNITS_MAX; u++) {
		float share = sum->unit[u].travel_share;

		if (share > 0 && share < least_share) {
			least_share = share;
			unit = u;
		}
	}
	return unit;
}

/* What is said when nothing of the block could be measured. */
static enum finding_kind no_measure(const struct listened_sum *sum)
{
	if (sum->turns == 0)
		return FINDING_NONE;
	return sum->answers[TURN_ELSEWHERE] * 2 > sum->turns ? FINDING_ELSEWHERE
							     : FINDING_UNHEARD;
}

/* When all tops were there, or nobody misses any in particular. */
static struct finding otherwise(const struct listened_sum *sum)
{
	float late = (float)FINDING_LATE_MS / 1000;
	struct finding f = { .kind = FINDING_COUNT, .count = sum->stops };

	f.rate_hz = sum->rate_hz;
	if (sum->stops >= FINDING_STOPS)
		f.kind = FINDING_BOW;
	else if (sum->timed > 0 && fabsf(sum->late_s) >= late)
		f.kind = sum->late_s > 0 ? FINDING_LATE : FINDING_EARLY;
	else if (sum->rate_hz > 0)
		f.kind = FINDING_SWINGS;
	else if (sum->tops_asked == 0)
		f.kind = FINDING_NONE;
	else if (sum->tops == sum->tops_asked)
		f.kind = FINDING_ALL;
	return f;
}

struct finding finding_of(const struct listened_sum *sum, bool upper_near)
{
	int unit;

	if (sum->heard == 0)
		return (struct finding) { .kind = no_measure(sum) };
	unit = most_missing(sum);
	if (unit >= 0)
		return missing(sum, unit);
	unit = upper_near || sum->far ? -1 : shortest(sum);
	if (unit >= 0)
		return (struct finding) { .kind = FINDING_SHORT, .unit = unit };
	return otherwise(sum);
}
