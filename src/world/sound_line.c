/*
 * sound_line.c - what time a card's samples belong to
 *
 * All is reckoned in seconds from the last stamp, so that hours lose no digits:
 *
 *	y = time since the first stamp - samples since it / rate
 *
 * is small, and its slope is how far the card is off its rate.
 */
#include "sound_line.h"

#include <math.h>
#include <string.h>

/* Belief in the nominal rate: 100 ppm, against stamps off by a ms. */
#define BELIEF 100.0
#define SPREAD_FIRST 2e-3
#define SPREAD_LEAST 0.1e-3
#define SPREAD_STAMPS 200.0 /* it is the mean of so many, ... */
#define SPREAD_BELIEF 10.0  /* ... at first of those and of so many such */
#define FAR 3.0		    /* spreads; further stamps count less */
#define AGREED 3.0	    /* a jump is larger than its stamps are apart ... */
#define JUMPED 5.0	    /* ... and than stamps mostly are off the line */

void line_begin(struct line *l, int rate)
{
	*l = (struct line) { .rate = rate, .spread = SPREAD_FIRST };
}

/* The sums, seen from a stamp that is later. */
static void move(struct line *l, double to)
{
	double d = to - l->last, kept = exp(-d / LINE_SPAN_S);

	l->sxx += d * (d * l->s - 2 * l->sx);
	l->sxy -= d * l->sy;
	l->sx -= d * l->s;
	l->s *= kept;
	l->sx *= kept;
	l->sy *= kept;
	l->sxx *= kept;
	l->sxy *= kept;
	l->last = to;
}

static void fit(struct line *l)
{
	double sxx = l->sxx - l->sx * l->sx / l->s;
	double sxy = l->sxy - l->sx * l->sy / l->s;
	double most = LINE_PPM_MAX * 1e-6;

	l->slope = sxy / (sxx + BELIEF);
	l->slope = fmin(fmax(l->slope, -most), most);
	l->level = (l->sy - l->slope * l->sx) / l->s;
}

static double off(const struct line *l, double x, double y)
{
	return y - l->level - l->slope * (x - l->last);
}

static double middle(const double *values, int count)
{
	double sorted[LINE_LAST] = { 0 };

	for (int i = 0; i < count; i++) {
		int at = i;

		for (; at > 0 && sorted[at - 1] > values[i]; at--)
			sorted[at] = sorted[at - 1];
		sorted[at] = values[i];
	}
	return sorted[count / 2];
}

/* A stamp that has waited counts from now on. */
static void count_in(struct line *l, double x, double y)
{
	double beside = fabs(off(l, x, y)), far = FAR * l->spread;
	double weight = beside <= far ? 1 : far / beside;
	double among = fmin((double)l->stamps + SPREAD_BELIEF, SPREAD_STAMPS);

	move(l, x);
	l->spread += (weight * beside - l->spread) / among;
	l->spread = fmax(l->spread, SPREAD_LEAST);
	l->s += weight;
	l->sy += weight * y;
	fit(l);
}

static void wait_in_line(struct line *l, double x, double y)
{
	if (l->waiting == LINE_LAST) {
		count_in(l, l->x[0], l->y[0]);
		l->waiting--;
		memmove(l->x, l->x + 1, sizeof l->x - sizeof *l->x);
		memmove(l->y, l->y + 1, sizeof l->y - sizeof *l->y);
	}
	l->x[l->waiting] = x;
	l->y[l->waiting++] = y;
	if (l->s > 0)
		return;
	/* None counts yet. */
	l->last = x;
	l->level = middle(l->y, l->waiting);
}

/* How far those that wait lie beside the line, if they agree on that. */
static double jumped(const struct line *l)
{
	double beside[LINE_LAST], by, apart = 0;

	if (l->waiting < LINE_LAST)
		return 0;
	for (int i = 0; i < LINE_LAST; i++)
		beside[i] = off(l, l->x[i], l->y[i]);
	by = middle(beside, LINE_LAST);
	for (int i = 0; i < LINE_LAST; i++)
		apart += fabs(beside[i] - by) / LINE_LAST;
	return fabs(by) > LINE_JUMP_US * 1e-6 && fabs(by) > AGREED * apart &&
		fabs(by) > JUMPED * l->spread
	    ? by
	    : 0;
}

double line_add(struct line *l, int64_t number, int64_t time_ns)
{
	double x, by;

	if (l->stamps++ == 0) {
		l->number = number;
		l->time_ns = time_ns;
	}
	l->newest = number;
	x = (double)(number - l->number) / l->rate;
	wait_in_line(l, x, (double)(time_ns - l->time_ns) * 1e-9 - x);
	by = l->s > 0 ? jumped(l) : 0;
	/* All it stands on is so much later. */
	l->sy += by * l->s;
	l->sxy += by * l->sx;
	l->level += by;
	return by;
}

int64_t line_time(const struct line *l, double number)
{
	double x = (number - (double)l->number) / l->rate;
	double y = l->level + l->slope * (x - l->last);

	return l->time_ns + (int64_t)llround((x + y) * 1e9);
}

double line_number(const struct line *l, int64_t time_ns)
{
	double t = (double)(time_ns - l->time_ns) * 1e-9;
	double x = (t - l->level + l->slope * l->last) / (1 + l->slope);

	return (double)l->number + x * l->rate;
}

double line_rate(const struct line *l)
{
	return l->rate / (1 + l->slope);
}
