/*
 * view_first.c - the pages of the first minutes on the full screen
 *
 * The sentences are those of line mode; what only tells the two keys stands in
 * the answers, as on every page.  A page that tells of sounds also says where
 * there are none; lines were told so at the beginning.
 */
#include "view_first.h"

#include "first_words.h"

static const struct words {
	enum message_id title, back, back_does, forward, forward_does;
} words[] = {
	[FIRST_WELCOME] = { M_FIRST_BIG_WELCOME, M_FIRST_BIG_SKIP,
	    M_FIRST_DO_SKIP, M_PAGES_BIG_GO_ON, M_FIRST_DO_GO_ON },
	[FIRST_FORWARD] = { M_FIRST_BIG_FORWARD, M_FIRST_BIG_WAIT,
	    M_FIRST_DO_BACK_LATER, M_FIRST_BIG_PRESS, M_FIRST_DO_FORWARD },
	[FIRST_BACK] = { M_FIRST_BIG_BACK, M_FIRST_BIG_PRESS, M_FIRST_DO_BACK,
	    M_FIRST_BIG_WAIT, M_FIRST_DO_FORWARD_DONE },
	[FIRST_LISTEN] = { M_FIRST_BIG_LISTEN, M_FIRST_BIG_SKIP,
	    M_FIRST_DO_LEAVE_OUT, M_PAGES_BIG_BEGIN, M_FIRST_DO_BEGIN },
	[FIRST_MARK] = { M_FIRST_BIG_MARK, M_FIRST_BIG_SKIP,
	    M_FIRST_DO_LEAVE_OUT, M_PAGES_BIG_BEGIN, M_FIRST_DO_BEGIN },
	[FIRST_LAST] = { M_FIRST_BIG_LAST, M_FIRST_BIG_AGAIN, M_FIRST_DO_AGAIN,
	    M_PAGES_BIG_GO_ON, M_FIRST_DO_PRACTICE },
	[FIRST_SILENT] = { M_PAGES_BIG_SILENT, M_FIRST_BIG_SKIP,
	    M_FIRST_DO_LEAVE_OUT, M_PAGES_BIG_GO_ON, M_FIRST_DO_TICKS },
	[FIRST_PAIN] = { M_PAGES_BIG_HURT_ASK, M_PAGES_BIG_HURTS,
	    M_PAGES_BACK_HURT, M_PAGES_BIG_FINE, M_PAGES_FORWARD_HURT },
};

bool view_first_shows(const struct view *v)
{
	return v->first && first_shows(v->first) && !first_plays(v->first);
}

static bool is_head(enum message_id id)
{
	switch (id) {
	case M_FIRST_WELCOME:
	case M_FIRST_FORWARD:
	case M_FIRST_BACK:
	case M_FIRST_LISTEN:
	case M_FIRST_MARK_TURN:
	case M_FIRST_MARK_ROUND:
	case M_FIRST_LAST_CLEAN:
	case M_FIRST_LAST_SHAKY:
	case M_FIRST_LAST_NONE:
	case M_FIRST_SILENT:
	case M_FIRST_PAIN:
		return true;
	default:
		return false;
	}
}

/* Said by the answers. */
static bool is_answer(enum message_id id)
{
	switch (id) {
	case M_FIRST_WELCOME_KEYS:
	case M_FIRST_LISTEN_KEYS:
	case M_FIRST_MARK_GO:
	case M_FIRST_LAST_KEYS:
	case M_FIRST_SILENT_KEYS:
	case M_FIRST_PAIN_KEYS:
		return true;
	default:
		return false;
	}
}

/* What was said on the way here, such as that it was the other key. */
static void tell_news(struct sentences *out, const struct view *v)
{
	for (int i = 0; i < v->said; i++)
		if (v->news[i].id != first_help(v->first).id)
			sentences_add(out, v->news[i]);
}

static void tell_keys(struct sentences *out)
{
	static const enum message_id keys[] = { M_PAGES_HELP_HELP,
		M_PAGES_HELP_BACK, M_PAGES_HELP_FORWARD, M_PAGES_HELP_HURTS,
		M_PAGES_HELP_LEAF, M_FIRST_SKIP };

	for (size_t i = 0; i < sizeof(keys) / sizeof(keys[0]); i++)
		sentences_add(out, message_of(keys[i]));
}

void story_first(struct story *story, const struct view *v)
{
	const struct words *w = &words[v->first->part];
	struct sentences page;

	story->title = message_of(v->help ? M_PAGES_BIG_KEYS : w->title);
	story->asks = v->first->part == FIRST_PAIN;
	story->back = (struct answer) { w->back, message_of(w->back_does),
		M_NONE };
	story->forward = (struct answer) { w->forward,
		message_of(w->forward_does), M_NONE };
	story->heads = 0;
	sentences_init(&story->told);
	if (v->help) {
		tell_keys(&story->told);
		return;
	}
	tell_news(&story->told, v);
	sentences_init(&page);
	sentences_first(&page, v->first);
	for (int i = 0; i < page.count; i++) {
		/* The list that is told keeps the words. */
		if (is_answer(page.at[i].id))
			continue;
		sentences_add_words(
		    &story->told, page.at[i].id, page.at[i].words);
		if (is_head(page.at[i].id) && story->heads < STORY_HEAD_MAX)
			story->head[story->heads++] =
			    story->told.at[--story->told.count].words;
		if (page.at[i].id == M_FIRST_LISTEN &&
		    v->sounding == SOUNDING_NONE)
			sentences_add(
			    &story->told, message_of(M_FIRST_LISTEN_SIGHT));
	}
}
