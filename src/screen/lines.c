/*
 * lines.c - sentences as plain lines
 *
 * A sentence that is too long for a line goes on in the next one; a reader who
 * listens hears no difference, a reader who looks sees no ragged edge.
 */
#include "evenhand/screen/lines.h"

enum { SENTENCE_BYTES = 1024 };

void lines_text(struct text *out, const char *sentence)
{
	size_t next;

	for (const char *rest = sentence; *rest; rest += next) {
		size_t length = text_wrap(rest, LINE_COLUMNS, &next);

		text_add_bytes(out, rest, length);
		text_add(out, "\n");
	}
}

void lines_say(struct text *out, const struct message *m)
{
	char sentence[SENTENCE_BYTES];

	message_text(m, sentence, sizeof(sentence));
	lines_text(out, sentence);
}
