/*
 * lesson.c - what a teacher wants to know before a lesson, in sentences
 */
#include "evenhand/coach/lesson.h"

#include <assert.h>
#include <string.h>

#include "evenhand/base/text.h"

enum { LIST_BYTES = 200, RESETS_MANY = 4, WORDS_BYTES = 1024 };

void lesson_facts_of(struct lesson_facts *out, const struct routine *r,
    const struct history *h, const struct plan *p)
{
	*out = (struct lesson_facts) { r, h, p, .stage = p->work_stage };
	week_of(&out->week, r, h, out->stage, p->day);
	guard_of(&out->guard, r, h, out->stage, p->day);
}

/* --- the answer --- */

static enum message_id answer(const struct plan *p)
{
	if (p->verdict == VERDICT_ASK_FIRST)
		return M_LESSON_STOP;
	if (p->where.at < p->where.asked)
		return M_LESSON_BACK;
	return p->standing.missing == MISSING_NOTHING ? M_LESSON_READY
						      : M_LESSON_HOLD;
}

/* Why the student is not at the stage of the file, in the plan's own words. */
static const struct reason *moved(const struct plan *p)
{
	for (int i = 0; i < p->reasons; i++)
		switch (p->reason[i].message.id) {
		case M_WHERE_BACK:
		case M_WHERE_STAYS:
		case M_WHERE_AWAY_BACK:
		case M_WHERE_AWAY_START:
		case M_COACH_ASK_FIRST:
			return &p->reason[i];
		default:
			break;
		}
	return NULL;
}

/* To the teacher, with the same arguments. */
static void add_why(struct lesson_words *to, struct message m)
{
	static const struct {
		enum message_id student, teacher;
	} says[] = {
		{ M_COACH_ASK_FIRST, M_LESSON_WHY_STOP },
		{ M_WHERE_AWAY_START, M_LESSON_WHY_START },
		{ M_WHERE_STAYS, M_LESSON_WHY_STAYS },
		{ M_STANDING_READY, M_LESSON_WHY_READY },
		{ M_STANDING_UNIT_TEACHER, M_LESSON_WHY_UNIT },
	};

	for (size_t i = 0; i < sizeof(says) / sizeof(*says); i++)
		if (m.id == says[i].student) {
			assert(strcmp(message_signature(m.id),
				   message_signature(says[i].teacher)) == 0);
			m.id = says[i].teacher;
			break;
		}
	to->why[to->whys++] = m;
}

static void tell_answer(struct lesson_words *to, const struct lesson_facts *l)
{
	const struct routine *r = l->routine;
	const struct plan *p = l->plan;
	const struct reason *why = moved(p);

	to->answer = message_of(answer(p));
	if (why)
		add_why(to, why->message);
	if (p->where.at < p->where.asked)
		add_why(to,
		    message_with(M_LESSON_AT, TEXT(r->stage[p->where.at].title),
			TEXT(r->stage[p->where.asked].title)));
	add_why(to, standing_message(r, &p->standing));
}

/* --- one thing to look at --- */

/* The unit with the most of something, -1 when none has any. */
static int most_of(const int64_t *of, int units)
{
	int most = -1;

	for (int u = 0; u < units; u++)
		if (of[u] > 0 && (most < 0 || of[u] > of[most]))
			most = u;
	return most;
}

/* In the order in which a teacher would want to know. */
static struct message one_thing(const struct lesson_facts *l)
{
	const struct routine *r = l->routine;
	const struct week *w = &l->week;
	int64_t shaky[UNITS_MAX];
	int unit, many;

	for (int u = 0; u < UNITS_MAX; u++)
		shaky[u] = r->stage[l->stage].in_the_air ? 0 : w->shaky[u];
	unit = most_of(shaky, r->units);
	many = most_of(w->resets_of, r->units);
	if (w->sore > 0)
		return message_with(M_LESSON_LOOK_HURT, DATE(w->sore_day));
	if (unit >= 0)
		return message_with(M_LESSON_LOOK_UNIT,
		    WORD(plan_unit_word(r->take)), TEXT(r->unit[unit].name),
		    WHOLE(shaky[unit]), WHOLE(w->goes));
	for (int s = 0; s < l->stage; s++)
		if (w->recap_shaky >> s & 1)
			return message_with(
			    M_LESSON_LOOK_RECAP, TEXT(r->stage[s].title));
	if (l->guard.hurried)
		return message_of(M_LESSON_LOOK_HURRY);
	if (many >= 0 && w->resets_of[many] >= RESETS_MANY)
		return message_with(M_LESSON_LOOK_RESETS,
		    WORD(plan_unit_word(r->take)), TEXT(r->unit[many].name),
		    WHOLE(w->resets_of[many]));
	if (2 * w->days < r->days_a_week)
		return message_with(
		    M_LESSON_LOOK_DAYS, WHOLE(w->days), WHOLE(r->days_a_week));
	return message_with(M_LESSON_LOOK_NONE, TEXT(r->stage[l->stage].title));
}

