/*
 * forecast.c - what the history tells a forecast: stages, days, habit
 *
 * The habit is what was really done in the last whole weeks before today, two
 * at least and four at most, and not what the routine wishes for.  Today is
 * left out because it is not over.
 */
#include "evenhand/coach/forecast.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

#include "forecast_parts.h"

enum {
	WEEK = 7,
	FIRST_DAYS = 6, /* what is usual for a stage */
	STAGE_DAYS = 9,
	LAST_DAYS = 12,
	NEVER = -1,
};

int forecast_usual_days(const struct routine *r, int stage)
{
	if (r->stage[stage].in_the_air || (stage == 0 && r->stages > 1))
		return FIRST_DAYS;
	return stage == r->stages - 1 ? LAST_DAYS : STAGE_DAYS;
}

/* The stages behind, where there were practice days on them. */
static void look_behind(
    struct forecast *f, const struct routine *r, const struct history *h)
{
	double sum = 0;

	for (int i = 0; i < f->stage; i++) {
		int days = history_days_on(h, r, i);

		/* A stage that was left out says nothing of the pace. */
		if (days == 0)
			continue;
		f->finished++;
		f->finished_days += days;
		f->finished_usual += f->usual_days[i];
		sum += log((double)days / f->usual_days[i]);
	}
	forecast_pace(f, f->finished, sum);
}

/* Days from one to another; a journal is a file and may hold any number. */
static int64_t days_between(int day, int later)
{
	return (int64_t)later - day;
}

static void look_for_pain(struct forecast *f, const struct history *h, int day)
{
	f->pain_day = NEVER;
	for (int i = 0; i < h->notes; i++) {
		const struct past_note *n = &h->note[i];
		int64_t ago = days_between(n->day, day);

		/* One day ahead is today in a zone further east. */
		if (n->kind == NOTE_PAIN && ago >= -1 &&
		    ago < FORECAST_PAIN_DAYS && n->day > f->pain_day)
			f->pain_day = n->day;
	}
}

/* Whole weeks since the first session, at most as many as are looked at. */
static int habit_weeks(const struct history *h, int day)
{
	int64_t since = 0;

	for (int i = 0; i < h->sittings; i++)
		if (history_sat(&h->sitting[i]) &&
		    days_between(h->sitting[i].day, day) > since)
			since = days_between(h->sitting[i].day, day);
	return since / WEEK < FORECAST_HABIT_WEEKS ? (int)since / WEEK
						   : FORECAST_HABIT_WEEKS;
}

static void look_at_habit(struct forecast *f, const struct history *h, int day)
{
	uint32_t days = 0;

	f->practised_of = WEEK * habit_weeks(h, day);
	for (int i = 0; i < h->sittings; i++) {
		int64_t ago = days_between(h->sitting[i].day, day);

		if (history_sat(&h->sitting[i]) && ago >= 1 &&
		    ago <= f->practised_of)
			days |= UINT32_C(1) << ago;
	}
	for (; days; days &= days - 1)
		f->practised++;
}

static enum forecast_silence silence(const struct forecast *f)
{
	if (f->stage >= f->stages)
		return FORECAST_OVER;
	if (f->pain_day != NEVER)
		return FORECAST_PAIN;
	if (f->practised_of < WEEK * FORECAST_HABIT_LEAST)
		return FORECAST_EARLY;
	if (f->practised * WEEK < FORECAST_DAYS_A_WEEK * f->practised_of)
		return FORECAST_SELDOM;
	return FORECAST_SPEAKS;
}

void forecast_make(struct forecast *f, const struct routine *r,
    const struct history *h, int stage, int day)
{
	/* Gaps between fields too: the same input gives the same bytes. */
	memset(f, 0, sizeof(*f));
	f->stage = stage < r->stages ? stage : r->stages;
	f->stages = r->stages;
	for (int i = 0; i < r->stages; i++)
		f->usual_days[i] = forecast_usual_days(r, i);
	f->least_days = r->move_days;
	f->lessons = r->decided_by == DECIDED_BY_TEACHER;
	if (f->stage < f->stages)
		f->days_so_far = history_days_on(h, r, f->stage);
	look_behind(f, r, h);
	look_for_pain(f, h, day);
	look_at_habit(f, h, day);
	f->silence = silence(f);
	if (f->silence == FORECAST_SPEAKS)
		forecast_draw(f);
}
