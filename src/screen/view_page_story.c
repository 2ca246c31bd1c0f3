/*
 * view_page_story.c - what a page shows, before it is known where
 */
#include "view_page_story.h"

#include <string.h>

#include "view_first.h"
#include "view_play.h"

/* --- the big words and the answers of each page --- */

static const struct words {
	enum message_id title;
	bool asks;
	enum message_id back, back_does;
	enum message_id forward, forward_does;
} words[] = {
	[PAGE_SORE] = { M_PAGES_BIG_SORE_ASK, true, M_PAGES_BIG_SORE,
	    M_PAGES_BACK_SORE, M_PAGES_BIG_FINE, M_PAGES_FORWARD_SORE },
	[PAGE_WHERE] = { M_NONE, true, M_PAGES_BIG_NEXT, M_PAGES_BACK_WHERE,
	    M_PAGES_BIG_YES, M_PAGES_FORWARD_WHERE },
	[PAGE_REST] = { M_PAGES_BIG_REST, false, M_PAGES_BIG_LEAVE,
	    M_PAGES_BACK_LEAVE, M_PAGES_BIG_LEAVE, M_PAGES_FORWARD_LEAVE },
	[PAGE_TODAY] = { M_PAGES_BIG_TODAY, false, M_PAGES_BIG_REST,
	    M_PAGES_BACK_TODAY, M_PAGES_BIG_BEGIN, M_PAGES_FORWARD_TODAY },
	[PAGE_PLAY] = { M_PAGES_BIG_KEYS, false, M_PAGES_BIG_SHAKY,
	    M_PAGES_BACK_SHAKY, M_PAGES_BIG_CLEAN, M_PAGES_FORWARD_CLEAN },
	[PAGE_SILENT] = { M_PAGES_BIG_SILENT, true, M_PAGES_BIG_STOP,
	    M_PAGE_SILENT_BACK, M_PAGES_BIG_GO_ON, M_PAGES_FORWARD_GO_ON },
	[PAGE_PAIN] = { M_PAGES_BIG_HURT_ASK, true, M_PAGES_BIG_HURTS,
	    M_PAGES_BACK_HURT, M_PAGES_BIG_FINE, M_PAGES_FORWARD_HURT },
	[PAGE_PAIN_WHERE] = { M_NONE, true, M_PAGES_BIG_NEXT,
	    M_PAGES_BACK_WHERE, M_PAGES_BIG_YES, M_PAGES_FORWARD_WHERE },
	[PAGE_LEAVE] = { M_PAGES_BIG_TIRED_ASK, true, M_PAGES_BIG_END,
	    M_PAGES_BACK_END_HERE, M_PAGES_BIG_GO_ON, M_PAGES_FORWARD_GO_ON },
	[PAGE_END] = { M_PAGES_BIG_DONE, false, M_PAGES_BIG_STAY,
	    M_PAGES_BACK_READ, M_PAGES_BIG_GO_ON, M_PAGES_FORWARD_GO_ON },
	[PAGE_QUESTION] = { M_PAGES_BIG_QUESTION_ASK, true, M_PAGES_BIG_BACK,
	    M_PAGES_BACK_BEFORE, M_PAGES_BIG_DONE, M_PAGE_QUESTION_KEYS },
};

/* --- choices --- */

static const struct {
	enum message_id list, big;
} sore_words[] = {
	[SORE_SLIP] = { M_PAGES_LIST_SLIP, M_PAGES_BIG_SLIP },
	[SORE_ELSEWHERE] = { M_SESSION_WORD_ELSEWHERE, M_PAGES_BIG_ELSEWHERE },
	[SORE_NOT_TODAY] = { M_PAGES_LIST_NOT_TODAY, M_PAGES_BIG_NOT_TODAY },
}, pain_words[] = {
	[PAIN_SLIP] = { M_PAGES_LIST_SLIP, M_PAGES_BIG_SLIP },
	[PAIN_THUMB] = { M_SESSION_WORD_THUMB, M_PAGES_BIG_THUMB },
	[PAIN_HAND] = { M_SESSION_WORD_HAND, M_PAGES_BIG_HAND },
	[PAIN_WRIST] = { M_SESSION_WORD_WRIST, M_PAGES_BIG_WRIST },
	[PAIN_ARM] = { M_SESSION_WORD_ARM, M_PAGES_BIG_ARM },
	[PAIN_SHOULDER] = { M_SESSION_WORD_SHOULDER, M_PAGES_BIG_SHOULDER },
	[PAIN_NECK] = { M_SESSION_WORD_NECK, M_PAGES_BIG_NECK },
	[PAIN_NUMB] = { M_SESSION_WORD_NUMB, M_PAGES_BIG_NUMB },
	[PAIN_ELSEWHERE] = { M_SESSION_WORD_ELSEWHERE, M_PAGES_BIG_ELSEWHERE },
};

