/*
 * class_keys.c - keys on the list of a class and on a lesson page
 */
#include "class_parts.h"

static void choose(struct class_page *page, int by)
{
	int at = class_next(page, page->chosen, by);

	if (at < 0)
		return;
	page->chosen = at;
	page->line = 0;
}

static void page_list(struct class_page *page, int by, int columns, int rows)
{
	struct class_area a = class_area(columns, rows);

	for (int i = a.top; i < a.bottom; i++)
		choose(page, by);
}

static void page_lesson(struct class_page *page, int by, int columns, int rows)
{
	bool moved = by > 0 ? class_lesson_on(page, columns, rows)
			    : class_lesson_back(page, columns, rows);

	if (!moved)
		choose(page, by);
}

void class_press(
    struct class_page *page, enum class_key key, int columns, int rows)
{
	int by = key == CLASS_KEY_NEXT || key == CLASS_KEY_PAGE_ON ? 1 : -1;

	if (page->help || key == CLASS_KEY_HELP) {
		page->help = !page->help;
		return;
	}
	switch (key) {
	case CLASS_KEY_NEXT:
	case CLASS_KEY_PREVIOUS:
		choose(page, by);
		break;
	case CLASS_KEY_PAGE_ON:
	case CLASS_KEY_PAGE_BACK:
		if (page->lesson)
			page_lesson(page, by, columns, rows);
		else
			page_list(page, by, columns, rows);
		break;
	default:
		break;
	}
}

bool class_chosen(const struct class_page *page)
{
	return page->count > 0 && class_matches(page, page->chosen);
}

void class_find(struct class_page *page, const char *part)
{
	struct text t = text_in(page->find, sizeof(page->find));

	text_add(&t, part);
	if (page->count == 0 || class_matches(page, page->chosen))
		return;
	page->chosen = class_next(page, -1, 1);
	if (page->chosen < 0)
		page->chosen = 0;
}
