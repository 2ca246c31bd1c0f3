/*
 * plan_reasons_load.c - why today is less than it could be, in metres
 *
 * By how much a week may grow was published; what it may always hold, and so
 * each number that stands on it, is our own.
 */
#include "plan_parts.h"

/* Whole decimetres are enough to read. */
static double metres(int64_t um)
{
	const double um_in_dm = 1e5;

	return (double)(int64_t)((double)um / um_in_dm + 0.5) / 10;
}

static void say_over(struct making *m)
{
	const struct load_over *o = &m->over;

	if (o->week.slide_um > o->allowed.slide_um)
		plan_because(m,
		    message_with(M_COACH_LOAD_OVER_METRES, WHOLE(o->finger),
			NUMBER(metres(o->week.slide_um)),
			NUMBER(metres(o->allowed.slide_um))),
		    GROUND_OWN, 5);
	else
		plan_because(m,
		    message_with(M_COACH_LOAD_OVER_PULSES, WHOLE(o->finger),
			WHOLE(o->week.pulses), WHOLE(o->allowed.pulses)),
		    GROUND_OWN, 5);
}

/* What is done about it, for a session that is played. */
static struct message done_about(const struct making *m)
{
	switch (m->load) {
	case LOAD_NO_CLIMB:
		return message_with(M_COACH_LOAD_NO_CLIMB, WHOLE(m->pulses));
	case LOAD_LOWEST:
		return message_with(M_COACH_LOAD_LOWEST, WHOLE(m->pulses));
	case LOAD_SHORT:
		return message_with(M_COACH_LOAD_SHORT, CLOCK(m->plan->cap_ms),
		    CLOCK(m->full_cap_ms));
	case LOAD_AIR:
		return message_of(M_COACH_LOAD_AIR);
	case LOAD_REST:
		return message_of(M_COACH_LOAD_REST);
	case LOAD_FREE:
	case LOAD_RECAPS:
		break;
	}
	return message_of(M_NONE);
}

void plan_load_reasons(struct making *m)
{
	struct message done = done_about(m);
	bool played = m->load != LOAD_REST && m->load != LOAD_AIR;

	if (m->load == LOAD_FREE)
		return;
	say_over(m);
	if (m->recaps_lowered && played)
		plan_because(m,
		    message_with(
			M_COACH_LOAD_RECAPS, WHOLE(m->routine->ladder[0])),
		    GROUND_OWN, 5);
	if (m->load == LOAD_SHORT && m->rung_why == RUNG_LOAD)
		plan_because(m,
		    message_with(M_COACH_LOAD_LOWEST, WHOLE(m->pulses)),
		    GROUND_OWN, 5);
	if (done.id != M_NONE)
		plan_because(m, done, GROUND_OWN, 5);
}

static void say_finger(struct making *m, int finger)
{
	const struct load *w = &m->week.finger[finger];
	const struct load *a = &m->allowed.finger[finger];

	if (a->slide_um == 0)
		return;
	plan_detail(m,
	    message_with(M_COACH_LOAD_FINGER, WHOLE(finger),
		NUMBER(metres(w->slide_um)), NUMBER(metres(a->slide_um)),
		WHOLE(w->pulses), WHOLE(a->pulses)),
	    GROUND_OWN, 5);
}

void plan_load_details(struct making *m)
{
	const struct routine *r = m->routine;
	bool any = false;

	for (int f = 1; f <= FINGERS_MAX; f++)
		any |= m->allowed.finger[f].slide_um > 0;
	if (!any)
		return;
	for (int f = 1; f <= FINGERS_MAX; f++)
		say_finger(m, f);
	plan_detail(m,
	    message_with(M_COACH_LOAD_GROWS, WHOLE(LOAD_GROWS_PERCENT),
		WHOLE(LOAD_RISING_WEEKS)),
	    GROUND_PUBLISHED, 5);
	plan_detail(m,
	    message_with(M_COACH_LOAD_BASE, WHOLE(LOAD_BASE_DAYS),
		WHOLE(LOAD_BASE_BOWS), WHOLE(r->ladder[r->ladder_count - 1])),
	    GROUND_OWN, 5);
}
