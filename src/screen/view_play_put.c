/*
 * view_play_put.c - words put left, right or in the middle
 */
#include "evenhand/base/text.h"
#include "view_play.h"

enum { DOTS = 3 };

const char *words_of(struct message m, char *buffer)
{
	message_text(&m, buffer, WORDS_MAX);
	return buffer;
}

/* What fits of s, ended by dots when something is left out. */
static int fit(struct text *t, const char *s, int room)
{
	if (text_columns(s) <= room) {
		text_add(t, s);
	} else if (room > DOTS) {
		text_add_bytes(t, s, text_clip(s, room - DOTS));
		text_add(t, "...");
	}
	return text_columns(t->bytes);
}

int put_left(struct canvas *c, int row, int from, int to, unsigned attributes,
    const char *s)
{
	char bytes[WORDS_MAX];
	struct text t = text_in(bytes, sizeof(bytes));
	int columns = fit(&t, s, to - from);

	canvas_put(c, row, from, attributes, bytes);
	return columns;
}

int put_right(struct canvas *c, int row, int from, int to, unsigned attributes,
    const char *s)
{
	char bytes[WORDS_MAX];
	struct text t = text_in(bytes, sizeof(bytes));
	int columns = fit(&t, s, to - from);

	canvas_put(c, row, to - columns, attributes, bytes);
	return columns;
}

int put_middle(struct canvas *c, int row, int from, int to, unsigned attributes,
    const char *s)
{
	char bytes[WORDS_MAX];
	struct text t = text_in(bytes, sizeof(bytes));
	int columns = fit(&t, s, to - from);

	canvas_put(c, row, from + (to - from - columns) / 2, attributes, bytes);
	return columns;
}
