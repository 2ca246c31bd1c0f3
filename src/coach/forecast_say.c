/*
 * forecast_say.c - the sentences of a forecast
 */
#include <math.h>

#include "evenhand/base/text.h"
#include "forecast_parts.h"

enum { WEEK = 7, LIST_MAX = MESSAGE_TEXT_MAX };

struct message forecast_line(const struct forecast *f)
{
	if (f->silence != FORECAST_SPEAKS)
		return message_of(M_NONE);
	if (f->low_weeks == f->high_weeks)
		return message_with(M_FORECAST_ABOUT, WHOLE(f->low_weeks));
	return message_with(
	    M_FORECAST_WEEKS, WHOLE(f->low_weeks), WHOLE(f->high_weeks));
}

/* One digit behind the point is as much as anybody reads. */
static double tenths(double x)
{
	return floor(x * 10 + 0.5) / 10;
}

static struct message silent(const struct forecast *f)
{
	switch (f->silence) {
	case FORECAST_PAIN:
		return message_with(M_FORECAST_PAIN, DATE(f->pain_day),
		    WHOLE(FORECAST_PAIN_DAYS));
	case FORECAST_EARLY:
		return message_with(
		    M_FORECAST_EARLY, WHOLE(FORECAST_HABIT_LEAST));
	case FORECAST_SELDOM:
		return message_with(M_FORECAST_SELDOM, WHOLE(f->practised),
		    WHOLE(f->practised_of), WHOLE(FORECAST_DAYS_A_WEEK));
	case FORECAST_OVER:
	case FORECAST_SPEAKS:
		break;
	}
	return message_of(M_FORECAST_OVER);
}

static struct message habit(const struct forecast *f)
{
	return message_with(M_FORECAST_HABIT, WHOLE(f->practised),
	    WHOLE(f->practised_of),
	    NUMBER(tenths((double)f->practised * WEEK / f->practised_of)));
}

static struct message usual(const struct forecast *f, const struct routine *r)
{
	char buffer[LIST_MAX];
	struct text list = text_in(buffer, sizeof(buffer));

	for (int i = f->stage; i < f->stages; i++) {
		text_add(&list, i > f->stage ? ", " : "");
		text_format(
		    &list, "\"%s\" %d", r->stage[i].title, f->usual_days[i]);
	}
	return message_with(
	    M_FORECAST_USUAL, TEXT(buffer), WHOLE(f->least_days));
}

static struct message pace(const struct forecast *f)
{
	if (f->finished == 0)
		return message_of(M_FORECAST_PACE_NONE);
	return message_with(M_FORECAST_PACE, WHOLE(f->finished),
	    WHOLE(f->finished_days), WHOLE(f->finished_usual),
	    NUMBER(floor(exp(f->pace) * 100 + 0.5) / 100));
}

int forecast_why(
    const struct forecast *f, const struct routine *r, struct message *out)
{
	int count = 0;

	if (f->silence != FORECAST_SPEAKS) {
		out[0] = silent(f);
		return 1;
	}
	out[count++] = habit(f);
	out[count++] = usual(f, r);
	if (f->days_so_far > 0)
		out[count++] = message_with(M_FORECAST_SO_FAR,
		    TEXT(r->stage[f->stage].title), WHOLE(f->days_so_far));
	out[count++] = pace(f);
	if (f->lessons)
		out[count++] = message_of(M_FORECAST_LESSONS);
	out[count++] = message_with(M_FORECAST_DRAWS, WHOLE(FORECAST_DRAWS),
	    WHOLE(f->low_weeks), WHOLE(f->high_weeks));
	return count;
}
