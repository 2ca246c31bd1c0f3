/*
 * survey_path.c - one way through the periods that were found
 *
 * State 0 is no note; state i is period i - 1 of the look.
 */
#include <math.h>
#include <stdint.h>

#include "survey.h"

#define UNALIKE_MOST 0.45 /* what no note costs: less alike is no note */
#define LONG_COST 0.03	  /* for each octave down from the top */
#define LEAP_COST 0.25	  /* for an octave, and for more */
#define EDGE_COST 0.05	  /* for a note that begins or ends */
#define TOP_HZ 4000.0

enum { STATES = SURVEY_FOUND + 1 };

struct way {
	double cost[STATES];
	uint8_t from[STATES]; /* the state before */
};

static double own_cost(const struct look *l, int state)
{
	if (state == 0)
		return UNALIKE_MOST;
	return 1 - (double)l->likeness[state - 1] +
	    LONG_COST * log2(TOP_HZ / (double)l->hz[state - 1]);
}

static double step_cost(
    const struct look *from, int state, const struct look *to, int next)
{
	if (state == 0 || next == 0)
		return state == next ? 0 : EDGE_COST;
	return LEAP_COST *
	    fmin(fabs(log2(
		     (double)from->hz[state - 1] / (double)to->hz[next - 1])),
		1);
}

static void step(const struct look *before, const struct way *was,
    const struct look *l, struct way *now)
{
	for (int next = 0; next <= l->found; next++) {
		double best = INFINITY;

		for (int state = 0; state <= before->found; state++) {
			double cost = was->cost[state] +
			    step_cost(before, state, l, next);

			if (cost >= best)
				continue;
			best = cost;
			now->from[next] = (uint8_t)state;
		}
		now->cost[next] = best + own_cost(l, next);
	}
}

bool survey_path(struct arena *a, struct look *look, size_t n)
{
	struct way *way = arena_take(a, (n + 1) * sizeof(*way));
	int state = 0;

	if (way == NULL)
		return false;
	if (n == 0)
		return true;
	for (int i = 0; i <= look[0].found; i++)
		way[0].cost[i] = own_cost(&look[0], i);
	for (size_t k = 1; k < n; k++)
		step(&look[k - 1], &way[k - 1], &look[k], &way[k]);
	for (int i = 1; i <= look[n - 1].found; i++)
		if (way[n - 1].cost[i] < way[n - 1].cost[state])
			state = i;
	for (size_t k = n; k-- > 0;) {
		look[k].note_hz = state > 0 ? look[k].hz[state - 1] : 0;
		state = way[k].from[state];
	}
	return true;
}
