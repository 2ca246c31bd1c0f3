/*
 * lines.c - sentences as plain lines
 *
 * A sentence that is too long for a line goes on in the next one; a reader who
 * listens hears no difference, a reader who looks sees no ragged edge.
 */
#include "sentences.h"

enum { SENTENCE_BYTES = 1024 };

int lines_columns(int screen)
{
	if (screen <= 0 || screen > LINE_COLUMNS)
		return LINE_COLUMNS;
	return screen < LINE_COLUMNS_MIN ? LINE_COLUMNS_MIN : screen;
}

void lines_text_within(struct text *out, int columns, const char *sentence)
{
	size_t next;

	for (const char *rest = sentence; *rest; rest += next) {
		size_t length = text_wrap(rest, columns, &next);

		text_add_bytes(out, rest, length);
		text_add(out, "\n");
	}
}

void lines_text(struct text *out, const char *sentence)
{
	lines_text_within(out, LINE_COLUMNS, sentence);
}

void lines_say_within(struct text *out, int columns, const struct message *m)
{
	char sentence[SENTENCE_BYTES];

	message_text(m, sentence, sizeof(sentence));
	lines_text_within(out, columns, sentence);
}

void lines_say(struct text *out, const struct message *m)
{
	lines_say_within(out, LINE_COLUMNS, m);
}

static void lines_all(struct text *out, int columns, const struct sentences *s)
{
	for (int i = 0; i < s->count; i++)
		lines_text_within(out, columns, s->at[i].words);
}

void lines_page(
    struct text *out, int columns, const struct session *s, enum page page)
{
	struct sentences told;

	sentences_init(&told);
	sentences_page(&told, s, page);
	lines_all(out, columns, &told);
}

void lines_plan(struct text *out, const struct routine *r, const struct plan *p,
    enum telling_much much)
{
	struct sentences told;

	sentences_init(&told);
	sentences_plan(&told, r, p, much);
	lines_all(out, LINE_COLUMNS, &told);
}