int story_choices(const struct session *s)
{
	return s->page == PAGE_WHERE ? (int)SORE_CHOICES : (int)PAIN_CHOICES;
}

struct message story_choice(const struct session *s, int choice)
{
	if (choice < FINGERS_MAX)
		return message_with(M_PAGES_LIST_SKIN, WHOLE(choice + 1));
	return message_of(s->page == PAGE_WHERE ? sore_words[choice].list
						: pain_words[choice].list);
}

/* What is chosen is the question. */
static struct message choice_title(const struct session *s)
{
	if (s->choice < FINGERS_MAX)
		return message_with(M_PAGES_BIG_FINGER, WHOLE(s->choice + 1));
	return message_of(s->page == PAGE_WHERE ? sore_words[s->choice].big
						: pain_words[s->choice].big);
}

static struct message title_of(const struct view *v)
{
	const struct session *s = v->session;

	if (s->page == PAGE_WHERE || s->page == PAGE_PAIN_WHERE)
		return choice_title(s);
	if (v->help && !words[s->page].asks)
		return message_of(M_PAGES_BIG_KEYS);
	if (s->page == PAGE_END && s->pain)
		return message_of(M_PAGES_BIG_REST);
	return message_of(words[s->page].title);
}

/* --- kinds of sentences --- */

bool story_is_care(enum message_id id)
{
	switch (id) {
	case M_COACH_CAUTION_AID:
	case M_COACH_CAUTION_CHILD:
	case M_COACH_CAUTION_START:
	case M_COACH_CAUTION_START_FIRST:
	case M_COACH_CAUTION_HURRY:
	case M_COACH_CAUTION_PAIN:
	case M_COACH_CAUTION_NUMB:
	case M_COACH_CAUTION_ASK:
	case M_COACH_CAUTION_SKIN:
	case M_COACH_CAUTION_ENOUGH:
	case M_COACH_CAUTION_GAP:
	case M_COACH_CAUTION_DAY_OFF:
	case M_SESSION_STOP_NOW:
	case M_PAGE_PAIN_HEAT:
		return true;
	default:
		return false;
	}
}

/* Said by the answers, word for word. */
static bool is_answer(enum message_id id)
{
	switch (id) {
	case M_PAGE_SORE_KEYS:
	case M_PAGE_TODAY_KEYS:
	case M_PAGE_REST_KEYS:
	case M_PAGE_SILENT_BACK:
	case M_PAGE_PAIN_KEYS:
	case M_PAGE_LEAVE_KEYS:
	case M_PAGE_END_KEYS:
	case M_PAGE_QUESTION_KEYS:
		return true;
	default:
		return false;
	}
}

/* Questions, and what gives a told page its name. */
static bool is_head(enum message_id id)
{
	switch (id) {
	case M_PAGE_SORE_ASK:
	case M_PAGE_SORE_ASK_FIRST:
	case M_PAGE_WHERE:
	case M_PAGE_PAIN_WHERE:
	case M_SESSION_CHOICE_SKIN:
	case M_SESSION_CHOICE_NOT_SORE:
	case M_SESSION_CHOICE_AIR:
	case M_SESSION_CHOICE_NOT_TODAY:
	case M_SESSION_CHOICE_PLACE:
	case M_SESSION_CHOICE_SLIP:
	case M_COACH_LINE_HEAD:
	case M_COACH_LINE_HEAD_RESTS:
	case M_COACH_LINE_REST:
	case M_SESSION_NEXT_PAIN:
	case M_SESSION_NEXT_PAIN_NIGHT:
	case M_PAGE_SILENT_AGAIN:
	case M_PAGE_SILENT_ON:
	case M_PAGE_SILENT_END:
	case M_PAGE_PAIN:
	case M_PAGE_LEAVE:
	case M_PAGE_END_WHOLE:
	case M_PAGE_END_CAP:
	case M_PAGE_END_EARLY:
	case M_PAGE_END_PAIN:
	case M_PAGE_END_NO_KEY:
	case M_PAGE_END_INPUT:
	case M_PAGE_QUESTION:
	case M_PAGES_HELP:
		return true;
	default:
		return false;
	}
}

/* --- telling --- */

static bool of_the_card(enum message_id id)
{
	switch (id) {
	case M_DEVICE_UNHEARD:
	case M_DEVICE_SOUNDS:
	case M_DEVICE_SOUNDS_USUAL:
	case M_DEVICE_SOUNDS_LATE:
	case M_DEVICE_OTHER:
	case M_DEVICE_NONE:
	case M_DEVICE_MUTE:
		return true;
	default:
		return false;
	}
}

/*
 * What was said on the way here and is not on the page itself.  Where nothing
 * will be played a sound card is no news.
 */
