/*
 * forecast_draw.c - the courses a forecast is drawn from
 *
 * Only whole weeks are shown, so each course falls into the bin of its nearest
 * whole week, and a percentile is a matter of counting bins.
 *
 * That a stage already took some days tells of the student's pace too.  So the
 * sum a + e of the stage under way is drawn first, above ln(days/m), and then
 * the pace that goes with it:
 *
 *	x = a + e	mean A, variance A2 + E2, above the bound
 *	a | x		mean A + A2/(A2 + E2) (x - A), variance A2 E2/(A2 + E2)
 *
 * The stages to come only need exp(e), many times over.  That is one of 4096
 * factors that are equally likely, which costs 12 random bits and no exp.
 */
#include <math.h>
#include <string.h>

#include "forecast_parts.h"

#define SEED UINT64_C(20260302)

enum {
	DAYS_MAX = 3650, /* more on one stage count as so many */
	WEEK = 7,
	LOW_PERCENT = 10,
	HIGH_PERCENT = 90,
	WHIM_BITS = 12,
	WHIMS = 1 << WHIM_BITS,
};

/* exp(e) at the middle of each of so many equal shares of e. */
struct whims {
	double factor[WHIMS];
};

static double square(double x)
{
	return x * x;
}

void forecast_pace(struct forecast *f, int stages, double sum)
{
	double weight = 1 / square(FORECAST_PACE_SD) +
	    stages / square(FORECAST_STAGE_SD);

	f->pace = sum / square(FORECAST_STAGE_SD) / weight;
	f->pace_sd = sqrt(1 / weight);
}

static void find_whims(struct whims *w)
{
	for (int i = 0; i < WHIMS; i++)
		w->factor[i] = exp(
		    FORECAST_STAGE_SD * chance_quantile((i + 0.5) / WHIMS));
}

/* Days of a stage at so many times what is usual, or the least. */
static double days_of(const struct forecast *f, int stage, double times)
{
	double days = f->usual_days[stage] * times;

	return days > f->least_days ? days : f->least_days;
}

static int so_far(const struct forecast *f)
{
	return f->days_so_far < DAYS_MAX ? f->days_so_far : DAYS_MAX;
}

struct forecast_under_way forecast_under_way(const struct forecast *f)
{
	double pace2 = square(f->pace_sd), stage2 = square(FORECAST_STAGE_SD);
	struct forecast_under_way w = {
		.sd = sqrt(pace2 + stage2),
		.part = pace2 / (pace2 + stage2),
		.above = 1,
	};

	w.rest_sd = sqrt(w.part) * FORECAST_STAGE_SD;
	/* As many days as are asked for anyway say nothing. */
	if (so_far(f) >= f->least_days) {
		double bound = log((double)so_far(f) / f->usual_days[f->stage]);

		w.above = chance_above((bound - f->pace) / w.sd);
	}
	return w;
}

struct forecast_course forecast_draw_stage(const struct forecast *f,
    const struct forecast_under_way *w, uint64_t *state)
{
	double x = w->sd * chance_normal_above(state, w->above);
	double pace = f->pace + w->part * x + w->rest_sd * chance_normal(state);

	return (struct forecast_course) {
		days_of(f, f->stage, exp(f->pace + x)), pace
	};
}

/* Weeks that so many practice days take, up to a lesson if there are any. */
static double weeks_of(const struct forecast *f, double days)
{
	double weeks = days * f->practised_of / (WEEK * f->practised);

	return f->lessons ? ceil(weeks) : weeks;
}

static double course(const struct forecast *f, const struct whims *w,
    const struct forecast_under_way *stage, uint64_t *state)
{
	struct forecast_course now = forecast_draw_stage(f, stage, state);
	double left = now.days - so_far(f), usual = exp(now.pace);
	double weeks = weeks_of(f, left > 0 ? left : 0);

	for (int i = f->stage + 1; i < f->stages; i++) {
		uint64_t whim = chance_bits(state) >> (64 - WHIM_BITS);

		weeks += weeks_of(f, days_of(f, i, usual * w->factor[whim]));
	}
	return weeks;
}

/* The week by which so many percent of the courses have ended. */
static int percentile(const unsigned *ended, int percent)
{
	unsigned seen = 0, wanted = FORECAST_DRAWS / 100 * (unsigned)percent;
	int week = 0;

	while ((seen += ended[week]) < wanted)
		week++;
	return week > 0 ? week : 1;
}

void forecast_draw(struct forecast *f)
{
	unsigned ended[FORECAST_WEEKS_MAX + 1];
	uint64_t state = SEED;
	struct forecast_under_way stage = forecast_under_way(f);
	struct whims w;

	find_whims(&w);
	memset(ended, 0, sizeof(ended));
	for (int i = 0; i < FORECAST_DRAWS; i++) {
		double weeks = floor(course(f, &w, &stage, &state) + 0.5);

		ended[weeks < FORECAST_WEEKS_MAX ? (int)weeks
						 : FORECAST_WEEKS_MAX]++;
	}
	f->low_weeks = percentile(ended, LOW_PERCENT);
	f->high_weeks = percentile(ended, HIGH_PERCENT);
}
