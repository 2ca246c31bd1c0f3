/*
 * plan_reasons_work.c - why these turns for these fingers, at these pulses
 */
#include "evenhand/base/text.h"
#include "plan_parts.h"

/* --- whose turn --- */

static bool all_even(const int *value, int count)
{
	for (int i = 1; i < count; i++)
		if (value[i] != value[0])
			return false;
	return true;
}

/*
 * Names of those who play today and have more than the least of these values;
 * false when there are none.
 */
static bool list_more(
    const struct making *m, const int *value, struct text *list)
{
	const struct routine *r = m->routine;
	int least = value[0];

	for (int u = 1; u < r->units; u++)
		if (value[u] < least)
			least = value[u];
	for (int u = 0; u < r->units; u++)
		if (value[u] > least && !plan_is_hurt(m, u))
			text_format(list, list->length ? ", %s" : "%s",
			    r->unit[u].name);
	return list->length > 0;
}

static void say_list(
    struct making *m, const int *value, enum message_id id, enum ground ground)
{
	char names[UNITS_MAX * (UNIT_NAME_MAX + 2)];
	struct text list = text_in(names, sizeof(names));

	if (list_more(m, value, &list))
		plan_because(m, message_with(id, TEXT(names)), ground, 1);
}

static void say_share(struct making *m)
{
	const struct routine *r = m->routine;
	const struct plan *p = m->plan;

	if (m->past != PAST_ALL)
		say_list(m, m->counted, M_COACH_MISSED, GROUND_COMMON);
	if (all_even(p->share, r->units))
		plan_detail(m,
		    message_with(M_COACH_EVEN, WORD(plan_unit_word(r->take)),
			WHOLE(p->share[0])),
		    GROUND_COMMON, 1);
	else
		say_list(m, p->share, M_COACH_MORE, GROUND_OWN);
}

static void say_ledger(struct making *m)
{
	const struct routine *r = m->routine;
	bool counted = !all_even(m->counted, r->units) || m->past == PAST_ALL;

	if (r->units > 2)
		plan_detail(m,
		    message_with(M_COACH_BOUNDS, WORD(plan_unit_word(r->take)),
			WHOLE((m->rounds + 1) / 2),
			WHOLE(m->rounds + m->rounds / 2)),
		    GROUND_OWN, 1);
	for (int u = 0; u < r->units && counted; u++)
		plan_detail(m,
		    message_with(m->past == PAST_ALL ? M_COACH_COUNTED_ONE
						     : M_COACH_MISSED_ONE,
			WORD(plan_unit_word(r->take)), TEXT(r->unit[u].name),
			WHOLE(m->counted[u]), WHOLE(m->plan->share[u])),
		    GROUND_OWN, 1);
	if (m->past == PAST_NEW_WIDE)
		plan_detail(m,
		    message_with(M_COACH_CATCH_UP_WIDE, WHOLE(NEW_STAGE_DAYS)),
		    GROUND_OWN, 1);
	if (m->past == PAST_NOTED)
		plan_detail(m,
		    message_with(M_COACH_CATCH_UP_HURT, WHOLE(CATCH_UP_DAYS)),
		    GROUND_OWN, 1);
}

/* Fewer turns of one that is not hurt, because too few are left between. */
static void say_apart(struct making *m)
{
	const struct plan *p = m->plan;

	for (int u = 0; u < m->routine->units; u++)
		if (p->dropped[u] > 0 && !plan_is_hurt(m, u))
			plan_because(m,
			    message_with(M_COACH_APART,
				TEXT(m->routine->unit[u].name),
				WHOLE(p->dropped[u])),
			    GROUND_OWN, 1);
}

/* --- how many pulses --- */

static struct message rung_message(const struct making *m)
{
	switch (m->rung_why) {
	case RUNG_CLEAN:
		return message_with(M_COACH_RUNG_CLEAN, WHOLE(m->pulses));
	case RUNG_KEPT:
		return message_with(M_COACH_RUNG_KEPT, WHOLE(m->pulses));
	case RUNG_LOWER:
		if (m->pulses < m->rung_was)
			return message_with(M_COACH_RUNG_LOWER,
			    WHOLE(m->pulses), WHOLE(m->rung_was));
		return message_with(M_COACH_RUNG_LOWEST, WHOLE(m->pulses));
	case RUNG_AWAY:
		return message_with(M_WHERE_RUNG_AWAY, WHOLE(m->pulses));
	case RUNG_SHORT_AWAY:
		return message_with(M_WHERE_RUNG_SHORT_AWAY, WHOLE(m->pulses));
	case RUNG_NEW:
	case RUNG_EASED:
	case RUNG_LOAD:
	case RUNG_HURRY:
	case RUNG_NONE:
		break;
	}
	return message_with(M_COACH_RUNG_NEW, WHOLE(m->pulses));
}

static void say_rung(struct making *m)
{
	int higher = rung_higher(m->routine, m->pulses);

	/* Why it is the lowest rung after pain is already said. */
	if (m->rung_why == RUNG_EASED || m->rung_why == RUNG_LOAD ||
	    m->rung_why == RUNG_HURRY || m->rung_why == RUNG_NONE)
		return;
	plan_because(m, rung_message(m), GROUND_OWN, 3);
	if (m->plan->clean_rounds > 0 && higher > m->pulses)
		plan_because(m, message_with(M_COACH_RUNG_NEXT, WHOLE(higher)),
		    GROUND_OWN, 3);
}

void plan_work_reasons(struct making *m)
{
	bool any = m->plan->blocks > 0 &&
	    m->plan->block[m->plan->blocks - 1].kind == BLOCK_WORK;

	if (!any)
		return;
	say_share(m);
	say_apart(m);
	say_rung(m);
	say_ledger(m);
	if (!m->plan->climbed)
		plan_detail(m, message_of(M_COACH_RUNG_UP), GROUND_OWN, 3);
	plan_detail(m, message_of(M_COACH_RUNG_DOWN), GROUND_OWN, 3);
}
