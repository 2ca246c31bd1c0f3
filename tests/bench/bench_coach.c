/*
 * bench_coach.c - what the coach's own sums cost
 *
 * The forecast is the only one that does not come out of whole numbers at once:
 * 20 000 courses of all stages, before the page of today can be shown.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../coach/made.h"
#include "bench.h"
#include "evenhand/coach/forecast.h"

enum { TIMES = 51, WEEKS = 6, DAYS_A_WEEK = 5 };

/* Six weeks in the air, five days each: every stage is still to come. */
static struct past *six_weeks(void)
{
	struct past *p = past_new();

	for (int w = 0; w < WEEKS; w++)
		for (int d = 0; d < DAYS_A_WEEK; d++)
			past_see(
			    past_sit(p, made_moment(FIRST_DAY + 7 * w + d, 17),
				"air", ENDED_WHOLE),
			    "air", false);
	return p;
}

static void forecast(const struct past *p, int stages, const char *what)
{
	struct routine r = programme_cello(0);
	double ms[TIMES];
	struct forecast f;

	for (int i = r.stages; i < stages; i++)
		r.stage[i] = r.stage[r.stages - 1];
	r.stages = stages;
	for (int i = 0; i < TIMES; i++) {
		double start = now_ms();

		forecast_make(&f, &r, &p->h, 0, FIRST_DAY + 7 * WEEKS);
		ms[i] = now_ms() - start;
	}
	if (f.silence != FORECAST_SPEAKS) {
		fprintf(stderr, "there was no forecast to measure\n");
		exit(1);
	}
	figure(what, "< 5", median(ms, TIMES), "ms");
}

int main(void)
{
	struct past *p = six_weeks();

	forecast(p, 6, "a forecast: 20 000 courses of six stages");
	forecast(p, 12, "the same of twelve stages");
	free(p);
	return 0;
}
