/*
 * class_page.c - the list of a class on a screen
 *
 *	  ! pain    W. P.   stopped for pain on ...   3 d 12 min  ..#.#.. ...
 *
 * A screen has room for so many rows; the one chosen decides which screen is
 * shown, so that nothing has to be remembered.
 */
#include <string.h>

#include "class_parts.h"
#include "signs.h"
#include "view_small.h"

enum {
	MARK_COLUMNS = 2,
	WORD_COLUMNS = 10,
	NAME_LEAST = 4,
	WEEK_COLUMNS = 12,
	WEEK_COLUMNS_SHORT = 7, /* days alone */
	MONTH_COLUMNS = 4 * 8,
	WEEK_DAYS_SHOWN = 7,
	MINUTE_MS = 60000,
	LINE_BYTES = 4096,
	AIR_COLUMNS = 60,
};

/* Columns of the parts of a row, 0: there is no room for it. */
struct parts {
	int name, why, week, week_end, month, end;
};

struct class_area class_area(int columns, int rows)
{
	int side = columns >= 100 ? 2 : columns >= AIR_COLUMNS;
	int head = rows >= CLASS_TALL ? 4 : rows >= CLASS_ROOMY ? 3 : 1;
	int foot = rows >= CLASS_TALL ? 9 : rows >= CLASS_ROOMY ? 5 : 3;

	return (struct class_area) { .left = side,
		.right = columns - side,
		.top = head,
		.bottom = rows - 1 - foot,
		.foot = rows - 1 - foot + (rows >= CLASS_ROOMY),
		.keys = rows - 1 };
}

/* --- which rows --- */

