/*
 * plan_forecast.c - the forecast among the reasons of a plan
 *
 * Not made with every plan: 20 000 courses take longer than all the rest.
 */
#include "plan_parts.h"

void plan_add_forecast(
    struct plan *p, const struct forecast *f, const struct routine *r)
{
	struct message why[FORECAST_MESSAGES_MAX];
	struct making m = { .plan = p, .routine = r };
	struct message line = forecast_line(f);
	int count = forecast_why(f, r, why);

	if (line.id != M_NONE)
		plan_because(&m, line, GROUND_OWN, 6);
	for (int i = 0; i < count; i++)
		plan_detail(&m, why[i], GROUND_OWN, 6);
}
