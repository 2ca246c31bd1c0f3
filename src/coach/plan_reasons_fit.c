/*
 * plan_reasons_fit.c - why the air, these recaps and so many rounds
 */
#include "plan_parts.h"

static void say_air(struct making *m)
{
	const struct routine *r = m->routine;

	if (m->swings == 0)
		return;
	if (!m->in_the_air) {
		plan_detail(m,
		    message_with(
			M_COACH_AIR, TEXT(plan_title(m, m->air_stage))),
		    GROUND_COMMON, 2);
		return;
	}
	plan_detail(m,
	    message_with(M_COACH_SWINGS, WHOLE(m->swings),
		NUMBER((AIR_SWING_BOWS * r->bow_ms + r->change_ms) / 1000.0),
		CLOCK(m->plan->cap_ms)),
	    GROUND_OWN, 2);
	plan_detail(m, message_of(M_COACH_SWING_MARK), GROUND_OWN, 4);
}

static int sessions(const struct making *m)
{
	int sat = 0;

	for (int i = 0; i < m->history->sittings; i++)
		sat += history_sat_here(&m->history->sitting[i]);
	return sat;
}

static void say_pulses(struct making *m, const struct recap *c)
{
	const char *name = plan_title(m, c->stage);

	if (m->easing)
		return;
	plan_detail(m,
	    c->pulses < c->usual
		? message_with(M_COACH_RECAP_LOWER, TEXT(name),
		      WHOLE(c->pulses), WHOLE(c->usual))
		: message_with(
		      c->was_clean ? M_COACH_RECAP_CLEAN : M_COACH_RECAP_START,
		      TEXT(name), WHOLE(c->pulses)),
	    GROUND_OWN, 2);
}

static void say_recap(struct making *m, const struct recap *c)
{
	const char *name = plan_title(m, c->stage);

	if (c->unseen > 0 && c->unseen == sessions(m))
		plan_because(m, message_with(M_COACH_RECAP_NEW, TEXT(name)),
		    GROUND_COMMON, 2);
	else if (c->unseen >= UNSEEN_LONG)
		plan_because(m,
		    message_with(
			M_COACH_RECAP_LONG, TEXT(name), WHOLE(c->unseen)),
		    GROUND_COMMON, 2);
	else if (c->shaky)
		plan_because(m, message_with(M_COACH_RECAP_SHAKY, TEXT(name)),
		    GROUND_COMMON, 2);
	else
		plan_detail(m, message_with(M_COACH_RECAP_TURN, TEXT(name)),
		    GROUND_COMMON, 2);
	say_pulses(m, c);
}

static void say_recaps(struct making *m)
{
	if (m->plan->air_only)
		return;
	for (int i = 0; i < m->candidates; i++)
		if (m->recap[i].chosen)
			say_recap(m, &m->recap[i]);
	for (int i = 0; i < m->candidates; i++)
		if (!m->recap[i].chosen)
			plan_detail(m,
			    message_with(M_COACH_RECAP_WAITS,
				TEXT(plan_title(m, m->recap[i].stage))),
			    GROUND_OWN, 2);
}

static void say_recap_facts(struct making *m)
{
	int all = sessions(m);

	if (m->candidates == 0 || m->plan->air_only)
		return;
	plan_detail(m, message_with(M_COACH_RECAP_ORDER, WHOLE(UNSEEN_LONG)),
	    GROUND_OWN, 2);
	for (int i = 0; i < m->candidates; i++) {
		const struct recap *c = &m->recap[i];
		const char *name = plan_title(m, c->stage);

		if (c->unseen < all)
			plan_detail(m,
			    message_with(M_COACH_RECAP_FACTS, TEXT(name),
				WHOLE(c->unseen + 1), WHOLE(c->times)),
			    GROUND_OWN, 2);
		else if (all > 0)
			plan_detail(m,
			    message_with(M_COACH_RECAP_FACTS_NEW, TEXT(name),
				WHOLE(all)),
			    GROUND_OWN, 2);
	}
}

/* Seconds after a turn of a round. */
static double change_s(const struct making *m, int turn)
{
	return plan_change_ms(
		   m->routine, m->plan->marking, turn, m->routine->units) /
	    1000.0;
}

static void say_times(struct making *m)
{
	const struct routine *r = m->routine;

	plan_detail(m,
	    message_with(M_COACH_LEAD, NUMBER(SETTLE_MS / 1000.0),
		WHOLE(r->count_in_bows), NUMBER(m->lead_ms / 1000.0)),
	    GROUND_OWN, 2);
	if (m->in_the_air)
		return;
	plan_detail(m,
	    m->plan->marking == MARKING_TURN
		? message_with(M_COACH_TIMES, WHOLE(r->bows_each),
		      NUMBER(r->bow_ms / 1000.0), NUMBER(r->change_ms / 1000.0),
		      NUMBER(routine_turn_ms(r) / 1000.0), WHOLE(r->units),
		      NUMBER(m->round_ms / 1000.0))
		: message_with(M_COACH_TIMES_ROUND, WHOLE(r->bows_each),
		      NUMBER(r->bow_ms / 1000.0), NUMBER(change_s(m, 0)),
		      NUMBER(change_s(m, r->units - 1)), WHOLE(r->units),
		      NUMBER(m->round_ms / 1000.0)),
	    GROUND_COMMON, 2);
}

static void say_fit(struct making *m)
{
	int cap = m->plan->cap_ms;
	int used = m->air_ms + m->recaps_fit * (m->lead_ms + m->round_ms);

	if (m->in_the_air || m->plan->air_only)
		return;
	if (m->load == LOAD_AIR || m->load == LOAD_REST)
		return;
	if (m->rounds == 0 && !m->no_work) {
		plan_because(m, message_with(M_COACH_TOO_SHORT, CLOCK(cap)),
		    GROUND_OWN, 2);
		return;
	}
	plan_detail(m,
	    message_with(M_COACH_RECAP_PART,
		CLOCK((int64_t)cap * m->recap_num / m->recap_den),
		WHOLE(m->recap_num), WHOLE(m->recap_den), CLOCK(cap),
		CLOCK(used)),
	    GROUND_OWN, 2);
	if (m->rounds > 0)
		plan_detail(m,
		    message_with(M_COACH_ROUNDS, CLOCK(cap), CLOCK(used),
			CLOCK(m->lead_ms), WHOLE(m->rounds),
			CLOCK(m->round_ms)),
		    GROUND_OWN, 2);
}

void plan_fit_reasons(struct making *m)
{
	say_air(m);
	say_recaps(m);
	say_fit(m);
}

void plan_fit_details(struct making *m)
{
	say_times(m);
	say_recap_facts(m);
}
