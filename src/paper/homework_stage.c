/*
 * homework_stage.c - a stage on the homework sheet
 *
 *	ARM LEADS				the cue, to be read from afar
 *	A tone apart				its title, what to do
 *	Ask yourself, and tick			its self-checks
 *	notes, and below them the string; beside it where there is room
 *
 * Every board of the sheet has one scale in its part, so that the distance is
 * seen to shrink from stage to stage.
 */
#include <math.h>

#include "evenhand/paper/board.h"
#include "evenhand/paper/staff.h"
#include "evenhand/paper/words.h"
#include "homework.h"

enum { LIST_BYTES = 128, WORDS_BYTES = 1024 };

/* In usual mm. */
#define BOARD_ROW 5.0
#define BOARD_ROW_SMALL 4.2
#define BOARD_ROW_BRIEF 3.7
#define STAFF_SPACE 2.3
#define STAFF_SPACE_SMALL 1.45
#define STAFF_BAR 9.6 /* the least room of a bar, in spaces */
#define STAFF_BAR_MOST 18.0
#define STAFF_CLEF 3.4
#define BESIDE 6.0 /* between a board and the notes beside it */

/* A stage to be drawn. */
struct part {
	const struct sheet_wish *w;
	int stage;
	bool work; /* it is this week's */
};

static const struct stage *stage_of(const struct part *part)
{
	return &part->w->routine->stage[part->stage];
}

/* --- what to do --- */

static struct message what_to_do(const struct part *part)
{
	const struct routine *r = part->w->routine;
	const struct stage *s = stage_of(part);
	int begin = routine_start_pulses(r, part->stage);
	char bytes[LIST_BYTES], string[16];
	struct text list = text_in(bytes, sizeof(bytes));

	if (s->in_the_air)
		return message_with(M_PAPER_STAGE_AIR,
		    NUMBER(AIR_SWING_BOWS * r->bow_ms / 1000.0));
	for (int i = 0; i < r->ladder_count; i++)
		text_format(&list, "%s%d", i > 0 ? ", " : "", r->ladder[i]);
	if (s->string < 0)
		return message_with(M_PAPER_STAGE_ANY, TEXT(bytes),
		    NUMBER(r->bow_ms / 1000.0), WHOLE(begin));
	staff_name(r->setup.open[s->string], string);
	return message_with(M_PAPER_STAGE, TEXT(string), TEXT(bytes),
	    NUMBER(r->bow_ms / 1000.0), WHOLE(begin));
}

static void draw_what(struct pen *pen, const struct part *part)
{
	const struct stage *s = stage_of(part);
	double size = part->work ? PEN_BODY : PEN_SMALL;

	homework_say(pen, size, false, what_to_do(part));
	if (*s->say)
		pen_words(pen, pen->left, pen->room,
		    pen_letters(pen, size, false), s->say);
	if (s->upper_near)
		homework_say(pen, size, false, message_of(M_PAPER_NEAR_NOTE));
	if (s->fade_after > 0)
		homework_say(pen, size, false,
		    message_with(M_PAPER_FADE, WHOLE(s->fade_after)));
}

/* In one line, to be read from afar: a wide one in smaller letters. */
static void draw_cue(struct pen *pen, const char *cue)
{
	struct lettering how = pen_letters(pen, PEN_CUE, true);

	how.size = words_fit(cue, how.size, true, pen->room);
	pen_words(pen, pen->left, pen->room, how, cue);
}

static void draw_title(struct pen *pen, const void *what)
{
	const struct part *part = what;
	const struct stage *s = stage_of(part);

	pen_air(pen, 2);
	if (*s->cue)
		draw_cue(pen, s->cue);
	homework_say(pen, PEN_HEADING, true,
	    message_with(M_PAPER_THIS_WEEK, TEXT(s->title)));
	draw_what(pen, part);
}

/* --- notes and string --- */

static struct staff notes_of(const struct part *part)
{
	const struct routine *r = part->w->routine;
	const struct stage *s = stage_of(part);
	struct staff staff = { .instrument = r->setup.instrument,
		.bars = r->units < STAFF_BARS_MAX ? r->units : STAFF_BARS_MAX };

	for (int u = 0; u < staff.bars; u++) {
		struct text t = text_in(staff.bar[u].above, STAFF_NAME_MAX);
		double from, to;

		routine_slide(r, part->stage, u, &from, &to);
		text_add(&t, r->unit[u].name);
		staff.bar[u].note[0] = r->setup.open[s->string] + from;
		staff.bar[u].note[1] = r->setup.open[s->string] + to;
	}
	return staff;
}

