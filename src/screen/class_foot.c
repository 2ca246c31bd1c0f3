/*
 * class_foot.c - below the list: all of the chosen one, and the keys
 */
#include "class_parts.h"

enum { LINE_BYTES = 4096, GAP = 3 };

/* A sentence wrapped from a row on, not beyond end; the row behind it. */
static int class_sentence(struct canvas *c, const struct class_area *a, int row,
    int end, unsigned attributes, const char *words)
{
	char line[LINE_BYTES];
	size_t next;

	for (; *words && row < end; words += next, row++) {
		size_t bytes = text_wrap(words, a->right - a->left, &next);
		struct text t = text_in(line, sizeof(line));

		text_add_bytes(&t, words, bytes);
		/* What has no room is not cut off without a sign. */
		if (row == end - 1 && words[next])
			text_add(&t, " ...");
		canvas_put(c, row, a->left, attributes, line);
	}
	return row;
}

static void draw_chosen(
    struct canvas *c, const struct class_page *page, const struct class_area *a)
{
	const struct class_row *row = page->order[page->chosen];
	struct message told[CLASS_TOLD_MAX];
	int count = class_tell(row, page->today, told), at;
	char bytes[LINE_BYTES], words[WORDS_MAX];
	struct text line = text_in(bytes, sizeof(bytes));

	text_format(&line, "%s: ", row->name);
	class_why(&line, row);
	text_add(&line, ".");
	at = class_sentence(c, a, a->foot, a->keys, ATTRIBUTE_STRONG, bytes);
	for (int i = 0; i < count; i++)
		at = class_sentence(c, a, at, a->keys, ATTRIBUTE_PLAIN,
		    words_of(told[i], words));
}

void class_keys(struct canvas *c, const struct class_area *a,
    const enum message_id *keys, size_t count)
{
	int column = a->left;

	for (size_t i = 0; i < count; i++) {
		const char *key = message_sentence(keys[i]);

		if (column + text_columns(key) > a->right)
			break;
		column += canvas_put(c, a->keys, column, ATTRIBUTE_FAINT, key) +
		    GAP - (a->right < CLASS_MIDDLE);
	}
}

static void draw_keys(
    struct canvas *c, const struct class_page *page, const struct class_area *a)
{
	static const enum message_id keys[] = { M_CLASS_KEY_MOVE,
		M_CLASS_KEY_OPEN, M_CLASS_KEY_FIND, M_CLASS_KEY_PAGE,
		M_VIEW_KEY_HELP, M_HISTORY_KEY_LEAVE };
	char words[WORDS_MAX];
	int column = a->left;

	if (page->finding) {
		column += 2 +
		    put_left(c, a->keys, column, a->right, ATTRIBUTE_STRONG,
			words_of(
			    message_with(M_CLASS_FINDING, TEXT(page->find)),
			    words));
		put_left(c, a->keys, column, a->right, ATTRIBUTE_FAINT,
		    message_sentence(M_CLASS_KEYS_FIND));
		return;
	}
	class_keys(c, a, keys, sizeof(keys) / sizeof(keys[0]));
}

void class_draw_foot(
    struct canvas *c, const struct class_page *page, const struct class_area *a)
{
	if (class_chosen(page))
		draw_chosen(c, page, a);
	draw_keys(c, page, a);
}

void class_draw_help(struct canvas *c, const struct class_area *a)
{
	static const enum message_id all[] = { M_CLASS_HELP_MOVE,
		M_CLASS_HELP_PAGE, M_CLASS_HELP_OPEN, M_CLASS_HELP_FIND,
		M_CLASS_HELP_ORDER, M_CLASS_HELP_BACK, M_HISTORY_HELP_LEAVE };
	int roomy = c->rows >= CLASS_ROOMY, row = roomy;

	for (size_t i = 0; i < sizeof(all) / sizeof(all[0]); i++)
		row = roomy +
		    class_sentence(c, a, row, c->rows, ATTRIBUTE_PLAIN,
			message_sentence(all[i]));
}
