/*
 * plan_reasons.c - why today is as it is, in messages
 *
 * Each decision leaves a reason with its rule and its ground.  The plain ones
 * are for every day; details, with all the numbers, are for who asks why.
 * The numbers of the choice of recaps come last, because in a routine of very
 * many stages they are what a full list leaves out.
 */
#include "plan_parts.h"

#include <string.h>

#include "evenhand/base/text.h"

/* Field by field: gaps in a message must not carry leftovers over. */
static void keep_message(struct message *to, const struct message *from)
{
	to->id = from->id;
	to->count = from->count;
	for (int i = 0; i < from->count; i++) {
		to->value[i].kind = from->value[i].kind;
		to->value[i].whole = from->value[i].whole;
		to->value[i].number = from->value[i].number;
	}
	memcpy(to->store, from->store, sizeof(to->store));
}

static void keep(struct making *m, const struct message *message,
    enum ground ground, int rule, bool detail)
{
	struct plan *p = m->plan;

	if (p->reasons == PLAN_REASONS_MAX)
		return;
	struct reason *r = &p->reason[p->reasons++];

	keep_message(&r->message, message);
	r->ground = ground;
	r->rule = rule;
	r->detail = detail;
}

void plan_because(
    struct making *m, struct message message, enum ground ground, int rule)
{
	keep(m, &message, ground, rule, false);
}

void plan_detail(
    struct making *m, struct message message, enum ground ground, int rule)
{
	keep(m, &message, ground, rule, true);
}

void plan_caution(struct making *m, struct message message)
{
	struct plan *p = m->plan;

	if (p->cautions < PLAN_CAUTIONS_MAX)
		keep_message(&p->caution[p->cautions++], &message);
}

const char *plan_title(const struct making *m, int stage)
{
	return m->routine->stage[stage].title;
}

enum message_id plan_unit_word(enum take take)
{
	switch (take) {
	case TAKE_PAIRS:
		return M_COACH_PAIR;
	case TAKE_STRINGS:
		return M_COACH_STRINGS;
	case TAKE_FINGERS:
		break;
	}
	return M_COACH_FINGER;
}

/* --- today as a whole --- */

static void say_eased(struct making *m)
{
	struct plan *p = m->plan;

	if (!m->easing)
		return;
	plan_because(m,
	    message_with(M_COACH_EASED, DATE(m->pain_day), WHOLE(EASE_DAYS),
		WHOLE(EASE_PERCENT), CLOCK(p->cap_ms),
		WHOLE(m->routine->ladder[0])),
	    GROUND_OWN, 0);
	if (plan_is_wide(&m->routine->stage[m->stage]))
		plan_because(m,
		    message_with(
			M_COACH_NO_WORK, TEXT(plan_title(m, m->stage))),
		    GROUND_OWN, 0);
}

static void say_hurt(struct making *m)
{
	struct plan *p = m->plan;
	char list[64];
	struct text t = text_in(list, sizeof(list));
	int left = 0;

	if (p->air_only)
		plan_because(m, message_of(M_COACH_AIR_ONLY), GROUND_COMMON, 0);
	for (int f = 1; f <= FINGERS_MAX; f++)
		if (p->hurt >> f & 1)
			text_format(&t, t.length ? ", %d" : "%d", f);
	if (p->hurt)
		plan_because(
		    m, message_with(M_COACH_HURT, TEXT(list)), GROUND_OWN, 1);
	for (int u = 0; u < m->routine->units; u++)
		left += !plan_is_hurt(m, u);
	if (p->hurt && left < 2 && !p->air_only)
		plan_because(m, message_of(M_COACH_HURT_ALL), GROUND_OWN, 1);
}

static void say_today(struct making *m)
{
	struct plan *p = m->plan;
	int limit = m->routine->no_further_than;

	plan_detail(m,
	    message_with(M_COACH_WORK, TEXT(plan_title(m, m->stage)),
		WHOLE(p->day_on_stage)),
	    GROUND_COMMON, 0);
	plan_where_reasons(m);
	say_eased(m);
	say_hurt(m);
	plan_guard_reasons(m);
	plan_load_reasons(m);
	if (m->new_stage && m->file_cap_ms > NEW_STAGE_CAP_MS)
		plan_because(m,
		    message_with(M_COACH_CAP_NEW, CLOCK(m->file_cap_ms),
			WHOLE(NEW_STAGE_DAYS), CLOCK(NEW_STAGE_CAP_MS)),
		    GROUND_OWN, 0);
	if (p->blocks == 0)
		plan_because(m, message_of(M_COACH_NOTHING), GROUND_OWN, 0);
	plan_detail(m, message_with(M_COACH_LIMIT, TEXT(plan_title(m, limit))),
	    GROUND_COMMON, 0);
	if (p->blocks > 0)
		plan_detail(m,
		    message_with(
			M_COACH_CAP, CLOCK(p->cap_ms), CLOCK(p->length_ms)),
		    GROUND_OWN, 2);
}

void plan_reasons(struct making *m)
{
	say_today(m);
	plan_fit_reasons(m);
	plan_work_reasons(m);
	plan_guard_details(m);
	plan_load_details(m);
	plan_fit_details(m);
}

void plan_rest_reasons(struct making *m)
{
	if (m->plan->verdict == VERDICT_ASK_FIRST)
		plan_because(m,
		    message_with(M_COACH_ASK_FIRST, WHOLE(PAIN_WINDOW_DAYS)),
		    GROUND_OWN, 0);
	else
		plan_because(m,
		    message_of(moment_is_night(m->plan->now)
			    ? M_COACH_REST_TONIGHT
			    : M_COACH_REST_TODAY),
		    GROUND_OWN, 0);
}