static char folded(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool holds(const char *name, const char *part)
{
	for (; *name; name++) {
		size_t i = 0;

		while (part[i] && folded(name[i]) == folded(part[i]))
			i++;
		if (!part[i])
			return true;
	}
	return *part == '\0';
}

bool class_matches(const struct class_page *page, int at)
{
	return holds(page->order[at]->name, page->find);
}

int class_next(const struct class_page *page, int at, int by)
{
	for (at += by; at >= 0 && at < page->count; at += by)
		if (class_matches(page, at))
			return at;
	return -1;
}

/* The place of the chosen one among those shown, and how many these are. */
static int place_of(const struct class_page *page, int *all)
{
	int place = 0;

	*all = 0;
	for (int i = 0; i < page->count; i++) {
		if (!class_matches(page, i))
			continue;
		place += i < page->chosen;
		++*all;
	}
	return place;
}

/* --- one row --- */

static int name_columns(const struct class_page *page, int most)
{
	int widest = NAME_LEAST;

	for (int i = 0; i < page->count; i++) {
		int columns = text_columns(page->order[i]->name);

		widest = columns > widest ? columns : widest;
	}
	return widest < most ? widest : most;
}

static struct parts parts_of(
    const struct class_page *page, const struct class_area *a)
{
	int columns = a->right - a->left;
	bool middle = columns >= CLASS_MIDDLE, wide = columns >= CLASS_WIDE;
	struct parts p = { .name = a->left + MARK_COLUMNS + WORD_COLUMNS };

	p.why = p.name + 2 + name_columns(page, wide ? 24 : middle ? 16 : 8);
	p.end = a->right;
	if (wide)
		p.end = p.month = a->right - MONTH_COLUMNS + 1;
	p.week_end = p.end - (wide ? 2 : 0);
	if (middle)
		p.end = p.week = p.week_end -
		    (wide ? WEEK_COLUMNS : WEEK_COLUMNS_SHORT);
	return p;
}

static const char *sign(enum student_order order, bool ascii)
{
	switch (order) {
	case STUDENT_PAIN:
		return "!";
	case STUDENT_STUCK:
		return "=";
	case STUDENT_HURRIED:
		return ">";
	case STUDENT_ABSENT:
		return "-";
	case STUDENT_UNREAD:
		return "?";
	case STUDENT_READY:
		return sign_of(SIGN_CLEAN, ascii);
	default:
		return " ";
	}
}

static bool practised_on(const struct student *s, int day)
{
	for (int i = 0; i < s->days; i++)
		if (s->day[i].day == day)
			return true;
	return false;
}

/* Four weeks up to today, a cell a day; what no record tells of is empty. */
static void draw_month(struct canvas *c, const struct class_page *page,
    const struct class_row *row, int at, int column)
{
	const struct student *s = row->student;
	int until = student_known_until(s, page->today);

	for (int i = 0; i < STUDENT_DAYS; i++) {
		int day = page->today - (STUDENT_DAYS - 1) + i;
		int place = column + i + i / WEEK_DAYS_SHOWN;

		if (practised_on(s, day))
			canvas_put(c, at, place, ATTRIBUTE_PLAIN,
			    sign_of(SIGN_FULL, page->ascii));
		else if (day <= until && s->first >= 0 && day >= s->first)
			canvas_put(c, at, place, ATTRIBUTE_FAINT,
			    sign_of(SIGN_BETWEEN, page->ascii));
	}
}

static unsigned look_of(const struct class_row *row)
{
	return row->state.order <= STUDENT_STUCK ? ATTRIBUTE_STRONG
						 : ATTRIBUTE_PLAIN;
}

static struct message week_of_row(const struct student_state *st, bool wide)
{
	if (!wide)
		return message_with(M_CLASS_WEEK_DAYS, WHOLE(st->week_days));
	return message_with(M_CLASS_WEEK, WHOLE(st->week_days),
	    WHOLE((st->week_ms + MINUTE_MS / 2) / MINUTE_MS));
}

static void draw_row(struct canvas *c, const struct class_page *page,
    const struct class_area *a, const struct parts *p, int i, int at)
{
	const struct class_row *row = page->order[i];
	const struct student_state *st = &row->state;
	unsigned chosen = i == page->chosen ? ATTRIBUTE_REVERSE : 0;
	char bytes[LINE_BYTES], words[WORDS_MAX];
	struct text why = text_in(bytes, sizeof(bytes));

	if (chosen)
		canvas_put(c, at, a->left, ATTRIBUTE_STRONG,
		    sign_of(SIGN_CHOSEN, page->ascii));
	canvas_put(c, at, a->left + MARK_COLUMNS, look_of(row),
	    sign(st->order, page->ascii));
	canvas_put(c, at, a->left + MARK_COLUMNS + 2, look_of(row),
	    message_sentence(student_word(st->order)));
	put_left(c, at, p->name, p->why - 1, look_of(row) | chosen, row->name);
	class_why(&why, row);
	if (student_asks(row->student, page->today)) {
		text_add(&why, "; ");
		text_add(&why,
		    words_of(message_with(
				 M_CLASS_ASKS, TEXT(row->student->question)),
			words));
	}
	put_left(c, at, p->why, p->end - 1, ATTRIBUTE_PLAIN, bytes);
	if (p->week && !row->student->unread)
		put_right(c, at, p->week, p->week_end, ATTRIBUTE_PLAIN,
		    words_of(week_of_row(st, p->month > 0), words));
	if (p->month)
		draw_month(c, page, row, at, p->month);
}

/* --- the page --- */

static void draw_head(struct canvas *c, const struct class_page *page,
    const struct class_area *a, const struct parts *p, int place, int all)
{
	char bytes[LINE_BYTES], words[WORDS_MAX];
	struct text counts = text_in(bytes, sizeof(bytes));
	int end = a->right;

	if (all > 0)
		end -= 2 +
		    put_right(c, 0, a->left, a->right, ATTRIBUTE_FAINT,
			words_of(message_with(M_CLASS_PLACE, WHOLE(place + 1),
				     WHOLE(all)),
			    words));
	class_counts(&counts, page->order, page->count);
	words_of(
	    message_with(M_CLASS_TITLE, DATE(page->today), WHOLE(page->count)),
	    words);
	/* Where there is one row, who needs help is more than the date. */
	put_left(c, 0, a->left, end, ATTRIBUTE_STRONG,
	    a->top == 1 && page->count > 0 ? bytes : words);
	if (a->top == 1)
		return;
	put_left(c, 1, a->left, a->right, ATTRIBUTE_PLAIN, bytes);
	canvas_put(c, a->top - 1, p->name, ATTRIBUTE_FAINT,
	    message_sentence(M_CLASS_HEAD_NAME));
	canvas_put(c, a->top - 1, p->why, ATTRIBUTE_FAINT,
	    message_sentence(M_CLASS_HEAD_WHY));
	if (p->week)
		put_right(c, a->top - 1, p->week, p->week_end, ATTRIBUTE_FAINT,
		    message_sentence(M_CLASS_HEAD_WEEK));
	if (p->month)
		canvas_put(c, a->top - 1, p->month, ATTRIBUTE_FAINT,
		    message_sentence(M_CLASS_HEAD_MONTH));
}

static void draw_list(
    struct canvas *c, const struct class_page *page, const struct class_area *a)
{
	struct parts p = parts_of(page, a);
	int room = a->bottom - a->top, all, place = place_of(page, &all);
	int skip = room > 0 ? place / room * room : 0;
	int at = class_next(page, -1, 1);
	char words[WORDS_MAX];

	draw_head(c, page, a, &p, place, all);
	if (all == 0 && *page->find)
		put_left(c, a->top, p.name, a->right, ATTRIBUTE_PLAIN,
		    words_of(
			message_with(M_CLASS_NOBODY, TEXT(page->find)), words));
	for (int row = -skip; at >= 0 && row < room; row++) {
		if (row >= 0)
			draw_row(c, page, a, &p, at, a->top + row);
		at = class_next(page, at, 1);
	}
}

void class_draw(struct canvas *canvas, const struct class_page *page)
{
	struct class_area a = class_area(canvas->columns, canvas->rows);

	canvas_init(canvas, canvas->columns, canvas->rows);
	if (view_is_small(canvas->columns, canvas->rows)) {
		view_draw_small(canvas);
	} else if (page->help) {
		class_draw_help(canvas, &a);
	} else if (page->lesson) {
		class_draw_lesson(canvas, page);
	} else {
		draw_list(canvas, page, &a);
		class_draw_foot(canvas, page, &a);
	}
}
