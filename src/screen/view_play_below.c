/*
 * view_play_below.c - the small lines below: marks, what is next, sound, keys
 *
 * Nothing here need be read while both hands play.
 */
#include "evenhand/base/text.h"
#include "signs.h"
#include "view_play.h"

enum {
	HALF_WIDE = 58,
	SOUND_COLUMNS = 14, /* of the sound in a word or two, and a gap */
};

static void unit_words(const struct view *v, int unit, char *buffer)
{
	struct message m = session_unit(v->session, unit);

	if (m.id == M_NONE)
		m = message_of(M_SESSION_SWING);
	words_of(m, buffer);
}

static void shaky_list(
    const struct view *v, const struct now *n, struct text *t)
{
	const struct session *s = v->session;

	for (int i = n->marked.from; i < n->marked.to; i++) {
		const struct played_turn *p = &s->turn_played[i];

		if (p->mark != MARK_SHAKY || p->unit < 0)
			continue;
		text_add(t, t->length > 0 ? ", " : "");
		text_add(t, s->wish.routine->unit[p->unit].name);
	}
}

/* The mark of what was played last: who, word and sign. */
static struct message mark_message(const struct view *v, const struct now *n)
{
	const struct marked *m = &n->marked;
	const struct played_turn *p = &v->session->turn_played[m->from];
	const char *clean = sign_of(SIGN_CLEAN, v->ascii);
	const char *shaky = sign_of(SIGN_SHAKY, v->ascii);
	char who[WORDS_MAX], bytes[WORDS_MAX];
	struct text list = text_in(bytes, sizeof(bytes));

	if (m->to - m->from == 1)
		unit_words(v, p->unit, who);
	else
		words_of(message_of(M_VIEW_ROUND), who);
	if (m->clean + m->shaky == 0)
		return message_with(M_VIEW_WAS_UNMARKED, TEXT(who));
	if (m->clean == m->whole)
		return message_with(M_VIEW_WAS_CLEAN, TEXT(who), TEXT(clean));
	if (m->shaky == m->whole)
		return message_with(M_VIEW_WAS_SHAKY, TEXT(who), TEXT(shaky));
	shaky_list(v, n, &list);
	return message_with(
	    M_VIEW_WAS_SOME, TEXT(who), TEXT(shaky), TEXT(bytes));
}

const char *play_mark_words(
    const struct view *v, const struct now *n, char *buffer)
{
	return words_of(mark_message(v, n), buffer);
}

/*
 * Marks are told where they were asked for: not of a round that goes on.  A
 * late one is still seen where it stands for the whole of the bow.
 */
static bool mark_known(const struct view *v, const struct now *n)
{
	const struct session *s = v->session;

	if (n->marked.whole == 0)
		return false;
	if (s->plan.marking == MARKING_TURN || n->late ||
	    n->going == GOING_SETTLE || n->going == GOING_COUNT)
		return true;
	if (n->going == GOING_CHANGE)
		return n->asks;
	return s->turn_played[s->played - 1].round != s->at.from.round ||
	    s->turn_played[s->played - 1].block != s->at.from.block;
}

static void next_words(const struct view *v, const struct now *n, char *buffer)
{
	const struct session *s = v->session;
	char who[WORDS_MAX];

	if (n->coming == COMING_END) {
		words_of(message_of(M_VIEW_NEXT_END), buffer);
		return;
	}
	if (n->coming == COMING_BLOCK) {
		int stage = s->plan.block[n->next_block].stage;

		words_of(message_with(M_VIEW_NEXT,
			     TEXT(s->wish.routine->stage[stage].title)),
		    buffer);
		return;
	}
	unit_words(v, n->next_unit, who);
	words_of(message_with(M_VIEW_NEXT, TEXT(who)), buffer);
}

