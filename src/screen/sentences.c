/*
 * sentences.c - a list of sentences
 */
#include "sentences.h"

enum { SENTENCE_BYTES = 1024 };

void sentences_init(struct sentences *s)
{
	s->count = 0;
	s->text = text_in(s->bytes, sizeof(s->bytes));
}

void sentences_add_words(
    struct sentences *s, enum message_id id, const char *words)
{
	const char *start = s->bytes + s->text.length;

	if (s->count == SENTENCES_MAX || s->text.cut)
		return;
	text_add(&s->text, words);
	/* The zero that ends it stays between this one and the next. */
	text_add_bytes(&s->text, "", 1);
	s->at[s->count++] = (struct sentence) { id, start };
}

void sentences_add(struct sentences *s, struct message m)
{
	char words[SENTENCE_BYTES];

	if (m.id == M_NONE)
		return;
	message_text(&m, words, sizeof(words));
	sentences_add_words(s, m.id, words);
}