static void tell_news(
    struct sentences *out, const struct view *v, const struct sentences *page)
{
	for (int i = 0; i < v->said; i++) {
		bool there = v->news[i].id == session_help(v->session).id ||
		    (v->session->page == PAGE_REST &&
			of_the_card(v->news[i].id));

		for (int j = 0; j < page->count; j++)
			there |= page->at[j].id == v->news[i].id;
		if (!there)
			sentences_add(out, v->news[i]);
	}
}

static void tell_help(struct sentences *out, const struct view *v)
{
	const struct session *s = v->session;
	bool play = s->page == PAGE_PLAY;

	sentences_add(out, message_of(M_PAGES_HELP));
	/* Before the other keys: few turn to the last leaf. */
	sentences_add(out, message_of(M_PAGES_HELP_HELP));
	sentences_add(out, session_help(s));
	if (play) {
		sentences_add(out,
		    message_of(s->plan.marking == MARKING_TURN
			    ? M_PAGE_PLAY_TURN
			    : M_PAGE_PLAY_ROUND));
		if (s->plan.marking == MARKING_ROUND)
			sentences_add(
			    out, session_digits(s, M_PAGE_PLAY_DIGITS));
		sentences_add(out, message_of(M_PAGE_PLAY));
	}
	sentences_add(out, message_of(M_PAGES_HELP_BACK));
	sentences_add(out, message_of(M_PAGES_HELP_FORWARD));
	sentences_add(out, message_of(M_PAGES_HELP_SILENCE));
	sentences_add(out, message_of(M_PAGES_HELP_CLEAN));
	sentences_add(out, message_of(M_PAGES_HELP_SHAKY));
	sentences_add(out, message_of(M_PAGES_HELP_HURTS));
	sentences_add(out, message_of(M_PAGES_HELP_LEVEL));
	sentences_add(out, message_of(M_PAGES_HELP_LEAF));
	sentences_add(out, message_of(M_PAGES_HELP_LEAVE));
	sentences_add(out, message_of(M_COACH_CAUTION_AID));
}

/* Rest is the name of a page only when nothing else is. */
static bool second_name(const struct story *story, enum message_id id)
{
	bool rest = id == M_SESSION_NEXT_PAIN ||
	    id == M_SESSION_NEXT_PAIN_NIGHT;

	return story->heads == STORY_HEAD_MAX || (rest && story->heads > 0);
}

/* Sentences of the page go to where they belong: head, answers or text. */
static void sort_out(struct story *story)
{
	struct sentences *told = &story->told;
	int kept = 0;

	for (int i = 0; i < told->count; i++) {
		struct sentence *s = &told->at[i];

		/* Two of its three keys are said by the answers. */
		if (s->id == M_PAGE_WHERE_KEYS)
			s->words = message_sentence(M_PAGES_DIGIT_WHERE);
		if (is_head(s->id) && !second_name(story, s->id))
			story->head[story->heads++] = s->words;
		else if (!is_answer(s->id))
			told->at[kept++] = *s;
	}
	told->count = kept;
}

/* Its keys lie over the playing: whether a pedal would be a mark just now. */
static bool marks_count(const struct view *v)
{
	struct now n;

	now_of(v, &n);
	return n.late || (n.going == GOING_CHANGE && n.asks);
}

void story_tell(struct story *story, const struct view *v)
{
	const struct session *s = v->session;
	const struct words *w = &words[s->page];
	bool typed = s->page == PAGE_QUESTION && v->typed && *v->typed;
	struct sentences page;

	if (view_first_shows(v)) {
		story_first(story, v);
		return;
	}
	story->title = title_of(v);
	story->asks = w->asks;
	story->back = (struct answer) { w->back, message_of(w->back_does),
		M_NONE };
	story->forward = (struct answer) { w->forward,
		message_of(w->forward_does), M_NONE };
	if (s->page == PAGE_PLAY && !marks_count(v)) {
		story->back = (struct answer) { M_PAGES_BIG_QUIET,
			message_of(M_PAGES_BACK_SILENCE), M_NONE };
		story->forward = (struct answer) { M_PAGES_BIG_QUIET,
			message_of(M_PAGES_FORWARD_SILENCE), M_NONE };
	}
	if (typed) {
		story->back = (struct answer) { M_PAGES_BIG_BACK,
			message_of(M_PAGES_BACK_RUB_OUT),
			M_PAGES_KEYS_RUB_OUT };
		story->forward = (struct answer) { M_PAGES_BIG_KEEP,
			message_of(M_PAGES_FORWARD_SEND), M_NONE };
	}
	story->heads = 0;
	sentences_init(&story->told);
	if (v->help) {
		tell_help(&story->told, v);
	} else {
		sentences_init(&page);
		sentences_page(&page, s, s->page);
		tell_news(&story->told, v, &page);
		for (int i = 0; i < page.count; i++)
			sentences_add_words(
			    &story->told, page.at[i].id, page.at[i].words);
	}
	sort_out(story);
}