static void put_info(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	int right = c->columns - l->left, taken = 0;
	char words[WORDS_MAX];

	/* Without a row of its own, what is new takes this one. */
	if (l->status < 0 && play_news(v, n, right - l->left, words)) {
		put_left(c, l->info, l->left, right, ATTRIBUTE_PLAIN, words);
		return;
	}
	if (mark_known(v, n))
		taken = 2 +
		    put_left(c, l->info, l->left, right,
			n->late ? ATTRIBUTE_STRONG : ATTRIBUTE_PLAIN,
			play_mark_words(v, n, words));
	next_words(v, n, words);
	put_right(c, l->info, l->left + taken, right, ATTRIBUTE_PLAIN, words);
}

/* In a word or two: sight or sound, and sounds that could not be played. */
static struct message sound_brief(const struct view *v)
{
	if (v->sounding != SOUNDING_ON)
		return message_of(M_VIEW_BY_SIGHT);
	if (v->dropped > 0)
		return message_with(
		    M_VIEW_DROPPED_BRIEF, WHOLE((int64_t)v->dropped));
	return message_of(M_VIEW_SOUND_ON);
}

static struct message sound_message(const struct view *v)
{
	switch (v->sounding) {
	case SOUNDING_ON:
		return message_of(M_VIEW_SOUND_ON);
	case SOUNDING_OPENING:
		return message_of(M_VIEW_SOUND_OPENING);
	case SOUNDING_LOST:
		return message_of(M_VIEW_SOUND_LOST);
	case SOUNDING_NONE:
		break;
	}
	return message_of(M_VIEW_SOUND_NONE);
}

/*
 * Sound at the right, in a word or two when there is news at the left; what
 * could not be played where there is room for it.
 */
static void put_status(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	int left = l->left, right = c->columns - l->left;
	char news[WORDS_MAX], words[WORDS_MAX];
	bool any = play_news(v, n, right - left - SOUND_COLUMNS, news);
	bool brief = any || c->columns < HALF_WIDE;

	right -= 2 +
	    put_right(c, l->status, left, right, ATTRIBUTE_FAINT,
		words_of(brief ? sound_brief(v) : sound_message(v), words));
	if (any)
		left += 2 +
		    put_left(c, l->status, left, right, ATTRIBUTE_PLAIN, news);
	words_of(
	    message_with(M_VIEW_DROPPED, WHOLE((int64_t)v->dropped)), words);
	if (v->dropped > 0 && !brief && text_columns(words) <= right - left)
		put_right(c, l->status, left, right, ATTRIBUTE_FAINT, words);
}

static void put_keys(struct canvas *c, const struct view *v,
    const struct now *n, const struct layout *l)
{
	int left = l->left, right = c->columns - l->left;
	char words[WORDS_MAX];
	bool brief = c->columns < HALF_WIDE;

	right -= 2 +
	    put_right(c, l->keys, left, right, ATTRIBUTE_STRONG,
		words_of(message_of(M_VIEW_KEY_HURT), words));
	if (!brief)
		right -= 2 +
		    put_right(c, l->keys, left, right, ATTRIBUTE_FAINT,
			words_of(message_of(M_VIEW_KEY_HELP), words));
	if (l->status < 0)
		right -= 2 +
		    put_right(c, l->keys, left, right, ATTRIBUTE_FAINT,
			words_of(sound_brief(v), words));
	words_of(message_of(M_VIEW_KEY_SILENCE), words);
	if (brief || (n->going == GOING_CHANGE && n->asks) ||
	    text_columns(words) > right - left)
		words_of(message_of(M_VIEW_KEY_SPACE), words);
	put_left(c, l->keys, left, right, ATTRIBUTE_FAINT, words);
}

void play_below(struct canvas *c, const struct view *v, const struct now *n,
    const struct layout *l)
{
	if (!play_question_below(l, n))
		put_info(c, v, n, l);
	if (l->status >= 0)
		put_status(c, v, n, l);
	put_keys(c, v, n, l);
}
