/*
 * homework.c - the homework: the week on one page for the music stand
 *
 *	Homework for Wren					the head
 *	Each day    5 minutes at a time ...			how long
 *	From your teacher: ...					the note
 *	ARM LEADS   A tone apart				the stage
 *	[] [] [] [] []  Forearm and hand in one line		its checks
 *	notes, places on the string
 *	earlier stages						each smaller
 *	cautions
 *
 * The largest scale at which all of it fits on one page is taken.
 */
#include <string.h>

#include "evenhand/base/message.h"
#include "evenhand/coach/plan.h"
#include "homework.h"

enum { MESSAGE_BYTES = 1024, LIST_BYTES = 128, MINUTE_MS = 60000 };

/* Of the usual size, in hundredths so that steps are exact. */
enum {
	SCALE_MOST = 130,
	SCALE_USUAL = 100,
	FULL_LEAST = 88, /* from there on fewer words are better */
	BRIEF_LEAST = 68,
	SCALE_STEP = 1,
	SCALE_LARGE = 175,
	LARGE_LEAST = 160, /* the words of a body are 18 points then */
};

/* How a sheet is laid out. */
struct way {
	int scale;
	bool brief;
};

#define BAR_WIDE 1.4 /* beside what the teacher says */
#define BAR_AIR 4.0
#define CAUTION_AIR 3.0

void homework_say(struct pen *pen, double size, bool bold, struct message m)
{
	char words[MESSAGE_BYTES];

	message_text(&m, words, sizeof(words));
	pen_words(
	    pen, pen->left, pen->room, pen_letters(pen, size, bold), words);
}

static void heading(struct pen *pen, enum message_id id)
{
	pen_air(pen, 3);
	homework_say(pen, PEN_HEADING, true, message_of(id));
}

/* --- the head --- */

static struct message title_of(const struct routine *r)
{
	return *r->homework_for
	    ? message_with(M_PAPER_HOMEWORK_FOR, TEXT(r->homework_for))
	    : message_of(M_PAPER_HOMEWORK);
}

/* Over the title, at the right. */
static void draw_day_of(struct pen *pen, int day)
{
	struct lettering how = pen_letters(pen, PEN_SMALL, false);
	struct message m = message_with(M_PAPER_FROM_DAY, DATE(day));
	char words[MESSAGE_BYTES];

	message_text(&m, words, sizeof(words));
	how.side = SIDE_RIGHT;
	paper_words(pen->paper, pen->left + pen->room,
	    pen->y - pen_mm(pen, 0.5), how, words);
}

static void draw_head(struct pen *pen, const void *what)
{
	const struct sheet_wish *w = what;
	const struct routine *r = w->routine;
	enum message_id name = instrument_word(r->setup.instrument);
	double mm = r->setup.length_mm;

	draw_day_of(pen, w->day);
	homework_say(pen, PEN_TITLE, true, title_of(r));
	homework_say(pen, PEN_SMALL, false,
	    *r->written_by ? message_with(M_PAPER_ROUTINE_BY, TEXT(r->name),
				 WHOLE(r->edition), TEXT(r->written_by))
			   : message_with(M_PAPER_ROUTINE, TEXT(r->name),
				 WHOLE(r->edition)));
	homework_say(pen, PEN_SMALL, false,
	    message_with(r->left_handed ? M_PAPER_STRING_LEFT : M_PAPER_STRING,
		WORD(name), NUMBER(mm)));
	pen_air(pen, 1);
	paper_line(pen->paper, pen->left, pen->y, pen->left + pen->room, pen->y,
	    pen_mm(pen, 0.5), INK_FULL);
}

/* --- each day --- */

/* A stage that is new has no more than the usual minutes. */
static double minutes(const struct routine *r)
{
	const struct stage *s = &r->stage[r->work_on];
	int cap = s->minutes_ms > 0 && s->minutes_ms < r->cap_ms ? s->minutes_ms
								 : r->cap_ms;

	return (double)(cap < NEW_STAGE_CAP_MS ? cap : NEW_STAGE_CAP_MS) /
	    MINUTE_MS;
}

static enum message_id order_of(const struct routine *r)
{
	bool air = false, earlier = false;

	for (int i = 0; i < r->work_on; i++) {
		air |= r->stage[i].in_the_air;
		earlier |= !r->stage[i].in_the_air;
	}
	if (air)
		return earlier ? M_PAPER_ORDER : M_PAPER_ORDER_AIR;
	return earlier ? M_PAPER_ORDER_EARLIER : M_NONE;
}

static struct message turns_of(const struct routine *r)
{
	char bytes[LIST_BYTES];
	struct text list = text_in(bytes, sizeof(bytes));

	for (int u = 0; u < r->units; u++)
		text_format(&list, "%s%s", u > 0 ? ", " : "", r->unit[u].name);
	return message_with(M_PAPER_TURNS, WORD(plan_unit_word(r->take)),
	    WHOLE(r->bows_each), TEXT(bytes));
}

/* A sentence behind others. */
static void add(struct text *t, struct message m)
{
	char words[MESSAGE_BYTES];

	message_text(&m, words, sizeof(words));
	text_add(t, t->length > 0 ? " " : "");
	text_add(t, words);
}

