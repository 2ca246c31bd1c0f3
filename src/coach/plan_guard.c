/*
 * plan_guard.c - a slower day after signs of hurry (rule F7)
 *
 * The work goes down one rung after its first round, and no rung is gained;
 * earlier stages may take two thirds of the time; the teacher's own words are
 * shown.  The first go of the day keeps its rung, because only there it shows
 * that a stage is secure: who is in a hurry is not to be held for ever.  Where
 * it was played already, the work begins one rung lower.
 */
#include "plan_parts.h"

void plan_guard(struct making *m)
{
	guard_of(
	    &m->plan->guard, m->routine, m->history, m->stage, m->plan->day);
}

void plan_guard_part(struct making *m)
{
	bool less = m->recap_num * GUARD_RECAP_DEN <
	    m->recap_den * GUARD_RECAP_NUM;

	/* A teacher who wants no earlier stages gets none. */
	if (!m->plan->guard.hurried || m->recap_num <= 0 || !less)
		return;
	m->recap_num = GUARD_RECAP_NUM;
	m->recap_den = GUARD_RECAP_DEN;
}

void plan_guard_rung(struct making *m)
{
	int lower = rung_lower(m->routine, m->pulses);

	if (!m->plan->guard.hurried || m->rounds == 0)
		return;
	m->plan->clean_rounds = 0;
	m->plan->climbed = true;
	if (lower == m->pulses)
		return;
	if (m->plan->first_go >> m->stage & 1) {
		m->plan->slower = true;
		return;
	}
	m->pulses = lower;
	m->rung_why = RUNG_HURRY;
}

void plan_guard_reasons(struct making *m)
{
	const struct guard *g = &m->plan->guard;

	if (m->plan->slower)
		plan_because(m,
		    message_with(M_COACH_HURRY_AFTER,
			WHOLE(rung_lower(m->routine, m->pulses))),
		    GROUND_OWN, 7);
	else if (g->hurried && m->rung_why == RUNG_HURRY)
		plan_because(m,
		    message_with(M_COACH_HURRY_RUNG, WHOLE(m->pulses)),
		    GROUND_OWN, 7);
	else if (g->hurried && !m->in_the_air)
		plan_because(m, message_of(M_COACH_HURRY), GROUND_OWN, 7);
}

void plan_guard_details(struct making *m)
{
	const struct guard *g = &m->plan->guard;

	if (g->unheard > 0)
		plan_detail(m,
		    message_with(M_COACH_HURRY_UNHEARD, WHOLE(GUARD_DAYS),
			WHOLE(g->unheard), WHOLE(GUARD_UNHEARD)),
		    GROUND_OWN, 7);
	if (g->signs > 0)
		plan_detail(m,
		    message_with(M_COACH_HURRY_SIGNS, WHOLE(GUARD_DAYS),
			WHOLE(g->early), WHOLE(g->beyond), WHOLE(g->later),
			WHOLE(g->signs), WHOLE(g->needed)),
		    GROUND_OWN, 7);
}

void plan_guard_cautions(struct making *m)
{
	const struct stage *s = &m->routine->stage[m->stage];
	bool hurried = m->plan->guard.hurried;

	if (s->patience || hurried)
		plan_caution(m, message_of(M_COACH_CAUTION_HURRY));
	if (hurried && s->say[0] != '\0')
		plan_caution(
		    m, message_with(M_COACH_CAUTION_SAY, TEXT(s->say)));
}