static void tell_thing(struct lesson_words *to, const struct lesson_facts *l)
{
	struct message m = one_thing(l);
	char words[WORDS_BYTES];

	message_text(&m, words, sizeof(words));
	to->look = message_with(M_LESSON_LOOK, TEXT(words));
}

/* --- twelve lines --- */

static struct message bows(const struct lesson_facts *l)
{
	const struct routine *r = l->routine;
	char bytes[LIST_BYTES], one[LIST_BYTES];
	struct text list = text_in(bytes, sizeof(bytes));

	for (int u = 0; u < r->units; u++) {
		struct message m = message_with(M_LESSON_BOWS_ONE,
		    TEXT(r->unit[u].name), WHOLE(l->week.bows[u]));

		message_text(&m, one, sizeof(one));
		text_format(&list, "%s%s", u > 0 ? ", " : "", one);
	}
	return message_with(M_LESSON_BOWS, TEXT(bytes));
}

static struct message recaps(const struct lesson_facts *l)
{
	char bytes[LIST_BYTES];
	struct text list = text_in(bytes, sizeof(bytes));

	for (int s = 0; s < l->stage; s++)
		if (l->week.recap_shaky >> s & 1)
			text_format(&list, "%s%s", list.length > 0 ? ", " : "",
			    l->routine->stage[s].title);
	return list.length > 0 ? message_with(M_LESSON_RECAP, TEXT(bytes))
			       : message_of(M_LESSON_RECAP_NONE);
}

static void say(struct lesson_words *to, struct message m)
{
	to->line[to->lines++] = m;
}

/* Where nothing later was asked for, the line tells what was heard. */
static struct message later_or_heard(const struct lesson_facts *l)
{
	const struct week *w = &l->week;

	if (l->guard.later == 0 && w->bows_listened > 0)
		return message_with(M_LESSON_HEARD, WHOLE(w->bows_listened),
		    WHOLE(w->bows_full));
	return message_with(M_LESSON_LATER, WHOLE(l->guard.later));
}

static void tell_lines(struct lesson_words *to, const struct lesson_facts *l)
{
	const struct routine *r = l->routine;
	const struct week *w = &l->week;

	say(to,
	    message_with(M_LESSON_STAGE, TEXT(r->stage[l->stage].title),
		WHOLE(l->plan->standing.days)));
	say(to,
	    message_with(M_LESSON_DAYS, WHOLE(w->days), WHOLE(w->sessions),
		WHOLE(r->days_a_week)));
	say(to, message_with(M_LESSON_TIME, CLOCK(w->ms), CLOCK(w->ms_most)));
	say(to, bows(l));
	say(to,
	    w->goes > 0 ? message_with(M_LESSON_FIRST_GO, WHOLE(w->goes_clean),
			      WHOLE(w->goes))
			: message_of(M_LESSON_FIRST_GO_NONE));
	say(to, message_with(M_LESSON_RESETS, WHOLE(w->resets)));
	say(to,
	    message_with(M_LESSON_STOPS, WHOLE(w->whole), WHOLE(w->early),
		WHOLE(w->cut), WHOLE(w->pain)));
	say(to, message_with(M_LESSON_SORE, WHOLE(w->sore)));
	say(to,
	    message_with(
		M_LESSON_HURRY, WHOLE(l->guard.signs), WHOLE(l->guard.needed)));
	say(to, later_or_heard(l));
	say(to, recaps(l));
	say(to,
	    w->asks ? message_with(M_LESSON_ASKS, TEXT(w->asks))
		    : message_of(M_LESSON_ASKS_NOTHING));
}

void lesson_words_of(struct lesson_words *out, const struct lesson_facts *l)
{
	out->whys = out->lines = 0;
	tell_answer(out, l);
	tell_thing(out, l);
	tell_lines(out, l);
}
