/*
 * lesson.c - the teacher's sheet: one look before the lesson
 *
 *	Before the lesson: Wren				2026-03-02 to 2026-03-08
 *	READY TO SHOW					ready, hold or step back
 *	Ready to show: play "A tone apart" ...		and why
 *	Look at one thing: finger 4 was shaky in 2 of 5 first rounds.
 *	[minutes]  [bows]  [first rounds]		small pictures
 *	Stage: ...					twelve lines
 */
#include "lesson.h"
#include "evenhand/base/message.h"
#include "evenhand/coach/guard.h"
#include "homework.h"

enum { LIST_BYTES = 200, RESETS_MANY = 4, WORDS_BYTES = 1024 };

/* Of the usual size. */
#define USUAL 1.25
#define SMALL 0.8
#define LARGE 1.7

static void say(struct pen *pen, struct message m)
{
	homework_say(pen, PEN_BODY, false, m);
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

static void draw_answer(struct pen *pen, const struct lesson *l)
{
	const struct routine *r = l->w->routine;
	const struct plan *p = l->w->plan;
	const struct reason *why = moved(p);

	pen_air(pen, 2);
	homework_say(pen, PEN_CUE, true, message_of(answer(p)));
	if (why)
		homework_say(pen, PEN_HEADING, false, why->message);
	if (p->where.at < p->where.asked)
		homework_say(pen, PEN_HEADING, false,
		    message_with(M_LESSON_AT, TEXT(r->stage[p->where.at].title),
			TEXT(r->stage[p->where.asked].title)));
	homework_say(
	    pen, PEN_HEADING, false, standing_message(r, &p->standing));
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
static struct message one_thing(const struct lesson *l)
{
	const struct routine *r = l->w->routine;
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
		return message_with(M_LESSON_LOOK_UNIT, WORD(plan_unit_word(r)),
		    TEXT(r->unit[unit].name), WHOLE(shaky[unit]),
		    WHOLE(w->goes));
	for (int s = 0; s < l->stage; s++)
		if (w->recap_shaky >> s & 1)
			return message_with(
			    M_LESSON_LOOK_RECAP, TEXT(r->stage[s].title));
	if (l->guard.hurried)
		return message_of(M_LESSON_LOOK_HURRY);
	if (many >= 0 && w->resets_of[many] >= RESETS_MANY)
		return message_with(M_LESSON_LOOK_RESETS,
		    WORD(plan_unit_word(r)), TEXT(r->unit[many].name),
		    WHOLE(w->resets_of[many]));
	if (2 * w->days < r->days_a_week)
		return message_with(
		    M_LESSON_LOOK_DAYS, WHOLE(w->days), WHOLE(r->days_a_week));
	return message_with(M_LESSON_LOOK_NONE, TEXT(r->stage[l->stage].title));
}

static void draw_thing(struct pen *pen, const struct lesson *l)
{
	struct message m = one_thing(l);
	char words[WORDS_BYTES];

	message_text(&m, words, sizeof(words));
	pen_air(pen, 2);
	homework_say(
	    pen, PEN_HEADING, true, message_with(M_LESSON_LOOK, TEXT(words)));
}

/* --- twelve lines --- */

static struct message bows(const struct lesson *l)
{
	const struct routine *r = l->w->routine;
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

static struct message recaps(const struct lesson *l)
{
	char bytes[LIST_BYTES];
	struct text list = text_in(bytes, sizeof(bytes));

	for (int s = 0; s < l->stage; s++)
		if (l->week.recap_shaky >> s & 1)
			text_format(&list, "%s%s", list.length > 0 ? ", " : "",
			    l->w->routine->stage[s].title);
	return list.length > 0 ? message_with(M_LESSON_RECAP, TEXT(bytes))
			       : message_of(M_LESSON_RECAP_NONE);
}

static void draw_lines(struct pen *pen, const struct lesson *l)
{
	const struct routine *r = l->w->routine;
	const struct week *w = &l->week;

	pen_air(pen, 2);
	say(pen,
	    message_with(M_LESSON_STAGE, TEXT(r->stage[l->stage].title),
		WHOLE(l->w->plan->day_on_stage)));
	say(pen,
	    message_with(M_LESSON_DAYS, WHOLE(w->days), WHOLE(w->sessions),
		WHOLE(r->days_a_week)));
	say(pen, message_with(M_LESSON_TIME, CLOCK(w->ms), CLOCK(w->ms_most)));
	say(pen, bows(l));
	say(pen,
	    w->goes > 0 ? message_with(M_LESSON_FIRST_GO, WHOLE(w->goes_clean),
			      WHOLE(w->goes))
			: message_of(M_LESSON_FIRST_GO_NONE));
	say(pen, message_with(M_LESSON_RESETS, WHOLE(w->resets)));
	say(pen,
	    message_with(M_LESSON_STOPS, WHOLE(w->whole), WHOLE(w->early),
		WHOLE(w->cut), WHOLE(w->pain)));
	say(pen, message_with(M_LESSON_SORE, WHOLE(w->sore)));
	say(pen,
	    message_with(
		M_LESSON_HURRY, WHOLE(l->guard.signs), WHOLE(l->guard.needed)));
	say(pen, message_with(M_LESSON_LATER, WHOLE(l->guard.later)));
	say(pen, recaps(l));
	say(pen,
	    w->asks ? message_with(M_LESSON_ASKS, TEXT(w->asks))
		    : message_of(M_LESSON_ASKS_NOTHING));
}

/* --- the sheet --- */

static struct message title_of(const struct lesson_wish *w)
{
	return *w->name ? message_with(M_LESSON_TITLE_OF, TEXT(w->name))
			: message_of(M_LESSON_TITLE);
}

static void draw_head(struct pen *pen, const struct lesson *l)
{
	struct message week = message_with(M_LESSON_WEEK, DATE(l->week.first),
	    DATE(l->week.first + WEEK_DAYS - 1));

	homework_say(pen, PEN_TITLE, true, title_of(l->w));
	homework_say(pen, PEN_SMALL, false, week);
	homework_say(pen, PEN_SMALL, false,
	    message_with(M_PAPER_ROUTINE, TEXT(l->w->routine->name),
		WHOLE(l->w->routine->edition)));
	pen_air(pen, 1);
	paper_line(pen->paper, pen->left, pen->y, pen->left + pen->room, pen->y,
	    pen_mm(pen, 0.5), INK_FULL);
}

static int attempt(
    struct paper *p, const struct lesson *l, double scale, int pages)
{
	struct message title = title_of(l->w);
	char words[WORDS_BYTES];
	struct pen pen;

	message_text(&title, words, sizeof(words));
	paper_init(p, words, l->w->routine->written_by, l->w->plan->day);
	pen_init(&pen, p, l->w->size, scale, pages);
	draw_head(&pen, l);
	draw_answer(&pen, l);
	draw_thing(&pen, l);
	lesson_pictures(&pen, l);
	draw_lines(&pen, l);
	return p->pages;
}

void sheet_lesson(struct paper *p, const struct lesson_wish *w)
{
	struct lesson l = { .w = w, .stage = w->plan->work_stage };
	int pages;

	week_of(&l.week, w->routine, w->history, l.stage, w->plan->day);
	guard_of(&l.guard, w->routine, w->history, l.stage, w->plan->day);
	pages = attempt(p, &l, w->large ? LARGE : USUAL, 0);
	if (!w->large && pages > 1)
		pages = attempt(p, &l, SMALL, 0);
	if (pages > 1)
		attempt(p, &l, w->large ? LARGE : SMALL, pages);
}
