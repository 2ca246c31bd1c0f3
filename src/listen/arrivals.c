/*
 * arrivals.c - what the arrivals of a turn say together
 */
#include "evenhand/listen/arrivals.h"

#include <assert.h>
#include <math.h>

#include "series.h"

#define SHORTEST 0.55 /* of the usual time between two arrivals: a slip */
#define LONGEST 1.6   /* one between them was not heard */

enum { MANY = 512, EVEN_LEAST = 2 }; /* times between arrivals */

static void measure_travel(
    const struct arrival *at, int n, double asked, struct arrivals *out)
{
	double way[MANY];

	for (int i = 0; i < n; i++)
		way[i] = at[i].upper_cents - at[i].lower_cents;
	out->travel_spread = series_sd(way, (size_t)n);
	out->travel_cents = series_median(way, (size_t)n);
	out->travel_share = asked > 0 ? out->travel_cents / asked : 0;
}

/* Only between arrivals that follow each other at about the usual time. */
static void measure_evenness(
    const struct arrival *at, int n, struct arrivals *out)
{
	double gap[MANY], sorted[MANY], usual;
	size_t gaps = 0, good = 0;

	for (int i = 1; i < n; i++, gaps++)
		gap[gaps] = sorted[gaps] = at[i].half_s - at[i - 1].half_s;
	if (gaps < EVEN_LEAST)
		return;
	usual = series_median(sorted, gaps);
	for (size_t i = 0; i < gaps; i++)
		if (gap[i] > SHORTEST * usual && gap[i] < LONGEST * usual)
			gap[good++] = gap[i];
	out->even_known = good >= EVEN_LEAST;
	if (!out->even_known)
		return;
	out->every_s = series_mean(gap, good);
	out->unevenness = series_sd(gap, good) / out->every_s;
}

/* Each arrival against the pulse it is nearest to. */
static void measure_lateness(const struct arrivals_asked *asked,
    const struct arrival *at, int n, struct arrivals *out)
{
	double late[MANY];

	if (!asked->latency_known || asked->pulses == 0)
		return;
	for (int i = 0; i < n; i++) {
		late[i] = INFINITY;
		for (int j = 0; j < asked->pulses; j++) {
			double by = at[i].nine_s - asked->pulse_s[j];

			if (fabs(by) < fabs(late[i]))
				late[i] = by;
		}
	}
	out->timed = true;
	out->late_spread_s = series_sd(late, (size_t)n);
	out->late_s = series_median(late, (size_t)n);
}

struct arrivals arrivals_measure(
    const struct arrivals_asked *asked, const struct arrival *at, int n)
{
	struct arrivals out = { .asked = asked->pulses, .heard = n };
	double sure[MANY];

	assert(n <= MANY);
	if (n <= 0)
		return out;
	measure_travel(at, n, asked->travel_cents, &out);
	measure_evenness(at, n, &out);
	measure_lateness(asked, at, n, &out);
	for (int i = 0; i < n; i++)
		sure[i] = at[i].sure;
	out.sure = series_median(sure, (size_t)n);
	if (asked->pulses > n)
		out.sure *= (double)n / asked->pulses;
	return out;
}
