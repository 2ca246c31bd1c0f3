/*
 * turn_tops.c - the tops of a turn given to its bows
 *
 * The player's own grid has the asked distance from pulse to pulse; where it
 * lies is the mean direction of all arrivals on the circle of one pulse.  Hands,
 * and what carries the sound, are rather late than early, so no grid is much too
 * early.
 *
 *	slot 0   1   2   3   0   1   2   3        four pulses, two bows
 *	     |   |   |   |   |   |   |   |   |
 *	    _  /‾\ /‾\ /‾\ /‾\ /‾\ /‾\ /‾\        begins low: slot 0 unasked
 *	    ‾\ /‾\ /‾\ /‾\ /‾\ /‾\ /‾\ /‾\        begins high: that is slot 0
 */
#include "turn_tops.h"

#include <math.h>

#include "direction.h"

#define TOGETHER 0.3   /* of arrivals that agree; less is no grid */
#define GLIDE_S 0.15   /* that must sound before an arrival is one */
#define EARLY_S 0.15   /* a grid may be early by, but */
#define EARLY_PART 0.4 /* of a pulse at most */

struct grid {
	double begin_s, pulse_s; /* of slot 0, and from slot to slot */
};

/* By how much arrivals are late within a pulse, in seconds. */
static double late_s(
    const struct turn_asked *asked, const struct tops *tops, double pulse_s)
{
	double early = fmin(EARLY_S, EARLY_PART * pulse_s);
	struct direction d = { .n = 0 };
	double late;

	for (int i = 0; i < tops->n; i++)
		direction_add(
		    &d, (tops->at[i].nine_s - asked->edge_s[0]) / pulse_s);
	if (direction_agreed(&d) < TOGETHER)
		return 0;
	late = direction_mean(&d) * pulse_s;
	return late < -early ? late + pulse_s : late;
}

/* What can be heard at a slot: the glide before it, or its sound at all. */
static bool can_be_heard(
    const struct grid *g, const struct tops *tops, int slot)
{
	double at = g->begin_s + slot * g->pulse_s;

	return slot > 0 || at > tops->begin_s + GLIDE_S;
}

static void give(const struct turn_asked *asked, const struct tops *tops,
    const struct grid *g, struct bow_heard *bow)
{
	bool first = can_be_heard(g, tops, 0);
	int extra = 0; /* the top where the sound begins */

	for (int i = 0; i < asked->bows; i++) {
		bow[i].tops = 0;
		bow[i].asked = asked->pulses;
	}
	for (int i = 0; i < tops->n; i++) {
		int slot = (int)floor(
		    (tops->at[i].nine_s - g->begin_s) / g->pulse_s + 0.5);

		if (slot < 0 || slot >= asked->bows * asked->pulses)
			continue;
		if (slot == 0 && !first)
			extra = 1;
		else
			bow[slot / asked->pulses].tops++;
	}
	if (tops->begins_high && !first)
		extra = 1;
	bow[0].asked -= !first;
	for (int i = 0; i < asked->bows; i++)
		bow[i].full = bow[i].listened && bow[i].tops >= bow[i].asked;
	bow[0].asked += extra;
	bow[0].tops += extra;
}

void turn_tops(const struct turn_asked *asked, const struct tops *tops,
    struct bow_heard *bow)
{
	double all_s = asked->edge_s[asked->bows] - asked->edge_s[0];
	double pulse_s = all_s / (asked->bows * asked->pulses);
	struct grid g = { asked->edge_s[0] + late_s(asked, tops, pulse_s),
		pulse_s };

	give(asked, tops, &g, bow);
}
