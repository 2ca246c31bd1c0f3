/*
 * class_lesson.c - a student's lesson page: what the lesson sheet says
 *
 *	W. P., 2026-03-09					  1 of 25
 *	HOLD
 *	Stay with "A tone apart": finger 4 was shaky in the first round on ...
 *	Look at one thing: finger 4 was shaky in 2 of 5 first rounds.
 *	Stage: ...
 *
 * All of it is wrapped into rows; a small screen shows a part of them.
 */

#include "class_parts.h"
#include "evenhand/base/tongue.h"

enum { LINE_BYTES = 1024, HEAD = 1 };

/* Rows going by, of which some are shown. */
struct rolling {
	struct canvas *canvas; /* NULL: they are only counted */
	struct class_area area;
	int first; /* of the rows, the one on top */
	int row;
};

static void roll(struct rolling *r, unsigned attributes, struct message m)
{
	char words[WORDS_MAX], line[LINE_BYTES];
	const char *s = words_of(m, words);
	size_t next;

	for (; *s; s += next, r->row++) {
		size_t bytes = text_wrap(
		    s, r->area.right - r->area.left, &next);
		int at = HEAD + r->row - r->first;
		struct text t = text_in(line, sizeof(line));

		text_add_bytes(&t, s, bytes);
		if (r->canvas && at >= HEAD && at < r->area.keys)
			canvas_put(
			    r->canvas, at, r->area.left, attributes, line);
	}
}

static void gap(struct rolling *r, int rows)
{
	r->row += rows >= CLASS_ROOMY + 4;
}

/* All rows of it; how many there are. */
static int roll_all(struct rolling *r, const struct lesson_words *w, int rows)
{
	gap(r, rows);
	if (w->answer.id != M_NONE)
		roll(r, ATTRIBUTE_STRONG, w->answer);
	for (int i = 0; i < w->whys; i++)
		roll(r, ATTRIBUTE_PLAIN, w->why[i]);
	gap(r, rows);
	if (w->look.id != M_NONE)
		roll(r, ATTRIBUTE_STRONG, w->look);
	gap(r, rows);
	for (int i = 0; i < w->lines; i++)
		roll(r, ATTRIBUTE_PLAIN, w->line[i]);
	return r->row;
}

static int rows_of(const struct class_page *page, int columns, int rows)
{
	struct rolling r = { .area = class_area(columns, rows) };

	return roll_all(&r, page->lesson, rows);
}

bool class_lesson_on(struct class_page *page, int columns, int rows)
{
	int room = rows - 1 - HEAD;

	if (page->line + room >= rows_of(page, columns, rows))
		return false;
	page->line += room - 1;
	return true;
}

bool class_lesson_back(struct class_page *page, int columns, int rows)
{
	int room = rows - 1 - HEAD;

	(void)columns;
	if (page->line == 0)
		return false;
	page->line -= room - 1 < page->line ? room - 1 : page->line;
	return true;
}

static void draw_keys(struct canvas *c, const struct class_area *a, bool more)
{
	static const enum message_id keys[] = { M_CLASS_KEY_MORE,
		M_CLASS_KEY_STUDENT, M_CLASS_KEY_BACK, M_VIEW_KEY_HELP,
		M_HISTORY_KEY_LEAVE };
	size_t first = more ? 0 : 1;

	class_keys(c, a, keys + first, sizeof(keys) / sizeof(keys[0]) - first);
}

void class_draw_lesson(struct canvas *c, const struct class_page *page)
{
	struct rolling r = { c, class_area(c->columns, c->rows), page->line,
		0 };
	const struct class_row *row = page->order[page->chosen];
	char words[WORDS_MAX], date[DATE_TEXT_MAX];
	int all = roll_all(&r, page->lesson, c->rows), end;

	end = r.area.right - 2 -
	    put_right(c, 0, r.area.left, r.area.right, ATTRIBUTE_FAINT,
		words_of(message_with(M_CLASS_PLACE, WHOLE(page->chosen + 1),
			     WHOLE(page->count)),
		    words));
	tongue_date(page->today, date);
	put_left(c, 0, r.area.left, end, ATTRIBUTE_STRONG,
	    words_of(message_with(M_CLASS_LESSON, TEXT(row->name), TEXT(date)),
		words));
	draw_keys(c, &r.area, page->line + c->rows - 1 - HEAD < all);
}
