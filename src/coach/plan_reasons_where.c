/*
 * plan_reasons_where.c - why this stage today, and how it stands
 */
#include "plan_parts.h"

static const char *at(const struct making *m)
{
	return plan_title(m, m->where.at);
}

/* --- days away --- */

static struct message recap_message(const struct making *m)
{
	const struct where *w = &m->where;
	int cap = m->plan->cap_ms;

	if (w->recap_again)
		return w->recap_only
		    ? message_with(
			  M_WHERE_AWAY_RECAP_AGAIN, CLOCK(cap), TEXT(at(m)))
		    : message_with(M_WHERE_AWAY_SELF_AGAIN, CLOCK(cap));
	return w->recap_only ? message_with(M_WHERE_AWAY_RECAP, WHOLE(w->away),
				   WHOLE(w->percent), CLOCK(cap), TEXT(at(m)))
			     : message_with(M_WHERE_AWAY_SELF, WHOLE(w->away),
				   WHOLE(w->percent), CLOCK(cap));
}

static void say_away(struct making *m)
{
	const struct where *w = &m->where;

	if (w->lower)
		plan_because(m,
		    message_with(M_WHERE_AWAY_LOWER, WHOLE(w->away)),
		    GROUND_OWN, 5);
	else if (w->why == WHERE_AWAY_START)
		plan_because(m,
		    message_with(
			M_WHERE_AWAY_START, WHOLE(w->away), TEXT(at(m))),
		    GROUND_OWN, 5);
	else if (w->why == WHERE_AWAY_BACK)
		plan_because(m,
		    message_with(M_WHERE_AWAY_BACK, WHOLE(w->away), TEXT(at(m)),
			WHOLE(w->percent), CLOCK(m->plan->cap_ms)),
		    GROUND_OWN, 5);
	else if (w->percent == AWAY_SECOND_PERCENT)
		plan_because(m,
		    message_with(M_WHERE_AWAY_GROWS, WHOLE(w->percent),
			CLOCK(m->plan->cap_ms)),
		    GROUND_OWN, 5);
	else if (w->percent < 100)
		plan_because(m, recap_message(m), GROUND_OWN, 5);
	else
		return;
	plan_detail(m,
	    message_with(M_WHERE_AWAY_TABLE, WHOLE(AWAY_SHORT - 1),
		WHOLE(AWAY_SHORT), WHOLE(AWAY_LONG - 1), WHOLE(AWAY_BACK - 1),
		WHOLE(AWAY_START - 1)),
	    GROUND_OWN, 5);
}

/* --- back and on --- */

static void say_where(struct making *m)
{
	const struct where *w = &m->where;

	switch (w->why) {
	case WHERE_BACK:
		plan_because(m,
		    message_with(M_WHERE_BACK, TEXT(plan_title(m, w->from)),
			DATE(w->bad_day[0]), DATE(w->bad_day[1]), TEXT(at(m))),
		    GROUND_OWN, 4);
		plan_detail(m, message_of(M_WHERE_BACK_RULE), GROUND_OWN, 4);
		break;
	case WHERE_STAYS:
		plan_because(m,
		    message_with(M_WHERE_STAYS, TEXT(at(m)),
			TEXT(plan_title(m, w->at + 1))),
		    GROUND_OWN, 4);
		break;
	case WHERE_ON:
		plan_because(m,
		    message_with(
			M_WHERE_ON, TEXT(plan_title(m, w->from)), TEXT(at(m))),
		    GROUND_OWN, 4);
		break;
	case WHERE_SECURE:
		plan_because(m,
		    message_with(M_WHERE_SECURE, TEXT(plan_title(m, w->from)),
			TEXT(at(m))),
		    GROUND_OWN, 4);
		break;
	case WHERE_FILE:
	case WHERE_AWAY_BACK:
	case WHERE_AWAY_START:
		break;
	}
}

/* --- secure or not --- */

/* The odds hold for four who take turns and the rule as it comes. */
static bool usual(const struct making *m)
{
	const struct routine *r = m->routine;

	return r->units == 4 && r->move_days == 5 && r->move_clean == 2 &&
	    r->move_of == 3 && !m->in_the_air;
}

static void say_counts(struct making *m)
{
	const struct standing *s = &m->plan->standing;

	if (s->missing != MISSING_NOTHING && s->more_days > 0)
		plan_detail(m,
		    message_with(
			m->in_the_air ? M_STANDING_MORE_AIR : M_STANDING_MORE,
			WHOLE(s->more_days)),
		    GROUND_OWN, 4);
	plan_detail(m,
	    m->in_the_air ? message_with(M_STANDING_COUNTS_AIR, WHOLE(s->days),
				WHOLE(s->days_needed), WHOLE(s->clean_days),
				WHOLE(s->clean_of), WHOLE(s->clean_needed))
			  : message_with(M_STANDING_COUNTS, WHOLE(s->days),
				WHOLE(s->days_needed), WHOLE(s->clean_days),
				WHOLE(s->clean_of), WHOLE(s->clean_needed),
				WHOLE(s->top)),
	    GROUND_OWN, 4);
	if (s->bows_listened > 0)
		plan_detail(m,
		    message_with(M_STANDING_COUNTS_HEARD,
			WHOLE(s->bows_listened), WHOLE(s->bows_full),
			WHOLE(HEARD_PERCENT), WHOLE(HEARD_LEAST)),
		    GROUND_OWN, 4);
	if (usual(m))
		plan_detail(m, message_of(M_STANDING_ODDS), GROUND_OWN, 4);
}

static void say_standing(struct making *m)
{
	const struct standing *s = &m->plan->standing;
	bool new = s->missing == MISSING_DAYS && s->days == 0;

	if (m->where.at < m->where.asked)
		return;
	if (new)
		plan_detail(m, standing_message(m->routine, s), GROUND_OWN, 4);
	else
		plan_because(m, standing_message(m->routine, s), GROUND_OWN, 4);
	say_counts(m);
}

void plan_where_reasons(struct making *m)
{
	say_away(m);
	say_where(m);
	say_standing(m);
}
