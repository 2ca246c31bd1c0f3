/*
 * equal.c - equal work for all fingers from a biased past (rule F1)
 *
 * First how many turns each unit gets, then their order.  The order follows
 * each unit's quota: after t of N turns a unit with n of them should have had
 * t n / N.  The unit furthest behind its quota plays next, unless it has just
 * played.  A choice that would leave one unit to play twice running at the
 * end is passed over.
 */
#include "evenhand/coach/equal.h"

#include <assert.h>
#include <limits.h>
#include <stdbool.h>

static int spare_goes_to(
    int units, const int *ledger, const int *share, int most)
{
	int best = -1;

	for (int u = 0; u < units; u++) {
		if (share[u] >= most)
			continue;
		if (best < 0 ||
		    (int64_t)ledger[u] + share[u] <
			(int64_t)ledger[best] + share[best])
			best = u;
	}
	return best;
}

void equal_share(int turns, int units, const int *ledger, int *share)
{
	assert(units >= 1 && units <= UNITS_MAX);
	assert(turns >= 0 && turns <= EQUAL_TURNS_MAX && turns % units == 0);

	int even = turns / units;
	int least = units > 2 ? (even + 1) / 2 : even;
	int most = units > 2 ? even + even / 2 : even;
	int spare = turns - units * least;

	for (int u = 0; u < units; u++)
		share[u] = least;
	for (; spare > 0; spare--)
		share[spare_goes_to(units, ledger, share, most)]++;
}

/* What the order is worked out over. */
struct play {
	int units, turns;
	const int *ledger, *share;
	int had[UNITS_MAX]; /* c_f, turns so far */
	int done, last;
};

/* Whether a is to play before b in the first pass: the neediest first. */
static bool needier(const struct play *p, int a, int b)
{
	return p->ledger[a] < p->ledger[b];
}

/* Further behind its quota: t n/N - c, times N. */
static bool behind(const struct play *p, int a, int b)
{
	int t = p->done + 1;
	int debt_a = t * p->share[a] - p->had[a] * p->turns;
	int debt_b = t * p->share[b] - p->had[b] * p->turns;

	if (debt_a != debt_b)
		return debt_a > debt_b;
	if (p->share[a] != p->share[b])
		return p->share[a] > p->share[b];
	return needier(p, a, b);
}

/* Whether the rest can be played without a unit twice running. */
static bool leaves_a_way(const struct play *p, int chosen)
{
	int rest = p->turns - p->done - 1;

	for (int u = 0; u < p->units; u++) {
		int own = p->share[u] - p->had[u] - (u == chosen);
		int others = rest - own;

		if (own > others + (u != chosen))
			return false;
	}
	return true;
}

static bool may_play(const struct play *p, int u, bool with_care)
{
	if (p->had[u] >= p->share[u])
		return false;
	if (!with_care)
		return true;
	return u != p->last && leaves_a_way(p, u);
}

static int next_unit(const struct play *p, bool with_care)
{
	bool first_pass = false;
	int best = -1;

	for (int u = 0; u < p->units; u++)
		first_pass |= p->had[u] == 0 && p->share[u] > 0;
	for (int u = 0; u < p->units; u++) {
		if (first_pass && p->had[u] > 0)
			continue;
		if (!may_play(p, u, with_care && !first_pass))
			continue;
		if (best < 0 ||
		    (first_pass ? needier(p, u, best) : behind(p, u, best)))
			best = u;
	}
	return best;
}

void equal_order(
    int turns, int units, const int *ledger, const int *share, int *order)
{
	struct play p = { .units = units,
		.turns = turns,
		.ledger = ledger,
		.share = share,
		.last = -1 };

	assert(units >= 1 && units <= UNITS_MAX);
	assert(turns >= 0 && turns <= EQUAL_TURNS_MAX);
	for (p.done = 0; p.done < turns; p.done++) {
		int u = next_unit(&p, true);

		if (u < 0)
			u = next_unit(&p, false);
		assert(u >= 0);
		order[p.done] = u;
		p.had[u]++;
		p.last = u;
	}
}