/* Where the board and the staff of a stage go. */
struct places {
	struct staff staff;
	struct board board;
	double space;	   /* of the staff, mm */
	double staff_wide; /* mm */
	bool beside;	   /* the notes stand at the right of the board */
};

static struct places places_of(const struct pen *pen, const struct part *part)
{
	const struct routine *r = part->w->routine;
	bool big = part->work || part->w->large;
	double row = big ? BOARD_ROW
	    : pen->brief ? BOARD_ROW_BRIEF
			 : BOARD_ROW_SMALL;
	struct places p = { .staff = notes_of(part),
		.space = pen_mm(pen, big ? STAFF_SPACE : STAFF_SPACE_SMALL),
		.board = { .routine = r,
		    .wide = pen->room,
		    .row = pen_mm(pen, row) } };
	double least = p.space * (STAFF_CLEF + STAFF_BAR * p.staff.bars);

	p.beside = !part->work && least < pen->room * 0.45;
	p.staff_wide = p.beside
	    ? least
	    : fmin(pen->room,
		  p.space * (STAFF_CLEF + STAFF_BAR_MOST * p.staff.bars));
	if (p.beside)
		p.board.wide -= p.staff_wide + pen_mm(pen, BESIDE);
	p.board.scale = board_scale(r, r->work_on, p.board.wide, p.board.row);
	return p;
}

static void draw_places(struct pen *pen, const void *what)
{
	const struct part *part = what;
	struct places p = places_of(pen, part);
	double board = board_high(&p.board);
	double staff = staff_high(&p.staff, p.space), y;

	pen_need(pen, p.beside ? fmax(board, staff) : staff);
	y = pen->y;
	staff_draw(pen->paper, &p.staff,
	    p.beside ? pen->left + pen->room - p.staff_wide : pen->left, y,
	    p.staff_wide, p.space);
	if (!p.beside) {
		pen->y += staff + pen_mm(pen, 1.5);
		pen_need(pen, board);
		y = pen->y;
	}
	board_draw(pen->paper, &p.board, part->stage, pen->left,
	    p.beside && staff > board ? y + (staff - board) / 2 : y);
	pen->y = y + (p.beside ? fmax(board, staff) : board);
}

void homework_work(struct pen *pen, const struct sheet_wish *w)
{
	const struct routine *r = w->routine;
	struct part part = { .w = w, .stage = r->work_on, .work = true };

	pen_keep(pen, draw_title, &part);
	homework_checks(pen, w);
	pen_air(pen, 2);
	if (board_slides(r, part.stage))
		pen_keep(pen, draw_places, &part);
}

/* --- earlier stages --- */

/* The title at the left, the cue at the right. */
static void draw_names(struct pen *pen, const struct part *part)
{
	const struct routine *r = part->w->routine;
	const struct stage *s = stage_of(part);
	struct lettering title = pen_letters(pen, PEN_BODY, true);
	struct lettering cue = title;
	double wide = words_mm(s->cue, title.size, true) + pen_mm(pen, 4);
	struct message m = message_with(M_PAPER_BEGIN, TEXT(s->title),
	    WHOLE(routine_start_pulses(r, part->stage)));
	char words[WORDS_BYTES];

	message_text(&m, words, sizeof(words));
	cue.side = SIDE_RIGHT;
	pen_need(pen, title.size * PEN_LEADING);
	paper_words(pen->paper, pen->left + pen->room,
	    pen->y + title.size * (PEN_LEADING - 0.2), cue, s->cue);
	pen_words(pen, pen->left, pen->room - wide, title,
	    pen->brief && !s->in_the_air ? words : s->title);
}

static void draw_earlier(struct pen *pen, const void *what)
{
	const struct part *part = what;

	pen_air(pen, pen->brief ? 1.5 : 2.5);
	if (part->stage == 0)
		homework_say(pen, PEN_HEADING, true, message_of(M_PAPER_AGAIN));
	draw_names(pen, part);
	if (!pen->brief)
		draw_what(pen, part);
	if (!board_slides(part->w->routine, part->stage))
		return;
	pen_air(pen, pen->brief ? 0 : 1);
	draw_places(pen, part);
}

void homework_earlier(struct pen *pen, const struct sheet_wish *w)
{
	struct part part = { .w = w };

	for (; part.stage < w->routine->work_on; part.stage++)
		pen_keep(pen, draw_earlier, &part);
}
