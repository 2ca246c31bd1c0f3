/*
 * sentences.h - what a page says, sentence by sentence
 *
 * Line mode wraps these to lines, the full screen sets them into its pages:
 * both say the same, because both read this list.  Each sentence keeps the id
 * of its message, by which a page knows what it is for.
 *
 * Plain value, large: keep it off the stack of small threads.
 */
#ifndef EVENHAND_SCREEN_SENTENCES_H
#define EVENHAND_SCREEN_SENTENCES_H

#include "evenhand/base/message.h"
#include "evenhand/base/text.h"
#include "evenhand/coach/plan.h"
#include "evenhand/coach/session.h"
#include "evenhand/screen/lines.h"

enum { SENTENCES_MAX = 200 };

struct sentence {
	enum message_id id;
	const char *words; /* in the list's own bytes */
};

struct sentences {
	int count;
	struct sentence at[SENTENCES_MAX];
	struct text text;
	char bytes[LINES_BYTES_MAX];
};

void sentences_init(struct sentences *s);

/* Adds a message, M_NONE not; what does not fit any more is left out. */
void sentences_add(struct sentences *s, struct message m);

/* The same for words made from more than the message alone. */
void sentences_add_words(
    struct sentences *s, enum message_id id, const char *words);

/* Adds a page, or a plan: see lines_page and lines_plan. */
void sentences_page(
    struct sentences *out, const struct session *s, enum page page);
void sentences_plan(struct sentences *out, const struct routine *r,
    const struct plan *p, enum telling_much much);

#endif
