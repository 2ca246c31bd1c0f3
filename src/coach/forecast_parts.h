/*
 * forecast_parts.h - what the files of the forecast share
 *
 *	forecast.c		what the history tells: stages, days, habit
 *	forecast_draw.c		the courses that are drawn from it
 *	forecast_chance.c	random numbers, the same on every computer
 *	forecast_say.c		the sentences
 */
#ifndef EVENHAND_COACH_FORECAST_PARTS_H
#define EVENHAND_COACH_FORECAST_PARTS_H

#include <stdint.h>

#include "evenhand/coach/forecast.h"

/* Deviations of the pace and of a stage's whim. */
#define FORECAST_PACE_SD 0.35
#define FORECAST_STAGE_SD 0.40

/* --- forecast_draw.c --- */

/* What so many finished stages tell of the pace; sum is that of ln D/m. */
void forecast_pace(struct forecast *f, int stages, double sum);

/* low_weeks and high_weeks from the numbers used; practised is above 0. */
void forecast_draw(struct forecast *f);

/* The stage under way: what is the same in all draws of it. */
struct forecast_under_way {
	double sd;	/* of a + e */
	double part;	/* of a in that */
	double rest_sd; /* of a, once a + e is known */
	double above;	/* share of all that is above the days so far */
};

struct forecast_under_way forecast_under_way(const struct forecast *f);

/*
 * Practice days of the stage under way and the pace that goes with them: a
 * draw from what is left of their distribution after days_so_far.
 */
struct forecast_course {
	double days, pace;
};
struct forecast_course forecast_draw_stage(const struct forecast *f,
    const struct forecast_under_way *w, uint64_t *state);

/* --- forecast_chance.c --- */

/* The next 64 bits of splitmix64 (Steele, Lea and Flood, OOPSLA 2014). */
uint64_t chance_bits(uint64_t *state);

/* Above 0 and below 1. */
double chance_even(uint64_t *state);

/* Mean 0, deviation 1. */
double chance_normal(uint64_t *state);

/* The share of it above a bound (up to 37), and one out of that share. */
double chance_above(double bound);
double chance_normal_above(uint64_t *state, double above);

/* Where the normal distribution reaches a share p of 0..1, both left out. */
double chance_quantile(double p);

#endif
