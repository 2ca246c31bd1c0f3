/*
 * survey.c - a first look at a recording, every 20 ms
 */
#include "survey.h"

#include <math.h>
#include <stdint.h>

#include "match.h"

#define RATE_LEAST 11025.0 /* of what is looked at */
#define LIKENESS_LEAST 0.4 /* less is no period */
#define NEAR_BEST 0.8	   /* of the best: may be the true one */
#define SILENCE_DB (-65.0) /* of full scale */
#define QUIET_DB 30.0	   /* under the loudest */

enum {
	BEYOND = 2, /* lags beyond the range, so that an edge can peak */
	LAG_LEAST = 3,
	SILENCE = 1024, /* samples at a time behind the end */
};

struct survey {
	double rate;
	int factor, summed;
	float sum;
	struct match_range range;
	float *likeness;
	int reach;
	struct row row;
	int64_t next; /* the look that comes next */
};

struct survey *survey_new(
    struct arena *a, double rate, double low_hz, double high_hz)
{
	struct survey *s = arena_take(a, sizeof(*s));

	if (s == NULL)
		return NULL;
	s->factor = (int)fmax(1, floor(rate / RATE_LEAST));
	s->rate = rate / s->factor;
	s->range.from = (int)fmax(floor(s->rate / high_hz) - BEYOND, LAG_LEAST);
	s->range.to = (int)ceil(s->rate / low_hz) + BEYOND;
	s->range.width = match_width(s->rate / low_hz);
	s->reach = match_reach(&s->range);
	s->likeness = arena_take(
	    a, match_lags(&s->range) * sizeof(*s->likeness));
	if (s->likeness == NULL ||
	    !row_take(a, &s->row, (size_t)s->reach,
		2 * (size_t)s->reach + SURVEY_TAKE_MAX +
		    (size_t)(s->rate * SURVEY_STEP_S) + 2))
		return NULL;
	return s;
}

static int64_t centre(const struct survey *s)
{
	return (int64_t)floor((double)s->next * SURVEY_STEP_S * s->rate + 0.5);
}

/* The mean of some samples is one: rough, but so is the look. */
static void push(struct survey *s, const float *x, size_t n)
{
	row_forget(&s->row, centre(s) - s->reach, n);
	for (size_t i = 0; i < n; i++) {
		s->sum += x[i];
		if (++s->summed < s->factor)
			continue;
		row_add(&s->row, s->sum / (float)s->factor);
		s->sum = 0;
		s->summed = 0;
	}
}

static float level_db(const struct survey *s, struct row_at at)
{
	int half = (int)(s->rate * SURVEY_STEP_S);

	half = half < s->reach ? half : s->reach;
	return (float)(10 *
	    log10((1e-20 + row_energy(at, -half, half)) / (2 * half)));
}

static void note(
    const struct survey *s, struct look *out, const float *y, int lag)
{
	double left = (double)y[-1], mid = (double)y[0], right = (double)y[1];
	double bend = left - 2 * mid + right;
	double by = bend < 0 ? 0.5 * (left - right) / bend : 0;
	/* The last place is for the best, should it come late. */
	int at = out->found < SURVEY_FOUND ? out->found : SURVEY_FOUND - 1;
	double likeness = mid - 0.25 * (left - right) * by;

	if (at < out->found && likeness <= (double)out->likeness[at])
		return;
	out->hz[at] = (float)(s->rate / (lag + by));
	out->likeness[at] = (float)likeness;
	out->found = at + 1;
}

/* The shortest periods that are nearly as alike as the best. */
static void find(struct survey *s, struct row_at at, struct look *out)
{
	int lags = (int)match_lags(&s->range);
	const float *y = s->likeness;
	float best = 0;

	match_curve(at, &s->range, s->likeness);
	for (int i = 1; i + 1 < lags; i++)
		if (y[i] > y[i - 1] && y[i] >= y[i + 1] && y[i] > best)
			best = y[i];
	if (best < (float)LIKENESS_LEAST)
		return;
	for (int i = 1; i + 1 < lags; i++)
		if (y[i] > y[i - 1] && y[i] >= y[i + 1] &&
		    y[i] >= (float)NEAR_BEST * best)
			note(s, out, y + i, s->range.from + i);
}

static bool next_look(struct survey *s, struct look *out)
{
	int64_t next = centre(s);
	struct row_at at;

	if (next + s->reach >= row_end(&s->row))
		return false;
	at = row_at(&s->row, next);
	*out = (struct look) { .level_db = level_db(s, at) };
	if (out->level_db > (float)SILENCE_DB)
		find(s, at, out);
	s->next++;
	return true;
}

size_t survey_take(struct survey *s, const float *x, size_t n, struct look *out)
{
	size_t looks = 0;

	push(s, x, n);
	while (looks < SURVEY_LOOKS_MAX && next_look(s, out + looks))
		looks++;
	return looks;
}

size_t survey_end(struct survey *s, struct look *out, size_t count)
{
	static const float silence[SILENCE];
	size_t looks = 0;

	while ((size_t)s->next < count && looks < SURVEY_LOOKS_MAX) {
		if (next_look(s, out + looks)) {
			looks++;
			continue;
		}
		push(s, silence, SILENCE);
	}
	return looks;
}

bool survey_sounds(const struct look *l, double loudest_db)
{
	return (double)l->level_db > SILENCE_DB &&
	    (double)l->level_db > loudest_db - QUIET_DB && l->found > 0;
}
