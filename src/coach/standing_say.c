/*
 * standing_say.c - how a stage stands, as one sentence
 */
#include "evenhand/coach/plan.h"
#include "evenhand/coach/standing.h"

static struct message not_clean(
    const struct routine *r, const struct standing *s, const char *title)
{
	if (r->stage[s->stage].in_the_air)
		return message_with(
		    M_STANDING_SWING, TEXT(title), DATE(s->day));
	return message_with(
	    s->teacher ? M_STANDING_UNIT_TEACHER : M_STANDING_UNIT, TEXT(title),
	    WORD(plan_unit_word(r->take)), TEXT(r->unit[s->unit].name),
	    DATE(s->day));
}

static struct message not_marked(
    const struct routine *r, const struct standing *s, const char *title)
{
	if (s->unit < 0 || r->stage[s->stage].in_the_air)
		return message_with(M_STANDING_MARK_NONE, TEXT(title));
	return message_with(M_STANDING_MARK, TEXT(title),
	    WORD(plan_unit_word(r->take)), TEXT(r->unit[s->unit].name));
}

static struct message too_few_bows(
    const struct routine *r, const struct standing *s, const char *title)
{
	int64_t all = s->bows_all > 0 ? s->bows_all : 1;

	return message_with(M_STANDING_SHARE, TEXT(title),
	    WORD(plan_unit_word(r->take)), TEXT(r->unit[s->unit].name),
	    WHOLE(s->bows * 100 / all),
	    WHOLE(SHARE_LEAST_TENTHS * 10 / r->units));
}

struct message standing_message(
    const struct routine *r, const struct standing *s)
{
	const char *title = r->stage[s->stage].title;

	switch (s->missing) {
	case MISSING_WELL:
		return message_with(M_STANDING_WELL, TEXT(title), DATE(s->day),
		    WHOLE(HURT_DAYS));
	case MISSING_DAYS:
		if (s->days == 0)
			return message_with(M_STANDING_DAYS_NONE, TEXT(title),
			    WHOLE(s->days_needed));
		return message_with(M_STANDING_DAYS, TEXT(title),
		    WHOLE(s->days), WHOLE(s->days_needed));
	case MISSING_RUNG:
		return message_with(M_STANDING_RUNG, TEXT(title),
		    WHOLE(s->rung), WHOLE(s->top));
	case MISSING_CLEAN:
		return not_clean(r, s, title);
	case MISSING_MARK:
		return not_marked(r, s, title);
	case MISSING_CLEAN_DAYS:
		return message_with(M_STANDING_CLEAN_DAYS, TEXT(title),
		    WHOLE(s->clean_days), WHOLE(s->clean_of),
		    WHOLE(s->clean_needed));
	case MISSING_SHARE:
		return too_few_bows(r, s, title);
	case MISSING_HEARD:
		return message_with(M_STANDING_HEARD, TEXT(title),
		    WHOLE(s->bows_listened), WHOLE(s->bows_full));
	case MISSING_NOTHING:
		break;
	}
	return message_with(r->decided_by == DECIDED_BY_STUDENT
		? M_STANDING_READY_STUDENT
		: M_STANDING_READY,
	    TEXT(title));
}
