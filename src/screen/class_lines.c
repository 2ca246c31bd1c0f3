/*
 * class_lines.c - the class in plain lines
 *
 *	Class on 2026-03-09: 25 students. 2 pain, 3 stuck, 20 fine.
 *	pain: W. P.: stopped for pain on 2026-03-08: wrist. Last practised on ...
 */
#include "class_parts.h"
#include "evenhand/screen/lines.h"

enum { SENTENCE_BYTES = 4096 };

void class_line(struct text *out, const struct class_row *row, int today)
{
	struct message told[CLASS_TOLD_MAX];
	int count = class_tell(row, today, told);
	char bytes[SENTENCE_BYTES], words[WORDS_MAX];
	struct text line = text_in(bytes, sizeof(bytes));

	text_format(&line,
	    "%s: %s: ", message_sentence(student_word(row->state.order)),
	    row->name);
	class_why(&line, row);
	text_add(&line, ".");
	for (int i = 0; i < count; i++) {
		text_add(&line, " ");
		text_add(&line, words_of(told[i], words));
	}
	lines_text(out, bytes);
}

void class_head(
    struct text *out, struct class_row *const *order, int count, int today)
{
	char bytes[SENTENCE_BYTES];
	struct text sums = text_in(bytes, sizeof(bytes));

	class_sums(&sums, order, count, today);
	lines_text(out, bytes);
}
