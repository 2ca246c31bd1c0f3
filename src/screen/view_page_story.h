/*
 * view_page_story.h - what a page shows, before it is known where
 *
 *	title		a few big letters: the question, or the page's name
 *	head		the question in words; on every leaf
 *	told		all other sentences, in the order line mode has them
 *	back, forward	the two answers, each with a big word and a sentence
 *
 * The sentences are those of line mode (sentences.h).  Those that only say
 * what the two keys do stand in the answers instead.
 */
#ifndef EVENHAND_SCREEN_VIEW_PAGE_STORY_H
#define EVENHAND_SCREEN_VIEW_PAGE_STORY_H

#include "evenhand/screen/view.h"
#include "sentences.h"

enum { STORY_HEAD_MAX = 3 };

struct answer {
	enum message_id word;
	struct message sentence;
	enum message_id keys; /* M_NONE: all of its side */
};

struct story {
	struct message title;
	bool asks; /* the title is a question and stays on every leaf */
	struct answer back, forward;
	int heads;
	const char *head[STORY_HEAD_MAX];
	struct sentences told;
};

void story_tell(struct story *story, const struct view *v);

/* What can be chosen on PAGE_WHERE and PAGE_PAIN_WHERE, and how many. */
int story_choices(const struct session *s);
struct message story_choice(const struct session *s, int choice);

/* Whether a sentence is a caution. */
bool story_is_care(enum message_id id);

#endif