static void draw_day(struct pen *pen, const void *what)
{
	const struct sheet_wish *w = what;
	const struct routine *r = w->routine;
	char how[MESSAGE_BYTES];
	struct text t = text_in(how, sizeof(how));

	if (order_of(r) != M_NONE)
		add(&t, message_of(order_of(r)));
	if (!r->stage[r->work_on].in_the_air)
		add(&t, turns_of(r));
	add(&t, message_of(M_PAPER_STOP));
	heading(pen, M_PAPER_EACH_DAY);
	homework_say(pen, PEN_BODY, true,
	    r->per_day > 1 ? message_with(M_PAPER_SESSION, NUMBER(minutes(r)),
				 WHOLE(r->per_day), WHOLE(r->hours_apart),
				 WHOLE(r->days_a_week))
			   : message_with(M_PAPER_SESSION_ONE,
				 NUMBER(minutes(r)), WHOLE(r->days_a_week)));
	pen_words(
	    pen, pen->left, pen->room, pen_letters(pen, PEN_BODY, false), how);
}

/* What the teacher says has a bar beside it. */
static void draw_note(struct pen *pen, const void *what)
{
	const struct sheet_wish *w = what;
	double inside = pen_mm(pen, BAR_AIR), from;

	heading(pen, M_PAPER_NOTE);
	from = pen->y;
	pen_words(pen, pen->left + inside, pen->room - inside,
	    pen_letters(pen, PEN_HEADING, false), w->routine->note);
	if (pen->y > from)
		paper_box(pen->paper, pen->left, from + pen_mm(pen, 0.8),
		    pen_mm(pen, BAR_WIDE), pen->y - from - pen_mm(pen, 0.4), 0,
		    INK_FULL);
}

/* --- cautions --- */

/* A point before it, and its lines below one another. */
static void draw_caution(
    struct pen *pen, double size, bool bold, enum message_id id)
{
	double inside = pen_mm(pen, CAUTION_AIR), dot = pen_mm(pen, 1.1);
	struct lettering how = pen_letters(pen, size, bold);

	pen_need(pen, how.size * PEN_LEADING);
	paper_oval(pen->paper, pen->left + dot / 2, pen->y + how.size * 0.82,
	    dot, dot, 0, 0);
	pen_words(pen, pen->left + inside, pen->room - inside, how,
	    message_sentence(id));
	pen->y += pen_mm(pen, 0.4);
}

static void draw_cautions(struct pen *pen, const void *what)
{
	const struct sheet_wish *w = what;
	const struct routine *r = w->routine;
	double size = w->large ? PEN_BODY : PEN_SMALL;
	const enum message_id all[] = { M_COACH_CAUTION_START,
		r->stage[r->work_on].patience ? M_COACH_CAUTION_HURRY : M_NONE,
		M_PAPER_HEAT, M_COACH_CAUTION_SKIN, M_PAPER_PAIN,
		M_COACH_CAUTION_PAIN, M_COACH_CAUTION_NUMB,
		M_COACH_CAUTION_CHILD, M_COACH_CAUTION_AID };

	heading(pen, M_PAPER_CAUTIONS);
	for (size_t i = 0; i < sizeof(all) / sizeof(all[0]); i++)
		if (all[i] != M_NONE)
			draw_caution(pen, size, all[i] == M_PAPER_PAIN, all[i]);
}

/* --- the whole sheet --- */

static void draw(struct pen *pen, const struct sheet_wish *w)
{
	const struct routine *r = w->routine;

	pen_keep(pen, draw_head, w);
	pen_keep(pen, draw_day, w);
	if (*r->note)
		pen_keep(pen, draw_note, w);
	homework_work(pen, w);
	homework_earlier(pen, w);
	pen_keep(pen, draw_cautions, w);
}

/* The list anew in one way; how many pages it takes. */
static int attempt(struct paper *p, const struct sheet_wish *w,
    const struct way *way, int pages)
{
	struct message title = title_of(w->routine);
	char words[MESSAGE_BYTES];
	struct pen pen;

	message_text(&title, words, sizeof(words));
	paper_init(p, words, w->routine->written_by, w->day);
	pen_init(&pen, p, w->size, way->scale / 100.0,
	    (struct pen_pages) { 0, pages });
	pen.brief = way->brief;
	draw(&pen, w);
	return p->pages;
}

/* Smaller, then briefer and larger again; false: nothing is left to try. */
static bool next_way(struct way *way)
{
	if (way->scale > (way->brief ? BRIEF_LEAST : FULL_LEAST)) {
		way->scale -= SCALE_STEP;
		return true;
	}
	if (way->brief)
		return false;
	*way = (struct way) { SCALE_USUAL, true };
	return true;
}

/* The largest scale of these that leaves the fewest pages to turn. */
static struct way fewest(struct paper *p, const struct sheet_wish *w, int most,
    int least, int *pages)
{
	struct way best = { most, false }, way = best;

	*pages = attempt(p, w, &best, 0);
	while (*pages > 1 && (way.scale -= SCALE_STEP) >= least) {
		int now = attempt(p, w, &way, 0);

		if (now < *pages) {
			*pages = now;
			best = way;
		}
	}
	return best;
}

/* As large as fits on one page, else about as usual on more. */
static struct way usual(struct paper *p, const struct sheet_wish *w, int *pages)
{
	struct way way = { SCALE_MOST, false };

	while ((*pages = attempt(p, w, &way, 0)) > 1)
		if (!next_way(&way))
			return fewest(p, w, SCALE_USUAL, FULL_LEAST, pages);
	return way;
}

void sheet_homework(struct paper *p, const struct sheet_wish *w)
{
	int pages;
	struct way way = w->large
	    ? fewest(p, w, SCALE_LARGE, LARGE_LEAST, &pages)
	    : usual(p, w, &pages);

	/*
	 * A single page is drawn already, by the last attempt.  Of more, how many
	 * there are stands on each.
	 */
	if (pages > 1)
		attempt(p, w, &way, pages);
}
