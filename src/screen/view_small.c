/*
 * view_small.c - what is shown where no page fits: one sentence
 */
#include "view_small.h"

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"
#include "evenhand/screen/view.h"

bool view_is_small(int columns, int rows)
{
	return columns < VIEW_COLUMNS_MIN || rows < VIEW_ROWS_MIN;
}

void view_draw_small(struct canvas *c)
{
	const struct message m = message_with(
	    M_VIEW_SMALL, WHOLE(VIEW_COLUMNS_MIN), WHOLE(VIEW_ROWS_MIN));
	char words[MESSAGE_TEXT_MAX], line[MESSAGE_TEXT_MAX];
	const char *s = words;

	message_text(&m, words, sizeof(words));
	for (int row = 0; row < c->rows && *s; row++) {
		size_t next, bytes = text_wrap(s, c->columns, &next);
		struct text t = text_in(line, sizeof(line));

		text_add_bytes(&t, s, bytes);
		canvas_put(c, row, 0, ATTRIBUTE_PLAIN, line);
		s += next;
	}
}
